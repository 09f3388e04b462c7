/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of a comparison: a row for each reading, a column for each variant. */
#include <glib/gi18n-lib.h>

#include "comparison_words.h"
#include "difference.h"

typedef struct
{
  const LbComparison *comparison;
  const LbWording *wording;
  GArray *rows; /* (element-type LbComparisonRow) */
} Builder;

/* Of lure `lure`, for the readings that belong to one. */
typedef double (*Reading) (const LbReadings *readings, size_t lure);

typedef char *(*Note) (const LbReadings *readings, size_t lure);

/* ---- One row ---- */

static char *
value_in_words (LbDifferenceKind kind, LbQuantity quantity, double value, const LbWording *wording)
{
  return kind == LB_DIFFERENCE_HEIGHT || kind == LB_DIFFERENCE_LEVEL
             ? lb_words_height (wording->units, value, wording->decimals)
             : lb_words_quantity (quantity, wording->units, value, wording->decimals);
}

static LbQuantity
quantity_of (LbDifferenceKind kind)
{
  switch (kind)
    {
    case LB_DIFFERENCE_ANGLE:
      return LB_QUANTITY_ANGLE;
    case LB_DIFFERENCE_PULL:
      return LB_QUANTITY_FORCE;
    case LB_DIFFERENCE_HEIGHT:
    case LB_DIFFERENCE_LEVEL:
      return LB_QUANTITY_HEIGHT;
    default:
      return LB_QUANTITY_LENGTH;
    }
}

/* Takes `label` over. `note` may be NULL. */
static void
add_row (Builder *b, char *label, LbDifferenceKind kind, Reading reading, Note note, size_t lure)
{
  LbComparisonRow row = { .label = label, .quantity = quantity_of (kind) };

  for (size_t i = 0; i < lb_comparison_get_n (b->comparison); i++)
    {
      const LbReadings *own = lb_comparison_get_readings (b->comparison, i);
      LbComparisonCell *cell = &row.cells[i];

      cell->si = own ? reading (own, lure) : LB_UNSET;
      cell->value = value_in_words (kind, row.quantity, cell->si, b->wording);
      cell->note = own && note ? note (own, lure) : NULL;
      if (i > 0)
        cell->difference = lb_difference_words (kind, row.cells[0].si, cell->si, b->wording);
    }
  g_array_append_val (b->rows, row);
}

/* ---- The readings ---- */

static double
wire_angle (const LbReadings *r, size_t lure)
{
  return r->wire_angle;
}

static double
line_out (const LbReadings *r, size_t lure)
{
  return r->line_out;
}

static double
hand_tension (const LbReadings *r, size_t lure)
{
  return r->hand_tension;
}

static double
weight_height (const LbReadings *r, size_t lure)
{
  return r->weight.height;
}

static double
weight_layback (const LbReadings *r, size_t lure)
{
  return r->weight.layback;
}

static double
lure_height (const LbReadings *r, size_t lure)
{
  return r->lures[lure].at.height;
}

static double
lure_layback (const LbReadings *r, size_t lure)
{
  return r->lures[lure].at.layback;
}

static double
level_difference (const LbReadings *r, size_t lure)
{
  return r->level_difference;
}

static double
spacing (const LbReadings *r, size_t lure)
{
  return r->spacing;
}

static char *
note_on_bed (const LbReadings *r, size_t lure)
{
  return r->weight.on_bed ? g_strdup (_ ("on the bed")) : NULL;
}

static char *
note_band (const LbReadings *r, size_t lure)
{
  return g_strdup (lb_difference_band (r->lures[lure].band));
}

/* ---- The rows ---- */

/* Lures are called by where the document has them, in all columns. */
static char *
lure_label (const Builder *b, size_t lure, const char *format)
{
  g_autofree char *name = lb_words_lure (lb_comparison_get_setup (b->comparison), lure);
  g_autofree char *first = g_utf8_substring (name, 0, 1);
  g_autofree char *capital = g_utf8_strup (first, -1);
  g_autofree char *whole = g_strconcat (capital, g_utf8_next_char (name), NULL);
  g_auto (GStrv) parts = g_strsplit (format, "%s", 2);

  return g_strjoinv (whole, parts);
}

static void
add_rows (Builder *b)
{
  size_t n_lures = lb_comparison_get_setup (b->comparison)->rig.n_leaders;

  add_row (b, g_strdup (_ ("Wire angle")), LB_DIFFERENCE_ANGLE, wire_angle, NULL, 0);
  add_row (b, g_strdup (_ ("Line out")), LB_DIFFERENCE_AMOUNT, line_out, NULL, 0);
  add_row (b, g_strdup (_ ("In the hand")), LB_DIFFERENCE_PULL, hand_tension, NULL, 0);
  add_row (b, g_strdup (_ ("Weight off the bed")), LB_DIFFERENCE_HEIGHT, weight_height, note_on_bed,
           0);
  add_row (b, g_strdup (_ ("Layback of the weight")), LB_DIFFERENCE_BACK, weight_layback, NULL, 0);
  for (size_t i = 0; i < n_lures; i++)
    {
      /* Translators: "Upper lure off the bed" */
      add_row (b, lure_label (b, i, _ ("%s off the bed")), LB_DIFFERENCE_HEIGHT, lure_height,
               note_band, i);
      /* Translators: "Upper lure, layback" */
      add_row (b, lure_label (b, i, _ ("%s, layback")), LB_DIFFERENCE_BACK, lure_layback, NULL, i);
    }
  if (n_lures < 2)
    return;
  add_row (b, g_strdup (_ ("Level difference")), LB_DIFFERENCE_LEVEL, level_difference, NULL, 0);
  add_row (b, g_strdup (_ ("Spacing of the lures")), LB_DIFFERENCE_AMOUNT, spacing, NULL, 0);
}

LbComparisonTable *
lb_comparison_table_new (const LbComparison *comparison, const LbWording *wording)
{
  Builder b = { comparison, wording, g_array_new (FALSE, FALSE, sizeof (LbComparisonRow)) };
  LbComparisonTable *table = g_new0 (LbComparisonTable, 1);

  table->n = lb_comparison_get_n (comparison);
  for (size_t i = 0; i < table->n; i++)
    {
      table->names[i] = g_strdup (lb_comparison_get_variant (comparison, i)->name);
      table->changes[i] = lb_comparison_dup_changes (comparison, i, wording);
      table->sentences[i] = lb_comparison_dup_sentence (comparison, i, wording);
      table->remarks[i] = lb_comparison_dup_remark (comparison, i, wording);
    }
  add_rows (&b);
  table->n_rows = b.rows->len;
  table->rows = (LbComparisonRow *) (void *) g_array_free (b.rows, FALSE);
  return table;
}

static void
clear_row (LbComparisonRow *row, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      g_free (row->cells[i].value);
      g_free (row->cells[i].note);
      g_free (row->cells[i].difference);
    }
  g_free (row->label);
}

void
lb_comparison_table_free (LbComparisonTable *table)
{
  if (table == NULL)
    return;
  for (size_t i = 0; i < table->n; i++)
    {
      g_free (table->names[i]);
      g_free (table->changes[i]);
      g_free (table->sentences[i]);
      g_free (table->remarks[i]);
    }
  for (size_t i = 0; i < table->n_rows; i++)
    clear_row (&table->rows[i], table->n);
  g_free (table->rows);
  g_free (table);
}
