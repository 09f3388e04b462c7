/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferences.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

#define SCHEMA "org.layback.Layback"
#define WEIGHTS_KEY "weights-owned"
/* The rules of thumb begin at 4 in, m; common practice, no source. */
#define DEFAULT_RULE 0.1016

struct _LbPreferences
{
  GObject parent;
  GSettings *settings; /* NULL where the schema is not installed */
  char *units;
  char *theme;
  char *text_size;
  double band_low, band_high;
  double level_within;
  double hold_height;
  int decimals;
  gboolean show_timings;
  int window_width, window_height;
  gboolean window_maximized;
  GArray *weights; /* double */
};

G_DEFINE_FINAL_TYPE (LbPreferences, lb_preferences, G_TYPE_OBJECT)

enum
{
  PROP_UNITS = 1,
  PROP_THEME,
  PROP_TEXT_SIZE,
  PROP_BAND_LOW,
  PROP_BAND_HIGH,
  PROP_LEVEL_WITHIN,
  PROP_HOLD_HEIGHT,
  PROP_DECIMALS,
  PROP_SHOW_TIMINGS,
  PROP_WINDOW_WIDTH,
  PROP_WINDOW_HEIGHT,
  PROP_WINDOW_MAXIMIZED,
  N_PROPS
};

/* The text sizes, in the order of the schema. */
static const char *const text_sizes[] = { "small", "normal", "large", "larger", "largest", NULL };
static const double text_scales[] = { 0.9, 1, 1.15, 1.3, 1.5 };

static GParamSpec *props[N_PROPS];
static guint weights_changed_signal;

/* Common practice for the sizes sold, no source: 1 to 3 lb. */
static const double default_weights[] = { 0.4536, 0.5670, 0.6804, 0.7938, 0.9072, 1.1340, 1.3608 };

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Takes over `kg` without telling the settings. Returns whether anything changed. */
static gboolean
take_weights (LbPreferences *self, const double *kg, gsize n)
{
  g_autoptr (GArray) weights = g_array_new (FALSE, FALSE, sizeof (double));

  for (gsize i = 0; i < n; i++)
    if (isfinite (kg[i]) && kg[i] > 0)
      g_array_append_val (weights, kg[i]);
  g_array_sort (weights, compare_doubles);
  if (weights->len == self->weights->len
      && memcmp (weights->data, self->weights->data, weights->len * sizeof (double)) == 0)
    return FALSE;
  g_array_unref (self->weights);
  self->weights = g_steal_pointer (&weights);
  g_signal_emit (self, weights_changed_signal, 0);
  return TRUE;
}

static void
weights_key_changed_cb (LbPreferences *self)
{
  g_autoptr (GVariant) value = g_settings_get_value (self->settings, WEIGHTS_KEY);
  gsize n;
  const double *kg = g_variant_get_fixed_array (value, &n, sizeof (double));

  take_weights (self, kg, n);
}

static void
set_nick (LbPreferences *self, char **field, const char *nick, const char *const *nicks, int prop)
{
  if (!nick || !g_strv_contains (nicks, nick) || g_strcmp0 (*field, nick) == 0)
    return;
  g_free (*field);
  *field = g_strdup (nick);
  g_object_notify_by_pspec (G_OBJECT (self), props[prop]);
}

static void
set_double (LbPreferences *self, double *field, double value, int prop)
{
  if (*field == value)
    return;
  *field = value;
  g_object_notify_by_pspec (G_OBJECT (self), props[prop]);
}

static void
set_int (LbPreferences *self, int *field, int value, int prop)
{
  if (*field == value)
    return;
  *field = value;
  g_object_notify_by_pspec (G_OBJECT (self), props[prop]);
}

