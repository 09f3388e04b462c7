/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "clear-words.h"

#include "scene_build.h"
#include "test.h"

/* Words as they are painted: what the pango layout covers. */
static LbBox
words_box (const LbItem *item)
{
  PangoRectangle logical;

  pango_layout_get_extents (item->layout, NULL, &logical);
  return (LbBox){ item->text_x + (double) logical.x / PANGO_SCALE,
                  item->text_y + (double) logical.y / PANGO_SCALE,
                  (double) logical.width / PANGO_SCALE, (double) logical.height / PANGO_SCALE };
}

void
assert_words_are_clear (const LbScene *scene, const char *what)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *a = &g_array_index (scene->items, LbItem, i);
      LbBox box;

      if (!a->layout)
        continue;
      box = words_box (a);
      if (box.x < 0 || box.y < 0 || box.x + box.width > scene->width
          || box.y + box.height > scene->height)
        fail_msg ("%s: \"%s\" leaves the picture", what, pango_layout_get_text (a->layout));
      for (guint k = 0; k < i; k++)
        {
          const LbItem *b = &g_array_index (scene->items, LbItem, k);

          if (b->layout && lb_box_overlaps (box, words_box (b)))
            fail_msg ("%s: \"%s\" lies on \"%s\"", what, pango_layout_get_text (a->layout),
                      pango_layout_get_text (b->layout));
        }
    }
}

void
assert_nothing_covers_words (const LbScene *scene, const char *what)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *words = &g_array_index (scene->items, LbItem, i);

      if (!words->layout)
        continue;
      for (guint k = i + 1; k < scene->items->len; k++)
        {
          const LbItem *card = &g_array_index (scene->items, LbItem, k);
          bool is_card =
              card->n_ops > 0
              && (card->look.fill == LB_COLOUR_CARD || card->look.fill == LB_COLOUR_REMARK_CARD)
              && card->pick == LB_PICK_NOTHING && card->bounds.height > 20;

          if (is_card && card->layer == LB_LAYER_FOREGROUND
              && lb_box_overlaps (lb_box_grown (card->bounds, -2), words_box (words)))
            fail_msg ("%s: a card covers \"%s\"", what, pango_layout_get_text (words->layout));
        }
    }
}
