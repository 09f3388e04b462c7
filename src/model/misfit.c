/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "misfit.h"

#include <glib/gi18n-lib.h>

#include "contents.h"
#include "validate.h"

static char *
height_in_words (double value, const LbWording *wording)
{
  return lb_words_quantity (LB_QUANTITY_HEIGHT, wording->units, value, wording->decimals);
}

/* The leader attached highest, which a shorter shank would lose first. */
static char *
explain_short_shank (const LbRig *rig, const LbWording *wording)
{
  size_t highest = 0;
  g_autofree char *height = NULL;

  for (size_t i = 1; i < rig->n_leaders; i++)
    if (rig->leaders[i].attach_above_weight > rig->leaders[highest].attach_above_weight)
      highest = i;
  if (rig->n_leaders == 0 || rig->leaders[highest].attach_above_weight <= rig->shank_length)
    return NULL;
  height = height_in_words (rig->leaders[highest].attach_above_weight, wording);
  /* Translators: why a shank cannot be so short: "Leader 2 is attached at 40 in." */
  return g_strdup_printf (_ ("Leader %zu is attached at %s."), highest + 1, height);
}

static char *
explain_high_attachment (const LbRig *rig, size_t leader, const LbWording *wording)
{
  g_autofree char *length = NULL;

  if (rig->leaders[leader].attach_above_weight <= rig->shank_length)
    return NULL;
  length = height_in_words (rig->shank_length, wording);
  return g_strdup_printf (_ ("The shank is only %s long."), length);
}

static char *
explain_band (const LbBand *band, bool low, const LbWording *wording)
{
  g_autofree char *other = height_in_words (low ? band->high : band->low, wording);

  if (band->low < band->high)
    return NULL;
  return low ? g_strdup_printf (_ ("The band's high side is at %s."), other)
             : g_strdup_printf (_ ("The band's low side is at %s."), other);
}

static char *
explain_points (const LbProfile *profile)
{
  if (profile->law != LB_PROFILE_POINTS || profile->n_points >= LB_PROFILE_LEAST_POINTS)
    return NULL;
  return g_strdup_printf (_ ("Give %d measured points first."), LB_PROFILE_LEAST_POINTS);
}

char *
lb_misfit_explain_known (const LbSetup *setup,
                         const LbField *field,
                         size_t leader,
                         const LbWording *wording)
{
  if (g_str_equal (field->path, "shank.length_m"))
    return explain_short_shank (&setup->rig, wording);
  if (g_str_equal (field->path, "leaders[].attach_above_weight_m"))
    return explain_high_attachment (&setup->rig, leader, wording);
  if (g_str_has_prefix (field->path, "band."))
    return explain_band (&setup->band, g_str_equal (field->path, "band.low_m"), wording);
  if (g_str_equal (field->path, "river.profile.law"))
    return explain_points (&setup->river.profile);
  return NULL;
}

char *
lb_misfit_explain (const LbSetup *setup,
                   const LbField *field,
                   size_t leader,
                   double value,
                   const LbWording *wording)
{
  g_autofree LbSetup *trial = g_memdup2 (setup, sizeof *setup);
  char *known;

  g_return_val_if_fail (leader < LB_MAX_LEADERS, NULL);
  lb_field_set (field, trial, leader, value);
  if (lb_setup_validate (trial, NULL))
    return NULL;
  known = lb_misfit_explain_known (trial, field, leader, wording);
  return known ? known : g_strdup (_ ("This value does not fit the others."));
}
