/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "application_private.h"

#include <glib/gi18n.h>

#include "appearance.h"
#include "preferences_window.h"
#include "window.h"

G_DEFINE_FINAL_TYPE (LbApplication, lb_application, GTK_TYPE_APPLICATION)

static LbWindow *
new_window (LbApplication *self)
{
  return lb_window_new (GTK_APPLICATION (self), self->preferences, self->appearance,
                        self->recovery);
}

static void
new_window_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  gtk_window_present (GTK_WINDOW (new_window (user_data)));
}

static void
preferences_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  LbApplication *self = user_data;

  lb_preferences_window_show (gtk_application_get_active_window (GTK_APPLICATION (self)),
                              self->preferences);
}

/* Tells of a missing viewer in the window that asked. */
static void
help_shown_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (LbWindow) window = user_data;
  g_autoptr (GError) error = NULL;

  if (!gtk_show_uri_full_finish (GTK_WINDOW (source), result, &error))
    lb_window_show_message (window, GTK_MESSAGE_INFO,
                            _ ("The help pages need a viewer for help, such as the package yelp."));
}

static void
help_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (user_data));

  if (LB_IS_WINDOW (window))
    gtk_show_uri_full (window, "help:layback", GDK_CURRENT_TIME, NULL, help_shown_cb,
                       g_object_ref (window));
}

static void
about_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  gtk_show_about_dialog (
      gtk_application_get_active_window (GTK_APPLICATION (user_data)), "program-name",
      _ ("Layback"), "version", LB_VERSION, "logo-icon-name", LB_APPLICATION_ID, "license-type",
      GTK_LICENSE_GPL_3_0, "comments",
      _ ("Where a weighted, stacked rig hangs in a river.\nLure and drag values are estimates; "
         "local rules and licensed guides come first."),
      NULL);
}

static void
quit_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  lb_application_quit (user_data);
}

static void
show_lost_cb (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (user_data));

  if (LB_IS_WINDOW (window))
    lb_window_offer_lost (LB_WINDOW (window), TRUE);
}

/* Not at once: the window is on its way out. */
static void
lb_application_window_removed (GtkApplication *application, GtkWindow *window)
{
  GTK_APPLICATION_CLASS (lb_application_parent_class)->window_removed (application, window);
  lb_application_go_on_quitting (LB_APPLICATION (application));
}

static void
lb_application_window_added (GtkApplication *application, GtkWindow *window)
{
  GTK_APPLICATION_CLASS (lb_application_parent_class)->window_added (application, window);
  if (LB_IS_WINDOW (window))
    g_signal_connect_object (window, "stayed", G_CALLBACK (lb_application_stay), application,
                             G_CONNECT_SWAPPED);
}

static const GActionEntry entries[] = {
  { "new-window", new_window_cb, NULL, NULL, NULL, { 0 } },
  { "show-lost", show_lost_cb, NULL, NULL, NULL, { 0 } },
  { "preferences", preferences_cb, NULL, NULL, NULL, { 0 } },
  { "help", help_cb, NULL, NULL, NULL, { 0 } },
  { "about", about_cb, NULL, NULL, NULL, { 0 } },
  { "quit", quit_cb, NULL, NULL, NULL, { 0 } },
};

static void
add_property_action (LbApplication *self, const char *name)
{
  g_autoptr (GPropertyAction) action = g_property_action_new (name, self->preferences, name);

  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
}

static void
set_accel (LbApplication *self, const char *action, const char *key)
{
  gtk_application_set_accels_for_action (GTK_APPLICATION (self), action,
                                         (const char *[]){ key, NULL });
}

static void
load_style (void)
{
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (provider, "/org/layback/Layback/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (),
                                              GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

static void
lb_application_startup (GApplication *application)
{
  LbApplication *self = LB_APPLICATION (application);

  G_APPLICATION_CLASS (lb_application_parent_class)->startup (application);
  gtk_window_set_default_icon_name (LB_APPLICATION_ID);
  load_style ();
  self->preferences = lb_preferences_new ();
  self->appearance = lb_appearance_new (self->preferences);
  self->recovery = lb_recovery_new ();
  lb_application_watch_signals (self);

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  add_property_action (self, "units");
  add_property_action (self, "theme");
  add_property_action (self, "show-timings");
  set_accel (self, "app.help", "F1");
  set_accel (self, "app.units::us", "<Alt>u");
  set_accel (self, "app.units::metric", "<Alt>m");
  set_accel (self, "app.theme::follow", "<Control><Shift>y");
  set_accel (self, "app.theme::light", "<Control><Shift>l");
  set_accel (self, "app.theme::dark", "<Control><Shift>d");
  set_accel (self, "app.show-timings", "<Control><Shift>t");
  set_accel (self, "app.about", "<Shift>F1");
  set_accel (self, "app.new-window", "<Control><Shift>n");
  set_accel (self, "app.show-lost", "<Control><Shift>r");
  set_accel (self, "app.preferences", "<Control>comma");
  set_accel (self, "app.quit", "<Control>q");
  set_accel (self, "window.close", "<Control>w");
  lb_window_set_accels (GTK_APPLICATION (self));
}

static void
lb_application_activate (GApplication *application)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));

  gtk_window_present (window ? window : GTK_WINDOW (new_window (LB_APPLICATION (application))));
  lb_application_offer_lost (LB_APPLICATION (application));
}

static void
lb_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  LbApplication *self = LB_APPLICATION (application);

  for (int i = 0; i < n_files; i++)
    {
      GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
      LbWindow *window = lb_window_with_file (GTK_APPLICATION (self), files[i]);

      if (!window)
        {
          window = LB_IS_WINDOW (active) && lb_window_is_pristine (LB_WINDOW (active))
                       ? LB_WINDOW (active)
                       : new_window (self);
          lb_window_open_file (window, files[i]);
        }
      gtk_window_present (GTK_WINDOW (window));
    }
  lb_application_offer_lost (self);
}

static void
lb_application_dispose (GObject *object)
{
  LbApplication *self = LB_APPLICATION (object);

  lb_application_end_dispose (self);
  g_clear_object (&self->recovery);
  g_clear_object (&self->appearance);
  g_clear_object (&self->preferences);
  G_OBJECT_CLASS (lb_application_parent_class)->dispose (object);
}

static void
lb_application_class_init (LbApplicationClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_application_dispose;
  GTK_APPLICATION_CLASS (klass)->window_added = lb_application_window_added;
  GTK_APPLICATION_CLASS (klass)->window_removed = lb_application_window_removed;
  G_APPLICATION_CLASS (klass)->startup = lb_application_startup;
  G_APPLICATION_CLASS (klass)->activate = lb_application_activate;
  G_APPLICATION_CLASS (klass)->open = lb_application_open;
}

static void
lb_application_init (LbApplication *self)
{
  static const GOptionEntry options[] = {
    { "version", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Show the version and exit"), NULL },
    { NULL },
  };

  g_application_add_main_option_entries (G_APPLICATION (self), options);
  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[FILE…]"));
}

LbApplication *
lb_application_new (GApplicationFlags flags)
{
  return g_object_new (LB_TYPE_APPLICATION, "application-id", LB_APPLICATION_ID, "flags",
                       flags | G_APPLICATION_HANDLES_OPEN, "resource-base-path",
                       "/org/layback/Layback", "register-session", TRUE, NULL);
}

LbPreferences *
lb_application_get_preferences (LbApplication *self)
{
  g_return_val_if_fail (LB_IS_APPLICATION (self), NULL);
  return self->preferences;
}
