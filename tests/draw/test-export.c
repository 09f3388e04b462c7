/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files: what is in them, the same twice, and what happens when they cannot be written. */
#define _GNU_SOURCE /* memmem */

#include "drawings.h"
#include "export.h"

#include <glib/gstdio.h>
#include <string.h>

#define DATE "2026-01-02T03:04:05Z"

static char *
output_path (const char *name)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");

  return g_build_filename (folder ? folder : g_get_tmp_dir (), name, NULL);
}

static void
write_file (const Drawing *drawing, const char *path, double width, double height)
{
  GError *error = NULL;
  LbExportFormat format;

  assert_true (lb_export_format_for_path (path, &format, &error));
  if (!lb_export_write (path, format, &drawing->picture, LB_THEME_LIGHT, width, height, DATE,
                        &error))
    fail_msg ("%s", error->message);
}

static GBytes *
read_file (const char *path)
{
  char *data;
  gsize length;

  assert_true (g_file_get_contents (path, &data, &length, NULL));
  return g_bytes_new_take (data, length);
}

static bool
holds (GBytes *bytes, const char *words)
{
  return memmem (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), words, strlen (words));
}

static void
test_twice_the_same (void **state)
{
  static const char *const names[] = { "same-1.png", "same-2.png", "same-1.svg",
                                       "same-2.svg", "same-1.pdf", "same-2.pdf" };
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);

  for (int i = 0; i < 6; i += 2)
    {
      g_autofree char *first = output_path (names[i]), *second = output_path (names[i + 1]);
      g_autoptr (GBytes) a = NULL;
      g_autoptr (GBytes) b = NULL;

      write_file (drawing, first, 900, 600);
      write_file (drawing, second, 900, 600);
      a = read_file (first);
      b = read_file (second);
      assert_true (g_bytes_get_size (a) > 5000);
      assert_true (g_bytes_equal (a, b));
    }
  drawing_free (drawing);
}

static void
test_png_has_its_size_and_words (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  g_autofree char *path = output_path ("words.png");
  g_autoptr (GBytes) bytes = NULL;
  cairo_surface_t *surface;

  write_file (drawing, path, 800, 500);
  bytes = read_file (path);
  assert_true (holds (bytes, "Title"));
  assert_true (holds (bytes, "Stony Bend, April"));
  assert_true (holds (bytes, "wire angle"));
  surface = cairo_image_surface_create_from_png (path); /* libpng checks every chunk's sum */
  assert_int_equal (cairo_surface_status (surface), CAIRO_STATUS_SUCCESS);
  assert_int_equal (cairo_image_surface_get_width (surface), 800);
  assert_int_equal (cairo_image_surface_get_height (surface), 500);
  cairo_surface_destroy (surface);
  drawing_free (drawing);
}

static void
check_svg_cb (GMarkupParseContext *context,
              const char *element,
              const char **names,
              const char **values,
              gpointer data,
              GError **error)
{
  int *found = data;

  found[0] += strcmp (element, "title") == 0;
  found[1] += strcmp (element, "desc") == 0;
  found[2] += strcmp (element, "path") == 0;
}

static void
test_svg_is_well_formed_and_has_words (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  g_autofree char *path = output_path ("words.svg");
  g_autoptr (GBytes) bytes = NULL;
  const GMarkupParser parser = { .start_element = check_svg_cb };
  int found[3] = { 0 };
  GMarkupParseContext *context =
      g_markup_parse_context_new (&parser, (GMarkupParseFlags) 0, found, NULL);

  drawing->picture.title = "High & low <water>";
  write_file (drawing, path, 800, 500);
  bytes = read_file (path);
  assert_true (g_markup_parse_context_parse (context, g_bytes_get_data (bytes, NULL),
                                             (gssize) g_bytes_get_size (bytes), NULL));
  assert_true (g_markup_parse_context_end_parse (context, NULL));
  assert_int_equal (found[0], 1);
  assert_int_equal (found[1], 1);
  assert_true (found[2] > 20);
  assert_true (holds (bytes, "High &amp; low &lt;water&gt;"));
  g_markup_parse_context_free (context);
  drawing_free (drawing);
}

/* What `program` (of poppler-utils) prints about the file; skips the test if it is missing. */
static char *
ask_poppler (const char *program, const char *path, const char *more)
{
  const char *arguments[] = { program, path, more, NULL };
  g_autofree char *found = g_find_program_in_path (program);
  char *output = NULL;

  if (!found)
    skip ();
  assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL,
                             &output, NULL, NULL, NULL));
  return output;
}

