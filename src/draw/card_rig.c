/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The rig to be built from. Along the shank it is true to proportion, with heights dimensioned from
 * the weight by running dimensions, as ISO 129-1 has them: one line from a common origin with an
 * arrow head at each height. The leaders are not to scale and broken to show it. */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "card_piece.h"
#include "card_spread.h"

#define NARROW                                                                                     \
  27.0                /* of plain letters: below this the shank's own length stands in words alone \
                       */
#define LEAST 17.0    /* the least width there is */
#define HAIR 0.5      /* points: dimension and extension lines */
#define TEXT_LEFT 2.3 /* from the shank to the words of a leader */
#define STUBS 3 /* the variant in which the words stand at the end of a short piece of leader */

/* One leader's line and words; those from the highest attachment come first. */
typedef struct
{
  const LbCardLeader *leader;
  LbText head, foot; /* over and under the line; a foot without layout: none */
} Row;

typedef struct
{
  const LbCardPen *pen;
  const LbCardRig *rig;
  double body;
  bool narrow;
  double total_x, heights_x, shank_x, text_x, right; /* from the box's left edge */
  LbText mainline, shank, weight;
  LbFont plain, strong;
  bool stubs;
  size_t n_rows;
  Row rows[LB_MAX_LEADERS];
  LbCardSpan spans[LB_MAX_LEADERS];
} Plan;

/* ---- Words ---- */

static char *
with_strength (const LbCardPen *pen, const LbCardLine *line)
{
  g_autofree char *strength = lb_card_marked (pen, line->strength, true);

  return g_strjoin (*strength && *line->material ? ", " : "", line->material, strength, NULL);
}

static char *
mainline_words (const LbCardPen *pen, const LbCardLine *line)
{
  g_autofree char *what = with_strength (pen, line);

  /* Translators: "Mainline to the reel: steel wire, 0.028 in" */
  return g_strdup_printf (_ ("%s to the reel: %s"), line->name, what);
}

static char *
line_words (const LbCardLine *line)
{
  if (!lb_is_set (line->cut_length))
    return g_strdup_printf (_ ("%s: %s"), line->name, line->length_words);
  /* Translators: "Lower leader: 10 ft, cut 10 ft 8 in" */
  return g_strdup_printf (_ ("%s: %s, cut %s"), line->name, line->length_words, line->cut_words);
}

static char *
shank_words (const LbCardPen *pen, const LbCardLine *line)
{
  g_autofree char *lengths = line_words (line);
  g_autofree char *what = with_strength (pen, line);

  return g_strdup_printf ("%s · %s", lengths, what);
}

/* The foot by variant: the line, and the lure with its details; the lure; nothing. */
static char *
foot_words (const LbCardPen *pen, const LbCardLeader *leader, int variant)
{
  g_autofree char *what = with_strength (pen, &leader->line);
  g_autofree char *lure = lb_card_isolated (leader->lure);
  g_autofree char *details = lb_card_marked (pen, leader->lure_details, true);
  GString *words;

  if (variant >= 2)
    return g_strdup ("");
  if (variant == 1)
    return g_strdup (lure);
  words = g_string_new (what);
  if (*leader->lure)
    g_string_append_printf (words, "%s%s", words->len ? "\n" : "", lure);
  if (*details)
    g_string_append_printf (words, "%s%s", *leader->lure ? ", " : "\n", details);
  return g_string_free (words, FALSE);
}

/* The head: the leader with its lengths, and the lure where there is no foot for it. */
static char *
head_words (const LbCardLeader *leader, int variant)
{
  g_autofree char *lengths = line_words (&leader->line);
  g_autofree char *lure = lb_card_isolated (leader->lure);

  if (variant != 2 || !*leader->lure)
    return g_steal_pointer (&lengths);
  return g_strdup_printf ("%s · %s", lengths, lure);
}

/* ---- Planning ---- */

/* Places across, which depend on how long the words of the dimensions are. */
static void
plan_across (Plan *plan, double width)
{
  const LbCardPen *pen = plan->pen;
  double heights = 0, total;

  for (size_t i = 0; i < plan->rig->n_leaders; i++)
    heights = fmax (
        heights,
        lb_card_pen_text (pen, plan->strong, plan->rig->leaders[i].attachment_words, 1e4).width);
  total = lb_card_pen_text (pen, plan->plain, plan->rig->shank.length_words, 1e4).width;
  plan->narrow = width < NARROW * plan->body || plan->rig->shank.length <= 0;
  plan->total_x = plan->narrow ? 0 : total + 3;
  plan->heights_x = plan->total_x + 0.5 * plan->body + heights + 7;
  plan->shank_x = plan->heights_x + 1.2 * plan->body;
  plan->text_x = plan->shank_x + TEXT_LEFT * plan->body;
  plan->right = width;
}

