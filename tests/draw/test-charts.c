/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river page's charts, by what the scenes hold, and their text twins. Pictures for people to
 * look at: tests/output/draw-charts-*.png. */
#include "bed_preview.h"
#include "current_chart.h"
#include "drawings.h"
#include "scene_build.h"
#include "snag_chart.h"
#include "test.h"

#include <math.h>
#include <string.h>

#define WIDTH 264.0
#define HEIGHT 200.0

static LbDrawContext *context;
static LbStyle style;

static LbSetup
power_river (double depth, double surface, double exponent)
{
  LbSetup setup = lb_setup_default ();

  setup.river.depth = depth;
  setup.river.surface_current = surface;
  setup.river.profile.law = LB_PROFILE_POWER;
  setup.river.profile.exponent = exponent;
  return setup;
}

static LbScene *
chart_of (const LbSetup *setup, LbUnits units)
{
  LbPicture picture = { .setup = setup, .units = units };

  return lb_current_chart_new (context, &picture, &style, WIDTH, HEIGHT);
}

static const LbItem *
item (const LbScene *scene, size_t i)
{
  return &g_array_index (scene->items, LbItem, i);
}

static const LbOp *
op (const LbScene *scene, size_t i)
{
  return &g_array_index (scene->ops, LbOp, i);
}

/* The nth item of that stroke and pick. */
static const LbItem *
find_item (const LbScene *scene, LbColour stroke, LbPickKind pick)
{
  for (size_t i = 0; i < scene->items->len; i++)
    if (item (scene, i)->look.stroke == stroke && item (scene, i)->pick == pick)
      return item (scene, i);
  fail_msg ("no such item");
  return NULL;
}

static size_t
count_items (const LbScene *scene, LbColour fill, LbColour stroke)
{
  size_t n = 0;

  for (size_t i = 0; i < scene->items->len; i++)
    n += item (scene, i)->n_ops > 0 && item (scene, i)->look.fill == fill
         && item (scene, i)->look.stroke == stroke;
  return n;
}

/* Whether some text of the scene reads so. */
static bool
has_text (const LbScene *scene, const char *words)
{
  for (size_t i = 0; i < scene->items->len; i++)
    if (item (scene, i)->layout
        && strcmp (pango_layout_get_text (item (scene, i)->layout), words) == 0)
      return true;
  return false;
}

static void
assert_describes (const LbScene *scene, const char *words)
{
  g_autofree char *text = lb_scene_describe (scene);

  if (!strstr (text, words))
    fail_msg ("\"%s\" not in: %s", words, text);
}

/* ---- Speed curve ---- */

/* The power law itself: speed / surface speed = (height / depth)^(1 / m). The smooth floor (1 cm)
 * is felt below a tenth of a metre only. */
static void
the_curve_is_the_power_law (void **state)
{
  LbSetup setup = power_river (5, 2, 6);
  LbScene *scene = chart_of (&setup, LB_UNITS_METRIC);
  const LbItem *curve = find_item (scene, LB_COLOUR_CURRENT, LB_PICK_CURRENT);
  const LbItem *tint = curve - 1;
  double left = op (scene, tint->first_op)->x[0], bottom = op (scene, tint->first_op)->y[0];
  const LbOp *last = op (scene, curve->first_op + curve->n_ops - 1);

  assert_int_equal (tint->look.fill, LB_COLOUR_CURRENT);
  for (size_t i = 0; i < curve->n_ops; i++)
    {
      const LbOp *at = op (scene, curve->first_op + i);
      double part = (bottom - at->y[0]) / (bottom - last->y[0]);

      if (part * 5 > 0.1)
        assert_near ((at->x[0] - left) / (last->x[0] - left), pow (part, 1 / 6.0), 0.001);
    }
  lb_scene_free (scene);
}

/* Worked by hand: 2 m/s at the surface of 5 m, m = 6: half way 2 * 0.5^(1/6) = 1.78, at 15 cm
 * 2 * 0.03^(1/6) = 1.11 (1.115, and the floor adds a little), on average 2 * 6/7 = 1.71 m/s. */
static void
the_words_tell_the_numbers (void **state)
{
  LbSetup setup = power_river (5, 2, 6);
  LbScene *scene = chart_of (&setup, LB_UNITS_METRIC);

  assert_describes (scene, "in water 5 m deep");
  assert_describes (scene, "2 m/s at the surface, 1.78 m/s half way down, 1.12 m/s at 15 cm off "
                           "the bed; 1.71 m/s on average");
  assert_true (has_text (scene, "2 m/s at the surface"));
  assert_true (has_text (scene, "1.12 m/s at 15 cm up"));
  assert_true (has_text (scene, "1.71 m/s on average"));
  assert_true (has_text (scene, "Off the bed, m"));
  assert_true (has_text (scene, "Current, m/s"));
  lb_scene_free (scene);
}

