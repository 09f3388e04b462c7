/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The Pass page: played, scrubbed, stepped, looked at from above, computed ahead, called off, begun
 * anew when the document changes, and closed in the middle of it. */
#include "one_window.h"

#include <string.h>

#include "pass_leg_row.h"
#include "pass_page.h"
#include "quantity_entry.h"

static LbPassPage *page;

static LbPassPlayback *
playback (void)
{
  return lb_pass_page_get_playback (page);
}

static LbPassRunState
state_now (void)
{
  return lb_pass_runner_get_state (lb_pass_playback_get_runner (playback ()));
}

static gboolean
is_done (gpointer data)
{
  return lb_pass_playback_get_settled (playback ()) && lb_pass_playback_get_end (playback ()) > 0;
}

static void
settle (void)
{
  harness_wait (is_done, NULL, "the pass");
  harness_frame (GTK_WIDGET (page));
}

/* A pass of some seconds, so that each case is short. */
static void
set_pass (double duration)
{
  LbPassScript script = lb_pass_script_default ();

  script.duration = duration;
  lb_session_do (session (), lb_change_new_pass (&script, NULL));
}

static void
open_page (void)
{
  lb_window_show_main_page (window, LB_MAIN_PAGE_PASS);
  page = LB_PASS_PAGE (lb_window_get_main_page_widget (window, LB_MAIN_PAGE_PASS));
}

static void
open_still (int width, int height)
{
  window = harness_window (width, height);
  g_object_set (gtk_widget_get_settings (GTK_WIDGET (window)), "gtk-enable-animations", FALSE,
                NULL);
  set_pass (20);
  open_page ();
  settle ();
}

static int
open_large (void **state)
{
  open_still (1280, 800);
  return 0;
}

static int
open_small (void **state)
{
  open_still (960, 600);
  return 0;
}

static int
close_page (void **state)
{
  g_object_set (gtk_widget_get_settings (GTK_WIDGET (window)), "gtk-enable-animations", TRUE, NULL);
  harness_close (window);
  return 0;
}

static void
act (const char *action)
{
  assert_true (gtk_widget_activate_action (GTK_WIDGET (page), action, NULL));
}

static char *
words_of (LbPassCanvasKind kind)
{
  return lb_pass_canvas_describe (
      lb_pass_drawings_get_canvas (lb_pass_page_get_drawings (page), kind));
}

static void
picture (const char *name)
{
  int width, height;
  g_autofree guchar *pixels = NULL;

  harness_pause (300);
  pixels = harness_picture (window, name, 1, &width, &height);
}

/* ---- Playing ---- */

static gboolean
has_gone_on (gpointer data)
{
  return lb_pass_playback_get_time (playback ()) > *(double *) data;
}

static void
it_plays_and_pauses (void **state)
{
  double half = 0.5, before;

  assert_false (lb_pass_playback_get_playing (playback ()));
  assert_near (lb_pass_playback_get_time (playback ()), 0, 0);
  act ("pass.play");
  assert_true (lb_pass_playback_get_playing (playback ()));
  harness_wait (has_gone_on, &half, "half a second of the pass");
  act ("pass.play");
  before = lb_pass_playback_get_time (playback ());
  harness_pause (150);
  assert_near (lb_pass_playback_get_time (playback ()), before, 0);
}

/* By the clock: at 8 times the speed a pass goes by in about an eighth of its time. */
static void
it_plays_at_the_speed_that_is_chosen (void **state)
{
  double four = 4;
  gint64 start;

  for (int i = 0; i < 3; i++)
    act ("pass.faster");
  assert_near (lb_pass_playback_get_speed (playback ()), 8, 0);
  act ("pass.faster");
  assert_near (lb_pass_playback_get_speed (playback ()), 8, 0);
  start = g_get_monotonic_time ();
  act ("pass.play");
  harness_wait (has_gone_on, &four, "four seconds of the pass");
  assert_true (g_get_monotonic_time () - start >= 400000);
  act ("pass.play");
  for (int i = 0; i < 9; i++)
    act ("pass.slower");
  assert_near (lb_pass_playback_get_speed (playback ()), 0.5, 0);
}

