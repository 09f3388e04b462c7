/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawings.h"

#include <string.h>

static const LbExtents river = {
  .x_min = -3.75, .x_max = 9.5, .z_min = -6.1, .z_max = 1.05, .x_rig = 0
};

static LbView
fitted (double width, double height)
{
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);

  return lb_view_fit (NULL, &river, &style, width, height);
}

static void
test_there_and_back (void **state)
{
  LbView view = fitted (960, 420);

  for (double x = -10; x < 40; x += 1.7)
    {
      assert_near (lb_view_world_x (&view, lb_view_x (&view, x)), x, 1e-12);
      assert_near (lb_view_world_z (&view, lb_view_y (&view, -x)), -x, 1e-12);
    }
}

static void
test_true_to_scale_and_all_in (void **state)
{
  TestRandom random = { 7 };

  for (int i = 0; i < 500; i++)
    {
      LbStyle style = lb_style_make (LB_THEME_LIGHT, test_random (&random, 0.8, 3));
      double width = test_random (&random, 640, 3840), height = test_random (&random, 200, 2160);
      double depth = test_random_log (&random, 0.5, 12);
      LbExtents wanted = { -3.75, test_random_log (&random, 2, 80), -depth, 1.05, 0 };
      LbView view = lb_view_fit (NULL, &wanted, &style, width, height);

      assert_near (view.per_metre_x, view.per_metre_z, 0);
      assert_true (view.per_metre_x > 0);
      assert_true (lb_view_holds (&view, &wanted));
    }
}

static void
test_downstream_is_right_and_up_is_up (void **state)
{
  LbView view = fitted (960, 420);

  assert_less (lb_view_x (&view, 0), lb_view_x (&view, 1));
  assert_less (lb_view_y (&view, 1), lb_view_y (&view, 0));
}

static void
test_kept_while_it_fits (void **state)
{
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);
  LbView view = fitted (960, 420), next;
  LbExtents wanted = river;

  wanted.x_max -= 0.8;
  next = lb_view_fit (&view, &wanted, &style, 960, 420);
  assert_memory_equal (&next, &view, sizeof view);

  wanted.x_max = 40;
  next = lb_view_fit (&view, &wanted, &style, 960, 420);
  assert_less (next.per_metre_x, view.per_metre_x);
  assert_true (lb_view_holds (&next, &wanted));
}

static void
test_let_go_when_the_rig_looks_lost (void **state)
{
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);
  LbExtents far = { -3.75, 60, -6.1, 1.05, 0 };
  LbView view = lb_view_fit (NULL, &far, &style, 960, 420);
  LbView next = lb_view_fit (&view, &river, &style, 960, 420);

  assert_less (1.5 * view.per_metre_x, next.per_metre_x);
}

static void
test_fitted_anew_for_another_size_or_style (void **state)
{
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1), large = lb_style_make (LB_THEME_LIGHT, 2);
  LbView view = fitted (960, 420);
  LbView wide = lb_view_fit (&view, &river, &style, 1200, 420);
  LbView scaled = lb_view_fit (&view, &river, &large, 960, 420);

  assert_near (wide.width, 1200, 0);
  assert_near (scaled.style_scale, 2, 0);
}

/* From end to end of a slider the picture may change its scale a few times, not at every frame. */
static void
test_a_moving_slider_seldom_rescales (void **state)
{
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);
  LbView view = { 0 };
  int changes = 0;

  for (int step = 0; step <= 200; step++)
    {
      LbExtents wanted = river;
      LbView next;

      wanted.x_max = 4 + 20.0 * step / 200;
      next = lb_view_fit (&view, &wanted, &style, 960, 420);
      changes += memcmp (&next, &view, sizeof view) != 0;
      view = next;
    }
  assert_less (changes, 12);
}

static void
test_zoom_holds_the_point_and_pan_moves (void **state)
{
  LbView view = fitted (960, 420);
  LbView closer = lb_view_zoomed (&view, 2, 300, 200), moved = lb_view_panned (&view, 15, -7);

  assert_near (closer.per_metre_x, 2 * view.per_metre_x, 1e-12);
  assert_near (lb_view_world_x (&closer, 300), lb_view_world_x (&view, 300), 1e-12);
  assert_near (lb_view_world_z (&closer, 200), lb_view_world_z (&view, 200), 1e-12);
  assert_near (lb_view_x (&moved, 1), lb_view_x (&view, 1) + 15, 1e-9);
  assert_near (lb_view_y (&moved, -1), lb_view_y (&view, -1) - 7, 1e-9);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_there_and_back),
    cmocka_unit_test (test_true_to_scale_and_all_in),
    cmocka_unit_test (test_downstream_is_right_and_up_is_up),
    cmocka_unit_test (test_kept_while_it_fits),
    cmocka_unit_test (test_let_go_when_the_rig_looks_lost),
    cmocka_unit_test (test_fitted_anew_for_another_size_or_style),
    cmocka_unit_test (test_a_moving_slider_seldom_rescales),
    cmocka_unit_test (test_zoom_holds_the_point_and_pan_moves),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
