/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig as it runs: the side view over the bed strip, as the window shows them, in the print's
 * greys. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_piece.h"

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
  double scale = running_style (pen).scale;
  double drawings =
      piece->variant == STRIP ? fmax (110 * scale, 0.18 * width) : fmax (250 * scale, 0.40 * width);

  if (width < (piece->variant == BROAD ? 460 : 350) * scale)
    return INFINITY;
  return lb_card_pen_heading_height (pen, _ ("Running"), width) + drawings;
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

static void
add_running (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  LbExtents extents = lb_picture_extents (pen->picture);
  LbStyle style = running_style (pen);
  double top = box.y + lb_card_pen_put_heading (pen, _ ("Running"), box);
  double height = box.y + box.height - top;
  double strip = piece->variant == STRIP ? height : floor (STRIP_SHARE * height);
  double side = piece->variant == STRIP ? strip / STRIP_SHARE : height - strip - GAP;
  LbView view = lb_view_fit (NULL, &extents, &style, box.width, side);

  if (piece->variant != STRIP)
    add_inset (pen, lb_side_view_new (pen->context, pen->picture, &style, &view, box.width, side),
               box.x, top);
  add_inset (pen, lb_bed_strip_new (pen->context, pen->picture, &style, &view, box.width, strip),
             box.x, box.y + box.height - strip);
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
