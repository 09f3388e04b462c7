/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model-support.h"

#include <string.h>

#include "data_path.h"
#include "reader.h"

static char *
path_below (const char *variable, const char *name)
{
  const char *folder = getenv (variable);

  assert_non_null (folder);
  return g_build_filename (folder, name, NULL);
}

char *
source_path (const char *name)
{
  return path_below ("LB_TEST_SOURCE_DIR", name);
}

char *
output_path (const char *name)
{
  return path_below ("LB_TEST_OUTPUT_DIR", name);
}

static int
compare_names (const void *a, const void *b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

char **
files_in (const char *folder, const char *ending)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  const char *name;

  assert_non_null (dir);
  while ((name = g_dir_read_name (dir)))
    if (g_str_has_suffix (name, ending))
      g_ptr_array_add (names, g_strdup (name));
  assert_true (names->len > 0);
  qsort (names->pdata, names->len, sizeof (char *), compare_names);
  g_ptr_array_add (names, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&names), FALSE);
}

char *
read_whole (const char *path, gsize *length)
{
  char *text = NULL;

  if (!g_file_get_contents (path, &text, length, NULL))
    fail_msg ("%s cannot be read", path);
  return text;
}

LbContents *
read_sample (const char *name)
{
  g_autofree char *path = lb_sample_path (name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  LbContents *contents = lb_contents_new ();

  if (!lb_reader_load (file, contents, &error))
    fail_msg ("%s", error->message);
  return contents;
}

double
random_value (TestRandom *random, const LbField *field)
{
  double kind = test_random (random, 0, 1);

  if (field->kind == LB_FIELD_CHOICE)
    return field->choices[(size_t) test_random (random, 0, (double) field->n_choices)].value;
  if (field->nullable && kind < 0.2)
    return LB_UNSET;
  if (kind < 0.25)
    return field->minimum;
  if (kind < 0.3)
    return field->maximum;
  return lb_field_clamp (field, test_random (random, field->minimum, field->maximum));
}

static void
random_points (TestRandom *random, double *a, double *b, size_t n, double top)
{
  for (size_t i = 0; i < n; i++)
    {
      a[i] = ((double) i + test_random (random, 0.01, 0.99)) / (double) n;
      b[i] = test_random (random, 0.1, top);
    }
}

static void
random_words (TestRandom *random, bool one_line, char **text)
{
  static const char *const pieces[] = { "Stony Bend", " ",   "\"", "\\", "ø",    "川",  "🎣",
                                        "/",          "1.5", "\n", "\t", "\x01", "\x7f" };
  size_t n_pieces = G_N_ELEMENTS (pieces) - (one_line ? 4 : 0);
  size_t n = (size_t) test_random (random, 0, 8);
  GString *words = g_string_new (NULL);

  for (size_t i = 0; i < n; i++)
    g_string_append (words, pieces[(size_t) test_random (random, 0, (double) n_pieces)]);
  g_free (*text);
  *text = g_string_free (words, FALSE);
}

/* What hangs together: attachments on the shank, the band's low side below its high side. */
static void
mend_order (LbSetup *setup)
{
  for (size_t i = 0; i < setup->rig.n_leaders; i++)
    setup->rig.leaders[i].attach_above_weight =
        fmin (setup->rig.leaders[i].attach_above_weight, setup->rig.shank_length);
  if (setup->band.low >= setup->band.high)
    setup->band = (LbBand){ setup->band.high * 0.5, setup->band.low + 0.1 };
  setup->band.high = fmin (setup->band.high, 100);
  setup->band.low = fmin (setup->band.low, 99);
}

static void
random_variants (TestRandom *random, LbVariants *variants)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  *variants = (LbVariants){ .n = (size_t) test_random (random, 0, LB_MAX_VARIANTS + 1) };
  for (size_t i = 0; i < variants->n; i++)
    {
      size_t n = (size_t) test_random (random, 0, LB_MAX_OVERRIDES + 4);
      LbVariants before = { .n = i };

      memcpy (before.list, variants->list, i * sizeof before.list[0]);
      lb_variant_set_new_name (&variants->list[i], &before, "2 lb 川");
      for (size_t j = 0; j < n; j++)
        {
          const LbField *field = &fields[(size_t) test_random (random, 0, (double) n_fields)];

          lb_variant_set (&variants->list[i], field,
                          field->stride ? (size_t) test_random (random, 0, LB_MAX_LEADERS) : 0,
                          random_value (random, field));
        }
    }
}

