/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "labels.h"

#include <math.h>

#define PI 3.14159265358979323846
#define N_DIRECTIONS 16
#define N_RINGS 10
#define N_SLOTS (N_DIRECTIONS * N_RINGS)

/* Distances from the thing to the card, in style units. */
static const double rings[N_RINGS] = { 5, 14, 26, 42, 62, 88, 120, 165, 220, 290 };

/* What a place costs, in style units of distance. */
#define COST_OF_A_LINE 55.0              /* a piece of a line under the card */
#define COST_OF_A_LINE_IN_A_CROWD 18.0   /* where lines are everywhere */
#define COST_OF_A_CROSSING 110.0         /* the pointer runs through other words */
#define COST_OF_TURNING 34.0             /* the card stands on the side away from where it should */
#define GAIN_OF_STAYING 40.0             /* the card stood there before */
#define CHEAPEST (5.0 - GAIN_OF_STAYING) /* no slot costs less: the nearest ring, unmoved */
#define COST_OF_LESS_WORDS 150.0         /* each step to a shorter wording */

typedef struct
{
  LbText title, detail; /* detail.layout may be NULL */
  double width, height;
} Card;

/* A title much wider than the second line is cut short with dots: a long name must not make the
 * card too wide to find a place. */
static Card
make_card (LbScene *scene, const LbLabel *label, const LbWording *wording)
{
  double pad = scene->style.pad, widest = 210 * scene->style.scale;
  Card card = { .title = lb_scene_text (scene, label->title_font, wording->title.text) };

  if (*wording->detail.text)
    card.detail = lb_scene_text (scene, LB_FONT_PLAIN, wording->detail.text);
  widest = fmax (widest, 1.1 * card.detail.width);
  if (card.title.width > widest && card.detail.layout)
    card.title = lb_draw_context_text (scene->context, &scene->style, label->title_font,
                                       wording->title.text, -widest);
  card.width =
      fmax (card.title.width, card.detail.width) + 2 * pad + (label->accent ? 0.6 * pad : 0);
  card.height = card.title.height + card.detail.height + 0.8 * pad;
  return card;
}

/* The card's box for a slot: on a ring round the thing, its near edge on the ring. */
static LbBox
slot_box (const LbLabel *label, const Card *card, int slot, double scale)
{
  double angle = label->toward + 2 * PI * (slot % N_DIRECTIONS) / N_DIRECTIONS;
  double distance = label->clear + rings[slot / N_DIRECTIONS] * scale;
  double c = cos (angle), s = sin (angle);

  return (LbBox){ label->x + distance * c + card->width / 2 * (c - 1),
                  label->y + distance * s + card->height / 2 * (s - 1), card->width, card->height };
}

/* The point of the card nearest to the thing. */
static void
pointer_end (const LbLabel *label, LbBox box, double *x, double *y)
{
  *x = fmax (box.x, fmin (label->x, box.x + box.width));
  *y = fmax (box.y, fmin (label->y, box.y + box.height));
}

static bool
segment_hits_box (double x1, double y1, double x2, double y2, LbBox box)
{
  double t0 = 0, t1 = 1;
  double p[4] = { x1 - x2, x2 - x1, y1 - y2, y2 - y1 };
  double q[4] = { x1 - box.x, box.x + box.width - x1, y1 - box.y, box.y + box.height - y1 };

  /* Liang and Barsky's way of clipping. */
  for (int i = 0; i < 4; i++)
    {
      double r = p[i] != 0 ? q[i] / p[i] : 0;

      if (p[i] == 0 && q[i] < 0)
        return false;
      if (p[i] < 0)
        t0 = fmax (t0, r);
      else if (p[i] > 0)
        t1 = fmin (t1, r);
    }
  return t0 < t1;
}

/* Where a label has been put. */
typedef struct
{
  Card card;
  LbBox box;
  double x, y; /* the near end of its pointer */
  bool has_pointer;
  bool is_put;
} Place;

/* What lies in the way, beyond what is forbidden; stops counting above `enough`. */
static double
cost_of_lines (const LbScene *scene, LbBox box, double enough)
{
  double cost = 0;

  for (guint i = 0; i < scene->lines->len && cost < enough; i++)
    if (lb_box_overlaps (box, g_array_index (scene->lines, LbBox, i)))
      cost += scene->is_crowded ? COST_OF_A_LINE_IN_A_CROWD : COST_OF_A_LINE;
  return cost;
}

/* The pointers of the labels before it that the card would cover. */
static double
cost_of_pointers (const LbLabel *labels, const Place *places, size_t n, LbBox box)
{
  double cost = 0;

  for (size_t i = 0; i < n; i++)
    if (places[i].has_pointer
        && segment_hits_box (places[i].x, places[i].y, labels[i].x, labels[i].y, box))
      cost += COST_OF_A_CROSSING;
  return cost;
}

static double
cost_of_pointer (const LbScene *scene, const LbLabel *label, LbBox box)
{
  double x, y, cost = 0;

  pointer_end (label, box, &x, &y);
  for (guint i = 0; i < scene->texts->len; i++)
    {
      LbBox other = g_array_index (scene->texts, LbBox, i);
      bool holds_thing = label->x >= other.x - 1 && label->x <= other.x + other.width + 1
                         && label->y >= other.y - 1 && label->y <= other.y + other.height + 1;

      if (!holds_thing && segment_hits_box (x, y, label->x, label->y, other))
        cost += COST_OF_A_CROSSING;
    }
  return cost;
}

