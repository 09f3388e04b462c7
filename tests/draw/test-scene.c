/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stands in the drawings. */
#include <string.h>

#include "drawings.h"
#include "scene_build.h"

static size_t
count_picks (const LbScene *scene, LbPickKind kind)
{
  size_t n = 0;

  for (guint i = 0; i < scene->items->len; i++)
    n += g_array_index (scene->items, LbItem, i).pick == kind;
  return n;
}

static const LbItem *
find_pick (const LbScene *scene, LbPickKind kind, int index)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->pick == kind && item->index == index)
        return item;
    }
  fail_msg ("nothing of kind %d, index %d", kind, index);
  return NULL;
}

static void
test_one_of_each_leader (void **state)
{
  for (size_t n = 0; n <= LB_MAX_LEADERS; n++)
    {
      LbSetup setup = setup_with_leaders (n);
      Drawing *drawing = drawing_new (&setup);
      Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);

      assert_int_equal (count_picks (scenes.side, LB_PICK_LEADER), n);
      assert_int_equal (count_picks (scenes.side, LB_PICK_ATTACHMENT), n);
      assert_int_equal (count_picks (scenes.strip, LB_PICK_LURE), n);
      assert_int_equal (count_picks (scenes.side, LB_PICK_WEIGHT), 1);
      assert_int_equal (count_picks (scenes.side, LB_PICK_MAINLINE), 1);
      scenes_free (&scenes);
      drawing_free (drawing);
    }
}

static void
test_an_unsolved_rig_is_not_drawn (void **state)
{
  static const LbPickKind rig[] = { LB_PICK_MAINLINE, LB_PICK_SHANK, LB_PICK_WEIGHT,
                                    LB_PICK_LEADER,   LB_PICK_LURE,  LB_PICK_ATTACHMENT };
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes;

  drawing->picture.status = LB_STATUS_NO_CONVERGENCE;
  scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
  for (size_t i = 0; i < G_N_ELEMENTS (rig); i++)
    {
      assert_int_equal (count_picks (scenes.side, rig[i]), 0);
      assert_int_equal (count_picks (scenes.strip, rig[i]), 0);
    }
  assert_true (count_picks (scenes.side, LB_PICK_BOAT) > 0);
  assert_true (count_picks (scenes.side, LB_PICK_BED) > 0);
  scenes_free (&scenes);
  drawing_free (drawing);
}

static const LbItem *
find_words (const LbScene *scene, const char *start)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->layout && g_str_has_prefix (pango_layout_get_text (item->layout), start))
        return item;
    }
  return NULL;
}

/* Zoomed in on, at any place of the drawing: the current is told in the water, never on the bed,
 * and that it is the surface's where that is out of sight. */
static void
test_the_current_is_told_in_the_water (void **state)
{
  LbSetup setup = setup_with_leaders (2);
  Drawing *drawing = drawing_new (&setup);
  Scenes whole = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
  size_t n_hidden = 0;

  for (double factor = 1; factor < 8; factor *= 1.3)
    for (double share = 0.1; share < 1; share += 0.2)
      {
        LbView view = lb_view_zoomed (&whole.view, factor, 640, share * whole.side_height);
        LbScene *scene = lb_side_view_new (whole.context, &drawing->picture, &whole.style, &view,
                                           1280, whole.side_height);
        const LbItem *words = find_words (scene, "Current ");
        double bed = lb_view_y (&view, -setup.river.depth);
        bool is_hidden = lb_view_y (&view, 0) < 0;

        if (words)
          {
            assert_true (words->bounds.y > 0);
            assert_true (words->bounds.y + words->bounds.height < bed);
            assert_true (words->bounds.y > lb_view_y (&view, 0));
            assert_int_equal (strstr (pango_layout_get_text (words->layout), "at the surface")
                                  != NULL,
                              is_hidden);
            n_hidden += is_hidden;
          }
        else
          assert_true (lb_view_y (&view, 0) > 0.8 * whole.side_height || bed < 60);
        lb_scene_free (scene);
      }
  assert_true (n_hidden > 5);
  scenes_free (&whole);
  drawing_free (drawing);
}

