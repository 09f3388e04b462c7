/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pictures of the window for people to look at, in the output folder of the tests, and the few
 * things about them that a program can tell. */
#include "harness.h"

#include <string.h>

typedef struct
{
  double brightness; /* mean, 0 to 1 */
  gsize colours;     /* how many different ones */
} Look;

static int
compare_pixels (const void *a, const void *b)
{
  guint32 x = *(const guint32 *) a, y = *(const guint32 *) b;

  return (x > y) - (x < y);
}

static Look
look_at (const guchar *pixels, int width, int height)
{
  gsize n = (gsize) width * (gsize) height;
  g_autofree guint32 *sorted = g_memdup2 (pixels, n * 4);
  Look look = { 0, 1 };

  for (gsize i = 0; i < n; i++)
    look.brightness += (pixels[4 * i] + pixels[4 * i + 1] + pixels[4 * i + 2]) / (3 * 255.0);
  look.brightness /= (double) n;
  qsort (sorted, n, sizeof *sorted, compare_pixels);
  for (gsize i = 1; i < n; i++)
    look.colours += sorted[i] != sorted[i - 1];
  return look;
}

/* A picture of a window of that size; checks that the window took the size. */
static Look
picture (const char *name, int width, int height, const char *theme, const char *units)
{
  LbWindow *window = harness_window (width, height);
  int real_width, real_height;
  g_autofree guchar *pixels = NULL;
  Look look;

  g_object_set (lb_application_get_preferences (harness_application ()), "theme", theme, "units",
                units, NULL);
  harness_solved (window);
  /* Transitions of the theme come to an end. */
  harness_pause (300);
  pixels = harness_picture (window, name, 1, &real_width, &real_height);
  look = look_at (pixels, real_width, real_height);
  assert_int_equal (real_width, width);
  assert_int_equal (real_height, height);
  harness_close (window);
  return look;
}

static void
light_is_light_and_dark_is_dark (void **state)
{
  Look light = picture ("window-light", 1280, 800, "light", "us");
  Look dark = picture ("window-dark", 1280, 800, "dark", "us");

  assert_true (light.colours > 500);
  assert_true (dark.colours > 500);
  assert_less (0.5, light.brightness);
  assert_less (dark.brightness, 0.35);
}

static void
a_small_window_holds_everything (void **state)
{
  LbWindow *window = harness_window (960, 600);
  LbControls *controls = lb_window_get_controls (window);
  graphene_rect_t bounds;
  int width, height;
  g_autofree guchar *pixels = harness_picture (window, "window-960x600", 1, &width, &height);

  assert_int_equal (width, 960);
  assert_int_equal (height, 600);
  assert_true (gtk_widget_compute_bounds (GTK_WIDGET (controls), GTK_WIDGET (window), &bounds));
  assert_true (bounds.origin.y + bounds.size.height <= 600);
  assert_true (gtk_widget_get_width (lb_slider_get_scale (lb_controls_get_weight (controls)))
               >= 100);
  harness_close (window);
}

static void
the_largest_letters_leave_a_small_window_usable (void **state)
{
  LbWindow *window = harness_window (960, 600);
  LbControls *controls = lb_window_get_controls (window);
  int width, height;
  g_autofree guchar *pixels = NULL;

  g_object_set (lb_application_get_preferences (harness_application ()), "text-size", "largest",
                NULL);
  harness_pause (300);
  pixels = harness_picture (window, "window-960x600-largest", 1, &width, &height);
  assert_int_equal (height, 600);
  assert_true (width <= 1100);
  assert_true (gtk_widget_get_width (lb_slider_get_scale (lb_controls_get_weight (controls)))
               >= 60);
  harness_close (window);
}

static void
a_4k_window_is_filled (void **state)
{
  Look look = picture ("window-3840x2160", 3840, 2160, "light", "metric");

  assert_true (look.colours > 500);
}

static void
twice_the_scale_is_twice_as_fine (void **state)
{
  LbWindow *window = harness_window (1280, 800);
  int width, height;
  g_autofree guchar *pixels = harness_picture (window, "window-2x", 2, &width, &height);

  assert_int_equal (width, 2560);
  assert_int_equal (height, 1600);
  harness_close (window);
}

static void
a_refused_file_shows_in_the_window (void **state)
{
  LbWindow *window = harness_window (1280, 800);
  g_autoptr (GFile) file = harness_file_with ("refused.rig", "{ \"format\": \"something-else\" }");
  int width, height;
  g_autofree guchar *pixels = NULL;

  lb_window_open_file (window, file);
  harness_pause (400);
  assert_non_null (lb_window_get_message (window));
  pixels = harness_picture (window, "window-refused", 1, &width, &height);
  harness_close (window);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (light_is_light_and_dark_is_dark),
    cmocka_unit_test (a_small_window_holds_everything),
    cmocka_unit_test (the_largest_letters_leave_a_small_window_usable),
    cmocka_unit_test (a_4k_window_is_filled),
    cmocka_unit_test (twice_the_scale_is_twice_as_fine),
    cmocka_unit_test (a_refused_file_shows_in_the_window),
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
