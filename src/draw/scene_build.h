/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How a scene is put together; for the files of this folder only.
 *
 * An item is a path or a text. A path is begun with lb_scene_begin(), given its lines, and ended
 * with one of the lb_scene_end functions, which give it colour. Colours are names; only paint.c
 * turns them into paint. */
#pragma once

#include "bed.h"
#include "current.h"
#include "scene.h"
#include "text.h"

typedef enum
{
  LB_OP_MOVE,
  LB_OP_LINE,
  LB_OP_CURVE,
  LB_OP_CLOSE,
} LbOpKind;

typedef struct
{
  LbOpKind kind;
  double x[3], y[3]; /* drawing units; a curve's end comes last, others use [0] */
} LbOp;

typedef enum
{
  LB_LINE_SOLID,
  LB_LINE_DASHED,
  LB_LINE_DOTTED,
  LB_LINE_LONG_DASHED, /* these are told apart on any line, at any scale */
  LB_LINE_SPOTTED,
  LB_LINE_DASH_DOTTED,
} LbLinePattern;

/* The dashes of a pattern on a line of `width`, at a style's scale; how many, 0 for a solid one. */
#define LB_PATTERN_MOST 4
int lb_pattern_dashes (LbLinePattern pattern,
                       double width,
                       double scale,
                       double dashes[LB_PATTERN_MOST]);

/* How a path looks. Zeros: nothing of it. */
typedef struct
{
  LbColour fill;
  LbColour fill_low; /* if set, the fill runs from `fill` at the top to this at the bottom */
  LbColour stroke;
  double width;
  LbLinePattern pattern;
  double opacity; /* of all of it; 0 stands for 1 */
} LbLook;

typedef struct
{
  LbLayer layer;
  size_t first_op, n_ops; /* a path; n_ops is 0 for a text */
  LbLook look;
  PangoLayout *layout;   /* a text: a reference of its own */
  double text_x, text_y; /* its top left corner */
  LbColour text_colour;
  LbPickKind pick; /* LB_PICK_NOTHING: cannot be picked */
  int index;
  int run;      /* of an overlay; -1: none */
  LbBox bounds; /* of all that is painted */
  guint64 key;
} LbItem;

typedef struct
{
  LbBox bounds;
  guint64 key;
} LbTile;

typedef enum
{
  LB_SCENE_SIDE_VIEW,
  LB_SCENE_BED_STRIP,
  LB_SCENE_TITLE_GROUND,
  LB_SCENE_PART,  /* one piece of tackle by itself */
  LB_SCENE_CHART, /* the river page's: speed curve, bed */
} LbSceneKind;

struct LbScene
{
  LbSceneKind kind;
  LbDrawContext *context;
  LbStyle style;
  LbView view;
  double width, height;

  /* The picture, and what its pointers point to. */
  LbPicture picture;
  LbSetup setup;
  LbReadings readings;
  const LbShape *shape; /* while building only */
  bool solved;
  LbCurrent current; /* holds the bed too */
  char *title;
  char *remark;
  char *names[LB_MAX_LEADERS];
  char *words;    /* made while building: a chart's description, or what runs of an overlay do */
  int run;        /* of an overlay, while it is drawn (overlay.h); -1: none */
  bool is_second; /* what is added is of the second rig of a pass (pass_parts.h) */
  char *moment;   /* made while building: what comes first in words of a moment of a pass */
  LbLayer boat_layer; /* in a pass the boat moves */

  /* Bed strip only. */
  double strip_floor; /* drawing y of height 0 */
  double strip_top;   /* drawing y of strip_high */
  double strip_high;  /* m above the bed */

  GArray *ops;
  GArray *items;
  GArray *tiles;
  GArray *texts; /* LbBox: places taken by words or things */
  GArray *lines; /* LbBox: short pieces of lines that labels keep off if they can */
  guint64 background_key;
  bool is_crowded;         /* more leaders than labels have room for away from lines */
  size_t n_missing_labels; /* labels that found no room */

  LbItem open; /* the item being built */
};

/* An empty scene; fill it, then call lb_scene_finish(). The picture's shape lives until then. */
LbScene *lb_scene_new (LbSceneKind kind,
                       LbDrawContext *context,
                       const LbPicture *picture,
                       const LbStyle *style,
                       const LbView *view,
                       double width,
                       double height);

/* ---- Paths ---- */

void lb_scene_begin (LbScene *scene, LbLayer layer);
void lb_scene_move_to (LbScene *scene, double x, double y);
void lb_scene_line_to (LbScene *scene, double x, double y);
void lb_scene_curve_to (
    LbScene *scene, double x1, double y1, double x2, double y2, double x3, double y3);
void lb_scene_close (LbScene *scene);
void lb_scene_end (LbScene *scene, LbLook look);
void lb_scene_end_pickable (LbScene *scene, LbLook look, LbPickKind pick, int index);

/* Whole figures inside a path. */
void
lb_scene_add_box (LbScene *scene, double x, double y, double width, double height, double radius);
void lb_scene_add_ellipse (LbScene *scene, double x, double y, double rx, double ry);
void lb_scene_add_arc (LbScene *scene, double x, double y, double radius, double from, double to);
void lb_scene_add_arrow_head (LbScene *scene, double x, double y, double angle, double size);

