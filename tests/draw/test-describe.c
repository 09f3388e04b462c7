/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The text twin names every part and every number of the drawing. */
#include "drawings.h"

#include <string.h>

#include "phrases.h"

static void
assert_says (const char *text, const char *words)
{
  if (!strstr (text, words))
    fail_msg ("\"%s\" is missing from: %s", words, text);
}

static void
assert_says_quantity (const char *text, const LbPicture *picture, LbQuantity quantity, double value)
{
  char words[64];

  lb_units_format (quantity, picture->units, value, -1, picture->decimal, words, sizeof words);
  assert_says (text, words);
}

static void
check_side_view (const Drawing *drawing, const char *text)
{
  const LbPicture *picture = &drawing->picture;
  const LbReadings *r = &drawing->readings;

  assert_says (text, "Stony Bend, April");
  assert_says_quantity (text, picture, LB_QUANTITY_LENGTH, drawing->setup.river.depth);
  assert_says_quantity (text, picture, LB_QUANTITY_SPEED, drawing->setup.river.surface_current);
  assert_says_quantity (text, picture, LB_QUANTITY_SPEED, drawing->setup.boat.speed_over_ground);
  assert_says_quantity (text, picture, LB_QUANTITY_LENGTH, r->line_out);
  assert_says_quantity (text, picture, LB_QUANTITY_ANGLE, r->wire_angle);
  assert_says_quantity (text, picture, LB_QUANTITY_FORCE, r->hand_tension);
  assert_says_quantity (text, picture, LB_QUANTITY_MASS, drawing->setup.rig.weight.mass);
  assert_says_quantity (text, picture, LB_QUANTITY_LENGTH, r->weight.layback);
  assert_says (text, "Shank");
  for (size_t i = 0; i < r->n_leaders; i++)
    {
      assert_says (text, picture->lure_names[i]);
      assert_says_quantity (text, picture, LB_QUANTITY_LENGTH, r->lures[i].at.layback);
      assert_says_quantity (text, picture, LB_QUANTITY_LENGTH,
                            drawing->setup.rig.leaders[i].length);
    }
}

static void
test_all_of_it (void **state)
{
  for (int units = LB_UNITS_US; units <= LB_UNITS_METRIC; units++)
    {
      LbSetup setup = setup_with_leaders (4);
      Drawing *drawing = drawing_new (&setup);
      Scenes scenes;
      char *side, *strip;

      drawing->picture.units = (LbUnits) units;
      drawing->picture.decimal = units == LB_UNITS_METRIC ? ',' : '.';
      scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 960, 600);
      side = lb_scene_describe (scenes.side);
      strip = lb_scene_describe (scenes.strip);
      check_side_view (drawing, side);
      assert_says (side, "Leader 4");
      assert_says (strip, "Bed strip");
      for (int i = 0; i < 4; i++)
        {
          assert_says (strip, lb_phrase_height_value (&drawing->picture,
                                                      drawing->readings.lures[i].at.height)
                                  .text);
          assert_says (strip, lb_phrase_band (drawing->readings.lures[i].band));
        }
      g_free (side);
      g_free (strip);
      scenes_free (&scenes);
      drawing_free (drawing);
    }
}

/* Also when the drawing had no room for a label: the words do not depend on the size. */
static void
test_the_size_does_not_matter (void **state)
{
  LbSetup setup = setup_with_leaders (8);
  Drawing *drawing = drawing_new (&setup);
  Scenes small = scenes_new (&drawing->picture, LB_THEME_LIGHT, 640, 240);
  Scenes large = scenes_new (&drawing->picture, LB_THEME_DARK, 3840, 2160);
  char *a = lb_scene_describe (small.side), *b = lb_scene_describe (large.side);

  assert_string_equal (a, b);
  g_free (a);
  g_free (b);
  scenes_free (&small);
  scenes_free (&large);
  drawing_free (drawing);
}

static void
test_remarks_and_failures (void **state)
{
  static const struct
  {
    LbStatus status;
    const char *words;
  } cases[] = {
    { LB_STATUS_NO_CONVERGENCE, "did not settle" },
    { LB_STATUS_BAD_SETUP, "cannot be" },
    { LB_STATUS_LINE_AT_LONGEST, "longest line" },
    { LB_STATUS_LINE_AT_SHORTEST, "line is all in" },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      LbSetup setup = lb_setup_default ();
      Drawing *drawing = drawing_new (&setup);
      Scenes scenes;
      char *text;

      drawing->picture.status = cases[i].status;
      drawing->picture.remark = "Measured in April.";
      scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 960, 600);
      text = lb_scene_describe (scenes.side);
      assert_says (text, cases[i].words);
      assert_says (text, "Measured in April.");
      assert_true (lb_status_is_failure (cases[i].status) == !strstr (text, "Lower lure"));
      g_free (text);
      scenes_free (&scenes);
      drawing_free (drawing);
    }
}

/* The picture's words belong to whoever made it, who may be done with them before the drawing is
 * read out. */
static void
test_the_words_are_its_own (void **state)
{
  LbSetup setup = setup_with_leaders (2);
  Drawing *drawing = drawing_new (&setup);
  char name[] = "slim minnow", title[] = "Willow Bar", *text;
  Scenes scenes;

  drawing->picture.lure_names[1] = name;
  drawing->picture.title = title;
  scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 960, 600);
  memset (name, 'x', strlen (name));
  memset (title, 'x', strlen (title));
  text = lb_scene_describe (scenes.side);
  assert_says (text, "slim minnow");
  assert_says (text, "Willow Bar");
  g_free (text);
  scenes_free (&scenes);
  drawing_free (drawing);
}

static void
test_long_words_are_not_cut (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  char *title = g_strnfill (199, 'w'), *text;
  Scenes scenes;

  drawing->picture.title = title;
  scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 960, 600);
  text = lb_scene_describe (scenes.side);
  assert_says (text, title);
  g_free (text);
  g_free (title);
  scenes_free (&scenes);
  drawing_free (drawing);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_all_of_it),
    cmocka_unit_test (test_the_size_does_not_matter),
    cmocka_unit_test (test_remarks_and_failures),
    cmocka_unit_test (test_the_words_are_its_own),
    cmocka_unit_test (test_long_words_are_not_cut),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
