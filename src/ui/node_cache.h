/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Turns scenes into render nodes, and keeps what did not change from one to the next.
 *
 * GTK finds out what to repaint by comparing node pointers: a node kept is an area not repainted.
 * But it counts at most 30 rectangles in all of a window, and when there are more it repaints the
 * box around everything. So the drawing is cut into small cells, each one node with the background
 * and all that stands on it, and the cells that changed are rounded out to a few rectangles. The
 * background itself is painted once into an image. */
#pragma once

#include <gtk/gtk.h>

#include "scene.h"

G_BEGIN_DECLS

typedef struct LbNodeCache LbNodeCache;

/* At each snapshot at most `most_boxes` (> 0) rectangles are repainted; what stands beside them in
 * the window cuts them up further. Keep all drawings of a window together well below its 30. */
LbNodeCache *lb_node_cache_new (gsize most_boxes);
void lb_node_cache_free (LbNodeCache *self);

/* From the next snapshot on. */
void lb_node_cache_set_most_boxes (LbNodeCache *self, gsize most_boxes);

/* Forgets everything; the next snapshot paints all anew. */
void lb_node_cache_clear (LbNodeCache *self);

/* Appends `scene`, which is `width` x `height`, to `snapshot`. `scale_factor`: device pixels for
 * one drawing unit. */
void lb_node_cache_snapshot (LbNodeCache *self,
                             GtkSnapshot *snapshot,
                             const LbScene *scene,
                             int width,
                             int height,
                             int scale_factor);

/* What the last snapshot did, and the background so far; for tests and figures. */
typedef struct
{
  gsize cells;         /* of the drawing */
  gsize painted;       /* of them anew */
  double painted_area; /* drawing units squared */
  guint backgrounds;   /* how often the background was painted */
} LbNodeCounts;

LbNodeCounts lb_node_cache_get_counts (LbNodeCache *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbNodeCache, lb_node_cache_free)

G_END_DECLS