static gboolean
has_ended (gpointer data)
{
  return !lb_pass_playback_get_playing (playback ());
}

static void
it_ceases_at_the_end_and_begins_anew (void **state)
{
  lb_pass_playback_go_to (playback (), 19.8);
  act ("pass.play");
  harness_wait (has_ended, NULL, "the end");
  assert_near (lb_pass_playback_get_time (playback ()), 20, 1e-9);
  act ("pass.play");
  assert_less (lb_pass_playback_get_time (playback ()), 1);
}

static void
it_does_not_play_by_itself_without_animations (void **state)
{
  harness_pause (200);
  assert_false (lb_pass_playback_get_playing (playback ()));
  assert_near (lb_pass_playback_get_time (playback ()), 0, 0);
}

static void
it_plays_by_itself_with_animations (void **state)
{
  double some = 0.1;

  window = harness_window (1280, 800);
  open_page ();
  assert_true (lb_pass_playback_get_playing (playback ()));
  harness_wait (has_gone_on, &some, "the first moments");
  /* Nobody looks: it does not go on. */
  lb_window_show_main_page (window, LB_MAIN_PAGE_SIDE_VIEW);
  assert_false (lb_pass_playback_get_playing (playback ()));
  lb_window_show_main_page (window, LB_MAIN_PAGE_PASS);
  assert_false (lb_pass_playback_get_playing (playback ()));
  harness_close (window);
}

/* ---- Moments ---- */

static void
steps_and_ends (void **state)
{
  act ("pass.step-on");
  assert_near (lb_pass_playback_get_time (playback ()), 0.1, 1e-9);
  act ("pass.long-step-on");
  assert_near (lb_pass_playback_get_time (playback ()), 1.1, 1e-9);
  act ("pass.step-back");
  assert_near (lb_pass_playback_get_time (playback ()), 1.0, 1e-9);
  act ("pass.end");
  assert_near (lb_pass_playback_get_time (playback ()), 20, 1e-9);
  act ("pass.step-on");
  assert_near (lb_pass_playback_get_time (playback ()), 20, 1e-9);
  act ("pass.start");
  assert_near (lb_pass_playback_get_time (playback ()), 0, 0);
  act ("pass.long-step-back");
  assert_near (lb_pass_playback_get_time (playback ()), 0, 0);
}

static void
the_slider_scrubs (void **state)
{
  LbPassBar *bar = lb_pass_page_get_bar (page);
  g_autofree char *words = NULL;

  act ("pass.play");
  gtk_range_set_value (GTK_RANGE (lb_pass_bar_get_slider (bar)), 7.5);
  assert_near (lb_pass_playback_get_time (playback ()), 7.5, 1e-9);
  assert_false (lb_pass_playback_get_playing (playback ()));
  assert_string_equal (lb_pass_bar_get_time (bar), "7.5 s of 20 s");
  words = words_of (LB_PASS_CANVAS_SIDE);
  assert_non_null (strstr (words, "At 7.5 s of a pass of 20 s."));
}

static GtkGesture *
drag_of (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkGesture) gesture = g_list_model_get_item (controllers, i);

      if (GTK_IS_GESTURE_DRAG (gesture))
        return gesture;
    }
  return NULL;
}

static void
a_press_on_the_chart_goes_there (void **state)
{
  LbPassCanvas *chart =
      lb_pass_drawings_get_canvas (lb_pass_page_get_drawings (page), LB_PASS_CANVAS_CHART);
  GtkGesture *drag = drag_of (GTK_WIDGET (chart));
  double wanted = lb_pass_chart_time (lb_pass_canvas_get_scene (chart), 300);

  assert_non_null (drag);
  g_signal_emit_by_name (drag, "drag-begin", 300.0, 40.0);
  assert_true (wanted > 1);
  assert_near (lb_pass_playback_get_time (playback ()), wanted, 1e-9);
  g_signal_emit_by_name (drag, "drag-begin", 100000.0, 40.0);
  assert_near (lb_pass_playback_get_time (playback ()), 20, 1e-9);
}

/* ---- Views ---- */

