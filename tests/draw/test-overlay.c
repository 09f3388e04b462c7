/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs laid over one another: all of them in the picture at one scale, each told by its pattern and
 * named, none drawn that has no answer; pointed at and described by run. */
#include "clear-words.h"
#include "drawings.h"
#include "export.h"
#include "scene_build.h"

#include <string.h>

#define MOST LB_OVERLAY_MOST

typedef struct
{
  Drawing *drawings[MOST];
  LbOverlay overlay;
  LbDrawContext *context;
  LbStyle style;
  LbView view;
  LbScene *side, *strip;
} Overlaid;

static const char *const names[MOST] = { "1 lb", "1½ lb", "a longer name of 2 lb", "3 lb" };

/* The first `n` of these weights on a rig, in kg. */
static const double masses[MOST] = { 0.4536, 0.6804, 0.9072, 1.3608 };

static void
draw (Overlaid *o, LbTheme theme, double width, double height)
{
  LbExtents extents = lb_overlay_extents (&o->overlay);

  o->style = lb_style_make (theme, lb_style_scale_for (width, height));
  o->context = lb_draw_context_new ();
  o->view = lb_view_fit (NULL, &extents, &o->style, width, floor (0.7 * height));
  o->side = lb_overlay_side_view_new (o->context, &o->overlay, &o->style, &o->view, width,
                                      floor (0.7 * height));
  o->strip = lb_overlay_strip_new (o->context, &o->overlay, &o->style, &o->view, width,
                                   height - floor (0.7 * height));
}

static Overlaid
overlaid_new (const LbSetup *setup, size_t n)
{
  Overlaid o = { 0 };

  for (size_t i = 0; i < n; i++)
    {
      LbSetup own = *setup;

      own.rig.weight.mass = masses[i];
      o.drawings[i] = drawing_new (&own);
      o.overlay.runs[i] = (LbOverlayRun){ names[i], "wire steeper", o.drawings[i]->picture };
    }
  o.overlay.n = n;
  o.overlay.ground = o.drawings[0]->picture;
  return o;
}

static void
overlaid_free (Overlaid *o)
{
  lb_scene_free (o->side);
  lb_scene_free (o->strip);
  lb_draw_context_free (o->context);
  for (size_t i = 0; i < o->overlay.n; i++)
    drawing_free (o->drawings[i]);
}

static Overlaid
default_runs (size_t n)
{
  LbSetup setup = lb_setup_default ();
  Overlaid o = overlaid_new (&setup, n);

  draw (&o, LB_THEME_LIGHT, 1280, 800);
  return o;
}

/* ---- What is drawn ---- */

static size_t
count (const LbScene *scene, LbPickKind pick, int run)
{
  size_t n = 0;

  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      n += item->pick == pick && item->run == run;
    }
  return n;
}

static void
every_run_is_drawn_whole (void **state)
{
  Overlaid o = default_runs (4);

  for (int run = 0; run < 4; run++)
    {
      assert_int_equal (count (o.side, LB_PICK_MAINLINE, run), 1);
      assert_int_equal (count (o.side, LB_PICK_SHANK, run), 1);
      assert_int_equal (count (o.side, LB_PICK_LEADER, run), 2);
      assert_int_equal (count (o.side, LB_PICK_WEIGHT, run), 1);
      assert_int_equal (count (o.strip, LB_PICK_WEIGHT, run), 1);
      assert_int_equal (count (o.strip, LB_PICK_LURE, run), 2);
    }
  assert_int_equal (count (o.side, LB_PICK_REEL, 0), 1);
  assert_int_equal (count (o.side, LB_PICK_BED, -1), 2);
  overlaid_free (&o);
}

static const LbLook *
look_of (const LbScene *scene, LbPickKind pick, int run)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->pick == pick && item->run == run)
        return &item->look;
    }
  fail_msg ("run %d has no thing of kind %d", run, pick);
  return NULL;
}

/* Told apart without any colour: no two have the same pattern, in both drawings. */
static void
every_run_has_a_pattern_of_its_own (void **state)
{
  Overlaid o = default_runs (4);

  for (int a = 0; a < 4; a++)
    for (int b = 0; b < a; b++)
      {
        assert_int_not_equal (look_of (o.side, LB_PICK_MAINLINE, a)->pattern,
                              look_of (o.side, LB_PICK_MAINLINE, b)->pattern);
        assert_int_not_equal (look_of (o.strip, LB_PICK_LEADER, a)->pattern,
                              look_of (o.strip, LB_PICK_LEADER, b)->pattern);
        assert_int_not_equal (look_of (o.side, LB_PICK_WEIGHT, a)->fill,
                              look_of (o.side, LB_PICK_WEIGHT, b)->fill);
        assert_string_not_equal (lb_overlay_pattern_words ((size_t) a),
                                 lb_overlay_pattern_words ((size_t) b));
      }
  for (size_t run = 0; run < 4; run++)
    {
      double dashes[LB_OVERLAY_MOST_DASHES];
      int n = lb_overlay_dashes (run, 2, dashes);

      assert_true (run == 0 ? n == 0 : n == 2 || n == 4);
      for (int i = 0; i < n; i++)
        assert_less (0, dashes[i]);
    }
  overlaid_free (&o);
}

