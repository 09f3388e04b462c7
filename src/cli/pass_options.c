/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_options.h"

#include <glib/gi18n.h>

#include "command.h"
#include "pass_words.h"
#include "words.h"

gboolean
lb_pass_take_time (const char *option, const char *text, double *time)
{
  if (lb_words_parse (LB_QUANTITY_TIME, LB_UNITS_METRIC, text, time, NULL) && *time >= 0)
    return TRUE;
  lb_command_complain_usage (_ ("%s: found \"%s\", expected seconds from 0 on"), option, text);
  return FALSE;
}

static void
complain_of_run (const LbPassRecord *record, LbStatus status)
{
  g_autofree char *time = lb_pass_words_time (lb_pass_record_end (record));

  if (status == LB_STATUS_OUT_OF_MEMORY)
    lb_command_complain (_ ("pass: memory is out"));
  else if (lb_pass_record_count (record) == 0)
    lb_command_complain (_ ("pass: no steady run was found for it to start from"));
  else
    lb_command_complain (_ ("pass: it could not be followed beyond %s"), time);
}

LbPassRecord *
lb_pass_take_record (const LbContents *contents, double time)
{
  const char *what = "";
  LbPassRecord *record;
  LbStatus status = lb_pass_record_new (&record, &contents->setup, &contents->pass, NULL, &what);

  if (status != LB_STATUS_OK)
    {
      lb_command_complain ("pass: %s", status == LB_STATUS_BAD_SETUP ? lb_pass_words_fault (what)
                                                                     : lb_status_name (status));
      return NULL;
    }
  if (isfinite (time) && time > lb_pass_record_duration (record))
    {
      g_autofree char *found = lb_pass_words_time (time);
      g_autofree char *most = lb_pass_words_time (lb_pass_record_duration (record));
      lb_command_complain (_ ("--time: found %s, but the pass takes %s"), found, most);
      lb_pass_record_free (record);
      return NULL;
    }
  status = lb_pass_record_run (record, INFINITY, NULL);
  if (!lb_status_is_failure (status))
    return record;
  complain_of_run (record, status);
  lb_pass_record_free (record);
  return NULL;
}
