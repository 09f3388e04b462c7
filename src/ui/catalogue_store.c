/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_store.h"

#include "own_catalogue.h"

struct _LbCatalogueStore
{
  GObject parent;
  LbCatalogue *catalogue;
  char *fault;
};

G_DEFINE_FINAL_TYPE (LbCatalogueStore, lb_catalogue_store, G_TYPE_OBJECT)

static guint changed_signal;

static LbCatalogue *
empty_catalogue (void)
{
  LbCatalogue *catalogue = g_new0 (LbCatalogue, 1);

  catalogue->weights = g_ptr_array_new ();
  catalogue->lines = g_ptr_array_new ();
  catalogue->lures = g_ptr_array_new ();
  return catalogue;
}

static void
load (LbCatalogueStore *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->catalogue, lb_catalogue_free);
  g_clear_pointer (&self->fault, g_free);
  self->catalogue = lb_catalogue_load_with_own (&self->fault, &error);
  if (!self->catalogue)
    self->catalogue = empty_catalogue ();
  if (error)
    self->fault = g_strdup (error->message);
}

static void
lb_catalogue_store_finalize (GObject *object)
{
  LbCatalogueStore *self = LB_CATALOGUE_STORE (object);

  g_clear_pointer (&self->catalogue, lb_catalogue_free);
  g_free (self->fault);
  G_OBJECT_CLASS (lb_catalogue_store_parent_class)->finalize (object);
}

static void
lb_catalogue_store_class_init (LbCatalogueStoreClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lb_catalogue_store_finalize;
  changed_signal = g_signal_new ("changed", LB_TYPE_CATALOGUE_STORE, G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_catalogue_store_init (LbCatalogueStore *self)
{
  load (self);
}

LbCatalogueStore *
lb_catalogue_store_new (void)
{
  return g_object_new (LB_TYPE_CATALOGUE_STORE, NULL);
}

const LbCatalogue *
lb_catalogue_store_get (LbCatalogueStore *self)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_STORE (self), NULL);
  return self->catalogue;
}

const char *
lb_catalogue_store_get_fault (LbCatalogueStore *self)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_STORE (self), NULL);
  return self->fault;
}

void
lb_catalogue_store_reload (LbCatalogueStore *self)
{
  g_return_if_fail (LB_IS_CATALOGUE_STORE (self));
  load (self);
  g_signal_emit (self, changed_signal, 0);
}

gboolean
lb_catalogue_store_keep (LbCatalogueStore *self,
                         const LbTackle *tackle,
                         guint uses,
                         const char *name,
                         char **id,
                         GError **error)
{
  gboolean kept = FALSE;

  g_return_val_if_fail (LB_IS_CATALOGUE_STORE (self), FALSE);
  switch (tackle->kind)
    {
    case LB_TACKLE_WEIGHT:
      kept = lb_own_catalogue_add_weight (name, &tackle->weight, id, error);
      break;
    case LB_TACKLE_LINE:
      kept = lb_own_catalogue_add_line (name, uses, &tackle->line, id, error);
      break;
    case LB_TACKLE_LURE:
      kept = lb_own_catalogue_add_lure (name, &tackle->lure, id, error);
      break;
    }
  if (kept)
    lb_catalogue_store_reload (self);
  return kept;
}

gboolean
lb_catalogue_store_rename (LbCatalogueStore *self, const char *id, const char *name, GError **error)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_STORE (self), FALSE);
  if (!lb_own_catalogue_rename (id, name, error))
    return FALSE;
  lb_catalogue_store_reload (self);
  return TRUE;
}

gboolean
lb_catalogue_store_remove (LbCatalogueStore *self, const char *id, GError **error)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_STORE (self), FALSE);
  if (!lb_own_catalogue_remove (id, error))
    return FALSE;
  lb_catalogue_store_reload (self);
  return TRUE;
}
