/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw_context.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "text.h"

#define MOST_TEXTS 512 /* above this, text not used lately is let go */
#define LATELY 16      /* scenes */

typedef struct
{
  const char *text;
  int font;
  double size;
  double wrap;
} TextKey;

typedef struct
{
  TextKey key; /* key.text is owned */
  LbText text;
  guint last_used;
} TextEntry;

struct LbDrawContext
{
  PangoContext *pango;
  PangoFontDescription *fonts[LB_N_FONTS]; /* of the size used last; NULL at first */
  double font_sizes[LB_N_FONTS];
  GHashTable *texts; /* TextKey inside TextEntry -> TextEntry */
  guint scene;
  int slots[LB_LABEL_MEMORY];
};

static guint
text_key_hash (gconstpointer data)
{
  const TextKey *key = data;

  return g_str_hash (key->text) * 31u + (guint) key->font * 0x9e3779b1u
         + (guint) (gint) (key->wrap * 64) * 0x85ebca6bu;
}

static gboolean
text_key_equal (gconstpointer a, gconstpointer b)
{
  const TextKey *p = a, *q = b;

  return p->font == q->font && p->size == q->size && p->wrap == q->wrap
         && strcmp (p->text, q->text) == 0;
}

static void
text_entry_free (gpointer data)
{
  TextEntry *entry = data;

  g_object_unref (entry->text.layout);
  g_free ((char *) entry->key.text);
  g_free (entry);
}

/* Hints are off so that text is as wide on paper as on a screen and at any scale. */
static PangoContext *
new_pango_context (void)
{
  PangoContext *pango = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (pango, options);
  pango_cairo_context_set_resolution (pango, 96);
  pango_context_set_round_glyph_positions (pango, FALSE);
  cairo_font_options_destroy (options);
  return pango;
}

LbDrawContext *
lb_draw_context_new (void)
{
  LbDrawContext *context = g_new0 (LbDrawContext, 1);

  context->pango = new_pango_context ();
  context->texts = g_hash_table_new_full (text_key_hash, text_key_equal, NULL, text_entry_free);
  lb_draw_context_forget_labels (context);
  return context;
}

void
lb_draw_context_free (LbDrawContext *context)
{
  if (!context)
    return;
  g_hash_table_unref (context->texts);
  for (int i = 0; i < LB_N_FONTS; i++)
    g_clear_pointer (&context->fonts[i], pango_font_description_free);
  g_object_unref (context->pango);
  g_free (context);
}

void
lb_draw_context_forget_labels (LbDrawContext *context)
{
  for (int i = 0; i < LB_LABEL_MEMORY; i++)
    context->slots[i] = -1;
}

int
lb_draw_context_last_slot (const LbDrawContext *context, int label)
{
  return context->slots[label];
}

void
lb_draw_context_keep_slot (LbDrawContext *context, int label, int slot)
{
  context->slots[label] = slot;
}

static gboolean
is_stale_cb (gpointer key, gpointer value, gpointer data)
{
  const TextEntry *entry = value;
  const LbDrawContext *context = data;

  return context->scene - entry->last_used > LATELY;
}

void
lb_draw_context_begin (LbDrawContext *context)
{
  context->scene++;
  if (g_hash_table_size (context->texts) > MOST_TEXTS)
    g_hash_table_foreach_remove (context->texts, is_stale_cb, context);
}

static const PangoFontDescription *
font_description (LbDrawContext *context, const LbStyle *style, int font)
{
  bool bold = font == LB_FONT_STRONG || font == LB_FONT_BIG || font == LB_FONT_TITLE;
  PangoFontDescription *description = context->fonts[font];

  if (description && context->font_sizes[font] == style->font_size[font])
    return description;
  g_clear_pointer (&context->fonts[font], pango_font_description_free);
  description = pango_font_description_from_string (style->font_family);
  pango_font_description_set_absolute_size (description, style->font_size[font] * PANGO_SCALE);
  pango_font_description_set_weight (description, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  context->fonts[font] = description;
  context->font_sizes[font] = style->font_size[font];
  return description;
}

/* Keeps a number and its unit in one line: "20 ft" must not end a line with "20". */
static void
keep_units_with_numbers (PangoLayout *layout, const char *text)
{
  PangoAttrList *list = pango_attr_list_new ();

  for (const char *at = strchr (text, ' '); at; at = strchr (at + 1, ' '))
    {
      PangoAttribute *keep;

      if (at == text || !g_ascii_isalpha (at[1])
          || !(g_ascii_isdigit (at[-1])
               || g_unichar_type (g_utf8_get_char (g_utf8_prev_char (at)))
                      == G_UNICODE_OTHER_NUMBER))
        continue;
      keep = pango_attr_allow_breaks_new (FALSE);
      keep->start_index = (guint) (at - text - 1);
      keep->end_index = (guint) (at - text + 2);
      pango_attr_list_insert (list, keep);
    }
  pango_layout_set_attributes (layout, list);
  pango_attr_list_unref (list);
}

static TextEntry *
shape_text (LbDrawContext *context, const LbStyle *style, const TextKey *key)
{
  TextEntry *entry = g_new0 (TextEntry, 1);
  PangoLayout *layout = pango_layout_new (context->pango);
  PangoRectangle extents;

  pango_layout_set_font_description (layout, font_description (context, style, key->font));
  pango_layout_set_text (layout, key->text, -1);
  pango_layout_get_extents (layout, NULL, &extents);
  if (key->wrap != 0 && extents.width > fabs (key->wrap) * PANGO_SCALE)
    {
      pango_layout_set_width (layout, (int) (fabs (key->wrap) * PANGO_SCALE));
      if (key->wrap > 0)
        {
          pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
          keep_units_with_numbers (layout, key->text);
        }
      else
        pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
      pango_layout_get_extents (layout, NULL, &extents);
    }

  entry->key = *key;
  entry->key.text = g_strdup (key->text);
  entry->text.layout = layout;
  /* What is written from right to left stands at the right of the width it was broken to. */
  entry->text.width = (double) (extents.x + extents.width) / PANGO_SCALE;
  entry->text.height = (double) extents.height / PANGO_SCALE;
  g_hash_table_insert (context->texts, &entry->key, entry);
  return entry;
}

LbText
lb_draw_context_text (
    LbDrawContext *context, const LbStyle *style, LbFont font, const char *text, double wrap)
{
  TextKey key = { text, (int) font, style->font_size[font], wrap };
  TextEntry *entry = g_hash_table_lookup (context->texts, &key);

  if (!entry)
    entry = shape_text (context, style, &key);
  entry->last_used = context->scene;
  return entry->text;
}
