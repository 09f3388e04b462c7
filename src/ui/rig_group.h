/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A box on the rig page that belongs to one part of the drawing. While the focus is in it the part
 * is selected, and while the part is selected it is marked. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_RIG_GROUP (lb_rig_group_get_type ())
G_DECLARE_FINAL_TYPE (LbRigGroup, lb_rig_group, LB, RIG_GROUP, GtkWidget)

/* `index` as in lb_session_select(). LB_PICK_NOTHING: of no part. */
GtkWidget *lb_rig_group_new (LbSession *session, LbPickKind kind, int index);

void lb_rig_group_append (LbRigGroup *self, GtkWidget *child);

/* A row of `path` (fields.h) appended; `label` as in lb_field_row_new(). (transfer none) */
GtkWidget *
lb_rig_group_append_field (LbRigGroup *self, const char *path, gsize leader, const char *label);

/* Appends a list of rows that opens below `title`: for what seldom changes. `name` is what a screen
 * reader is told. `paths` (static, ends with NULL) are its fields; their rows are made when it
 * first opens. */
void lb_rig_group_append_seldom (
    LbRigGroup *self, const char *title, const char *name, const char *const *paths, gsize leader);

/* Opens that list and takes the focus to the row of `path`. */
void lb_rig_group_open_seldom (LbRigGroup *self, const char *path);

/* Whether it belongs to that part. */
gboolean lb_rig_group_is_of (LbRigGroup *self, LbPickKind kind, int index);

G_END_DECLS
