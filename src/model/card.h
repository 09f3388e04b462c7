/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The choices for a document's card: how large it is, what is printed on it, and the user's words
 * for what the physics does not know (terminations, hardware). Plain values without pointers, so
 * that a card is copied with "=". Texts are UTF-8, one line each. */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "units.h"

/* ---- Paper ---- */

typedef enum
{
  LB_CARD_3X5,
  LB_CARD_4X6,
  LB_CARD_HALF_LETTER,
  LB_CARD_LETTER,
  LB_CARD_A6,
  LB_CARD_A5,
  LB_CARD_A4,
  LB_CARD_OWN_SIZE,
  LB_N_CARD_SIZES,
} LbCardSize;

#define LB_CARD_LEAST_SIDE 0.05 /* m, of a size of one's own */
#define LB_CARD_MOST_SIDE 0.6   /* m */

typedef enum
{
  LB_CARD_SHEET_AS_CARD, /* each sheet is a card */
  LB_CARD_SHEET_LETTER,
  LB_CARD_SHEET_A4,
  LB_N_CARD_SHEETS,
} LbCardSheet;

/* ---- What is printed ---- */

typedef enum
{
  LB_CARD_PART_RIG,      /* the rig diagram, drawn to be built from */
  LB_CARD_PART_RUNNING,  /* side view and bed strip at the chosen flow */
  LB_CARD_PART_TABLE,    /* line out and wire angle by depth and current */
  LB_CARD_PART_GAUGE,    /* wire angles that tell the weight's height, to cut out */
  LB_CARD_PART_TEMPLATE, /* the shank at its true size */
  LB_CARD_PART_NOTES,    /* the document's notes */
  LB_N_CARD_PARTS,
} LbCardPart;

/* ---- What the user knows of the rig ---- */

#define LB_CARD_MOST_HARDWARE 24
#define LB_CARD_WORDS_LONGEST 80 /* characters, of every text of a card */
#define LB_CARD_WORDS_SIZE (LB_CARD_WORDS_LONGEST * 4 + 1)
#define LB_CARD_MOST_COUNT 99
#define LB_CARD_MOST_ALLOWANCE 2.0 /* m */

typedef struct
{
  char text[LB_CARD_WORDS_SIZE]; /* always ends with a zero */
} LbCardWords;

/* Where two parts are joined. */
typedef enum
{
  LB_CARD_MAINLINE_TO_SHANK, /* without a shank: mainline to weight */
  LB_CARD_SHANK_TO_WEIGHT,
  LB_CARD_LEADER_TO_SHANK,
  LB_CARD_LEADER_TO_LURE,
  LB_N_CARD_JOINTS,
} LbCardJoint;

typedef struct
{
  LbCardWords how;  /* the user's words: "double crimp", "clinch knot"; empty: not said */
  double allowance; /* m of line that each end takes up, added to what is cut */
} LbCardTermination;

typedef struct
{
  int count; /* 1 to LB_CARD_MOST_COUNT */
  LbCardWords what;
} LbCardHardware;

/* ---- The settings table ---- */

#define LB_CARD_MOST_VALUES 12
#define LB_CARD_LEAST_STEP 0.001   /* m or m/s */
#define LB_CARD_STEP_ROUNDING 1e-6 /* of a step: the last value may be this much beyond `to` */

typedef enum
{
  LB_CARD_SERIES_AROUND, /* round values around the document's own */
  LB_CARD_SERIES_STEPS,  /* from, from + step ... up to `to` */
  LB_CARD_SERIES_LIST,
} LbCardSeriesKind;

/* Depths (m) or currents (m/s). */
typedef struct
{
  LbCardSeriesKind kind;
  double from, to, step;              /* of LB_CARD_SERIES_STEPS: step > 0, from <= to */
  size_t n;                           /* of LB_CARD_SERIES_LIST: 1 to LB_CARD_MOST_VALUES */
  double values[LB_CARD_MOST_VALUES]; /* rising */
} LbCardSeries;

typedef enum
{
  LB_CARD_SERIES_OF_DEPTHS,
  LB_CARD_SERIES_OF_CURRENTS,
  LB_N_CARD_SERIES,
} LbCardSeriesOf;

/* What a depth (m) or a current (m/s) of the table may be. */
double lb_card_series_least (LbCardSeriesOf of);
double lb_card_series_most (LbCardSeriesOf of);

/* How many values LB_CARD_SERIES_AROUND gives, if they all lie within its limits. */
#define LB_CARD_AROUND_VALUES 5

/* ---- All of it ---- */

typedef struct
{
  LbCardSize size;
  double own_width, own_height; /* m; of LB_CARD_OWN_SIZE */
  bool wide; /* the longer side lies across; no meaning for a size of one's own */
  LbCardSheet sheet;
  bool several; /* as many cards on a sheet as fit; else one */
  bool prints[LB_N_CARD_PARTS];
  bool running_variants; /* the running diagram shows the document's variants over one another */
  LbCardTermination terminations[LB_N_CARD_JOINTS];
  size_t n_hardware;
  LbCardHardware hardware[LB_CARD_MOST_HARDWARE];
  LbCardSeries series[LB_N_CARD_SERIES];
  bool dated_today; /* the day it is made; else `date`, as the user writes it, also nothing */
  LbCardWords date;
} LbCard;

/* The card of a document that says nothing about it: 4 by 6 in, one a sheet of its own size, with
 * all but the template, 4 in of allowance at each end (common practice, no source), no hardware,
 * the table around the document's values, dated today. */
LbCard lb_card_default (void);

/* Whether both mean the same; what does not count in either is left out (the values of a list that
 * is none). */
bool lb_card_equal (const LbCard *a, const LbCard *b);

/* Moves every number into its limits, puts lists in order, and makes every text one line of UTF-8
 * that is no longer than it may be, so that a file can hold the card. */
void lb_card_mend (LbCard *card);

/* Puts `text` into `words`, made as lb_card_mend() would make it. */
void lb_card_words_set (LbCardWords *words, const char *text);

/* The width and height of the card, and of the sheet it is printed on, m. A sheet other than the
 * card stands upright; where the card does not fit on it either way, the sheet is the card. */
void lb_card_get_measures (const LbCard *card, double *width, double *height);
void lb_card_get_sheet_measures (const LbCard *card, double *width, double *height);

/* Width and height of a size that stands upright, m; 0 for LB_CARD_OWN_SIZE. */
void lb_card_size_get_measures (LbCardSize size, double *width, double *height);

/* The depths or currents of the table, rising; `around` is the document's own value. Those that lie
 * around it are round in `units`. Returns how many, at most LB_CARD_MOST_VALUES. */
size_t lb_card_series_get_values (const LbCardSeries *series,
                                  LbCardSeriesOf of,
                                  LbUnits units,
                                  double around,
                                  double values[LB_CARD_MOST_VALUES]);

/* How the file calls them: "4x6-in", "as-card", "rig_diagram", "mainline_to_shank". */
const char *lb_card_size_name (LbCardSize size);
const char *lb_card_sheet_name (LbCardSheet sheet);
const char *lb_card_part_name (LbCardPart part);
const char *lb_card_joint_name (LbCardJoint joint);

/* The same for the user, translated: "4 × 6 in", "Letter", "Rig diagram", "Mainline to shank". */
const char *lb_card_size_label (LbCardSize size);
const char *lb_card_sheet_label (LbCardSheet sheet);
const char *lb_card_part_label (LbCardPart part);
const char *lb_card_joint_label (LbCardJoint joint);
