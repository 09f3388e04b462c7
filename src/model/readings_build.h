/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How tables of readings are put together. Internal to model. */
#pragma once

#include "readings_table.h"

typedef struct
{
  GArray *sections; /* (element-type LbReadingsSection) */
  GArray *rows;     /* (element-type LbReadingsRow), of the present section */
} LbReadingsBuilder;

void lb_readings_builder_init (LbReadingsBuilder *builder);

void lb_readings_builder_start (LbReadingsBuilder *builder);

/* Takes `value` and `note` over. */
void
lb_readings_builder_add (LbReadingsBuilder *builder, const char *label, char *value, char *note);

/* Takes `title` over. */
void lb_readings_builder_end (LbReadingsBuilder *builder, char *title);

/* The table; the builder is then empty. */
LbReadingsTable *lb_readings_builder_finish (LbReadingsBuilder *builder);

/* "Upper lure: floating minnow, 7 cm"; `name` may be empty. Free with g_free(). */
char *lb_readings_lure_title (const LbSetup *setup, size_t lure, const char *name);

/* "upper leader and mainline"; NULL when there is no distance. Free with g_free(). */
char *lb_readings_between (const LbSetup *setup, const LbApproach *closest);
