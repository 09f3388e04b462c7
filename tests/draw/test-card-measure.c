/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is measured on a printed card: by poppler from the PDF's content, and with a ruler of pixels
 * from a raster of 300 to the inch. An inch is 25.4 mm exactly, and 72 of PDF's units (ISO 32000,
 * default user space). */
#include "card_export.h"
#include "cards.h"
#include "pdf_paths.h"

#define DATE "2026-01-02T03:04:05Z"
#define PER_METRE (72 / 0.0254)
#define WITHIN (0.2e-3 * PER_METRE) /* 0.2 mm */
#define DPI 300

static char *
output_path (const char *name)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");

  return g_build_filename (folder ? folder : g_get_tmp_dir (), name, NULL);
}

/* Returns how many pages of the card come before those of its template. */
static int
write_pdf (LbCardContents *contents, const char *path, int *n_sheets)
{
  g_autoptr (LbCardDrawing) drawing = lb_card_drawing_new (contents, NULL);
  GError *error = NULL;

  if (!lb_card_export_write (drawing, path, LB_EXPORT_PDF, 0, DATE, &error))
    fail_msg ("%s", error->message);
  *n_sheets = (int) lb_card_drawing_n_sheets (drawing);
  return (int) lb_card_drawing_n_pages (drawing);
}

static int
count_squares (const PdfPaths *paths, double side)
{
  int n = 0;

  for (guint i = 0; i < paths->boxes->len; i++)
    {
      const PdfBox *box = &g_array_index (paths->boxes, PdfBox, i);

      n += fabs (box->width - side) <= WITHIN && fabs (box->height - side) <= WITHIN;
    }
  return n;
}

static bool
is_level (const PdfLine *line)
{
  return fabs (line->y1 - line->y2) < 0.01;
}

/* The heavy level lines that mark a place on the shank, from the lowest up; returns how many. */
static size_t
find_marks (const PdfPaths *paths, double *y, size_t most)
{
  size_t n = 0;

  for (guint i = 0; i < paths->lines->len && n < most; i++)
    {
      const PdfLine *line = &g_array_index (paths->lines, PdfLine, i);

      if (is_level (line) && fabs (line->width - 1) < 1e-3 && !line->is_dashed)
        y[n++] = line->y1;
    }
  for (size_t i = 0; i + 1 < n; i++)
    for (size_t k = i + 1; k < n; k++)
      if (y[k] > y[i])
        {
          double other = y[i];

          y[i] = y[k];
          y[k] = other;
        }
  return n;
}

/* A sheet so large that the whole shank is on it. */
static void
test_attachments_of_the_template (void **state)
{
  LbSetup setup = setup_with_leaders (3);
  g_autofree char *path = output_path ("card-template.pdf");
  LbCardContents *contents;
  g_auto (PdfPaths) paths = { 0 };
  double y[8];
  int pages, sheets;

  setup.rig.shank_length = 0.4064; /* 16 in */
  for (size_t i = 0; i < 3; i++)
    setup.rig.leaders[i].attach_above_weight = 0.1 + 0.1016 * (double) i;
  contents = card_new (&setup, LB_UNITS_US, &card_plain_words);
  contents->card.size = LB_CARD_OWN_SIZE;
  contents->card.own_width = contents->card.own_height = LB_CARD_MOST_SIDE;
  contents->card.prints[LB_CARD_PART_TEMPLATE] = true;
  pages = write_pdf (contents, path, &sheets);
  assert_int_equal (sheets, pages + 1);
  paths = pdf_paths_read (path, sheets);
  assert_int_equal (count_squares (&paths, 72), 1);
  assert_int_equal (count_squares (&paths, 0.02 * PER_METRE), 1);
  assert_int_equal (find_marks (&paths, y, 8), 5);
  for (size_t i = 0; i < 3; i++)
    assert_near (y[0] - y[1 + i], setup.rig.leaders[i].attach_above_weight * PER_METRE, WITHIN);
  assert_near (y[0] - y[4], 0.4064 * PER_METRE, WITHIN);
  card_free (contents);
}

/* The heights of the dashed lines where sheets meet: lowest and highest of a page. */
static void
find_joints (const PdfPaths *paths, double *low, double *high)
{
  *low = -1;
  *high = 1e9;
  for (guint i = 0; i < paths->lines->len; i++)
    {
      const PdfLine *line = &g_array_index (paths->lines, PdfLine, i);

      if (line->is_dashed && is_level (line))
        {
          *low = fmax (*low, line->y1);
          *high = fmin (*high, line->y1);
        }
    }
}

