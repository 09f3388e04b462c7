/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pieces of tackle by themselves: their sizes and forms on the paper. A picture of them all for
 * people to look at: tests/output/draw-tackle.png. */
#include "drawings.h"
#include "part_drawing.h"
#include "test.h"

#include <math.h>

#define WIDTH 800.0
#define HEIGHT 400.0

static LbDrawContext *context;
static LbStyle style;

static LbTackle
a_weight (double mass, LbWeightShape shape)
{
  return (LbTackle){ .kind = LB_TACKLE_WEIGHT, .weight = { mass, 11340, shape, LB_UNSET } };
}

static LbTackle
a_line (double diameter, double density)
{
  return (LbTackle){ .kind = LB_TACKLE_LINE,
                     .line = { diameter, density, 1e4, 100, LB_UNSET, 0.02, 1 } };
}

static LbTackle
a_lure (double length, double dive)
{
  return (LbTackle){ .kind = LB_TACKLE_LURE, .lure = { 1e-4, dive, 0.009, 0.005, length } };
}

/* The box around all that is painted. */
static LbBox
extent (const LbTackle *tackle, double per_metre)
{
  LbScene *scene = lb_part_drawing_new (context, tackle, &style, per_metre, WIDTH, HEIGHT);
  double x0 = INFINITY, y0 = INFINITY, x1 = -INFINITY, y1 = -INFINITY;

  for (size_t i = 0; i < lb_scene_n_tiles (scene); i++)
    {
      LbBox box = lb_scene_tile_bounds (scene, i);

      x0 = fmin (x0, box.x);
      y0 = fmin (y0, box.y);
      x1 = fmax (x1, box.x + box.width);
      y1 = fmax (y1, box.y + box.height);
    }
  assert_true (lb_scene_n_tiles (scene) > 0);
  lb_scene_free (scene);
  return (LbBox){ x0, y0, x1 - x0, y1 - y0 };
}

/* Tile bounds are whole units with room for the outline. */
#define SLACK 8

static void
every_piece_fits_its_box (void **state)
{
  const LbTackle pieces[] = {
    a_weight (0.4536, LB_WEIGHT_BALL),
    a_weight (20, LB_WEIGHT_TORPEDO),
    a_weight (1, LB_WEIGHT_PEAR),
    a_weight (1.361, LB_WEIGHT_DISC),
    a_line (0.0007, 7900),
    a_line (0.005, 970),
    a_lure (0.05, 0.1),
    a_lure (0.11, 0.9),
    a_lure (0.5, 2),
  };

  for (size_t i = 0; i < sizeof pieces / sizeof *pieces; i++)
    {
      LbBox box = extent (&pieces[i], lb_part_drawing_fit (&pieces[i], WIDTH, HEIGHT));

      assert_true (box.x >= -1 && box.y >= -1);
      assert_true (box.x + box.width <= WIDTH + 1 && box.y + box.height <= HEIGHT + 1);
      assert_true (box.width >= 0.5 * WIDTH || box.height >= 0.5 * HEIGHT);
    }
}

static void
a_ball_is_as_wide_as_its_volume_asks (void **state)
{
  LbTackle one = a_weight (1, LB_WEIGHT_BALL), eight = a_weight (8, LB_WEIGHT_BALL);
  double per_metre = 2500;
  /* Geometry: the diameter of a ball of 1 kg of lead of 11340 kg/m3. */
  double diameter = 2 * cbrt (3 / (4 * acos (-1) * 11340.0));

  assert_near (extent (&one, per_metre).width, diameter * per_metre, SLACK);
  assert_near (extent (&eight, per_metre).width, 2 * diameter * per_metre, SLACK);
}

static void
each_shape_has_a_form_of_its_own (void **state)
{
  LbTackle torpedo = a_weight (1, LB_WEIGHT_TORPEDO), disc = a_weight (1, LB_WEIGHT_DISC);
  LbTackle pear = a_weight (1, LB_WEIGHT_PEAR);
  LbBox t = extent (&torpedo, 2000), d = extent (&disc, 2000), p = extent (&pear, 2000);

  assert_true (t.width > 2 * t.height);
  assert_true (d.height > 2 * d.width);
  assert_true (p.height > 1.05 * p.width && p.height < 1.5 * p.width);
}

static void
a_thicker_line_is_drawn_thicker (void **state)
{
  LbTackle thin = a_line (0.0002, 7900), thick = a_line (0.0008, 7900);
  double per_metre = lb_part_drawing_fit (&thick, WIDTH, HEIGHT);

  assert_near (extent (&thick, per_metre).height - extent (&thin, per_metre).height,
               0.2 * HEIGHT * 0.75, SLACK);
}

static void
a_deeper_lip_reaches_further_ahead (void **state)
{
  LbTackle shallow = a_lure (0.1, 0.25), deep = a_lure (0.1, 0.7);
  double per_metre = 4000;
  LbBox s = extent (&shallow, per_metre), d = extent (&deep, per_metre);

  assert_true (d.x < s.x - 0.1 * 0.1 * per_metre);
}

/* ---- A picture ---- */

static double
add_row (cairo_t *cr, const LbTackle *pieces, size_t n, double y)
{
  double per_metre = INFINITY;

  for (size_t i = 0; i < n; i++)
    per_metre = fmin (per_metre, lb_part_drawing_fit (&pieces[i], 84, 48));
  for (size_t i = 0; i < n; i++)
    {
      LbScene *scene = lb_part_drawing_new (context, &pieces[i], &style, per_metre, 84, 48);

      cairo_save (cr);
      cairo_translate (cr, 10 + 94 * (double) i, y);
      lb_scene_paint (scene, cr, LB_LAYER_ALL);
      cairo_restore (cr);
      lb_scene_free (scene);
    }
  return y + 58;
}

static void
draw_all (void **state)
{
  const LbTackle weights[] = { a_weight (0.4536, LB_WEIGHT_BALL), a_weight (1.361, LB_WEIGHT_BALL),
                               a_weight (1.361, LB_WEIGHT_PEAR),
                               a_weight (1.361, LB_WEIGHT_TORPEDO),
                               a_weight (1.361, LB_WEIGHT_DISC) };
  const LbTackle lines[] = { a_line (0.00086, 7900), a_line (0.00038, 7900), a_line (0.0009, 1140),
                             a_line (0.0003, 1140), a_line (0.0005, 970) };
  const LbTackle lures[] = { a_lure (0.05, 0.25), a_lure (0.07, 0.45), a_lure (0.09, 0.7),
                             a_lure (0.11, 0.25), a_lure (0.11, 0.7) };
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *path =
      g_build_filename (folder ? folder : g_get_tmp_dir (), "draw-tackle.png", NULL);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 960, 380);
  cairo_t *cr;

  cairo_surface_set_device_scale (surface, 2, 2);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  add_row (cr, lures, 5, add_row (cr, lines, 5, add_row (cr, weights, 5, 10)));
  cairo_destroy (cr);
  assert_int_equal (cairo_surface_write_to_png (surface, path), CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_piece_fits_its_box),
    cmocka_unit_test (a_ball_is_as_wide_as_its_volume_asks),
    cmocka_unit_test (each_shape_has_a_form_of_its_own),
    cmocka_unit_test (a_thicker_line_is_drawn_thicker),
    cmocka_unit_test (a_deeper_lip_reaches_further_ahead),
    cmocka_unit_test (draw_all),
  };
  int failed;

  context = lb_draw_context_new ();
  style = lb_style_make (LB_THEME_LIGHT, 1);
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  lb_draw_context_free (context);
  return failed;
}
