/* SPDX-License-Identifier: GPL-3.0-or-later */
/* "key=value": every key of a rig file can be set, with the reader's checks. */
#include "model-support.h"

#include "reader.h"

static void
check_set (LbContents *contents, const char *path, const char *value)
{
  g_autoptr (GError) error = NULL;

  if (!lb_reader_set (contents, path, value, &error))
    fail_msg ("%s=%s: %s", path, value, error->message);
}

static void
every_field_can_be_set (void **state)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);
  TestRandom random = { 5 };

  for (size_t i = 0; i < n_fields; i++)
    {
      g_autoptr (LbContents) contents = read_sample ("three-leaders.rig");
      g_autofree char *path = lb_field_full_path (&fields[i], 1);
      char value[64];
      double number =
          lb_field_clamp (&fields[i], test_random (&random, fields[i].minimum, fields[i].maximum));

      /* Values that the others of the sample allow. */
      if (g_str_equal (path, "mainline.line_out"))
        continue;
      if (g_str_equal (path, "river.profile.bed_material")
          || g_str_equal (path, "river.profile.roughness_m"))
        check_set (contents, "river.profile.law", "log");
      if (g_str_equal (path, "shank.length_m") || g_str_equal (path, "band.high_m"))
        number = fields[i].maximum;
      if (g_str_equal (path, "leaders[1].attach_above_weight_m")
          || g_str_equal (path, "band.low_m"))
        number = fields[i].minimum;
      if (fields[i].kind == LB_FIELD_CHOICE)
        number = fields[i].choices[1].value;
      if (fields[i].kind == LB_FIELD_CHOICE)
        check_set (contents, path, fields[i].choices[1].name);
      else
        check_set (contents, path, g_ascii_dtostr (value, sizeof value, number));
      assert_true (lb_field_get (&fields[i], &contents->setup, 1) == number);
    }
}

static void
other_keys_can_be_set (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("three-leaders.rig");

  check_set (contents, "title", "2");
  assert_string_equal (contents->title, "2");
  check_set (contents, "title", "\"a \\u00f8\"");
  assert_string_equal (contents->title, "a ø");
  check_set (contents, "notes", "x=y");
  assert_string_equal (contents->notes, "x=y");
  check_set (contents, "leaders[2].lure.name", "blue one");
  assert_string_equal (contents->lure_names[2], "blue one");
  check_set (contents, "leaders.0.lure.name", "true");
  assert_string_equal (contents->lure_names[0], "true");
  check_set (contents, "river.bed", "[[0, 5], [10, 7.5]]");
  assert_int_equal (contents->setup.river.n_bed_points, 2);
  check_set (contents, "river.bed[1][1]", "8");
  assert_true (contents->setup.river.bed_depth[1] == 8);
  check_set (contents, "river.density_kg_m3", "null");
  assert_false (lb_is_set (contents->setup.river.density));
  check_set (contents, "leaders", "[]");
  assert_int_equal (contents->setup.rig.n_leaders, 0);
  check_set (contents, "band", "{\"low_m\": 0.2, \"high_m\": 0.3}");
  assert_true (contents->setup.band.low == 0.2);
}

static void
choices_make_room (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  const LbSetup *setup = &contents->setup;

  check_set (contents, "mainline.line_out.given_m", "6");
  assert_int_equal (setup->rig.line_out.mode, LB_LINE_OUT_GIVEN);
  check_set (contents, "mainline.line_out.touching", "true");
  assert_int_equal (setup->rig.line_out.mode, LB_LINE_OUT_TOUCHING);
  check_set (contents, "mainline.line_out", "{\"weight_above_bed_m\": 0.2}");
  assert_true (setup->rig.line_out.value == 0.2);
  check_set (contents, "river.profile.law", "log");
  check_set (contents, "river.profile.roughness_m", "0.2");
  assert_int_equal (setup->river.profile.material, LB_BED_MATERIAL_NONE);
  check_set (contents, "river.profile.bed_material", "sand");
  assert_int_equal (setup->river.profile.material, LB_BED_MATERIAL_SAND);
  check_set (contents, "river.profile.law", "uniform");
  check_set (contents, "river.profile.law", "power");
  assert_true (setup->river.profile.exponent == lb_setup_default ().river.profile.exponent);
}

