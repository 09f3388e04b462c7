/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Two widgets beside one another where there is room for both, else the second below the first. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define LB_TYPE_FOLD (lb_fold_get_type ())
G_DECLARE_FINAL_TYPE (LbFold, lb_fold, LB, FOLD, GtkWidget)

/* The first takes what the second leaves. */
GtkWidget *lb_fold_new (GtkWidget *first, GtkWidget *second);

G_END_DECLS
