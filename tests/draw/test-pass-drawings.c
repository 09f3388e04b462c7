/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The drawings of a pass: what moves is drawn where the pass has it, what does not move is kept,
 * words are clear of one another, and all of it is told in words. */
#include "clear-words.h"
#include "pass_parts.h"
#include "pass_runs.h"
#include "scene_build.h"

#include <string.h>

typedef struct
{
  LbDrawContext *context;
  LbStyle style;
  LbView view, above_view;
  LbScene *side, *chart, *above;
} Drawn;

static Drawn
draw (const LbPassPicture *picture, LbTheme theme, double width, double height)
{
  double side = floor (0.6 * height);
  Drawn d = { .context = lb_draw_context_new (),
              .style = lb_style_make (theme, lb_style_scale_for (width, height)) };

  d.view = lb_pass_side_fit (NULL, picture, &d.style, width, side);
  d.above_view = lb_pass_above_fit (NULL, picture, &d.style, width, side);
  d.side = lb_pass_side_view_new (d.context, picture, &d.style, &d.view, width, side);
  d.chart = lb_pass_chart_new (d.context, picture, &d.style, width, height - side);
  d.above = lb_pass_above_new (d.context, picture, &d.style, &d.above_view, width, side);
  return d;
}

static void
drawn_free (Drawn *d)
{
  lb_scene_free (d->side);
  lb_scene_free (d->chart);
  lb_scene_free (d->above);
  lb_draw_context_free (d->context);
}

static PassRun *
default_run (void)
{
  LbSetup setup = pass_setup ();
  LbPassScript script = pass_lift_and_drop ();

  return pass_run_new (&setup, &script, 20);
}

/* ---- The track ---- */

static void
a_moment_lies_between_its_neighbours (void **state)
{
  LbTrackMoment moments[] = {
    { .time = 0, .boat_speed = 1, .weight.height = 2, .closest = LB_UNSET },
    { .time = 2, .boat_speed = 2, .weight.height = 1, .closest = 3 },
    { .time = 4, .boat_speed = 2, .weight.height = 0, .closest = 2 }
  };
  LbPassTrack track = { moments, 3, 0, 10 };
  LbTrackMoment m;

  assert_true (lb_track_at (&track, 1, &m));
  assert_near (m.boat_speed, 1.5, 1e-12);
  assert_near (m.weight.height, 1.5, 1e-12);
  assert_true (lb_track_at (&track, 9, &m));
  assert_near (m.weight.height, 0, 1e-12);
  assert_true (lb_track_at (&track, -1, &m));
  assert_near (m.weight.height, 2, 1e-12);
  assert_int_equal (lb_track_until (&track, 1.9), 1);
  assert_int_equal (lb_track_until (&track, 2), 2);
  assert_ptr_equal (lb_track_closest (&track, 3), &moments[1]);
  assert_ptr_equal (lb_track_closest (&track, 4), &moments[2]);
  assert_null (lb_track_closest (&track, 1));
  track.n = 0;
  assert_false (lb_track_at (&track, 1, &m));
}

/* ---- Places ---- */

static void
the_rig_is_where_the_pass_has_it (void **state)
{
  PassRun *run = default_run ();

  for (double t = 0; t <= 20; t += 5)
    {
      const LbReadings *r = &run->sample.readings;
      Drawn d;
      LbPick pick;

      pass_run_go_to (run, t);
      d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
      pick = lb_scene_pick (d.side, lb_view_x (&d.view, r->weight.position.x),
                            lb_view_y (&d.view, r->weight.position.z), 3);
      assert_int_equal (pick.kind, LB_PICK_WEIGHT);
      pick = lb_scene_pick (d.above, lb_view_x (&d.above_view, r->weight.position.x),
                            lb_view_y (&d.above_view, r->weight.position.y), 3);
      assert_int_equal (pick.kind, LB_PICK_WEIGHT);
      for (int i = 0; i < 2; i++)
        {
          LbVec3 at = r->lures[i].at.position;

          pick = lb_scene_pick (d.above, lb_view_x (&d.above_view, at.x),
                                lb_view_y (&d.above_view, at.y), 3);
          assert_int_equal (pick.kind, LB_PICK_LURE);
          assert_int_equal (pick.index, i);
        }
      drawn_free (&d);
    }
  pass_run_free (run);
}

