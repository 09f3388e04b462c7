/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The readings as sections of labelled rows, in the user's language and units: what the window's
 * column and the command line's table both show. And the cautions that belong to them. */
#pragma once

#include "contents.h"
#include "result.h"
#include "words.h"

typedef struct
{
  char *label; /* "Wire angle" */
  char *value; /* "31 deg from vertical" */
  char *note;  /* "in the band", "on the bed"; NULL for none */
} LbReadingsRow;

typedef struct
{
  char *title; /* "Line", "Weight", "Upper lure: floating minnow, 7 cm" */
  size_t n_rows;
  LbReadingsRow *rows;
} LbReadingsSection;

typedef struct
{
  size_t n_sections;
  LbReadingsSection *sections; /* the same sections and rows for the same number of leaders, so that
                                  a window can keep its labels and change their text */
} LbReadingsTable;

/* The table of `result`; when that failed every value is "-". `contents` gives the names of the
 * lures; the rest is taken from the result's own setup. Free with lb_readings_table_free(). */
LbReadingsTable *lb_readings_table_new (const LbResult *result,
                                        const LbContents *contents,
                                        const LbWording *wording);
void lb_readings_table_free (LbReadingsTable *table);

typedef enum
{
  LB_CAUTION_ADVICE, /* always true of this kind of fishing */
  LB_CAUTION_NOW,    /* because of a value of this rig or river */
} LbCautionKind;

typedef struct
{
  LbCautionKind kind;
  char *text; /* one or two sentences, translated */
} LbCaution;

void lb_caution_free (void *caution);

/* The cautions for `setup`, those that its values call for first. `result` (may be NULL) adds what
 * depends on the solve. (element-type LbCaution) (transfer full): free with g_ptr_array_unref(). */
GPtrArray *lb_cautions_new (const LbSetup *setup, const LbResult *result, const LbWording *wording);

/* The one about cold water alone, to be freed with g_free(); NULL when it is not cold. */
char *lb_caution_cold_water (double temperature, const LbWording *wording);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbReadingsTable, lb_readings_table_free)
