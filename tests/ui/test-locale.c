/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A whole window in a locale with a decimal comma: every field of the table is shown, typed,
 * stepped and refused in its entry, in both systems of units. */
#include "field_entry.h"
#include "one_window.h"

#include <locale.h>
#include <string.h>

#include "words.h"

static gboolean
press_key (GtkWidget *widget, guint key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  gboolean handled = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !handled; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", key, 0, 0, &handled);
    }
  return handled;
}

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static void
type (GtkWidget *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

/* A value inside the usual range that shows decimals where the field has any. */
static double
a_value (const LbField *field)
{
  bool usual = field->usual_high > field->usual_low;
  double low = usual ? field->usual_low : field->minimum;
  double high = usual ? field->usual_high : field->maximum;

  return lb_field_clamp (field, low + 0.37 * (high - low));
}

/* Shown, read back by Enter, stepped by a key, undone, refused: nothing else but the step and what
 * was typed may change the value. */
static void
try_field (const LbField *field, LbUnits units)
{
  GtkWidget *entry = g_object_ref_sink (lb_field_entry_new (session (), field, 0));
  double step = lb_field_step (field, units);
  g_autofree char *typed = NULL;
  g_autofree char *words = NULL;
  double value, before;

  if (strchr (text_of (entry), '.'))
    fail_msg ("%s is shown as \"%s\"", field->path, text_of (entry));

  /* Typed with the decimal sign of the locale, as the C library prints it. */
  typed = g_strdup_printf ("%.3f", lb_units_from_si (field->quantity, units, a_value (field)));
  assert_non_null (strchr (typed, ','));
  type (entry, typed);
  if (lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)))
    fail_msg ("%s: \"%s\" is refused: %s", field->path, typed,
              lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)));
  value = lb_session_get_value (session (), field, 0);
  assert_near (lb_units_from_si (field->quantity, units, value),
               lb_units_from_si (field->quantity, units, a_value (field)), 0.0005 * (1 + 1e-6));
  words = lb_words_quantity (field->quantity, units, value, -1);
  assert_string_equal (text_of (entry), words);
  assert_null (strchr (words, '.'));

  /* Enter on what is shown keeps all digits. */
  g_signal_emit_by_name (entry, "activate");
  assert_near (lb_session_get_value (session (), field, 0), value, 0);

  before = value;
  assert_true (press_key (entry, GDK_KEY_Up));
  value = lb_session_get_value (session (), field, 0);
  assert_near (value, lb_field_clamp (field, before + step), 1e-12 * fabs (value) + 1e-15);
  assert_string_not_equal (text_of (entry), words);
  assert_true (press_key (entry, GDK_KEY_Down));
  assert_near (lb_session_get_value (session (), field, 0), before, 1e-12 * fabs (before) + 1e-15);

  /* Not a number: said why, and the old value stays. */
  before = lb_session_get_value (session (), field, 0);
  type (entry, "zw\303\266lf");
  assert_non_null (lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)));
  assert_near (lb_session_get_value (session (), field, 0), before, 0);
  assert_true (press_key (entry, GDK_KEY_Escape));
  assert_null (lb_field_entry_get_fault (LB_FIELD_ENTRY (entry)));
  g_object_unref (entry);
}

/* Some fields have an effect with another law of the current only. */
static void
make_it_count (const LbField *field)
{
  const LbField *law = lb_field ("river.profile.law");
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (session ()));

  if (lb_field_applies (field, setup) || strstr (field->path, "line_out"))
    return;
  assert_true (lb_session_set_value (session (), law, 0, LB_PROFILE_LOG, 0));
}

static int
try_all (LbUnits units)
{
  gsize n;
  const LbField *fields = lb_fields (&n);
  int count = 0;

  g_object_set (lb_session_get_preferences (session ()), "units",
                units == LB_UNITS_US ? "us" : "metric", NULL);
  for (gsize i = 0; i < n; i++)
    if (fields[i].kind == LB_FIELD_NUMBER)
      {
        /* Each from the rig of a new window: values that hang together are not dragged along. */
        lb_session_open_new (session ());
        make_it_count (&fields[i]);
        try_field (&fields[i], units);
        count++;
      }
  return count;
}

static void
every_field_in_us_units (void **state)
{
  assert_true (try_all (LB_UNITS_US) > 30);
}

static void
every_field_in_metric_units (void **state)
{
  assert_true (try_all (LB_UNITS_METRIC) > 30);
}

/* No number anywhere in the column or in the drawing keeps the point. */
static void
readings_and_drawings_have_the_comma (void **state)
{
  g_autofree char *text = NULL;
  g_autofree char *drawn = NULL;
  g_autoptr (GRegex) point = g_regex_new ("[0-9]\\.[0-9]", 0, 0, NULL);
  g_autoptr (GRegex) comma = g_regex_new ("[0-9],[0-9]", 0, 0, NULL);

  for (int units = 0; units < 2; units++)
    {
      g_object_set (lb_session_get_preferences (session ()), "units", units ? "metric" : "us",
                    "decimals", units ? -1 : 2, NULL);
      harness_solved (window);
      g_free (text);
      g_free (drawn);
      text = lb_readings_page_dup_text (lb_window_get_readings_page (window));
      drawn = lb_canvas_describe (lb_drawings_get_side_view (lb_window_get_drawings (window)));
      assert_false (g_regex_match (point, text, 0, NULL));
      assert_false (g_regex_match (point, drawn, 0, NULL));
      assert_true (g_regex_match (comma, text, 0, NULL));
      assert_true (g_regex_match (comma, drawn, 0, NULL));
    }
}

/* A file is the same in every locale. */
static void
files_keep_the_point (void **state)
{
  g_autoptr (GFile) file = harness_new_file ("locale/comma.rig");
  g_autofree char *text = NULL;

  lb_session_set_value (session (), lb_field ("river.surface_current_m_s"), 0, 1.375, 0);
  assert_true (lb_session_save (session (), file, NULL));
  assert_true (g_file_load_contents (file, NULL, &text, NULL, NULL, NULL));
  assert_non_null (strstr (text, "1.375"));
  assert_null (strstr (text, "1,375"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up_small, tear_down)
    TEST (every_field_in_us_units),
    TEST (every_field_in_metric_units),
    TEST (readings_and_drawings_have_the_comma),
    TEST (files_keep_the_point),
#undef TEST
  };

  /* The build makes this locale; without the C library's sources of locales it cannot. */
  if (!setlocale (LC_ALL, "de_DE.UTF-8"))
    return 77;
  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