/* The weights lie where the solves have them, by the one view: the heavier, the nearer. */
static void
one_scale_holds_for_all (void **state)
{
  Overlaid o = default_runs (4);
  double last = INFINITY;

  for (int run = 0; run < 4; run++)
    {
      const LbReadings *r = &o.drawings[run]->readings;
      double x = lb_view_x (&o.view, r->weight.position.x), y;
      LbPick pick;

      y = lb_view_y (&o.view, r->weight.position.z);
      pick = lb_scene_pick (o.side, x, y, 3);
      assert_int_equal (pick.kind, LB_PICK_WEIGHT);
      assert_int_equal (pick.run, run);
      assert_less (x, last);
      last = x;
    }
  for (size_t run = 0; run < 4; run++)
    {
      LbExtents own = lb_picture_extents (&o.overlay.runs[run].picture);

      assert_true (lb_view_holds (&o.view, &own));
    }
  overlaid_free (&o);
}

static void
what_has_no_answer_is_not_drawn (void **state)
{
  LbSetup setup = lb_setup_default ();
  Overlaid o = overlaid_new (&setup, 3);
  char *words;

  o.overlay.runs[1].picture.status = LB_STATUS_NO_CONVERGENCE;
  o.overlay.runs[1].words = "No answer was found.";
  o.overlay.ground.remark = "1½ lb: No answer was found.";
  draw (&o, LB_THEME_LIGHT, 1280, 800);
  for (int pick = LB_PICK_MAINLINE; pick <= LB_PICK_LURE; pick++)
    {
      assert_int_equal (count (o.side, (LbPickKind) pick, 1), 0);
      assert_int_equal (count (o.strip, (LbPickKind) pick, 1), 0);
    }
  assert_int_equal (count (o.side, LB_PICK_MAINLINE, 2), 1);
  words = lb_scene_describe (o.side);
  assert_non_null (strstr (words, "1½ lb is not drawn: No answer was found."));
  g_free (words);
  overlaid_free (&o);
}

static void
without_any_answer_there_is_the_river (void **state)
{
  LbSetup setup = lb_setup_default ();
  Overlaid o = overlaid_new (&setup, 2);

  o.overlay.runs[0].picture.status = o.overlay.runs[1].picture.status = LB_STATUS_BAD_SETUP;
  draw (&o, LB_THEME_DARK, 960, 600);
  assert_int_equal (count (o.side, LB_PICK_MAINLINE, 0), 0);
  assert_true (count (o.side, LB_PICK_REEL, 0) + count (o.side, LB_PICK_REEL, -1) == 1);
  assert_true (count (o.side, LB_PICK_BOAT, -1) > 0);
  overlaid_free (&o);
}

/* A run over another bed shows that bed. */
static void
another_bed_is_drawn (void **state)
{
  LbSetup setup = lb_setup_default (), deep = setup;
  Overlaid o = overlaid_new (&setup, 2);

  drawing_free (o.drawings[1]);
  deep.river.depth += 1;
  o.drawings[1] = drawing_new (&deep);
  o.overlay.runs[1].picture = o.drawings[1]->picture;
  draw (&o, LB_THEME_LIGHT, 1280, 800);
  assert_int_equal (count (o.side, LB_PICK_BED, 0), 0);
  assert_int_equal (count (o.side, LB_PICK_BED, 1), 1);
  overlaid_free (&o);
}

/* ---- Words ---- */

static size_t
count_words (const LbScene *scene, const char *words)
{
  size_t n = 0;

  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      n += item->layout && g_str_has_prefix (pango_layout_get_text (item->layout), words);
    }
  return n;
}

static void
every_run_is_named_at_its_line (void **state)
{
  Overlaid o = default_runs (4);

  for (size_t i = 0; i < 4; i++)
    {
      assert_int_equal (count_words (o.side, names[i]), 1);
      assert_int_equal (count_words (o.strip, names[i]), 2);
    }
  assert_int_equal (o.side->n_missing_labels, 0);
  overlaid_free (&o);
}

