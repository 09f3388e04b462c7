/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a card says: its numbers against single solves and against what can be added up by hand, its
 * words in both systems of units, and what it never leaves out. */
#include "model-support.h"

#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "card_compute.h"
#include "data_path.h"
#include "reader.h"
#include "result.h"

static const double owned[] = { 0.9072, 0.4536, 0.7938, 0.4536, -1, NAN };

static LbCardRequest
request_for (const LbContents *contents, LbUnits units)
{
  return (LbCardRequest){
    contents,       "from-a-file", owned, G_N_ELEMENTS (owned), lb_wording_default (units),
    "April 3, 2026"
  };
}

static LbCardContents *
card_of (const LbContents *contents, LbUnits units)
{
  LbCardRequest request = request_for (contents, units);
  g_autoptr (GError) error = NULL;
  LbCardContents *card = lb_card_compute (&request, NULL, NULL, NULL, &error);

  assert_null (error);
  assert_non_null (card);
  return card;
}

/* The sample of two leaders with words for its joints. */
static LbContents *
sample (void)
{
  LbContents *contents = read_sample ("spring-run.rig");
  LbCard *card = &contents->card;

  card->terminations[LB_CARD_MAINLINE_TO_SHANK].allowance = 0.10;
  card->terminations[LB_CARD_SHANK_TO_WEIGHT].allowance = 0.05;
  card->terminations[LB_CARD_LEADER_TO_SHANK].allowance = 0.20;
  card->terminations[LB_CARD_LEADER_TO_LURE].allowance = 0;
  lb_card_words_set (&card->terminations[LB_CARD_LEADER_TO_SHANK].how, "loop to loop");
  card->n_hardware = 2;
  card->hardware[0].count = 3;
  lb_card_words_set (&card->hardware[0].what, "barrel swivel");
  card->hardware[1].count = 1;
  return contents;
}

static const LbCardFact *
fact_called (const LbCardFacts *facts, const char *label)
{
  for (size_t i = 0; i < facts->n; i++)
    if (g_str_equal (facts->facts[i].label, label))
      return &facts->facts[i];
  return NULL;
}

static void
assert_fact (const LbCardFacts *facts, const char *label, const char *value, const char *note)
{
  const LbCardFact *fact = fact_called (facts, label);

  if (fact == NULL)
    fail_msg ("there is no fact called %s", label);
  assert_string_equal (fact->value, value);
  assert_string_equal (fact->note, note);
}

/* ---- The rig ---- */

static void
lines_are_cut_with_what_their_ends_take_up (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = card_of (contents, LB_UNITS_US);
  const LbCardRig *rig = &card->rig;

  assert_near (rig->shank.cut_length, 0.9144 + 0.10 + 0.05, 1e-12);
  assert_string_equal (rig->shank.length_words, "36 in");
  assert_string_equal (rig->shank.cut_words, "41.9 in"); /* 1.0644 m / 0.0254 */
  assert_int_equal (rig->n_leaders, 2);
  assert_near (rig->leaders[0].line.cut_length, 3.048 + 0.20, 1e-12);
  assert_string_equal (rig->leaders[0].line.length_words, "10 ft");
  assert_string_equal (rig->leaders[0].line.cut_words, "10 ft 8 in"); /* 127.87 in */
  assert_string_equal (rig->leaders[0].line.name, "Lower leader");
  assert_string_equal (rig->leaders[0].attachment_words, "18 in");
  assert_string_equal (rig->leaders[0].lure, contents->lure_names[0]);
  assert_false (lb_is_set (rig->mainline.cut_length));
  assert_string_equal (rig->mainline.cut_words, "");
  assert_string_equal (rig->mainline.material, "steel wire, 0.028 in");
  assert_string_equal (rig->leaders[1].line.material, "nylon, 0.0138 in");
  assert_string_equal (rig->leaders[1].line.strength, "breaks at ≈ 10.8 lbf without knots");
  assert_string_equal (rig->shank.strength, "");
  assert_string_equal (rig->weight, "1¼ lb, ball, lead");
}

