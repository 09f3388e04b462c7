/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The wire-angle gauge: a protractor to cut out. A thread with a small weight hangs from its hole;
 * held with the middle line along the wire, the thread shows the wire's angle on the outer scale
 * and how high the weight is off the bed on the inner one. The same on both sides, for wires that
 * lean either way. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_piece.h"

/* Of plain letters, so that the numbers have room; at 7.5 pt a degree is then half a millimetre. */
#define LEAST_RADIUS 11.4
#define GOOD_RADIUS 15.5
#define BEST_RADIUS 216.0 /* points */
#define HOLE 3.0
#define MOST_ROWS 4
#define ARC_PIECES 8
#define RING 3.3 /* of plain letters: the outer scale with its numbers */
#define MOST_ANGLE (88 * G_PI / 180)
#define LEAST_ANGLE (40 * G_PI / 180)

typedef struct
{
  const LbCardPen *pen;
  const LbCardGauge *gauge;
  LbScene *scene;
  double x, y;   /* the hole */
  double radius; /* of the edge */
  double reach;  /* rad, the scale goes so far to either side */
  double body;
} Dial;

/* ---- Size ---- */

/* Fifteen degrees or more past the heights, so that their numbers have room, in whole fives. */
static double
reach_of (const LbCardGauge *gauge)
{
  double five = 5 * G_PI / 180;

  return CLAMP (five * (3 + ceil (gauge->high / five)), LEAST_ANGLE, MOST_ANGLE);
}

static double
radius_for_width (const LbCardGauge *gauge, double width)
{
  return (width / 2 - 2) / sin (reach_of (gauge));
}

static char *
words_of (const LbCardPen *pen)
{
  return g_strjoin (
      " ", pen->contents->gauge.caption,
      _ ("Cut out along the edge and hang a thread with a small weight from the hole. Hold the "
         "middle "
         "line along the wire: the thread shows the angle on the outer scale and the height of the "
         "weight on the inner one. The thick mark is the run of this card."),
      NULL);
}

/* All but the dial. */
static double
words_height (const LbCardPen *pen, double width)
{
  g_autofree char *words = words_of (pen);

  return lb_card_pen_heading_height (pen, pen->contents->gauge.title, width) + 4 * HOLE
         + lb_card_pen_text (pen, LB_FONT_SCALE, words, width).height
         + 0.5 * lb_card_pen_body (pen);
}

static double
gauge_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  double radius = (piece->variant ? LEAST_RADIUS : GOOD_RADIUS) * lb_card_pen_body (pen);

  if (radius_for_width (&pen->contents->gauge, width) < radius)
    return INFINITY;
  return words_height (pen, width) + radius;
}

static double
gauge_most_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  double radius = fmin (BEST_RADIUS, radius_for_width (&pen->contents->gauge, width));

  return words_height (pen, width) + fmax (radius, LEAST_RADIUS * lb_card_pen_body (pen));
}

/* ---- Drawing ---- */

/* `angle` from straight down, to the right. */
static void
tick (const Dial *d, double angle, double from, double to, double width)
{
  double s = sin (angle), c = cos (angle);

  lb_card_pen_rule (d->pen, d->x + from * s, d->y + from * c, d->x + to * s, d->y + to * c, width);
}

/* A number whose far edge is at `radius`, however wide it is. FALSE where another stands or the
 * edge of the gauge comes too near. */
static bool
number (const Dial *d, LbFont font, const char *text, double angle, double radius)
{
  LbText shaped = lb_card_pen_text (d->pen, font, text, 1e4);
  double s = sin (angle), c = cos (angle);
  double middle = radius - shaped.width / 2 * fabs (s) - 0.42 * shaped.height * c;
  double off_edge = middle * sin (d->reach - fabs (angle));

  if (off_edge < shaped.width / 2 * cos (d->reach) + shaped.height / 2 * sin (d->reach))
    return false;
  return lb_scene_try_text (d->scene, LB_LAYER_FOREGROUND, font, text, d->x + middle * s,
                            d->y + middle * c, 0.5, 0.5, LB_COLOUR_TEXT, true);
}

/* An arc to both sides of straight down, in short pieces: curves are then as good as round. */
static void
arc (const Dial *d, double radius, double reach, LbLook look)
{
  double step = 2 * reach / ARC_PIECES;

  lb_scene_begin (d->scene, LB_LAYER_FOREGROUND);
  for (int i = 0; i < ARC_PIECES; i++)
    lb_scene_add_arc (d->scene, d->x, d->y, radius, G_PI / 2 - reach + i * step,
                      G_PI / 2 - reach + (i + 1) * step);
  lb_scene_end (d->scene, look);
}

