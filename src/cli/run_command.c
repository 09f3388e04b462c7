/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli run": solves a rig and prints what came out. */
#include <stdio.h>
#include <glib/gi18n.h>

#include "command.h"
#include "fish_loads.h"
#include "fish_text.h"
#include "run_json.h"
#include "run_table.h"
#include "snag_text.h"
#include "words.h"

/* FALSE after a complaint. */
static gboolean
read_fish (const char *text, LbUnits units, double *length)
{
  g_autofree char *least = lb_words_height (units, LB_FISH_SHORTEST, 0);
  g_autofree char *most = lb_words_quantity (LB_QUANTITY_LENGTH, units, LB_FISH_LONGEST, 0);
  const char *example = units == LB_UNITS_US ? "30 in" : "80 cm";

  if (lb_words_parse (LB_QUANTITY_LENGTH, units, text, length, NULL) && *length >= LB_FISH_SHORTEST
      && *length <= LB_FISH_LONGEST)
    return TRUE;
  lb_command_complain_usage (
      /* Translators: what was typed, two limits, an example */
      _ ("--fish: found \"%s\", expected a length from %s to %s, such as \"%s\""), text, least,
      most, example);
  return FALSE;
}

/* What a person reads. */
static char *
words (const LbResult *result, const LbContents *contents, const LbRunExtras *extras, LbUnits units)
{
  g_autofree char *table = lb_run_table (result, contents, units);
  g_autofree char *fish =
      lb_is_set (extras->fish) ? lb_fish_text (result, extras->fish, units) : g_strdup ("");
  g_autofree char *snag = extras->snag ? lb_snag_text (result, units) : g_strdup ("");

  return g_strconcat (table, fish, snag, NULL);
}

static int
solve_and_print (const LbContents *contents,
                 gboolean fine,
                 const LbRunExtras *extras,
                 gboolean json,
                 LbUnits units)
{
  LbSteadyOptions options = { .fine = fine };
  g_autoptr (LbResult) result = lb_result_solve (NULL, &contents->setup, &options);
  gboolean failed = lb_result_get_failed (result);
  g_autofree char *text = NULL;

  if (failed)
    lb_command_complain_of_result (result);
  if (failed && !json)
    return LB_EXIT_REFUSED;
  text = json ? lb_run_json (result, extras) : words (result, contents, extras, units);
  fputs (text, stdout);
  return failed ? LB_EXIT_REFUSED : LB_EXIT_DONE;
}

int
lb_command_run (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_autoptr (LbContents) contents = lb_contents_new ();
  gboolean json = FALSE;
  g_autofree char *mesh = NULL;
  g_autofree char *fish = NULL;
  LbRunExtras extras = { .fish = LB_UNSET };
  const GOptionEntry entries[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &json, N_ ("Print one JSON object, in SI units"), NULL },
    { "mesh", 0, 0, G_OPTION_ARG_STRING, &mesh,
      N_ ("\"fine\" for an answer to a millionth of a metre"), "default|fine" },
    { "fish", 0, 0, G_OPTION_ARG_STRING, &fish,
      N_ ("Tell the load in the hand with a fish of that length on"), "LENGTH" },
    { "snag", 0, 0, G_OPTION_ARG_NONE, &extras.snag,
      N_ ("Tell how the pull grows if the weight or a lure hangs up"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  LbUnits units = LB_UNITS_US;
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Solves the rig in FILE and prints the readings."), &status))
    return status;
  if (mesh && !g_str_equal (mesh, "fine") && !g_str_equal (mesh, "default"))
    return lb_command_complain_usage (_ ("--mesh: found \"%s\", expected \"default\" or \"fine\""),
                                      mesh);
  if ((input.units || fish || !json) && !lb_command_units (&input, &units))
    return LB_EXIT_USAGE;
  if (fish && !read_fish (fish, units, &extras.fish))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  return solve_and_print (contents, g_strcmp0 (mesh, "fine") == 0, &extras, json, units);
}
