/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferences_window.h"

#include <glib/gi18n.h>
#include <math.h>

#include "fields.h"
#include "words.h"

typedef struct
{
  LbPreferences *preferences;
  GtkWidget *weights;
  GtkWidget *band_low;
  GtkWidget *band_high;
  GtkWidget *fault; /* what is wrong with the entry last left */
} Fields;

/* ---- Words ---- */

static char *
weights_text (LbPreferences *preferences)
{
  GString *text = g_string_new (NULL);
  gsize n;
  const double *kg = lb_preferences_get_weights (preferences, &n);

  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *words =
          lb_words_quantity (LB_QUANTITY_MASS, lb_preferences_get_units (preferences), kg[i], -1);

      g_string_append_printf (text, "%s%s", i ? "; " : "", words);
    }
  return g_string_free (text, FALSE);
}

GArray *
lb_preferences_parse_weights (LbUnits units, const char *text, char **message)
{
  const LbField *field = lb_field ("weight.mass_kg");
  g_autoptr (GArray) weights = g_array_new (FALSE, FALSE, sizeof (double));
  g_auto (GStrv) parts = g_strsplit (text, ";", -1);

  for (char **part = parts; *part; part++)
    {
      double kg;

      if (*g_strstrip (*part) == '\0')
        continue;
      if (!lb_words_parse (LB_QUANTITY_MASS, units, *part, &kg, message))
        return NULL;
      if (!lb_field_accepts (field, kg))
        {
          g_autofree char *low = lb_words_quantity (LB_QUANTITY_MASS, units, field->minimum, -1);
          g_autofree char *high = lb_words_quantity (LB_QUANTITY_MASS, units, field->maximum, -1);

          *message = g_strdup_printf (_ ("“%s” is no weight from %s to %s."), *part, low, high);
          return NULL;
        }
      g_array_append_val (weights, kg);
    }
  return g_steal_pointer (&weights);
}

static void
show_words (Fields *fields)
{
  LbUnits units = lb_preferences_get_units (fields->preferences);
  g_autofree char *weights = weights_text (fields->preferences);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;
  double band_low, band_high;

  lb_preferences_get_band (fields->preferences, &band_low, &band_high);
  low = lb_words_quantity (LB_QUANTITY_HEIGHT, units, band_low, -1);
  high = lb_words_quantity (LB_QUANTITY_HEIGHT, units, band_high, -1);
  gtk_editable_set_text (GTK_EDITABLE (fields->weights), weights);
  gtk_editable_set_text (GTK_EDITABLE (fields->band_low), low);
  gtk_editable_set_text (GTK_EDITABLE (fields->band_high), high);
}

/* ---- Entries ---- */

static void
show_fault (Fields *fields, GtkWidget *entry, const char *fault)
{
  gtk_label_set_text (GTK_LABEL (fields->fault), fault ? fault : "");
  if (fault)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
}

static void
weights_entered_cb (Fields *fields)
{
  g_autofree char *message = NULL;
  g_autofree char *shown = weights_text (fields->preferences);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (fields->weights));
  g_autoptr (GArray) weights = NULL;

  /* What was only looked at keeps all its digits. */
  if (g_str_equal (text, shown))
    {
      show_fault (fields, fields->weights, NULL);
      return;
    }
  weights =
      lb_preferences_parse_weights (lb_preferences_get_units (fields->preferences), text, &message);
  show_fault (fields, fields->weights, message);
  if (!weights)
    return;
  lb_preferences_set_weights (fields->preferences, (double *) weights->data, weights->len);
  show_words (fields);
}

static gboolean
band_edge (Fields *fields, GtkWidget *entry, double old, double *value)
{
  LbUnits units = lb_preferences_get_units (fields->preferences);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  g_autofree char *shown = lb_words_quantity (LB_QUANTITY_HEIGHT, units, old, -1);
  g_autofree char *message = NULL;

  *value = old;
  if (g_str_equal (text, shown)
      || lb_words_parse (LB_QUANTITY_HEIGHT, units, text, value, &message))
    {
      show_fault (fields, entry, NULL);
      return TRUE;
    }
  show_fault (fields, entry, message);
  return FALSE;
}

