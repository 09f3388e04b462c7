/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is on the pages of a card, read from the scenes: no words over one another or over a line,
 * nothing off the page, no letters that are too small, whatever the rig and the size. */
#include "card_sheets.h"
#include "cards.h"
#include "flatten.h"

#include <string.h>

/* Points: boxes that touch are no overlap, and bounds allow for the width of a stroke. */
#define TOUCHING 0.05
#define STROKE 2.0

static const CardWords long_words = {
  .title =
      "A title that goes on and on about a river, its bends, its pools, the month, the water, "
      "the weather, the boat, and whoever else may have been there with a rig of the same kind "
      "to hold it up",
  .lure =
      "a floating minnow with a very long name that no card could ever hold in a single line of "
      "it!",
  .hardware =
      "barrel swivels with a very long name, in a size that is told at length, to be wetted",
  .notes =
      "One paragraph that is rather long, so that it has to be broken into lines, and then some "
      "more of it, and more, so that it comes to be longer than one piece of a note may be and "
      "has to go on in the next, wherever that may stand, on this page or on another one of "
      "the same card, which then is as full as any other card of its size could be.\n\nThe end.",
};

/* Hebrew, Arabic, Greek, Cyrillic and accents: scripts that the fonts of the tests have. */
static const CardWords many_scripts = {
  .title = "כרטיס לנחל, באפריל",
  .lure = "سمكة صغيرة عائمة ٧ سم",
  .hardware = "Κρίκος – вертлюг – émerillon nº 8",
  .notes = "הערה ראשונה עם 20 ft בתוכה.\nВторая строка.",
};

static const char *
words_of (const LbItem *item)
{
  return pango_layout_get_text (item->layout);
}

static LbBox
text_box (const LbItem *item)
{
  PangoRectangle logical;

  pango_layout_get_extents (item->layout, NULL, &logical);
  return (LbBox){ item->text_x + (double) logical.x / PANGO_SCALE,
                  item->text_y + (double) logical.y / PANGO_SCALE,
                  (double) logical.width / PANGO_SCALE, (double) logical.height / PANGO_SCALE };
}

static void
check_letters (const LbItem *item, const char *where)
{
  const PangoFontDescription *font = pango_layout_get_font_description (item->layout);

  assert_true (pango_font_description_get_size_is_absolute (font));
  if (pango_font_description_get_size (font) < LB_CARD_LEAST_LETTERS * PANGO_SCALE)
    fail_msg ("%s: \"%s\" is written in %.2f pt", where, words_of (item),
              (double) pango_font_description_get_size (font) / PANGO_SCALE);
}

static void
check_inside (const LbCardPage *page, LbBox box, double margin, const char *what, const char *where)
{
  if (box.x < margin - TOUCHING || box.y < margin - TOUCHING
      || box.x + box.width > page->width - margin + TOUCHING
      || box.y + box.height > page->height - margin + TOUCHING)
    fail_msg ("%s: \"%s\" at %.1f %.1f, %.1f x %.1f, is not on a page of %.1f x %.1f", where, what,
              box.x, box.y, box.width, box.height, page->width, page->height);
}

typedef struct
{
  LbBox box; /* of the words, without what letters leave free above and below */
  const char *words;
  const char *where;
} Crossing;

static void
crossing_cb (double x1, double y1, double x2, double y2, void *data)
{
  const Crossing *c = data;
  int steps = 1 + (int) (hypot (x2 - x1, y2 - y1) / 0.5);

  for (int i = 0; i <= steps; i++)
    {
      double x = x1 + (x2 - x1) * i / steps, y = y1 + (y2 - y1) * i / steps;

      if (x > c->box.x && x < c->box.x + c->box.width && y > c->box.y
          && y < c->box.y + c->box.height)
        fail_msg ("%s: a line goes through \"%s\" at %.1f %.1f", c->where, c->words, x, y);
    }
}

