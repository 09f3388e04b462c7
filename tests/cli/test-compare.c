/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "layback-cli compare": what it prints, in words and as numbers, and what it refuses. */
#include "cli-run.h"

#include <string.h>

static void
weights_are_compared_in_a_table (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) us = run ("compare", file, "--weights", "2 lb; 1 lb", "--units", "us");
  g_auto (Run) metric = run ("compare", "--weights=0.5 kg;1", "--units=metric", file);
  static const char *const parts[] = { "Brackle River, Stony Bend",
                                       "1 lb: wire ",
                                       "2 lb: wire ",
                                       " steeper, ",
                                       " less line, ",
                                       " lbf in the hand, both",
                                       "Weight: 2 lb",
                                       "\nWire angle ",
                                       "\nUpper lure off the bed ",
                                       "Never wrap the wire",
                                       "Local rules" };
  const char *light = NULL, *heavy = NULL;

  assert_int_equal (us.status, 0);
  assert_string_equal (us.err, "");
  for (size_t i = 0; i < G_N_ELEMENTS (parts); i++)
    assert_contains (us.out, parts[i]);
  light = strstr (us.out, "1 lb: ");
  heavy = strstr (us.out, "2 lb: ");
  assert_true (light < heavy);
  assert_int_equal (metric.status, 0);
  assert_contains (metric.out, "1 kg: ");
  assert_null (strstr (metric.out, " lbf"));
}

/* The numbers of each variant are those that "run --set" has for it. */
static void
json_agrees_with_single_runs (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) both = run ("compare", file, "--json", "--variant", "light", "--variant",
                           "heavy: weight.mass_kg=1.2, leaders.1.length_m=5");
  g_auto (Run) light = run ("run", file, "--json");
  g_auto (Run) heavy =
      run ("run", file, "--json", "--set", "weight.mass_kg=1.2", "--set", "leaders[1].length_m=5");
  g_autoptr (JsonNode) both_node = parse (both.out);
  g_autoptr (JsonNode) light_node = parse (light.out);
  g_autoptr (JsonNode) heavy_node = parse (heavy.out);
  JsonArray *list = json_object_get_array_member (json_node_get_object (both_node), "variants");
  JsonObject *first = json_array_get_object_element (list, 0);
  JsonObject *second = json_array_get_object_element (list, 1);
  JsonObject *difference = json_object_get_object_member (second, "difference");
  double out_light = number (json_node_get_object (light_node), "line_out_m");
  double out_heavy = number (json_node_get_object (heavy_node), "line_out_m");

  assert_int_equal (both.status, 0);
  assert_int_equal (json_array_get_length (list), 2);
  assert_string_equal (json_object_get_string_member (second, "name"), "heavy");
  assert_true (json_object_get_null_member (second, "remark"));
  assert_near (number (json_object_get_object_member (second, "set"), "leaders[1].length_m"), 5, 0);
  assert_near (number (first, "line_out_m"), out_light, 1e-9);
  assert_near (number (second, "line_out_m"), out_heavy, 1e-9);
  assert_near (number (difference, "line_out_m"), out_heavy - out_light, 1e-9);
  assert_true (number (difference, "wire_angle_deg") < 0);
  assert_false (json_object_has_member (first, "difference"));
}

/* What stands in the file is compared when nothing else is asked for. */
static void
variants_of_the_file_are_compared (void **state)
{
  g_autofree char *file =
      g_build_filename (getenv ("LB_TEST_SOURCE_DIR"), "good", "variants.rig", NULL);
  g_auto (Run) all = run ("compare", file, "--units", "us");
  g_auto (Run) one = run ("compare", file, "--variant", "deep: river.depth_m=8", "--units", "us");

  /* The rig of this file has no leaders at all, and two variants replace something of one. */
  assert_int_equal (all.status, 1);
  assert_string_equal (
      all.err, "layback-cli: 2 lb 川: The rig has no leader 2, which this variant changes.\n"
               "layback-cli: held: The rig has no leader 1, which this variant changes.\n");
  assert_contains (all.out, "As it is: ");
  assert_contains (all.out, "2 lb 川: The rig has no leader 2");
  assert_contains (all.out, "rough: wire");
  assert_int_equal (one.status, 0);
  assert_contains (one.out, "As it is: ");
  assert_contains (one.out, " more line");
}

static void
a_remark_is_printed (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) high = run ("compare", file, "--variant", "fine", "--variant",
                           "high: mainline.line_out.weight_above_bed_m=50");

  assert_int_equal (high.status, 0);
  assert_contains (high.out, "The weight cannot be held as high as");
}

