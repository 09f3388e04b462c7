/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli card": the card of a rig, as files to print. */
#include <stdio.h>
#include <glib/gi18n.h>

#include "card_compute.h"
#include "card_export.h"
#include "card_size.h"
#include "command.h"
#include "variants_weights.h"
#include "words.h"

/* What the command line says beside what every command takes. */
typedef struct
{
  char *output, *size, *sheet, *weights, *date;
  gboolean across, upright, several, template_too;
  int resolution, pages;
} Options;

static void
options_clear (Options *options)
{
  g_free (options->output);
  g_free (options->size);
  g_free (options->sheet);
  g_free (options->weights);
  g_free (options->date);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* ---- The choices ---- */

static gboolean
take_size (LbCard *card, const char *text)
{
  g_autofree char *names = NULL;

  if (text == NULL || lb_card_size_parse (text, card))
    return TRUE;
  names = lb_card_size_names ();
  lb_command_complain_usage (
      _ ("--size: found \"%s\", expected %s, or a size of your own as 100x70mm, with sides from "
         "%.0f to %.0f mm"),
      text, names, 1000 * LB_CARD_LEAST_SIDE, 1000 * LB_CARD_MOST_SIDE);
  return FALSE;
}

static gboolean
take_sheet (LbCard *card, const char *text)
{
  for (int sheet = 0; text && sheet < LB_N_CARD_SHEETS; sheet++)
    if (g_ascii_strcasecmp (text, lb_card_sheet_name ((LbCardSheet) sheet)) == 0)
      {
        card->sheet = (LbCardSheet) sheet;
        return TRUE;
      }
  if (text == NULL)
    return TRUE;
  lb_command_complain_usage (_ ("--sheet: found \"%s\", expected \"%s\", \"%s\" or \"%s\""), text,
                             lb_card_sheet_name (LB_CARD_SHEET_AS_CARD),
                             lb_card_sheet_name (LB_CARD_SHEET_LETTER),
                             lb_card_sheet_name (LB_CARD_SHEET_A4));
  return FALSE;
}

static gboolean
take_choices (LbCard *card, const Options *options)
{
  if (!take_size (card, options->size) || !take_sheet (card, options->sheet))
    return FALSE;
  card->wide = (card->wide || options->across) && !options->upright;
  card->several = card->several || options->several;
  if (options->template_too)
    card->prints[LB_CARD_PART_TEMPLATE] = true;
  return TRUE;
}

/* ---- Checks that need no file ---- */

static gboolean
numbers_are_right (const Options *options)
{
  if (options->resolution < LB_CARD_LEAST_RESOLUTION
      || options->resolution > LB_CARD_MOST_RESOLUTION)
    lb_command_complain_usage (_ ("--resolution: found %d, expected %d to %d pixels to the inch"),
                               options->resolution, LB_CARD_LEAST_RESOLUTION,
                               LB_CARD_MOST_RESOLUTION);
  else if (options->pages < 0)
    lb_command_complain_usage (_ ("--pages: found %d, expected 1 or more"), options->pages);
  else if (options->across && options->upright)
    lb_command_complain_usage (_ ("--across and --upright cannot both be"));
  else
    return TRUE;
  return FALSE;
}

/* "2026-01-31"; NULL after a message when it is no day. */
static GDateTime *
parse_day (const char *text)
{
  int year, month, day, end = 0;
  GDateTime *date = NULL;

  if (sscanf (text, "%4d-%2d-%2d%n", &year, &month, &day, &end) == 3 && end == 10 && !text[end])
    date = g_date_time_new_utc (year, month, day, 0, 0, 0);
  if (date == NULL)
    lb_command_complain_usage (_ ("--date: found \"%s\", expected a day as 2026-01-31"), text);
  return date;
}

/* ---- Drawing ---- */

static int
write_card (const LbCardContents *card,
            const Options *options,
            LbExportFormat format,
            GDateTime *day)
{
  LbCardDrawingOptions how = { .decimal = lb_words_decimal (), .most_pages = options->pages };
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (card, &how);
  g_autofree char *date = day ? g_date_time_format (day, "%Y-%m-%dT00:00:00Z") : NULL;
  g_autofree char *unlettered = NULL;
  g_autoptr (GError) error = NULL;

  if (!lb_card_export_write (drawing, options->output, format, options->resolution, date, &error))
    {
      lb_command_complain ("%s", error->message);
      return LB_EXIT_REFUSED;
    }
  unlettered = lb_card_drawing_dup_unlettered (drawing);
  if (unlettered)
    lb_command_complain (_ ("no font has the letters of: %s"),
                         g_strdelimit (unlettered, "\n", ' '));
  if (lb_card_drawing_left_out (drawing))
    lb_command_complain (_ ("left out for want of room: %s"), lb_card_drawing_left_out (drawing));
  return LB_EXIT_DONE;
}

static GArray *
weights_of (const Options *options, LbUnits units)
{
  g_autofree char *message = NULL;
  GArray *weights;

  if (options->weights == NULL)
    return g_array_new (FALSE, FALSE, sizeof (double));
  weights = lb_weights_parse (units, options->weights, &message);
  if (weights == NULL)
    lb_command_complain_usage ("--weights: %s", message);
  return weights;
}

static int
compute_and_write (const LbContents *contents,
                   const Options *options,
                   const GArray *weights,
                   LbUnits units,
                   LbExportFormat format,
                   GDateTime *day)
{
  /* Translators: a date as g_date_time_format() writes it: "April 3, 2026". */
  g_autofree char *today = day ? g_date_time_format (day, _ ("%B %-d, %Y")) : NULL;
  LbCardRequest request = {
    .contents = contents,
    .weights = (const double *) weights->data,
    .n_weights = weights->len,
    .wording = lb_wording_default (units),
    .today = today,
  };
  g_autoptr (LbCardContents) card = lb_card_compute (&request, NULL, NULL, NULL, NULL);

  return write_card (card, options, format, day);
}

static int
run (const LbCommandInput *input, const Options *options)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) day = NULL;
  g_autoptr (GArray) weights = NULL;
  LbExportFormat format;
  LbUnits units;

  if (options->output == NULL)
    return lb_command_complain_usage (_ ("card: no output file given (-o OUT.pdf)"));
  if (!lb_export_format_for_path (options->output, &format, &error))
    return lb_command_complain_usage ("%s", error->message);
  if (!numbers_are_right (options) || !lb_command_units (input, &units))
    return LB_EXIT_USAGE;
  if (options->date && (day = parse_day (options->date)) == NULL)
    return LB_EXIT_USAGE;
  if ((weights = weights_of (options, units)) == NULL)
    return LB_EXIT_USAGE;
  if (!lb_command_read (input, contents))
    return LB_EXIT_REFUSED;
  if (!take_choices (&contents->card, options))
    return LB_EXIT_USAGE;
  contents->card.dated_today = contents->card.dated_today || day;
  return compute_and_write (contents, options, weights, units, format, day);
}

