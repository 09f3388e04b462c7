/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cards as files, looked at from outside by poppler: sizes, pages, fonts, words, dates. */
#define _GNU_SOURCE /* memmem */

#include "card_export.h"
#include "cards.h"

#include <glib/gstdio.h>
#include <string.h>

#define DATE "2026-01-02T03:04:05Z"

static char *
output_path (const char *name)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");

  return g_build_filename (folder ? folder : g_get_tmp_dir (), name, NULL);
}

static LbCardContents *
default_card (void)
{
  LbSetup setup = lb_setup_default ();

  return card_new (&setup, LB_UNITS_US, &card_plain_words);
}

static void
write_card (const LbCardDrawing *drawing, const char *path, double resolution)
{
  GError *error = NULL;
  LbExportFormat format;

  assert_true (lb_export_format_for_path (path, &format, &error));
  if (!lb_card_export_write (drawing, path, format, resolution, DATE, &error))
    fail_msg ("%s", error->message);
}

static GBytes *
read_file (const char *path)
{
  char *data;
  gsize length;

  if (!g_file_get_contents (path, &data, &length, NULL))
    fail_msg ("%s is not there", path);
  return g_bytes_new_take (data, length);
}

static bool
holds (GBytes *bytes, const char *words, gsize length)
{
  return memmem (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), words, length);
}

/* What a program of poppler-utils prints; skips the test where it is missing. */
static char *
ask_poppler (const char *const *arguments)
{
  g_autofree char *found = g_find_program_in_path (arguments[0]);
  char *output = NULL;

  if (!found)
    skip ();
  assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL,
                             &output, NULL, NULL, NULL));
  return output;
}

#define ask(...) ask_poppler ((const char *const[]){ __VA_ARGS__, NULL })

/* ISO 216 gives 210 x 297, 148 x 210 and 105 x 148 mm (from memory); an inch is 25.4 mm exactly
 * (international yard and pound agreement of 1959). pdfinfo prints points. */
static void
test_sizes_are_exact (void **state)
{
  static const double mm[][2] = { { 3 * 25.4, 5 * 25.4 },
                                  { 4 * 25.4, 6 * 25.4 },
                                  { 5.5 * 25.4, 8.5 * 25.4 },
                                  { 8.5 * 25.4, 11 * 25.4 },
                                  { 105, 148 },
                                  { 148, 210 },
                                  { 210, 297 } };
  LbCardContents *contents = default_card ();
  g_autofree char *path = output_path ("card-size.pdf");

  for (size_t i = 0; i < G_N_ELEMENTS (mm); i++)
    for (int wide = 0; wide < 2; wide++)
      {
        g_autoptr (LbCardDrawing) drawing = NULL;
        g_autofree char *information = NULL;
        double width, height;

        contents->card.size = (LbCardSize) i;
        contents->card.wide = wide;
        drawing = lb_card_drawing_new (contents, NULL);
        write_card (drawing, path, 0);
        information = ask ("pdfinfo", path);
        assert_int_equal (
            sscanf (strstr (information, "Page size:"), "Page size: %lf x %lf", &width, &height),
            2);
        assert_near (width * 25.4 / 72, mm[i][wide], 0.01);
        assert_near (height * 25.4 / 72, mm[i][!wide], 0.01);
      }
  card_free (contents);
}

static int
count_pages (const char *path)
{
  g_autofree char *information = ask ("pdfinfo", path);
  int pages = 0;

  assert_int_equal (sscanf (strstr (information, "Pages:"), "Pages: %d", &pages), 1);
  return pages;
}

static void
test_pages_and_sheets (void **state)
{
  LbCardContents *contents = default_card ();
  g_autofree char *path = output_path ("card-pages.pdf");
  g_autoptr (LbCardDrawing) alone = lb_card_drawing_new (contents, NULL);
  g_autoptr (LbCardDrawing) one =
      lb_card_drawing_new (contents, &(LbCardDrawingOptions){ .most_pages = 1 });
  g_autoptr (LbCardDrawing) several = NULL;

  write_card (alone, path, 0);
  assert_true (lb_card_drawing_n_pages (alone) >= 2);
  assert_int_equal (count_pages (path), lb_card_drawing_n_pages (alone));
  write_card (one, path, 0);
  assert_int_equal (count_pages (path), 1);

  contents->card.sheet = LB_CARD_SHEET_LETTER;
  contents->card.several = true;
  several = lb_card_drawing_new (contents, NULL);
  write_card (several, path, 0);
  assert_int_equal (count_pages (path), (lb_card_drawing_n_pages (several) + 1) / 2);
  card_free (contents);
}