/* Laid line on line the sheets come to the shank's length. */
static void
check_joined_length (LbCardSize size, double length)
{
  LbSetup setup = lb_setup_default ();
  g_autofree char *path = output_path ("card-joined.pdf");
  LbCardContents *contents;
  double total = 0;
  int pages, sheets;

  setup.rig.shank_length = length;
  contents = card_new (&setup, LB_UNITS_METRIC, &card_plain_words);
  contents->card.size = size;
  contents->card.prints[LB_CARD_PART_TEMPLATE] = true;
  pages = write_pdf (contents, path, &sheets);
  assert_true (sheets - pages >= 2);
  for (int i = pages; i < sheets; i++)
    {
      g_auto (PdfPaths) paths = pdf_paths_read (path, i + 1);
      double low, high, marks[8];
      size_t n = find_marks (&paths, marks, 8);

      find_joints (&paths, &low, &high);
      if (i == pages)
        low = marks[0];
      if (i + 1 == sheets)
        high = marks[n - 1];
      total += low - high;
    }
  assert_near (total, length * PER_METRE, WITHIN);
  card_free (contents);
}

static void
test_sheets_of_the_template_join (void **state)
{
  check_joined_length (LB_CARD_LETTER, 1.0);
  check_joined_length (LB_CARD_A4, 1.5);
  check_joined_length (LB_CARD_3X5, 0.8);
}

/* ---- The rig ---- */

/* Attachments are true to proportion along the shank, the one upright line of its width. */
static void
test_heights_of_the_rig_are_in_proportion (void **state)
{
  LbSetup setup = setup_with_leaders (4);
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);
  g_autofree char *path = output_path ("card-rig.pdf");
  g_auto (PdfPaths) paths = { 0 };
  const PdfLine *shank = NULL;
  int sheets;

  contents->card.size = LB_CARD_LETTER;
  write_pdf (contents, path, &sheets);
  paths = pdf_paths_read (path, 1);
  for (guint i = 0; i < paths.lines->len; i++)
    {
      const PdfLine *line = &g_array_index (paths.lines, PdfLine, i);

      if (fabs (line->width - 2) < 1e-3 && fabs (line->x1 - line->x2) < 0.01)
        shank = line;
    }
  assert_non_null (shank);
  for (size_t k = 0; k < 4; k++)
    {
      double share = setup.rig.leaders[k].attach_above_weight / setup.rig.shank_length;
      double wanted = shank->y2 + share * (shank->y1 - shank->y2), nearest = INFINITY;

      /* An extension line ends two points before the shank. */
      for (guint i = 0; i < paths.lines->len; i++)
        {
          const PdfLine *line = &g_array_index (paths.lines, PdfLine, i);

          if (is_level (line) && fabs (fmax (line->x1, line->x2) - (shank->x1 - 2)) < 0.1)
            nearest = fmin (nearest, fabs (line->y1 - wanted));
        }
      assert_near (nearest, 0, WITHIN);
    }
  card_free (contents);
}

/* ---- The gauge ---- */

/* Where two lines meet when they are drawn on. */
static void
meet (const PdfLine *a, const PdfLine *b, double *x, double *y)
{
  double ax = a->x2 - a->x1, ay = a->y2 - a->y1, bx = b->x2 - b->x1, by = b->y2 - b->y1;
  double t = ((b->x1 - a->x1) * by - (b->y1 - a->y1) * bx) / (ax * by - ay * bx);

  *x = a->x1 + t * ax;
  *y = a->y1 + t * ay;
}

static double
length_of (const PdfLine *line)
{
  return hypot (line->x2 - line->x1, line->y2 - line->y1);
}

/* The two straight edges: the longest lines that are neither level nor upright. */
static void
find_edges (const PdfPaths *paths, const PdfLine *edges[2])
{
  edges[0] = edges[1] = NULL;
  for (guint i = 0; i < paths->lines->len; i++)
    {
      const PdfLine *line = &g_array_index (paths->lines, PdfLine, i);

      if (is_level (line) || fabs (line->x1 - line->x2) < 0.01)
        continue;
      if (!edges[0] || length_of (line) > length_of (edges[0]) + 0.01)
        edges[0] = line;
      else if (!edges[1] || length_of (line) > length_of (edges[1]))
        edges[1] = line;
    }
}

/* How far, on paper, the nearest line that points at (x, y) is from pointing there at `angle` from
 * straight down, measured at the line's far end. */
static double
off_at_angle (const PdfPaths *paths, double x, double y, double angle, double width)
{
  double nearest = INFINITY;

  for (guint i = 0; i < paths->lines->len; i++)
    {
      const PdfLine *line = &g_array_index (paths->lines, PdfLine, i);
      double r1 = hypot (line->x1 - x, line->y1 - y), r2 = hypot (line->x2 - x, line->y2 - y);
      double a1 = atan2 (line->x1 - x, line->y1 - y), a2 = atan2 (line->x2 - x, line->y2 - y);

      if (fabs (line->width - width) < 1e-3 && length_of (line) < 20 && r1 > 20 && r2 > 20)
        nearest = fmin (nearest, fmax (r1, r2) * fmax (fabs (a1 - angle), fabs (a2 - angle)));
    }
  return nearest;
}

