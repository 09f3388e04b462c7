/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli draw": the side view above the bed strip, as a file. */
#include <stdio.h>
#include <glib/gi18n.h>

#include "command.h"
#include "export.h"
#include "result.h"
#include "words.h"

#define DEFAULT_WIDTH 1280
#define DEFAULT_HEIGHT 800

/* "1280x800" */
static gboolean
parse_size (const char *text, double *width, double *height)
{
  guint w, h;
  int end = 0;

  if (text == NULL)
    {
      *width = DEFAULT_WIDTH;
      *height = DEFAULT_HEIGHT;
      return TRUE;
    }
  if (!g_ascii_isdigit (*text) || sscanf (text, "%5ux%5u%n", &w, &h, &end) != 2 || text[end] != '\0'
      || w < LB_EXPORT_SMALLEST || w > LB_EXPORT_LARGEST || h < LB_EXPORT_SMALLEST
      || h > LB_EXPORT_LARGEST)
    return FALSE;
  *width = w;
  *height = h;
  return TRUE;
}

static LbPicture
picture_of (const LbContents *contents, const LbResult *result, LbUnits units)
{
  LbPicture picture = {
    .setup = &contents->setup,
    .shape = lb_result_get_shape (result),
    .readings = lb_result_get_readings (result),
    .status = lb_result_get_status (result),
    .units = units,
    .decimal = lb_words_decimal (),
    .title = contents->title,
  };

  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    picture.lure_names[i] = contents->lure_names[i];
  return picture;
}

static int
draw (const LbContents *contents,
      const char *path,
      LbExportFormat format,
      LbTheme theme,
      double width,
      double height,
      LbUnits units)
{
  g_autoptr (LbResult) result = lb_result_solve (NULL, &contents->setup, NULL);
  LbPicture picture = picture_of (contents, result, units);
  g_autoptr (GError) error = NULL;

  if (lb_result_get_failed (result))
    {
      lb_command_complain_of_result (result);
      return LB_EXIT_REFUSED;
    }
  if (!lb_export_write (path, format, &picture, theme, width, height, NULL, &error))
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
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *output = NULL;
  g_autofree char *size = NULL;
  gboolean dark = FALSE;
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output,
      N_ ("The file to write; its ending says what kind"), "OUT.png|svg|pdf" },
    { "size", 0, 0, G_OPTION_ARG_STRING, &size, N_ ("Pixels, or points for PDF"),
      N_ ("WIDTHxHEIGHT") },
    { "dark", 0, 0, G_OPTION_ARG_NONE, &dark, N_ ("Draw on a dark ground"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  LbExportFormat format;
  LbUnits units;
  double width, height;
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Solves the rig in FILE and draws it to scale."), &status))
    return status;
  if (output == NULL)
    return lb_command_complain_usage (_ ("draw: no output file given (-o OUT.png)"));
  if (!lb_export_format_for_path (output, &format, &error))
    return lb_command_complain_usage ("%s", error->message);
  if (!parse_size (size, &width, &height))
    return lb_command_complain_usage (
        _ ("--size: found \"%s\", expected WIDTHxHEIGHT, each from %d to %d"), size,
        LB_EXPORT_SMALLEST, LB_EXPORT_LARGEST);
  if (!lb_command_units (&input, &units))
    return LB_EXIT_USAGE;
  if (!lb_command_read (&input, contents))
    return LB_EXIT_REFUSED;
  return draw (contents, output, format, dark ? LB_THEME_DARK : LB_THEME_LIGHT, width, height,
               units);
}
