/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Turns scenes into render nodes, and keeps what did not change from one to the next.
 *
 * GTK finds out what to repaint by comparing node pointers, so a node kept is an area not
 * repainted. The background is painted once into an image; the foreground is one small cairo node
 * for each tile. */
#pragma once

#include <gtk/gtk.h>

#include "scene.h"

G_BEGIN_DECLS

typedef struct LbNodeCache LbNodeCache;

LbNodeCache *lb_node_cache_new (void);
void lb_node_cache_free (LbNodeCache *self);

/* Forgets everything. */
void lb_node_cache_clear (LbNodeCache *self);

/* Appends `scene`, which is `width` x `height`, to `snapshot`. `scale_factor`: device pixels for
 * one drawing unit. */
void lb_node_cache_snapshot (LbNodeCache *self,
                             GtkSnapshot *snapshot,
                             const LbScene *scene,
                             int width,
                             int height,
                             int scale_factor);

/* How many tiles the last snapshot painted anew, and how many there were; for tests and figures. */
void lb_node_cache_get_counts (LbNodeCache *self, gsize *painted, gsize *tiles);

/* How often the background was painted. */
guint lb_node_cache_get_n_backgrounds (LbNodeCache *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbNodeCache, lb_node_cache_free)

G_END_DECLS
