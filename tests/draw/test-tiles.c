/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tiles hold all of the foreground, are small, and their keys tell when nothing changed. */
#include "drawings.h"

#include <string.h>

#define WIDTH 1280
#define HEIGHT 560

static cairo_surface_t *
white_surface (void)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_destroy (cr);
  return surface;
}

/* Pixels that differ by more than rounding, and whether any differs much. */
static size_t
count_differences (cairo_surface_t *a, cairo_surface_t *b)
{
  const unsigned char *p = cairo_image_surface_get_data (a), *q = cairo_image_surface_get_data (b);
  size_t n = 0;

  for (size_t i = 0; i < (size_t) cairo_image_surface_get_stride (a) * HEIGHT; i++)
    n += abs ((int) p[i] - (int) q[i]) > 24;
  return n;
}

static void
test_tiles_paint_the_whole_foreground (void **state)
{
  TestRandom random = { 5 };

  for (int i = 0; i < 12; i++)
    {
      LbSetup setup = i ? random_setup (&random) : lb_setup_default ();
      Drawing *drawing = drawing_new (&setup);
      Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, HEIGHT / 0.7);
      cairo_surface_t *whole = white_surface (), *tiled = white_surface ();
      cairo_t *cr = cairo_create (whole);

      lb_scene_paint (scenes.side, cr, LB_LAYER_FOREGROUND);
      cairo_destroy (cr);
      cr = cairo_create (tiled);
      for (size_t t = 0; t < lb_scene_n_tiles (scenes.side); t++)
        lb_scene_paint_tile (scenes.side, cr, t);
      cairo_destroy (cr);
      cairo_surface_flush (whole);
      cairo_surface_flush (tiled);
      assert_int_equal (count_differences (whole, tiled), 0);
      cairo_surface_destroy (whole);
      cairo_surface_destroy (tiled);
      scenes_free (&scenes);
      drawing_free (drawing);
    }
}

/* A long slanting wire must not make one great box of it all. */
static void
test_tiles_are_small_and_apart (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, HEIGHT / 0.7);
  double area = 0;

  for (size_t i = 0; i < lb_scene_n_tiles (scenes.side); i++)
    {
      LbBox a = lb_scene_tile_bounds (scenes.side, i);

      area += a.width * a.height;
      assert_true (a.width <= 112 && a.height <= 112 && a.width > 0 && a.height > 0);
      for (size_t k = 0; k < i; k++)
        {
          LbBox b = lb_scene_tile_bounds (scenes.side, k);

          assert_true (a.x >= b.x + b.width || b.x >= a.x + a.width || a.y >= b.y + b.height
                       || b.y >= a.y + a.height);
        }
    }
  assert_less (area, 0.45 * WIDTH * HEIGHT);
  scenes_free (&scenes);
  drawing_free (drawing);
}

static void
test_keys_stay_while_nothing_changes (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes a = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, 800);
  Scenes b = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, 800);

  assert_true (lb_scene_background_key (a.side) == lb_scene_background_key (b.side));
  assert_int_equal (lb_scene_n_tiles (a.side), lb_scene_n_tiles (b.side));
  for (size_t i = 0; i < lb_scene_n_tiles (a.side); i++)
    assert_true (lb_scene_tile_key (a.side, i) == lb_scene_tile_key (b.side, i));
  scenes_free (&a);
  scenes_free (&b);
  drawing_free (drawing);
}

/* A tile kept from the light theme must not be taken for one of the dark. */
static void
test_keys_tell_the_themes_apart (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes light = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, 800);
  Scenes dark = scenes_new (&drawing->picture, LB_THEME_DARK, WIDTH, 800);

  assert_true (lb_scene_background_key (light.side) != lb_scene_background_key (dark.side));
  for (size_t i = 0; i < lb_scene_n_tiles (light.side); i++)
    assert_true (lb_scene_tile_key (light.side, i) != lb_scene_tile_key (dark.side, i));
  scenes_free (&light);
  scenes_free (&dark);
  drawing_free (drawing);
}

/* Draws `picture` in the view of `like`. */
static LbScene *
in_the_same_view (const Scenes *like, const LbPicture *picture)
{
  return lb_side_view_new (like->context, picture, &like->style, &like->view, like->width,
                           like->side_height);
}

static void
test_the_background_stays_when_the_current_moves (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup), *other;
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, 800);
  LbScene *moved;
  size_t changed = 0;

  setup.river.surface_current += 0.05;
  other = drawing_new (&setup);
  moved = in_the_same_view (&scenes, &other->picture);
  assert_true (lb_scene_background_key (moved) == lb_scene_background_key (scenes.side));
  for (size_t i = 0; i < MIN (lb_scene_n_tiles (moved), lb_scene_n_tiles (scenes.side)); i++)
    changed += lb_scene_tile_key (moved, i) != lb_scene_tile_key (scenes.side, i);
  assert_true (changed > 0);
  lb_scene_free (moved);
  drawing_free (other);

  setup.river.depth += 0.3;
  other = drawing_new (&setup);
  moved = in_the_same_view (&scenes, &other->picture);
  assert_true (lb_scene_background_key (moved) != lb_scene_background_key (scenes.side));
  lb_scene_free (moved);
  drawing_free (other);
  scenes_free (&scenes);
  drawing_free (drawing);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_tiles_paint_the_whole_foreground),
    cmocka_unit_test (test_tiles_are_small_and_apart),
    cmocka_unit_test (test_keys_stay_while_nothing_changes),
    cmocka_unit_test (test_keys_tell_the_themes_apart),
    cmocka_unit_test (test_the_background_stays_when_the_current_moves),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