/* Upstream is to the left, so that a turn to the right goes up. */
static void
a_turn_to_the_right_goes_up (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbPassScript script = pass_turn ();
  PassRun *run = pass_run_new (&setup, &script, 25);
  LbTrackMoment m;
  Drawn d;

  pass_run_go_to (run, 25);
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  assert_true (lb_track_at (&run->picture.track, 25, &m));
  assert_less (lb_view_x (&d.above_view, m.reel.x), lb_view_x (&d.above_view, 0));
  assert_less (lb_view_y (&d.above_view, m.reel.y), lb_view_y (&d.above_view, 0) - 20);
  drawn_free (&d);
  pass_run_free (run);
}

/* The first on the right of the boat, which is above its middle, the second on the left; equal rigs
 * are as far apart as their reels, which is what the warning is about. */
static void
two_rigs_are_shown (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbPassScript script = lb_pass_script_default ();
  LbTrackMoment first, second;
  PassRun *run;
  char *words;
  Drawn d;

  script.second_weight = setup.rig.weight.mass;
  script.reels_apart = 1.4;
  script.tangle_distance = 1.5;
  setup.rig.n_leaders = 0; /* so that no two lines of one rig are nearer */
  run = pass_run_new (&setup, &script, 5);
  pass_run_go_to (run, 4);
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  assert_true (lb_track_at (&run->picture.track, 4, &first));
  assert_true (lb_track_at (&run->picture.second, 4, &second));
  assert_near (first.reel_across, 0.7, 1e-12);
  assert_near (second.reel.y, -0.7, 1e-12);
  assert_near (first.closest, 1.4, 1e-6);
  words = lb_scene_describe (d.above);
  assert_non_null (strstr (words, "A second rig on the left"));
  assert_non_null (strstr (words, "near enough to tangle"));
  g_free (words);
  assert_words_are_clear (d.above, "two rigs");
  drawn_free (&d);
  pass_run_free (run);
}

/* The lines of the second rig alone may be the nearest ones of all: they count like those of the
 * first. */
static void
the_second_rig_has_tangles_of_its_own (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbPassScript script = pass_lift_and_drop ();
  size_t nearer = 0;
  PassRun *run;

  script.second_weight = 0.5 * setup.rig.weight.mass;
  script.reels_apart = 5;
  run = pass_run_new (&setup, &script, 10);
  assert_int_equal (run->moments->len, lb_pass_record_count (run->record));
  for (guint i = 0; i < run->moments->len; i++)
    {
      const LbTrackMoment *moment = &g_array_index (run->moments, LbTrackMoment, i);
      LbApproach one = lb_pass_record_sample (run->record, i)->readings.closest;
      LbApproach other =
          lb_pass_record_sample (lb_pass_record_second (run->record), i)->readings.closest;

      assert_near (moment->closest, fmin (one.distance, other.distance), 0);
      if (!(other.distance < one.distance))
        continue;
      nearer++;
      assert_near (moment->closest_at.y, other.at.y, 0);
    }
  assert_true (nearer > 0);
  pass_run_free (run);
}

static size_t
count_looks (const LbScene *scene, LbColour stroke, LbLinePattern pattern)
{
  size_t n = 0;

  for (size_t i = 0; i < scene->items->len; i++)
    {
      const LbLook *look = &g_array_index (scene->items, LbItem, i).look;

      n += !look->fill && look->stroke == stroke && look->pattern == pattern;
    }
  return n;
}

/* Told apart by more than colour, in all three drawings, and by words. */
static void
the_second_rig_is_told_from_the_first (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbPassScript script = pass_lift_and_drop ();
  LbTrackMoment second;
  PassRun *run;
  LbPick pick;
  Drawn d;

  script.second_weight = 1.6 * setup.rig.weight.mass;
  run = pass_run_new (&setup, &script, 10);
  pass_run_go_to (run, 8);
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  g_autofree char *side = lb_scene_describe (d.side);
  g_autofree char *chart = lb_scene_describe (d.chart);
  assert_int_equal (count_looks (d.side, LB_COLOUR_WIRE, LB_LINE_LONG_DASHED), 1);
  assert_int_equal (count_looks (d.above, LB_COLOUR_LEADER, LB_LINE_LONG_DASHED), 2);
  assert_true (lb_track_at (&run->picture.second, 8, &second));
  pick = lb_scene_pick (d.side, lb_view_x (&d.view, second.weight.position.x),
                        lb_view_y (&d.view, second.weight.position.z), 3);
  assert_int_equal (pick.kind, LB_PICK_WEIGHT);
  assert_non_null (strstr (side, "A second rig on the left of the boat, with dashed lines"));
  assert_non_null (strstr (chart, ", of the second rig "));
  assert_non_null (strstr (chart, "The second rig, its lines marked with squares: Weight: "));
  assert_words_are_clear (d.side, "two rigs");
  assert_words_are_clear (d.chart, "two rigs");
  assert_nothing_covers_words (d.chart, "two rigs");
  drawn_free (&d);
  /* Without one, nothing is dashed so. */
  run->picture.second.n = 0;
  run->picture.second_shape = NULL;
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  assert_int_equal (count_looks (d.side, LB_COLOUR_WIRE, LB_LINE_LONG_DASHED), 0);
  drawn_free (&d);
  pass_run_free (run);
}

