/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli import": a sounder's log becomes the bed of a rig file. */
#include <stdio.h>
#include <string.h>
#include <glib/gi18n.h>

#include "change.h"
#include "command.h"
#include "import.h"
#include "import_river.h"
#include "words.h"

/* The command's own options. */
typedef struct
{
  char *output;
  char *into;
  char *columns;
  char *table_units;
  char *transducer;
  char *spike;
  char *from, *to;
  gboolean downstream, upstream;
} Choices;

static void
choices_clear (Choices *choices)
{
  g_free (choices->output);
  g_free (choices->into);
  g_free (choices->columns);
  g_free (choices->table_units);
  g_free (choices->transducer);
  g_free (choices->spike);
  g_free (choices->from);
  g_free (choices->to);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Choices, choices_clear)

/* ---- What was chosen; each is FALSE after a message ---- */

/* `text` NULL leaves `value` as it is. */
static gboolean
read_length (const char *option,
             const char *text,
             LbQuantity quantity,
             LbUnits units,
             double least,
             double *value)
{
  g_autofree char *fault = NULL;

  if (!text)
    return TRUE;
  if (!lb_words_parse (quantity, units, text, value, &fault))
    lb_command_complain ("%s: %s", option, fault);
  else if (!(*value >= least))
    lb_command_complain (_ ("%s: “%s” is too small"), option, text);
  else
    return TRUE;
  return FALSE;
}

/* "1,3": distance and depth; "1,2,5": latitude, longitude and depth. */
static gboolean
read_columns (const char *text, int *column)
{
  static const LbCsvColumn of_two[] = { LB_CSV_DISTANCE, LB_CSV_DEPTH };
  static const LbCsvColumn of_three[] = { LB_CSV_LATITUDE, LB_CSV_LONGITUDE, LB_CSV_DEPTH };
  g_auto (GStrv) numbers = g_strsplit (text ? text : "", ",", -1);
  guint n = g_strv_length (numbers);

  if (!text)
    return TRUE;
  for (guint i = 0; (n == 2 || n == 3) && i < n; i++)
    {
      guint64 number;

      if (!g_ascii_string_to_unsigned (g_strstrip (numbers[i]), 10, 1, 64, &number, NULL))
        break;
      column[(n == 2 ? of_two : of_three)[i]] = (int) number - 1;
      if (i + 1 == n)
        return TRUE;
    }
  lb_command_complain (_ ("--columns: give the numbers of two columns (distance, depth) or three "
                          "(latitude, longitude, depth), as “1,3”"));
  return FALSE;
}

static gboolean
read_table_units (const char *text, LbCsvUnit *unit)
{
  if (!text)
    return TRUE;
  if (g_str_equal (text, "feet"))
    *unit = LB_CSV_UNIT_FEET;
  else if (g_str_equal (text, "metres") || g_str_equal (text, "meters"))
    *unit = LB_CSV_UNIT_METRES;
  else
    {
      lb_command_complain (_ ("--table-units: give “feet” or “metres”"));
      return FALSE;
    }
  return TRUE;
}

static gboolean
make_options (const Choices *choices, LbUnits units, LbImportOptions *options)
{
  double deepest = units == LB_UNITS_US ? 9.144 : 10; /* 30 ft */
  g_autofree char *words = lb_words_quantity (LB_QUANTITY_LENGTH, units, deepest, 0);

  *options = lb_import_options_default (units);
  options->boat_went_upstream = !choices->downstream;
  if (!read_columns (choices->columns, options->column)
      || !read_table_units (choices->table_units, &options->unit)
      || !read_length ("--spike", choices->spike, LB_QUANTITY_HEIGHT, units, 0,
                       &options->spike_limit)
      || !read_length ("--from", choices->from, LB_QUANTITY_LENGTH, units, 0, &options->from)
      || !read_length ("--to", choices->to, LB_QUANTITY_LENGTH, units, 0, &options->to)
      || !read_length ("--transducer", choices->transducer, LB_QUANTITY_HEIGHT, units, -10,
                       &options->transducer_depth))
    return FALSE;
  if (options->transducer_depth > deepest)
    lb_command_complain (_ ("--transducer: give a depth of at most %s"), words);
  else if (choices->from && !(options->to > options->from))
    lb_command_complain (_ ("--from needs a --to beyond it"));
  else
    return TRUE;
  return FALSE;
}

/* ---- What is made of it ---- */

static LbDocument *
open_document (const char *path, GError **error)
{
  g_autoptr (GFile) file = NULL;

  if (!path)
    return lb_document_new ();
  file = g_file_new_for_commandline_arg (path);
  return lb_document_load (file, error);
}

