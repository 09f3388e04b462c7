/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "appearance.h"

#include <gtk/gtk.h>

#define PORTAL_NAME "org.freedesktop.portal.Desktop"
#define PORTAL_PATH "/org/freedesktop/portal/desktop"
#define PORTAL_INTERFACE "org.freedesktop.portal.Settings"
#define PORTAL_NAMESPACE "org.freedesktop.appearance"
#define PORTAL_KEY "color-scheme"
/* 1024ths of dots per inch: what letters are set for where nobody says otherwise. */
#define USUAL_RESOLUTION (96 * 1024)
#define PORTAL_PREFER_DARK 1 /* the value of the key, from the portal's documentation */

struct _LbAppearance
{
  GObject parent;
  LbPreferences *preferences;
  GCancellable *cancellable;
  GDBusConnection *bus;
  guint subscription;
  gboolean system_dark;
  gboolean dark;
  double text_scale;
};

G_DEFINE_FINAL_TYPE (LbAppearance, lb_appearance, G_TYPE_OBJECT)

enum
{
  PROP_DARK = 1,
  PROP_TEXT_SCALE,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

/* GTK reads its theme anew at every setting of this, even to what it is. */
static void
ask_for_dark (GtkSettings *settings, gboolean dark)
{
  gboolean asked;

  g_object_get (settings, "gtk-application-prefer-dark-theme", &asked, NULL);
  if (dark != asked)
    g_object_set (settings, "gtk-application-prefer-dark-theme", dark, NULL);
}

static void
update (LbAppearance *self)
{
  GtkSettings *settings = gtk_settings_get_default ();
  LbScheme scheme = lb_preferences_get_scheme (self->preferences);
  gboolean dark = scheme == LB_SCHEME_FOLLOW ? self->system_dark : scheme == LB_SCHEME_DARK;

  if (settings)
    ask_for_dark (settings, dark);
  if (dark == self->dark)
    return;
  self->dark = dark;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DARK]);
}

/* All letters of GTK follow the resolution they are set for. The size that the desktop asks for is
 * what the scale starts from. */
static void
update_text_scale (LbAppearance *self)
{
  GtkSettings *settings = gtk_settings_get_default ();
  double scale = lb_preferences_get_text_scale (self->preferences);
  int resolution;

  if (scale == self->text_scale)
    return;
  if (settings)
    {
      gtk_settings_reset_property (settings, "gtk-xft-dpi");
      g_object_get (settings, "gtk-xft-dpi", &resolution, NULL);
      if (scale != 1)
        g_object_set (settings, "gtk-xft-dpi",
                      (int) (scale * (resolution > 0 ? resolution : USUAL_RESOLUTION)), NULL);
    }
  self->text_scale = scale;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TEXT_SCALE]);
}

/* `value` as the portal wraps it: a variant in a variant, or one less. */
static void
take_system_scheme (LbAppearance *self, GVariant *value)
{
  g_autoptr (GVariant) inner = g_variant_ref (value);

  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *next = g_variant_get_variant (inner);

      g_variant_unref (inner);
      inner = next;
    }
  if (!g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    return;
  self->system_dark = g_variant_get_uint32 (inner) == PORTAL_PREFER_DARK;
  update (self);
}

static void
setting_changed_cb (GDBusConnection *bus,
                    const char *sender,
                    const char *path,
                    const char *interface,
                    const char *signal,
                    GVariant *parameters,
                    gpointer user_data)
{
  const char *space, *key;
  g_autoptr (GVariant) value = NULL;

  if (!g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&sv)", &space, &key, &value);
  if (g_str_equal (space, PORTAL_NAMESPACE) && g_str_equal (key, PORTAL_KEY))
    take_system_scheme (user_data, value);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GVariant) reply =
      g_dbus_connection_call_finish (G_DBUS_CONNECTION (source), result, NULL);
  g_autoptr (GVariant) value = NULL;

  /* No portal, or the window is gone: GTK's own setting holds. */
  if (!reply)
    return;
  value = g_variant_get_child_value (reply, 0);
  take_system_scheme (user_data, value);
}

static void
bus_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GDBusConnection *bus = g_bus_get_finish (result, NULL);
  LbAppearance *self = user_data;

  if (!bus)
    return;
  self->bus = bus;
  self->subscription = g_dbus_connection_signal_subscribe (
      bus, PORTAL_NAME, PORTAL_INTERFACE, "SettingChanged", PORTAL_PATH, PORTAL_NAMESPACE,
      G_DBUS_SIGNAL_FLAGS_NONE, setting_changed_cb, self, NULL);
  g_dbus_connection_call (bus, PORTAL_NAME, PORTAL_PATH, PORTAL_INTERFACE, "Read",
                          g_variant_new ("(ss)", PORTAL_NAMESPACE, PORTAL_KEY), NULL,
                          G_DBUS_CALL_FLAGS_NONE, -1, self->cancellable, read_cb, self);
}

static void
lb_appearance_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_DARK)
    g_value_set_boolean (value, LB_APPEARANCE (object)->dark);
  else if (id == PROP_TEXT_SCALE)
    g_value_set_double (value, LB_APPEARANCE (object)->text_scale);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
lb_appearance_dispose (GObject *object)
{
  LbAppearance *self = LB_APPEARANCE (object);

  g_cancellable_cancel (self->cancellable);
  if (self->subscription)
    g_dbus_connection_signal_unsubscribe (self->bus, self->subscription);
  self->subscription = 0;
  g_clear_object (&self->bus);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->preferences);
  G_OBJECT_CLASS (lb_appearance_parent_class)->dispose (object);
}

static void
lb_appearance_class_init (LbAppearanceClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = lb_appearance_dispose;
  object_class->get_property = lb_appearance_get_property;
  props[PROP_DARK] =
      g_param_spec_boolean ("dark", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_TEXT_SCALE] = g_param_spec_double ("text-scale", NULL, NULL, 0.1, 10, 1,
                                                G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
lb_appearance_init (LbAppearance *self)
{
  self->cancellable = g_cancellable_new ();
  self->text_scale = 1;
}

/* Whether GTK is dark already: by its setting, or by a theme that is dark by name. */
static gboolean
has_dark_theme (GtkSettings *settings)
{
  g_autofree char *name = NULL;
  gboolean prefer_dark;

  g_object_get (settings, "gtk-application-prefer-dark-theme", &prefer_dark, "gtk-theme-name",
                &name, NULL);
  return prefer_dark || (name && g_str_has_suffix (name, "-dark"));
}

LbAppearance *
lb_appearance_new (LbPreferences *preferences)
{
  LbAppearance *self = g_object_new (LB_TYPE_APPEARANCE, NULL);
  GtkSettings *settings = gtk_settings_get_default ();

  self->preferences = g_object_ref (preferences);
  if (settings)
    self->system_dark = has_dark_theme (settings);
  g_signal_connect_object (preferences, "notify::theme", G_CALLBACK (update), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (preferences, "notify::text-size", G_CALLBACK (update_text_scale), self,
                           G_CONNECT_SWAPPED);
  update (self);
  update_text_scale (self);
  g_bus_get (G_BUS_TYPE_SESSION, self->cancellable, bus_cb, self);
  return self;
}

gboolean
lb_appearance_get_dark (LbAppearance *self)
{
  g_return_val_if_fail (LB_IS_APPEARANCE (self), FALSE);
  return self->dark;
}

double
lb_appearance_get_text_scale (LbAppearance *self)
{
  g_return_val_if_fail (LB_IS_APPEARANCE (self), 1);
  return self->text_scale;
}