static void
it_is_seen_from_above (void **state)
{
  LbPassDrawings *drawings = lb_pass_page_get_drawings (page);
  g_autofree char *words = NULL;

  assert_false (lb_pass_drawings_get_above (drawings));
  gtk_widget_grab_focus (GTK_WIDGET (lb_pass_drawings_get_canvas (drawings, LB_PASS_CANVAS_SIDE)));
  act ("pass.view");
  harness_frame (GTK_WIDGET (page));
  assert_true (lb_pass_drawings_get_above (drawings));
  /* The keys for playing go on working. */
  assert_true (gtk_widget_is_focus (
      GTK_WIDGET (lb_pass_drawings_get_canvas (drawings, LB_PASS_CANVAS_ABOVE))));
  words = words_of (LB_PASS_CANVAS_ABOVE);
  assert_non_null (strstr (words, "from above"));
  act ("pass.end");
  picture ("pass-above");
  act ("pass.view");
  assert_false (lb_pass_drawings_get_above (drawings));
}

static const LbView *
view_now (void)
{
  return &lb_pass_canvas_get_camera (lb_pass_drawings_get_view (lb_pass_page_get_drawings (page)))
              ->view;
}

static double
reel_x (void)
{
  LbPassPicture shown;
  LbTrackMoment now;

  assert_true (lb_pass_playback_get_picture (playback (), &shown));
  assert_true (lb_track_at (&shown.track, shown.time, &now));
  return lb_view_x (view_now (), now.reel.x);
}

/* Nearer about the weight, further, all of it again; from the side and from above. */
static void
the_view_zooms (void **state)
{
  for (int above = 0; above < 2; above++)
    {
      double scale, near;

      harness_frame (GTK_WIDGET (page));
      scale = view_now ()->per_metre_x;
      assert_true (scale > 0);
      act ("pass.zoom-in");
      act ("pass.zoom-in");
      near = view_now ()->per_metre_x;
      assert_near (near, 1.25 * 1.25 * scale, 1e-9 * near);
      act ("pass.long-step-on");
      assert_near (view_now ()->per_metre_x, near, 0);
      act ("pass.zoom-out");
      assert_near (view_now ()->per_metre_x, near / 1.25, 1e-9 * near);
      assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.zoom-in", NULL));
      assert_true (view_now ()->per_metre_x > near / 1.25);
      for (int i = 0; i < 60; i++)
        act ("pass.zoom-in");
      harness_frame (GTK_WIDGET (page));
      assert_true (view_now ()->per_metre_x < 3000);
      if (!above)
        picture ("pass-close");
      act ("pass.zoom-fit");
      act ("pass.start");
      assert_near (view_now ()->per_metre_x, scale, 1e-9);
      act ("pass.view");
    }
}

/* The boat stays where it is in the picture while the river goes by. */
static void
the_view_follows (void **state)
{
  double at;

  act ("pass.follow");
  at = reel_x ();
  for (int i = 0; i < 15; i++)
    {
      act ("pass.long-step-on");
      assert_near (reel_x (), at, 1e-6);
    }
  picture ("pass-following");
  act ("pass.zoom-in");
  at = reel_x ();
  act ("pass.start");
  assert_near (reel_x (), at, 1e-6);
  act ("pass.follow");
  act ("pass.zoom-fit");
  at = reel_x ();
  act ("pass.end");
  assert_true (reel_x () < at - 50);
}

static void
words_are_told_of_all_drawings (void **state)
{
  g_autofree char *side = words_of (LB_PASS_CANVAS_SIDE);
  g_autofree char *chart = words_of (LB_PASS_CANVAS_CHART);

  assert_non_null (strstr (side, "Side view."));
  assert_non_null (strstr (side, "Lower lure"));
  assert_non_null (strstr (chart, "Time chart of the pass"));
  assert_non_null (strstr (chart, "Hand: "));
}

/* ---- Choices ---- */

static GtkWidget *
find_named (GtkWidget *from, GType type, const char *tooltip)
{
  if (g_type_is_a (G_OBJECT_TYPE (from), type)
      && (!tooltip || g_strcmp0 (gtk_widget_get_tooltip_text (from), tooltip) == 0))
    return from;
  for (GtkWidget *child = gtk_widget_get_first_child (from); child;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_named (child, type, tooltip);

      if (found)
        return found;
    }
  return NULL;
}

