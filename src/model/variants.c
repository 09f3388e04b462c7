/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "variants.h"

#include <string.h>

#include "contents.h"

#define LINE_OUT "mainline.line_out"
#define TOUCHING LINE_OUT ".touching"

/* ---- Names ---- */

static bool
is_blank (const char *text)
{
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    if (!g_unichar_isspace (g_utf8_get_char (p)))
      return false;
  return true;
}

bool
lb_variant_name_is_fine (const char *name)
{
  return g_utf8_validate (name, -1, NULL) && lb_text_is_one_line (name) && !is_blank (name)
         && g_utf8_strlen (name, -1) <= LB_VARIANT_NAME_LONGEST;
}

const LbVariant *
lb_variants_find (const LbVariants *variants, const char *name)
{
  for (size_t i = 0; i < variants->n; i++)
    if (g_str_equal (variants->list[i].name, name))
      return &variants->list[i];
  return NULL;
}

/* `name`, cut so that `end` still fits behind it. */
static char *
with_end (const char *name, const char *end)
{
  glong room = LB_VARIANT_NAME_LONGEST - g_utf8_strlen (end, -1);
  g_autofree char *cut =
      g_utf8_strlen (name, -1) > room ? g_utf8_substring (name, 0, room) : g_strdup (name);

  return g_strconcat (cut, end, NULL);
}

void
lb_variant_set_new_name (LbVariant *variant, const LbVariants *variants, const char *name)
{
  g_autofree char *utf8 = g_utf8_make_valid (name, -1);
  g_autofree char *line = g_strstrip (lb_text_to_one_line (utf8));
  g_autofree char *found = with_end (is_blank (line) ? "?" : line, "");

  for (int i = 2; lb_variants_find (variants, found); i++)
    {
      g_autofree char *end = g_strdup_printf (" (%d)", i);

      g_free (found);
      found = with_end (line, end);
    }
  g_strlcpy (variant->name, found, sizeof variant->name);
}

/* ---- Fields ---- */

bool
lb_override_find (const char *path, const LbField **field, size_t *leader)
{
  g_autofree char *canonical = NULL;

  *leader = 0;
  if (g_str_equal (path, TOUCHING))
    {
      *field = lb_field (LINE_OUT);
      return true;
    }
  *field = g_str_equal (path, LINE_OUT) ? NULL : lb_field_find (path, leader);
  if (*field == NULL)
    return false;
  canonical = lb_field_full_path (*field, *leader);
  return g_str_equal (canonical, path);
}

char *
lb_override_dup_path (const LbOverride *override)
{
  return override->field->kind == LB_FIELD_CHOICE && g_str_equal (override->field->path, LINE_OUT)
             ? g_strdup (TOUCHING)
             : lb_field_full_path (override->field, override->leader);
}

static bool
gives_line_out (const LbField *field)
{
  return g_str_has_prefix (field->path, LINE_OUT);
}

static bool
gives_roughness (const LbField *field)
{
  return field->offset == offsetof (LbSetup, river.profile.material)
         || field->offset == offsetof (LbSetup, river.profile.roughness);
}

bool
lb_override_excludes (const LbField *a, const LbField *b)
{
  return a != b
         && ((gives_line_out (a) && gives_line_out (b))
             || (gives_roughness (a) && gives_roughness (b)));
}

/* ---- One variant ---- */

const LbOverride *
lb_variant_get_override (const LbVariant *variant, const LbField *field, size_t leader)
{
  for (size_t i = 0; i < variant->n_overrides; i++)
    if (variant->overrides[i].field == field && variant->overrides[i].leader == leader)
      return &variant->overrides[i];
  return NULL;
}

static bool
can_hold (const LbField *field, size_t leader, double value)
{
  if (!lb_field_accepts (field, value) || leader >= (field->stride ? LB_MAX_LEADERS : 1))
    return false;
  if (g_str_equal (field->path, LINE_OUT))
    return value == LB_LINE_OUT_TOUCHING;
  /* A choice that stands for "none of these" has no name in a file. */
  return field->kind != LB_FIELD_CHOICE || lb_field_choice (field, (int) value)->name != NULL;
}