/* Turned evenly away from where the label should stand, to the far side and back. */
static double
cost_of_turning (int direction)
{
  int half = N_DIRECTIONS / 2;
  int turned = direction <= half ? direction : N_DIRECTIONS - direction;

  return COST_OF_TURNING * turned * turned / (half * half);
}

/* The best slot for the card of labels[n], with its cost, or -1. */
static int
best_slot (const LbScene *scene,
           const LbLabel *labels,
           const Place *places,
           size_t n,
           const Card *card,
           double *best_cost)
{
  const LbLabel *label = &labels[n];
  double scale = scene->style.scale;
  int best = -1, last = lb_draw_context_last_slot (scene->context, label->memory);

  for (int slot = 0; slot < N_SLOTS; slot++)
    {
      double cost = rings[slot / N_DIRECTIONS] + cost_of_turning (slot % N_DIRECTIONS)
                    - (slot == last ? GAIN_OF_STAYING : 0);
      LbBox box;

      if (cost >= *best_cost)
        continue;
      box = slot_box (label, card, slot, scale);
      if (!lb_scene_is_free (scene, box, 3 * scale))
        continue;
      cost += cost_of_lines (scene, box, *best_cost - cost);
      if (cost < *best_cost)
        cost += cost_of_pointer (scene, label, box) + cost_of_pointers (labels, places, n, box);
      if (cost < *best_cost)
        {
          *best_cost = cost;
          best = slot;
        }
    }
  return best;
}

static void
add_pointer (LbScene *scene, const LbLabel *label, const Place *place)
{
  LbLook look = { .stroke = LB_COLOUR_POINTER, .width = scene->style.pointer_width };
  double t = label->clear / hypot (place->x - label->x, place->y - label->y);

  lb_scene_line (scene, LB_LAYER_FOREGROUND, place->x, place->y,
                 label->x + (place->x - label->x) * t, label->y + (place->y - label->y) * t, look);
}

static void
add_accent (LbScene *scene, const LbLabel *label, LbBox box)
{
  double pad = scene->style.pad, x = box.x + 0.65 * pad;
  LbLook bar = { .fill = label->accent };
  LbLook line = { .stroke = label->accent, .width = 0.36 * pad, .pattern = label->pattern };

  if (label->pattern != LB_LINE_SOLID)
    {
      lb_scene_line (scene, LB_LAYER_FOREGROUND, x, box.y + 0.6 * pad, x,
                     box.y + box.height - 0.6 * pad, line);
      return;
    }
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (scene, box.x + 0.4 * pad, box.y + 0.6 * pad, 0.5 * pad, box.height - 1.2 * pad,
                    0.25 * pad);
  lb_scene_end (scene, bar);
}

static void
add_card (LbScene *scene, const LbLabel *label, const Place *place)
{
  const Card *card = &place->card;
  LbBox box = place->box;
  double pad = scene->style.pad, left = box.x + pad;
  LbLook look = {
    .fill = LB_COLOUR_CARD,
    .stroke = LB_COLOUR_CARD_EDGE,
    .width = scene->style.pointer_width,
  };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (scene, box.x, box.y, box.width, box.height, 0.7 * pad);
  lb_scene_end (scene, look);
  if (label->accent)
    {
      add_accent (scene, label, box);
      left += 0.6 * pad;
    }
  lb_scene_put_text (scene, LB_LAYER_FOREGROUND, card->title, left, box.y + 0.4 * pad,
                     LB_COLOUR_TEXT);
  if (card->detail.layout)
    lb_scene_put_text (scene, LB_LAYER_FOREGROUND, card->detail, left,
                       box.y + 0.4 * pad + card->title.height, LB_COLOUR_TEXT);
}

/* Finds the place for labels[n]: a long wording far off may lose to a short one close by. */
static void
find_place (LbScene *scene, const LbLabel *labels, Place *places, size_t n)
{
  const LbLabel *label = &labels[n];
  Place *place = &places[n];
  double best_cost = INFINITY;
  int best = -1;

  for (int w = 0; w < LB_LABEL_WORDINGS && *label->wordings[w].title.text; w++)
    {
      double cost = best_cost - w * COST_OF_LESS_WORDS;
      Card card;
      int slot;

      if (cost <= CHEAPEST)
        break;
      card = make_card (scene, label, &label->wordings[w]);
      slot = best_slot (scene, labels, places, n, &card, &cost);

      if (slot < 0)
        continue;
      best_cost = cost + w * COST_OF_LESS_WORDS;
      best = slot;
      place->card = card;
      place->box = slot_box (label, &card, slot, scene->style.scale);
      place->is_put = true;
    }
  lb_draw_context_keep_slot (scene->context, label->memory, best);
  if (!place->is_put)
    return;
  pointer_end (label, place->box, &place->x, &place->y);
  place->has_pointer =
      hypot (place->x - label->x, place->y - label->y) >= label->clear + 7 * scene->style.scale;
  lb_scene_take (scene, place->box);
}

void
lb_labels_place (LbScene *scene, const LbLabel *labels, size_t n)
{
  Place places[LB_LABELS_MOST] = { 0 };

  n = MIN (n, LB_LABELS_MOST);
  for (size_t i = 0; i < n; i++)
    {
      find_place (scene, labels, places, i);
      scene->n_missing_labels += !places[i].is_put;
    }
  for (size_t i = 0; i < n; i++)
    if (places[i].has_pointer)
      add_pointer (scene, &labels[i], &places[i]);
  for (size_t i = 0; i < n; i++)
    if (places[i].is_put)
      add_card (scene, &labels[i], &places[i]);
}