static const LbPassScript *
script (void)
{
  return &lb_document_get_contents (lb_session_get_document (session ()))->pass;
}

static void
enter (GtkWidget *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  lb_quantity_entry_commit (LB_QUANTITY_ENTRY (entry));
}

static void
legs_are_added_changed_and_taken_away (void **state)
{
  GtkWidget *section = gtk_widget_get_parent (gtk_widget_get_parent (
      find_named (GTK_WIDGET (page), GTK_TYPE_BUTTON,
                  "A stretch of the course with a speed, a time and a turn of its own")));
  GtkWidget *add =
      find_named (GTK_WIDGET (page), GTK_TYPE_BUTTON,
                  "A stretch of the course with a speed, a time and a turn of its own");
  GtkWidget *entry;

  assert_non_null (section);
  g_signal_emit_by_name (add, "clicked");
  settle ();
  assert_int_equal (script ()->n_legs, 1);
  assert_near (lb_pass_playback_get_duration (playback ()), 30, 1e-9);
  entry = find_named (GTK_WIDGET (page), LB_TYPE_QUANTITY_ENTRY, NULL);
  assert_non_null (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), "1.5 mph");
  lb_quantity_entry_commit (LB_QUANTITY_ENTRY (entry));
  assert_near (script ()->legs[0].speed, 1.5 * 0.44704, 1e-9);
  settle ();
  lb_session_undo (session ());
  assert_false (lb_is_set (script ()->legs[0].speed));
  g_signal_emit_by_name (find_named (GTK_WIDGET (page), GTK_TYPE_BUTTON, "Remove leg 1"),
                         "clicked");
  assert_int_equal (script ()->n_legs, 0);
  settle ();
}

/* A leg by distance, with a turn rate, stays so when another of its numbers changes; each change
 * can be undone. */
static void
legs_keep_the_way_they_are_given (void **state)
{
  LbPassScript given = lb_pass_script_default ();
  LbPassLegRow *row;

  given.n_legs = 1;
  given.legs[0] = lb_course_leg_default ();
  given.legs[0].duration = LB_UNSET;
  given.legs[0].distance = 12;
  given.legs[0].turn_rate = 1.5;
  lb_session_do (session (), lb_change_new_pass (&given, NULL));
  settle ();
  row = LB_PASS_LEG_ROW (find_named (GTK_WIDGET (page), LB_TYPE_PASS_LEG_ROW, NULL));
  enter (lb_pass_leg_row_get_entry (row, LB_LEG_SPEED), "1 mph");
  enter (lb_pass_leg_row_get_entry (row, LB_LEG_DISTANCE), "15 m");
  enter (lb_pass_leg_row_get_entry (row, LB_LEG_LINE), "-0.1 m");
  enter (lb_pass_leg_row_get_entry (row, LB_LEG_TURN_RATE), "-2");
  assert_false (lb_is_set (script ()->legs[0].duration));
  assert_near (script ()->legs[0].distance, 15, 1e-9);
  assert_near (script ()->legs[0].line_rate, -0.1, 1e-9);
  assert_near (script ()->legs[0].turn_rate, -2, 1e-9);
  settle ();
  picture ("pass-leg");
  /* The other way to say it: 15 m at 1 mph. */
  gtk_drop_down_set_selected (GTK_DROP_DOWN (lb_pass_leg_row_get_length (row)), 0);
  assert_near (script ()->legs[0].duration, 15 / 0.44704, 1e-9);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (lb_pass_leg_row_get_turning (row)), 0);
  assert_false (lb_is_set (script ()->legs[0].turn_rate));
  /* It turns when the hand has got to its rate of line, which takes the first second. */
  assert_near (script ()->legs[0].turn, -2 * (15 / 0.44704 - 1), 1e-9);
  for (int i = 0; i < 6; i++)
    lb_session_undo (session ());
  assert_true (lb_pass_script_equal (script (), &given));
  settle ();
}

