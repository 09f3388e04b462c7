/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw_options.h"

#include <stdio.h>
#include <glib/gi18n.h>

#include "command.h"
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

gboolean
lb_draw_options_check (LbDrawOptions *options)
{
  g_autoptr (GError) error = NULL;

  options->theme = options->dark ? LB_THEME_DARK : LB_THEME_LIGHT;
  if (!lb_export_format_for_path (options->output, &options->format, &error))
    lb_command_complain_usage ("%s", error->message);
  else if (!parse_size (options->size, &options->width, &options->height))
    lb_command_complain_usage (
        _ ("--size: found \"%s\", expected WIDTHxHEIGHT, each from %d to %d"), options->size,
        LB_EXPORT_SMALLEST, LB_EXPORT_LARGEST);
  else
    return TRUE;
  return FALSE;
}

LbPicture
lb_draw_picture (const LbContents *contents, LbUnits units)
{
  LbPicture picture = {
    .setup = &contents->setup,
    .status = LB_STATUS_BAD_SETUP,
    .units = units,
    .decimal = lb_words_decimal (),
    .title = contents->title,
  };

  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    picture.lure_names[i] = contents->lure_names[i];
  return picture;
}

void
lb_draw_options_clear (LbDrawOptions *options)
{
  g_clear_pointer (&options->output, g_free);
  g_clear_pointer (&options->size, g_free);
}
