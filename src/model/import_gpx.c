/* SPDX-License-Identifier: GPL-3.0-or-later */
/* GPX tracks and routes. The standard has no depth: programs put one into a point's extensions, in
 * metres, in an element called "depth" or "water depth" whatever its prefix. */
#include "import_private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "file_error.h"

#define CHUNK 65536
#define DEEPEST 12000.0
#define LONGEST_TEXT 64

typedef struct
{
  LbImporter *importer;
  gboolean is_gpx, in_point, has_depth, is_good, at_end;
  double latitude, longitude, depth, time;
  GString *text;   /* of the element that is open */
  gboolean wanted; /* that text */
} Gpx;

/* The name without its prefix. */
static const char *
local_name (const char *name)
{
  const char *colon = strrchr (name, ':');

  return colon ? colon + 1 : name;
}

static gboolean
is_point (const char *name)
{
  return strcmp (name, "trkpt") == 0 || strcmp (name, "rtept") == 0;
}

static gboolean
is_depth (const char *name)
{
  return g_ascii_strcasecmp (name, "depth") == 0 || g_ascii_strcasecmp (name, "waterdepth") == 0
         || g_ascii_strcasecmp (name, "water_depth") == 0;
}

static gsize
line_of (GMarkupParseContext *context)
{
  int line, character;

  g_markup_parse_context_get_position (context, &line, &character);
  return (gsize) line;
}

static void
start_point (Gpx *gpx, GMarkupParseContext *context, const char **names, const char **values)
{
  gpx->in_point = TRUE;
  gpx->has_depth = FALSE;
  gpx->latitude = gpx->longitude = gpx->time = LB_UNSET;
  for (; *names; names++, values++)
    {
      double value;

      if (!lb_log_number (*values, strlen (*values), &value))
        continue;
      if (strcmp (*names, "lat") == 0)
        gpx->latitude = value;
      else if (strcmp (*names, "lon") == 0)
        gpx->longitude = value;
    }
  gpx->is_good = lb_is_set (gpx->latitude) && lb_is_set (gpx->longitude)
                 && fabs (gpx->latitude) <= 90 && fabs (gpx->longitude) <= 180;
  gpx->importer->import->lines++;
  if (!gpx->is_good)
    lb_importer_add_bad (gpx->importer, line_of (context), LB_BAD_LINE_RANGE,
                         _ ("line %zu: no possible position"), line_of (context));
}

static void
start_cb (GMarkupParseContext *context,
          const char *element,
          const char **names,
          const char **values,
          gpointer data,
          GError **error)
{
  Gpx *gpx = data;
  const char *name = local_name (element);

  if (strcmp (name, "gpx") == 0)
    gpx->is_gpx = TRUE;
  else if (!gpx->is_gpx)
    g_set_error (error, G_MARKUP_ERROR, G_MARKUP_ERROR_INVALID_CONTENT,
                 _ ("it begins with <%.40s> and not with <gpx>"), element);
  else if (is_point (name))
    start_point (gpx, context, names, values);
  gpx->wanted = gpx->in_point && (is_depth (name) || strcmp (name, "time") == 0);
  g_string_truncate (gpx->text, 0);
}

static void
text_cb (
    GMarkupParseContext *context, const char *text, gsize length, gpointer data, GError **error)
{
  Gpx *gpx = data;

  if (gpx->wanted && gpx->text->len + length <= LONGEST_TEXT)
    g_string_append_len (gpx->text, text, (gssize) length);
}

static void
read_depth (Gpx *gpx, gsize line)
{
  const char *text = g_strstrip (gpx->text->str);

  if (!lb_log_number (text, strlen (text), &gpx->depth))
    lb_importer_add_bad (gpx->importer, line, LB_BAD_LINE_FORM,
                         _ ("line %zu: a depth that is no number"), line);
  else if (gpx->depth < 0 || gpx->depth > DEEPEST)
    lb_importer_add_bad (gpx->importer, line, LB_BAD_LINE_RANGE, _ ("line %zu: no possible depth"),
                         line);
  else if (gpx->depth == 0)
    gpx->importer->import->no_bottom++;
  else
    gpx->has_depth = TRUE;
}

static void
read_time (Gpx *gpx)
{
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (g_strstrip (gpx->text->str), utc);

  if (time)
    gpx->time = (double) g_date_time_to_unix (time) + g_date_time_get_microsecond (time) / 1e6;
}

static void
end_cb (GMarkupParseContext *context, const char *element, gpointer data, GError **error)
{
  Gpx *gpx = data;
  const char *name = local_name (element);

  if (gpx->wanted && strcmp (name, "time") == 0)
    read_time (gpx);
  else if (gpx->wanted)
    read_depth (gpx, line_of (context));
  gpx->wanted = FALSE;
  if (!is_point (name) || !gpx->in_point)
    return;
  gpx->in_point = FALSE;
  if (!gpx->is_good)
    return;
  /* The depth of a point is that at its place: in between two halves of the way it would lie off.
   */
  lb_importer_add_fix (gpx->importer, gpx->latitude, gpx->longitude, gpx->time);
  if (gpx->has_depth)
    {
      LbRawSounding raw = {
        { LB_UNSET, gpx->depth, gpx->latitude, gpx->longitude, LB_DEPTH_OF_TRANSDUCER },
        LB_SOUNDING_TABLE,
        0,
      };

      g_array_append_val (gpx->importer->soundings, raw);
    }
}

static gboolean
parse_in_pieces (Gpx *gpx, const char *text, gsize length, GError **error)
{
  static const GMarkupParser parser = { start_cb, end_cb, text_cb, NULL, NULL };
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (&parser, 0, gpx, NULL);

  for (gsize at = 0; at < length; at += CHUNK)
    if (!lb_importer_go_on (gpx->importer, (double) at / (double) length, error)
        || !g_markup_parse_context_parse (context, text + at, (gssize) MIN (CHUNK, length - at),
                                          error))
      return FALSE;
  gpx->at_end = TRUE;
  return g_markup_parse_context_end_parse (context, error);
}

/* What stood before the end of a file that was cut off is as good as ever. */
static gboolean
forgive_cut (Gpx *gpx, const GError *fault)
{
  GMarkupError kinds[] = { G_MARKUP_ERROR_PARSE, G_MARKUP_ERROR_EMPTY };

  if (!gpx->at_end || gpx->importer->soundings->len == 0)
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_error_matches (fault, G_MARKUP_ERROR, kinds[i]))
      {
        lb_importer_warn (gpx->importer,
                          _ ("The file is cut off: what stands before its end was used."));
        return TRUE;
      }
  return FALSE;
}

gboolean
lb_importer_read_gpx (LbImporter *importer, const char *text, gsize length, GError **error)
{
  g_autoptr (GString) open = g_string_new (NULL);
  g_autoptr (GError) fault = NULL;
  g_autofree char *valid = NULL;
  Gpx gpx = { .importer = importer, .text = open };

  if (parse_in_pieces (&gpx, text, length, &fault) || forgive_cut (&gpx, fault))
    return TRUE;
  if (fault->domain == G_IO_ERROR)
    {
      g_propagate_error (error, g_steal_pointer (&fault));
      return FALSE;
    }
  valid = g_utf8_make_valid (fault->message, -1);
  g_strdelimit (valid, "\n\r", ' ');
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_SYNTAX, _ ("this is no GPX file: %s"), valid);
  return FALSE;
}
