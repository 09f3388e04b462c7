/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The column of the Pass page: its choices of lures follow a rig whose leaders change, answers that
 * come late are not shown, what the pass comes to and cautions of is told, and entries
 * say what they are for. */
#include "one_window.h"

#include <string.h>

#include "pass_leg_row.h"
#include "pass_page.h"
#include "quantity_entry.h"

static LbPassPage *page;

static int
open_at (int width, int height)
{
  window = harness_window (width, height);
  lb_window_show_main_page (window, LB_MAIN_PAGE_PASS);
  page = LB_PASS_PAGE (lb_window_get_main_page_widget (window, LB_MAIN_PAGE_PASS));
  lb_pass_playback_set_playing (lb_pass_page_get_playback (page), FALSE);
  return 0;
}

static int
open_column (void **state)
{
  return open_at (960, 600);
}

static int
open_large (void **state)
{
  return open_at (1280, 800);
}

static void
act (const char *action)
{
  assert_true (gtk_widget_activate_action (GTK_WIDGET (page), action, NULL));
  harness_frame (GTK_WIDGET (page));
}

static void
change (LbChange *change)
{
  lb_session_do (session (), change);
  harness_solved (window);
}

/* ---- Lures ---- */

static void
assert_choice (GtkDropDown *choice, guint n_lures, guint chosen)
{
  assert_int_equal (g_list_model_get_n_items (gtk_drop_down_get_model (choice)), 1 + n_lures);
  assert_int_equal (gtk_drop_down_get_selected (choice), chosen);
}

static const char *
name_in (GtkDropDown *choice, guint position)
{
  return gtk_string_list_get_string (GTK_STRING_LIST (gtk_drop_down_get_model (choice)), position);
}

/* From two leaders to three, to one and back to two, with a lure chosen. */
static void
follows_the_leaders (GtkDropDown *choice)
{
  LbDocument *document = lb_session_get_document (session ());

  assert_int_equal (setup ()->rig.n_leaders, 2);
  gtk_drop_down_set_selected (choice, 2);
  assert_string_equal (name_in (choice, 2), "upper lure");
  change (lb_change_new_add_leader (document));
  assert_choice (choice, 3, 2);
  assert_string_equal (name_in (choice, 2), "middle lure");
  gtk_drop_down_set_selected (choice, 3);
  change (lb_change_new_remove_leader (document, 2));
  assert_choice (choice, 2, 0);
  gtk_drop_down_set_selected (choice, 1);
  change (lb_change_new_remove_leader (document, 1));
  assert_choice (choice, 1, 1);
  assert_string_equal (name_in (choice, 1), "lure");
  lb_session_undo (session ());
  harness_solved (window);
  assert_choice (choice, 2, 1);
}

static void
a_snag_follows_the_leaders (void **state)
{
  act ("pass.snag");
  follows_the_leaders (GTK_DROP_DOWN (lb_pass_snag_page_get_held (lb_pass_page_get_snag (page))));
}

static void
a_fish_follows_the_leaders (void **state)
{
  act ("pass.fish");
  follows_the_leaders (GTK_DROP_DOWN (lb_pass_fish_page_get_lure (lb_pass_page_get_fish (page))));
}

/* ---- Answers that come late ---- */

static gboolean
fish_is_settled (gpointer data)
{
  return lb_pass_fish_page_get_settled (lb_pass_page_get_fish (page));
}

static void
an_answer_that_is_not_wanted_any_more_is_not_shown (void **state)
{
  LbPassFishPage *fish = lb_pass_page_get_fish (page);
  GtkDropDown *lure = GTK_DROP_DOWN (lb_pass_fish_page_get_lure (fish));
  g_autofree char *none = NULL;

  act ("pass.fish");
  harness_wait (fish_is_settled, NULL, "the loads");
  gtk_drop_down_set_selected (lure, 2);
  assert_false (lb_pass_fish_page_get_settled (fish));
  gtk_drop_down_set_selected (lure, 0);
  harness_wait (fish_is_settled, NULL, "the loads of before");
  none = lb_pass_fish_page_dup_text (fish);
  assert_string_equal (none, "No fish is on.");
}

/* ---- What came of it ---- */

static gboolean
is_done (gpointer data)
{
  LbPassPlayback *playback = lb_pass_page_get_playback (page);

  return lb_pass_runner_get_state (lb_pass_playback_get_runner (playback)) == LB_PASS_RUN_WHOLE
         && lb_pass_playback_get_settled (playback);
}