static void
several_are_checked_together (void **state)
{
  static const char *const swap[] = { "band.low_m=1", "band.high_m=2", NULL };
  static const char *const half[] = { "river.depth_m=5", "band.low_m=1", NULL };
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  g_autoptr (LbContents) before = NULL;
  g_autoptr (GError) error = NULL;

  assert_true (lb_reader_set_all (contents, swap, NULL));
  assert_true (contents->setup.band.low == 1 && contents->setup.band.high == 2);
  assert_true (lb_reader_set_all (contents, NULL, NULL));
  check_set (contents, "band.low_m", "0.1");
  check_set (contents, "band.high_m", "0.5");
  before = lb_contents_dup (contents);
  assert_false (lb_reader_set_all (contents, half, &error));
  assert_same_contents (contents, before);
}

static void
wrong_changes_are_refused (void **state)
{
  static const struct
  {
    const char *path, *value, *message;
  } cases[] = {
    { "river.depth_m", "-3", "river.depth_m: found -3, expected a number from 0.1 to 100" },
    { "river.depth_m", "deep",
      "river.depth_m: found the text \"deep\", expected a number from 0.1 to 100" },
    { "river.depth_m", "",
      "river.depth_m: found the text \"\", expected a number from 0.1 to 100" },
    { "river.depth_m", "6,5",
      "river.depth_m: found the text \"6,5\", expected a number from 0.1 to 100" },
    { "river.depth_m", "1e999",
      "river.depth_m: found the text \"1e999\", expected a number from 0.1 to 100" },
    { "weight.shape", "cube",
      "weight.shape: found the text \"cube\", expected \"ball\", \"pear\", \"torpedo\" or "
      "\"disc\"" },
    { "river.depth.m", "3", "river.depth.m: there is no such key in this rig" },
    { "leaders[5].length_m", "3", "leaders[5].length_m: there is no such key in this rig" },
    { "leaders[2]", "{}", "leaders[2]: there is no such key in this rig" },
    { "leaders[0]", "5", "leaders[0]: found 5, expected an object" },
    { "weight.colour", "red",
      "weight.colour: unknown key, expected one of mass_kg, density_kg_m3, shape, "
      "drag_coefficient" },
    { "version", "2", "version: found 2, expected 1; a newer Layback may know it" },
    { "format", "x", "format: found the text \"x\", expected \"layback-rig\"" },
    { "river.profile.bed_material", "sand",
      "river.profile.bed_material: unknown key, expected one of law, exponent" },
    { "river.profile.law", "points",
      "river.profile.points: missing, expected a list of [height, speed] fractions" },
    { "shank.length_m", "0.5",
      "leaders[1].attach_above_weight_m: found 0.6096, expected at most 0.5, the length of the "
      "shank" },
    { "title.x", "y", "title.x: there is no such key in this rig" },
    { "pass.course[0].turn_deg", "5", "pass.course[0].turn_deg: there is no such key in this rig" },
    { "pass.hand.motion", "jig",
      "pass.hand.motion: found the text \"jig\", expected \"hold\", \"lift-and-drop\" or "
      "\"follow-bed\"" },
    { "", "y", "=y: expected key=value" },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
      g_autoptr (LbContents) before = lb_contents_dup (contents);
      g_autoptr (GError) error = NULL;

      if (lb_reader_set (contents, cases[i].path, cases[i].value, &error))
        fail_msg ("%s=%s was accepted", cases[i].path, cases[i].value);
      assert_string_equal (error->message, cases[i].message);
      assert_same_contents (contents, before);
    }
}

