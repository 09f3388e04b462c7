/* SPDX-License-Identifier: GPL-3.0-or-later */
/* No words over other words, none outside the picture, for any rig and size. */
#include "clear-words.h"
#include "drawings.h"
#include "scene_build.h"

#include <stdio.h>

static const double sizes[][2] = { { 640, 240 },   { 800, 420 },   { 960, 600 },
                                   { 1024, 300 },  { 1280, 800 },  { 700, 900 },
                                   { 1920, 1080 }, { 2560, 1000 }, { 3840, 2160 } };

static void
check_one (const LbPicture *picture, size_t size, const char *what)
{
  Scenes scenes = scenes_new (picture, LB_THEME_LIGHT, sizes[size][0], sizes[size][1]);

  assert_words_are_clear (scenes.side, what);
  assert_words_are_clear (scenes.strip, what);
  assert_nothing_covers_words (scenes.side, what);
  assert_nothing_covers_words (scenes.strip, what);
  scenes_free (&scenes);
}

static void
test_words_stay_clear_of_one_another (void **state)
{
  TestRandom random = { 20260402 };
  size_t n = test_count (360), unsolved = 0;

  for (size_t i = 0; i < n; i++)
    {
      LbSetup setup = random_setup (&random);
      Drawing *drawing = drawing_new (&setup);
      char what[64];

      drawing->picture.units = i % 3 == 0 ? LB_UNITS_METRIC : LB_UNITS_US;
      if (i % 5 == 0)
        drawing->picture.remark = "The current was measured, not estimated.";
      snprintf (what, sizeof what, "rig %zu at %.0f x %.0f", i, sizes[i % 9][0], sizes[i % 9][1]);
      check_one (&drawing->picture, i % 9, what);
      unsolved += !lb_picture_is_solved (&drawing->picture);
      drawing_free (drawing);
    }
  assert_less (unsolved, 0.05 * (double) n + 1);
}

/* The labels that matter most must be there in the window's own sizes, not left out. */
static void
test_two_leaders_have_all_their_labels (void **state)
{
  for (size_t size = 2; size < 9; size++)
    {
      LbSetup setup = lb_setup_default ();
      Drawing *drawing = drawing_new (&setup);
      Scenes scenes =
          scenes_new (&drawing->picture, LB_THEME_LIGHT, sizes[size][0], sizes[size][1]);

      assert_int_equal (scenes.side->n_missing_labels, 0);
      assert_int_equal (scenes.strip->n_missing_labels, 0);
      scenes_free (&scenes);
      drawing_free (drawing);
    }
}

static void
test_a_long_name_is_cut_short (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);

  drawing->picture.lure_names[0] =
      "a floating minnow with a very long name that no card could ever hold in one line";
  drawing->picture.remark =
      "A remark of some length, which has to be broken into lines to find room beside the rest.";
  for (size_t size = 0; size < 9; size++)
    check_one (&drawing->picture, size, "long name");
  drawing_free (drawing);
}

#define MOST_CARDS 16

/* The places of the cards, in the order of their labels, and how many there are. */
static size_t
card_places (const LbScene *scene, double *x, double *y)
{
  size_t n = 0;

  for (guint i = 0; i < scene->items->len && n < MOST_CARDS; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->look.fill == LB_COLOUR_CARD && item->bounds.height >= 24
          && item->layer == LB_LAYER_FOREGROUND && !item->pick)
        {
          x[n] = item->bounds.x;
          y[n++] = item->bounds.y;
        }
    }
  return n;
}

/* How often a card moves by more than the rig does, while the current grows little by little. A
 * context that forgets in between has no say in where the cards stay. */
static int
count_jumps (bool forget)
{
  LbDrawContext *context = lb_draw_context_new ();
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);
  LbView view = { 0 };
  double x[2][MOST_CARDS], y[2][MOST_CARDS];
  size_t n[2] = { 0 };
  int jumps = 0;

  for (int step = 0; step < 150; step++)
    {
      LbSetup setup = setup_with_leaders (3);
      Drawing *drawing;
      LbExtents extents;
      LbScene *scene;
      int now = step % 2;

      setup.river.surface_current = 0.6 + 0.008 * step;
      drawing = drawing_new (&setup);
      extents = lb_picture_extents (&drawing->picture);
      view = lb_view_fit (&view, &extents, &style, 960, 420);
      if (forget)
        lb_draw_context_forget_labels (context);
      scene = lb_side_view_new (context, &drawing->picture, &style, &view, 960, 420);
      n[now] = card_places (scene, x[now], y[now]);
      assert_true (n[now] >= 5);
      for (size_t i = 0; i < MIN (n[0], n[1]); i++)
        jumps += hypot (x[0][i] - x[1][i], y[0][i] - y[1][i]) > 25;
      lb_scene_free (scene);
      drawing_free (drawing);
    }
  lb_draw_context_free (context);
  return jumps;
}

/* A slider that moves must not make the labels jump to and fro. */
static void
test_labels_stay_where_they_were (void **state)
{
  int kept = count_jumps (false), forgotten = count_jumps (true);

  print_message ("cards jumped %d times, without memory %d times\n", kept, forgotten);
  assert_less (kept, forgotten);
  assert_less (kept, 25);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_words_stay_clear_of_one_another),
    cmocka_unit_test (test_two_leaders_have_all_their_labels),
    cmocka_unit_test (test_a_long_name_is_cut_short),
    cmocka_unit_test (test_labels_stay_where_they_were),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