/* ---- What stays ---- */

static void
the_background_stays_while_the_view_does (void **state)
{
  PassRun *run = default_run ();
  LbDrawContext *context = lb_draw_context_new ();
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);
  LbView view = { 0 }, next;
  guint64 side = 0, chart = 0, above = 0;
  LbView above_view = lb_pass_above_fit (NULL, &run->picture, &style, 1200, 500);

  for (int i = 0; i <= 20; i++)
    {
      LbScene *scenes[3];
      bool is_new;

      pass_run_go_to (run, i);
      next = lb_pass_side_fit (&view, &run->picture, &style, 1200, 500);
      is_new = memcmp (&next, &view, sizeof view) != 0;
      view = next;
      scenes[0] = lb_pass_side_view_new (context, &run->picture, &style, &view, 1200, 500);
      scenes[1] = lb_pass_chart_new (context, &run->picture, &style, 1200, 300);
      scenes[2] = lb_pass_above_new (context, &run->picture, &style, &above_view, 1200, 500);
      if (!is_new)
        assert_true (lb_scene_background_key (scenes[0]) == side);
      if (i > 0)
        {
          assert_true (lb_scene_background_key (scenes[1]) == chart);
          assert_true (lb_scene_background_key (scenes[2]) == above);
        }
      side = lb_scene_background_key (scenes[0]);
      chart = lb_scene_background_key (scenes[1]);
      above = lb_scene_background_key (scenes[2]);
      for (int k = 0; k < 3; k++)
        lb_scene_free (scenes[k]);
    }
  lb_draw_context_free (context);
  pass_run_free (run);
}

/* A long pass goes over the drawing page by page, boat and rig always in it. */
static void
a_long_pass_has_pages (void **state)
{
  LbSetup setup = lb_setup_default ();
  PassRun *run;
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);
  LbView view = { 0 };
  int pages = 0;

  setup.boat.speed_over_ground = 1.2;
  run = pass_run_new (&setup, NULL, 60);
  for (int i = 0; i <= 120; i++)
    {
      LbTrackMoment m;
      LbView next;

      pass_run_go_to (run, 0.5 * i);
      next = lb_pass_side_fit (&view, &run->picture, &style, 1200, 500);
      pages += memcmp (&next, &view, sizeof view) != 0;
      view = next;
      assert_true (lb_track_at (&run->picture.track, 0.5 * i, &m));
      assert_less (0, lb_view_x (&view, m.reel.x - 3.75));
      for (size_t k = 0; k < 2; k++)
        assert_less (lb_view_x (&view, m.lures[k].position.x), 1200);
    }
  assert_true (pages > 1 && pages < 20);
  pass_run_free (run);
}

/* ---- The chart ---- */

static void
the_chart_tells_how_near_lines_come (void **state)
{
  LbSetup setup = lb_setup_default ();
  LbPassScript script = pass_lift_and_drop ();
  g_autofree char *words = NULL, *alone = NULL;
  LbPhrase expected;
  LbTrackMoment moment;
  PassRun *run = pass_run_new (&setup, &script, 10);
  Drawn d;

  pass_run_go_to (run, 8);
  run->picture.tangle = 0.1;
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  words = lb_scene_describe (d.chart);
  assert_true (lb_track_at (&run->picture.track, 8, &moment));
  expected = lb_phrase_quantity (&run->picture.now, LB_QUANTITY_HEIGHT, moment.closest);
  assert_non_null (strstr (words, "how far the nearest two lines are apart"));
  assert_non_null (strstr (words, "Lines apart: "));
  assert_non_null (strstr (strstr (words, "Lines apart: "), expected.text));
  assert_int_equal (count_looks (d.chart, LB_COLOUR_REMARK, LB_LINE_DASHED), 1);
  drawn_free (&d);
  pass_run_free (run);

  setup.rig.n_leaders = 0;
  run = pass_run_new (&setup, &script, 10);
  pass_run_go_to (run, 8);
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  alone = lb_scene_describe (d.chart);
  assert_null (strstr (alone, "apart"));
  drawn_free (&d);
  pass_run_free (run);
}

