/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The wire-angle gauge: a protractor to cut out. A thread with a small weight hangs from its hole;
 * held with the middle line along the wire, the thread shows the wire's angle on the outer scale
 * and how high the weight is off the bed on the inner one. The same on both sides, for wires that
 * lean either way. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_piece.h"
#include "card_spread.h"

/* Of plain letters, so that the numbers have room; at 7.5 pt a degree is then half a millimetre. */
#define LEAST_RADIUS 11.4
#define GOOD_RADIUS 15.5
#define BEST_RADIUS 216.0 /* points */
#define HOLE 3.0
#define LEAST_APART 1.3 /* points, between ticks */
#define LABELS 3.4      /* of plain letters: from the inner scale to the middle of its numbers */
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
  g_autofree char *heading = lb_card_computed (pen, pen->contents->gauge.title);

  return lb_card_pen_heading_height (pen, heading, width) + 4 * HOLE
         + lb_card_pen_text (pen, LB_FONT_SCALE, words, width).height
         + 0.5 * lb_card_pen_body (pen);
}

static double
gauge_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  const LbCardGauge *gauge = &pen->contents->gauge;
  double radius = (piece->variant ? LEAST_RADIUS : GOOD_RADIUS) * lb_card_pen_body (pen);

  if (gauge->n_ticks == 0)
    return lb_card_pen_heading_height (pen, gauge->title, width)
           + lb_card_pen_text (pen, LB_FONT_PLAIN, gauge->caption, width).height;
  if (radius_for_width (gauge, width) < radius)
    return INFINITY;
  return words_height (pen, width) + radius;
}

static double
gauge_most_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  double radius = fmin (BEST_RADIUS, radius_for_width (&pen->contents->gauge, width));

  if (pen->contents->gauge.n_ticks == 0)
    return gauge_height (pen, piece, width);
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

/* ---- The scale of heights ---- */

/* A number of the inner scale on one side. */
typedef struct
{
  const LbCardTick *tick;
  LbText text;
} Label;

/* The numbers stand along an arc under their ticks, and their spans count along that; or, where the
 * ticks stand steep and close, in a column beside them, from top to bottom. */
typedef struct
{
  size_t n;
  Label labels[LB_CARD_MOST_TICKS];
  LbCardSpan spans[LB_CARD_MOST_TICKS];
  double radius; /* of the arc */
  double column; /* where the column ends that is nearer to the ticks; 0: there is none */
  double ticks;  /* the radius where the ticks end */
} Labels;

/* What a number takes along the arc at `angle`. */
static double
half_along_arc (const LbText *text, double angle)
{
  return (text->width * cos (angle) + 0.9 * text->height * fabs (sin (angle))) / 2 + 1;
}

/* Every `step`th of the numbers, and the last: from the lowest angle up, or down in a column. */
static Labels
collect_labels (const Dial *d, double scale, LbFont font, size_t step, bool in_column)
{
  const LbCardTick *major[LB_CARD_MOST_TICKS];
  Labels labels = { .radius = scale - LABELS * d->body, .ticks = scale - 0.9 * d->body };
  size_t n = 0;

  for (size_t i = 0; i < d->gauge->n_ticks; i++)
    if (d->gauge->ticks[i].major)
      major[n++] = &d->gauge->ticks[i];
  for (size_t k = 0; k < n; k++)
    {
      size_t i = in_column ? n - 1 - k : k;
      LbText text;

      if (i % step != 0 && i + 1 != n)
        continue;
      text = lb_card_pen_text (d->pen, font, major[i]->words, 1e4);
      labels.labels[labels.n] = (Label){ major[i], text };
      labels.spans[labels.n].wanted =
          in_column ? labels.ticks * cos (major[i]->angle) : labels.radius * major[i]->angle;
      labels.spans[labels.n].above = labels.spans[labels.n].below =
          in_column ? 0.5 * text.height : half_along_arc (&text, major[i]->angle);
      labels.n++;
    }
  return labels;
}

