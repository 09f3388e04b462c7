/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A remark on the answer, or why there is none, as words in the picture. */
#include <math.h>

#include "phrases.h"

#define COLUMNS 9
#define ROWS 8

typedef struct
{
  LbText text;
  double width, height;
} Card;

static Card
make_card (LbScene *scene, const char *words, double wrap)
{
  double pad = scene->style.pad;
  Card card = { .text = lb_draw_context_text (scene->context, &scene->style, LB_FONT_STRONG, words,
                                              wrap) };

  card.width = card.text.width + 2 * pad + 24 * scene->style.scale;
  card.height = fmax (card.text.height, 20 * scene->style.scale) + 1.4 * pad;
  return card;
}

/* The place with the fewest lines under it, the upper right preferred; false: nowhere free. */
static bool
find_place (const LbScene *scene, const Card *card, LbBox *best, double *best_cost)
{
  double margin = 6 * scene->style.scale, top = margin;
  double x_room = scene->width - card->width - 2 * margin;
  double y_room = scene->height - card->height - 2 * margin;
  bool found = false;

  for (int i = 0; i < COLUMNS * ROWS && x_room >= 0 && y_room >= 0; i++)
    {
      int column = i % COLUMNS, row = i / COLUMNS;
      LbBox box = { margin + x_room * column / (COLUMNS - 1), top + y_room * row / (ROWS - 1),
                    card->width, card->height };
      double cost = (COLUMNS - 1 - column) + 2 * row;

      if (!lb_scene_is_free (scene, box, 3 * scene->style.scale))
        continue;
      for (guint k = 0; k < scene->lines->len; k++)
        if (lb_box_overlaps (box, g_array_index (scene->lines, LbBox, k)))
          cost += 8;
      if (cost < *best_cost)
        {
          *best_cost = cost;
          *best = box;
          found = true;
        }
    }
  return found;
}

/* A triangle with a stroke and a dot in it. */
static void
add_sign (LbScene *scene, double x, double y)
{
  double r = 9 * scene->style.scale;
  LbLook edge = { .stroke = LB_COLOUR_REMARK, .width = 1.8 * scene->style.scale };
  LbLook dot = { .fill = LB_COLOUR_REMARK };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (scene, x, y - r);
  lb_scene_line_to (scene, x + r, y + 0.75 * r);
  lb_scene_line_to (scene, x - r, y + 0.75 * r);
  lb_scene_close (scene);
  lb_scene_end (scene, edge);
  lb_scene_line (scene, LB_LAYER_FOREGROUND, x, y - 0.35 * r, x, y + 0.15 * r, edge);
  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, x, y + 0.46 * r, 0.11 * r, 0.11 * r);
  lb_scene_end (scene, dot);
}

static void
add_card (LbScene *scene, const Card *card, LbBox box)
{
  double s = scene->style.scale, pad = scene->style.pad;
  LbLook look = {
    .fill = LB_COLOUR_REMARK_CARD,
    .stroke = LB_COLOUR_REMARK,
    .width = 1.4 * s,
  };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (scene, box.x, box.y, box.width, box.height, pad);
  lb_scene_end (scene, look);
  add_sign (scene, box.x + pad + 10 * s, box.y + box.height / 2 + s);
  lb_scene_put_text (scene, LB_LAYER_FOREGROUND, card->text, box.x + pad + 24 * s,
                     box.y + (box.height - card->text.height) / 2, LB_COLOUR_REMARK);
  lb_scene_take (scene, box);
}

void
lb_scene_add_remark_words (LbScene *scene, const char *words)
{
  double s = scene->style.scale;
  const double wraps[] = { 420 * s, 300 * s, 560 * s, 220 * s, 900 * s };
  double best_cost = INFINITY;
  LbBox best = { 0 };
  Card chosen = { 0 };

  for (size_t i = 0; i < G_N_ELEMENTS (wraps); i++)
    {
      Card card = make_card (scene, words, fmin (wraps[i], scene->width - 60 * s));

      if (find_place (scene, &card, &best, &best_cost))
        chosen = card;
    }
  if (chosen.text.layout)
    add_card (scene, &chosen, best);
  else
    scene->n_missing_labels++;
}

void
lb_scene_add_remark (LbScene *scene)
{
  const char *status = lb_phrase_status (scene);
  char *words;

  if (!status && !scene->remark)
    return;
  words = g_strjoin (" ", status ? status : scene->remark, status ? scene->remark : NULL, NULL);
  lb_scene_add_remark_words (scene, words);
  g_free (words);
}