/* A view that was zoomed keeps the weight in sight; hardly ever by moving unless it follows
 * closely.
 */
static void
a_zoomed_view_goes_along (void **state)
{
  LbSetup setup = pass_setup ();
  LbPassScript turn = pass_turn ();
  PassRun *run = pass_run_new (&setup, &turn, 25);
  LbStyle style = lb_style_make (LB_THEME_LIGHT, 1);

  for (int k = 0; k < 4; k++)
    {
      bool above = k % 2, closely = k / 2;
      LbVec3 reel = run->picture.track.moments[0].reel;
      LbView view;
      int moves = 0;

      pass_run_go_to (run, 0);
      view = above ? lb_pass_above_fit (NULL, &run->picture, &style, 1200, 500)
                   : lb_pass_side_near (&run->picture, &style, 1200, 500);
      view = lb_view_zoomed (&view, 2.5, 600, 300);
      for (int i = 0; i <= 100; i++)
        {
          LbTrackMoment m;
          LbView next;

          pass_run_go_to (run, 0.25 * i);
          next = lb_pass_view_along (&view, &run->picture, above, closely, &reel);
          moves += memcmp (&next, &view, sizeof view) != 0;
          view = next;
          assert_true (lb_track_at (&run->picture.track, 0.25 * i, &m));
          assert_near (view.per_metre_x, next.per_metre_x, 0);
          assert_in_range ((int) lb_view_x (&view, m.weight.position.x), 60, 1140);
          assert_in_range (
              (int) lb_view_y (&view, above ? m.weight.position.y : m.weight.position.z), 20, 480);
        }
      assert_true (closely ? moves > 90 : moves > 0 && moves < 15);
    }
  pass_run_free (run);
}

static void
the_chart_tells_time_both_ways (void **state)
{
  PassRun *run = default_run ();
  Drawn d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  double last = -1;

  assert_near (lb_pass_chart_time (d.chart, -100), 0, 1e-9);
  assert_near (lb_pass_chart_time (d.chart, 5000), 20, 1e-9);
  for (double x = 100; x < 1000; x += 100)
    {
      double t = lb_pass_chart_time (d.chart, x);

      assert_less (last, t);
      last = t;
    }
  drawn_free (&d);

  /* The cursor stands where the point of its time is. */
  pass_run_go_to (run, 13);
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  for (guint i = 0; i < d.chart->items->len; i++)
    {
      const LbItem *item = &g_array_index (d.chart->items, LbItem, i);
      const LbOp *op = &g_array_index (d.chart->ops, LbOp, item->first_op);

      if (item->look.stroke == LB_COLOUR_HANDLE && item->n_ops == 2)
        {
          assert_near (lb_pass_chart_time (d.chart, op->x[0]), 13, 1e-6);
          last = -1;
        }
    }
  assert_near (last, -1, 0);
  drawn_free (&d);
  pass_run_free (run);
}

static void
lines_differ_without_colour (void **state)
{
  for (int a = -1; a < LB_MAX_LEADERS; a++)
    for (int b = -1; b < a; b++)
      {
        /* The weight and three lures by their patterns alone, more with their colours. */
        if (a < 3)
          assert_true (lb_pass_pattern (a) != lb_pass_pattern (b));
        assert_true (lb_pass_pattern (a) != lb_pass_pattern (b)
                     || lb_pass_colour (a) != lb_pass_colour (b));
      }
}

/* ---- Words ---- */

static void
the_words_tell_of_the_moment (void **state)
{
  PassRun *run = default_run ();
  char *side, *chart, *above;
  Drawn d;

  pass_run_go_to (run, 12.3);
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  side = lb_scene_describe (d.side);
  chart = lb_scene_describe (d.chart);
  above = lb_scene_describe (d.above);
  assert_non_null (strstr (side, "Side view. At 12.3 s of a pass of 20 s."));
  assert_non_null (strstr (side, "Lower lure"));
  assert_non_null (strstr (side, "Wanted band"));
  assert_non_null (strstr (chart, "Time chart"));
  assert_non_null (strstr (chart, "Hand: "));
  assert_non_null (strstr (chart, "Over all that is known of the pass: Weight: "));
  assert_non_null (strstr (above, "from above"));
  assert_non_null (strstr (above, "straight upstream"));
  g_free (side);
  g_free (chart);
  g_free (above);
  drawn_free (&d);
  pass_run_free (run);
}