/* How far out a number on the arc reaches. */
static double
edge_of (const Labels *labels, size_t i)
{
  const LbText *text = &labels->labels[i].text;
  double angle = labels->spans[i].y / labels->radius;

  return labels->radius + text->width / 2 * sin (angle) + 0.42 * text->height * cos (angle);
}

/* Whether a line from a tick to its number would go through the arc in which the others stand. */
static bool
lines_would_cross (const Labels *labels)
{
  double edge = 0, most;

  for (size_t i = 0; i < labels->n; i++)
    edge = fmax (edge, edge_of (labels, i));
  most = acos (fmin (1, (edge + 1) / labels->ticks));
  for (size_t i = 0; i < labels->n; i++)
    if (fabs (labels->spans[i].y - labels->spans[i].wanted) > most * labels->radius)
      return true;
  return false;
}

/* Beside one another between the middle line and the edge; FALSE without room. A number that gives
 * way stands at another angle, and takes another room there. */
static bool
spread_along_arc (const Dial *d, Labels *labels)
{
  double from = 3, to = labels->radius * d->reach - 3;

  for (int round = 0; round < 3; round++)
    {
      if (lb_card_spans_room (labels->spans, labels->n) > to - from)
        return false;
      lb_card_spans_spread (labels->spans, labels->n, from, to);
      for (size_t i = 0; i < labels->n; i++)
        {
          LbCardSpan *span = &labels->spans[i];

          span->above = span->below = fmax (
              span->above, half_along_arc (&labels->labels[i].text, span->y / labels->radius));
        }
    }
  return !lines_would_cross (labels);
}

/* The column between the middle line and the steepest part of the edge; FALSE without room. */
static bool
spread_in_column (const Dial *d, double scale, Labels *labels)
{
  double widest = 0, top, low;

  labels->column = labels->ticks * sin (d->gauge->low) - 1.5 * d->body;
  for (size_t i = 0; i < labels->n; i++)
    widest = fmax (widest, labels->labels[i].text.width);
  if (labels->column - widest < 4)
    return false;
  top = labels->column / tan (d->reach) + 2;
  low = fmin (sqrt (fmax (0, labels->ticks * labels->ticks - labels->column * labels->column)),
              scale - 2.2 * d->body);
  if (lb_card_spans_room (labels->spans, labels->n) > low - top)
    return false;
  lb_card_spans_spread (labels->spans, labels->n, top, low);
  return true;
}

/* All numbers, in smaller letters if need be; if even so there is no room for all, every second,
 * third ...; none where there is no room for two. */
static Labels
spread_labels (const Dial *d, double scale)
{
  LbFont font = LB_FONT_STRONG;

  for (size_t step = 1; step < LB_CARD_MOST_TICKS; font = LB_FONT_SCALE)
    {
      Labels labels = collect_labels (d, scale, font, step, false);

      if (spread_along_arc (d, &labels))
        return labels;
      labels = collect_labels (d, scale, font, step, true);
      if (spread_in_column (d, scale, &labels))
        return labels;
      step += font == LB_FONT_SCALE;
    }
  return (Labels){ 0 };
}

static void
rule_to_label (
    const Dial *d, const Labels *labels, const LbCardTick *tick, int side, double x, double y)
{
  lb_card_pen_rule (d->pen, d->x + side * labels->ticks * sin (tick->angle),
                    d->y + labels->ticks * cos (tick->angle), d->x + side * x, d->y + y, 0.4);
}

