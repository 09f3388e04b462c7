/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How many lures and hooks are on the line, and whether that is more than the user's limits. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_RULES_LABEL (lb_rules_label_get_type ())
G_DECLARE_FINAL_TYPE (LbRulesLabel, lb_rules_label, LB, RULES_LABEL, GtkWidget)

GtkWidget *lb_rules_label_new (LbSession *session);

/* What is said of limits that are passed; NULL when none is. */
const char *lb_rules_label_get_excess (LbRulesLabel *self);

G_END_DECLS