static void
joints_and_hardware_are_in_the_users_words (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = card_of (contents, LB_UNITS_METRIC);

  assert_int_equal (card->rig.terminations.n, 4);
  assert_fact (&card->rig.terminations, "Leader to shank", "loop to loop",
               "20 cm added to each line end");
  assert_fact (&card->rig.terminations, "Leader to lure", "", "no line added");
  assert_int_equal (card->rig.hardware.n, 1); /* the other has no words */
  assert_fact (&card->rig.hardware, "barrel swivel", "3", "");
}

static void
leaders_stand_from_the_weight_up (void **state)
{
  g_autoptr (LbContents) contents = read_sample ("three-leaders.rig");
  LbLeader *leaders = contents->setup.rig.leaders;
  LbLeader first = leaders[0];
  g_autoptr (LbCardContents) card = NULL;

  leaders[0] = leaders[2];
  leaders[2] = first;
  card = card_of (contents, LB_UNITS_US);
  assert_int_equal (card->rig.leaders[0].leader, 2);
  assert_string_equal (card->rig.leaders[0].line.name, "Lower leader");
  assert_int_equal (card->rig.leaders[2].leader, 0);
  assert_true (card->rig.leaders[0].attachment < card->rig.leaders[1].attachment
               && card->rig.leaders[1].attachment < card->rig.leaders[2].attachment);
}

static void
a_rig_without_a_shank_has_other_joints (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = NULL;

  contents->setup.rig.shank_length = 0;
  contents->setup.rig.leaders[0].attach_above_weight = 0;
  contents->setup.rig.leaders[1].attach_above_weight = 0;
  card = card_of (contents, LB_UNITS_US);
  assert_int_equal (card->rig.terminations.n, 3);
  assert_non_null (fact_called (&card->rig.terminations, "Mainline to weight"));
  assert_non_null (fact_called (&card->rig.terminations, "Leader to weight"));
  assert_true (card->rig.shank.length == 0);
}

/* ---- How it runs ---- */

static void
the_run_is_the_documents (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbResult) result = lb_result_solve (NULL, &contents->setup, NULL);
  const LbReadings *readings = lb_result_get_readings (result);
  g_autoptr (LbCardContents) card = card_of (contents, LB_UNITS_US);
  g_autofree char *text = lb_card_contents_dup_text (card);
  g_autofree char *out =
      lb_words_quantity (LB_QUANTITY_LENGTH, LB_UNITS_US, readings->line_out, -1);

  assert_int_equal (card->running.status, LB_STATUS_OK);
  assert_true (card->running.readings.line_out == readings->line_out);
  assert_int_equal (card->running.shape.n_nodes, lb_result_get_shape (result)->n_nodes);
  assert_fact (&card->running.line, "Line out", out, "");
  /* Computed as a whole, as the heading says; only an input is marked by itself. */
  assert_false (fact_called (&card->running.line, "Line out")->estimate);
  assert_true (fact_called (&card->running.water, "Current profile")->estimate);
  assert_non_null (strstr (text, "How it runs (≈ computed)"));
  assert_non_null (strstr (text, "Current profile: ≈power law"));
  assert_fact (&card->running.water, "Depth", "20 ft", "");
  assert_false (fact_called (&card->running.water, "Depth")->estimate);
  assert_fact (&card->running.water, "Current", "2.7 mph", "at the surface");
  assert_fact (&card->running.water, "Current profile", "power law, exponent 6", "");
  assert_fact (&card->running.water, "Band", "4 in to 18 in", "off the bed");
  assert_non_null (fact_called (&card->running.lures, "Upper lure"));
  assert_non_null (strstr (card->running.sentence, "Both lures run in the band"));
}

/* ---- Table ---- */

static void
the_table_has_the_weights_owned_and_the_documents (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = card_of (contents, LB_UNITS_US);
  const LbCardTable *table = &card->table;

  /* 1 lb once, though it is owned twice; what is no weight is left out. */
  assert_int_equal (table->n_weights, 4);
  assert_string_equal (table->blocks[0].name, "1 lb");
  assert_string_equal (table->blocks[1].name, "1¼ lb");
  assert_string_equal (table->blocks[3].name, "2 lb");
  assert_true (table->blocks[1].is_own);
  assert_false (table->blocks[0].is_own);
  assert_int_equal (table->n_depths, 5);
  assert_string_equal (table->depth_words[0], "16 ft");
  assert_string_equal (table->current_words[4], "3.5 mph");
  assert_string_equal (table->caption, "Weight 4 in off the bed, boat 0.9 mph over the ground.");
  assert_string_equal (table->length_unit, "ft");
}

