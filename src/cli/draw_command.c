/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli draw": the side view above the bed strip, as a file: of the steady run, or of a
 * moment of the pass. */
#include <glib/gi18n.h>

#include "command.h"
#include "draw_options.h"
#include "pass_options.h"
#include "pass_words.h"
#include "result.h"

static int
write_picture (const LbPicture *picture, const LbDrawOptions *options)
{
  g_autoptr (GError) error = NULL;

  if (lb_export_write (options->output, options->format, picture, options->theme, options->width,
                       options->height, NULL, &error))
    return LB_EXIT_DONE;
  lb_command_complain ("%s", error->message);
  return LB_EXIT_REFUSED;
}

static int
draw (const LbContents *contents, const LbDrawOptions *options, LbUnits units)
{
  g_autoptr (LbResult) result = lb_result_solve (NULL, &contents->setup, NULL);
  LbPicture picture = lb_draw_picture (contents, units);

  picture.shape = lb_result_get_shape (result);
  picture.readings = lb_result_get_readings (result);
  picture.status = lb_result_get_status (result);
  if (lb_result_get_failed (result))
    {
      lb_command_complain_of_result (result);
      return LB_EXIT_REFUSED;
    }
  return write_picture (&picture, options);
}

/* The rig at one moment of its pass. */
static int
draw_moment (const LbContents *contents, double time, const LbDrawOptions *options, LbUnits units)
{
  g_autoptr (LbPassRecord) record = lb_pass_take_record (contents, time);
  g_autofree char *when = lb_pass_words_time (time);
  /* Translators: the title of a drawing: that of the rig, and a time ("41 s") */
  g_autofree char *title = g_strdup_printf (_ ("%s (%s into the pass)"), contents->title, when);
  LbPicture picture = lb_draw_picture (contents, units);
  int status = LB_EXIT_REFUSED;
  LbPassSample moment;
  LbShape shape;
  LbSetup setup;

  if (record == NULL)
    return status;
  lb_shape_init (&shape);
  setup = lb_pass_record_setup_at (record, time);
  if (lb_pass_record_at (record, time, &moment)
      && lb_pass_record_shape_at (record, time, &shape) == LB_STATUS_OK)
    {
      picture.setup = &setup;
      picture.shape = &shape;
      picture.readings = &moment.readings;
      picture.status = LB_STATUS_OK;
      picture.title = title;
      status = write_picture (&picture, options);
    }
  lb_shape_clear (&shape);
  return status;
}

int
lb_command_draw (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_auto (LbDrawOptions) options = { 0 };
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autofree char *at = NULL;
  const GOptionEntry entries[] = {
    { "time", 0, 0, G_OPTION_ARG_STRING, &at,
      N_ ("Draw the rig this long into its pass instead of its steady run"), N_ ("SECONDS") },
    LB_DRAW_ENTRIES (options),
    G_OPTION_ENTRY_NULL,
  };
  LbUnits units;
  double time = 0;
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Solves the rig in FILE and draws it to scale."), &status))
    return status;
  if (options.output == NULL)
    return lb_command_complain_usage (_ ("draw: no output file given (-o OUT.png)"));
  if (!lb_draw_options_check (&options) || !lb_command_units (&input, &units)
      || (at && !lb_pass_take_time ("--time", at, &time)))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  return at ? draw_moment (contents, time, &options, units) : draw (contents, &options, units);
}
