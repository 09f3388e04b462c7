/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cards as files, looked at from outside by poppler: sizes, pages, fonts, words, dates. */
#define _GNU_SOURCE /* memmem */

#include "card_export.h"
#include "cards.h"
#include "pdf_paths.h"

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

#define ask(...) pdf_ask ((const char *const[]){ __VA_ARGS__, NULL })

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

/* ---- Words ---- */

/* Without blanks, so that it does not matter where lines were broken, and without the marks for the
 * direction of writing, which poppler sets. */
static char *
condensed (const char *text)
{
  GString *all = g_string_new (NULL);

  for (const char *at = text; *at; at = g_utf8_next_char (at))
    if (!g_unichar_isspace (g_utf8_get_char (at))
        && g_unichar_type (g_utf8_get_char (at)) != G_UNICODE_FORMAT)
      g_string_append_unichar (all, g_utf8_get_char (at));
  return g_string_free (all, FALSE);
}

static char *
text_of (const char *path)
{
  g_autofree char *text = ask ("pdftotext", "-raw", path, "-");

  return condensed (text);
}

static void
assert_said (const char *text, const char *words)
{
  g_autofree char *wanted = condensed (words);

  if (!strstr (text, wanted))
    fail_msg ("\"%s\" is not in %s", words, text);
}

static void
assert_facts_said (const char *text, const LbCardFacts *facts)
{
  for (size_t i = 0; i < facts->n; i++)
    {
      assert_said (text, facts->facts[i].label);
      assert_said (text, facts->facts[i].value);
      assert_said (text, facts->facts[i].note);
    }
}

static void
assert_line_said (const char *text, const LbCardLine *line)
{
  assert_said (text, line->material);
  assert_said (text, line->strength);
  if (lb_is_set (line->cut_length))
    assert_said (text, line->length_words);
  assert_said (text, line->cut_words);
}

static void
assert_rig_said (const char *text, const LbCardRig *rig)
{
  assert_line_said (text, &rig->mainline);
  assert_line_said (text, &rig->shank);
  assert_said (text, rig->weight);
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      assert_said (text, rig->leaders[i].attachment_words);
      assert_line_said (text, &rig->leaders[i].line);
      assert_said (text, rig->leaders[i].lure);
      assert_said (text, rig->leaders[i].lure_details);
    }
  assert_facts_said (text, &rig->terminations);
  assert_facts_said (text, &rig->hardware);
}

static void
assert_table_said (const char *text, const LbCardTable *table)
{
  for (size_t w = 0; w < table->n_weights; w++)
    {
      assert_said (text, table->blocks[w].name);
      for (size_t d = 0; d < table->n_depths; d++)
        {
          const LbCardRow *row = &table->blocks[w].rows[d];

          assert_said (text, table->depth_words[d]);
          assert_said (text, row->limits);
          for (size_t c = 0; c < table->n_currents; c++)
            {
              g_autofree char *both =
                  g_strconcat (row->cells[c].line_words, row->cells[c].angle_words, NULL);

              assert_said (text, table->current_words[c]);
              assert_said (text, both);
            }
        }
    }
}

/* What is computed says so over it. */
static void
assert_marks_said (const char *text)
{
  static const char *const headings[] = { "How it runs", "Settings", "Running",
                                          "Weight off the bed" };

  for (size_t i = 0; i < G_N_ELEMENTS (headings); i++)
    {
      g_autofree char *marked = g_strdup_printf ("%s · ≈ computed", headings[i]);

      assert_said (text, marked);
    }
}

static void
assert_all_said (const char *text, const LbCardContents *contents)
{
  assert_rig_said (text, &contents->rig);
  assert_facts_said (text, &contents->running.line);
  assert_facts_said (text, &contents->running.lures);
  assert_facts_said (text, &contents->running.water);
  assert_table_said (text, &contents->table);
  assert_said (text, contents->speed_window.sentence);
  assert_said (text, contents->gauge.caption);
  for (size_t i = 0; i < contents->gauge.n_ticks; i++)
    if (contents->gauge.ticks[i].major)
      assert_said (text, contents->gauge.ticks[i].words);
  for (size_t i = 0; i < contents->n_cautions; i++)
    assert_said (text, contents->cautions[i]);
  assert_said (text, contents->rules);
  assert_said (text, contents->date);
  assert_said (text, contents->calibration);
  assert_said (text, contents->estimate_note);
  assert_said (text, contents->title);
  assert_marks_said (text);
}