static void
band_entered_cb (Fields *fields)
{
  double old_low, old_high, low, high;

  lb_preferences_get_band (fields->preferences, &old_low, &old_high);
  if (!band_edge (fields, fields->band_low, old_low, &low)
      || !band_edge (fields, fields->band_high, old_high, &high))
    return;
  if (low < 0 || high > 20 || low >= high)
    {
      show_fault (fields, fields->band_high,
                  _ ("The band begins at or above the bed and ends "
                     "higher than it begins."));
      return;
    }
  g_object_set (fields->preferences, "band-low", low, "band-high", high, NULL);
  show_words (fields);
}

static GtkWidget *
make_entry (Fields *fields, GCallback entered_cb)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_widget_set_hexpand (entry, TRUE);
  g_signal_connect_swapped (entry, "activate", entered_cb, fields);
  g_signal_connect_swapped (focus, "leave", entered_cb, fields);
  gtk_widget_add_controller (entry, focus);
  return entry;
}

/* ---- Choices ---- */

typedef struct
{
  LbPreferences *preferences;
  const char *property;
  const char *const *nicks;
} Choice;

static void
chosen_cb (GtkDropDown *drop_down, GParamSpec *pspec, Choice *choice)
{
  guint selected = gtk_drop_down_get_selected (drop_down);

  if (selected != GTK_INVALID_LIST_POSITION)
    g_object_set (choice->preferences, choice->property, choice->nicks[selected], NULL);
}

static GtkWidget *
make_choice (LbPreferences *preferences,
             const char *property,
             const char *const *nicks,
             const char *const *labels)
{
  GtkWidget *drop_down = gtk_drop_down_new_from_strings (labels);
  Choice *choice = g_new (Choice, 1);
  g_autofree char *nick = NULL;

  *choice = (Choice){ preferences, property, nicks };
  g_object_get (preferences, property, &nick, NULL);
  for (guint i = 0; nicks[i]; i++)
    if (g_strcmp0 (nicks[i], nick) == 0)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), i);
  g_signal_connect_data (drop_down, "notify::selected", G_CALLBACK (chosen_cb), choice,
                         (GClosureNotify) (void (*) (void)) g_free, 0);
  return drop_down;
}

static void
decimals_chosen_cb (GtkDropDown *drop_down, GParamSpec *pspec, LbPreferences *preferences)
{
  guint selected = gtk_drop_down_get_selected (drop_down);

  if (selected != GTK_INVALID_LIST_POSITION)
    g_object_set (preferences, "decimals", (int) selected - 1, NULL);
}

static GtkWidget *
make_decimals (LbPreferences *preferences)
{
  const char *labels[] = { _ ("As fits each number"), "0", "1", "2", "3", NULL };
  GtkWidget *drop_down = gtk_drop_down_new_from_strings (labels);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down),
                              (guint) (lb_preferences_get_decimals (preferences) + 1));
  g_signal_connect (drop_down, "notify::selected", G_CALLBACK (decimals_chosen_cb), preferences);
  return drop_down;
}

/* ---- The window ---- */

static void
attach (GtkWidget *grid, int row, const char *text, GtkWidget *widget, const char *tooltip)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), widget);
  gtk_widget_set_tooltip_text (widget, tooltip);
  gtk_grid_attach (GTK_GRID (grid), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), widget, 1, row, 1, 1);
}

static GtkWidget *
make_units (LbPreferences *preferences)
{
  static const char *const nicks[] = { "us", "metric", NULL };
  const char *labels[] = { _ ("US"), _ ("Metric"), NULL };

  return make_choice (preferences, "units", nicks, labels);
}

static GtkWidget *
make_theme (LbPreferences *preferences)
{
  static const char *const nicks[] = { "follow", "light", "dark", NULL };
  const char *labels[] = { _ ("As the system"), _ ("Light"), _ ("Dark"), NULL };

  return make_choice (preferences, "theme", nicks, labels);
}