int
lb_command_card (int argc, char **argv)
{
  g_auto (LbCommandInput) input = { 0 };
  g_auto (Options) options = { .resolution = LB_CARD_RESOLUTION };
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &options.output,
      N_ ("The file to write; its ending says what kind"), "OUT.pdf|svg|png" },
    { "size", 0, 0, G_OPTION_ARG_STRING, &options.size, N_ ("How large the card is"), "4x6in" },
    { "across", 0, 0, G_OPTION_ARG_NONE, &options.across, N_ ("The long side lies across"), NULL },
    { "upright", 0, 0, G_OPTION_ARG_NONE, &options.upright, N_ ("The long side stands upright"),
      NULL },
    { "sheet", 0, 0, G_OPTION_ARG_STRING, &options.sheet, N_ ("The paper it is printed on"),
      "letter" },
    { "several", 0, 0, G_OPTION_ARG_NONE, &options.several, N_ ("As many on a sheet as fit"),
      NULL },
    { "pages", 0, 0, G_OPTION_ARG_INT, &options.pages,
      N_ ("At most so many pages; the rest is left out by rank"), "N" },
    { "template", 0, 0, G_OPTION_ARG_NONE, &options.template_too,
      N_ ("Add the shank at its true size"), NULL },
    { "weights", 0, 0, G_OPTION_ARG_STRING, &options.weights,
      N_ ("The weights of the settings table"), "\"1 lb; 2 lb\"" },
    { "resolution", 0, 0, G_OPTION_ARG_INT, &options.resolution,
      N_ ("Of a PNG, pixels to the inch"), "300" },
    { "date", 0, 0, G_OPTION_ARG_STRING, &options.date, N_ ("The day on the card"), "2026-01-31" },
    G_OPTION_ENTRY_NULL,
  };
  int status;

  if (!lb_command_parse (&input, argc, argv, entries,
                         _ ("Draws the card of the rig in FILE, to rig and fish from."), &status))
    return status;
  return run (&input, &options);
}
