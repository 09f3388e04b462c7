/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comparison.h"

#include <glib/gi18n-lib.h>

struct _LbComparison
{
  GObject parent_instance;

  LbSetup setup;
  LbVariants list;
  int first_place; /* of the first in the document's list, or -1 */
  LbResult *results[LB_MAX_VARIANTS];
};

G_DEFINE_FINAL_TYPE (LbComparison, lb_comparison, G_TYPE_OBJECT)

static void
lb_comparison_finalize (GObject *object)
{
  LbComparison *self = LB_COMPARISON (object);

  for (size_t i = 0; i < LB_MAX_VARIANTS; i++)
    g_clear_object (&self->results[i]);
  G_OBJECT_CLASS (lb_comparison_parent_class)->finalize (object);
}

static void
lb_comparison_class_init (LbComparisonClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lb_comparison_finalize;
}

static void
lb_comparison_init (LbComparison *self)
{
}

/* ---- What is compared ---- */

static bool
document_goes_first (const LbVariants *variants)
{
  return variants->n == 0 || (variants->n == 1 && variants->list[0].n_overrides > 0);
}

LbVariants
lb_comparison_list (const LbVariants *variants)
{
  LbVariants list = { 0 };

  if (!document_goes_first (variants))
    return *variants;
  lb_variant_set_new_name (&list.list[0], variants, _ ("As it is"));
  list.n = 1;
  if (variants->n > 0)
    list.list[list.n++] = variants->list[0];
  return list;
}

static bool
replaces_what_counts (const LbVariant *variant, const LbSetup *made)
{
  for (size_t i = 0; i < variant->n_overrides; i++)
    {
      const LbOverride *override = &variant->overrides[i];

      if ((override->field->stride && override->leader >= made->rig.n_leaders)
          || !lb_field_applies (override->field, made))
        return false;
    }
  return true;
}

bool
lb_comparison_makes_rig (const LbVariant *variant, const LbSetup *setup, LbSetup *made)
{
  *made = *setup;
  lb_variant_apply (variant, made);
  return replaces_what_counts (variant, made) && lb_setup_validate (made, NULL);
}

/* ---- Making ---- */

LbComparison *
lb_comparison_new (const LbContents *contents, LbResult *const *results)
{
  LbComparison *self = g_object_new (LB_TYPE_COMPARISON, NULL);

  self->setup = contents->setup;
  self->list = lb_comparison_list (&contents->variants);
  self->first_place = document_goes_first (&contents->variants) ? -1 : 0;
  for (size_t i = 0; i < self->list.n; i++)
    g_set_object (&self->results[i], results[i]);
  return self;
}

LbComparison *
lb_comparison_solve (const LbContents *contents, const LbSteadyOptions *options)
{
  LbVariants list = lb_comparison_list (&contents->variants);
  LbResult *results[LB_MAX_VARIANTS] = { NULL };
  LbComparison *self;

  for (size_t i = 0; i < list.n; i++)
    {
      LbSetup made;

      if (lb_comparison_makes_rig (&list.list[i], &contents->setup, &made))
        results[i] = lb_result_solve (NULL, &made, options);
    }
  self = lb_comparison_new (contents, results);
  for (size_t i = 0; i < list.n; i++)
    g_clear_object (&results[i]);
  return self;
}

/* ---- Reading ---- */

size_t
lb_comparison_get_n (const LbComparison *self)
{
  return self->list.n;
}

const LbVariant *
lb_comparison_get_variant (const LbComparison *self, size_t i)
{
  g_return_val_if_fail (i < self->list.n, NULL);
  return &self->list.list[i];
}

int
lb_comparison_get_place (const LbComparison *self, size_t i)
{
  return (int) i + self->first_place;
}

LbResult *
lb_comparison_get_result (const LbComparison *self, size_t i)
{
  g_return_val_if_fail (i < self->list.n, NULL);
  return self->results[i];
}

const LbReadings *
lb_comparison_get_readings (const LbComparison *self, size_t i)
{
  LbResult *result = lb_comparison_get_result (self, i);

  return result ? lb_result_get_readings (result) : NULL;
}

const LbSetup *
lb_comparison_get_setup (const LbComparison *self)
{
  return &self->setup;
}
