/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written on a card: for a screen reader, and what no font here has letters for. */
#include <string.h>

#include "card_sheets.h"

static void
describe_page (const LbCardPage *page, GString *words)
{
  for (guint i = 0; i < page->scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (page->scene->items, LbItem, i);

      if (item->layout)
        g_string_append_printf (words, "%s\n", pango_layout_get_text (item->layout));
    }
  for (size_t i = 0; i < page->n_insets; i++)
    {
      g_autofree char *inset = lb_scene_describe (page->insets[i].scene);

      g_string_append_printf (words, "%s\n", inset);
    }
}

char *
lb_card_drawing_describe (const LbCardDrawing *drawing, size_t index)
{
  const LbPressSheet *sheet = lb_card_drawing_sheet (drawing, index);
  GString *words = g_string_new (NULL);

  for (size_t i = 0; i < sheet->n_spots; i++)
    {
      bool again = false;

      for (size_t k = 0; k < i; k++)
        again = again || sheet->spots[k].page == sheet->spots[i].page;
      if (!again)
        describe_page (sheet->spots[i].page, words);
    }
  return g_string_free (words, FALSE);
}

/* ---- Scripts without a font ---- */

/* Adds the texts with such letters to `found`, each once. */
static void
find_unlettered (const LbScene *scene, GPtrArray *found)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);
      const char *text = item->layout ? pango_layout_get_text (item->layout) : NULL;

      if (text && pango_layout_get_unknown_glyphs_count (item->layout) > 0
          && !g_ptr_array_find_with_equal_func (found, text, g_str_equal, NULL))
        g_ptr_array_add (found, (gpointer) text);
    }
}

char *
lb_card_drawing_dup_unlettered (const LbCardDrawing *drawing)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();

  for (size_t i = 0; i < lb_card_drawing_n_sheets (drawing); i++)
    {
      const LbPressSheet *sheet = lb_card_drawing_sheet (drawing, i);

      for (size_t k = 0; k < sheet->n_spots; k++)
        {
          const LbCardPage *page = sheet->spots[k].page;

          find_unlettered (page->scene, found);
          for (size_t n = 0; n < page->n_insets; n++)
            find_unlettered (page->insets[n].scene, found);
        }
    }
  g_ptr_array_add (found, NULL);
  return found->len > 1 ? g_strjoinv ("\n", (char **) found->pdata) : NULL;
}