static void
the_axes_are_in_the_users_units (void **state)
{
  LbSetup setup = power_river (20 * 0.3048, 4 * 0.44704, 6);
  LbScene *scene = chart_of (&setup, LB_UNITS_US);

  assert_true (has_text (scene, "Off the bed, ft"));
  assert_true (has_text (scene, "Current, mph"));
  assert_true (has_text (scene, "20"));
  assert_describes (scene, "4 mph at the surface");
  lb_scene_free (scene);
}

static void
measured_points_are_dots_on_the_curve (void **state)
{
  static const double height[] = { 0.1, 0.4, 1 }, speed[] = { 0.5, 0.8, 1 };
  LbSetup setup = power_river (5, 2, 6);
  LbScene *scene;

  setup.river.profile.law = LB_PROFILE_POINTS;
  setup.river.profile.n_points = 3;
  memcpy (setup.river.profile.height_fraction, height, sizeof height);
  memcpy (setup.river.profile.speed_fraction, speed, sizeof speed);
  scene = chart_of (&setup, LB_UNITS_METRIC);
  assert_int_equal (count_items (scene, LB_COLOUR_CARD, LB_COLOUR_CURRENT), 3);
  assert_describes (scene,
                    "Measured: 1 m/s at 50 cm off the bed; 1.6 m/s at 2 m off the bed; 2 m/s "
                    "at 5 m off the bed.");
  lb_scene_free (scene);
}

static void
still_water_has_no_curve (void **state)
{
  LbSetup setup = power_river (5, 0, 6);
  LbScene *scene = chart_of (&setup, LB_UNITS_METRIC);

  assert_int_equal (count_items (scene, LB_COLOUR_NONE, LB_COLOUR_CURRENT), 0);
  assert_describes (scene, "No current.");
  lb_scene_free (scene);
}

/* The curve is that of the depth that the numbers on the page belong to. */
static void
an_uneven_bed_leaves_the_curve_alone (void **state)
{
  LbSetup setup = power_river (5, 2, 6);
  LbScene *scene;

  make_bed_uneven (&setup);
  setup.river.depth = 5;
  scene = chart_of (&setup, LB_UNITS_METRIC);
  assert_describes (scene, "in water 5 m deep. 2 m/s at the surface");
  lb_scene_free (scene);
}

/* All sizes, depths, speeds and units: nothing painted outside, nothing but numbers. */
static void
charts_stay_in_their_picture (void **state)
{
  TestRandom random = { 4711 };

  for (size_t i = 0; i < test_count (300); i++)
    {
      LbSetup setup = random_setup (&random);
      LbScene *scene = chart_of (&setup, i % 2 ? LB_UNITS_METRIC : LB_UNITS_US);

      for (size_t k = 0; k < scene->items->len; k++)
        {
          LbBox box = item (scene, k)->bounds;

          assert_true (isfinite (box.x + box.y + box.width + box.height));
          assert_true (box.x > -6 && box.x + box.width < WIDTH + 6);
          assert_true (box.y > -6 && box.y + box.height < HEIGHT + 6);
        }
      lb_scene_free (scene);
    }
}

/* ---- Bed ---- */

static LbSetup
surveyed_river (void)
{
  static const double x[] = { -40, 0, 25, 60 }, depth[] = { 4, 6, 3, 5 };
  LbSetup setup = power_river (5, 2, 6);

  setup.river.n_bed_points = 4;
  memcpy (setup.river.bed_x, x, sizeof x);
  memcpy (setup.river.bed_depth, depth, sizeof depth);
  return setup;
}

static LbScene *
preview_of (const LbSetup *setup, const LbBedPreview *preview)
{
  LbPicture picture = { .setup = setup, .units = LB_UNITS_METRIC };

  return lb_bed_preview_new (context, &picture, preview, &style, WIDTH, HEIGHT);
}