/* Though the file of a rig with the usual card does not name it. */
static void
a_card_can_be_set (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  const LbCard *card = &contents->card;

  check_set (contents, "card.size", "a5");
  check_set (contents, "card.prints.notes", "false");
  check_set (contents, "card.terminations.leader_to_lure.how", "clinch knot");
  check_set (contents, "card.terminations.leader_to_lure.allowance_m", "0.15");
  check_set (contents, "card.hardware", "[{\"count\": 2, \"what\": \"swivel\"}]");
  check_set (contents, "card.hardware[0].count", "3");
  check_set (contents, "card.depths_m", "[4, 5]");
  check_set (contents, "card.date", "first week of May");
  assert_int_equal (card->size, LB_CARD_A5);
  assert_false (card->prints[LB_CARD_PART_NOTES]);
  assert_string_equal (card->terminations[LB_CARD_LEADER_TO_LURE].how.text, "clinch knot");
  assert_true (card->terminations[LB_CARD_LEADER_TO_LURE].allowance == 0.15);
  assert_int_equal (card->n_hardware, 1);
  assert_int_equal (card->hardware[0].count, 3);
  assert_string_equal (card->hardware[0].what.text, "swivel");
  assert_int_equal (card->series[LB_CARD_SERIES_OF_DEPTHS].n, 2);
  assert_false (card->dated_today);
  assert_string_equal (card->date.text, "first week of May");
  check_set (contents, "card.date", "null");
  assert_true (card->dated_today);
  check_set (contents, "card.date", "\"null\"");
  assert_false (card->dated_today);
  assert_string_equal (card->date.text, "null");
  check_set (contents, "title", "null");
  assert_string_equal (contents->title, "null");
}

/* Nor a pass; what is said in one way is no longer said in the other. */
static void
a_pass_can_be_set (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("spring-run.rig");
  const LbPassScript *pass = &contents->pass;

  check_set (contents, "pass.hand.motion", "follow-bed");
  check_set (contents, "pass.hand.stroke_m", "0.2");
  check_set (contents, "pass.duration_s", "45");
  check_set (contents, "pass.start_m", "-3");
  check_set (contents, "pass.second_weight_kg", "1.5");
  check_set (contents, "pass.reels_apart_m", "2");
  assert_true (pass->second_weight == 1.5 && pass->reels_apart == 2);
  check_set (contents, "pass.course", "[{\"duration_s\": 30}, {\"distance_m\": 12}]");
  check_set (contents, "pass.course[0].distance_m", "20");
  check_set (contents, "pass.course[1].turn_rate_deg_s", "-2.5");
  check_set (contents, "pass.course.1.speed_over_ground_m_s", "0.7");
  assert_int_equal (pass->hand.motion, LB_HAND_FOLLOW_BED);
  assert_true (pass->hand.stroke == 0.2 && pass->duration == 45 && pass->start == -3);
  assert_int_equal (pass->n_legs, 2);
  assert_false (lb_is_set (pass->legs[0].duration) || lb_is_set (pass->legs[0].speed));
  assert_true (pass->legs[0].distance == 20 && pass->legs[1].turn_rate == -2.5);
  assert_true (pass->legs[1].speed == 0.7);
  check_set (contents, "pass.course[1].turn_deg", "90");
  assert_false (lb_is_set (pass->legs[1].turn_rate));
  check_set (contents, "pass.course[0].duration_s", "9");
  check_set (contents, "pass.duration_s", "null");
  assert_true (pass->legs[0].duration == 9 && pass->legs[1].turn == 90);
  assert_false (lb_is_set (pass->duration));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_field_can_be_set),    cmocka_unit_test (other_keys_can_be_set),
    cmocka_unit_test (choices_make_room),         cmocka_unit_test (several_are_checked_together),
    cmocka_unit_test (wrong_changes_are_refused), cmocka_unit_test (a_card_can_be_set),
    cmocka_unit_test (a_pass_can_be_set),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