static void
lb_preferences_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  static const char *const unit_nicks[] = { "us", "metric", NULL };
  static const char *const theme_nicks[] = { "follow", "light", "dark", NULL };
  LbPreferences *self = LB_PREFERENCES (object);

  switch (id)
    {
    case PROP_UNITS:
      set_nick (self, &self->units, g_value_get_string (value), unit_nicks, PROP_UNITS);
      break;
    case PROP_THEME:
      set_nick (self, &self->theme, g_value_get_string (value), theme_nicks, PROP_THEME);
      break;
    case PROP_TEXT_SIZE:
      set_nick (self, &self->text_size, g_value_get_string (value), text_sizes, PROP_TEXT_SIZE);
      break;
    case PROP_BAND_LOW:
      set_double (self, &self->band_low, g_value_get_double (value), PROP_BAND_LOW);
      break;
    case PROP_BAND_HIGH:
      set_double (self, &self->band_high, g_value_get_double (value), PROP_BAND_HIGH);
      break;
    case PROP_LEVEL_WITHIN:
      set_double (self, &self->level_within, g_value_get_double (value), PROP_LEVEL_WITHIN);
      break;
    case PROP_HOLD_HEIGHT:
      set_double (self, &self->hold_height, g_value_get_double (value), PROP_HOLD_HEIGHT);
      break;
    case PROP_DECIMALS:
      set_int (self, &self->decimals, g_value_get_int (value), PROP_DECIMALS);
      break;
    case PROP_SHOW_TIMINGS:
      set_int (self, &self->show_timings, g_value_get_boolean (value), PROP_SHOW_TIMINGS);
      break;
    case PROP_WINDOW_WIDTH:
      set_int (self, &self->window_width, g_value_get_int (value), PROP_WINDOW_WIDTH);
      break;
    case PROP_WINDOW_HEIGHT:
      set_int (self, &self->window_height, g_value_get_int (value), PROP_WINDOW_HEIGHT);
      break;
    case PROP_WINDOW_MAXIMIZED:
      set_int (self, &self->window_maximized, g_value_get_boolean (value), PROP_WINDOW_MAXIMIZED);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
lb_preferences_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  LbPreferences *self = LB_PREFERENCES (object);

  switch (id)
    {
    case PROP_UNITS:
      g_value_set_string (value, self->units);
      break;
    case PROP_THEME:
      g_value_set_string (value, self->theme);
      break;
    case PROP_TEXT_SIZE:
      g_value_set_string (value, self->text_size);
      break;
    case PROP_BAND_LOW:
      g_value_set_double (value, self->band_low);
      break;
    case PROP_BAND_HIGH:
      g_value_set_double (value, self->band_high);
      break;
    case PROP_LEVEL_WITHIN:
      g_value_set_double (value, self->level_within);
      break;
    case PROP_HOLD_HEIGHT:
      g_value_set_double (value, self->hold_height);
      break;
    case PROP_DECIMALS:
      g_value_set_int (value, self->decimals);
      break;
    case PROP_SHOW_TIMINGS:
      g_value_set_boolean (value, self->show_timings);
      break;
    case PROP_WINDOW_WIDTH:
      g_value_set_int (value, self->window_width);
      break;
    case PROP_WINDOW_HEIGHT:
      g_value_set_int (value, self->window_height);
      break;
    case PROP_WINDOW_MAXIMIZED:
      g_value_set_boolean (value, self->window_maximized);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bind_settings (LbPreferences *self)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema =
      source ? g_settings_schema_source_lookup (source, SCHEMA, TRUE) : NULL;

  if (!schema)
    return;
  self->settings = g_settings_new_full (schema, NULL, NULL);
  for (int i = 1; i < N_PROPS; i++)
    g_settings_bind (self->settings, props[i]->name, self, props[i]->name, G_SETTINGS_BIND_DEFAULT);
  g_signal_connect_swapped (self->settings, "changed::" WEIGHTS_KEY,
                            G_CALLBACK (weights_key_changed_cb), self);
  weights_key_changed_cb (self);
}

static void
lb_preferences_constructed (GObject *object)
{
  LbPreferences *self = LB_PREFERENCES (object);

  G_OBJECT_CLASS (lb_preferences_parent_class)->constructed (object);
  bind_settings (self);
}

static void
lb_preferences_finalize (GObject *object)
{
  LbPreferences *self = LB_PREFERENCES (object);

  if (self->settings)
    g_signal_handlers_disconnect_by_data (self->settings, self);
  g_clear_object (&self->settings);
  g_free (self->units);
  g_free (self->theme);
  g_free (self->text_size);
  g_array_unref (self->weights);
  G_OBJECT_CLASS (lb_preferences_parent_class)->finalize (object);
}

static void
lb_preferences_class_init (LbPreferencesClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->constructed = lb_preferences_constructed;
  object_class->finalize = lb_preferences_finalize;
  object_class->set_property = lb_preferences_set_property;
  object_class->get_property = lb_preferences_get_property;

  props[PROP_UNITS] = g_param_spec_string ("units", NULL, NULL, "us", flags);
  props[PROP_THEME] = g_param_spec_string ("theme", NULL, NULL, "follow", flags);
  props[PROP_TEXT_SIZE] = g_param_spec_string ("text-size", NULL, NULL, "normal", flags);
  props[PROP_BAND_LOW] = g_param_spec_double ("band-low", NULL, NULL, 0, 20, 0.1016, flags);
  props[PROP_BAND_HIGH] = g_param_spec_double ("band-high", NULL, NULL, 0, 20, 0.4572, flags);
  props[PROP_LEVEL_WITHIN] =
      g_param_spec_double ("level-within", NULL, NULL, 0, 20, DEFAULT_RULE, flags);
  props[PROP_HOLD_HEIGHT] =
      g_param_spec_double ("hold-height", NULL, NULL, 0, 20, DEFAULT_RULE, flags);
  props[PROP_DECIMALS] = g_param_spec_int ("decimals", NULL, NULL, -1, 3, -1, flags);
  props[PROP_SHOW_TIMINGS] = g_param_spec_boolean ("show-timings", NULL, NULL, FALSE, flags);
  props[PROP_WINDOW_WIDTH] = g_param_spec_int ("window-width", NULL, NULL, 480, 16384, 1280, flags);
  props[PROP_WINDOW_HEIGHT] =
      g_param_spec_int ("window-height", NULL, NULL, 320, 16384, 800, flags);
  props[PROP_WINDOW_MAXIMIZED] =
      g_param_spec_boolean ("window-maximized", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  weights_changed_signal = g_signal_new ("weights-changed", LB_TYPE_PREFERENCES, G_SIGNAL_RUN_LAST,
                                         0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_preferences_init (LbPreferences *self)
{
  self->units = g_strdup ("us");
  self->theme = g_strdup ("follow");
  self->text_size = g_strdup ("normal");
  self->band_low = 0.1016;
  self->band_high = 0.4572;
  self->level_within = DEFAULT_RULE;
  self->hold_height = DEFAULT_RULE;
  self->decimals = -1;
  self->window_width = 1280;
  self->window_height = 800;
  self->weights = g_array_new (FALSE, FALSE, sizeof (double));
  g_array_append_vals (self->weights, default_weights, G_N_ELEMENTS (default_weights));
}

LbPreferences *
lb_preferences_new (void)
{
  return g_object_new (LB_TYPE_PREFERENCES, NULL);
}

LbUnits
lb_preferences_get_units (LbPreferences *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), LB_UNITS_US);
  return g_str_equal (self->units, "metric") ? LB_UNITS_METRIC : LB_UNITS_US;
}

LbScheme
lb_preferences_get_scheme (LbPreferences *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), LB_SCHEME_FOLLOW);
  if (g_str_equal (self->theme, "light"))
    return LB_SCHEME_LIGHT;
  return g_str_equal (self->theme, "dark") ? LB_SCHEME_DARK : LB_SCHEME_FOLLOW;
}