static void
a_cell_is_what_a_single_solve_finds (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = card_of (contents, LB_UNITS_US);
  const LbSteadyOptions cold = { .cold = true };

  for (size_t d = 0; d < 5; d += 2)
    {
      const LbCardCell *cell = &card->table.blocks[3].rows[d].cells[1];
      LbSetup one = contents->setup;
      g_autoptr (LbResult) result = NULL;
      g_autofree char *feet = NULL;
      g_autofree char *angle = NULL;

      one.rig.weight.mass = 0.9072;
      one.river.depth = card->table.depths[d];
      one.river.surface_current = card->table.currents[1];
      result = lb_result_solve (NULL, &one, &cold);
      assert_near (cell->line_out, lb_result_get_readings (result)->line_out, 1e-5);
      assert_near (cell->wire_angle, lb_result_get_readings (result)->wire_angle, 1e-5);
      feet = g_strdup_printf ("%.1f", lb_result_get_readings (result)->line_out / 0.3048);
      angle = g_strdup_printf ("%.0f°", lb_result_get_readings (result)->wire_angle * 180 / G_PI);
      assert_string_equal (cell->line_words, feet);
      assert_string_equal (cell->angle_words, angle);
    }
}

/* What is printed lies within: at the printed limits the lures are still in the band. */
static void
printed_limits_are_on_the_safe_side (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = card_of (contents, LB_UNITS_US);

  for (size_t d = 0; d < card->table.n_depths; d++)
    {
      const LbCardRow *row = &card->table.blocks[1].rows[d];
      double low = 0, high = 0;

      if (sscanf (row->limits, "%lf to %lf mph", &low, &high) != 2)
        fail_msg ("%s", row->limits);
      assert_true (low * 0.44704 >= row->low - 1e-3 && low * 0.44704 < row->low + 0.0448);
      assert_true (high * 0.44704 <= row->high + 1e-3 && high * 0.44704 > row->high - 0.0448);
    }
}

static void
the_cards_own_series_make_the_axes (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = NULL;

  assert_true (lb_reader_set (contents, "card.depths_m", "[4, 5]", NULL));
  assert_true (lb_reader_set (contents, "card.currents_m_s", "[1.2]", NULL));
  card = card_of (contents, LB_UNITS_METRIC);
  assert_int_equal (card->table.n_depths, 2);
  assert_int_equal (card->table.n_currents, 1);
  assert_string_equal (card->table.depth_words[1], "5 m");
  assert_string_equal (card->table.current_words[0], "1.2 m/s");
  assert_string_equal (card->table.length_unit, "m");
}

/* ---- Speed and gauge ---- */

static void
the_gauge_starts_at_the_bed_and_rises (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = card_of (contents, LB_UNITS_US);
  const LbCardGauge *gauge = &card->gauge;

  assert_true (gauge->n_ticks > 5 && gauge->touches_below);
  assert_string_equal (gauge->ticks[0].words, "bed");
  assert_true (gauge->ticks[0].angle == gauge->low);
  for (size_t i = 1; i < gauge->n_ticks; i++)
    {
      assert_true (gauge->ticks[i].angle > gauge->ticks[i - 1].angle);
      assert_true (gauge->ticks[i].height > gauge->ticks[i - 1].height);
      /* whole inches */
      assert_near (remainder (gauge->ticks[i].height, 0.0254), 0, 1e-9);
    }
  assert_true (gauge->own_angle > gauge->low && gauge->own_angle < gauge->high);
  /* At the angle of its own run it tells the height of its own weight, 4 in. */
  for (size_t i = 1; i < gauge->n_ticks; i++)
    if (gauge->ticks[i - 1].angle <= gauge->own_angle && gauge->own_angle < gauge->ticks[i].angle)
      assert_true (gauge->ticks[i - 1].height <= 0.1017 && 0.1015 <= gauge->ticks[i].height);
  assert_string_equal (gauge->caption, "22 ft 11 in out, 20 ft deep, current 2.7 mph.");
}

