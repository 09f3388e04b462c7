/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Draws widgets with changing texts as one piece each.
 *
 * GTK repaints the boxes around all texts that changed, but counts at most 30 in all of a window,
 * and repaints the box around everything when there are more (see node_cache.h). A column of
 * numbers alone is more than that. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define LB_TYPE_FLAT (lb_flat_get_type ())
G_DECLARE_FINAL_TYPE (LbFlat, lb_flat, LB, FLAT, GtkWidget)

/* A widget that shows `child` alone, in one piece. */
GtkWidget *lb_flat_new (GtkWidget *child);

/* For the snapshot function of a widget with children: they become one piece. */
void lb_flat_snapshot_children (GtkWidget *widget, GtkSnapshot *snapshot);

G_END_DECLS
