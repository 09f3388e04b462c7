/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of cautions: what comes or goes is shown at once, new numbers a moment later. */
#include "caution_list.h"

#include "harness.h"

/* Longer than words stand at least. */
#define A_MOMENT_MS 700

static LbCautionList *list;

static int
set_up (void **state)
{
  list = g_object_ref_sink (LB_CAUTION_LIST (lb_caution_list_new ()));
  return 0;
}

static int
tear_down (void **state)
{
  g_clear_object (&list);
  return 0;
}

static GPtrArray *
cautions_of (LbCaution *cautions, guint n)
{
  GPtrArray *array = g_ptr_array_new ();

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (array, &cautions[i]);
  return array;
}

static void
update (LbCaution *cautions, guint n)
{
  g_autoptr (GPtrArray) array = cautions_of (cautions, n);

  lb_caution_list_update (list, array);
}

/* The texts below `widget`, a line each. */
static void
collect (GtkWidget *widget, GString *text)
{
  if (GTK_IS_LABEL (widget))
    g_string_append_printf (text, "%s\n", gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    collect (child, text);
}

static void
assert_shown (const char *expected)
{
  GString *text = g_string_new (NULL);

  collect (GTK_WIDGET (list), text);
  assert_string_equal (text->str, expected);
  g_string_free (text, TRUE);
}

static void
what_comes_and_goes_is_shown_at_once (void **state)
{
  LbCaution two[] = { { LB_CAUTION_NOW, (char *) "a" }, { LB_CAUTION_ADVICE, (char *) "b" } };

  update (two, 1);
  assert_shown ("Cautions\na\n");
  update (two, 2);
  assert_shown ("Cautions\na\nb\n");
  update (two + 1, 1);
  assert_shown ("Cautions\nb\n");
  update (two, 0);
  assert_shown ("Cautions\n");
}

/* Also one of the same kind, and a sentence more. */
static void
one_in_place_of_another_is_shown_at_once (void **state)
{
  LbCaution wire = { LB_CAUTION_NOW, (char *) "Wire can cut at 12 lbf." };
  LbCaution weak = { LB_CAUTION_NOW, (char *) "24.5 lbf is more than most can hold." };
  LbCaution more = { LB_CAUTION_NOW, (char *) "24.7 lbf is more than most can hold. Let go." };
  LbCaution later = { LB_CAUTION_NOW, (char *) "25½ lbf is more than most can hold. Let go." };

  update (&wire, 1);
  update (&weak, 1);
  assert_shown ("Cautions\n24.5 lbf is more than most can hold.\n");
  update (&more, 1);
  assert_shown ("Cautions\n24.7 lbf is more than most can hold. Let go.\n");
  update (&later, 1);
  assert_shown ("Cautions\n24.7 lbf is more than most can hold. Let go.\n");
}

static void
new_numbers_wait_until_the_old_have_stood (void **state)
{
  LbCaution first = { LB_CAUTION_NOW, (char *) "in 3 s" };
  LbCaution second = { LB_CAUTION_NOW, (char *) "in 4 s" };
  LbCaution last = { LB_CAUTION_NOW, (char *) "in 5 s" };

  update (&first, 1);
  update (&second, 1);
  update (&last, 1);
  assert_shown ("Cautions\nin 3 s\n");
  harness_pause (A_MOMENT_MS);
  assert_shown ("Cautions\nin 5 s\n");
  harness_pause (A_MOMENT_MS);
  update (&second, 1);
  assert_shown ("Cautions\nin 4 s\n");
}

static void
what_waits_is_dropped_when_the_old_words_are_right_again (void **state)
{
  LbCaution first = { LB_CAUTION_NOW, (char *) "in 3 s" };
  LbCaution second = { LB_CAUTION_NOW, (char *) "in 4 s" };

  update (&first, 1);
  update (&second, 1);
  update (&first, 1);
  harness_pause (A_MOMENT_MS);
  assert_shown ("Cautions\nin 3 s\n");
}

static void
nothing_is_left_waiting_when_it_goes (void **state)
{
  LbCaution first = { LB_CAUTION_NOW, (char *) "in 3 s" };
  LbCaution second = { LB_CAUTION_NOW, (char *) "in 4 s" };
  gpointer watched = list;

  update (&first, 1);
  update (&second, 1);
  g_object_add_weak_pointer (G_OBJECT (list), &watched);
  g_clear_object (&list);
  assert_null (watched);
  harness_pause (A_MOMENT_MS);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (what_comes_and_goes_is_shown_at_once),
    TEST (one_in_place_of_another_is_shown_at_once),
    TEST (new_numbers_wait_until_the_old_have_stood),
    TEST (what_waits_is_dropped_when_the_old_words_are_right_again),
    TEST (nothing_is_left_waiting_when_it_goes),
#undef TEST
  };

  harness_start ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
