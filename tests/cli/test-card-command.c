/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli card": files that are right, and what it refuses. */
#include "cli-run.h"

#include <glib/gstdio.h>
#include <string.h>

/* Puts what a program of poppler-utils prints into `out`; skips the test where it is missing. */
static void
ask (const char *program, const char *path, const char *more, char **out)
{
  const char *arguments[] = { program, path, more, NULL };
  g_autofree char *found = g_find_program_in_path (program);

  if (!found)
    skip ();
  assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, out,
                             NULL, NULL, NULL));
}

static void
check_page_size (const char *path, double width, double height)
{
  g_autofree char *information = NULL;
  const char *size;
  double w = 0, h = 0;

  ask ("pdfinfo", path, NULL, &information);
  size = strstr (information, "Page size:");
  assert_non_null (size);
  assert_int_equal (sscanf (size, "Page size: %lf x %lf", &w, &h), 2);
  assert_near (w * 25.4 / 72, width, 0.01);
  assert_near (h * 25.4 / 72, height, 0.01);
}

/* Inches of 25.4 mm; ISO 216 for A6 (from memory). */
static void
cards_have_their_size (void **state)
{
  static const struct
  {
    const char *size, *way;
    double width, height; /* mm */
  } cases[] = {
    { "4x6in", "--upright", 101.6, 152.4 },       { "4x6-in", "--across", 152.4, 101.6 },
    { "3x5in", "--across", 127, 76.2 },           { "A6", "--upright", 105, 148 },
    { "Half-Letter", "--upright", 139.7, 215.9 }, { "100x70mm", "--upright", 100, 70 },
    { "10,5 x 7 cm", "--across", 105, 70 },       { "3.5x5in", "--upright", 88.9, 127 },
  };
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *path = output ("cli-card.pdf");

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Run) made = run ("card", file, "-o", path, "--size", cases[i].size, cases[i].way);

      if (made.status != 0)
        fail_msg ("%s: %s", cases[i].size, made.err);
      assert_string_equal (made.out, "");
      assert_string_equal (made.err, "");
      check_page_size (path, cases[i].width, cases[i].height);
    }
}

/* The day is the one that was asked for, and the same card is the same file. */
static void
the_same_day_gives_the_same_file (void **state)
{
  static const char *const names[] = { "cli-card-1.pdf", "cli-card-2.pdf" };
  g_autofree char *file = sample ("three-leaders.rig");
  g_autofree char *text = NULL;
  g_autofree char *first = output (names[0]);
  g_autofree char *second = output (names[1]);
  const char *const paths[] = { first, second };
  char *data[2];
  gsize lengths[2];

  for (int i = 0; i < 2; i++)
    {
      g_auto (Run) made = run ("card", file, "-o", paths[i], "--date", "2026-01-31", "--weights",
                               "1 lb; 2 lb", "--units", "us");

      assert_int_equal (made.status, 0);
      assert_true (g_file_get_contents (paths[i], &data[i], &lengths[i], NULL));
    }
  assert_int_equal (lengths[0], lengths[1]);
  assert_memory_equal (data[0], data[1], lengths[0]);
  g_free (data[0]);
  g_free (data[1]);
  ask ("pdftotext", paths[0], "-", &text);
  assert_contains (text, "2026");
  assert_contains (text, "Never wrap the wire");
  assert_contains (text, "Local rules");
  assert_contains (text, "1 lb");
  assert_contains (text, "2 lb");
}

static void
pictures_take_a_file_a_sheet (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *path = output ("cli-card.png"), *first = output ("cli-card-1.png");
  g_auto (Run) made =
      run ("card", file, "-o", path, "--size", "3x5in", "--upright", "--resolution", "100");
  g_autofree char *data = NULL;
  gsize length;

  assert_int_equal (made.status, 0);
  assert_true (g_file_get_contents (first, &data, &length, NULL));
  /* IHDR: width and height, big end first (PNG specification 11.2.1): 300 x 500. */
  assert_memory_equal (data + 16, "\0\0\1\x2c\0\0\1\xf4", 8);
}