static void
add_degrees (const Dial *d)
{
  int most = (int) floor (d->reach * 180 / G_PI + 1e-6);
  double r = d->radius - 2;

  for (int degrees = -most; degrees <= most; degrees++)
    {
      double angle = degrees * G_PI / 180;
      double length = degrees % 10 == 0 ? 1.0 : degrees % 5 == 0 ? 0.75 : 0.4;
      LbPhrase words = lb_phrase_format ("%d°", abs (degrees));

      tick (d, angle, r, r - length * d->body, degrees % 5 == 0 ? 0.6 : 0.35);
      if (degrees % 10 == 0 && abs (degrees) + 2 < most)
        number (d, LB_FONT_SCALE, words.text, angle, r - 1.2 * d->body);
    }
}

/* At its tick, or further in on the same ray, where the thread goes over it too. */
static void
add_height (const Dial *d, const LbCardTick *t, double angle, double radius)
{
  for (int row = 0; row < MOST_ROWS; row++)
    for (int small = 0; small < 2; small++)
      if (number (d, small ? LB_FONT_SCALE : LB_FONT_STRONG, t->words, angle,
                  radius - 1.3 * row * d->body))
        return;
}

/* Heights on the inner scale, to both sides; a thick mark at the angle of the card's own run. */
static void
add_heights (const Dial *d, double radius)
{
  for (int side = -1; side <= 1; side += 2)
    {
      for (size_t i = 0; i < d->gauge->n_ticks; i++)
        {
          const LbCardTick *t = &d->gauge->ticks[i];

          tick (d, side * t->angle, radius, radius - (t->major ? 0.9 : 0.5) * d->body,
                t->major ? 0.9 : 0.4);
          if (t->major)
            add_height (d, t, side * t->angle, radius - 1.1 * d->body);
        }
      if (lb_is_set (d->gauge->own_angle) && d->gauge->own_angle <= d->reach)
        tick (d, side * d->gauge->own_angle, radius + 0.3 * d->body, radius - 0.5 * d->body, 2.2);
    }
}

/* Where the weight lies on the bed: a broken arc along the inner scale. */
static void
add_bed (const Dial *d, double radius)
{
  if (!d->gauge->touches_below || d->gauge->low <= 0)
    return;
  arc (d, radius - 0.35 * d->body, d->gauge->low,
       (LbLook){ .stroke = LB_COLOUR_TEXT, .width = 1.6, .pattern = LB_LINE_DOTTED });
  number (d, LB_FONT_SCALE, _ ("on the bed"), 0, radius - 0.9 * d->body);
}

static void
add_outline (const Dial *d)
{
  LbLook thin = { .stroke = LB_COLOUR_TEXT, .width = 0.6 };

  for (int side = -1; side <= 1; side += 2)
    tick (d, side * d->reach, HOLE, d->radius, 0.6);
  tick (d, 0, HOLE, d->radius - (RING + 2.2) * d->body - 10, 0.6);
  arc (d, d->radius, d->reach, thin);
  lb_scene_begin (d->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (d->scene, d->x, d->y, HOLE, HOLE);
  lb_scene_end (d->scene, (LbLook){ .stroke = LB_COLOUR_TEXT, .width = 0.8 });
}

static void
add_gauge (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  const LbCardGauge *gauge = &pen->contents->gauge;
  g_autofree char *words = words_of (pen);
  double head = lb_card_pen_put_heading (pen, gauge->title, box);
  Dial d = { pen, gauge, pen->page->scene, .reach = reach_of (gauge) };
  double inner;

  d.body = lb_card_pen_body (pen);
  d.radius = fmin (radius_for_width (gauge, box.width),
                   fmin (BEST_RADIUS, box.height - words_height (pen, box.width)));
  d.x = box.x + box.width / 2;
  d.y = box.y + head + 2 * HOLE;
  inner = d.radius - 2 - RING * d.body;
  add_outline (&d);
  add_degrees (&d);
  arc (&d, inner, d.reach, (LbLook){ .stroke = LB_COLOUR_TEXT, .width = 0.6 });
  add_heights (&d, inner);
  add_bed (&d, inner);
  lb_card_pen_put (pen, LB_FONT_SCALE, words, box.x, d.y + d.radius + 2 * HOLE, box.width,
                   LB_COLOUR_TEXT);
}

static size_t
count_gauge (const LbCardPen *pen)
{
  return pen->contents->gauge.n_ticks > 0 ? 1 : 0;
}

const LbCardPieceClass lb_card_gauge_piece = {
  .title = N_ ("Wire-angle gauge"),
  .n_variants = 2,
  .count = count_gauge,
  .height = gauge_height,
  .most_height = gauge_most_height,
  .add = add_gauge,
};