/* No line through the words of `item`, and no lure or weight over them. */
static void
check_crossings (const LbScene *scene, const LbItem *item, const char *where)
{
  LbBox box = text_box (item);
  Crossing crossing = { .words = words_of (item), .where = where };

  crossing.box = (LbBox){ box.x + 0.5, box.y + 0.25 * box.height, box.width - 1, 0.5 * box.height };
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *path = &g_array_index (scene->items, LbItem, i);

      if (path->n_ops > 0 && lb_box_overlaps (path->bounds, crossing.box)
          && path->layer == LB_LAYER_FOREGROUND)
        lb_item_flatten (scene, path, crossing_cb, &crossing);
    }
}

/* The boxes of all words of a scene, a little smaller than they are; those of paths are empty. Free
 * with g_free(). */
static LbBox *
boxes_of (const LbScene *scene)
{
  LbBox *boxes = g_new0 (LbBox, scene->items->len + 1);

  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->layout)
        boxes[i] = lb_box_grown (text_box (item), -TOUCHING);
    }
  return boxes;
}

/* None too small, none over another. */
static void
check_words (const LbScene *scene, const LbBox *boxes, const char *where)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (!item->layout)
        continue;
      check_letters (item, where);
      for (guint k = 0; k < i; k++)
        if (boxes[k].width > 0 && lb_box_overlaps (boxes[i], boxes[k]))
          fail_msg ("%s: \"%s\" stands over \"%s\"", where, words_of (item),
                    words_of (&g_array_index (scene->items, LbItem, k)));
    }
}

static void
check_inset (const LbCardInset *inset, const char *where)
{
  g_autofree LbBox *boxes = boxes_of (inset->scene);

  check_words (inset->scene, boxes, where);
}

static void
check_item (const LbCardPage *page, const LbItem *item, LbBox box, const char *where)
{
  double margin = lb_card_margin (page->width, page->height);

  if (!item->layout)
    {
      check_inside (page, item->bounds, margin - STROKE, "a path", where);
      return;
    }
  check_inside (page, text_box (item), margin, words_of (item), where);
  check_crossings (page->scene, item, where);
  for (size_t k = 0; k < page->n_insets; k++)
    {
      LbBox inset = { page->insets[k].x, page->insets[k].y, page->insets[k].scene->width,
                      page->insets[k].scene->height };

      if (lb_box_overlaps (box, inset))
        fail_msg ("%s: \"%s\" stands over a drawing", where, words_of (item));
    }
}

static void
check_page (const LbCardPage *page, const char *where)
{
  g_autofree LbBox *boxes = boxes_of (page->scene);

  check_words (page->scene, boxes, where);
  for (guint i = 0; i < page->scene->items->len; i++)
    check_item (page, &g_array_index (page->scene->items, LbItem, i), boxes[i], where);
  for (size_t k = 0; k < page->n_insets; k++)
    check_inset (&page->insets[k], where);
}

static void
check_card (const LbCardContents *contents, int most_pages, const char *where)
{
  LbCardDrawingOptions options = { .most_pages = most_pages };
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, &options);

  assert_true (lb_card_drawing_n_pages (drawing) >= 1);
  assert_true (lb_card_drawing_n_sheets (drawing) >= 1);
  for (size_t i = 0; i < lb_card_drawing_n_sheets (drawing); i++)
    {
      const LbPressSheet *sheet = lb_card_drawing_sheet (drawing, i);

      for (size_t k = 0; k < sheet->n_spots; k++)
        check_page (sheet->spots[k].page, where);
    }
  if (most_pages == 0 && contents->card.size != LB_CARD_OWN_SIZE
      && lb_card_drawing_left_out (drawing))
    fail_msg ("%s: left out %s", where, lb_card_drawing_left_out (drawing));
}

