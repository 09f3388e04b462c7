/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "contents.h"

#include <string.h>
#include <glib/gi18n-lib.h>

#include "fields.h"

/* ---- Words ---- */

static bool
fits_one_line (gunichar c)
{
  bool is_character = (c < 0xfdd0 || c > 0xfdef) && (c & 0xfffe) != 0xfffe;

  return is_character && !g_unichar_iscntrl (c) && c != 0x2028 && c != 0x2029;
}

bool
lb_text_is_one_line (const char *text)
{
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    if (!fits_one_line (g_utf8_get_char (p)))
      return false;
  return true;
}

char *
lb_text_to_one_line (const char *text)
{
  GString *line = g_string_new (NULL);

  for (const char *p = text; *p; p = g_utf8_next_char (p))
    g_string_append_unichar (line, fits_one_line (g_utf8_get_char (p)) ? g_utf8_get_char (p) : ' ');
  return g_string_free (line, FALSE);
}

/* ---- All of it ---- */

void
lb_contents_init (LbContents *contents)
{
  contents->setup = lb_setup_default ();
  contents->variants = (LbVariants){ 0 };
  contents->title = g_strdup ("");
  contents->notes = g_strdup ("");
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    contents->lure_names[i] = g_strdup (_ ("floating minnow, 9 cm"));
  contents->card = lb_card_default ();
  contents->pass = lb_pass_script_default ();
}

void
lb_contents_clear (LbContents *contents)
{
  g_clear_pointer (&contents->title, g_free);
  g_clear_pointer (&contents->notes, g_free);
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    g_clear_pointer (&contents->lure_names[i], g_free);
}

static void
replace (char **to, const char *from)
{
  if (*to == from)
    return;
  g_free (*to);
  *to = g_strdup (from);
}

void
lb_contents_copy (LbContents *to, const LbContents *from)
{
  to->setup = from->setup;
  to->variants = from->variants;
  replace (&to->title, from->title);
  replace (&to->notes, from->notes);
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    replace (&to->lure_names[i], from->lure_names[i]);
  to->card = from->card;
  to->pass = from->pass;
}

LbContents *
lb_contents_new (void)
{
  LbContents *contents = g_new0 (LbContents, 1);
  lb_contents_init (contents);
  return contents;
}

LbContents *
lb_contents_dup (const LbContents *contents)
{
  LbContents *copy = g_new0 (LbContents, 1);
  lb_contents_copy (copy, contents);
  return copy;
}

void
lb_contents_free (LbContents *contents)
{
  if (contents == NULL)
    return;
  lb_contents_clear (contents);
  g_free (contents);
}

/* ---- Equality ---- */

/* Bit for bit, but any unset value equals any other. */
static bool
same_number (double a, double b)
{
  return (isnan (a) && isnan (b)) || memcmp (&a, &b, sizeof a) == 0;
}

static bool
same_numbers (const double *a, const double *b, size_t n)
{
  for (size_t i = 0; i < n; i++)
    if (!same_number (a[i], b[i]))
      return false;
  return true;
}

static bool
same_field (const LbField *field, const LbSetup *a, const LbSetup *b)
{
  size_t n = field->stride ? a->rig.n_leaders : 1;

  if (!lb_field_applies (field, a) && !lb_field_applies (field, b))
    return true;
  for (size_t i = 0; i < n; i++)
    if (!same_number (lb_field_get (field, a, i), lb_field_get (field, b, i)))
      return false;
  return true;
}

static bool
same_points (const LbRiver *a, const LbRiver *b)
{
  size_t n = a->n_bed_points;

  if (n != b->n_bed_points || !same_numbers (a->bed_x, b->bed_x, n)
      || !same_numbers (a->bed_depth, b->bed_depth, n))
    return false;
  if (a->profile.law != LB_PROFILE_POINTS)
    return true;
  n = a->profile.n_points;
  return n == b->profile.n_points
         && same_numbers (a->profile.height_fraction, b->profile.height_fraction, n)
         && same_numbers (a->profile.speed_fraction, b->profile.speed_fraction, n);
}

bool
lb_setup_equal (const LbSetup *a, const LbSetup *b)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);

  if (a->rig.n_leaders != b->rig.n_leaders)
    return false;
  for (size_t i = 0; i < n_fields; i++)
    if (!same_field (&fields[i], a, b))
      return false;
  return same_points (&a->river, &b->river);
}

bool
lb_contents_equal (const LbContents *a, const LbContents *b)
{
  if (!lb_setup_equal (&a->setup, &b->setup) || !g_str_equal (a->title, b->title)
      || !g_str_equal (a->notes, b->notes) || !lb_variants_equal (&a->variants, &b->variants)
      || !lb_card_equal (&a->card, &b->card) || !lb_pass_script_equal (&a->pass, &b->pass))
    return false;
  for (size_t i = 0; i < a->setup.rig.n_leaders; i++)
    if (!g_str_equal (a->lure_names[i], b->lure_names[i]))
      return false;
  return true;
}
