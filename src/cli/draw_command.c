/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli draw": the side view above the bed strip, as a file. */
#include <glib/gi18n.h>

#include "command.h"
#include "draw_options.h"
#include "result.h"

static int
draw (const LbContents *contents, const LbDrawOptions *options, LbUnits units)
{
  g_autoptr (LbResult) result = lb_result_solve (NULL, &contents->setup, NULL);
  LbPicture picture = lb_draw_picture (contents, units);
  g_autoptr (GError) error = NULL;

  picture.shape = lb_result_get_shape (result);
  picture.readings = lb_result_get_readings (result);
  picture.status = lb_result_get_status (result);
  if (lb_result_get_failed (result))
    {
      lb_command_complain_of_result (result);
      return LB_EXIT_REFUSED;
    }
  if (!lb_export_write (options->output, options->format, &picture, options->theme, options->width,
                        options->height, NULL, &error))
    {
      lb_command_complain ("%s", error->message);
      return LB_EXIT_REFUSED;
    }
  return LB_EXIT_DONE;
}

int
lb_command_draw (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_auto (LbDrawOptions) options = { 0 };
  g_autoptr (LbContents) contents = lb_contents_new ();
  const GOptionEntry entries[] = { LB_DRAW_ENTRIES (options), G_OPTION_ENTRY_NULL };
  LbUnits units;
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Solves the rig in FILE and draws it to scale."), &status))
    return status;
  if (options.output == NULL)
    return lb_command_complain_usage (_ ("draw: no output file given (-o OUT.png)"));
  if (!lb_draw_options_check (&options) || !lb_command_units (&input, &units))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  return draw (contents, &options, units);
}
