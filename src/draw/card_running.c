/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig as it runs: the side view over the bed strip, as the window shows them, in the print's
 * greys. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_piece.h"
#include "overlay.h"

#define LEAST_SCALE 0.5  /* of the drawings' letters: the smallest are then 6 pt */
#define SMALLER 0.86     /* than those of the card */
#define STRIP_SHARE 0.36 /* of the height */
#define GAP 2.0          /* points, between the two */

static LbStyle
running_style (const LbCardPen *pen)
{
  return lb_style_make (LB_THEME_PRINT, fmax (LEAST_SCALE, SMALLER * pen->style.scale));
}

/* Both drawings, where there is room for their words; both with less; the bed strip alone, where
 * the lures are. */
enum
{
  BROAD,
  NARROW,
  STRIP,
};

static double
running_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  g_autofree char *heading = lb_card_computed (pen, _ ("Running"));
  double scale = running_style (pen).scale;
  double drawings =
      piece->variant == STRIP ? fmax (110 * scale, 0.18 * width) : fmax (250 * scale, 0.40 * width);

  if (width < (piece->variant == BROAD ? 460 : 350) * scale)
    return INFINITY;
  return lb_card_pen_heading_height (pen, heading, width) + drawings;
}

static double
running_most_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  return fmax (running_height (pen, piece, width), (piece->variant == STRIP ? 0.3 : 0.72) * width);
}

static void
add_inset (const LbCardPen *pen, LbScene *scene, double x, double y)
{
  LbCardInset *inset = &pen->page->insets[pen->page->n_insets++];

  *inset = (LbCardInset){ scene, x, y };
  lb_scene_begin (pen->page->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (pen->page->scene, x, y, scene->width, scene->height, 0);
  lb_scene_end (pen->page->scene, (LbLook){ .stroke = LB_COLOUR_CARD_EDGE, .width = 0.5 });
}

/* Where the two drawings stand in a box. */
typedef struct
{
  double x, top, low, width;
  double side, strip; /* heights; a side view that is not drawn has one too, for the scale */
} Frame;

static Frame
make_frame (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  g_autofree char *heading = lb_card_computed (pen, _ ("Running"));
  double top = box.y + lb_card_pen_put_heading (pen, heading, box);
  double height = box.y + box.height - top;
  bool alone = piece->variant == STRIP;
  double strip = alone ? height : floor (STRIP_SHARE * height);

  return (Frame){ box.x,
                  top,
                  box.y + box.height - strip,
                  box.width,
                  alone ? strip / STRIP_SHARE : height - strip - GAP,
                  strip };
}

/* The document's own run. */
static void
add_own (const LbCardPen *pen, const LbCardPiece *piece, const Frame *f)
{
  LbExtents extents = lb_picture_extents (pen->picture);
  LbStyle style = running_style (pen);
  LbView view = lb_view_fit (NULL, &extents, &style, f->width, f->side);

  if (piece->variant != STRIP)
    add_inset (pen, lb_side_view_new (pen->context, pen->picture, &style, &view, f->width, f->side),
               f->x, f->top);
  add_inset (pen, lb_bed_strip_new (pen->context, pen->picture, &style, &view, f->width, f->strip),
             f->x, f->low);
}

/* The variants, over one another. */
static void
add_variants (const LbCardPen *pen, const LbCardPiece *piece, const Frame *f)
{
  LbOverlay overlay = lb_overlay_of_runs (pen->contents->runs, pen->picture);
  LbExtents extents = lb_overlay_extents (&overlay);
  LbStyle style = running_style (pen);
  LbView view = lb_view_fit (NULL, &extents, &style, f->width, f->side);

  if (piece->variant != STRIP)
    add_inset (pen,
               lb_overlay_side_view_new (pen->context, &overlay, &style, &view, f->width, f->side),
               f->x, f->top);
  add_inset (pen, lb_overlay_strip_new (pen->context, &overlay, &style, &view, f->width, f->strip),
             f->x, f->low);
}

static void
add_running (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  Frame frame = make_frame (pen, piece, box);

  if (pen->contents->runs && pen->contents->runs->n > 0)
    add_variants (pen, piece, &frame);
  else
    add_own (pen, piece, &frame);
}

static size_t
count_running (const LbCardPen *pen)
{
  return pen->contents->card.prints[LB_CARD_PART_RUNNING] ? 1 : 0;
}

const LbCardPieceClass lb_card_running_piece = {
  .title = N_ ("Running"),
  .n_variants = 3,
  .is_picture = true,
  .count = count_running,
  .height = running_height,
  .most_height = running_most_height,
  .add = add_running,
};
