/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli compare": solves the variants of a rig and prints how they differ. */
#include <stdio.h>
#include <glib/gi18n.h>

#include "command.h"
#include "compare_text.h"
#include "comparison_words.h"
#include "draw_options.h"
#include "read_variants.h"
#include "variants_weights.h"

/* ---- Which variants ---- */

/* "1 lb; 2 lb" */
static gboolean
take_weights (LbContents *contents, const char *text, LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  g_autofree char *message = NULL;
  g_autoptr (GArray) weights = lb_weights_parse (units, text, &message);

  if (weights == NULL)
    lb_command_complain_usage ("--weights: %s", message);
  else if (weights->len < 1 || weights->len > LB_MAX_VARIANTS)
    lb_command_complain_usage (_ ("--weights: found %u weights, expected 1 to %d"), weights->len,
                               LB_MAX_VARIANTS);
  else
    {
      contents->variants =
          lb_variants_of_weights (&g_array_index (weights, double, 0), weights->len,
                                  contents->setup.rig.weight.mass, &wording);
      return TRUE;
    }
  return FALSE;
}

static gboolean
take_variants (LbContents *contents, char **texts)
{
  g_autoptr (GError) error = NULL;

  if (g_strv_length (texts) > LB_MAX_VARIANTS)
    {
      lb_command_complain_usage (_ ("--variant: found %u variants, expected at most %d"),
                                 g_strv_length (texts), LB_MAX_VARIANTS);
      return FALSE;
    }
  contents->variants.n = 0;
  for (char **text = texts; *text; text++)
    if (!lb_read_variant_text (*text, &contents->variants, &error))
      {
        lb_command_complain_usage ("--variant: %s", error->message);
        return FALSE;
      }
  return TRUE;
}

/* ---- What comes out ---- */

/* The exit status: every variant must have an answer. */
static int
check_answers (const LbComparison *comparison, LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  int status = LB_EXIT_DONE;

  for (size_t i = 0; i < lb_comparison_get_n (comparison); i++)
    if (lb_comparison_get_readings (comparison, i) == NULL)
      {
        g_autofree char *remark = lb_comparison_dup_remark (comparison, i, &wording);

        lb_command_complain ("%s: %s", lb_comparison_get_variant (comparison, i)->name, remark);
        status = LB_EXIT_REFUSED;
      }
  return status;
}

static gboolean
draw (LbComparison *comparison,
      const LbContents *contents,
      const LbDrawOptions *options,
      LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  g_autoptr (LbComparedRuns) runs = lb_compared_runs_new (comparison, &wording);
  LbPicture like = lb_draw_picture (contents, units);
  LbOverlay overlay = lb_overlay_of_runs (runs, &like);
  g_autoptr (GError) error = NULL;

  if (lb_export_write_overlay (options->output, options->format, &overlay, options->theme,
                               options->width, options->height, NULL, &error))
    return TRUE;
  lb_command_complain ("%s", error->message);
  return FALSE;
}

static int
compare (const LbContents *contents, gboolean json, const LbDrawOptions *options, LbUnits units)
{
  g_autoptr (LbComparison) comparison = lb_comparison_solve (contents, NULL);
  g_autofree char *text = NULL;

  if (options->output)
    return draw (comparison, contents, options, units) ? check_answers (comparison, units)
                                                       : LB_EXIT_REFUSED;
  text = json ? lb_compare_json (comparison, units)
              : lb_compare_text (comparison, contents->title, units);
  fputs (text, stdout);
  return check_answers (comparison, units);
}

/* The variants that are asked for, or those of the file. FALSE after a message. */
static gboolean
take (LbContents *contents, const char *weights, char **variants, LbUnits units)
{
  if (weights)
    return take_weights (contents, weights, units);
  if (variants)
    return take_variants (contents, variants);
  if (contents->variants.n > 0)
    return TRUE;
  lb_command_complain_usage (
      _ ("compare: the file holds no variants; give --weights or --variant"));
  return FALSE;
}

int
lb_command_compare (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_auto (LbDrawOptions) options = { 0 };
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autofree char *weights = NULL;
  g_auto (GStrv) variants = NULL;
  gboolean json = FALSE;
  const GOptionEntry entries[] = {
    { "weights", 0, 0, G_OPTION_ARG_STRING, &weights,
      N_ ("Compare these weights, as \"1 lb; 1 1/2 lb\""), N_ ("LIST") },
    { "variant", 0, 0, G_OPTION_ARG_STRING_ARRAY, &variants,
      N_ ("Compare this variant, as \"fast: boat.speed_over_ground_m_s=0.8\"; up to four times"),
      N_ ("NAME: KEY=VALUE,…") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &json, N_ ("Print one JSON object, in SI units"), NULL },
    LB_DRAW_ENTRIES (options),
    G_OPTION_ENTRY_NULL,
  };
  LbUnits units;
  int status;

  if (!lb_command_parse (
          &input, argc, argv, entries,
          _ ("Solves the variants of the rig in FILE and prints or draws how they differ."),
          &status))
    return status;
  if (weights && variants)
    return lb_command_complain_usage (_ ("compare: --weights and --variant exclude one another"));
  if (json && options.output)
    return lb_command_complain_usage (_ ("compare: --json and --output exclude one another"));
  if (!lb_command_units (&input, &units) || (options.output && !lb_draw_options_check (&options)))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  if (!take (contents, weights, variants, units))
    return LB_EXIT_USAGE;
  return compare (contents, json, &options, units);
}
