/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferences_window.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "fields.h"
#include "preferences_entry.h"
#include "quantity_list.h"
#include "variants_weights.h"
#include "words.h"

/* ---- The weights owned ---- */

static char *
show_weights (LbPreferences *preferences, const char *property)
{
  gsize n;
  const double *kg = lb_preferences_get_weights (preferences, &n);

  return lb_quantity_list_words (LB_QUANTITY_MASS, lb_preferences_get_units (preferences), kg, n);
}

static char *
take_weights (LbPreferences *preferences, const char *property, const char *text)
{
  char *message = NULL;
  g_autoptr (GArray) weights =
      lb_weights_parse (lb_preferences_get_units (preferences), text, &message);

  if (weights)
    lb_preferences_set_weights (preferences, (double *) weights->data, weights->len);
  return message;
}

GtkWidget *
lb_preferences_weights_entry_new (LbPreferences *preferences)
{
  return lb_preferences_entry_new (preferences, NULL, show_weights, take_weights);
}

/* ---- Heights above the bed ---- */

static char *
show_height (LbPreferences *preferences, const char *property)
{
  double value;

  g_object_get (preferences, property, &value, NULL);
  return lb_words_quantity (LB_QUANTITY_HEIGHT, lb_preferences_get_units (preferences), value, -1);
}

/* Reads a height, or returns why it is none. */
static char *
take_height (LbPreferences *preferences, const char *property, const char *text, double *value)
{
  LbUnits units = lb_preferences_get_units (preferences);
  GParamSpec *pspec = g_object_class_find_property (G_OBJECT_GET_CLASS (preferences), property);
  double highest = G_PARAM_SPEC_DOUBLE (pspec)->maximum;
  g_autofree char *high = NULL;
  char *message = NULL;

  if (!lb_words_parse (LB_QUANTITY_HEIGHT, units, text, value, &message))
    return message;
  if (*value >= 0 && *value <= highest)
    return NULL;
  high = lb_words_height (units, highest, -1);
  return g_strdup_printf (_ ("Give a height from the bed up to %s above it."), high);
}

static char *
take_rule (LbPreferences *preferences, const char *property, const char *text)
{
  double value;
  char *fault = take_height (preferences, property, text, &value);

  if (!fault)
    g_object_set (preferences, property, value, NULL);
  return fault;
}

static char *
take_band_low (LbPreferences *preferences, const char *property, const char *text)
{
  double low, high, value;
  char *fault = take_height (preferences, property, text, &value);

  if (fault)
    return fault;
  lb_preferences_get_band (preferences, &low, &high);
  if (value >= high)
    return g_strdup (_ ("The band must begin lower than it ends."));
  g_object_set (preferences, property, value, NULL);
  return NULL;
}

