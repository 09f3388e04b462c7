/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a variant says, and why it may make no rig. */
#include <glib/gi18n-lib.h>

#include "contents.h"
#include "misfit.h"
#include "variants.h"

static char *
value_in_words (const LbOverride *override, const LbWording *wording)
{
  const LbField *field = override->field;

  if (field->kind == LB_FIELD_CHOICE)
    return g_strdup (_ (lb_field_choice (field, (int) override->value)->label));
  if (!lb_is_set (override->value))
    return g_strdup (_ (field->unset_label));
  return lb_words_quantity (field->quantity, wording->units, override->value, wording->decimals);
}

char *
lb_override_dup_words (const LbOverride *override, const LbWording *wording)
{
  g_autofree char *label = lb_field_full_label (override->field, override->leader);
  g_autofree char *value = value_in_words (override, wording);

  /* Translators: a value that a variant replaces: "Weight: 2 lb" */
  return g_strdup_printf (_ ("%s: %s"), label, value);
}

/* Why this value has no place in the rig as the variant makes it, or NULL. */
static char *
explain_place (const LbOverride *override, const LbSetup *trial)
{
  g_autofree char *label = NULL;

  if (override->field->stride && override->leader >= trial->rig.n_leaders)
    return g_strdup_printf (_ ("The rig has no leader %zu, which this variant changes."),
                            override->leader + 1);
  if (lb_field_applies (override->field, trial))
    return NULL;
  label = lb_field_full_label (override->field, override->leader);
  return g_strdup_printf (_ ("“%s” does not count in this rig, so it cannot be changed."), label);
}

/* Which of the values does not go with the others: one whose reason is known, if there is one. */
static char *
explain_misfit (const LbVariant *variant, const LbSetup *trial, const LbWording *wording)
{
  for (size_t i = 0; i < variant->n_overrides; i++)
    {
      const LbOverride *override = &variant->overrides[i];
      g_autofree char *reason =
          lb_misfit_explain_known (trial, override->field, override->leader, wording);
      g_autofree char *words = NULL;

      if (reason == NULL)
        continue;
      words = lb_override_dup_words (override, wording);
      /* Translators: a value and why it does not fit: "Shank length: 10 in. Leader 2 is attached at
       * 35 in." */
      return g_strdup_printf (_ ("%s. %s"), words, reason);
    }
  return g_strdup (_ ("Its values do not fit one another or the rig."));
}

char *
lb_variant_explain (const LbVariant *variant, const LbSetup *setup, const LbWording *wording)
{
  g_autofree LbSetup *trial = g_memdup2 (setup, sizeof *setup);
  char *reason = NULL;

  lb_variant_apply (variant, trial);
  for (size_t i = 0; i < variant->n_overrides && reason == NULL; i++)
    reason = explain_place (&variant->overrides[i], trial);
  if (reason || lb_setup_validate (trial, NULL))
    return reason;
  return explain_misfit (variant, trial, wording);
}