/* Where there is room for it, poppler finds every number and every word of the contents. */
static void
test_every_number_can_be_found (void **state)
{
  static const LbCardSize sizes[] = { LB_CARD_HALF_LETTER, LB_CARD_LETTER, LB_CARD_A5, LB_CARD_A4 };
  g_autofree char *path = output_path ("card-text.pdf");

  for (size_t i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int metric = 0; metric < 2; metric++)
      {
        LbSetup setup = setup_with_leaders (1 + i);
        LbUnits units = metric ? LB_UNITS_METRIC : LB_UNITS_US;
        LbCardContents *contents = card_new (&setup, units, &card_plain_words);
        g_autoptr (LbCardDrawing) drawing = NULL;
        g_autofree char *text = NULL;

        contents->card.size = sizes[i];
        drawing = lb_card_drawing_new (contents, NULL);
        write_card (drawing, path, 0);
        text = text_of (path);
        assert_all_said (text, contents);
        card_free (contents);
      }
}

/* Cautions, the reminder of the rules, date, calibration and estimates are on the smallest card of
 * a single page too. */
static void
test_what_always_prints (void **state)
{
  g_autofree char *path = output_path ("card-always.pdf");

  for (int size = 0; size < LB_CARD_OWN_SIZE; size++)
    {
      LbCardContents *contents = default_card ();
      g_autoptr (LbCardDrawing) drawing = NULL;
      g_autofree char *text = NULL;

      contents->card.size = (LbCardSize) size;
      drawing = lb_card_drawing_new (contents, &(LbCardDrawingOptions){ .most_pages = 1 });
      assert_int_equal (lb_card_drawing_n_pages (drawing), 1);
      write_card (drawing, path, 0);
      text = text_of (path);
      for (size_t i = 0; i < contents->n_cautions; i++)
        assert_said (text, contents->cautions[i]);
      assert_said (text, contents->rules);
      assert_said (text, contents->date);
      assert_said (text, contents->calibration);
      assert_said (text, contents->estimate_note);
      card_free (contents);
    }
}

/* Letters that no font has (of the last private plane) are drawn as boxes and told; the text is
 * kept with the file. */
static void
test_letters_without_a_font (void **state)
{
  static const CardWords words = {
    .title = "Run \xf4\x8f\xbf\xbd two",
    .lure = "\xf4\x8f\xbf\xbc\xf4\x8f\xbf\xbc lure",
    .hardware = "snap",
    .notes = "",
  };
  static const char *const endings[] = { "png", "svg", "pdf" };
  LbSetup setup = setup_with_leaders (2);
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &words);
  LbCardContents *plain = default_card ();
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, NULL);
  g_autoptr (LbCardDrawing) lettered = lb_card_drawing_new (plain, NULL);
  g_autofree char *unlettered = lb_card_drawing_dup_unlettered (drawing);

  assert_null (lb_card_drawing_dup_unlettered (lettered));
  assert_non_null (unlettered);
  assert_non_null (strstr (unlettered, words.title));
  assert_non_null (strstr (unlettered, words.lure));
  for (int kind = 0; kind < 3; kind++)
    {
      g_autofree char *name = g_strdup_printf ("card-letters.%s", endings[kind]);
      g_autofree char *path = output_path (name);

      assert_true (lb_card_export_write (drawing, path, (LbExportFormat) kind, 72, NULL, NULL));
      if (kind == LB_EXPORT_PDF)
        {
          g_autofree char *said = ask ("pdfinfo", "-enc", "UTF-8", path);

          assert_non_null (strstr (said, words.title));
          assert_non_null (strstr (said, words.lure));
        }
    }
  card_free (contents);
  card_free (plain);
}

/* Names of the user's in scripts that run either way come out whole. Poppler gives back Hebrew
 * letters in the order in which they are read; the fonts of the tests have no letters of further
 * scripts. */
static void
test_names_in_any_script (void **state)
{
  static const CardWords words = {
    .title = "כרטיס לנחל",
    .lure = "Μικρό ψάρι, Ø 7 cm",
    .hardware = "Вертлюг № 8",
    .notes = "Émerillon à agrafe — čep",
  };
  LbSetup setup = lb_setup_default ();
  LbCardContents *contents = card_new (&setup, LB_UNITS_METRIC, &words);
  g_autofree char *path = output_path ("card-scripts.pdf");
  g_autofree char *text = NULL;
  g_autoptr (LbCardDrawing) drawing = NULL;

  contents->card.size = LB_CARD_A5;
  drawing = lb_card_drawing_new (contents, NULL);
  write_card (drawing, path, 0);
  text = text_of (path);
  assert_said (text, "כרטיס");
  assert_said (text, "לנחל");
  assert_said (text, words.lure);
  assert_said (text, words.hardware);
  assert_said (text, words.notes);
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
    cmocka_unit_test (test_every_number_can_be_found),
    cmocka_unit_test (test_what_always_prints),
    cmocka_unit_test (test_names_in_any_script),
    cmocka_unit_test (test_letters_without_a_font),
    cmocka_unit_test (test_svg_and_png_take_a_file_a_sheet),
    cmocka_unit_test (test_what_is_refused),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
