/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pictures for people to look at, of rigs that are hard to draw. A test only in that each must be
 * written and must not be of one colour. */
#include "drawings.h"
#include "export.h"

typedef struct
{
  const char *name;
  double width, height;
  LbTheme theme;
  LbUnits units;
  size_t leaders; /* 9: the default rig's own two */
  double depth;   /* m; 0: the default */
  double line_out;
  bool uneven;
  LbStatus status; /* other than OK: shown instead of the solve's own */
} Shot;

static const Shot shots[] = {
  { "default", 1280, 800, LB_THEME_LIGHT, LB_UNITS_US, 9, 0, 0, false, LB_STATUS_OK },
  { "dark", 1280, 800, LB_THEME_DARK, LB_UNITS_US, 9, 0, 0, true, LB_STATUS_OK },
  { "print", 960, 600, LB_THEME_PRINT, LB_UNITS_METRIC, 9, 0, 0, true, LB_STATUS_OK },
  { "small", 640, 240, LB_THEME_LIGHT, LB_UNITS_US, 9, 0, 0, false, LB_STATUS_OK },
  { "4k", 3840, 2160, LB_THEME_LIGHT, LB_UNITS_METRIC, 3, 0, 0, false, LB_STATUS_OK },
  { "eight", 1280, 800, LB_THEME_LIGHT, LB_UNITS_US, 8, 0, 0, false, LB_STATUS_OK },
  { "none", 960, 600, LB_THEME_LIGHT, LB_UNITS_US, 0, 0, 0, false, LB_STATUS_OK },
  { "shallow", 960, 600, LB_THEME_LIGHT, LB_UNITS_US, 2, 0.5, 0, false, LB_STATUS_OK },
  { "deep", 960, 600, LB_THEME_DARK, LB_UNITS_US, 2, 12, 0, true, LB_STATUS_OK },
  { "long", 960, 600, LB_THEME_LIGHT, LB_UNITS_US, 2, 0, 60, false, LB_STATUS_OK },
  { "longest", 960, 600, LB_THEME_LIGHT, LB_UNITS_US, 9, 0, 0, false, LB_STATUS_LINE_AT_LONGEST },
  { "unsolved", 960, 600, LB_THEME_LIGHT, LB_UNITS_US, 9, 0, 0, false, LB_STATUS_NO_CONVERGENCE },
};

static Drawing *
drawing_of (const Shot *shot)
{
  LbSetup setup = shot->leaders == 9 ? lb_setup_default () : setup_with_leaders (shot->leaders);
  Drawing *drawing;

  if (shot->depth > 0)
    setup.river.depth = shot->depth;
  if (shot->depth > 0 && shot->depth < 1)
    setup.rig.shank_length = 0.3;
  for (size_t i = 0; i < setup.rig.n_leaders; i++)
    setup.rig.leaders[i].attach_above_weight =
        fmin (setup.rig.leaders[i].attach_above_weight, setup.rig.shank_length);
  if (shot->line_out > 0)
    setup.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, shot->line_out };
  if (shot->uneven)
    make_bed_uneven (&setup);
  drawing = drawing_new (&setup);
  assert_true (lb_picture_is_solved (&drawing->picture));
  drawing->picture.units = shot->units;
  if (shot->status != LB_STATUS_OK)
    drawing->picture.status = shot->status;
  return drawing;
}

/* How many colours there are in a coarse grid of points. */
static int
count_colours (const char *path)
{
  cairo_surface_t *surface = cairo_image_surface_create_from_png (path);
  const unsigned char *data = cairo_image_surface_get_data (surface);
  int width = cairo_image_surface_get_width (surface);
  int height = cairo_image_surface_get_height (surface);
  GHashTable *seen = g_hash_table_new (NULL, NULL);
  int n;

  for (int y = 0; y < height; y += 3)
    for (int x = 0; x < width; x += 3)
      {
        const guint32 *row =
            (const guint32 *) (data + (gsize) y * cairo_image_surface_get_stride (surface));

        g_hash_table_add (seen, GUINT_TO_POINTER (row[x] & 0xffffff));
      }
  n = (int) g_hash_table_size (seen);
  g_hash_table_unref (seen);
  cairo_surface_destroy (surface);
  return n;
}

static void
test_gallery (void **state)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");

  for (size_t i = 0; i < G_N_ELEMENTS (shots); i++)
    {
      Drawing *drawing = drawing_of (&shots[i]);
      g_autofree char *name = g_strdup_printf ("draw-%s.png", shots[i].name);
      g_autofree char *path = g_build_filename (folder ? folder : g_get_tmp_dir (), name, NULL);
      GError *error = NULL;

      if (!lb_export_write (path, LB_EXPORT_PNG, &drawing->picture, shots[i].theme, shots[i].width,
                            shots[i].height, "2026-01-02T03:04:05Z", &error))
        fail_msg ("%s", error->message);
      assert_less (40, count_colours (path));
      drawing_free (drawing);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = { cmocka_unit_test (test_gallery) };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