static void
the_boat_speeds_are_told (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = NULL;
  g_autoptr (LbContents) pool = read_sample ("deep-pool.rig");
  g_autoptr (LbCardContents) deep = NULL;
  const LbCardSpeedWindow *window;

  /* Lures that drag more than usual leave the band before the weight comes down. */
  for (int i = 0; i < 2; i++)
    contents->setup.rig.leaders[i].lure.drag_area = 0.00017;
  card = card_of (contents, LB_UNITS_US);
  window = &card->speed_window;
  assert_true (window->low <= contents->setup.boat.speed_over_ground);
  assert_true (contents->setup.boat.speed_over_ground < window->high);
  assert_non_null (strstr (window->sentence, window->high_is_limit ? "or more" : " to "));
  assert_non_null (strstr (window->sentence, "Slower than"));
  deep = card_of (pool, LB_UNITS_US);
  assert_non_null (strstr (deep->speed_window.sentence, "and the weight off the bed"));
  contents->setup.rig.n_leaders = 0;
  lb_card_contents_free (g_steal_pointer (&card));
  card = card_of (contents, LB_UNITS_US);
  assert_string_equal (card->speed_window.sentence, "");
  assert_string_equal (card->table.limits_title, "Not blown back");
}

/* ---- What is always there, and what is left out ---- */

static void
cautions_and_marks_are_never_left_out (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = NULL;
  bool wrapped = false, rules = false;

  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    contents->card.prints[i] = false;
  contents->setup.rules = (LbRules){ 2, 6 };
  card = card_of (contents, LB_UNITS_US);
  for (size_t i = 0; i < card->n_cautions; i++)
    {
      wrapped = wrapped || strstr (card->cautions[i], "Never wrap the wire");
      rules = rules || strstr (card->cautions[i], "licensed guide");
    }
  assert_true (wrapped && rules);
  assert_string_equal (card->rules,
                       "2 lures and 4 hooks on the line. Your limits on a line: 2 lures, 6 hooks. "
                       "Local rules decide; this only counts.");
  assert_string_equal (card->calibration, "Not calibrated on the water.");
  assert_true (g_str_has_prefix (card->estimate_note, card->estimate_mark));
  assert_true (g_str_has_prefix (card->computed_note, card->estimate_mark));
  assert_int_equal (card->table.n_weights, 0);
  assert_int_equal (card->gauge.n_ticks, 0);
  assert_string_equal (card->notes, "");
}

static void
the_head_is_as_the_user_writes_it (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) today = card_of (contents, LB_UNITS_US), free_date = NULL,
                             clock = NULL;
  LbCardRequest request = request_for (contents, LB_UNITS_US);

  assert_string_equal (today->title, contents->title);
  assert_string_equal (today->date, "April 3, 2026");
  assert_string_equal (today->notes, contents->notes);
  g_free (contents->title);
  contents->title = g_strdup ("");
  contents->card.dated_today = false;
  lb_card_words_set (&contents->card.date, "first week of May");
  free_date = card_of (contents, LB_UNITS_US);
  assert_string_equal (free_date->title, "from-a-file");
  assert_string_equal (free_date->date, "first week of May");
  contents->card.dated_today = true;
  request.today = request.name = NULL;
  clock = lb_card_compute (&request, NULL, NULL, NULL, NULL);
  assert_true (strlen (clock->date) > 8);
  assert_string_equal (clock->title, "Untitled rig");
}

/* A card of what cannot be solved says so and keeps all else. */
static void
what_is_not_solved_says_so (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = NULL;
  g_autofree char *text = NULL;

  contents->setup.river.gravity = 0;
  card = card_of (contents, LB_UNITS_US);
  assert_true (lb_status_is_failure (card->running.status));
  assert_non_null (strstr (card->running.sentence, "cannot be computed"));
  assert_int_equal (card->running.line.n, 0);
  assert_int_equal (card->gauge.n_ticks, 0);
  assert_int_equal (card->table.blocks[0].rows[0].cells[0].state, LB_RUN_NOT_SOLVED);
  assert_string_equal (card->table.blocks[0].rows[0].limits, "nowhere");
  assert_near (card->rig.shank.cut_length, 1.0644, 1e-12);
  assert_true (card->n_cautions > 5);
  text = lb_card_contents_dup_text (card);
  assert_non_null (strstr (text, "not solved"));
}

/* ---- As text ---- */

static void
assert_in (const char *text, const char *words)
{
  if (!strstr (text, words))
    fail_msg ("\"%s\" is not in the text:\n%s", words, text);
}

