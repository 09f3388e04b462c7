/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_private.h"

#include "data_path.h"

static void
weight_free (void *data)
{
  LbCatalogueWeight *part = data;

  g_free (part->id);
  g_free (part->name);
  g_free (part->source);
  g_free (part);
}

static void
line_free (void *data)
{
  LbCatalogueLine *part = data;

  g_free (part->id);
  g_free (part->name);
  g_free (part->us_name);
  g_free (part->source);
  g_free (part);
}

static void
lure_free (void *data)
{
  LbCatalogueLure *part = data;

  g_free (part->id);
  g_free (part->name);
  g_free (part->source);
  g_free (part);
}

LbCatalogue *
lb_catalogue_new (void)
{
  LbCatalogue *catalogue = g_new0 (LbCatalogue, 1);

  catalogue->weights = g_ptr_array_new_with_free_func (weight_free);
  catalogue->lines = g_ptr_array_new_with_free_func (line_free);
  catalogue->lures = g_ptr_array_new_with_free_func (lure_free);
  return catalogue;
}

LbCatalogue *
lb_catalogue_load (GError **error)
{
  g_autofree char *path = lb_data_path ("catalogue.json");
  g_autofree char *text = NULL;
  gsize length;

  if (!g_file_get_contents (path, &text, &length, error))
    return NULL;
  return lb_catalogue_parse (text, (gssize) MIN (length, LB_CATALOGUE_LARGEST), error);
}

void
lb_catalogue_free (LbCatalogue *catalogue)
{
  if (catalogue == NULL)
    return;
  g_ptr_array_unref (catalogue->weights);
  g_ptr_array_unref (catalogue->lines);
  g_ptr_array_unref (catalogue->lures);
  g_free (catalogue);
}

/* ---- Finding ---- */

const LbCatalogueWeight *
lb_catalogue_find_weight (const LbCatalogue *catalogue, const char *id)
{
  for (guint i = 0; i < catalogue->weights->len; i++)
    {
      const LbCatalogueWeight *part = g_ptr_array_index (catalogue->weights, i);
      if (g_str_equal (part->id, id))
        return part;
    }
  return NULL;
}

const LbCatalogueLine *
lb_catalogue_find_line (const LbCatalogue *catalogue, const char *id)
{
  for (guint i = 0; i < catalogue->lines->len; i++)
    {
      const LbCatalogueLine *part = g_ptr_array_index (catalogue->lines, i);
      if (g_str_equal (part->id, id))
        return part;
    }
  return NULL;
}

const LbCatalogueLure *
lb_catalogue_find_lure (const LbCatalogue *catalogue, const char *id)
{
  for (guint i = 0; i < catalogue->lures->len; i++)
    {
      const LbCatalogueLure *part = g_ptr_array_index (catalogue->lures, i);
      if (g_str_equal (part->id, id))
        return part;
    }
  return NULL;
}

const char *
lb_catalogue_line_name (const LbCatalogueLine *part, LbUnits units)
{
  return units == LB_UNITS_US && part->us_name ? part->us_name : part->name;
}
