/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cautions, always in sight: those the rig calls for now, and one advice after another. */
#pragma once

#include <gtk/gtk.h>

#include "readings_table.h"

G_BEGIN_DECLS

#define LB_TYPE_CAUTION_LIST (lb_caution_list_get_type ())
G_DECLARE_FINAL_TYPE (LbCautionList, lb_caution_list, LB, CAUTION_LIST, GtkWidget)

GtkWidget *lb_caution_list_new (void);

/* Takes all the room that it may have, always: for a page that scrolls, which would give it the
 * least. */
void lb_caution_list_keep_height (LbCautionList *self);

/* (element-type LbCaution); those that hold now come first. */
void lb_caution_list_update (LbCautionList *self, GPtrArray *cautions);

G_END_DECLS
