/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig to be built from. Along the shank it is true to proportion, with heights dimensioned from
 * the weight by running dimensions, as ISO 129-1 has them: one line from a common origin with an
 * arrow head at each height. The leaders are not to scale and broken to show it. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_rig_plan.h"

#define HAIR 0.5 /* points: dimension and extension lines */

/* ---- Drawing ---- */

typedef struct
{
  const LbRigPlan *plan;
  LbScene *scene;
  double x;         /* of the box */
  double top, low;  /* y of the shank's ends */
  double per_metre; /* along the shank */
} Ground;

static void
hair (const Ground *g, double x1, double y1, double x2, double y2)
{
  lb_card_pen_rule (g->plan->pen, g->x + x1, y1, g->x + x2, y2, HAIR);
}

static double
height_y (const Ground *g, double height)
{
  return g->low - height * g->per_metre;
}

/* The shank's whole length, on a dimension line of its own. */
static void
add_total (const Ground *g)
{
  const LbRigPlan *plan = g->plan;
  double x = plan->total_x;
  LbText text = lb_card_pen_text (plan->pen, plan->plain, plan->rig->shank.length_words, 1e4);

  if (plan->narrow)
    return;
  hair (g, x - 3, g->top, plan->shank_x - 2, g->top);
  hair (g, x, g->top, x, g->low);
  lb_card_pen_arrow (plan->pen, g->x + x, g->top, -G_PI / 2);
  lb_card_pen_arrow (plan->pen, g->x + x, g->low, G_PI / 2);
  lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, text, g->x + x - 3 - text.width,
                     (g->top + g->low - text.height) / 2, LB_COLOUR_TEXT);
}

/* A height's extension line, arrow head and number, which may have to stand off its place. */
static void
add_height (const Ground *g, const LbCardLeader *leader, double text_y)
{
  const LbRigPlan *plan = g->plan;
  double x = plan->heights_x, y = height_y (g, leader->attachment);
  LbText text = lb_card_pen_text (plan->pen, plan->strong, leader->attachment_words, 1e4);

  hair (g, x, y, plan->shank_x - 2, y);
  hair (g, x, y, x - 5, text_y);
  if (y < g->low - 0.5)
    lb_card_pen_arrow (plan->pen, g->x + x, y, -G_PI / 2);
  lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, text, g->x + x - 6 - text.width,
                     text_y - text.height / 2, LB_COLOUR_TEXT);
}

static void
add_heights (const Ground *g)
{
  const LbRigPlan *plan = g->plan;
  LbCardSpan spans[LB_MAX_LEADERS];
  double highest = g->low;

  for (size_t i = 0; i < plan->n_rows; i++)
    {
      LbText text =
          lb_card_pen_text (plan->pen, plan->strong, plan->rows[i].leader->attachment_words, 1e4);

      spans[i] = (LbCardSpan){ .wanted = height_y (g, plan->rows[i].leader->attachment),
                               .above = 0.5 * text.height,
                               .below = 0.5 * text.height };
      highest = fmin (highest, spans[i].wanted);
    }
  /* Under the line that leads to the shank's own dimension, where there is one. */
  lb_card_spans_spread (spans, plan->n_rows, g->top + (plan->narrow ? -0.5 * plan->body : 1.2),
                        g->low + plan->body);
  for (size_t i = 0; i < plan->n_rows; i++)
    add_height (g, plan->rows[i].leader, spans[i].y);
  if (plan->n_rows == 0)
    return;
  hair (g, plan->heights_x, g->low, plan->heights_x, highest);
  hair (g, plan->heights_x - 3, g->low, plan->shank_x - 2, g->low);
  lb_scene_begin (g->scene, LB_LAYER_FOREGROUND); /* the common origin */
  lb_scene_add_ellipse (g->scene, g->x + plan->heights_x, g->low, 0.22 * plan->body,
                        0.22 * plan->body);
  lb_scene_end (g->scene,
                (LbLook){ .fill = LB_COLOUR_HANDLE_EDGE, .stroke = LB_COLOUR_TEXT, .width = HAIR });
}

/* Two strokes across a line that is not drawn at its length. */
static void
add_break (const Ground *g, double x, double y)
{
  double b = g->plan->body;
  LbLook gap = { .stroke = LB_COLOUR_HANDLE_EDGE, .width = 0.34 * b };

  lb_scene_line (g->scene, LB_LAYER_FOREGROUND, x - 0.12 * b, y + 0.3 * b, x + 0.12 * b,
                 y - 0.3 * b, gap);
  for (int side = -1; side <= 1; side += 2)
    lb_card_pen_rule (g->plan->pen, x + (0.18 * side - 0.12) * b, y + 0.35 * b,
                      x + (0.18 * side + 0.12) * b, y - 0.35 * b, 0.7);
}

static double
longest_leader (const LbRigPlan *plan)
{
  double longest = 1e-9;

  for (size_t i = 0; i < plan->n_rows; i++)
    longest = fmax (longest, plan->rows[i].leader->line.length);
  return longest;
}

/* Where a leader's line ends, at the nose of its lure. */
static double
nose_x (const Ground *g, const LbRigRow *row, double level)
{
  double reach = g->x + g->plan->right - g->scene->style.lure_length_least - level;
  double share = 0.45 + 0.55 * row->leader->line.length / longest_leader (g->plan);

  if (g->plan->short_ends)
    return level + 0.2 * g->plan->body;
  return level + fmax (reach * share, 0.5 * g->plan->body);
}

