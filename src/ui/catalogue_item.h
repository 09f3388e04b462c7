/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One piece of the catalogue, of whatever kind, as the catalogue's window shows it. */
#pragma once

#include "catalogue_store.h"
#include "rig_place.h"

typedef struct
{
  const char *id;
  const char *name;
  const char *source; /* where its numbers come from */
  gboolean is_own;    /* the user's: may be renamed and removed */
  LbTackle tackle;
  const LbCatalogueLine *line; /* NULL for other kinds */
  const LbCatalogueLure *lure; /* NULL for other kinds */
} LbCatalogueItem;

/* All pieces for `place`, in the order of the catalogue, lines named in `units`; strings and
 * pointers belong to the catalogue. (element-type LbCatalogueItem) (transfer full) */
GPtrArray *lb_catalogue_items_for (LbCatalogueStore *store, LbRigPlace place, LbUnits units);

/* Which of `items` is most like `tackle`, a piece of their kind, by size and material first; -1 of
 * none. */
int lb_catalogue_items_nearest (GPtrArray *items, const LbTackle *tackle);

/* The numbers to choose by, in the user's units: "0.45 kg · 41 mm across". Free with g_free(). */
char *lb_catalogue_item_dup_summary (const LbCatalogueItem *item, LbSession *session);

/* Whether every word of `search` begins one of the name or the summary, whatever its case. */
gboolean
lb_catalogue_item_matches (const LbCatalogueItem *item, const char *summary, const char *search);
