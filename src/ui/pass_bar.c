/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_bar.h"

#include <glib/gi18n.h>
#include <math.h>

#include "accessible.h"
#include "fold.h"
#include "page_parts.h"
#include "pass_progress.h"
#include "slider_rail.h"

#define SLIDER_LEAST 140
#define SLIDER_STEP 0.1 /* s */
#define SLIDER_PAGE 1.0
#define TIME_CHARS 16
#define SPEED_LEAST 84

struct _LbPassBar
{
  GtkWidget parent;
  LbSession *session;
  LbPassPlayback *playback;
  gboolean showing; /* what controls emit meanwhile changes nothing */
  GtkWidget *progress;
  GtkWidget *play;
  GtkWidget *slider;
  GtkWidget *time;
  GtkWidget *speed;
  GtkWidget *views[2]; /* from the side, from above */
  GtkWidget *follows;
};

G_DEFINE_FINAL_TYPE (LbPassBar, lb_pass_bar, GTK_TYPE_WIDGET)

static guint view_signal, follow_signal;

static const double speeds[] = { LB_PASS_SLOWEST, 1, 2, 4, LB_PASS_FASTEST };

/* ---- Showing ---- */

static char *
seconds (LbPassBar *self, double time, int decimals)
{
  LbWording wording = lb_session_get_wording (self->session);

  return lb_words_quantity (LB_QUANTITY_TIME, wording.units, time, decimals);
}

static void
show_time (LbPassBar *self)
{
  double time = lb_pass_playback_get_time (self->playback);
  g_autofree char *now = seconds (self, time, 1);
  g_autofree char *all = seconds (self, lb_pass_playback_get_duration (self->playback), 0);
  /* Translators: "12.3 s of 60 s" */
  g_autofree char *text = g_strdup_printf (_ ("%s of %s"), now, all);

  gtk_inscription_set_text (GTK_INSCRIPTION (self->time), text);
  self->showing = TRUE;
  gtk_range_set_value (GTK_RANGE (self->slider), time);
  self->showing = FALSE;
}

static void
show_playing (LbPassBar *self)
{
  gboolean playing = lb_pass_playback_get_playing (self->playback);

  gtk_button_set_icon_name (GTK_BUTTON (self->play), playing ? "media-playback-pause-symbolic"
                                                             : "media-playback-start-symbolic");
  gtk_widget_set_tooltip_text (self->play, playing ? _ ("Pause (Space)") : _ ("Play (Space)"));
  lb_accessible_name (self->play, playing ? _ ("Pause") : _ ("Play"));
}

static void
grown_cb (LbPassBar *self)
{
  gtk_range_set_fill_level (GTK_RANGE (self->slider), lb_pass_playback_get_end (self->playback));
}

static void
restarted_cb (LbPassBar *self)
{
  double duration = lb_pass_playback_get_duration (self->playback);

  self->showing = TRUE;
  gtk_range_set_range (GTK_RANGE (self->slider), 0, MAX (duration, SLIDER_STEP));
  self->showing = FALSE;
  gtk_widget_set_sensitive (self->slider, duration > 0);
  grown_cb (self);
  show_time (self);
}

/* ---- What the user does ---- */

static void
slid_cb (LbPassBar *self)
{
  if (self->showing)
    return;
  lb_pass_playback_set_playing (self->playback, FALSE);
  lb_pass_playback_go_to (self->playback, gtk_range_get_value (GTK_RANGE (self->slider)));
  /* It may have been held to what is known. */
  show_time (self);
}

static void
speed_cb (LbPassBar *self)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->speed));

  if (chosen < G_N_ELEMENTS (speeds))
    lb_pass_playback_set_speed (self->playback, speeds[chosen]);
}

void
lb_pass_bar_change_speed (LbPassBar *self, int direction)
{
  int chosen;

  g_return_if_fail (LB_IS_PASS_BAR (self));
  chosen = (int) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->speed)) + direction;
  if (chosen >= 0 && chosen < (int) G_N_ELEMENTS (speeds))
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->speed), (guint) chosen);
}

static void
view_cb (LbPassBar *self)
{
  if (!self->showing)
    g_signal_emit (self, view_signal, 0,
                   gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->views[1])));
}

void
lb_pass_bar_set_above (LbPassBar *self, gboolean above)
{
  g_return_if_fail (LB_IS_PASS_BAR (self));
  self->showing = TRUE;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->views[above ? 1 : 0]), TRUE);
  self->showing = FALSE;
}