/* As after a half turn. */
static void
a_boat_that_has_come_down_the_river_is_told_so (void **state)
{
  PassRun *run = default_run ();
  char *side;
  Drawn d;

  pass_run_go_to (run, 10);
  run->picture.reach_start -= 200;
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  side = lb_scene_describe (d.side);
  assert_non_null (strstr (side, " down the river."));
  assert_null (strstr (side, " up the river."));
  g_free (side);
  drawn_free (&d);
  pass_run_free (run);
}

static void
lines_too_near_are_marked (void **state)
{
  PassRun *run = default_run ();
  char *words;
  Drawn d;

  pass_run_go_to (run, 20);
  run->picture.tangle = 100;
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  words = lb_scene_describe (d.above);
  assert_non_null (strstr (words, "near enough to tangle"));
  g_free (words);
  drawn_free (&d);
  run->picture.tangle = 0;
  d = draw (&run->picture, LB_THEME_LIGHT, 1280, 800);
  words = lb_scene_describe (d.above);
  assert_null (strstr (words, "near enough to tangle"));
  g_free (words);
  drawn_free (&d);
  pass_run_free (run);
}

static void
nothing_known_is_said (void **state)
{
  PassRun *run = default_run ();
  char *side, *chart, *above;
  Drawn d;

  run->picture.track.n = 0;
  pass_run_go_to (run, 3);
  run->picture.now.shape = NULL;
  d = draw (&run->picture, LB_THEME_DARK, 960, 600);
  assert_false (d.side->solved);
  assert_words_are_clear (d.side, "side");
  assert_words_are_clear (d.chart, "chart");
  assert_words_are_clear (d.above, "above");
  side = lb_scene_describe (d.side);
  chart = lb_scene_describe (d.chart);
  above = lb_scene_describe (d.above);
  assert_non_null (strstr (side, "At 3.0 s of a pass of 20 s."));
  assert_non_null (strstr (chart, "At 3.0 s of a pass of 20 s. Nothing of the pass is known yet."));
  assert_null (strstr (chart, "Over all"));
  assert_null (strstr (chart, "Hand: "));
  assert_non_null (strstr (above, "from above"));
  assert_null (strstr (above, "of the reel"));
  g_free (side);
  g_free (chart);
  g_free (above);
  drawn_free (&d);
  pass_run_free (run);
}

/* Curves, marks and the rig stay in the plots and in the drawing. */
static void
assert_curves_stay_in (const LbScene *chart)
{
  for (guint i = 0; i < chart->items->len; i++)
    {
      const LbItem *item = &g_array_index (chart->items, LbItem, i);

      assert_true (item->bounds.x >= -4 && item->bounds.y >= -4);
      assert_true (item->bounds.x + item->bounds.width <= chart->width + 4);
      assert_true (item->bounds.y + item->bounds.height <= chart->height + 4);
    }
}

static void
words_are_clear_for_any_pass_and_size (void **state)
{
  static const double sizes[][2] = { { 640, 400 },  { 800, 520 }, { 960, 600 },
                                     { 1280, 800 }, { 700, 900 }, { 3840, 2160 } };
  TestRandom random = { 20260516 };
  size_t n = test_count (60);

  for (size_t k = 0; k < n; k++)
    {
      LbSetup setup = random_setup (&random);
      LbPassScript script = k % 3 == 0 ? pass_turn () : pass_lift_and_drop ();
      PassRun *run;
      char what[64];

      if (k % 4 == 0)
        script.second_weight = 1.4 * setup.rig.weight.mass;
      run = pass_run_new (&setup, k % 3 == 1 ? NULL : &script, 12);

      run->picture.now.units = k % 2 ? LB_UNITS_METRIC : LB_UNITS_US;
      for (int i = 0; i < 3; i++)
        {
          Drawn d;

          g_snprintf (what, sizeof what, "case %zu, moment %d", k, i);
          pass_run_go_to (run, 1 + 5.5 * i);
          d = draw (&run->picture, (LbTheme) (k % LB_N_THEMES), sizes[k % 6][0], sizes[k % 6][1]);
          assert_words_are_clear (d.side, what);
          assert_words_are_clear (d.chart, what);
          assert_words_are_clear (d.above, what);
          assert_nothing_covers_words (d.side, what);
          assert_nothing_covers_words (d.chart, what);
          assert_nothing_covers_words (d.above, what);
          assert_curves_stay_in (d.chart);
          drawn_free (&d);
        }
      pass_run_free (run);
    }
}