static void
test_pdf_has_text_fonts_and_words (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  g_autofree char *path = output_path ("words.pdf");
  g_autofree char *text = NULL;
  g_autofree char *fonts = NULL;
  g_autofree char *information = NULL;

  write_file (drawing, path, 842, 595);
  text = ask_poppler ("pdftotext", path, "-");
  assert_non_null (strstr (text, "line out"));
  assert_non_null (strstr (text, "Lower lure: floating minnow"));
  assert_non_null (strstr (text, "\302\260")); /* the degree sign */
  fonts = ask_poppler ("pdffonts", path, NULL);
  assert_non_null (strstr (fonts, "yes"));
  assert_null (strstr (fonts, " no  no")); /* none that is neither embedded nor a subset */
  information = ask_poppler ("pdfinfo", path, "-isodates");
  assert_non_null (strstr (information, "Stony Bend, April"));
  assert_non_null (strstr (information, "Layback"));
  assert_non_null (strstr (information, "2026-01-02T03:04:05"));
  assert_non_null (strstr (information, "842 x 595"));
  drawing_free (drawing);
}

/* Below a regular file nothing can be written, not even by the superuser (ENOTDIR). */
static void
test_what_cannot_be_written (void **state)
{
  static const char *const endings[] = { "png", "svg", "pdf" };
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  g_autofree char *file = output_path ("in-the-way");

  assert_true (g_file_set_contents (file, "x", 1, NULL));
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s/picture.%s", file, endings[i]);
      g_autoptr (GError) error = NULL;

      assert_false (lb_export_write (path, (LbExportFormat) i, &drawing->picture, LB_THEME_DARK,
                                     800, 500, DATE, &error));
      assert_true (g_error_matches (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_WRITE));
      assert_non_null (strstr (error->message, path));
    }
  drawing_free (drawing);
}

/* The target is a folder: the write fails at the last step, and its temporary file must go. */
static void
test_nothing_is_left_over (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  g_autofree char *folder = output_path ("left-over");
  g_autofree char *target = g_build_filename (folder, "picture.png", NULL);
  g_autoptr (GError) error = NULL;
  GDir *listing;
  int n = 0;

  g_mkdir_with_parents (target, 0700);
  assert_false (lb_export_write (target, LB_EXPORT_PNG, &drawing->picture, LB_THEME_LIGHT, 800, 500,
                                 DATE, &error));
  assert_true (g_error_matches (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_WRITE));
  listing = g_dir_open (folder, 0, NULL);
  while (g_dir_read_name (listing))
    n++;
  g_dir_close (listing);
  assert_int_equal (n, 1);
  g_rmdir (target);
  g_rmdir (folder);
  drawing_free (drawing);
}

static void
test_sizes_and_endings_that_are_refused (void **state)
{
  static const double sizes[][2] = { { 0, 500 }, { 800, -1 }, { 1e9, 500 }, { NAN, 500 } };
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  g_autofree char *path = output_path ("refused.png");
  g_autoptr (GError) ending = NULL;
  LbExportFormat format;

  for (size_t i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (GError) error = NULL;

      assert_false (lb_export_write (path, LB_EXPORT_PNG, &drawing->picture, LB_THEME_LIGHT,
                                     sizes[i][0], sizes[i][1], DATE, &error));
      assert_true (g_error_matches (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_SIZE));
    }
  assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  assert_false (lb_export_format_for_path ("picture.bmp", &format, &ending));
  assert_true (g_error_matches (ending, LB_EXPORT_ERROR, LB_EXPORT_ERROR_FORMAT));
  assert_true (lb_export_format_for_path ("picture.PDF", &format, NULL));
  assert_int_equal (format, LB_EXPORT_PDF);
  drawing_free (drawing);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_twice_the_same),
    cmocka_unit_test (test_png_has_its_size_and_words),
    cmocka_unit_test (test_svg_is_well_formed_and_has_words),
    cmocka_unit_test (test_pdf_has_text_fonts_and_words),
    cmocka_unit_test (test_what_cannot_be_written),
    cmocka_unit_test (test_nothing_is_left_over),
    cmocka_unit_test (test_sizes_and_endings_that_are_refused),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
