/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "import_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "file_error.h"

LbImportOptions
lb_import_options_default (LbUnits units)
{
  bool us = units == LB_UNITS_US;

  return (LbImportOptions){
    .column = { LB_CSV_COLUMN_FOUND, LB_CSV_COLUMN_FOUND, LB_CSV_COLUMN_FOUND,
                LB_CSV_COLUMN_FOUND },
    .boat_went_upstream = TRUE,
    .spike_limit = us ? 0.508 : 0.5, /* 20 in */
    .tolerance = us ? 0.0254 : 0.03, /* 1 in */
    .most_points = 200,
  };
}

/* ---- The import ---- */

static void
clear_bad_line (gpointer data)
{
  g_free (((LbBadLine *) data)->reason);
}

static LbImport *
import_new (void)
{
  LbImport *import = g_new0 (LbImport, 1);

  import->first_bad = g_array_new (FALSE, FALSE, sizeof (LbBadLine));
  g_array_set_clear_func (import->first_bad, clear_bad_line);
  import->soundings = g_array_new (FALSE, FALSE, sizeof (LbSounding));
  import->warnings = g_ptr_array_new_with_free_func (g_free);
  import->duration = LB_UNSET;
  return import;
}

void
lb_import_free (LbImport *import)
{
  if (!import)
    return;
  g_free (import->detail);
  g_array_unref (import->first_bad);
  g_array_unref (import->soundings);
  g_ptr_array_unref (import->warnings);
  g_free (import);
}

/* ---- What the readers share ---- */

gboolean
lb_log_line_next (const char **at, const char *end, LbLogLine *line)
{
  const char *stop;

  if (*at >= end)
    return FALSE;
  for (stop = *at; stop < end && *stop != '\n' && *stop != '\r'; stop++)
    ;
  line->text = *at;
  line->length = (gsize) (stop - *at);
  line->number++;
  if (stop < end && *stop == '\r' && stop + 1 < end && stop[1] == '\n')
    stop++;
  *at = stop < end ? stop + 1 : end;
  return TRUE;
}

gboolean
lb_importer_go_on (LbImporter *importer, double share, GError **error)
{
  if (importer->progress)
    importer->progress (CLAMP (share, 0, 1), importer->progress_data);
  return !g_cancellable_set_error_if_cancelled (importer->cancellable, error);
}

void
lb_importer_add_bad (LbImporter *importer, gsize line, LbBadLineKind kind, const char *format, ...)
{
  LbImport *import = importer->import;
  LbBadLine bad = { line, kind, NULL };
  va_list args;

  import->bad[kind]++;
  if (import->first_bad->len >= LB_IMPORT_FIRST_BAD)
    return;
  va_start (args, format);
  bad.reason = g_strdup_vprintf (format, args);
  va_end (args);
  g_array_append_val (import->first_bad, bad);
}

void
lb_importer_warn (LbImporter *importer, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  g_ptr_array_add (importer->import->warnings, g_strdup_vprintf (format, args));
  va_end (args);
}

void
lb_importer_add_sounding (
    LbImporter *importer, LbSoundingKind kind, guint16 talker, double depth, LbDepthDatum datum)
{
  LbRawSounding raw = { { LB_UNSET, depth, LB_UNSET, LB_UNSET, datum }, kind, talker };

  g_array_append_val (importer->soundings, raw);
}

void
lb_importer_add_fix (LbImporter *importer, double latitude, double longitude, double time)
{
  LbFix fix = { latitude, longitude, time, importer->soundings->len };

  g_array_append_val (importer->fixes, fix);
}

gboolean
lb_log_number (const char *text, gsize length, double *value)
{
  char number[41];
  char *end;

  if (length == 0 || length >= sizeof number)
    return FALSE;
  /* Neither hexadecimal nor "inf" nor blanks, which g_ascii_strtod() would take. */
  for (gsize i = 0; i < length; i++)
    if (!g_ascii_isdigit (text[i]) && !strchr ("+-.eE", text[i]))
      return FALSE;
  memcpy (number, text, length);
  number[length] = '\0';
  *value = g_ascii_strtod (number, &end);
  return *end == '\0' && end != number && isfinite (*value);
}

/* ---- Which kind of log ---- */

static gboolean
is_sentence (const LbLogLine *line)
{
  const char *start = memchr (line->text, '$', line->length);

  if (!start)
    start = memchr (line->text, '!', line->length);
  return start && line->text + line->length - start > 6 && g_ascii_isupper (start[1])
         && memchr (start, ',', line->length - (gsize) (start - line->text));
}

/* By the first line that says so, of the first few hundred. */
LbImportFormat
lb_log_find_format (const char *text, gsize length)
{
  const char *at = text, *end = text + length;
  LbLogLine line = { 0 };

  while (at < end && (g_ascii_isspace (*at)))
    at++;
  if (at < end && *at == '<')
    return LB_IMPORT_GPX;
  while (line.number < 500 && lb_log_line_next (&at, end, &line))
    if (is_sentence (&line))
      return LB_IMPORT_NMEA;
  return LB_IMPORT_CSV;
}

static gboolean
is_blank (const char *text, gsize length)
{
  gsize i = 0;

  while (i < length && g_ascii_isspace (text[i]))
    i++;
  return i == length;
}

static gboolean
read_by_format (LbImporter *importer, const char *text, gsize length, GError **error)
{
  switch (importer->import->format)
    {
    case LB_IMPORT_NMEA:
      return lb_importer_read_nmea (importer, text, length, error);
    case LB_IMPORT_GPX:
      return lb_importer_read_gpx (importer, text, length, error);
    case LB_IMPORT_CSV:
    default:
      return lb_importer_read_csv (importer, text, length, error);
    }
}

/* Refuses what holds nothing to make a bed of, with the first thing that was wrong. */
static gboolean
check_found (LbImporter *importer, GError **error)
{
  const LbImport *import = importer->import;
  const char *hint =
      import->first_bad->len > 0 ? g_array_index (import->first_bad, LbBadLine, 0).reason : NULL;

  if (importer->soundings->len == 0)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY, "%s%s%s",
                 _ ("there are no depths in this file"), hint ? "; " : "", hint ? hint : "");
  else if (import->soundings->len == 0)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_MISSING_KEY,
                 _ ("%zu depths were read, but no positions to go with them"),
                 (gsize) importer->soundings->len);
  else
    return TRUE;
  return FALSE;
}

LbImport *
lb_import_parse (const char *text,
                 gsize length,
                 const LbImportOptions *options,
                 LbImportProgress progress,
                 gpointer progress_data,
                 GCancellable *cancellable,
                 GError **error)
{
  const LbImportOptions defaults = lb_import_options_default (LB_UNITS_METRIC);
  g_autoptr (LbImport) import = import_new ();
  g_autoptr (GArray) fixes = g_array_new (FALSE, FALSE, sizeof (LbFix));
  g_autoptr (GArray) soundings = g_array_new (FALSE, FALSE, sizeof (LbRawSounding));
  LbImporter importer = {
    import, options ? options : &defaults, fixes, soundings, progress, progress_data, cancellable
  };

  g_autofree char *converted = NULL;

  if (!lb_log_take_text (&text, &length, &converted, error))
    return NULL;
  if (is_blank (text, length))
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX, _ ("this file is empty"));
      return NULL;
    }
  import->format = lb_log_find_format (text, length);
  if (!read_by_format (&importer, text, length, error))
    return NULL;
  if (!lb_importer_place (&importer, error) || !check_found (&importer, error)
      || !lb_importer_go_on (&importer, 1, error))
    return NULL;
  return g_steal_pointer (&import);
}
