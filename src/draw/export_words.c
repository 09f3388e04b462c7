/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "export_words.h"

#include <glib/gi18n-lib.h>
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

/* After the header chunk, which is always 8 + 25 bytes from the start. */
static void
add_chunk (GByteArray *png, const char *keyword, const char *text)
{
  g_autoptr (GByteArray) chunk = g_byte_array_new ();
  const guint8 zeros[4] = { 0 };
  gsize length = strlen (keyword) + 5 + strlen (text);

  append_number (chunk, (guint32) length);
  g_byte_array_append (chunk, (const guint8 *) "iTXt", 4);
  g_byte_array_append (chunk, (const guint8 *) keyword, (guint) strlen (keyword) + 1);
  g_byte_array_append (chunk, zeros, 4); /* not compressed, no language, no translated keyword */
  g_byte_array_append (chunk, (const guint8 *) text, (guint) strlen (text));
  append_number (chunk, crc_of (chunk->data + 4, chunk->len - 4));
  put_before (png, 33, chunk->data, chunk->len);
}

void
lb_export_words_into_png (const LbExportWords *words, GByteArray *png)
{
  add_chunk (png, "Software", words->software);
  add_chunk (png, "Description", words->description);
  add_chunk (png, "Title", words->title);
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