static void
a_second_rig_comes_and_goes (void **state)
{
  GtkWidget *check = find_named (GTK_WIDGET (page), GTK_TYPE_CHECK_BUTTON, NULL);
  LbPassPicture shown;

  assert_non_null (check);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  assert_near (script ()->second_weight, setup ()->rig.weight.mass, 0);
  settle ();
  assert_true (lb_pass_playback_get_picture (playback (), &shown));
  assert_int_equal (shown.second.n, shown.track.n);
  assert_non_null (shown.second_shape);
  act ("pass.view");
  lb_pass_playback_go_to (playback (), 12);
  picture ("pass-two-rigs");
  lb_session_undo (session ());
  assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (check)));
  settle ();
  assert_true (lb_pass_playback_get_picture (playback (), &shown));
  assert_int_equal (shown.second.n, 0);
}

/* ---- Snag ---- */

static char *
snag_words (void)
{
  return lb_pass_snag_page_dup_text (lb_pass_page_get_snag (page));
}

/* It follows the choices and the settings of the document. */
static void
what_a_snag_does_is_shown (void **state)
{
  LbPassSnagPage *snag = lb_pass_page_get_snag (page);
  GtkDropDown *held = GTK_DROP_DOWN (lb_pass_snag_page_get_held (snag));
  g_autofree char *going = NULL, *stopped = NULL, *lure = NULL, *faster = NULL;

  act ("pass.snag");
  picture ("pass-snag");
  going = snag_words ();
  assert_non_null (strstr (going, "Hand limit, 44 lbf\tafter "));
  assert_non_null (strstr (going, "The boat goes\t0.9 mph up the river"));
  assert_non_null (strstr (going, "Chart of the pull in the hand"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (lb_pass_snag_page_get_boat (snag)), 1);
  stopped = snag_words ();
  assert_non_null (strstr (stopped, "down the river"));
  picture ("pass-snag-stopped");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (lb_pass_snag_page_get_boat (snag)), 0);
  assert_int_equal (g_list_model_get_n_items (gtk_drop_down_get_model (held)),
                    1 + setup ()->rig.n_leaders);
  gtk_drop_down_set_selected (held, 1);
  lure = snag_words ();
  assert_string_not_equal (lure, going);
  gtk_drop_down_set_selected (held, 0);
  lb_session_set_value (session (), lb_field ("boat.speed_over_ground_m_s"), 0, 1, 0);
  harness_pause (200);
  faster = snag_words ();
  assert_non_null (strstr (faster, "2.2 mph up the river"));
  act ("pass.choices");
  settle ();
}

/* ---- Fish on ---- */

static gboolean
fish_is_settled (gpointer data)
{
  return lb_pass_fish_page_get_settled (lb_pass_page_get_fish (page));
}

static char *
fish_words (void)
{
  harness_wait (fish_is_settled, NULL, "the loads");
  return lb_pass_fish_page_dup_text (lb_pass_page_get_fish (page));
}

/* "Drag of the fish" in lbf, the first of the text: that of the closed mouth. */
static double
drag_told (const char *text)
{
  const char *at = strstr (text, "Drag of the fish\t");

  assert_non_null (at);
  return g_ascii_strtod (at + strlen ("Drag of the fish\t"), NULL);
}

/* Drag grows with the square of the length, and somewhat more, as the lure rises into faster water.
 */
static void
a_fish_is_held (void **state)
{
  LbPassFishPage *fish = lb_pass_page_get_fish (page);
  GtkDropDown *lure = GTK_DROP_DOWN (lb_pass_fish_page_get_lure (fish));
  g_autofree char *usual = NULL, *twice = NULL, *slow = NULL, *none = NULL, *upper = NULL;

  act ("pass.fish");
  usual = fish_words ();
  picture ("pass-fish");
  assert_int_equal (gtk_drop_down_get_selected (lure), 1);
  assert_non_null (strstr (usual, "With it on the lower lure the hand would hold about"));
  assert_non_null (strstr (usual, "Hand at 0.9 mph\t"));
  enter (lb_pass_fish_page_get_length (fish), "5 ft");
  twice = fish_words ();
  assert_true (drag_told (twice) > 3.9 * drag_told (usual));
  assert_true (drag_told (twice) < 6 * drag_told (usual));
  enter (lb_pass_fish_page_get_speed (fish), "0.2 mph");
  slow = fish_words ();
  assert_non_null (strstr (slow, "Hand at 0.2 mph\t"));
  gtk_drop_down_set_selected (lure, 2);
  upper = fish_words ();
  assert_non_null (strstr (upper, "on the upper lure"));
  gtk_drop_down_set_selected (lure, 0);
  none = fish_words ();
  assert_string_equal (none, "No fish is on.");
  /* Closed while it is asked. */
  gtk_drop_down_set_selected (lure, 1);
}

