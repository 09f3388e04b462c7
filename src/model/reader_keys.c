/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which keys an object of a rig file may hold. */
#include <string.h>

#include "card_file.h"
#include "fields.h"
#include "pass_file.h"
#include "read_plain.h"
#include "reader_tree.h"

/* Keys beside those of the table of fields. */
static const struct
{
  const char *prefix;
  const char *keys[16];
} other_keys[] = {
  { LB_READER_TOP,
    { "format", "version", "title", "notes", "river", "boat", "mainline", "shank", "weight",
      "leaders", "band", "rules", "variants", LB_CARD_KEY, LB_PASS_KEY, NULL } },
  { "river.", { "bed", "profile", NULL } },
  { "leaders[].", { "lure", NULL } },
  { "leaders[].lure.", { "name", NULL } },
};

static gboolean
is_points_law (const LbSetup *setup, const char *prefix)
{
  return g_str_equal (prefix, "river.profile.") && setup->river.profile.law == LB_PROFILE_POINTS;
}

const char *
lb_reader_key_of (const LbField *field, const char *prefix)
{
  const char *key = field->path + strlen (prefix);
  return *prefix && g_str_has_prefix (field->path, prefix) && !strchr (key, '.') ? key : NULL;
}

static GPtrArray *
known_keys (const LbSetup *setup, const char *prefix)
{
  GPtrArray *keys = g_ptr_array_new ();
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  for (size_t i = 0; i < G_N_ELEMENTS (other_keys); i++)
    if (g_str_equal (other_keys[i].prefix, prefix))
      for (size_t j = 0; other_keys[i].keys[j]; j++)
        g_ptr_array_add (keys, (char *) other_keys[i].keys[j]);
  for (size_t i = 0; i < n_fields; i++)
    {
      const char *key = lb_reader_key_of (&fields[i], prefix);
      if (key && lb_field_applies (&fields[i], setup))
        g_ptr_array_add (keys, (char *) key);
    }
  if (is_points_law (setup, prefix))
    g_ptr_array_add (keys, (char *) "points");
  return keys;
}

gboolean
lb_reader_check_keys (JsonObject *object,
                      const char *prefix,
                      const char *shown_prefix,
                      const LbSetup *setup,
                      GError **error)
{
  g_autoptr (GPtrArray) known = known_keys (setup, prefix);

  g_ptr_array_add (known, NULL);
  return lb_read_check_keys (object, (const char *const *) known->pdata, shown_prefix, error);
}