static void
drawings_are_written (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  static const char *const names[] = { "compared.png", "compared.svg", "compared.pdf" };

  for (size_t i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = output (names[i]);
      g_autofree char *bytes = NULL;
      gsize length;
      g_auto (Run) drawn =
          run ("compare", file, "--weights=1 lb; 2 lb", "-o", path, "--size=960x600", "--dark");

      assert_int_equal (drawn.status, 0);
      assert_string_equal (drawn.out, "");
      assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      assert_true (length > 5000);
    }
}

static void
wrong_uses_are_explained (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  static const struct
  {
    const char *option, *message;
  } cases[] = {
    { "--weights=1 lb; 2 ft", "--weights: “2 ft”: this unit measures something else; write it like "
                              "“1¾ lb”." },
    { "--weights=1,2", "--weights: “1,2” may be one weight or several: write semicolons between "
                       "weights, as in “1 lb; 2 lb”, and a point for decimals." },
    { "--weights=1 1/4 lb,2 lb",
      "--weights: “1 1/4 lb,2 lb” may be one weight or several: write semicolons between weights, "
      "as in “1 lb; 2 lb”, and a point for decimals." },
    { "--weights=1 1/4 lb; 2 lbb", "--weights: “2 lbb”: this unit is not known; write it like "
                                   "“1¾ lb”." },
    { "--weights=", "--weights: found 0 weights, expected 1 to 4" },
    { "--weights=1;2;3;4;5", "--weights: found 5 weights, expected 1 to 4" },
    { "--weights=90 lb", "--weights: “90 lb” is no weight from 0.02 lb to 44.09 lb." },
    { "--variant=a: weight.colour=1", "--variant: a.set: unknown key \"weight.colour\", expected "
                                      "the path of a value, as \"weight.mass_kg\"" },
    { "--variant=a: weight.mass_kg=99",
      "--variant: a.set.weight.mass_kg: found 99, expected a number from 0.01 to 20" },
    { "--variant=a: weight.mass_kg=2 lb",
      "--variant: a.set.weight.mass_kg: found the text \"2 lb\", expected a number from 0.01 to "
      "20" },
    { "--variant=a: weight.mass_kg", "--variant: weight.mass_kg: expected key=value" },
    { "--variant=a: =1", "--variant: =1: expected key=value" },
    { "--variant=a: leaders.0.length_m=2, leaders[0].length_m=3",
      "--variant: leaders[0].length_m: found twice" },
    { "--variant=: weight.mass_kg=1", "--variant: .name: found the text \"\", expected one line of "
                                      "text of 1 to 40 characters" },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Run) wrong = run ("compare", file, cases[i].option, "--units=us");

      assert_refused (&wrong, 2, cases[i].message);
    }
}

static void
wrong_combinations_are_refused (void **state)
{
  g_autofree char *file = sample ("spring-run.rig");
  g_auto (Run) none = run ("compare", file);
  g_auto (Run) both = run ("compare", file, "--weights=1 lb", "--variant=a");
  g_auto (Run) twice = run ("compare", file, "--variant=a", "--variant=a");
  g_auto (Run) five = run ("compare", file, "--variant=a", "--variant=b", "--variant=c",
                           "--variant=d", "--variant=e");
  g_auto (Run) odd = run ("compare", file, "--variant=a", "-o", "x.bmp");
  g_auto (Run) two = run ("compare", file, "--variant=a", "-o", "x.png", "--json");
  g_auto (Run) gone = run ("compare", "/nowhere/no.rig", "--variant=a");

  assert_refused (&odd, 2,
                  "x.bmp: the ending names no kind of picture; expected .png, .svg or "
                  ".pdf");
  assert_refused (&two, 2, "compare: --json and --output exclude one another");
  assert_refused (&none, 2, "compare: the file holds no variants; give --weights or --variant");
  assert_refused (&both, 2, "compare: --weights and --variant exclude one another");
  assert_refused (
      &twice, 2,
      "--variant: a.name: found the text \"a\", expected a name that no variant before has");
  assert_refused (&five, 2, "--variant: found 5 variants, expected at most 4");
  assert_int_equal (gone.status, 1);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (weights_are_compared_in_a_table),
    cmocka_unit_test (json_agrees_with_single_runs),
    cmocka_unit_test (variants_of_the_file_are_compared),
    cmocka_unit_test (a_remark_is_printed),
    cmocka_unit_test (drawings_are_written),
    cmocka_unit_test (wrong_uses_are_explained),
    cmocka_unit_test (wrong_combinations_are_refused),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