/* ---- Computing ---- */

static void
another_rig_begins_anew (void **state)
{
  const LbField *mass = lb_field ("weight.mass_kg");
  g_autofree char *before =
      g_strdup (lb_pass_summary_view_get_sentence (lb_pass_page_get_summary (page)));

  assert_string_not_equal (before, "");
  lb_pass_playback_go_to (playback (), 10);
  assert_non_null (mass);
  lb_session_set_value (session (), mass, 0, 1.2, 0);
  assert_near (lb_pass_playback_get_time (playback ()), 0, 0);
  settle ();
  assert_near (lb_pass_playback_get_end (playback ()), 20, 1e-9);
  assert_string_not_equal (lb_pass_summary_view_get_sentence (lb_pass_page_get_summary (page)), "");
  /* What is none of the pass leaves it alone. */
  lb_pass_playback_go_to (playback (), 10);
  lb_session_do (session (), lb_change_new_title ("Stony Bend"));
  assert_near (lb_pass_playback_get_time (playback ()), 10, 1e-9);
}

/* An hour takes seconds to compute: it plays before that, is called off, and asked for anew. */
static gboolean
has_begun (gpointer data)
{
  return lb_pass_playback_get_end (playback ()) >= 1;
}

static gboolean
is_further (gpointer data)
{
  return lb_pass_playback_get_end (playback ()) > *(double *) data + 1;
}

static void
a_long_pass_plays_while_it_is_computed (void **state)
{
  double half = 0.5, end;

  set_pass (3600);
  harness_wait (has_begun, NULL, "the first second");
  assert_int_equal (state_now (), LB_PASS_RUN_GOING);
  act ("pass.play");
  harness_wait (has_gone_on, &half, "playing while it computes");
  /* Held to what is known. */
  lb_pass_playback_go_to (playback (), 3600);
  assert_true (lb_pass_playback_get_time (playback ()) <= lb_pass_playback_get_end (playback ()));
  act ("pass.cancel");
  settle ();
  assert_int_equal (state_now (), LB_PASS_RUN_CANCELLED);
  end = lb_pass_playback_get_end (playback ());
  assert_true (end < 3600);
  harness_pause (100);
  assert_near (lb_pass_playback_get_end (playback ()), end, 0);
  assert_non_null (lb_pass_bar_get_said (lb_pass_page_get_bar (page)));
  /* What is there can be played, and it goes on from there. */
  lb_pass_playback_go_to (playback (), end / 2);
  act ("pass.go-on");
  assert_int_equal (state_now (), LB_PASS_RUN_GOING);
  assert_near (lb_pass_playback_get_time (playback ()), end / 2, 0);
  assert_near (lb_pass_playback_get_end (playback ()), end, 0);
  harness_wait (is_further, &end, "more of the pass");
  /* Nobody looks: it waits, and goes on when somebody does. */
  lb_window_show_main_page (window, LB_MAIN_PAGE_SIDE_VIEW);
  end = lb_pass_playback_get_end (playback ());
  lb_window_show_main_page (window, LB_MAIN_PAGE_PASS);
  assert_true (lb_pass_playback_get_end (playback ()) >= end);
  harness_wait (is_further, &end, "still more of the pass");
  /* Edits while it computes: the last one counts. */
  for (int i = 1; i <= 20; i++)
    set_pass (5 + i);
  settle ();
  assert_int_equal (state_now (), LB_PASS_RUN_WHOLE);
  assert_near (lb_pass_playback_get_duration (playback ()), 25, 1e-9);
}

static void
the_window_closes_while_it_computes (void **state)
{
  window = harness_window (1280, 800);
  set_pass (3600);
  open_page ();
  harness_wait (has_begun, NULL, "the first second");
  harness_close (window);
}