static GtkWidget *
make_timings (LbPreferences *preferences)
{
  GtkWidget *timings = gtk_switch_new ();

  gtk_widget_set_halign (timings, GTK_ALIGN_START);
  g_object_bind_property (preferences, "show-timings", timings, "active",
                          G_BINDING_BIDIRECTIONAL | G_BINDING_SYNC_CREATE);
  return timings;
}

static GtkWidget *
make_grid (Fields *fields)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 16);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 10);
  gtk_widget_add_css_class (grid, "preferences");
  attach (grid, 0, _ ("_Units"), make_units (fields->preferences),
          _ ("What numbers are shown in; every entry takes any unit"));
  attach (grid, 1, _ ("_Light or dark"), make_theme (fields->preferences), _ ("Of all windows"));
  attach (grid, 2, _ ("_Decimals beside the sliders"), make_decimals (fields->preferences),
          _ ("How many digits after the decimal sign, in the entries beside the sliders"));
  attach (grid, 3, _ ("_Weights you own"), fields->weights,
          _ ("Ticks of the Weight slider, set apart by semicolons: 1 lb; 1 1/4 lb; 0.9 kg"));
  attach (grid, 4, _ ("_Band of a new rig, from"), fields->band_low,
          _ ("Height above the bed at which the band begins"));
  attach (grid, 5, _ ("t_o"), fields->band_high, _ ("Height above the bed at which the band ends"));
  attach (grid, 6, _ ("Show _timings"), make_timings (fields->preferences),
          _ ("How long each solve and each frame takes, under the readings"));
  gtk_label_set_wrap (GTK_LABEL (fields->fault), TRUE);
  gtk_label_set_xalign (GTK_LABEL (fields->fault), 0);
  gtk_widget_add_css_class (fields->fault, "error");
  gtk_grid_attach (GTK_GRID (grid), fields->fault, 0, 7, 2, 1);
  return grid;
}

static void
close_with_escape (GtkWidget *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys), gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                        gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (window, keys);
}

static void
free_fields (gpointer data)
{
  Fields *fields = data;

  g_object_unref (fields->preferences);
  g_free (fields);
}

static void
units_cb (LbPreferences *preferences, GParamSpec *pspec, GtkWindow *window)
{
  show_words (g_object_get_data (G_OBJECT (window), "fields"));
}

/* What was typed last counts, too. */
static gboolean
close_request_cb (GtkWindow *window)
{
  Fields *fields = g_object_get_data (G_OBJECT (window), "fields");

  weights_entered_cb (fields);
  band_entered_cb (fields);
  return FALSE;
}

GtkWindow *
lb_preferences_window_show (GtkWindow *parent, LbPreferences *preferences)
{
  GtkWidget *window = gtk_window_new ();
  Fields *fields = g_new0 (Fields, 1);

  fields->preferences = g_object_ref (preferences);
  fields->weights = make_entry (fields, G_CALLBACK (weights_entered_cb));
  fields->band_low = make_entry (fields, G_CALLBACK (band_entered_cb));
  fields->band_high = make_entry (fields, G_CALLBACK (band_entered_cb));
  fields->fault = gtk_label_new (NULL);
  gtk_editable_set_width_chars (GTK_EDITABLE (fields->weights), 40);
  g_object_set_data_full (G_OBJECT (window), "fields", fields, free_fields);
  show_words (fields);

  gtk_window_set_title (GTK_WINDOW (window), _ ("Preferences"));
  gtk_window_set_child (GTK_WINDOW (window), make_grid (fields));
  gtk_window_set_resizable (GTK_WINDOW (window), FALSE);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_modal (GTK_WINDOW (window), parent != NULL);
  close_with_escape (window);
  g_signal_connect (window, "close-request", G_CALLBACK (close_request_cb), NULL);
  g_signal_connect_object (preferences, "notify::units", G_CALLBACK (units_cb), window, 0);
  gtk_window_present (GTK_WINDOW (window));
  return GTK_WINDOW (window);
}