static void
test_angles_of_the_gauge (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);
  g_autofree char *path = output_path ("card-gauge.pdf");
  const PdfLine *edges[2];
  int sheets;

  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    contents->card.prints[i] = false;
  contents->card.size = LB_CARD_A4;
  write_pdf (contents, path, &sheets);
  for (int sheet = 1; sheet <= sheets; sheet++)
    {
      g_auto (PdfPaths) paths = pdf_paths_read (path, sheet);
      double x, y;

      find_edges (&paths, edges);
      if (!edges[1] || length_of (edges[0]) < 80)
        continue;
      meet (edges[0], edges[1], &x, &y);
      for (int degrees = -55; degrees <= 55; degrees++)
        assert_near (
            off_at_angle (&paths, x, y, degrees * G_PI / 180, degrees % 5 == 0 ? 0.6 : 0.35), 0,
            WITHIN);
      for (size_t i = 0; i < contents->gauge.n_ticks; i++)
        assert_near (off_at_angle (&paths, x, y, contents->gauge.ticks[i].angle,
                                   contents->gauge.ticks[i].major ? 0.9 : 0.4),
                     0, WITHIN);
      card_free (contents);
      return;
    }
  fail_msg ("there is no gauge");
}

/* ---- Cutting ---- */

static int
compare_numbers (const void *a, const void *b)
{
  const double *p = a, *q = b;

  return (*p > *q) - (*p < *q);
}

/* The places of the dotted lines to cut along, across or down the sheet, in order. */
static size_t
find_cuts (const PdfPaths *paths, bool level, double *at, size_t most)
{
  size_t n = 0;

  for (guint i = 0; i < paths->lines->len && n < most; i++)
    {
      const PdfLine *line = &g_array_index (paths->lines, PdfLine, i);

      if (line->is_dashed && is_level (line) == level && length_of (line) > 300)
        at[n++] = level ? line->y1 : line->x1;
    }
  qsort (at, n, sizeof *at, compare_numbers);
  return n;
}

/* Four cards of 3 x 5 in to a sheet of 8.5 x 11 in, in its middle. */
static void
test_cards_are_cut_to_size (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);
  g_autofree char *path = output_path ("card-cuts.pdf");
  g_auto (PdfPaths) paths = { 0 };
  double x[8], y[8];
  int sheets;

  contents->card.size = LB_CARD_3X5;
  contents->card.sheet = LB_CARD_SHEET_LETTER;
  contents->card.several = true;
  contents->card.prints[LB_CARD_PART_RUNNING] = false; /* has dashed lines of its own */
  write_pdf (contents, path, &sheets);
  paths = pdf_paths_read (path, 1);
  assert_int_equal (find_cuts (&paths, false, x, 8), 3);
  assert_int_equal (find_cuts (&paths, true, y, 8), 3);
  for (int i = 0; i < 3; i++)
    {
      assert_near (x[i], 8.5 * 36 + (i - 1) * 3 * 72.0, WITHIN);
      assert_near (y[i], 11 * 36 + (i - 1) * 5 * 72.0, WITHIN);
    }
  card_free (contents);
}

/* ---- In pixels ---- */

/* The longest dark run of a row; where it starts. */
static int
longest_run (const PdfPixels *pixels, int row, int from, int *start)
{
  int best = 0, run = 0;

  for (int x = from; x < pixels->width; x++)
    {
      run = pixels->grey[row * pixels->width + x] < 128 ? run + 1 : 0;
      if (run > best)
        {
          best = run;
          *start = x - run + 1;
        }
    }
  return best;
}

/* Looks for a square of `side` mm as someone with a ruler would: its upper and lower edges. */
static void
measure_square (const PdfPixels *pixels, double side)
{
  double wanted = side / 25.4 * DPI, allowed = 0.2 / 25.4 * DPI;
  int first = -1, last = -1;

  for (int row = 0; row < pixels->height; row++)
    {
      /* To the right of the rules, where nothing else is as long. */
      int start, run = longest_run (pixels, row, pixels->width * 2 / 3, &start);

      if (fabs (run - wanted) > 6)
        continue;
      first = first < 0 ? row : first;
      last = row;
    }
  assert_true (first >= 0);
  /* From the middle of one edge, half a point wide, to that of the other. */
  assert_near (last - first - 0.5 / 72 * DPI + 1, wanted, allowed + 0.5);
}

static void
test_true_size_in_pixels (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbCardContents *contents = card_new (&setup, LB_UNITS_US, &card_plain_words);
  g_autofree char *path = output_path ("card-raster.pdf");
  int pages, sheets;
  PdfPixels pixels;

  contents->card.size = LB_CARD_LETTER;
  contents->card.prints[LB_CARD_PART_TEMPLATE] = true;
  pages = write_pdf (contents, path, &sheets);
  pixels = pdf_pixels_read (path, pages + 1, DPI);
  assert_int_equal (pixels.width, 2550);
  assert_int_equal (pixels.height, 3300);
  measure_square (&pixels, 25.4);
  measure_square (&pixels, 20);
  pdf_pixels_clear (&pixels);
  card_free (contents);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_attachments_of_the_template),
    cmocka_unit_test (test_sheets_of_the_template_join),
    cmocka_unit_test (test_heights_of_the_rig_are_in_proportion),
    cmocka_unit_test (test_angles_of_the_gauge),
    cmocka_unit_test (test_cards_are_cut_to_size),
    cmocka_unit_test (test_true_size_in_pixels),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