static void
the_bed_goes_through_its_points (void **state)
{
  LbSetup setup = surveyed_river ();
  LbBedPreview preview = { .selected = 2, .show_reel = true };
  LbScene *scene = preview_of (&setup, &preview);
  const LbItem *line = find_item (scene, LB_COLOUR_BED_LINE, LB_PICK_BED);
  double deepest = 0, shallowest = HEIGHT;

  for (size_t i = 0; i < line->n_ops; i++)
    {
      deepest = fmax (deepest, op (scene, line->first_op + i)->y[0]);
      shallowest = fmin (shallowest, op (scene, line->first_op + i)->y[0]);
    }
  /* 6 m and 3 m below the surface, which the view has at z = 0. */
  assert_near (deepest - lb_view_y (&scene->view, 0),
               2 * (shallowest - lb_view_y (&scene->view, 0)), 1);
  assert_int_equal (count_items (scene, LB_COLOUR_CARD, LB_COLOUR_BED_LINE), 4);
  assert_int_equal (count_items (scene, LB_COLOUR_INSIDE, LB_COLOUR_CARD), 1);
  assert_describes (scene, "Bed over 100 m of river, made of 4 points: from 3 m to 6 m deep. Point "
                           "3 is selected: 3 m deep at 25 m. The reel is at 0 m.");
  lb_scene_free (scene);
}

static void
a_place_on_the_bed_can_be_pointed_at (void **state)
{
  LbSetup setup = surveyed_river ();
  LbBedPreview preview = { .selected = -1 };
  LbScene *scene = preview_of (&setup, &preview);
  LbPick pick =
      lb_scene_pick (scene, lb_view_x (&scene->view, 25), lb_view_y (&scene->view, -3) + 2, 6);

  assert_int_equal (pick.kind, LB_PICK_BED);
  assert_near (pick.x, 25, 1e-6);
  lb_scene_free (scene);
}

static void
a_million_soundings_take_no_more_than_the_width (void **state)
{
  LbSetup setup = surveyed_river ();
  size_t n = 1000000, too_deep = 0;
  g_autofree double *x = g_new (double, n);
  g_autofree double *depth = g_new (double, n);
  LbBedPreview preview = { .selected = -1 };
  g_autofree char *words = NULL;
  LbScene *scene;

  for (size_t i = 0; i < n; i++)
    {
      x[i] = -40 + 100.0 * (double) i / (double) n;
      depth[i] = i % 10007 == 0 ? 60 : 5;
      too_deep += depth[i] > 50;
    }
  preview.soundings = (LbSoundings){ x, depth, n };
  scene = preview_of (&setup, &preview);
  assert_true (scene->items->len < WIDTH);
  words = g_strdup_printf ("the 1000000 soundings as they were read. %zu of them are too deep",
                           too_deep);
  assert_describes (scene, words);
  assert_true (has_text (scene, "as read"));
  lb_scene_free (scene);
}

static void
an_even_bed_is_told_as_one (void **state)
{
  LbSetup setup = power_river (5, 2, 6);
  LbBedPreview preview = { .selected = -1 };
  LbScene *scene = preview_of (&setup, &preview);

  assert_describes (scene, "Bed: even, 5 m deep.");
  lb_scene_free (scene);
}

/* ---- Pictures ---- */

static void
paint (cairo_t *cr, LbScene *scene, double x, double y)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  lb_scene_paint (scene, cr, LB_LAYER_ALL);
  cairo_restore (cr);
  lb_scene_free (scene);
}

static void
draw_theme (const char *name, LbTheme theme, double ground)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *file = g_strdup_printf ("draw-charts-%s.png", name);
  g_autofree char *path = g_build_filename (folder ? folder : g_get_tmp_dir (), file, NULL);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1160, 440);
  LbSetup setups[] = { power_river (20 * 0.3048, 4 * 0.44704, 6), surveyed_river (),
                       power_river (0.5, 0.3, 10), power_river (45, 5, 4) };
  LbBedPreview preview = { .selected = 1, .show_reel = true };
  double x[3000], depth[3000];
  LbPicture picture = { .setup = &setups[1] };
  cairo_t *cr;

  setups[3].river.profile.law = LB_PROFILE_LOG;
  setups[3].river.profile.roughness = 0.3;
  for (int i = 0; i < 3000; i++)
    {
      x[i] = -50 + i / 25.0;
      depth[i] = 4.5 + sin (i / 300.0) + (i % 97 == 0 ? 2.2 : 0.05 * (i % 7));
    }
  style = lb_style_make (theme, 1);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, ground, ground, ground);
  cairo_paint (cr);
  for (int i = 0; i < 4; i++)
    paint (cr, chart_of (&setups[i], i % 2 ? LB_UNITS_METRIC : LB_UNITS_US), 10 + 284 * i, 10);
  paint (cr, preview_of (&setups[1], &preview), 10, 230);
  preview = (LbBedPreview){ .soundings = { x, depth, 3000 }, .selected = -1 };
  paint (cr, lb_bed_preview_new (context, &picture, &preview, &style, 700, 200), 300, 230);
  cairo_destroy (cr);
  assert_int_equal (cairo_surface_write_to_png (surface, path), CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
}