static void
assert_facts_in (const char *text, const LbCardFacts *facts)
{
  for (size_t i = 0; i < facts->n; i++)
    {
      assert_in (text, facts->facts[i].label);
      assert_in (text, facts->facts[i].value);
      assert_in (text, facts->facts[i].note);
    }
}

static void
assert_all_in (const char *text, const LbCardContents *card)
{
  assert_true (g_utf8_validate (text, -1, NULL));
  assert_facts_in (text, &card->running.water);
  assert_facts_in (text, &card->running.line);
  assert_facts_in (text, &card->running.lures);
  assert_facts_in (text, &card->rig.terminations);
  assert_facts_in (text, &card->rig.hardware);
  assert_in (text, card->running.sentence);
  for (size_t i = 0; i < card->rig.n_leaders; i++)
    {
      assert_in (text, card->rig.leaders[i].attachment_words);
      assert_in (text, card->rig.leaders[i].line.cut_words);
      assert_in (text, card->rig.leaders[i].lure_details);
    }
  for (size_t i = 0; i < card->n_cautions; i++)
    assert_in (text, card->cautions[i]);
  for (size_t w = 0; w < card->table.n_weights; w++)
    for (size_t d = 0; d < card->table.n_depths; d++)
      for (size_t c = 0; c < card->table.n_currents; c++)
        {
          assert_in (text, card->table.blocks[w].rows[d].cells[c].line_words);
          assert_in (text, card->table.blocks[w].rows[d].cells[c].angle_words);
        }
  assert_in (text, card->rules);
  assert_in (text, card->notes);
}

/* A rig that runs in the band does so at its own speed, however its weight would come to rest. */
static void
assert_own_speed_in_window (const LbCardContents *card)
{
  double own = card->setup.boat.speed_over_ground;

  if (lb_run_state (&card->running.readings, card->running.status) == LB_RUN_IN_BAND
      && card->setup.rig.n_leaders > 0)
    assert_true (card->speed_window.low <= own + 1e-6 && own - 1e-6 <= card->speed_window.high);
}

/* Every rig that the tests accept has a card, in the one system of units or the other. */
static void
check_folder (const char *folder, size_t *n)
{
  g_auto (GStrv) names = files_in (folder, ".rig");

  for (char **name = names; *name; name++, (*n)++)
    {
      g_autofree char *path = g_build_filename (folder, *name, NULL);
      g_autoptr (GFile) file = g_file_new_for_path (path);
      g_autoptr (LbContents) contents = lb_contents_new ();
      g_autoptr (LbCardContents) card = NULL;
      g_autofree char *text = NULL;

      assert_true (lb_reader_load (file, contents, NULL));
      card = card_of (contents, *n % 2 == 0 ? LB_UNITS_US : LB_UNITS_METRIC);
      text = lb_card_contents_dup_text (card);
      assert_all_in (text, card);
      assert_own_speed_in_window (card);
    }
}

static void
every_good_file_has_a_card (void **state)
{
  g_autofree char *good = source_path ("good");
  g_autofree char *samples = lb_sample_path (".");
  size_t n = 0;

  check_folder (samples, &n);
  check_folder (good, &n);
  assert_true (n >= 25);
}

/* The line of the gauge is out where the boat is; the table's river is even. */
static void
an_uneven_bed_is_told (void **state)
{
  const double x[] = { -20, 0, 20 }, depth[] = { 5, 6, 8 };
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = NULL;

  contents->setup.river.n_bed_points = 3;
  memcpy (contents->setup.river.bed_x, x, sizeof x);
  memcpy (contents->setup.river.bed_depth, depth, sizeof depth);
  contents->setup.boat.position = -20;
  card = card_of (contents, LB_UNITS_METRIC);
  assert_non_null (strstr (card->gauge.caption, " 5 m deep"));
  assert_non_null (strstr (card->table.caption, "The bed is taken as even here."));
  assert_fact (&card->running.water, "Depth", "6.1 m", "uneven bed");
}

static void
a_decimal_comma_goes_all_the_way (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) card = NULL;

  contents->setup.rig.shank_length = 1;
  assert_non_null (setlocale (LC_NUMERIC, "de_DE.UTF-8"));
  card = card_of (contents, LB_UNITS_US);
  setlocale (LC_NUMERIC, "C");
  assert_string_equal (card->rig.shank.length_words, "39,4 in");
  assert_non_null (strchr (card->table.blocks[0].rows[0].cells[0].line_words, ','));
  assert_non_null (strchr (card->table.blocks[0].rows[0].limits, ','));
  assert_null (strchr (card->speed_window.words, '.'));
}

