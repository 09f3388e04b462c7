/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fields.h"

#include <string.h>
#include <glib/gi18n-lib.h>

#include "current.h"
#include "field_table.h"

/* Of the power law over a rough bed; see DEVELOPERS.md, "Current". */
#define USUAL_EXPONENT 6

const LbField *
lb_fields (size_t *n_fields)
{
  if (n_fields)
    *n_fields = lb_field_table_length;
  return lb_field_table;
}

/* ---- Finding ---- */

#define LEADERS "leaders"

/* Reads "[1]", "[]" or ".1" at the start of `text`; returns what follows, or NULL when it is none
 * of these. */
static const char *
read_leader_index (const char *text, size_t *leader)
{
  gboolean bracket = text[0] == '[';
  char *end = NULL;

  if (!bracket && text[0] != '.')
    return NULL;
  *leader = 0;
  end = (char *) text + 1;
  if (g_ascii_isdigit (text[1]))
    {
      guint64 index = g_ascii_strtoull (text + 1, &end, 10);
      if (index >= LB_MAX_LEADERS)
        return NULL;
      *leader = (size_t) index;
    }
  else if (!bracket)
    return NULL;
  if (bracket && *end++ != ']')
    return NULL;
  return end;
}

const LbField *
lb_field_find (const char *path, size_t *leader)
{
  g_autofree char *open_path = NULL;
  size_t index = 0;

  g_return_val_if_fail (path != NULL, NULL);

  if (g_str_has_prefix (path, LEADERS))
    {
      const char *rest = read_leader_index (path + strlen (LEADERS), &index);
      if (rest == NULL)
        return NULL;
      open_path = g_strconcat (LEADERS "[]", rest, NULL);
      path = open_path;
    }

  for (size_t i = 0; i < lb_field_table_length; i++)
    if (g_str_equal (lb_field_table[i].path, path))
      {
        if (leader)
          *leader = index;
        return &lb_field_table[i];
      }
  return NULL;
}

const LbField *
lb_field (const char *path)
{
  const LbField *field = lb_field_find (path, NULL);
  if (field == NULL)
    g_error ("no such field: %s", path);
  return field;
}

/* ---- Values ---- */

static const void *
value_at (const LbField *field, const LbSetup *setup, size_t leader)
{
  return (const char *) setup + field->offset + leader * field->stride;
}

double
lb_field_get (const LbField *field, const LbSetup *setup, size_t leader)
{
  const void *place = value_at (field, setup, leader);
  int choice;
  double number;

  if (field->kind == LB_FIELD_CHOICE)
    {
      G_STATIC_ASSERT (sizeof (LbProfileLaw) == sizeof choice);
      memcpy (&choice, place, sizeof choice);
      return choice;
    }
  memcpy (&number, place, sizeof number);
  return number;
}

/* What hangs together with the value just set. */
static void
keep_in_step (const LbField *field, LbSetup *setup)
{
  LbProfile *profile = &setup->river.profile;

  if (field->offset == offsetof (LbSetup, river.profile.material))
    {
      if (profile->material != LB_BED_MATERIAL_NONE)
        profile->roughness = lb_bed_material_roughness (profile->material);
    }
  else if (field->offset == offsetof (LbSetup, river.profile.roughness))
    profile->material = LB_BED_MATERIAL_NONE;
  else if (g_str_has_suffix (field->path, ".given_m"))
    setup->rig.line_out.mode = LB_LINE_OUT_GIVEN;
  else if (g_str_has_suffix (field->path, ".weight_above_bed_m"))
    setup->rig.line_out.mode = LB_LINE_OUT_WEIGHT_ABOVE_BED;
}

void
lb_field_set (const LbField *field, LbSetup *setup, size_t leader, double value)
{
  void *place = (void *) value_at (field, setup, leader);

  if (field->kind == LB_FIELD_CHOICE)
    {
      int choice = (int) value;
      memcpy (place, &choice, sizeof choice);
    }
  else
    memcpy (place, &value, sizeof value);
  keep_in_step (field, setup);
}

void
lb_profile_complete (LbProfile *profile)
{
  if (profile->law == LB_PROFILE_LOG && !(profile->roughness > 0))
    {
      profile->material = LB_BED_MATERIAL_GRAVEL;
      profile->roughness = lb_bed_material_roughness (profile->material);
    }
  if (profile->law == LB_PROFILE_POWER && !(profile->exponent > 0))
    profile->exponent = USUAL_EXPONENT;
}

bool
lb_field_accepts (const LbField *field, double value)
{
  if (!lb_is_set (value))
    return field->nullable;
  if (field->kind == LB_FIELD_CHOICE)
    return value >= field->minimum && value <= field->maximum
           && lb_field_choice (field, (int) value) != NULL;
  if (field->whole && value != floor (value))
    return false;
  return value >= field->minimum && value <= field->maximum;
}

double
lb_field_clamp (const LbField *field, double value)
{
  if (!lb_is_set (value))
    return field->nullable ? value : field->minimum;
  return CLAMP (field->whole ? round (value) : value, field->minimum, field->maximum);
}

bool
lb_field_applies (const LbField *field, const LbSetup *setup)
{
  return field->applies == NULL || field->applies (setup);
}

double
lb_field_step (const LbField *field, LbUnits units)
{
  return field->step > 0 ? field->step : lb_units_step (field->quantity, units);
}

/* ---- Choices ---- */

const LbFieldChoice *
lb_field_choice (const LbField *field, int value)
{
  for (size_t i = 0; i < field->n_choices; i++)
    if (field->choices[i].value == value)
      return &field->choices[i];
  return NULL;
}

const LbFieldChoice *
lb_field_choice_named (const LbField *field, const char *name)
{
  for (size_t i = 0; i < field->n_choices; i++)
    if (g_strcmp0 (field->choices[i].name, name) == 0)
      return &field->choices[i];
  return NULL;
}

/* ---- Names ---- */

char *
lb_field_full_path (const LbField *field, size_t leader)
{
  if (field->stride == 0)
    return g_strdup (field->path);
  return g_strdup_printf (LEADERS "[%zu]%s", leader, field->path + strlen (LEADERS "[]"));
}

/* Labels of lines are short ("diameter"): the part they belong to is put in front. */
char *
lb_field_full_label (const LbField *field, size_t leader)
{
  const char *label = _ (field->label);

  if (field->stride != 0)
    /* Translators: "Leader 2: length" */
    return g_strdup_printf (_ ("Leader %zu: %s"), leader + 1, label);
  if (g_str_has_prefix (field->path, "mainline.") && g_ascii_islower (field->label[0]))
    /* Translators: "Mainline: diameter" */
    return g_strdup_printf (_ ("Mainline: %s"), label);
  if (g_str_has_prefix (field->path, "shank.") && g_ascii_islower (field->label[0]))
    /* Translators: "Shank: diameter" */
    return g_strdup_printf (_ ("Shank: %s"), label);
  return g_strdup (label);
}