static bool
comes_before (const LbOverride *a, const LbOverride *b)
{
  return a->field < b->field || (a->field == b->field && a->leader < b->leader);
}

static void
insert (LbVariant *variant, LbOverride added)
{
  size_t place = variant->n_overrides++;

  for (; place > 0 && comes_before (&added, &variant->overrides[place - 1]); place--)
    variant->overrides[place] = variant->overrides[place - 1];
  variant->overrides[place] = added;
}

static void
remove_at (LbVariant *variant, size_t place)
{
  variant->n_overrides--;
  for (size_t i = place; i < variant->n_overrides; i++)
    variant->overrides[i] = variant->overrides[i + 1];
}

bool
lb_variant_set (LbVariant *variant, const LbField *field, size_t leader, double value)
{
  LbVariant trial = *variant;

  if (!can_hold (field, leader, value))
    return false;
  for (size_t i = trial.n_overrides; i-- > 0;)
    if (lb_override_excludes (trial.overrides[i].field, field))
      remove_at (&trial, i);
  lb_variant_unset (&trial, field, leader);
  if (trial.n_overrides == LB_MAX_OVERRIDES)
    return false;
  insert (&trial, (LbOverride){ field, leader, value });
  *variant = trial;
  return true;
}

bool
lb_variant_unset (LbVariant *variant, const LbField *field, size_t leader)
{
  const LbOverride *found = lb_variant_get_override (variant, field, leader);

  if (found)
    remove_at (variant, (size_t) (found - variant->overrides));
  return found != NULL;
}

static void
move_leaders_of (LbVariant *variant, const size_t to[LB_MAX_LEADERS])
{
  LbVariant old = *variant;

  variant->n_overrides = 0;
  for (size_t i = 0; i < old.n_overrides; i++)
    {
      LbOverride override = old.overrides[i];

      if (override.field->stride)
        override.leader = to[override.leader];
      if (override.leader < LB_MAX_LEADERS)
        insert (variant, override);
    }
}

void
lb_variants_move_leaders (LbVariants *variants, const size_t to[LB_MAX_LEADERS])
{
  for (size_t i = 0; i < variants->n; i++)
    move_leaders_of (&variants->list[i], to);
}

/* ---- Equality ---- */

static bool
override_equal (const LbOverride *a, const LbOverride *b)
{
  return a->field == b->field && a->leader == b->leader
         && (memcmp (&a->value, &b->value, sizeof a->value) == 0
             || (!lb_is_set (a->value) && !lb_is_set (b->value)));
}

bool
lb_variant_equal (const LbVariant *a, const LbVariant *b)
{
  if (!g_str_equal (a->name, b->name) || a->n_overrides != b->n_overrides)
    return false;
  for (size_t i = 0; i < a->n_overrides; i++)
    if (!override_equal (&a->overrides[i], &b->overrides[i]))
      return false;
  return true;
}

bool
lb_variants_equal (const LbVariants *a, const LbVariants *b)
{
  if (a->n != b->n)
    return false;
  for (size_t i = 0; i < a->n; i++)
    if (!lb_variant_equal (&a->list[i], &b->list[i]))
      return false;
  return true;
}

/* ---- On the document ---- */

/* The table names what decides before what follows from it, so its order is the one to set in. */
void
lb_variant_apply (const LbVariant *variant, LbSetup *setup)
{
  for (size_t i = 0; i < variant->n_overrides; i++)
    {
      const LbOverride *override = &variant->overrides[i];

      lb_field_set (override->field, setup, override->leader, override->value);
      if (override->field->offset == offsetof (LbSetup, river.profile.law))
        lb_profile_complete (&setup->river.profile);
    }
}
