/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is shown of a drawing being handled, and where its parts are. */
#include "drawings.h"
#include "handles.h"
#include "scene_build.h"

#include <string.h>

/* Not the shank, whose middle is close to the rings on it. */
static const struct
{
  LbPickKind kind;
  int index;
} parts[] = {
  { LB_PICK_REEL, 0 }, { LB_PICK_MAINLINE, 0 },   { LB_PICK_WEIGHT, 0 }, { LB_PICK_LEADER, 1 },
  { LB_PICK_LURE, 0 }, { LB_PICK_ATTACHMENT, 1 }, { LB_PICK_BED, 0 },    { LB_PICK_BOAT, 0 },
};

static guint
n_items (const LbScene *scene, LbColour stroke)
{
  guint n = 0;

  for (guint i = 0; i < scene->items->len; i++)
    n += g_array_index (scene->items, LbItem, i).look.stroke == stroke;
  return n;
}

/* A pointer put where a part is said to be is on that part. */
static void
test_parts_are_where_they_are_picked (void **state)
{
  LbSetup setup = setup_with_leaders (2);
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);

  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      double x, y;
      LbPick pick;

      assert_true (lb_scene_part_place (scenes.side, parts[i].kind, parts[i].index, &x, &y));
      pick = lb_scene_pick (scenes.side, x, y, 1);
      assert_int_equal (pick.kind, parts[i].kind);
      assert_int_equal (pick.index, parts[i].index);
    }
  scenes_free (&scenes);
  drawing_free (drawing);
}

static void
test_a_part_that_is_not_there_has_no_place (void **state)
{
  LbSetup setup = setup_with_leaders (1);
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
  double x, y;

  assert_false (lb_scene_part_place (scenes.side, LB_PICK_LURE, 1, &x, &y));
  assert_false (lb_scene_part_place (scenes.side, LB_PICK_BED_POINT, 0, &x, &y));
  assert_false (lb_scene_part_place (scenes.side, LB_PICK_NOTHING, 0, &x, &y));
  scenes_free (&scenes);
  drawing_free (drawing);
}

static void
test_bed_points_are_picked_where_they_are (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing;
  Scenes scenes;
  int seen = 0;

  make_bed_uneven (&setup);
  drawing = drawing_new (&setup);
  scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
  for (size_t i = 0; i < setup.river.n_bed_points; i++)
    {
      double x = lb_view_x (&scenes.view, setup.river.bed_x[i]);
      double y = lb_view_y (&scenes.view, -setup.river.bed_depth[i]);
      LbPick pick = lb_scene_pick (scenes.side, x, y, 2);

      if (x < 0 || x > scenes.width)
        continue;
      assert_int_equal (pick.kind, LB_PICK_BED_POINT);
      assert_int_equal (pick.index, i);
      seen++;
    }
  assert_true (seen >= 2);
  scenes_free (&scenes);
  drawing_free (drawing);
}

/* A glow for each part, under it: what is picked there is still the part. */
static void
test_a_glow_lies_under_its_part (void **state)
{
  LbSetup setup = setup_with_leaders (2);
  Drawing *drawing = drawing_new (&setup);

  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      LbHandles handles = { .selected = parts[i].kind, .selected_index = parts[i].index };
      LbPicture picture = drawing->picture;
      Scenes scenes;
      guint last_glow = 0, part = 0;
      double x, y;

      picture.handles = &handles;
      scenes = scenes_new (&picture, LB_THEME_LIGHT, 1280, 800);
      assert_true (n_items (scenes.side, LB_COLOUR_HANDLE) > 0);
      for (guint k = 0; k < scenes.side->items->len; k++)
        {
          const LbItem *item = &g_array_index (scenes.side->items, LbItem, k);

          if (item->look.stroke == LB_COLOUR_HANDLE)
            {
              assert_int_equal (item->layer, LB_LAYER_FOREGROUND);
              assert_int_equal (item->pick, LB_PICK_NOTHING);
              last_glow = k;
            }
          if (item->pick == parts[i].kind && item->index == parts[i].index
              && item->layer == LB_LAYER_FOREGROUND)
            part = k;
        }
      if (part > 0)
        assert_true (last_glow < part);
      assert_true (lb_scene_part_place (scenes.side, parts[i].kind, parts[i].index, &x, &y));
      assert_int_equal (lb_scene_pick (scenes.side, x, y, 1).kind, parts[i].kind);
      scenes_free (&scenes);
    }
  drawing_free (drawing);
}