/* x of the strip is x of the side view: the same lure stands at the same place in both. */
static void
test_strip_and_side_view_line_up (void **state)
{
  LbSetup setup = setup_with_leaders (5);
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);

  for (int i = 0; i < 5; i++)
    {
      double x = lb_view_x (&scenes.view, drawing->readings.lures[i].at.position.x);
      LbBox marker = find_pick (scenes.strip, LB_PICK_LURE, i)->bounds;
      LbBox lure = find_pick (scenes.side, LB_PICK_LURE, i)->bounds;

      assert_near (marker.x + marker.width / 2, x, 0.01);
      assert_near (lure.x, x, 3);
    }
  scenes_free (&scenes);
  drawing_free (drawing);
}

/* Nothing is drawn smaller than can be seen, or sunk into the bed, also where the scale is small.
 */
static void
test_least_sizes_and_above_the_bed (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing;
  Scenes scenes;
  LbBox weight, lure;

  setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, 60 };
  drawing = drawing_new (&setup);
  assert_true (drawing->readings.weight.on_bed);
  scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 960, 600);
  weight = find_pick (scenes.side, LB_PICK_WEIGHT, 0)->bounds;
  lure = find_pick (scenes.side, LB_PICK_LURE, 0)->bounds;
  assert_true (weight.width >= 2 * scenes.style.weight_radius_least);
  assert_true (lure.width >= scenes.style.lure_length_least);
  assert_true (weight.y + weight.height
               <= lb_scene_bed_y (scenes.side, weight.x + weight.width / 2) + 3);
  assert_true (lure.y + lure.height <= lb_scene_bed_y (scenes.side, lure.x + lure.width / 2) + 3);
  scenes_free (&scenes);
  drawing_free (drawing);
}

/* The four states of a lure have four outlines. */
static void
test_states_have_their_shapes (void **state)
{
  static const struct
  {
    double low, high;
    LbBandState state;
    size_t ops; /* of the outline */
  } cases[] = {
    { 0.05, 0.80, LB_BAND_INSIDE, 6 }, /* round: four curves */
    { 0.01, 0.02, LB_BAND_ABOVE, 4 },  /* three corners */
    { 0.80, 0.90, LB_BAND_BELOW, 4 },
  };
  double tips[3];

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      LbSetup setup = lb_setup_default ();
      Drawing *drawing;
      Scenes scenes;
      const LbItem *marker;

      setup.band = (LbBand){ cases[i].low, cases[i].high };
      drawing = drawing_new (&setup);
      assert_int_equal (drawing->readings.lures[1].band, cases[i].state);
      scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
      marker = find_pick (scenes.strip, LB_PICK_LURE, 1);
      assert_int_equal (marker->n_ops, cases[i].ops);
      tips[i] = g_array_index (scenes.strip->ops, LbOp, marker->first_op).y[0]
                - (marker->bounds.y + marker->bounds.height / 2);
      scenes_free (&scenes);
      drawing_free (drawing);
    }
  assert_less (tips[1], -5); /* above the band: the tip points up */
  assert_less (5, tips[2]);
}

/* A whole frame's scenes, built with a warm context. EST: the time is printed, and only a time far
 * beyond any fair machine fails. */
static void
test_building_is_quick (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
  gint64 start = g_get_monotonic_time ();
  int n = 200;

  for (int i = 0; i < n; i++)
    {
      lb_scene_free (lb_side_view_new (scenes.context, &drawing->picture, &scenes.style,
                                       &scenes.view, scenes.width, scenes.side_height));
      lb_scene_free (lb_bed_strip_new (scenes.context, &drawing->picture, &scenes.style,
                                       &scenes.view, scenes.width, scenes.strip_height));
    }
  print_message ("both scenes built in %.0f us\n", (double) (g_get_monotonic_time () - start) / n);
  assert_less ((double) (g_get_monotonic_time () - start) / n, 20000);
  scenes_free (&scenes);
  drawing_free (drawing);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_current_is_told_in_the_water),
    cmocka_unit_test (test_one_of_each_leader),
    cmocka_unit_test (test_an_unsolved_rig_is_not_drawn),
    cmocka_unit_test (test_strip_and_side_view_line_up),
    cmocka_unit_test (test_least_sizes_and_above_the_bed),
    cmocka_unit_test (test_states_have_their_shapes),
    cmocka_unit_test (test_building_is_quick),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
