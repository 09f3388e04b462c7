/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Generic parts to choose from: weights, wires and other lines, lures. Each says where its numbers
 * come from, or that they are an estimate. */
#pragma once

#include <gio/gio.h>

#include "file_error.h"
#include "setup.h"
#include "units.h"

typedef enum
{
  LB_LINE_USE_MAINLINE = 1 << 0,
  LB_LINE_USE_SHANK = 1 << 1,
  LB_LINE_USE_LEADER = 1 << 2,
} LbLineUse;

typedef struct
{
  char *id;     /* "lead-ball-1.25-lb" */
  char *name;   /* "1 1/4 lb lead ball" */
  char *source; /* where the numbers come from */
  bool is_own;  /* the user's own, see own_catalogue.h */
  LbWeight weight;
} LbCatalogueWeight;

typedef struct
{
  char *id;
  char *name;    /* "stainless wire, 0.71 mm" */
  char *us_name; /* "stainless wire, 0.028 in"; NULL for the user's own */
  char *source;
  bool is_own;
  guint uses;                /* LbLineUse */
  LbLine line;               /* breaking load: the low end of its range */
  double breaking_load_high; /* N; unset when there is no range */
} LbCatalogueLine;

/* A value known only as a range: every one of them is an estimate. */
typedef struct
{
  double low, value, high;
} LbCatalogueRange;

typedef struct
{
  char *id;
  char *name; /* "floating minnow, 7 cm, medium lip" */
  char *source;
  bool is_own;
  LbLure lure;                /* the middle values */
  LbCatalogueRange drag_area; /* m2 */
  LbCatalogueRange down_force_ratio;
  LbCatalogueRange buoyancy; /* N */
  LbCatalogueRange mass;     /* kg */
} LbCatalogueLure;

typedef struct
{
  GPtrArray *weights; /* (element-type LbCatalogueWeight) */
  GPtrArray *lines;   /* (element-type LbCatalogueLine) */
  GPtrArray *lures;   /* (element-type LbCatalogueLure) */
} LbCatalogue;

/* Reads the catalogue that comes with the program. NULL with an error when it is damaged. */
LbCatalogue *lb_catalogue_load (GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Reads one from memory (-1: up to the zero). */
LbCatalogue *
lb_catalogue_parse (const char *text, gssize length, GError **error) G_GNUC_WARN_UNUSED_RESULT;

void lb_catalogue_free (LbCatalogue *catalogue);

/* The part of that id, or NULL. (transfer none) */
const LbCatalogueWeight *lb_catalogue_find_weight (const LbCatalogue *catalogue, const char *id);
const LbCatalogueLine *lb_catalogue_find_line (const LbCatalogue *catalogue, const char *id);
const LbCatalogueLure *lb_catalogue_find_lure (const LbCatalogue *catalogue, const char *id);

/* Its name in those units. (transfer none) */
const char *lb_catalogue_line_name (const LbCatalogueLine *part, LbUnits units);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbCatalogue, lb_catalogue_free)