int
lb_preferences_get_decimals (LbPreferences *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), -1);
  return self->decimals;
}

double
lb_preferences_get_text_scale (LbPreferences *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), 1);
  for (gsize i = 0; text_sizes[i]; i++)
    if (g_str_equal (text_sizes[i], self->text_size))
      return text_scales[i];
  return 1;
}

double
lb_preferences_get_level_within (LbPreferences *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), DEFAULT_RULE);
  return self->level_within;
}

double
lb_preferences_get_hold_height (LbPreferences *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), DEFAULT_RULE);
  return self->hold_height;
}

gboolean
lb_preferences_get_show_timings (LbPreferences *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), FALSE);
  return self->show_timings;
}

void
lb_preferences_get_band (LbPreferences *self, double *low, double *high)
{
  g_return_if_fail (LB_IS_PREFERENCES (self));
  *low = self->band_low;
  *high = self->band_high;
}

const double *
lb_preferences_get_weights (LbPreferences *self, gsize *n)
{
  g_return_val_if_fail (LB_IS_PREFERENCES (self), NULL);
  *n = self->weights->len;
  return (const double *) self->weights->data;
}

void
lb_preferences_set_weights (LbPreferences *self, const double *kg, gsize n)
{
  g_return_if_fail (LB_IS_PREFERENCES (self));
  if (!take_weights (self, kg, n) || !self->settings)
    return;
  g_settings_set_value (self->settings, WEIGHTS_KEY,
                        g_variant_new_fixed_array (G_VARIANT_TYPE_DOUBLE, self->weights->data,
                                                   self->weights->len, sizeof (double)));
}