/* All sizes, upright and across, as many pages as it takes and on one. */
static void
check_all_sizes (LbCardContents *contents, const char *name)
{
  for (int size = 0; size < LB_CARD_OWN_SIZE; size++)
    for (int wide = 0; wide < 2; wide++)
      {
        g_autofree char *where = g_strdup_printf (
            "%s, %s%s", name, lb_card_size_name ((LbCardSize) size), wide ? " across" : "");

        contents->card.size = (LbCardSize) size;
        contents->card.wide = wide;
        contents->card.prints[LB_CARD_PART_TEMPLATE] = wide;
        check_card (contents, 0, where);
        check_card (contents, 1, where);
      }
}

/* All sizes, in turn upright and across, on as many pages as it takes and on one. */
static void
check_sizes_in_turn (LbCardContents *contents, size_t turn)
{
  for (size_t size = 0; size < LB_CARD_OWN_SIZE; size++)
    {
      bool wide = (turn + size) % 2, one = (turn / 2 + size) % 2;
      g_autofree char *where =
          g_strdup_printf ("rig %d, %s%s%s", (int) turn, lb_card_size_name ((LbCardSize) size),
                           wide ? " across" : "", one ? " on one page" : "");

      contents->card.size = (LbCardSize) size;
      contents->card.wide = wide;
      contents->card.prints[LB_CARD_PART_TEMPLATE] = turn % 5 == 0;
      check_card (contents, one, where);
    }
}

static void
test_nothing_overlaps_or_leaves_the_page (void **state)
{
  static const CardWords *const words[] = { &card_plain_words, &long_words, &many_scripts };
  size_t n = test_count (500);

  for (size_t i = 0; i < n; i++)
    {
      TestRandom random = { 4711 + i };
      LbSetup setup = random_setup (&random);
      LbUnits units = i % 2 ? LB_UNITS_METRIC : LB_UNITS_US;
      LbCardContents *contents = card_new (&setup, units, words[i % 3]);

      check_sizes_in_turn (contents, i);
      card_free (contents);
    }
}

/* No shank, no leaders, no answer, hardware to the full, notes of many pages. */
static void
test_hard_cases (void **state)
{
  LbSetup bare = setup_with_leaders (0), stuck = lb_setup_default ();
  GString *notes = g_string_new (NULL);
  CardWords words = card_plain_words;
  LbCardContents *contents;

  bare.rig.shank_length = 0;
  contents = card_new (&bare, LB_UNITS_US, &card_plain_words);
  contents->gauge.n_ticks = 0;
  check_all_sizes (contents, "bare");
  contents->gauge.n_ticks = 10;
  card_free (contents);

  for (int i = 0; i < 400; i++)
    g_string_append_printf (notes, "Note %d of a long day on the water, with all that it held.%s",
                            i, i % 7 == 0 ? "\n\n" : " ");
  words.notes = notes->str;
  contents = card_new (&stuck, LB_UNITS_METRIC, &words);
  contents->running.status = LB_STATUS_NO_CONVERGENCE;
  card_free_numbers (contents);
  card_fill_numbers (contents, 8, LB_CARD_MOST_VALUES, LB_CARD_MOST_VALUES, LB_CARD_MOST_TICKS);
  for (size_t turn = 0; turn < 4; turn++)
    check_sizes_in_turn (contents, turn);
  card_free (contents);
  g_string_free (notes, TRUE);
}

static size_t
count_words (const LbCardDrawing *drawing, const char *words)
{
  size_t n = 0;

  for (size_t i = 0; i < lb_card_drawing_n_sheets (drawing); i++)
    {
      const LbCardPage *page = lb_card_drawing_sheet (drawing, i)->spots[0].page;

      for (guint k = 0; k < page->scene->items->len; k++)
        {
          const LbItem *item = &g_array_index (page->scene->items, LbItem, k);

          n += item->layout && g_strcmp0 (words_of (item), words) == 0;
        }
    }
  return n;
}

/* A box with seven weights: no weight has its currents in two grids, and
 * the table of a pocket card takes a few pages and not one for each weight. */