static void
draw_all (void **state)
{
  draw_theme ("light", LB_THEME_LIGHT, 0.96);
  draw_theme ("dark", LB_THEME_DARK, 0.18);
}

/* ---- Snag ---- */

static LbSnagPicture
snag_of (const Drawing *drawing, size_t node, int chosen)
{
  const LbSetup *setup = &drawing->setup;
  LbSnagPicture snag = { .snag = lb_snag_hold (setup, drawing->picture.shape, node),
                         .speed = { setup->boat.speed_over_ground, -1.2 },
                         .limit = 196,
                         .chosen = chosen };

  for (int i = 0; i < LB_SNAG_CURVES; i++)
    snag.times[i] = lb_snag_times (&snag.snag, &setup->rig, snag.speed[i], snag.limit);
  return snag;
}

/* The words beside the marks, and the text twin, are the times that core finds. */
static void
a_snag_is_drawn_with_its_times (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  LbSnagPicture snag = snag_of (drawing, drawing->picture.shape->weight, 0);
  LbScene *scene = lb_snag_chart_new (context, &drawing->picture, &snag, &style, WIDTH, HEIGHT);
  g_autofree char *words = lb_scene_describe (scene);
  g_autofree char *hand = g_strdup_printf ("%.1f s: hand limit 44 lbf", snag.times[0].until_hand);
  g_autofree char *breaks = g_strdup_printf ("%.1f s: mainline parts", snag.times[0].until_breaks);
  g_autofree char *told = g_strdup_printf ("Motor on: hand limit 44 lbf at %.1f s; mainline parts",
                                           snag.times[0].until_hand);

  assert_true (has_text (scene, hand));
  assert_true (has_text (scene, breaks));
  assert_true (has_text (scene, "motor on"));
  assert_true (has_text (scene, "motor stopped"));
  assert_non_null (strstr (words, told));
  assert_non_null (strstr (words, "Motor stopped: hand limit 44 lbf at"));
  lb_scene_free (scene);
  drawing_free (drawing);
}

static void
a_snag_stays_in_its_picture (void **state)
{
  TestRandom random = { 815 };

  for (size_t i = 0; i < test_count (200); i++)
    {
      LbSetup setup = random_setup (&random);
      Drawing *drawing = drawing_new (&setup);

      for (int chosen = 0; drawing->picture.shape && chosen < LB_SNAG_CURVES; chosen++)
        {
          LbSnagPicture snag = snag_of (drawing, drawing->picture.shape->weight, chosen);
          LbScene *scene =
              lb_snag_chart_new (context, &drawing->picture, &snag, &style, WIDTH, HEIGHT);

          for (size_t k = 0; k < scene->items->len; k++)
            {
              LbBox box = item (scene, k)->bounds;

              assert_true (isfinite (box.x + box.y + box.width + box.height));
              assert_true (box.x > -6 && box.x + box.width < WIDTH + 6);
              assert_true (box.y > -6 && box.y + box.height < HEIGHT + 6);
            }
          lb_scene_free (scene);
        }
      drawing_free (drawing);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (the_curve_is_the_power_law),
    cmocka_unit_test (the_words_tell_the_numbers),
    cmocka_unit_test (the_axes_are_in_the_users_units),
    cmocka_unit_test (measured_points_are_dots_on_the_curve),
    cmocka_unit_test (still_water_has_no_curve),
    cmocka_unit_test (an_uneven_bed_leaves_the_curve_alone),
    cmocka_unit_test (charts_stay_in_their_picture),
    cmocka_unit_test (the_bed_goes_through_its_points),
    cmocka_unit_test (a_place_on_the_bed_can_be_pointed_at),
    cmocka_unit_test (a_million_soundings_take_no_more_than_the_width),
    cmocka_unit_test (an_even_bed_is_told_as_one),
    cmocka_unit_test (a_snag_is_drawn_with_its_times),
    cmocka_unit_test (a_snag_stays_in_its_picture),
    cmocka_unit_test (draw_all),
  };
  int failed;

  context = lb_draw_context_new ();
  style = lb_style_make (LB_THEME_LIGHT, 1);
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  lb_draw_context_free (context);
  return failed;
}