static gboolean
write_rig (const LbBedProfile *profile, const char *into, const char *output, GError **error)
{
  g_autoptr (LbDocument) document = open_document (into, error);
  g_autoptr (LbDocument) copy = NULL;
  g_autoptr (LbChange) change = NULL;
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (output);

  if (!document)
    return FALSE;
  copy = lb_document_new_with (lb_document_get_contents (document));
  change = lb_change_new_imported_bed (copy, profile, "", error);
  if (!change)
    return FALSE;
  lb_change_apply (change, copy);
  return lb_document_save (copy, file, error);
}

static void
print_profile (const LbBedProfile *profile, LbUnits units)
{
  g_autofree char *length =
      lb_words_quantity (LB_QUANTITY_LENGTH, units, profile->x[profile->n - 1], -1);
  g_autofree char *gap = lb_words_quantity (LB_QUANTITY_LENGTH, units, profile->widest_gap, -1);
  g_autofree char *off = lb_words_quantity (LB_QUANTITY_HEIGHT, units, profile->off, -1);

  printf (_ ("%zu spikes taken out, %zu depths out of range\n"), profile->spikes,
          profile->out_of_range);
  printf (_ ("Bed of %zu points over %s, off by %s at most\n"), profile->n, length, off);
  printf (_ ("Longest stretch without a depth: %s\n"), gap);
}

static int
refuse (GError *error)
{
  lb_command_complain ("%s", error->message);
  g_error_free (error);
  return LB_EXIT_REFUSED;
}

static int
import_log (const char *path, const Choices *choices, LbUnits units)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (path);
  g_autoptr (LbImport) import = NULL;
  g_autofree char *summary = NULL;
  LbImportOptions options;
  LbBedProfile profile;
  GError *error = NULL;

  if (!make_options (choices, units, &options))
    return LB_EXIT_REFUSED;
  import = lb_import_read (file, &options, NULL, NULL, NULL, &error);
  if (!import)
    return refuse (error);
  summary = lb_import_dup_summary (import);
  printf ("%s\n", summary);
  for (guint i = 0; i < import->first_bad->len; i++)
    printf ("  %s\n", g_array_index (import->first_bad, LbBadLine, i).reason);
  if (!lb_import_profile (import, &options, &profile, &error))
    return refuse (error);
  print_profile (&profile, units);
  if (choices->output && !write_rig (&profile, choices->into, choices->output, &error))
    return refuse (error);
  return LB_EXIT_DONE;
}

int
lb_command_import (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_auto (Choices) choices = { 0 };
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &choices.output, N_ ("Write a rig file"),
      "FILE.rig" },
    { "into", 0, 0, G_OPTION_ARG_FILENAME, &choices.into,
      N_ ("The rig that gets the bed; the default one without"), "FILE.rig" },
    { "upstream", 0, 0, G_OPTION_ARG_NONE, &choices.upstream,
      N_ ("The boat went upstream (so it is unless told)"), NULL },
    { "downstream", 0, 0, G_OPTION_ARG_NONE, &choices.downstream,
      N_ ("The boat went downstream, or distances grow downstream"), NULL },
    { "transducer", 0, 0, G_OPTION_ARG_STRING, &choices.transducer,
      N_ ("How deep the transducer sits, as \"10 in\" or \"0.25 m\""), N_ ("DEPTH") },
    { "spike", 0, 0, G_OPTION_ARG_STRING, &choices.spike,
      N_ ("Take out depths further than this off their neighbours; 0: none"), N_ ("HEIGHT") },
    { "from", 0, 0, G_OPTION_ARG_STRING, &choices.from,
      N_ ("Only the stretch from here, along the track, as \"300 ft\","), N_ ("DISTANCE") },
    { "to", 0, 0, G_OPTION_ARG_STRING, &choices.to, N_ ("to here"), N_ ("DISTANCE") },
    { "columns", 0, 0, G_OPTION_ARG_STRING, &choices.columns,
      N_ ("Where a table has distance and depth (1,3), or latitude, longitude and depth (1,2,5)"),
      N_ ("NUMBERS") },
    { "table-units", 0, 0, G_OPTION_ARG_STRING, &choices.table_units,
      N_ ("What the numbers of a table are in, where its heading does not tell"), "feet|metres" },
    G_OPTION_ENTRY_NULL,
  };
  LbUnits units;
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Reads a sounder's log (NMEA 0183, GPX or a table) and makes it the "
                            "bed of a rig file."),
                         &status))
    return status;
  if (choices.upstream && choices.downstream)
    return lb_command_complain_usage (_ ("the boat went upstream or downstream, not both"));
  if (choices.into && !choices.output)
    return lb_command_complain_usage (_ ("--into needs --output"));
  if (input.changes)
    return lb_command_complain_usage (_ ("--set changes a rig, not a log"));
  return lb_command_units (&input, &units) ? import_log (input.file, &choices, units)
                                           : LB_EXIT_REFUSED;
}