static void
test_many_weights_stay_compact (void **state)
{
  static const struct
  {
    LbCardSize size;
    size_t most_pages;
  } cases[] = { { LB_CARD_4X6, 3 }, { LB_CARD_A6, 4 }, { LB_CARD_LETTER, 2 } };
  LbSetup setup = setup_with_leaders (2);
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);

  card_free_numbers (contents);
  card_fill_numbers (contents, 7, 5, 5, 10);
  for (int part = 0; part < LB_N_CARD_PARTS; part++)
    contents->card.prints[part] = false;
  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (LbCardDrawing) with = NULL;
      g_autoptr (LbCardDrawing) without = NULL;
      size_t n_weights = contents->table.n_weights;

      contents->card.size = cases[i].size;
      with = lb_card_drawing_new (contents, NULL);
      assert_int_equal (count_words (with, contents->table.depth_words[1]), n_weights);
      contents->table.n_weights = 0;
      without = lb_card_drawing_new (contents, NULL);
      contents->table.n_weights = n_weights;
      if (lb_card_drawing_n_pages (with) > lb_card_drawing_n_pages (without) + cases[i].most_pages)
        fail_msg ("%s: %d pages, %d without the table", lb_card_size_name (cases[i].size),
                  (int) lb_card_drawing_n_pages (with), (int) lb_card_drawing_n_pages (without));
    }
  card_free (contents);
}

/* Heights that crowd within a few degrees, wherever on the dial: no line through a number. */
static void
test_narrow_gauges (void **state)
{
  static const LbCardSize sizes[] = { LB_CARD_3X5, LB_CARD_4X6, LB_CARD_A5, LB_CARD_LETTER };
  LbSetup setup = setup_with_leaders (1);
  LbCardContents *contents = card_new (&setup, LB_UNITS_METRIC, &card_plain_words);
  LbCardGauge *gauge = &contents->gauge;

  card_free_numbers (contents);
  card_fill_numbers (contents, 1, 1, 1, LB_CARD_MOST_TICKS);
  for (int part = 0; part < LB_N_CARD_PARTS; part++)
    contents->card.prints[part] = part == LB_CARD_PART_GAUGE;
  for (int k = 0; k < 13 * 4 * 4; k++)
    {
      double low = (3 + 6 * (k % 13)) * G_PI / 180;
      double range = (double[]){ 1, 4, 9, 20 }[k / 13 % 4] * G_PI / 180;
      size_t n = (size_t[]){ 4, 10, 22, LB_CARD_MOST_TICKS }[(k + k / 13) % 4];
      g_autofree char *where = g_strdup_printf ("gauge from %.0f degrees over %.0f, %d ticks",
                                                low * 180 / G_PI, range * 180 / G_PI, (int) n);

      gauge->n_ticks = n;
      gauge->low = low;
      gauge->high = fmin (low + range, 85 * G_PI / 180);
      gauge->own_angle = gauge->low;
      for (size_t i = 0; i < n; i++)
        gauge->ticks[i].angle =
            gauge->low + (gauge->high - gauge->low) * (double) i / (double) (n - 1);
      contents->card.size = sizes[k / 52];
      check_card (contents, 0, where);
    }
  gauge->n_ticks = LB_CARD_MOST_TICKS;
  card_free (contents);
}

static void
test_own_sizes (void **state)
{
  static const double sides[][2] = { { LB_CARD_LEAST_SIDE, LB_CARD_LEAST_SIDE },
                                     { LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE },
                                     { LB_CARD_MOST_SIDE, LB_CARD_MOST_SIDE },
                                     { 0.09, 0.055 },
                                     { 0.2, 0.06 } };
  LbSetup setup = setup_with_leaders (3);
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);

  contents->card.size = LB_CARD_OWN_SIZE;
  for (size_t i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      contents->card.own_width = sides[i][0];
      contents->card.own_height = sides[i][1];
      check_card (contents, 0, "own size");
    }
  card_free (contents);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_nothing_overlaps_or_leaves_the_page),
    cmocka_unit_test (test_hard_cases),
    cmocka_unit_test (test_many_weights_stay_compact),
    cmocka_unit_test (test_narrow_gauges),
    cmocka_unit_test (test_own_sizes),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