static void
test_pdf_is_the_same_twice_and_says_what_it_is (void **state)
{
  LbCardContents *contents = default_card ();
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, NULL);
  g_autoptr (LbCardDrawing) again = lb_card_drawing_new (contents, NULL);
  g_autofree char *first = output_path ("card-1st.pdf"), *second = output_path ("card-2nd.pdf");
  g_autoptr (GBytes) a = NULL;
  g_autoptr (GBytes) b = NULL;
  g_autofree char *information = NULL;
  g_autofree char *fonts = NULL;

  write_card (drawing, first, 0);
  write_card (again, second, 0);
  a = read_file (first);
  b = read_file (second);
  assert_true (g_bytes_equal (a, b));
  information = ask ("pdfinfo", "-isodates", first);
  assert_non_null (strstr (information, "Stony Bend, April"));
  assert_non_null (strstr (information, "A card to rig and fish from"));
  assert_non_null (strstr (information, "Layback"));
  assert_non_null (strstr (information, "2026-01-02T03:04:05"));
  fonts = ask ("pdffonts", first);
  assert_non_null (strstr (fonts, "yes"));
  assert_null (strstr (fonts, " no  no"));
  card_free (contents);
}

static void
test_text_can_be_selected (void **state)
{
  LbCardContents *contents = default_card ();
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, NULL);
  g_autofree char *path = output_path ("card-text.pdf");
  g_autofree char *text = NULL;

  write_card (drawing, path, 0);
  text = ask ("pdftotext", "-layout", path, "-");
  for (size_t i = 0; i < contents->rig.n_leaders; i++)
    {
      assert_non_null (strstr (text, contents->rig.leaders[i].attachment_words));
      assert_non_null (strstr (text, contents->rig.leaders[i].line.length_words));
      assert_non_null (strstr (text, contents->rig.leaders[i].line.cut_words));
    }
  assert_non_null (strstr (text, "Never wrap the wire"));
  assert_non_null (strstr (text, "Local rules"));
  assert_non_null (strstr (text, "Not calibrated on the water."));
  card_free (contents);
}

static void
test_svg_and_png_take_a_file_a_sheet (void **state)
{
  LbCardContents *contents = default_card ();
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, NULL);
  g_autofree char *svg = output_path ("card-many.svg"), *png = output_path ("card-many.png");
  g_auto (GStrv) svgs = lb_card_export_paths (drawing, svg, LB_EXPORT_SVG);
  g_auto (GStrv) pngs = lb_card_export_paths (drawing, png, LB_EXPORT_PNG);
  /* pHYs (PNG specification 11.3.5.3): 200 to the inch are 7874 to the metre, 0x1ec2, both ways. */
  static const char resolution[] = "pHYs\0\0\x1e\xc2\0\0\x1e\xc2\1";

  assert_int_equal (g_strv_length (svgs), lb_card_drawing_n_sheets (drawing));
  write_card (drawing, svg, 0);
  write_card (drawing, png, 200);
  for (size_t i = 0; svgs[i]; i++)
    {
      g_autoptr (GBytes) words = read_file (svgs[i]);
      g_autoptr (GBytes) bytes = read_file (pngs[i]);
      cairo_surface_t *surface = cairo_image_surface_create_from_png (pngs[i]);

      assert_true (holds (words, "<title>Stony Bend, April</title>", 32));
      assert_true (holds (words, "width=\"288pt\" height=\"432pt\"", 28));
      assert_true (holds (bytes, resolution, sizeof resolution - 1));
      assert_int_equal (cairo_surface_status (surface), CAIRO_STATUS_SUCCESS);
      assert_int_equal (cairo_image_surface_get_width (surface), 800);
      assert_int_equal (cairo_image_surface_get_height (surface), 1200);
      cairo_surface_destroy (surface);
    }
  card_free (contents);
}

static void
test_what_is_refused (void **state)
{
  static const double resolutions[] = { 0, -300, 35.9, 1201, NAN, INFINITY };
  LbCardContents *contents = default_card ();
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, NULL);
  g_autofree char *file = output_path ("card-in-the-way"), *never = output_path ("card-never.png");

  for (size_t i = 0; i < G_N_ELEMENTS (resolutions); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_false (
          lb_card_export_write (drawing, never, LB_EXPORT_PNG, resolutions[i], DATE, &error));
      assert_true (g_error_matches (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_SIZE));
    }
  assert_true (g_file_set_contents (file, "x", 1, NULL));
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *path =
          g_strdup_printf ("%s/card.%s", file, i ? i == 1 ? "svg" : "pdf" : "png");
      g_autoptr (GError) error = NULL;

      assert_false (lb_card_export_write (drawing, path, (LbExportFormat) i, 100, DATE, &error));
      assert_true (g_error_matches (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_WRITE));
    }
  card_free (contents);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_sizes_are_exact),
    cmocka_unit_test (test_pages_and_sheets),
    cmocka_unit_test (test_pdf_is_the_same_twice_and_says_what_it_is),
    cmocka_unit_test (test_text_can_be_selected),
    cmocka_unit_test (test_svg_and_png_take_a_file_a_sheet),
    cmocka_unit_test (test_what_is_refused),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
