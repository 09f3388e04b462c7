/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tiles hold all of the foreground, are small, and their keys tell when nothing changed. */
#include "drawings.h"
#include "scene_build.h"

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

/* ---- A key tells what is in its tile ---- */

/* Two scenes that differ a little; a tile of both with the same bounds and key must paint alike. */
static size_t
check_kept_tiles (LbScene *a, LbScene *b)
{
  cairo_surface_t *first = white_surface (), *second = white_surface ();
  cairo_t *on_first = cairo_create (first), *on_second = cairo_create (second);
  size_t kept = 0;

  for (size_t i = 0; i < lb_scene_n_tiles (a); i++)
    for (size_t k = 0; k < lb_scene_n_tiles (b); k++)
      {
        LbBox p = lb_scene_tile_bounds (a, i), q = lb_scene_tile_bounds (b, k);

        if (p.x != q.x || p.y != q.y || p.width != q.width || p.height != q.height
            || lb_scene_tile_key (a, i) != lb_scene_tile_key (b, k))
          continue;
        lb_scene_paint_tile (a, on_first, i);
        lb_scene_paint_tile (b, on_second, k);
        kept++;
      }
  cairo_destroy (on_first);
  cairo_destroy (on_second);
  cairo_surface_flush (first);
  cairo_surface_flush (second);
  assert_int_equal (count_differences (first, second), 0);
  cairo_surface_destroy (first);
  cairo_surface_destroy (second);
  return kept;
}

static void
test_kept_tiles_paint_alike (void **state)
{
  TestRandom random = { 11 };
  size_t kept = 0;

  for (int i = 0; i < 40; i++)
    {
      LbSetup setup = i % 4 ? random_setup (&random) : lb_setup_default ();
      Drawing *drawing = drawing_new (&setup), *other;
      Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, HEIGHT / 0.7);
      LbScene *moved;

      setup.river.surface_current *= test_random (&random, 0.98, 1.02);
      other = drawing_new (&setup);
      moved = in_the_same_view (&scenes, &other->picture);
      kept += check_kept_tiles (scenes.side, moved);
      lb_scene_free (moved);
      drawing_free (other);
      scenes_free (&scenes);
      drawing_free (drawing);
    }
  assert_true (kept > 40);
}

/* A scene of the test's own: an area and a line along an axis that both reach over four tiles. */
static LbScene *
an_area_and_a_line (const Scenes *like, const LbPicture *picture, double right, double end)
{
  LbScene *scene = lb_scene_new (LB_SCENE_CHART, like->context, picture, &like->style, &like->view,
                                 like->width, like->side_height);

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (scene, 20, 20, right - 20, 400, 0);
  lb_scene_end (scene, (LbLook){ .fill = LB_COLOUR_CURRENT, .opacity = 0.5 });
  lb_scene_line (scene, LB_LAYER_FOREGROUND, 30, 500, end, 500,
                 (LbLook){ .stroke = LB_COLOUR_CURRENT, .width = 3 });
  lb_scene_finish (scene);
  return scene;
}

/* The key of the tile that holds a point. */
static guint64
key_at (const LbScene *scene, double x, double y)
{
  for (size_t i = 0; i < lb_scene_n_tiles (scene); i++)
    {
      LbBox box = lb_scene_tile_bounds (scene, i);

      if (x >= box.x && x < box.x + box.width && y >= box.y && y < box.y + box.height)
        return lb_scene_tile_key (scene, i);
    }
  return 0;
}

static void
test_only_the_tiles_of_an_edge_change (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, WIDTH, 800);
  LbScene *a = an_area_and_a_line (&scenes, &drawing->picture, 400, 400);
  LbScene *b = an_area_and_a_line (&scenes, &drawing->picture, 420, 420);

  assert_true (key_at (a, 168, 168) != 0);
  assert_true (key_at (a, 168, 168) == key_at (b, 168, 168)); /* inside the area */
  assert_true (key_at (a, 390, 168) != key_at (b, 390, 168)); /* its edge */
  assert_true (key_at (a, 168, 500) != 0);
  assert_true (key_at (a, 168, 500) == key_at (b, 168, 500)); /* along the line */
  assert_true (key_at (a, 398, 500) != key_at (b, 398, 500)); /* its end */
  lb_scene_free (a);
  lb_scene_free (b);
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
    cmocka_unit_test (test_kept_tiles_paint_alike),
    cmocka_unit_test (test_only_the_tiles_of_an_edge_change),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