static void
follows_cb (LbPassBar *self)
{
  if (!self->showing)
    g_signal_emit (self, follow_signal, 0,
                   gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->follows)));
}

void
lb_pass_bar_set_follows (LbPassBar *self, gboolean follows)
{
  g_return_if_fail (LB_IS_PASS_BAR (self));
  self->showing = TRUE;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->follows), follows);
  self->showing = FALSE;
}

/* ---- Making ---- */

static GtkWidget *
group (GtkWidget *row)
{
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  gtk_widget_add_css_class (box, "linked");
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), box);
  return box;
}

static GtkWidget *
add_button (GtkWidget *box, const char *icon, const char *action, const char *name, const char *key)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);
  g_autofree char *tooltip = g_strdup_printf ("%s (%s)", name, key);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tooltip);
  lb_accessible_name (button, name);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
add_buttons (LbPassBar *self, GtkWidget *row)
{
  GtkWidget *box = group (row);

  add_button (box, "media-skip-backward-symbolic", "pass.start", _ ("To the start"), _ ("Home"));
  add_button (box, "media-seek-backward-symbolic", "pass.step-back", _ ("A step back"), _ ("Left"));
  self->play =
      add_button (box, "media-playback-start-symbolic", "pass.play", _ ("Play"), _ ("Space"));
  gtk_widget_add_css_class (self->play, "suggested-action");
  add_button (box, "media-seek-forward-symbolic", "pass.step-on", _ ("A step on"), _ ("Right"));
  add_button (box, "media-skip-forward-symbolic", "pass.end", _ ("To the end"), _ ("End"));
}

static void
add_slider (LbPassBar *self, GtkWidget *row)
{
  self->slider = lb_slider_rail_new (gtk_adjustment_new (0, 0, 1, SLIDER_STEP, SLIDER_PAGE, 0));
  gtk_range_set_show_fill_level (GTK_RANGE (self->slider), TRUE);
  gtk_range_set_restrict_to_fill_level (GTK_RANGE (self->slider), FALSE);
  gtk_widget_set_size_request (self->slider, SLIDER_LEAST, -1);
  gtk_widget_set_hexpand (self->slider, TRUE);
  gtk_widget_set_tooltip_text (self->slider, _ ("The moment that is shown"));
  lb_accessible_name (self->slider, _ ("Moment of the pass"));
  g_signal_connect_swapped (self->slider, "value-changed", G_CALLBACK (slid_cb), self);
  gtk_box_append (GTK_BOX (row), self->slider);
  /* Not a label, which would have the window laid out anew at every moment. */
  self->time = gtk_inscription_new (NULL);
  gtk_widget_add_css_class (self->time, "numeric");
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (self->time), TIME_CHARS);
  gtk_inscription_set_nat_chars (GTK_INSCRIPTION (self->time), TIME_CHARS);
  gtk_inscription_set_xalign (GTK_INSCRIPTION (self->time), 1);
  gtk_widget_set_valign (self->time, GTK_ALIGN_CENTER);
  lb_accessible_name (self->time, _ ("Time of the pass"));
  gtk_box_append (GTK_BOX (row), self->time);
}

static void
add_speed (LbPassBar *self, GtkWidget *row)
{
  const char *const names[] = { _ ("½ ×"), _ ("1 ×"), _ ("2 ×"), _ ("4 ×"), _ ("8 ×") };

  self->speed = lb_page_choice (names, G_N_ELEMENTS (names), _ ("Speed of playing"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->speed), 1);
  /* Its words are cut short with dots where it has no room of its own. */
  gtk_widget_set_size_request (self->speed, SPEED_LEAST, -1);
  gtk_widget_set_tooltip_text (self->speed, _ ("Speed of playing (slower [, faster ])"));
  gtk_widget_set_valign (self->speed, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (self->speed, "notify::selected", G_CALLBACK (speed_cb), self);
  gtk_box_append (GTK_BOX (row), self->speed);
}

static void
add_views (LbPassBar *self, GtkWidget *row)
{
  const char *const names[] = { _ ("Side"), _ ("Above") };
  const char *const long_names[] = { _ ("From the side"), _ ("From above") };
  GtkWidget *box = group (row);

  for (int i = 0; i < 2; i++)
    {
      self->views[i] = gtk_toggle_button_new_with_label (names[i]);
      g_autofree char *tooltip = g_strdup_printf (_ ("%s (V)"), long_names[i]);
      gtk_widget_set_tooltip_text (self->views[i], tooltip);
      gtk_box_append (GTK_BOX (box), self->views[i]);
    }
  gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (self->views[1]),
                               GTK_TOGGLE_BUTTON (self->views[0]));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->views[0]), TRUE);
  g_signal_connect_swapped (self->views[1], "toggled", G_CALLBACK (view_cb), self);
}