static char *
take_band_high (LbPreferences *preferences, const char *property, const char *text)
{
  double low, high, value;
  char *fault = take_height (preferences, property, text, &value);

  if (fault)
    return fault;
  lb_preferences_get_band (preferences, &low, &high);
  if (value <= low)
    return g_strdup (_ ("The band must end higher than it begins."));
  g_object_set (preferences, property, value, NULL);
  return NULL;
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

/* Shows the value, which a key may have changed. */
static void
choose_cb (LbPreferences *preferences, GParamSpec *pspec, GtkDropDown *drop_down)
{
  const char *const *nicks = g_object_get_data (G_OBJECT (drop_down), "nicks");
  g_autofree char *nick = NULL;

  g_object_get (preferences, pspec->name, &nick, NULL);
  for (guint i = 0; nicks[i]; i++)
    if (g_strcmp0 (nicks[i], nick) == 0)
      gtk_drop_down_set_selected (drop_down, i);
}

static GtkWidget *
make_choice (LbPreferences *preferences,
             const char *property,
             const char *const *nicks,
             const char *const *labels)
{
  GtkWidget *drop_down = gtk_drop_down_new_from_strings (labels);
  GParamSpec *pspec = g_object_class_find_property (G_OBJECT_GET_CLASS (preferences), property);
  g_autofree char *signal = g_strconcat ("notify::", property, NULL);
  Choice *choice = g_new (Choice, 1);

  *choice = (Choice){ preferences, property, nicks };
  g_object_set_data (G_OBJECT (drop_down), "nicks", (gpointer) nicks);
  choose_cb (preferences, pspec, GTK_DROP_DOWN (drop_down));
  g_signal_connect_data (drop_down, "notify::selected", G_CALLBACK (chosen_cb), choice,
                         (GClosureNotify) (void (*) (void)) g_free, 0);
  g_signal_connect_object (preferences, signal, G_CALLBACK (choose_cb), drop_down, 0);
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

static GtkWidget *
make_units (LbPreferences *preferences)
{
  static const char *const nicks[] = { "us", "metric", NULL };
  const char *labels[] = { C_ ("units", "US"), _ ("Metric"), NULL };

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
make_text_size (LbPreferences *preferences)
{
  static const char *const nicks[] = { "small", "normal", "large", "larger", "largest", NULL };
  const char *labels[] = { C_ ("text size", "Small"),   C_ ("text size", "Normal"),
                           C_ ("text size", "Large"),   C_ ("text size", "Larger"),
                           C_ ("text size", "Largest"), NULL };

  return make_choice (preferences, "text-size", nicks, labels);
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

/* ---- The window ---- */

/* The rows one below another. */
typedef struct
{
  GtkGrid *grid;
  GPtrArray *entries; /* (element-type LbPreferencesEntry) */
  int n_rows;
} Rows;

static void
add_heading (Rows *rows, const char *text, const char *note)
{
  GtkWidget *heading = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (heading, "heading");
  gtk_grid_attach (rows->grid, heading, 0, rows->n_rows++, 2, 1);
  if (!note)
    return;
  heading = gtk_label_new (note);
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_label_set_wrap (GTK_LABEL (heading), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (heading), 50);
  gtk_widget_add_css_class (heading, "quiet");
  gtk_grid_attach (rows->grid, heading, 0, rows->n_rows++, 2, 1);
}

static void
add_row (Rows *rows, const char *text, GtkWidget *widget, const char *tooltip)
{
  gboolean is_entry = LB_IS_PREFERENCES_ENTRY (widget);
  GtkWidget *control =
      is_entry ? lb_preferences_entry_get_entry (LB_PREFERENCES_ENTRY (widget)) : widget;
  GtkWidget *label = gtk_label_new_with_mnemonic (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), control);
  if (GTK_IS_DROP_DOWN (control))
    lb_accessible_name_choice (GTK_DROP_DOWN (control), gtk_label_get_text (GTK_LABEL (label)));
  gtk_widget_set_tooltip_text (control, tooltip);
  gtk_widget_set_valign (label, is_entry ? GTK_ALIGN_START : GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (label, is_entry ? "entry-name" : "choice-name");
  gtk_grid_attach (rows->grid, label, 0, rows->n_rows, 1, 1);
  gtk_grid_attach (rows->grid, widget, 1, rows->n_rows++, 1, 1);
  if (is_entry)
    g_ptr_array_add (rows->entries, widget);
}

static void
add_shown (Rows *rows, LbPreferences *preferences)
{
  add_heading (rows, _ ("How it is shown"), NULL);
  add_row (rows, _ ("_Units"), make_units (preferences),
           _ ("What numbers are shown in; every entry takes any unit"));
  add_row (rows, _ ("_Light or dark"), make_theme (preferences), _ ("Of all windows"));
  add_row (rows, _ ("Text _size"), make_text_size (preferences),
           _ ("Of the letters, and of the drawings with them"));
  add_row (rows, _ ("_Decimals"), make_decimals (preferences),
           _ ("How many digits after the decimal sign; a number that would be off by more than a "
              "twentieth keeps its own"));
  add_row (rows, _ ("Show _timings"), make_timings (preferences),
           _ ("How long each solve and each frame takes, under the readings"));
}

/* Wide enough for the weights of a full tackle box. */
#define WEIGHTS_WIDTH 48 /* letters */

static void
add_tackle (Rows *rows, LbPreferences *preferences)
{
  GtkWidget *weights = lb_preferences_weights_entry_new (preferences);

  gtk_editable_set_width_chars (
      GTK_EDITABLE (lb_preferences_entry_get_entry (LB_PREFERENCES_ENTRY (weights))),
      WEIGHTS_WIDTH);
  add_heading (rows, _ ("Your tackle and your band"), NULL);
  add_row (rows, _ ("_Weights you own"), weights,
           _ ("Ticks of the Weight slider, set apart by semicolons: 1 lb; 1 1/4 lb; 0.9 kg"));
  add_row (rows, _ ("_Band of a new rig, from"),
           lb_preferences_entry_new (preferences, "band-low", show_height, take_band_low),
           _ ("Height above the bed at which the band begins"));
  add_row (rows, _ ("t_o"),
           lb_preferences_entry_new (preferences, "band-high", show_height, take_band_high),
           _ ("Height above the bed at which the band ends"));
}

static void
add_rules (Rows *rows, LbPreferences *preferences)
{
  add_heading (rows, _ ("Rules of thumb"), _ ("Common practice, no source; yours may differ."));
  add_row (rows, _ ("Lures run le_vel within"),
           lb_preferences_entry_new (preferences, "level-within", show_height, take_rule),
           _ ("No further apart in height than this, lures are said to run level"));
  add_row (rows, _ ("A lifted weight is _held at"),
           lb_preferences_entry_new (preferences, "hold-height", show_height, take_rule),
           _ ("Height above the bed at which a weight is held that lay on it before"));
}

static GtkWidget *
make_rows (LbPreferences *preferences, GPtrArray *entries)
{
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();
  Rows rows = { GTK_GRID (grid), entries, 0 };

  gtk_grid_set_column_spacing (GTK_GRID (grid), 16);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 8);
  gtk_widget_add_css_class (grid, "preferences");
  add_shown (&rows, preferences);
  add_tackle (&rows, preferences);
  add_rules (&rows, preferences);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 2160);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), grid);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), _ ("Preferences"));
  return scroller;
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

/* What was typed last counts, too. */
static gboolean
close_request_cb (GtkWindow *window, GPtrArray *entries)
{
  for (guint i = 0; i < entries->len; i++)
    lb_preferences_entry_commit (g_ptr_array_index (entries, i));
  return FALSE;
}

GtkWindow *
lb_preferences_window_show (GtkWindow *parent, LbPreferences *preferences)
{
  GtkWidget *window = gtk_window_new ();
  GPtrArray *entries = g_ptr_array_new ();

  gtk_window_set_title (GTK_WINDOW (window), _ ("Preferences"));
  gtk_window_set_child (GTK_WINDOW (window), make_rows (preferences, entries));
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_modal (GTK_WINDOW (window), parent != NULL);
  close_with_escape (window);
  g_signal_connect_data (window, "close-request", G_CALLBACK (close_request_cb), entries,
                         (GClosureNotify) (void (*) (void)) g_ptr_array_unref, 0);
  gtk_window_present (GTK_WINDOW (window));
  return GTK_WINDOW (window);
}