/* ---- Off the thread ---- */

typedef struct
{
  GMainLoop *loop;
  LbCardContents *card;
  GError *error;
} Wait;

static void
done_cb (GObject *source, GAsyncResult *result, void *data)
{
  Wait *wait = data;

  wait->card = lb_card_compute_finish (result, &wait->error);
  g_main_loop_quit (wait->loop);
}

static Wait
compute_async (GCancellable *cancellable)
{
  Wait wait = { g_main_loop_new (NULL, FALSE), NULL, NULL };
  g_autoptr (LbContents) contents = sample ();
  LbCardRequest request = request_for (contents, LB_UNITS_US);

  lb_card_compute_async (&request, cancellable, done_cb, &wait);
  g_clear_pointer (&contents, lb_contents_free); /* it was copied */
  g_main_loop_run (wait.loop);
  g_main_loop_unref (wait.loop);
  return wait;
}

static void
a_thread_computes_the_same (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  g_autoptr (LbCardContents) here = card_of (contents, LB_UNITS_US);
  Wait wait = compute_async (NULL);
  g_autofree char *found = lb_card_contents_dup_text (wait.card);
  g_autofree char *expected = lb_card_contents_dup_text (here);

  assert_null (wait.error);
  assert_string_equal (found, expected);
  lb_card_contents_free (wait.card);
}

static void
it_can_be_cancelled (void **state)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Wait wait;

  g_cancellable_cancel (cancellable);
  wait = compute_async (cancellable);
  assert_null (wait.card);
  assert_true (g_error_matches (wait.error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  g_error_free (wait.error);
}

typedef struct
{
  double done;
  int n;
  GCancellable *cancellable;
} Watch;

static void
progress_cb (void *data, double done)
{
  Watch *watch = data;

  assert_true (done >= watch->done && done <= 1);
  watch->done = done;
  if (++watch->n == 50 && watch->cancellable)
    g_cancellable_cancel (watch->cancellable);
}

static void
progress_rises_and_ends_at_once_when_cancelled (void **state)
{
  g_autoptr (LbContents) contents = sample ();
  LbCardRequest request = request_for (contents, LB_UNITS_US);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (LbCardContents) card = NULL;
  Watch whole = { 0 }, broken = { .cancellable = cancellable };

  card = lb_card_compute (&request, progress_cb, &whole, NULL, NULL);
  assert_non_null (card);
  assert_true (whole.n > 100 && whole.done == 1);
  assert_null (lb_card_compute (&request, progress_cb, &broken, cancellable, &error));
  assert_true (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED));
  assert_int_equal (broken.n, 50);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (lines_are_cut_with_what_their_ends_take_up),
    cmocka_unit_test (joints_and_hardware_are_in_the_users_words),
    cmocka_unit_test (leaders_stand_from_the_weight_up),
    cmocka_unit_test (a_rig_without_a_shank_has_other_joints),
    cmocka_unit_test (the_run_is_the_documents),
    cmocka_unit_test (the_table_has_the_weights_owned_and_the_documents),
    cmocka_unit_test (a_cell_is_what_a_single_solve_finds),
    cmocka_unit_test (printed_limits_are_on_the_safe_side),
    cmocka_unit_test (the_cards_own_series_make_the_axes),
    cmocka_unit_test (the_gauge_starts_at_the_bed_and_rises),
    cmocka_unit_test (the_boat_speeds_are_told),
    cmocka_unit_test (cautions_and_marks_are_never_left_out),
    cmocka_unit_test (the_head_is_as_the_user_writes_it),
    cmocka_unit_test (what_is_not_solved_says_so),
    cmocka_unit_test (every_good_file_has_a_card),
    cmocka_unit_test (an_uneven_bed_is_told),
    cmocka_unit_test (a_decimal_comma_goes_all_the_way),
    cmocka_unit_test (a_thread_computes_the_same),
    cmocka_unit_test (it_can_be_cancelled),
    cmocka_unit_test (progress_rises_and_ends_at_once_when_cancelled),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
