/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_match.h"

/* Files and catalogues give three or four digits. */
#define ROUNDING 5e-3

static bool
same (double a, double b)
{
  return fabs (a - b) <= ROUNDING * fmax (fabs (a), fabs (b));
}

static bool
same_if_set (double a, double b)
{
  return !lb_is_set (a) || !lb_is_set (b) || same (a, b);
}

static bool
is_weight (const LbCatalogueWeight *part, const LbWeight *weight)
{
  const LbWeight *own = &part->weight;

  return own->shape == weight->shape && same (own->mass, weight->mass)
         && same (own->density, weight->density)
         && lb_is_set (own->drag_coefficient) == lb_is_set (weight->drag_coefficient)
         && same_if_set (own->drag_coefficient, weight->drag_coefficient);
}

static bool
is_line (const LbCatalogueLine *part, const LbLine *line)
{
  const LbLine *own = &part->line;

  return same (own->diameter, line->diameter) && same (own->density, line->density)
         && same (own->axial_stiffness, line->axial_stiffness)
         && same_if_set (own->breaking_load, line->breaking_load);
}

static bool
is_lure (const LbCatalogueLure *part, const LbLure *lure)
{
  const LbLure *own = &part->lure;

  return same (own->drag_area, lure->drag_area)
         && same (own->down_force_ratio, lure->down_force_ratio)
         && same (own->buoyancy, lure->buoyancy) && same (own->mass, lure->mass)
         && same (own->length, lure->length);
}

const LbCatalogueWeight *
lb_catalogue_match_weight (const LbCatalogue *catalogue, const LbWeight *weight)
{
  for (guint i = 0; i < catalogue->weights->len; i++)
    if (is_weight (g_ptr_array_index (catalogue->weights, i), weight))
      return g_ptr_array_index (catalogue->weights, i);
  return NULL;
}

const LbCatalogueLine *
lb_catalogue_match_line (const LbCatalogue *catalogue, const LbLine *line, guint uses)
{
  for (guint i = 0; i < catalogue->lines->len; i++)
    {
      const LbCatalogueLine *part = g_ptr_array_index (catalogue->lines, i);

      if ((part->uses & uses) && is_line (part, line))
        return part;
    }
  return NULL;
}

const LbCatalogueLure *
lb_catalogue_match_lure (const LbCatalogue *catalogue, const LbLure *lure)
{
  for (guint i = 0; i < catalogue->lures->len; i++)
    if (is_lure (g_ptr_array_index (catalogue->lures, i), lure))
      return g_ptr_array_index (catalogue->lures, i);
  return NULL;
}