/* A number, and a line to its tick. */
static void
add_label (const Dial *d, const Labels *labels, size_t i, int side)
{
  const Label *label = &labels->labels[i];
  double angle = labels->spans[i].y / labels->radius, s = sin (angle), c = cos (angle);
  double edge = edge_of (labels, i);
  double x = labels->radius * s, y = labels->radius * c;

  if (labels->column > 0)
    {
      x = labels->column - label->text.width / 2;
      y = labels->spans[i].y;
      rule_to_label (d, labels, label->tick, side, labels->column + 1.5, y);
    }
  else
    rule_to_label (d, labels, label->tick, side, edge * s, edge * c);
  lb_scene_put_text (d->scene, LB_LAYER_FOREGROUND, label->text,
                     d->x + side * x - label->text.width / 2, d->y + y - label->text.height / 2,
                     LB_COLOUR_TEXT);
}

static bool
has_label (const Labels *labels, const LbCardTick *tick)
{
  for (size_t i = 0; i < labels->n; i++)
    if (labels->labels[i].tick == tick)
      return true;
  return false;
}

/* Whether a tick can be told from the one before it and from those with numbers. */
static bool
is_apart (const Dial *d, const Labels *labels, size_t i, double radius)
{
  const LbCardTick *ticks = d->gauge->ticks;
  double nearest = i > 0 ? ticks[i].angle - ticks[i - 1].angle : INFINITY;

  for (size_t k = 0; k < labels->n; k++)
    nearest = fmin (nearest, fabs (ticks[i].angle - labels->labels[k].tick->angle));
  return nearest * radius >= LEAST_APART;
}

/* To both sides; a thick mark at the angle of the card's own run. */
static void
add_heights (const Dial *d, double radius)
{
  Labels labels = spread_labels (d, radius);

  for (int side = -1; side <= 1; side += 2)
    {
      for (size_t i = 0; i < d->gauge->n_ticks; i++)
        {
          const LbCardTick *t = &d->gauge->ticks[i];
          bool is_long = has_label (&labels, t);

          if (is_long || is_apart (d, &labels, i, radius))
            tick (d, side * t->angle, radius, radius - (is_long ? 0.9 : 0.5) * d->body,
                  t->major ? 0.9 : 0.4);
        }
      for (size_t i = 0; i < labels.n; i++)
        add_label (d, &labels, i, side);
      if (lb_is_set (d->gauge->own_angle) && d->gauge->own_angle <= d->reach)
        tick (d, side * d->gauge->own_angle, radius + 0.45 * d->body, radius + 0.05 * d->body, 2.2);
    }
}

/* Where the weight lies on the bed: a broken arc along the inner scale. */
static void
add_bed (const Dial *d, double radius)
{
  LbText words = lb_card_pen_text (d->pen, LB_FONT_SCALE, _ ("on the bed"), 1e4);

  if (!d->gauge->touches_below || d->gauge->low <= 0)
    return;
  arc (d, radius - 0.35 * d->body, d->gauge->low,
       (LbLook){ .stroke = LB_COLOUR_TEXT, .width = 1.6, .pattern = LB_LINE_DOTTED });
  /* Not where the ticks begin so near that their lines would go through it. */
  if (radius * sin (d->gauge->low) > 0.5 * words.width + d->body)
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
  g_autofree char *heading = lb_card_computed (pen, gauge->title);
  double head = lb_card_pen_put_heading (pen, gauge->n_ticks ? heading : gauge->title, box);
  Dial d = { pen, gauge, pen->page->scene, .reach = reach_of (gauge) };
  double inner;

  if (gauge->n_ticks == 0) /* the caption says why there is none */
    {
      lb_card_pen_put (pen, LB_FONT_PLAIN, gauge->caption, box.x, box.y + head, box.width,
                       LB_COLOUR_TEXT);
      return;
    }
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
  const LbCardContents *contents = pen->contents;

  return contents->gauge.n_ticks > 0
                 || (contents->card.prints[LB_CARD_PART_GAUGE] && *contents->gauge.caption)
             ? 1
             : 0;
}

const LbCardPieceClass lb_card_gauge_piece = {
  .title = N_ ("Wire-angle gauge"),
  .n_variants = 2,
  .count = count_gauge,
  .height = gauge_height,
  .most_height = gauge_most_height,
  .add = add_gauge,
};
