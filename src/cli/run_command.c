/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli run": solves a rig and prints what came out. */
#include <stdio.h>
#include <glib/gi18n.h>

#include "command.h"
#include "fish_text.h"
#include "run_json.h"
#include "run_table.h"
#include "words.h"

/* What a fish is believed to be, m. */
#define SHORTEST_FISH 0.05
#define LONGEST_FISH 3

/* FALSE after a complaint. */
static gboolean
read_fish (const char *text, LbUnits units, double *length)
{
  g_autofree char *message = NULL;

  if (lb_words_parse (LB_QUANTITY_LENGTH, units, text, length, &message) && *length >= SHORTEST_FISH
      && *length <= LONGEST_FISH)
    return TRUE;
  lb_command_complain_usage (
      _ ("--fish: found \"%s\", expected a length from 2 in to 9 ft 10 in, such as \"30 in\""),
      text);
  return FALSE;
}

/* `fish` m long; unset: none. */
static int
solve_and_print (
    const LbContents *contents, gboolean fine, gboolean json, LbUnits units, double fish)
{
  LbSteadyOptions options = { .fine = fine };
  g_autoptr (LbResult) result = lb_result_solve (NULL, &contents->setup, &options);
  gboolean failed = lb_result_get_failed (result);
  g_autofree char *text = NULL;

  if (failed)
    lb_command_complain_of_result (result);
  if (failed && !json)
    return LB_EXIT_REFUSED;
  text = json ? lb_run_json (result) : lb_run_table (result, contents, units);
  fputs (text, stdout);
  if (lb_is_set (fish))
    {
      g_autofree char *load = lb_fish_text (result, fish, units);
      fputs (load, stdout);
    }
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
  double fish_length = LB_UNSET;
  const GOptionEntry entries[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &json, N_ ("Print one JSON object, in SI units"), NULL },
    { "mesh", 0, 0, G_OPTION_ARG_STRING, &mesh,
      N_ ("\"fine\" for an answer to a millionth of a metre"), "default|fine" },
    { "fish", 0, 0, G_OPTION_ARG_STRING, &fish,
      N_ ("Tell the load in the hand with a fish of that length on"), "LENGTH" },
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
  if ((input.units || !json) && !lb_command_units (&input, &units))
    return LB_EXIT_USAGE;
  if (fish && json)
    return lb_command_complain_usage (_ ("--fish: not together with --json"));
  if (fish && !read_fish (fish, units, &fish_length))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  return solve_and_print (contents, g_strcmp0 (mesh, "fine") == 0, json, units, fish_length);
}
