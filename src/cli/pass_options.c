/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_options.h"

#include <signal.h>
#include <glib/gi18n.h>

#include "command.h"
#include "pass_words.h"
#include "words.h"

gboolean
lb_pass_take_time (const char *option, const char *text, double least, double *time)
{
  g_autofree char *from = NULL;
  g_autofree char *to = NULL;

  if (lb_words_parse (LB_QUANTITY_TIME, LB_UNITS_METRIC, text, time, NULL) && *time >= least
      && *time <= LB_PASS_LONGEST)
    return TRUE;
  from = lb_words_quantity (LB_QUANTITY_NUMBER, LB_UNITS_METRIC, least, -1);
  to = lb_words_quantity (LB_QUANTITY_NUMBER, LB_UNITS_METRIC, LB_PASS_LONGEST, 0);
  /* Translators: an option ("--every"), what was typed, two numbers */
  lb_command_complain_usage (_ ("%s: found \"%s\", expected seconds from %s to %s"), option, text,
                             from, to);
  return FALSE;
}

/* ---- Called off from outside ---- */

static volatile sig_atomic_t interrupted;

static void
interrupt_cb (int number)
{
  (void) number;
  interrupted = 1;
}

/* The first signal calls the pass off, which is then written as far as it got; a second one ends
 * the program as usual. */
static void
listen_for_signals (void)
{
  struct sigaction action = { 0 };

  action.sa_handler = interrupt_cb;
  action.sa_flags = (int) SA_RESETHAND;
  sigaction (SIGINT, &action, NULL);
  sigaction (SIGTERM, &action, NULL);
}

static bool
progress_cb (void *data, double done)
{
  (void) data;
  (void) done;
  return interrupted != 0;
}

/* ---- Recording ---- */

static const char *
reason (LbStatus status)
{
  switch (status)
    {
    case LB_STATUS_CANCELLED:
      return _ ("it was interrupted");
    case LB_STATUS_OUT_OF_MEMORY:
      return _ ("memory is out");
    case LB_STATUS_NO_CONVERGENCE:
      return _ ("no answer was found for the moment after");
    default:
      return lb_status_name (status);
    }
}

/* Returns whether something can be shown all the same: of `time`, if that is finite. */
static gboolean
complain_of_run (const LbPassRecord *record, LbStatus status, double time)
{
  double end = lb_pass_record_end (record);
  g_autofree char *at = lb_pass_words_time (end);
  g_autofree char *whole = lb_pass_words_time (lb_pass_record_duration (record));
  g_autofree char *asked = lb_pass_words_time (isfinite (time) ? time : 0);

  if (lb_pass_record_count (record) == 0 && status == LB_STATUS_NO_CONVERGENCE)
    lb_command_complain (_ ("pass: no steady run was found for it to start from"));
  else if (lb_pass_record_count (record) == 0)
    lb_command_complain (_ ("pass: nothing was computed: %s"), reason (status));
  else if (isfinite (time) && time > end)
    /* Translators: two times ("12 s"), a reason ("memory is out") */
    lb_command_complain (_ ("pass: it breaks off at %s, before %s: %s"), at, asked,
                         reason (status));
  else
    {
      /* Translators: two times ("12 s"), a reason ("memory is out") */
      lb_command_complain (_ ("pass: it breaks off at %s of %s: %s"), at, whole, reason (status));
      return TRUE;
    }
  return FALSE;
}

/* FALSE after a message. What is told as the end of the pass may be a little more than it. */
static gboolean
is_within (const LbPassRecord *record, double time)
{
  double end = lb_pass_record_duration (record);
  g_autofree char *found = lb_pass_words_time (time);
  g_autofree char *most = lb_pass_words_time (end);

  if (time <= end || g_str_equal (found, most))
    return TRUE;
  lb_command_complain (_ ("--time: found %s, but the pass takes %s"), found, most);
  return FALSE;
}

/* Nothing is computed yet. NULL after a message. */
static LbPassRecord *
new_record (const LbContents *contents, double time)
{
  const char *what = "";
  LbPassRecord *record;
  LbStatus status = lb_pass_record_new (&record, &contents->setup, &contents->pass, NULL, &what);

  if (status != LB_STATUS_OK)
    {
      lb_command_complain ("pass: %s", status == LB_STATUS_BAD_SETUP ? lb_pass_words_fault (what)
                                                                     : reason (status));
      return NULL;
    }
  if (isfinite (time) && !is_within (record, time))
    g_clear_pointer (&record, lb_pass_record_free);
  return record;
}

LbPassRecord *
lb_pass_take_record (const LbContents *contents, double time, gboolean *whole)
{
  const LbPlanTask task = { progress_cb, NULL };
  LbPassRecord *record = new_record (contents, time);
  LbStatus status;

  if (record == NULL)
    return NULL;
  listen_for_signals ();
  status = lb_pass_record_run (record, INFINITY, &task);
  *whole = !lb_status_is_failure (status);
  if (!*whole && !complain_of_run (record, status, time))
    g_clear_pointer (&record, lb_pass_record_free);
  return record;
}