/* ---- Cards ---- */

static int
below (TestRandom *random, int n)
{
  return (int) test_random (random, 0, n);
}

static void
random_card_words (TestRandom *random, LbCardWords *words)
{
  char *text = NULL;

  random_words (random, true, &text);
  lb_card_words_set (words, text);
  g_free (text);
}

static void
random_series (TestRandom *random, LbCardSeriesOf of, LbCardSeries *series)
{
  series->kind = (LbCardSeriesKind) below (random, 3);
  series->from = test_random (random, 0, 7);
  series->to = test_random (random, 0, 7);
  series->step = test_random (random, 0, 2);
  series->n = (size_t) below (random, LB_CARD_MOST_VALUES + 1);
  for (size_t i = 0; i < series->n; i++)
    series->values[i] = test_random (random, 0, 7);
}

void
random_card (TestRandom *random, LbCard *card)
{
  *card = lb_card_default ();
  if (below (random, 4) == 0)
    return;
  card->size = (LbCardSize) below (random, LB_N_CARD_SIZES);
  card->own_width = test_random (random, 0, 1);
  card->own_height = test_random (random, 0, 1);
  card->wide = below (random, 2);
  card->sheet = (LbCardSheet) below (random, LB_N_CARD_SHEETS);
  card->several = below (random, 2);
  card->running_variants = below (random, 2);
  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    card->prints[i] = below (random, 2);
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    {
      random_card_words (random, &card->terminations[i].how);
      card->terminations[i].allowance = test_random (random, -1, 3);
    }
  card->n_hardware = (size_t) below (random, LB_CARD_MOST_HARDWARE + 1);
  for (size_t i = 0; i < card->n_hardware; i++)
    {
      card->hardware[i].count = below (random, 200);
      random_card_words (random, &card->hardware[i].what);
    }
  for (int i = 0; i < LB_N_CARD_SERIES; i++)
    random_series (random, (LbCardSeriesOf) i, &card->series[i]);
  card->dated_today = below (random, 2);
  random_card_words (random, &card->date);
  lb_card_mend (card);
}

void
random_contents (TestRandom *random, LbContents *contents)
{
  LbSetup *setup = &contents->setup;
  LbProfile *profile = &setup->river.profile;
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  setup->rig.n_leaders = (size_t) test_random (random, 0, LB_MAX_LEADERS + 1);
  for (size_t i = 0; i < n_fields; i++)
    for (size_t leader = 0; leader < (fields[i].stride ? setup->rig.n_leaders : 1); leader++)
      if (lb_field_applies (&fields[i], setup))
        lb_field_set (&fields[i], setup, leader, random_value (random, &fields[i]));
  setup->river.n_bed_points =
      test_random (random, 0, 1) < 0.5 ? 0 : (size_t) test_random (random, 2, 40);
  random_points (random, setup->river.bed_x, setup->river.bed_depth, setup->river.n_bed_points,
                 100);
  profile->n_points = (size_t) test_random (random, 2, LB_MAX_PROFILE_POINTS + 1);
  random_points (random, profile->height_fraction, profile->speed_fraction, profile->n_points, 2);
  mend_order (setup);
  random_words (random, true, &contents->title);
  random_words (random, false, &contents->notes);
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    random_words (random, true, &contents->lure_names[i]);
  random_variants (random, &contents->variants);
  random_card (random, &contents->card);
}

void
assert_same_contents (const LbContents *found, const LbContents *expected)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  assert_string_equal (found->title, expected->title);
  assert_string_equal (found->notes, expected->notes);
  assert_int_equal (found->setup.rig.n_leaders, expected->setup.rig.n_leaders);
  for (size_t i = 0; i < n_fields; i++)
    for (size_t leader = 0; leader < (fields[i].stride ? found->setup.rig.n_leaders : 1); leader++)
      {
        double a = lb_field_get (&fields[i], &found->setup, leader);
        double b = lb_field_get (&fields[i], &expected->setup, leader);
        if (lb_field_applies (&fields[i], &expected->setup) && !(isnan (a) && isnan (b)) && a != b)
          fail_msg ("%s of leader %zu: found %.17g, expected %.17g", fields[i].path, leader, a, b);
      }
  assert_true (lb_contents_equal (found, expected));
}