static char *
summary (void)
{
  harness_wait (is_done, NULL, "the pass");
  harness_frame (GTK_WIDGET (page));
  return lb_pass_summary_view_dup_text (lb_pass_page_get_summary (page));
}

static void
picture (const char *name)
{
  int width, height;
  g_autofree guchar *pixels = NULL;

  harness_pause (300);
  pixels = harness_picture (window, name, 1, &width, &height);
}

static void
set_pass (double duration)
{
  LbPassScript script = lb_pass_script_default ();

  script.duration = duration;
  lb_session_do (session (), lb_change_new_pass (&script, NULL));
}

/* A torn hand is a matter of the pass, not of how it began: the cautions are those of all of it,
 * and the standing ones are there whatever it comes to. */
static void
the_cautions_of_the_whole_pass_are_shown (void **state)
{
  LbPassScript script = lb_pass_script_default ();
  g_autofree char *quiet = NULL, *wild = NULL, *none = NULL;

  set_pass (10);
  quiet = summary ();
  assert_non_null (strstr (quiet, "Never wrap the wire"));
  assert_null (strstr (quiet, "reached at"));
  assert_null (strstr (quiet, "At the start"));
  picture ("pass-cautions-960x600");
  script.duration = 20;
  script.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 1.5, 3 };
  lb_session_do (session (), lb_change_new_pass (&script, NULL));
  none = lb_pass_summary_view_dup_text (lb_pass_page_get_summary (page));
  assert_non_null (strstr (none, "Never wrap the wire"));
  lb_session_set_value (session (), lb_field ("weight.mass_kg"), 0, 3.5, 0);
  wild = summary ();
  assert_non_null (strstr (wild, "(reached at "));
  picture ("pass-cautions-wild-960x600");
}

static void
what_is_to_be_said_of_the_start_is_shown (void **state)
{
  g_autofree char *high = NULL, *low = NULL;

  lb_session_do (session (), lb_change_new_line_out (LB_LINE_OUT_WEIGHT_ABOVE_BED, 50));
  set_pass (5);
  high = summary ();
  assert_non_null (strstr (high, "At the start: The weight cannot be held as high as"));
  picture ("pass-remark-960x600");
  lb_session_do (session (), lb_change_new_line_out (LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.3));
  low = summary ();
  assert_null (strstr (low, "At the start"));
}

static void
pictures_in_a_large_window (void **state)
{
  g_autofree char *text = NULL;

  set_pass (20);
  text = summary ();
  picture ("pass-cautions-1280x800");
}

/* ---- Legs ---- */

static GtkWidget *
find_leg (GtkWidget *from, int *number)
{
  if (LB_IS_PASS_LEG_ROW (from) && --*number == 0)
    return from;
  for (GtkWidget *child = gtk_widget_get_first_child (from); child;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_leg (child, number);

      if (found)
        return found;
    }
  return NULL;
}

static LbCourse
course (void)
{
  LbPassJob job;
  const LbContents *contents = lb_document_get_contents (lb_session_get_document (session ()));

  assert_int_equal (lb_pass_script_plan (&contents->pass, &contents->setup, &job, NULL),
                    LB_STATUS_OK);
  return job.plan.course;
}

static void
assert_same_course (const LbCourse *a)
{
  LbCourse b = course ();

  assert_int_equal (a->n_points, b.n_points);
  for (size_t i = 0; i < a->n_points; i++)
    {
      assert_near (a->points[i].time, b.points[i].time, 1e-9);
      assert_near (a->points[i].speed, b.points[i].speed, 1e-9);
      assert_near (a->points[i].heading, b.points[i].heading, 1e-9);
    }
}

/* From 0.4 to 0.9 m/s takes 2 s of 30, for 1.3 m, and the turn is left the other 28. */
static void
a_leg_said_otherwise_is_the_same_course (void **state)
{
  LbPassScript said = lb_pass_script_default ();
  const LbPassScript *now;
  int number = 2;
  GtkDropDown *length, *turning;
  LbPassLegRow *row;
  LbCourse before;

  said.n_legs = 2;
  said.legs[0] = said.legs[1] = lb_course_leg_default ();
  said.legs[0].duration = 10;
  said.legs[0].speed = 0.4;
  said.legs[1].speed = 0.9;
  said.legs[1].turn = 56;
  lb_session_do (session (), lb_change_new_pass (&said, NULL));
  before = course ();
  row = LB_PASS_LEG_ROW (find_leg (GTK_WIDGET (page), &number));
  length = GTK_DROP_DOWN (lb_pass_leg_row_get_length (row));
  turning = GTK_DROP_DOWN (lb_pass_leg_row_get_turning (row));
  now = &lb_document_get_contents (lb_session_get_document (session ()))->pass;
  gtk_drop_down_set_selected (length, 1);
  assert_near (now->legs[1].distance, 0.65 * 2 + 0.9 * 28, 1e-9);
  assert_same_course (&before);
  gtk_drop_down_set_selected (turning, 1);
  assert_near (now->legs[1].turn_rate, 2, 1e-9);
  assert_same_course (&before);
  gtk_drop_down_set_selected (length, 0);
  assert_near (now->legs[1].duration, 30, 1e-9);
  gtk_drop_down_set_selected (turning, 0);
  assert_near (now->legs[1].turn, 56, 1e-9);
  assert_same_course (&before);
}

