/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The drawings: the side view and the bed strip, each a list of items that one function paints.
 *
 * A scene has a background (sky, water, bed, boat, scales), which changes only with the view, the
 * river, the size or the style, and a foreground (rig, arrows, labels). The foreground is also cut
 * into small tiles with tight bounds, so that a canvas repaints only what moved:
 *
 *   background: keep one image while lb_scene_background_key() stays the same;
 *   foreground: for each tile, if one with the same bounds and key was shown before, keep that
 *   node; else make a cairo node with the tile's bounds and lb_scene_paint_tile() in it. */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "draw_context.h"
#include "picture.h"
#include "style.h"
#include "view.h"

typedef struct LbScene LbScene;

typedef enum
{
  LB_LAYER_BACKGROUND = 1,
  LB_LAYER_FOREGROUND = 2,
  LB_LAYER_ALL = 3,
} LbLayer;

typedef struct
{
  double x, y, width, height; /* drawing units */
} LbBox;

/* What a pointer can be on. */
typedef enum
{
  LB_PICK_NOTHING,
  LB_PICK_SURFACE,
  LB_PICK_BED,
  LB_PICK_CURRENT, /* the arrows of the water's speed */
  LB_PICK_BOAT,
  LB_PICK_REEL,
  LB_PICK_MAINLINE,
  LB_PICK_SHANK,
  LB_PICK_WEIGHT,
  LB_PICK_ATTACHMENT, /* index: leader */
  LB_PICK_LEADER,     /* index: leader */
  LB_PICK_LURE,       /* index: leader */
  LB_PICK_BAND_LOW,   /* bed strip: the edges of the band */
  LB_PICK_BAND_HIGH,
  LB_PICK_BED_POINT, /* index: the bed's point */
} LbPickKind;

typedef struct
{
  LbPickKind kind;
  int index;       /* leader or bed point; 0 otherwise */
  int run;         /* which run of an overlay it belongs to; -1: none */
  double distance; /* drawing units from the point to the thing; 0 on it */
  double x;        /* m, world, of the point */
  double z;        /* m, world; in the bed strip the height above the bed under x */
} LbPick;

/* The side view of `picture` in `width` x `height` drawing units. `view` as lb_view_fit() gives it.
 * Free with lb_scene_free(). The context must outlive the scene. */
LbScene *lb_side_view_new (LbDrawContext *context,
                           const LbPicture *picture,
                           const LbStyle *style,
                           const LbView *view,
                           double width,
                           double height);

/* The bed strip: the lowest metre (3 ft) of water along the rig, stretched upward. x as in `view`,
 * the side view above it; `width` x `height` are the strip's own. */
LbScene *lb_bed_strip_new (LbDrawContext *context,
                           const LbPicture *picture,
                           const LbStyle *style,
                           const LbView *view,
                           double width,
                           double height);

void lb_scene_free (LbScene *scene); /* NULL is fine */

/* Paints with the scene's top left corner at the origin of `cr`. */
void lb_scene_paint (const LbScene *scene, cairo_t *cr, LbLayer layers);

/* The same number as long as the background would paint the same. */
guint64 lb_scene_background_key (const LbScene *scene);

/* The tiles of the foreground. They do not overlap; together they hold all of it. */
size_t lb_scene_n_tiles (const LbScene *scene);
LbBox lb_scene_tile_bounds (const LbScene *scene, size_t tile); /* whole drawing units */
guint64 lb_scene_tile_key (const LbScene *scene, size_t tile); /* same bounds and key: same paint */
void
lb_scene_paint_tile (const LbScene *scene, cairo_t *cr, size_t tile); /* in scene coordinates */

/* The thing under (x, y), or the nearest within `tolerance` drawing units; small things before
 * large ones. From the geometry that is painted. */
LbPick lb_scene_pick (const LbScene *scene, double x, double y, double tolerance);

/* The whole drawing in words, for a screen reader: every part and every number in it. UTF-8; the
 * caller frees it with g_free(). */
char *lb_scene_describe (const LbScene *scene);
