/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli draw": the steady run from the side above its bed strip, as a file, or a moment of
 * the pass above its time chart. */
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

/* ---- A moment of the pass ---- */

/* What is asked of a moment. */
typedef struct
{
  double time; /* s */
  gboolean above;
} Moment;

static int
write_moment (const LbPassPicture *picture, gboolean above, const LbDrawOptions *options)
{
  g_autoptr (GError) error = NULL;

  if (lb_export_write_pass (options->output, options->format, picture, above, options->theme,
                            options->width, options->height, NULL, &error))
    return LB_EXIT_DONE;
  lb_command_complain ("%s", error->message);
  return LB_EXIT_REFUSED;
}

/* The second rig's way and shape, if there is one. FALSE when memory is out. */
static gboolean
take_second (const LbPassRecord *record,
             double time,
             LbPassPicture *picture,
             GArray *moments,
             LbShape *shape)
{
  const LbPassRecord *second = lb_pass_record_second (record);

  if (second == NULL)
    return TRUE;
  lb_track_add (moments, second);
  picture->second = picture->track;
  picture->second.moments = (const LbTrackMoment *) (void *) moments->data;
  picture->second.n = moments->len;
  picture->second_shape = shape;
  picture->second_setup = lb_pass_record_setup (second);
  return lb_pass_record_shape_at (second, time, shape) == LB_STATUS_OK;
}

/* The whole pass is run, for its chart. */
static int
draw_moment (const LbContents *contents, Moment at, const LbDrawOptions *options, LbUnits units)
{
  gboolean whole;
  g_autoptr (LbPassRecord) record = lb_pass_take_record (contents, at.time, &whole);
  g_autoptr (GArray) moments = g_array_new (FALSE, TRUE, sizeof (LbTrackMoment));
  g_autoptr (GArray) second_moments = g_array_new (FALSE, TRUE, sizeof (LbTrackMoment));
  g_autofree char *when = lb_pass_words_time (at.time);
  /* Translators: the title of a drawing: that of the rig, and a time ("41 s") */
  g_autofree char *title = g_strdup_printf (_ ("%s (%s into the pass)"), contents->title, when);
  LbPassPicture picture = { .now = lb_draw_picture (contents, units), .time = at.time };
  int status = LB_EXIT_REFUSED;
  LbPassSample moment;
  LbShape shape, second_shape;

  if (record == NULL)
    return status;
  lb_shape_init (&shape);
  lb_shape_init (&second_shape);
  lb_track_add (moments, record);
  if (lb_pass_record_at (record, at.time, &moment)
      && lb_pass_record_shape_at (record, at.time, &shape) == LB_STATUS_OK)
    {
      picture.now.setup = lb_pass_record_setup (record);
      picture.now.shape = &shape;
      picture.now.readings = &moment.readings;
      picture.now.status = LB_STATUS_OK;
      picture.now.title = title;
      picture.track = (LbPassTrack){
        .moments = (const LbTrackMoment *) (void *) moments->data,
        .n = moments->len,
        .n_lures = contents->setup.rig.n_leaders,
        .duration = lb_pass_record_duration (record),
      };
      picture.tangle = contents->pass.tangle_distance;
      picture.reach_start = lb_pass_record_setup (record)->boat.position;
      if (take_second (record, at.time, &picture, second_moments, &second_shape))
        status = write_moment (&picture, at.above, options);
    }
  lb_shape_clear (&shape);
  lb_shape_clear (&second_shape);
  /* Drawn, but its chart ends early. */
  return whole ? status : LB_EXIT_REFUSED;
}

int
lb_command_draw (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_auto (LbDrawOptions) options = { 0 };
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autofree char *at = NULL;
  Moment moment = { 0 };
  const GOptionEntry entries[] = {
    { "time", 0, 0, G_OPTION_ARG_STRING, &at,
      N_ ("Draw the rig this long into its pass, over a chart of the pass, instead of its steady "
          "run"),
      N_ ("SECONDS") },
    { "above", 0, 0, G_OPTION_ARG_NONE, &moment.above, N_ ("With --time: from above"), NULL },
    LB_DRAW_ENTRIES (options),
    G_OPTION_ENTRY_NULL,
  };
  LbUnits units;
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Solves the rig in FILE and draws it to scale."), &status))
    return status;
  if (options.output == NULL)
    return lb_command_complain_usage (_ ("draw: no output file given (-o OUT.png)"));
  if (moment.above && at == NULL)
    return lb_command_complain_usage (_ ("draw: --above goes with --time"));
  if (!lb_draw_options_check (&options) || !lb_command_units (&input, &units)
      || (at && !lb_pass_take_time ("--time", at, 0, &moment.time)))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  return at ? draw_moment (contents, moment, &options, units) : draw (contents, &options, units);
}