/* ---- Ends ---- */

static GtkEntry *
entry_for (GtkWidget *from, const char *tooltip)
{
  const char *own = gtk_widget_get_tooltip_text (from);

  if (LB_IS_QUANTITY_ENTRY (from) && own && g_str_has_prefix (own, tooltip))
    return GTK_ENTRY (from);
  for (GtkWidget *child = gtk_widget_get_first_child (from); child;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkEntry *found = entry_for (child, tooltip);

      if (found)
        return found;
    }
  return NULL;
}

static void
type (GtkEntry *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  lb_quantity_entry_commit (LB_QUANTITY_ENTRY (entry));
}

/* Two minutes and the boat's place are what there is when nothing is said. */
static void
length_and_start_are_said_and_taken_back (void **state)
{
  GtkEntry *lasts = entry_for (GTK_WIDGET (page), "Empty: as long as its course");
  GtkEntry *starts = entry_for (GTK_WIDGET (page), "Where the reel is at first");
  const LbPassScript *script =
      &lb_document_get_contents (lb_session_get_document (session ()))->pass;

  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (lasts)), "");
  assert_string_equal (gtk_entry_get_placeholder_text (lasts), "120 s");
  type (lasts, "15");
  type (starts, "-10 m");
  assert_near (script->duration, 15, 1e-9);
  assert_near (script->start, -10, 1e-9);
  harness_wait (is_done, NULL, "the pass");
  picture ("pass-ends-960x600");
  type (lasts, "");
  type (starts, "");
  assert_false (lb_is_set (script->duration));
  assert_false (lb_is_set (script->start));
  assert_string_equal (gtk_entry_get_placeholder_text (lasts), "120 s");
  lb_session_undo (session ());
  assert_near (script->start, -10, 1e-9);
}

/* ---- Entries ---- */

static void
a_fault_gives_the_tooltip_back (void **state)
{
  GtkWidget *speed = lb_pass_fish_page_get_speed (lb_pass_page_get_fish (page));
  LbQuantityEntry *entry = LB_QUANTITY_ENTRY (speed);
  g_autofree char *own = g_strdup (gtk_widget_get_tooltip_text (speed));

  assert_non_null (own);
  gtk_editable_set_text (GTK_EDITABLE (speed), "slow");
  lb_quantity_entry_commit (entry);
  assert_string_equal (gtk_widget_get_tooltip_text (speed), lb_quantity_entry_get_fault (entry));
  gtk_editable_set_text (GTK_EDITABLE (speed), "100 mph");
  lb_quantity_entry_commit (entry);
  assert_string_equal (gtk_widget_get_tooltip_text (speed), lb_quantity_entry_get_fault (entry));
  lb_quantity_entry_reset (entry);
  assert_string_equal (gtk_widget_get_tooltip_text (speed), own);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test_setup_teardown (a_snag_follows_the_leaders, open_column, tear_down),
    cmocka_unit_test_setup_teardown (a_fish_follows_the_leaders, open_column, tear_down),
    cmocka_unit_test_setup_teardown (an_answer_that_is_not_wanted_any_more_is_not_shown,
                                     open_column, tear_down),
    cmocka_unit_test_setup_teardown (the_cautions_of_the_whole_pass_are_shown, open_column,
                                     tear_down),
    cmocka_unit_test_setup_teardown (what_is_to_be_said_of_the_start_is_shown, open_column,
                                     tear_down),
    cmocka_unit_test_setup_teardown (pictures_in_a_large_window, open_large, tear_down),
    cmocka_unit_test_setup_teardown (a_leg_said_otherwise_is_the_same_course, open_large,
                                     tear_down),
    cmocka_unit_test_setup_teardown (length_and_start_are_said_and_taken_back, open_column,
                                     tear_down),
    cmocka_unit_test_setup_teardown (a_fault_gives_the_tooltip_back, open_column, tear_down),
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