static void
what_cannot_be_is_said (void **state)
{
  LbPassScript never = lb_pass_script_default ();

  never.n_legs = 1;
  never.legs[0] = lb_course_leg_default ();
  never.legs[0].duration = LB_UNSET;
  never.legs[0].distance = 10;
  never.legs[0].speed = 0;
  lb_session_do (session (), lb_change_new_pass (&never, NULL));
  harness_pause (100);
  assert_int_equal (state_now (), LB_PASS_RUN_REFUSED);
  assert_non_null (lb_pass_bar_get_said (lb_pass_page_get_bar (page)));
  act ("pass.play");
  act ("pass.end");
  act ("pass.view");
  harness_frame (GTK_WIDGET (page));
  lb_session_undo (session ());
  settle ();
  assert_int_equal (state_now (), LB_PASS_RUN_WHOLE);
}

/* ---- Pictures ---- */

static void
set_lifting (void)
{
  LbPassScript lifting = lb_pass_script_default ();

  lifting.duration = 40;
  lifting.n_legs = 2;
  lifting.legs[0] = lifting.legs[1] = lb_course_leg_default ();
  lifting.legs[1].turn = 30;
  lifting.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 0.3, 4 };
  lb_session_do (session (), lb_change_new_pass (&lifting, NULL));
  settle ();
  lb_pass_playback_go_to (playback (), 27);
}

static void
pictures (void **state)
{
  set_lifting ();
  picture ("pass-1280x800");
  g_object_set (lb_application_get_preferences (harness_application ()), "theme", "dark", NULL);
  picture ("pass-dark");
}

static void
pictures_in_a_small_window (void **state)
{
  set_lifting ();
  picture ("pass-960x600");
  act ("pass.view");
  picture ("pass-960x600-above");
}

static void
pictures_in_a_huge_window (void **state)
{
  open_still (3840, 2160);
  set_lifting ();
  picture ("pass-3840x2160");
  close_page (NULL);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (it_plays_and_pauses, open_large, close_page),
    cmocka_unit_test_setup_teardown (it_plays_at_the_speed_that_is_chosen, open_large, close_page),
    cmocka_unit_test_setup_teardown (it_ceases_at_the_end_and_begins_anew, open_small, close_page),
    cmocka_unit_test_setup_teardown (it_does_not_play_by_itself_without_animations, open_small,
                                     close_page),
    cmocka_unit_test (it_plays_by_itself_with_animations),
    cmocka_unit_test_setup_teardown (steps_and_ends, open_small, close_page),
    cmocka_unit_test_setup_teardown (the_slider_scrubs, open_small, close_page),
    cmocka_unit_test_setup_teardown (a_press_on_the_chart_goes_there, open_large, close_page),
    cmocka_unit_test_setup_teardown (it_is_seen_from_above, open_large, close_page),
    cmocka_unit_test_setup_teardown (the_view_zooms, open_large, close_page),
    cmocka_unit_test_setup_teardown (the_view_follows, open_large, close_page),
    cmocka_unit_test_setup_teardown (words_are_told_of_all_drawings, open_large, close_page),
    cmocka_unit_test_setup_teardown (legs_are_added_changed_and_taken_away, open_large, close_page),
    cmocka_unit_test_setup_teardown (legs_keep_the_way_they_are_given, open_large, close_page),
    cmocka_unit_test_setup_teardown (a_second_rig_comes_and_goes, open_large, close_page),
    cmocka_unit_test_setup_teardown (what_a_snag_does_is_shown, open_large, close_page),
    cmocka_unit_test_setup_teardown (a_fish_is_held, open_small, close_page),
    cmocka_unit_test_setup_teardown (another_rig_begins_anew, open_large, close_page),
    cmocka_unit_test_setup_teardown (a_long_pass_plays_while_it_is_computed, open_large,
                                     close_page),
    cmocka_unit_test (the_window_closes_while_it_computes),
    cmocka_unit_test_setup_teardown (what_cannot_be_is_said, open_large, close_page),
    cmocka_unit_test_setup_teardown (pictures, open_large, close_page),
    cmocka_unit_test_setup_teardown (pictures_in_a_small_window, open_small, close_page),
    cmocka_unit_test (pictures_in_a_huge_window),
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