/* ---- Pictures for people to look at ---- */

static void
write_picture (const PassRun *run, const char *name, LbTheme theme, double width, double height)
{
  const char *folder = g_getenv ("LB_TEST_OUTPUT_DIR");
  Drawn d = draw (&run->picture, theme, width, height);
  double side = floor (0.6 * height);

  for (int above = 0; above < 2; above++)
    {
      cairo_surface_t *surface =
          cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, (int) height);
      cairo_t *cr = cairo_create (surface);
      g_autofree char *file = g_strdup_printf ("draw-pass-%s%s.png", name, above ? "-above" : "");
      g_autofree char *path = g_build_filename (folder ? folder : g_get_tmp_dir (), file, NULL);

      lb_scene_paint (above ? d.above : d.side, cr, LB_LAYER_ALL);
      cairo_translate (cr, 0, side);
      lb_scene_paint (d.chart, cr, LB_LAYER_ALL);
      cairo_destroy (cr);
      assert_int_equal (cairo_surface_write_to_png (surface, path), CAIRO_STATUS_SUCCESS);
      cairo_surface_destroy (surface);
    }
  drawn_free (&d);
}

static void
pictures (void **state)
{
  LbSetup setup = pass_setup (), eight = setup_with_leaders (8), plain = lb_setup_default ();
  LbPassScript lift = pass_lift_and_drop (), turn = pass_turn ();
  PassRun *run = pass_run_new (&setup, &lift, 40);

  pass_run_go_to (run, 27.5);
  write_picture (run, "lift", LB_THEME_LIGHT, 1280, 800);
  write_picture (run, "dark", LB_THEME_DARK, 960, 600);
  write_picture (run, "print", LB_THEME_PRINT, 960, 600);
  pass_run_free (run);
  run = pass_run_new (&plain, &turn, 30);
  pass_run_go_to (run, 29);
  write_picture (run, "turn", LB_THEME_LIGHT, 1280, 800);
  run->picture.now.units = LB_UNITS_METRIC;
  write_picture (run, "4k", LB_THEME_LIGHT, 3840, 2160);
  pass_run_free (run);
  lift.second_weight = 1.5 * plain.rig.weight.mass;
  run = pass_run_new (&setup, &lift, 40);
  pass_run_go_to (run, 27.5);
  write_picture (run, "two", LB_THEME_LIGHT, 1280, 800);
  write_picture (run, "two-small", LB_THEME_DARK, 670, 460);
  pass_run_free (run);
  run = pass_run_new (&eight, NULL, 60);
  pass_run_go_to (run, 41);
  write_picture (run, "eight", LB_THEME_LIGHT, 1280, 800);
  pass_run_free (run);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_moment_lies_between_its_neighbours),
    cmocka_unit_test (the_rig_is_where_the_pass_has_it),
    cmocka_unit_test (a_turn_to_the_right_goes_up),
    cmocka_unit_test (two_rigs_are_shown),
    cmocka_unit_test (the_second_rig_has_tangles_of_its_own),
    cmocka_unit_test (the_second_rig_is_told_from_the_first),
    cmocka_unit_test (the_background_stays_while_the_view_does),
    cmocka_unit_test (a_long_pass_has_pages),
    cmocka_unit_test (a_zoomed_view_goes_along),
    cmocka_unit_test (the_chart_tells_how_near_lines_come),
    cmocka_unit_test (the_chart_tells_time_both_ways),
    cmocka_unit_test (lines_differ_without_colour),
    cmocka_unit_test (the_words_tell_of_the_moment),
    cmocka_unit_test (a_boat_that_has_come_down_the_river_is_told_so),
    cmocka_unit_test (lines_too_near_are_marked),
    cmocka_unit_test (nothing_known_is_said),
    cmocka_unit_test (words_are_clear_for_any_pass_and_size),
    cmocka_unit_test (pictures),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
