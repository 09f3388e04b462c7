/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "export_words.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

LbExportWords
lb_export_words (const LbPicture *picture, const LbScene *side, const LbScene *strip)
{
  g_autofree char *above = lb_scene_describe (side);
  g_autofree char *below = lb_scene_describe (strip);

  return (LbExportWords){
    .title = g_strdup (picture->title && *picture->title ? picture->title
                                                         : _ ("A weighted rig in a river")),
    .description = g_strconcat (above, " ", below, NULL),
    .software = g_strdup ("Layback " LB_VERSION),
  };
}

void
lb_export_words_clear (LbExportWords *words)
{
  g_free (words->title);
  g_free (words->description);
  g_free (words->software);
}

static void
put_before (GByteArray *bytes, gsize where, const void *data, gsize length)
{
  gsize rest = bytes->len - where;

  g_byte_array_set_size (bytes, (guint) (bytes->len + length));
  memmove (bytes->data + where + length, bytes->data + where, rest);
  memcpy (bytes->data + where, data, length);
}

/* ---- PNG ---- */

/* The checksum of PNG chunks: ISO 3309, as in the specification's annex. */
static guint32
crc_of (const guint8 *data, gsize length)
{
  guint32 crc = 0xffffffffu;

  for (gsize i = 0; i < length; i++)
    {
      crc ^= data[i];
      for (int bit = 0; bit < 8; bit++)
        crc = crc & 1 ? crc >> 1 ^ 0xedb88320u : crc >> 1;
    }
  return crc ^ 0xffffffffu;
}

static void
append_number (GByteArray *bytes, guint32 number)
{
  guint32 big_end = GUINT32_TO_BE (number);

  g_byte_array_append (bytes, (const guint8 *) &big_end, 4);
}

/* Puts a chunk after the header chunk, which is always 8 + 25 bytes from the start. */
static void
add_chunk (GByteArray *png, const char *type, const GByteArray *data)
{
  g_autoptr (GByteArray) chunk = g_byte_array_new ();

  append_number (chunk, data->len);
  g_byte_array_append (chunk, (const guint8 *) type, 4);
  g_byte_array_append (chunk, data->data, data->len);
  append_number (chunk, crc_of (chunk->data + 4, chunk->len - 4));
  put_before (png, 33, chunk->data, chunk->len);
}

static void
add_text (GByteArray *png, const char *keyword, const char *text)
{
  g_autoptr (GByteArray) data = g_byte_array_new ();
  const guint8 zeros[4] = { 0 };

  g_byte_array_append (data, (const guint8 *) keyword, (guint) strlen (keyword) + 1);
  g_byte_array_append (data, zeros, 4); /* not compressed, no language, no translated keyword */
  g_byte_array_append (data, (const guint8 *) text, (guint) strlen (text));
  add_chunk (png, "iTXt", data);
}

void
lb_export_words_into_png (const LbExportWords *words, GByteArray *png)
{
  add_text (png, "Software", words->software);
  add_text (png, "Description", words->description);
  add_text (png, "Title", words->title);
}

void
lb_export_resolution_into_png (double per_inch, GByteArray *png)
{
  g_autoptr (GByteArray) data = g_byte_array_new ();
  const guint8 per_metre = 1;
  guint32 number = (guint32) floor (per_inch / 0.0254 + 0.5);

  append_number (data, number);
  append_number (data, number);
  g_byte_array_append (data, &per_metre, 1);
  add_chunk (png, "pHYs", data);
}

/* ---- PDF ---- */

/* The date of the file: as asked, or SOURCE_DATE_EPOCH, or now. */
static char *
date_text (const char *date)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  g_autoptr (GDateTime) time = NULL;

  if (date)
    return g_strdup (date);
  time = epoch ? g_date_time_new_from_unix_utc (g_ascii_strtoll (epoch, NULL, 10))
               : g_date_time_new_now_utc ();
  return time ? g_date_time_format (time, "%Y-%m-%dT%H:%M:%SZ") : NULL;
}

void
lb_export_words_into_pdf (const LbExportWords *words, cairo_surface_t *surface, const char *date)
{
  g_autofree char *when = date_text (date);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, words->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, words->description);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, words->software);
  if (when)
    {
      cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, when);
      cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, when);
    }
}

/* ---- SVG ---- */

/* Cairo numbers its surfaces through the whole life of the program. Counted anew in each file, the
 * same picture gives the same bytes. */
static gboolean
renumber_cb (const GMatchInfo *match, GString *result, gpointer data)
{
  GHashTable *numbers = data;
  char *old = g_match_info_fetch (match, 1);
  gpointer number = g_hash_table_lookup (numbers, old);

  if (!number)
    {
      number = GUINT_TO_POINTER (g_hash_table_size (numbers) + 1);
      g_hash_table_insert (numbers, g_strdup (old), number);
    }
  g_string_append_printf (result, "surface%u", GPOINTER_TO_UINT (number));
  g_free (old);
  return FALSE;
}

static void
renumber_surfaces (GByteArray *svg)
{
  g_autoptr (GRegex) regex = g_regex_new ("(?<=[\"#])surface([0-9]+)(?=[\")])",
                                          (GRegexCompileFlags) 0, (GRegexMatchFlags) 0, NULL);
  g_autoptr (GHashTable) numbers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *text =
      g_regex_replace_eval (regex, (const char *) svg->data, (gssize) svg->len, 0,
                            (GRegexMatchFlags) 0, renumber_cb, numbers, NULL);

  if (!text)
    return;
  g_byte_array_set_size (svg, 0);
  g_byte_array_append (svg, (const guint8 *) text, (guint) strlen (text));
}

void
lb_export_words_into_svg (const LbExportWords *words, GByteArray *svg)
{
  g_autofree char *text = g_markup_printf_escaped ("\n<title>%s</title>\n<desc>%s</desc>",
                                                   words->title, words->description);
  const char *start, *end;

  renumber_surfaces (svg);
  start = g_strstr_len ((const char *) svg->data, (gssize) svg->len, "<svg ");
  end = start ? memchr (start, '>', svg->len - (gsize) (start - (char *) svg->data)) : NULL;

  if (end)
    put_before (svg, (gsize) (end + 1 - (const char *) svg->data), text, strlen (text));
}