static void
what_is_left_out_is_told (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *path = output ("cli-card-one.pdf");
  g_auto (Run) made = run ("card", file, "-o", path, "--size", "3x5in", "--pages", "1");
  g_autofree char *text = NULL;

  assert_int_equal (made.status, 0);
  assert_contains (made.err, "layback-cli: left out for want of room: ");
  ask ("pdftotext", path, "-", &text);
  assert_contains (text, "Never wrap the wire");
  assert_contains (text, "Local rules");
}

/* A file that asks for its variants in the running diagram has their names there. */
static void
variants_are_drawn_over_one_another (void **state)
{
  static const char variants[] =
      "\"variants\": [{ \"name\": \"One pound\", \"set\": { \"weight.mass_kg\": 0.4536 } },"
      " { \"name\": \"Two pounds\", \"set\": { \"weight.mass_kg\": 0.9072 } }],"
      " \"card\": { \"running\": \"variants\" }, ";
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *with = output ("cli-card-variants.rig");
  g_autofree char *path = output ("cli-card-variants.pdf");
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *data = NULL;
  g_autofree char *said = NULL;

  assert_true (g_file_get_contents (file, &data, NULL, NULL));
  g_string_assign (text, data);
  g_string_insert (text, strchr (data, '"') - data, variants);
  assert_true (g_file_set_contents (with, text->str, -1, NULL));
  {
    g_auto (Run) made = run ("card", with, "-o", path, "--size", "letter");

    assert_string_equal (made.err, "");
    assert_int_equal (made.status, 0);
  }
  ask ("pdftotext", path, "-", &said);
  assert_contains (said, "One pound");
  assert_contains (said, "Two pounds");
}

static void
wrong_use_is_told_exactly (void **state)
{
  static const struct
  {
    const char *option, *value, *message;
  } cases[] = {
    { "--size", "b5",
      "--size: found \"b5\", expected 3x5-in, 4x6-in, half-letter, letter, a6, a5, a4, or a size "
      "of "
      "your own as 100x70mm, with sides from 50 to 600 mm" },
    { "--size", "40x100mm",
      "--size: found \"40x100mm\", expected 3x5-in, 4x6-in, half-letter, letter, a6, a5, a4, or a "
      "size of your own as 100x70mm, with sides from 50 to 600 mm" },
    { "--sheet", "b4", "--sheet: found \"b4\", expected \"as-card\", \"letter\" or \"a4\"" },
    { "--resolution", "35", "--resolution: found 35, expected 36 to 1200 pixels to the inch" },
    { "--pages", "-1", "--pages: found -1, expected 1 or more" },
    { "--date", "2026-02-30", "--date: found \"2026-02-30\", expected a day as 2026-01-31" },
    { "--date", "tomorrow", "--date: found \"tomorrow\", expected a day as 2026-01-31" },
    { "--units", "miles", "--units: found \"miles\", expected \"us\" or \"metric\"" },
  };
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *path = output ("cli-card-never.pdf");
  g_auto (Run) none = run ("card", file);
  g_auto (Run) ending = run ("card", file, "-o", "card.bmp");
  g_auto (Run) both = run ("card", file, "-o", path, "--across", "--upright");

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Run) refused = run ("card", file, "-o", path, cases[i].option, cases[i].value);

      assert_refused (&refused, 2, cases[i].message);
    }
  assert_refused (&none, 2, "card: no output file given (-o OUT.pdf)");
  assert_refused (&ending, 2,
                  "card.bmp: the ending names no kind of picture; expected .png, .svg or .pdf");
  assert_refused (&both, 2, "--across and --upright cannot both be");
  assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
what_cannot_be_written_is_told (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_autofree char *in_the_way = output ("cli-in-the-way");
  g_autofree char *path = g_build_filename (in_the_way, "card.pdf", NULL);

  assert_true (g_file_set_contents (in_the_way, "x", 1, NULL));
  {
    g_auto (Run) refused = run ("card", file, "-o", path);

    assert_int_equal (refused.status, 1);
    assert_contains (refused.err, path);
    assert_contains (refused.err, "cannot be written");
  }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (cards_have_their_size),
    cmocka_unit_test (the_same_day_gives_the_same_file),
    cmocka_unit_test (pictures_take_a_file_a_sheet),
    cmocka_unit_test (what_is_left_out_is_told),
    cmocka_unit_test (variants_are_drawn_over_one_another),
    cmocka_unit_test (wrong_use_is_told_exactly),
    cmocka_unit_test (what_cannot_be_written_is_told),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