static void
the_description_tells_of_every_run (void **state)
{
  Overlaid o = default_runs (4);
  char *side = lb_scene_describe (o.side), *strip = lb_scene_describe (o.strip);

  assert_non_null (strstr (side, "Side view."));
  assert_non_null (strstr (side, "River 20 ft deep."));
  assert_non_null (strstr (side, "1 lb, as a solid line: wire steeper."));
  assert_non_null (strstr (side, "3 lb, as a line of dashes and dots: wire steeper."));
  assert_null (strstr (side, "is not drawn"));
  assert_non_null (strstr (strip, "1½ lb: Lower lure "));
  assert_non_null (strstr (strip, "Upper lure "));
  g_free (side);
  g_free (strip);
  overlaid_free (&o);
}

static void
words_are_clear_for_any_rigs_and_sizes (void **state)
{
  static const double sizes[][2] = { { 640, 300 },  { 800, 420 }, { 960, 600 },
                                     { 1280, 800 }, { 700, 900 }, { 3840, 2160 } };
  TestRandom random = { 20260415 };
  size_t n = test_count (300);

  for (size_t k = 0; k < n; k++)
    {
      LbSetup setup = random_setup (&random);
      Overlaid o = overlaid_new (&setup, 1 + k % MOST);
      char what[64];

      g_snprintf (what, sizeof what, "case %zu", k);
      draw (&o, (LbTheme) (k % LB_N_THEMES), sizes[k % 6][0], sizes[k % 6][1]);
      assert_words_are_clear (o.side, what);
      assert_words_are_clear (o.strip, what);
      assert_nothing_covers_words (o.side, what);
      assert_nothing_covers_words (o.strip, what);
      overlaid_free (&o);
    }
}

/* ---- Drawings of a single rig stay as they are ---- */

static void
a_single_rig_belongs_to_no_run (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);

  for (guint i = 0; i < scenes.side->items->len; i++)
    {
      const LbItem *item = &g_array_index (scenes.side->items, LbItem, i);

      assert_int_equal (item->run, -1);
      assert_true (item->look.stroke < LB_COLOUR_RUN_1 || item->look.stroke > LB_COLOUR_RUN_4);
    }
  assert_int_equal (lb_scene_pick (scenes.side, 5, 5, 1).run, -1);
  scenes_free (&scenes);
  drawing_free (drawing);
}

/* ---- Files ---- */

static void
all_kinds_of_files_are_written (void **state)
{
  static const char *const endings[] = { "png", "svg", "pdf" };
  static const char *const themes[LB_N_THEMES] = { "light", "dark", "print" };
  LbSetup setup = lb_setup_default ();
  Overlaid o = overlaid_new (&setup, 4);

  for (int theme = 0; theme < LB_N_THEMES; theme++)
    for (int kind = 0; kind < 3; kind++)
      {
        g_autofree char *name =
            g_strdup_printf ("draw-overlay-%s.%s", themes[theme], endings[kind]);
        g_autofree char *path = g_build_filename (getenv ("LB_TEST_OUTPUT_DIR"), name, NULL);
        g_autofree char *bytes = NULL;
        gsize length;
        g_autoptr (GError) error = NULL;

        if (!lb_export_write_overlay (path, (LbExportFormat) kind, &o.overlay, (LbTheme) theme, 960,
                                      600, "2026-01-02T03:04:05Z", &error))
          fail_msg ("%s", error->message);
        assert_true (g_file_get_contents (path, &bytes, &length, NULL));
        assert_true (length > 5000);
        /* The description goes into the file, as it does for a single rig. */
        if (kind == LB_EXPORT_SVG)
          assert_non_null (strstr (bytes, "1½ lb, as a dashed line"));
      }
  for (size_t i = 0; i < 4; i++)
    drawing_free (o.drawings[i]);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_run_is_drawn_whole),
    cmocka_unit_test (every_run_has_a_pattern_of_its_own),
    cmocka_unit_test (one_scale_holds_for_all),
    cmocka_unit_test (what_has_no_answer_is_not_drawn),
    cmocka_unit_test (without_any_answer_there_is_the_river),
    cmocka_unit_test (another_bed_is_drawn),
    cmocka_unit_test (every_run_is_named_at_its_line),
    cmocka_unit_test (the_description_tells_of_every_run),
    cmocka_unit_test (words_are_clear_for_any_rigs_and_sizes),
    cmocka_unit_test (a_single_rig_belongs_to_no_run),
    cmocka_unit_test (all_kinds_of_files_are_written),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