static void
plan_row (Plan *plan, size_t row, const LbCardLeader *leader, int variant)
{
  double room = plan->right - plan->text_x;
  g_autofree char *head = head_words (leader, variant);
  g_autofree char *foot = foot_words (plan->pen, leader, variant);
  Row *r = &plan->rows[row];
  LbCardSpan *span = &plan->spans[row];

  r->leader = leader;
  if (variant == STUBS) /* the lure too, where it has room in the same line */
    {
      g_autofree char *longer = head_words (leader, variant - 1);

      r->head = lb_card_pen_text (plan->pen, LB_FONT_SCALE, longer, 1e4);
      if (r->head.width <= room)
        {
          g_free (head);
          head = g_steal_pointer (&longer);
        }
    }
  r->head = lb_card_pen_text (plan->pen, variant < 2 ? LB_FONT_STRONG : LB_FONT_SCALE, head, room);
  if (*foot)
    r->foot = lb_card_pen_text (plan->pen, variant ? LB_FONT_SCALE : LB_FONT_PLAIN, foot, room);
  span->above = r->head.height + 0.62 * plan->body;
  span->below = 0.72 * plan->body + (*foot ? r->foot.height + 0.4 * plan->body : 0);
  if (variant == STUBS)
    span->above = span->below = 0.5 * fmax (r->head.height, 1.15 * plan->body);
}

static Plan
make_plan (const LbCardPen *pen, double width, int variant)
{
  Plan plan = { .pen = pen, .rig = &pen->contents->rig, .body = lb_card_pen_body (pen) };
  g_autofree char *mainline = mainline_words (pen, &plan.rig->mainline);
  g_autofree char *shank = shank_words (pen, &plan.rig->shank);
  double beside;

  plan.stubs = variant == STUBS;
  plan.plain = plan.stubs ? LB_FONT_SCALE : LB_FONT_PLAIN;
  plan.strong = plan.stubs ? LB_FONT_SCALE : LB_FONT_STRONG;
  plan_across (&plan, width);
  beside = width - plan.shank_x - 0.8 * plan.body;
  plan.mainline = lb_card_pen_text (pen, plan.plain, mainline, beside);
  if (plan.rig->shank.length > 0)
    plan.shank = lb_card_pen_text (pen, plan.strong, shank, beside);
  plan.weight = lb_card_pen_text (pen, plan.strong, plan.rig->weight, beside - 2.5 * plan.body);
  plan.n_rows = plan.rig->n_leaders;
  for (size_t i = 0; i < plan.n_rows; i++)
    plan_row (&plan, i, &plan.rig->leaders[plan.n_rows - 1 - i], variant);
  return plan;
}

static double
weight_radius (const Plan *plan)
{
  return 0.95 * plan->body;
}

/* Over the shank: the words of the mainline and of the shank. */
static double
top_height (const Plan *plan)
{
  return fmax (plan->mainline.height + plan->shank.height + 0.5 * plan->body, 2.6 * plan->body);
}

/* Under it: the weight, with its words beside it. */
static double
bottom_height (const Plan *plan)
{
  return fmax (2.9 * weight_radius (plan), plan->weight.height) + 0.3 * plan->body;
}

static double
rig_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  Plan plan;

  if (width < LEAST * lb_card_pen_body (pen))
    return INFINITY;
  plan = make_plan (pen, width, piece->variant);
  return lb_card_pen_heading_height (pen, _ ("Rig"), width) + top_height (&plan)
         + fmax (lb_card_spans_room (plan.spans, plan.n_rows) + 1.3 * plan.body, 7 * plan.body)
         + bottom_height (&plan);
}

static double
rig_most_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  double least = rig_height (pen, piece, width);

  return fmax (1.25 * least, fmin (0.55 * width, 2 * least));
}

/* ---- Drawing ---- */

typedef struct
{
  const Plan *plan;
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
  const Plan *plan = g->plan;
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
  const Plan *plan = g->plan;
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
  const Plan *plan = g->plan;
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
longest_leader (const Plan *plan)
{
  double longest = 1e-9;

  for (size_t i = 0; i < plan->n_rows; i++)
    longest = fmax (longest, plan->rows[i].leader->line.length);
  return longest;
}

/* Where a leader's line ends, at the nose of its lure. */
static double
nose_x (const Ground *g, const Row *row, double level)
{
  double reach = g->x + g->plan->right - g->scene->style.lure_length_least - level;
  double share = 0.45 + 0.55 * row->leader->line.length / longest_leader (g->plan);

  if (g->plan->stubs)
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
add_leader (const Ground *g, const Row *row, double y)
{
  const Plan *plan = g->plan;
  double b = plan->body, start = g->x + plan->shank_x, level = start + 1.8 * b;
  double nose = nose_x (g, row, level);

  add_leader_line (g, start, height_y (g, row->leader->attachment), level, y, nose);
  if (plan->stubs)
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
  const Plan *plan = g->plan;
  double r = weight_radius (plan), x = g->x + plan->shank_x, least;
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
  const Plan *plan = g->plan;
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
  Plan plan = make_plan (pen, box.width, piece->variant);
  double start = box.y + lb_card_pen_put_heading (pen, _ ("Rig"), box);
  Ground g = { .plan = &plan, .scene = pen->page->scene, .x = box.x };

  g.top = start + top_height (&plan);
  g.low = box.y + box.height - bottom_height (&plan);
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
  .height = rig_height,
  .most_height = rig_most_height,
  .add = add_rig,
};