/* Nothing of it is in a picture that is not handled, and the background is never touched. */
static void
test_handles_are_foreground_alone (void **state)
{
  LbSetup setup = setup_with_leaders (2);
  Drawing *drawing = drawing_new (&setup);
  LbHandles handles = {
    .hover = LB_PICK_LURE,
    .hover_pulls = true,
    .selected = LB_PICK_BED,
    .words = "20 ft",
    .x = 300,
    .y = 200,
  };
  LbPicture picture = drawing->picture;
  Scenes plain = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800), handled;

  picture.handles = &handles;
  handled = scenes_new (&picture, LB_THEME_LIGHT, 1280, 800);
  assert_int_equal (n_items (plain.side, LB_COLOUR_HANDLE), 0);
  assert_int_equal (n_items (plain.side, LB_COLOUR_HANDLE_EDGE), 0);
  assert_true (n_items (handled.side, LB_COLOUR_HANDLE) > 0);
  assert_int_equal (n_items (handled.side, LB_COLOUR_HANDLE_EDGE), 2);
  assert_true (lb_scene_background_key (plain.side) == lb_scene_background_key (handled.side));
  scenes_free (&plain);
  scenes_free (&handled);
  drawing_free (drawing);
}

/* The card with the value stays in the picture wherever the pointer is. */
static void
test_words_stay_in_the_picture (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  const double at[][2] = { { 0, 0 },      { 1279, 0 },  { 0, 559 },
                           { 1279, 559 }, { 640, 280 }, { NAN, NAN } };

  for (size_t i = 0; i < G_N_ELEMENTS (at); i++)
    {
      LbHandles handles = {
        .selected = LB_PICK_WEIGHT,
        .words = "Weight above the bed 7 ft 4 in",
        .x = at[i][0],
        .y = at[i][1],
      };
      LbPicture picture = drawing->picture;
      const LbItem *last;
      Scenes scenes;

      picture.handles = &handles;
      scenes = scenes_new (&picture, LB_THEME_LIGHT, 1280, 800);
      last = &g_array_index (scenes.side->items, LbItem, scenes.side->items->len - 1);
      assert_non_null (last->layout);
      assert_string_equal (pango_layout_get_text (last->layout), handles.words);
      assert_true (last->text_x > 0 && last->text_y > 0);
      assert_true (last->bounds.x + last->bounds.width < scenes.width);
      assert_true (last->bounds.y + last->bounds.height < scenes.side_height);
      scenes_free (&scenes);
    }
  drawing_free (drawing);
}

/* Heights are stretched by a whole number, distances are not, and the words say so. */
static void
test_a_stretched_view (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  LbExtents extents = lb_picture_extents (&drawing->picture);
  LbDrawContext *context = lb_draw_context_new ();
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);
  LbView flat = lb_view_fit (NULL, &extents, &style, 1600, 500);
  LbView view = lb_view_fit_stretched (NULL, &extents, &style, 1600, 500);
  LbView again = lb_view_fit_stretched (&view, &extents, &style, 1600, 500);
  LbScene *scene = lb_side_view_new (context, &drawing->picture, &style, &view, 1600, 500);
  char *words = lb_scene_describe (scene), expected[64];

  assert_near (lb_view_stretch (&flat), 1, 0);
  assert_near (lb_view_stretch (&view), round (lb_view_stretch (&view)), 1e-12);
  assert_true (lb_view_stretch (&view) >= 2);
  assert_true (lb_view_holds (&view, &extents));
  assert_memory_equal (&view, &again, sizeof view);
  /* From one to the other nothing is kept. */
  again = lb_view_fit (&view, &extents, &style, 1600, 500);
  assert_memory_equal (&flat, &again, sizeof flat);
  snprintf (expected, sizeof expected, "stretched %.0f times", lb_view_stretch (&view));
  assert_non_null (strstr (words, expected));
  g_free (words);
  lb_scene_free (scene);
  lb_draw_context_free (context);
  drawing_free (drawing);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_parts_are_where_they_are_picked),
    cmocka_unit_test (test_a_part_that_is_not_there_has_no_place),
    cmocka_unit_test (test_bed_points_are_picked_where_they_are),
    cmocka_unit_test (test_a_glow_lies_under_its_part),
    cmocka_unit_test (test_handles_are_foreground_alone),
    cmocka_unit_test (test_words_stay_in_the_picture),
    cmocka_unit_test (test_a_stretched_view),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
