/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comparison_words.h"

#include <glib/gi18n-lib.h>

#include "difference.h"
#include "sentence.h"

/* ---- Remarks and changes ---- */

char *
lb_comparison_dup_remark (const LbComparison *comparison, size_t i, const LbWording *wording)
{
  LbResult *result = lb_comparison_get_result (comparison, i);

  if (result)
    return lb_sentence_of_remark (result, wording);
  return lb_variant_explain (lb_comparison_get_variant (comparison, i),
                             lb_comparison_get_setup (comparison), wording);
}

char *
lb_comparison_dup_changes (const LbComparison *comparison, size_t i, const LbWording *wording)
{
  const LbVariant *variant = lb_comparison_get_variant (comparison, i);
  GString *text = g_string_new (NULL);

  for (size_t j = 0; j < variant->n_overrides; j++)
    {
      g_autofree char *words = lb_override_dup_words (&variant->overrides[j], wording);

      g_string_append_printf (text, "%s%s", j ? "; " : "", words);
    }
  if (variant->n_overrides == 0)
    g_string_append (text, _ ("nothing changed"));
  return g_string_free (text, FALSE);
}

/* ---- How it runs, in one line ---- */

typedef struct
{
  const LbReadings *first; /* NULL: nothing to tell differences from */
  const LbReadings *own;
  const LbSetup *setup;
  const LbWording *wording;
  GString *text;
} Teller;

/* One more clause; takes it over, NULL is none. */
static void
add (Teller *t, char *clause)
{
  if (clause == NULL)
    return;
  if (t->text->len > 0)
    /* Translators: between two clauses of a line such as "2 lb: wire 15° steeper, 3.1 lbf in the
     * hand" */
    g_string_append (t->text, _ (", "));
  g_string_append (t->text, clause);
  g_free (clause);
}

static char *
angle_clause (const Teller *t)
{
  g_autofree char *words = NULL;

  if (t->first)
    {
      words = lb_difference_words (LB_DIFFERENCE_ANGLE, t->first->wire_angle, t->own->wire_angle,
                                   t->wording);
      /* Translators: "wire 15° steeper" */
      return words ? g_strdup_printf (_ ("wire %s"), words) : NULL;
    }
  words = lb_difference_angle (t->own->wire_angle, t->wording);
  return g_strdup_printf (_ ("wire %s from vertical"), words);
}

static char *
line_clause (const Teller *t)
{
  g_autofree char *words = NULL;

  if (t->first)
    {
      words = lb_difference_words (LB_DIFFERENCE_AMOUNT, t->first->line_out, t->own->line_out,
                                   t->wording);
      /* Translators: "1 ft 3 in less line" */
      return words ? g_strdup_printf (_ ("%s line"), words) : NULL;
    }
  words = lb_words_quantity (LB_QUANTITY_LENGTH, t->wording->units, t->own->line_out,
                             t->wording->decimals);
  return g_strdup_printf (_ ("%s of line"), words);
}

static char *
hand_clause (const Teller *t)
{
  g_autofree char *words = lb_words_quantity (LB_QUANTITY_FORCE, t->wording->units,
                                              t->own->hand_tension, t->wording->decimals);

  return g_strdup_printf (_ ("%s in the hand"), words);
}

static bool
lures_are_alike (const LbReadings *r)
{
  for (size_t i = 1; i < r->n_leaders; i++)
    if (r->lures[i].band != r->lures[0].band)
      return false;
  return true;
}

static const char *
alike_clause (size_t n, LbBandState band)
{
  switch (band)
    {
    case LB_BAND_INSIDE:
      return n == 1   ? _ ("the lure in the band")
             : n == 2 ? _ ("both lures in the band")
                      : _ ("all lures in the band");
    case LB_BAND_ABOVE:
      return n == 1   ? _ ("the lure above the band")
             : n == 2 ? _ ("both lures above the band")
                      : _ ("all lures above the band");
    case LB_BAND_BELOW:
      return n == 1   ? _ ("the lure below the band")
             : n == 2 ? _ ("both lures below the band")
                      : _ ("all lures below the band");
    default:
      return n == 1   ? _ ("the lure on the bed")
             : n == 2 ? _ ("both lures on the bed")
                      : _ ("all lures on the bed");
    }
}

static void
add_lures (Teller *t)
{
  size_t n = t->own->n_leaders;

  if (n > 0 && lures_are_alike (t->own))
    add (t, g_strdup (alike_clause (n, t->own->lures[0].band)));
  else
    for (size_t i = 0; i < n; i++)
      {
        g_autofree char *lure = lb_words_lure (t->setup, i);

        /* Translators: a lure and where it runs: "upper lure above the band" */
        add (t, g_strdup_printf (_ ("%s %s"), lure, lb_difference_band (t->own->lures[i].band)));
      }
}

char *
lb_comparison_dup_sentence (const LbComparison *comparison, size_t i, const LbWording *wording)
{
  g_autofree char *remark = lb_comparison_dup_remark (comparison, i, wording);
  Teller t = { .own = lb_comparison_get_readings (comparison, i), .wording = wording };

  if (t.own == NULL)
    return g_steal_pointer (&remark);
  t.first = i > 0 ? lb_comparison_get_readings (comparison, 0) : NULL;
  t.setup = lb_result_get_setup (lb_comparison_get_result (comparison, i));
  t.text = g_string_new (NULL);
  add (&t, angle_clause (&t));
  add (&t, line_clause (&t));
  add (&t, hand_clause (&t));
  add_lures (&t);
  if (t.own->weight.on_bed)
    add (&t, g_strdup (_ ("the weight on the bed")));
  if (remark)
    g_string_append_printf (t.text, ". %s", remark);
  return g_string_free (t.text, FALSE);
}

/* ---- Cautions ---- */

static bool
has_caution (const GPtrArray *cautions, const LbCaution *caution)
{
  for (guint i = 0; i < cautions->len; i++)
    if (g_str_equal (((const LbCaution *) g_ptr_array_index (cautions, i))->text, caution->text))
      return true;
  return false;
}

/* Moves those of `kind` that are not yet there. */
static void
take_cautions (GPtrArray *cautions, GPtrArray *more, LbCautionKind kind)
{
  for (guint i = 0; i < more->len;)
    {
      LbCaution *caution = g_ptr_array_index (more, i);

      if (caution->kind == kind && !has_caution (cautions, caution))
        g_ptr_array_add (cautions, g_ptr_array_steal_index (more, i));
      else
        i++;
    }
}

GPtrArray *
lb_comparison_cautions_new (const LbComparison *comparison, const LbWording *wording)
{
  GPtrArray *cautions = g_ptr_array_new_with_free_func (lb_caution_free);
  GPtrArray *lists[LB_MAX_VARIANTS];
  size_t n = lb_comparison_get_n (comparison);

  for (size_t i = 0; i < n; i++)
    {
      LbResult *result = lb_comparison_get_result (comparison, i);
      const LbSetup *setup =
          result ? lb_result_get_setup (result) : lb_comparison_get_setup (comparison);

      lists[i] = lb_cautions_new (setup, result, wording);
      take_cautions (cautions, lists[i], LB_CAUTION_NOW);
    }
  for (size_t i = 0; i < n; i++)
    {
      take_cautions (cautions, lists[i], LB_CAUTION_ADVICE);
      g_ptr_array_unref (lists[i]);
    }
  return cautions;
}
