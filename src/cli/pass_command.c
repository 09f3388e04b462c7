/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli pass": the rig in time, as a summary in words or as numbers. */
#include <stdio.h>
#include <glib/gi18n.h>

#include "command.h"
#include "pass_options.h"
#include "pass_series.h"
#include "pass_words.h"
#include "run_table.h"
#include "sentence.h"
#include "text_layout.h"

#define SHORTEST_STEP 0.01 /* s, between moments */

/* ---- What comes out ---- */

static void
add_break (GString *out, const LbPassRecord *record)
{
  g_autofree char *end = lb_pass_words_time (lb_pass_record_end (record));
  g_autofree char *whole = lb_pass_words_time (lb_pass_record_duration (record));
  /* Translators: two times, "12 s" */
  g_autofree char *text = g_strdup_printf (
      _ ("The pass breaks off: what follows is of its first %s of %s alone."), end, whole);

  lb_text_add_wrapped (out, "", 0, text);
}

static char *
summary_text (const LbPassRecord *record,
              const LbPassSummary *summary,
              const LbContents *contents,
              LbUnits units)
{
  LbWording wording = lb_wording_default (units);
  g_autoptr (LbResult) start = lb_result_solve (NULL, lb_pass_record_setup (record), NULL);
  g_autoptr (LbReadingsTable) table = lb_pass_words_table (record, summary, contents, &wording);
  g_autoptr (GPtrArray) cautions = lb_pass_words_cautions (record, &wording);
  g_autofree char *sentence = lb_pass_words_sentence (record, summary, &wording);
  g_autofree char *remark = lb_sentence_of_remark (start, &wording);
  GString *out = g_string_new (NULL);

  if (*contents->title)
    g_string_append_printf (out, "%s\n\n", contents->title);
  if (!lb_pass_record_is_complete (record))
    add_break (out, record);
  lb_text_add_wrapped (out, "", 0, sentence);
  if (remark)
    lb_text_add_wrapped (out, _ ("At the start: "), 0, remark);
  lb_text_add_table (out, table);
  lb_text_add_cautions (out, cautions);
  return g_string_free (out, FALSE);
}

static int
pass (const LbContents *contents, gboolean csv, gboolean json, double step, LbUnits units)
{
  gboolean whole;
  g_autoptr (LbPassRecord) record = lb_pass_take_record (contents, INFINITY, &whole);
  LbPassSummary summary = { 0 };
  g_autofree char *text = NULL;

  if (record == NULL)
    return LB_EXIT_REFUSED;
  lb_pass_summary_continue (&summary, record);
  if (csv)
    text = lb_pass_csv (record, step);
  else if (json)
    text = lb_pass_json (record, &summary, step);
  else
    text = summary_text (record, &summary, contents, units);
  fputs (text, stdout);
  return whole ? LB_EXIT_DONE : LB_EXIT_REFUSED;
}

/* FALSE after a message. */
static gboolean
take_step (const char *text, gboolean series, double *step)
{
  *step = 0;
  if (text == NULL)
    return TRUE;
  if (series)
    return lb_pass_take_time ("--every", text, SHORTEST_STEP, step);
  lb_command_complain_usage (_ ("pass: --every goes with --csv or --json"));
  return FALSE;
}

int
lb_command_pass (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autofree char *every = NULL;
  gboolean csv = FALSE, json = FALSE;
  const GOptionEntry entries[] = {
    { "csv", 0, 0, G_OPTION_ARG_NONE, &csv, N_ ("Print a table of numbers over time, in SI units"),
      NULL },
    { "json", 0, 0, G_OPTION_ARG_NONE, &json,
      N_ ("Print one JSON object with the same numbers and what they come to"), NULL },
    { "every", 0, 0, G_OPTION_ARG_STRING, &every,
      N_ ("Seconds from one line to the next; when left out as recorded, 0.05 as a rule"),
      N_ ("SECONDS") },
    G_OPTION_ENTRY_NULL,
  };
  LbUnits units;
  double step;
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Trolls the rig in FILE through its pass and prints what comes of it."),
                         &status))
    return status;
  if (csv && json)
    return lb_command_complain_usage (_ ("pass: --csv and --json exclude one another"));
  if (!take_step (every, csv || json, &step) || !lb_command_units (&input, &units))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  return pass (contents, csv, json, step, units);
}