/* A straight line as an item of its own. */
void lb_scene_line (
    LbScene *scene, LbLayer layer, double x1, double y1, double x2, double y2, LbLook look);

/* ---- Text ---- */

/* Shapes `text` in the scene's style. */
LbText lb_scene_text (LbScene *scene, LbFont font, const char *text);

/* Puts text with its top left corner at (x, y) and marks the place as taken. */
void
lb_scene_put_text (LbScene *scene, LbLayer layer, LbText text, double x, double y, LbColour colour);

/* Puts text so that `align_x`, `align_y` (0 left/top to 1 right/bottom) of it is at (x, y), unless
 * it would leave the picture or cover other text. The numbers of a scale may stand closer. Returns
 * whether it was put. */
bool lb_scene_try_text (LbScene *scene,
                        LbLayer layer,
                        LbFont font,
                        const char *text,
                        double x,
                        double y,
                        double align_x,
                        double align_y,
                        LbColour colour,
                        bool is_scale);

/* True if `box` is inside the picture and clear of all text by `gap`. */
bool lb_scene_is_free (const LbScene *scene, LbBox box, double gap);

/* Marks a place as taken without text in it. */
void lb_scene_take (LbScene *scene, LbBox box);

/* Notes a line that labels should keep off. */
void lb_scene_note_line (LbScene *scene, double x1, double y1, double x2, double y2);

/* ---- Boxes ---- */

static inline bool
lb_box_overlaps (LbBox a, LbBox b)
{
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

static inline LbBox
lb_box_grown (LbBox box, double by)
{
  return (LbBox){ box.x - by, box.y - by, box.width + 2 * by, box.height + 2 * by };
}

/* ---- The parts of a drawing; each adds its items ---- */

void lb_scene_add_water (LbScene *scene); /* waterscape.c: sky, water, bed */
/* Pebbles between the bed line and `lowest`. */
void lb_scene_add_pebbles (LbScene *scene, double lowest);
double lb_scene_bed_y (const LbScene *scene, double px);
void lb_scene_add_distance_lines (LbScene *scene, double top, double low);
void lb_scene_add_current (LbScene *scene); /* current_arrows.c */
void lb_scene_add_boat (LbScene *scene);    /* boat.c */
/* The drawing y of the hull's underside at `px`; of the surface where there is no hull. */
double lb_scene_hull_low (LbScene *scene, double px);
void lb_scene_add_boat_speed (LbScene *scene);
void lb_scene_add_rig (LbScene *scene);         /* rig_items.c: lines, weight, lures */
void lb_scene_add_side_scales (LbScene *scene); /* side_scales.c */
void lb_scene_add_upright_scales (LbScene *scene);
/* Round distances for the ruler along the foot. */
double lb_scene_distance_step (const LbScene *scene);
void lb_scene_add_ruler_piece (LbScene *scene, double x, double next, bool is_dark);
void lb_scene_add_distance_tick (LbScene *scene, double px, double distance, double step);
void lb_scene_add_side_labels (LbScene *scene); /* side_labels.c */
void lb_scene_add_strip_water (LbScene *scene); /* strip_water.c, strip_rig.c */
void lb_scene_add_strip_scales (LbScene *scene);
void lb_scene_add_strip_rig (LbScene *scene);
void lb_scene_add_strip_labels (LbScene *scene);
void lb_scene_add_remark (LbScene *scene); /* remark.c */
void lb_scene_add_remark_words (LbScene *scene, const char *words);
/* handles.c: points of the bed that can be picked but not seen; what is pointed at and selected. */
void lb_scene_add_bed_points (LbScene *scene);
void lb_scene_add_handles (LbScene *scene);

/* The radius of a ball of the weight's volume, m. */
double lb_weight_radius (const LbWeight *weight);

/* One weight or lure, drawn with the point it hangs or tows from at (x, y). */
void lb_scene_add_weight (LbScene *scene, double x, double y, double floor_y);
void lb_scene_add_lure (LbScene *scene, int index, double x, double y, double floor_y);

/* What lies under an exported picture: its ground, and the title along the top. */
LbScene *lb_title_ground_new (LbDrawContext *context,
                              const LbPicture *picture,
                              const LbStyle *style,
                              double width,
                              double height,
                              double title_height);

/* ---- Overlays ---- */

LbLinePattern lb_overlay_pattern (size_t run);

/* The look of a thing as the present run has it. */
LbLook lb_overlay_look (const LbScene *scene, LbLook look);

/* The drawing's point of the mainline at `fraction` of its length on the drawing. */
void lb_scene_along_wire (const LbScene *scene, double fraction, double *x, double *y);

/* The markers alone, without signs and labels; where the one of a lure stands. */
void lb_scene_add_strip_markers (LbScene *scene);
void lb_scene_strip_marker_place (const LbScene *scene, size_t lure, double *x, double *y);

/* Cuts the foreground into tiles and computes the keys. */
void lb_scene_finish (LbScene *scene);

/* Where a height above the bed lies in the strip. */
static inline double
lb_scene_strip_y (const LbScene *scene, double height)
{
  return scene->strip_floor - height / scene->strip_high * (scene->strip_floor - scene->strip_top);
}