/* Nearer, further, all of it, along with the boat. */
static void
add_camera (LbPassBar *self, GtkWidget *row)
{
  GtkWidget *box = group (row);

  add_button (box, "zoom-out-symbolic", "pass.zoom-out", _ ("Further"), "-");
  add_button (box, "zoom-fit-best-symbolic", "pass.zoom-fit", _ ("All of it"), "0");
  add_button (box, "zoom-in-symbolic", "pass.zoom-in", _ ("Nearer"), "+");
  self->follows = gtk_toggle_button_new ();
  gtk_button_set_icon_name (GTK_BUTTON (self->follows), "find-location-symbolic");
  gtk_widget_set_tooltip_text (self->follows, _ ("Follow the boat (T)"));
  lb_accessible_name (self->follows, _ ("Follow the boat"));
  g_signal_connect_swapped (self->follows, "toggled", G_CALLBACK (follows_cb), self);
  gtk_box_append (GTK_BOX (box), self->follows);
}

static void
lb_pass_bar_dispose (GObject *object)
{
  LbPassBar *self = LB_PASS_BAR (object);
  GtkWidget *child;

  if (self->playback)
    g_signal_handlers_disconnect_by_data (self->playback, self);
  self->showing = TRUE;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  g_clear_object (&self->playback);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_pass_bar_parent_class)->dispose (object);
}

static void
lb_pass_bar_class_init (LbPassBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pass_bar_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbpassbar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  view_signal = g_signal_new ("view", LB_TYPE_PASS_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  follow_signal = g_signal_new ("follow", LB_TYPE_PASS_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
}

static void
lb_pass_bar_init (LbPassBar *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
}

GtkWidget *
lb_pass_bar_new (LbSession *session, LbPassPlayback *playback)
{
  LbPassBar *self = g_object_new (LB_TYPE_PASS_BAR, NULL);
  GtkWidget *left = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);

  self->session = g_object_ref (session);
  self->playback = g_object_ref (playback);
  self->progress = lb_pass_progress_new (session, playback);
  gtk_widget_set_parent (self->progress, GTK_WIDGET (self));
  add_buttons (self, left);
  add_slider (self, left);
  add_speed (self, right);
  add_views (self, right);
  add_camera (self, right);
  gtk_widget_set_hexpand (left, TRUE);
  gtk_widget_set_parent (lb_fold_new (left, right), GTK_WIDGET (self));
  g_signal_connect_swapped (playback, "moved", G_CALLBACK (show_time), self);
  g_signal_connect_swapped (playback, "grown", G_CALLBACK (grown_cb), self);
  g_signal_connect_swapped (playback, "restarted", G_CALLBACK (restarted_cb), self);
  g_signal_connect_swapped (playback, "playing", G_CALLBACK (show_playing), self);
  show_playing (self);
  show_time (self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_pass_bar_get_play_button (LbPassBar *self)
{
  g_return_val_if_fail (LB_IS_PASS_BAR (self), NULL);
  return self->play;
}

GtkWidget *
lb_pass_bar_get_slider (LbPassBar *self)
{
  g_return_val_if_fail (LB_IS_PASS_BAR (self), NULL);
  return self->slider;
}

GtkWidget *
lb_pass_bar_get_speed (LbPassBar *self)
{
  g_return_val_if_fail (LB_IS_PASS_BAR (self), NULL);
  return self->speed;
}

const char *
lb_pass_bar_get_time (LbPassBar *self)
{
  g_return_val_if_fail (LB_IS_PASS_BAR (self), NULL);
  return gtk_inscription_get_text (GTK_INSCRIPTION (self->time));
}

const char *
lb_pass_bar_get_said (LbPassBar *self)
{
  g_return_val_if_fail (LB_IS_PASS_BAR (self), NULL);
  return lb_pass_progress_get_said (LB_PASS_PROGRESS (self->progress));
}
