/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Cards for people to look at: tests/output/card-*.png in the build folder. A test only in that
 * each must be drawn, and must not be blank. */
#include "cards.h"

#define DPI 150.0

static bool
is_blank (cairo_surface_t *surface)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  int height = cairo_image_surface_get_height (surface);

  for (int i = 0; i < stride * height; i++)
    if (data[i] != data[0])
      return false;
  return true;
}

static void
write_sheet (const LbCardDrawing *drawing, size_t sheet, const char *name)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");
  g_autofree char *file = g_strdup_printf ("card-%s-%d.png", name, (int) sheet + 1);
  g_autofree char *path = g_build_filename (folder ? folder : g_get_tmp_dir (), file, NULL);
  double width, height;
  cairo_surface_t *surface;
  cairo_t *cr;

  lb_card_drawing_sheet_size (drawing, sheet, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (width * DPI / 72),
                                        (int) (height * DPI / 72));
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, DPI / 72, DPI / 72);
  lb_card_drawing_paint (drawing, sheet, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  assert_false (is_blank (surface));
  assert_int_equal (cairo_surface_write_to_png (surface, path), CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
}

static void
write_card (const LbCardContents *contents, const char *name, int most_pages)
{
  LbCardDrawingOptions options = { .most_pages = most_pages };
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, &options);

  for (size_t i = 0; i < lb_card_drawing_n_sheets (drawing); i++)
    write_sheet (drawing, i, name);
}

static void
test_every_size (void **state)
{
  static const char *const names[] = { "3x5", "4x6", "half-letter", "letter", "a6", "a5", "a4" };
  LbSetup setup = lb_setup_default ();
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);

  for (size_t i = 0; i < G_N_ELEMENTS (names); i++)
    {
      contents->card.size = (LbCardSize) i;
      contents->card.wide = i != LB_CARD_LETTER && i != LB_CARD_A4;
      write_card (contents, names[i], 0);
    }
  contents->card.size = LB_CARD_4X6;
  contents->card.wide = false;
  write_card (contents, "4x6-upright", 0);
  write_card (contents, "4x6-one", 1);
  contents->card.sheet = LB_CARD_SHEET_LETTER;
  contents->card.several = true;
  write_card (contents, "4x6-on-letter", 0);
  card_free (contents);
}

static void
test_template (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);

  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    contents->card.prints[i] = i == LB_CARD_PART_TEMPLATE;
  contents->card.size = LB_CARD_LETTER;
  write_card (contents, "template-letter", 0);
  contents->card.size = LB_CARD_3X5;
  write_card (contents, "template-3x5", 0);
  card_free (contents);
}

static void
test_right_to_left (void **state)
{
  static const CardWords words = {
    .title = "כרטיס לנחל, באפריל",
    .lure = "פיתיון צף, 7 ס״מ",
    .hardware = "סביבון מס׳ 8",
    .notes = "הערה ראשונה עם 20 ft בתוכה, ארוכה מספיק כדי להישבר לשתי שורות על כרטיס קטן כל כך.\n"
             "שורה שנייה.",
  };
  LbSetup setup = lb_setup_default ();
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &words);

  write_card (contents, "right-to-left", 0);
  card_free (contents);
}

static void
test_many_leaders (void **state)
{
  LbSetup setup = setup_with_leaders (8);
  LbCardContents *contents = card_new (&setup, LB_UNITS_METRIC, &card_plain_words);

  contents->card.wide = true;
  write_card (contents, "eight", 0);
  contents->card.size = LB_CARD_A5;
  write_card (contents, "eight-a5", 0);
  card_free (contents);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_size),
    cmocka_unit_test (test_template),
    cmocka_unit_test (test_right_to_left),
    cmocka_unit_test (test_many_leaders),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