/* From the attachment down or up to `y`, and along it to `nose`. */
static void
add_leader_line (const Ground *g, double start, double from, double level, double y, double nose)
{
  double b = g->plan->body;

  lb_scene_begin (g->scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (g->scene, start, from);
  lb_scene_curve_to (g->scene, start + 0.7 * b, from, start + 0.9 * b, y, level, y);
  lb_scene_line_to (g->scene, nose, y);
  lb_scene_end (g->scene, (LbLook){ .stroke = LB_COLOUR_LEADER, .width = 1.0 });
  lb_scene_begin (g->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (g->scene, start, from, 0.28 * b, 0.28 * b);
  lb_scene_end (
      g->scene,
      (LbLook){ .fill = LB_COLOUR_HANDLE_EDGE, .stroke = LB_COLOUR_LEADER, .width = 1.0 });
}

static void
add_leader (const Ground *g, const LbRigRow *row, double y)
{
  const LbRigPlan *plan = g->plan;
  double b = plan->body, start = g->x + plan->shank_x, level = start + 1.8 * b;
  double nose = nose_x (g, row, level);

  add_leader_line (g, start, height_y (g, row->leader->attachment), level, y, nose);
  if (plan->short_ends)
    {
      lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, row->head, g->x + plan->text_x,
                         y - row->head.height / 2, LB_COLOUR_TEXT);
      return;
    }
  add_break (g, level + 0.6 * (nose - level), y);
  lb_scene_add_lure (g->scene, (int) row->leader->leader, nose, y, INFINITY);
  lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, row->head, g->x + plan->text_x,
                     y - 0.58 * b - row->head.height, LB_COLOUR_TEXT);
  if (row->foot.layout)
    lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, row->foot, g->x + plan->text_x, y + 0.68 * b,
                       LB_COLOUR_TEXT);
}

static void
add_weight (const Ground *g)
{
  const LbRigPlan *plan = g->plan;
  double r = lb_rig_weight_radius (plan), x = g->x + plan->shank_x, least;
  double middle = g->low + 1.35 * r;
  double clear = g->scene->setup.rig.weight.shape == LB_WEIGHT_TORPEDO ? 2.5 * r : 1.3 * r;

  least = g->scene->style.weight_radius_least;
  g->scene->style.weight_radius_least = r;
  lb_scene_line (g->scene, LB_LAYER_FOREGROUND, x, g->low, x, middle,
                 (LbLook){ .stroke = LB_COLOUR_WIRE, .width = 1.6 });
  lb_scene_add_weight (g->scene, x, middle, INFINITY);
  g->scene->style.weight_radius_least = least;
  lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, plan->weight, x + clear + 0.4 * plan->body,
                     middle - plan->weight.height / 2, LB_COLOUR_TEXT);
}

static void
add_trunk (const Ground *g, double box_top)
{
  const LbRigPlan *plan = g->plan;
  double x = g->x + plan->shank_x, words = x + 0.8 * plan->body;
  LbLook wire = { .stroke = LB_COLOUR_WIRE, .width = 1.1 };
  LbLook shank = { .stroke = LB_COLOUR_SHANK, .width = 2.0 };

  lb_scene_line (g->scene, LB_LAYER_FOREGROUND, x, box_top, x, g->top, wire);
  lb_scene_line (g->scene, LB_LAYER_FOREGROUND, x, g->top, x, g->low, shank);
  lb_scene_begin (g->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (g->scene, x, g->top, 0.24 * plan->body, 0.24 * plan->body);
  lb_scene_end (g->scene, (LbLook){ .fill = LB_COLOUR_SHANK });
  lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, plan->mainline, words, box_top, LB_COLOUR_TEXT);
  if (plan->shank.layout)
    lb_scene_put_text (g->scene, LB_LAYER_FOREGROUND, plan->shank, words,
                       box_top + plan->mainline.height + 0.2 * plan->body, LB_COLOUR_TEXT);
}

static void
add_rig (const LbCardPen *pen, const LbCardPiece *piece, LbBox box)
{
  LbRigPlan plan = lb_rig_plan (pen, box.width, piece->variant);
  double start = box.y + lb_card_pen_put_heading (pen, _ ("Rig"), box);
  Ground g = { .plan = &plan, .scene = pen->page->scene, .x = box.x };

  g.top = start + lb_rig_top_height (&plan);
  g.low = box.y + box.height - lb_rig_bottom_height (&plan);
  g.per_metre = plan.rig->shank.length > 0 ? (g.low - g.top) / plan.rig->shank.length : 0;
  for (size_t i = 0; i < plan.n_rows; i++)
    plan.spans[i].wanted = height_y (&g, plan.rows[i].leader->attachment);
  lb_card_spans_spread (plan.spans, plan.n_rows, g.top, g.low);
  add_trunk (&g, start);
  add_total (&g);
  add_heights (&g);
  for (size_t i = 0; i < plan.n_rows; i++)
    add_leader (&g, &plan.rows[i], plan.spans[i].y);
  add_weight (&g);
}

static size_t
count_rig (const LbCardPen *pen)
{
  return pen->contents->card.prints[LB_CARD_PART_RIG] ? 1 : 0;
}

const LbCardPieceClass lb_card_rig_piece = {
  .title = N_ ("Rig"),
  .n_variants = 4,
  .count = count_rig,
  .height = lb_rig_height,
  .most_height = lb_rig_most_height,
  .add = add_rig,
};
