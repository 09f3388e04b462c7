/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_rig_plan.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define NARROW                                                                                     \
  27.0                /* of plain letters: below this the shank's own length stands in words alone \
                       */
#define LEAST 17.0    /* the least width there is */
#define TEXT_LEFT 2.3 /* from the shank to the words of a leader */
#define SHORT_ENDS                                                                                 \
  3 /* the variant in which the words stand at the end of a short piece of leader */

/* ---- Words ---- */

/* Our own numbers keep their order after a name that runs from right to left (Unicode LRM). */
#define LEFT_TO_RIGHT "\u200e"

static char *
with_strength (const LbCardLine *line)
{
  return g_strjoin (*line->strength && *line->material ? ", " : "", line->material, line->strength,
                    NULL);
}

static char *
mainline_words (const LbCardLine *line)
{
  g_autofree char *what = with_strength (line);

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
shank_words (const LbCardLine *line)
{
  g_autofree char *lengths = line_words (line);
  g_autofree char *what = with_strength (line);

  return g_strdup_printf ("%s · %s", lengths, what);
}

/* The foot by variant: the line, and the lure with its details; the lure; nothing. */
static char *
foot_words (const LbCardPen *pen, const LbCardLeader *leader, int variant)
{
  g_autofree char *what = with_strength (&leader->line);
  g_autofree char *lure = lb_card_isolated (leader->lure);
  g_autofree char *marked = lb_card_marked (pen, leader->lure_details, true);
  g_autofree char *details = g_strconcat (LEFT_TO_RIGHT, marked, LEFT_TO_RIGHT, NULL);
  GString *words;

  if (variant >= 2)
    return g_strdup ("");
  if (variant == 1)
    return g_strdup (lure);
  words = g_string_new (what);
  if (*leader->lure)
    g_string_append_printf (words, "%s%s", words->len ? "\n" : "", lure);
  if (*marked)
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
plan_across (LbRigPlan *plan, double width)
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
plan_row (LbRigPlan *plan, size_t row, const LbCardLeader *leader, int variant)
{
  double room = plan->right - plan->text_x;
  g_autofree char *head = head_words (leader, variant);
  g_autofree char *foot = foot_words (plan->pen, leader, variant);
  LbRigRow *r = &plan->rows[row];
  LbCardSpan *span = &plan->spans[row];

  r->leader = leader;
  if (variant == SHORT_ENDS) /* the lure too, where it has room in the same line */
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
  if (variant == SHORT_ENDS)
    span->above = span->below = 0.5 * fmax (r->head.height, 1.15 * plan->body);
}

LbRigPlan
lb_rig_plan (const LbCardPen *pen, double width, int variant)
{
  LbRigPlan plan = { .pen = pen, .rig = &pen->contents->rig, .body = lb_card_pen_body (pen) };
  g_autofree char *mainline = mainline_words (&plan.rig->mainline);
  g_autofree char *shank = shank_words (&plan.rig->shank);
  double beside;

  plan.short_ends = variant == SHORT_ENDS;
  plan.plain = plan.short_ends ? LB_FONT_SCALE : LB_FONT_PLAIN;
  plan.strong = plan.short_ends ? LB_FONT_SCALE : LB_FONT_STRONG;
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

double
lb_rig_weight_radius (const LbRigPlan *plan)
{
  return 0.95 * plan->body;
}

double
lb_rig_top_height (const LbRigPlan *plan)
{
  return fmax (plan->mainline.height + plan->shank.height + 0.5 * plan->body, 2.6 * plan->body);
}

double
lb_rig_bottom_height (const LbRigPlan *plan)
{
  return fmax (2.9 * lb_rig_weight_radius (plan), plan->weight.height) + 0.3 * plan->body;
}

double
lb_rig_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  LbRigPlan plan;

  if (width < LEAST * lb_card_pen_body (pen))
    return INFINITY;
  plan = lb_rig_plan (pen, width, piece->variant);
  return lb_card_pen_heading_height (pen, _ ("Rig"), width) + lb_rig_top_height (&plan)
         + fmax (lb_card_spans_room (plan.spans, plan.n_rows) + 1.3 * plan.body, 7 * plan.body)
         + lb_rig_bottom_height (&plan);
}

double
lb_rig_most_height (const LbCardPen *pen, const LbCardPiece *piece, double width)
{
  double least = lb_rig_height (pen, piece, width);

  return fmax (1.25 * least, fmin (0.55 * width, 2 * least));
}
