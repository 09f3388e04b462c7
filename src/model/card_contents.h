/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything a card says: words in the user's language and units, and beside them the numbers in SI
 * from which the drawings are made. Plain values that any thread may read; see card_compute.h for
 * how they come about.
 *
 * Texts are UTF-8 and never NULL; one that has nothing to say is "". Lists may be empty. A fact
 * that is entered but an estimate is printed with `estimate_mark` before it; what is computed as a
 * whole has `computed_note` behind its heading, and no marks within. */
#pragma once

#include "card.h"
#include "compared_runs.h"
#include "readings.h"
#include "run_state.h"

/* What must be there before the rest, when there is not room for all. */
typedef enum
{
  LB_CARD_RANK_ALWAYS, /* never left out */
  LB_CARD_RANK_FIRST,
  LB_CARD_RANK_NEXT,
  LB_CARD_RANK_LAST,
} LbCardRank;

/* One labelled number or phrase. */
typedef struct
{
  char *label;   /* "Line out" */
  char *value;   /* "24 ft 6 in" */
  char *note;    /* "in the band", "from vertical" */
  bool estimate; /* to be marked by itself */
  LbCardRank rank;
} LbCardFact;

typedef struct
{
  size_t n;
  LbCardFact *facts;
} LbCardFacts;

/* ---- The rig, to be built from ---- */

typedef struct
{
  char *name;     /* "Mainline", "Shank", "Lower leader" */
  char *material; /* "nylon, 0.0138 in" */
  char *strength; /* "breaks at ≈ 11 lbf without knots", an estimate; "" when unknown */
  double length;  /* m; of the mainline what is out */
  char *length_words;
  double cut_length; /* m, the allowance at both ends included; unset for the mainline */
  char *cut_words;   /* "10 ft 8 in" */
} LbCardLine;

typedef struct
{
  size_t leader;     /* its number in the document, from 0 */
  double attachment; /* m up the shank from the weight */
  char *attachment_words;
  LbCardLine line;
  char *lure;         /* "floating minnow, 7 cm"; "" when it has no name */
  char *lure_details; /* "2.8 in, 0.21 oz, 2 hooks" */
} LbCardLeader;

typedef struct
{
  LbCardLine mainline;
  LbCardLine shank; /* length 0 when there is none */
  char *weight;     /* "1¾ lb, ball, lead" */
  double weight_mass;
  size_t n_leaders;
  LbCardLeader leaders[LB_MAX_LEADERS]; /* from the weight up */
  LbCardFacts terminations; /* label: which joint; value: the user's words; note: allowance */
  LbCardFacts hardware;     /* label: what; value: how many */
} LbCardRig;

/* ---- How it runs ---- */

typedef struct
{
  LbStatus status;
  LbShape shape;       /* empty when status is a failure */
  LbReadings readings; /* of no use when status is a failure */
  LbCardFacts water;   /* depth, current, temperature, boat: what the rig was solved for */
  LbCardFacts line;    /* computed: line out, wire angle, pull in the hand, weight */
  LbCardFacts
      lures; /* computed; label: which lure; value: height off the bed; note: band and layback */
  char *sentence; /* what it means */
} LbCardRunning;

/* ---- The settings table ---- */

typedef struct
{
  LbRunState state;
  double line_out;   /* m; unset where there is no rig */
  double wire_angle; /* rad; unset the same */
  char *line_words;  /* "24.5", in the table's length unit; "" where there is no rig */
  char *angle_words; /* "31°" */
} LbCardCell;

/* One weight at one depth. */
typedef struct
{
  LbCardCell cells[LB_CARD_MOST_VALUES]; /* by current */
  double low, high;                      /* m/s, between these currents the lures stay in the band;
                                            both unset: nowhere */
  char *limits;                          /* "1.6 to 3.4 mph", "up to 3.4 mph", "nowhere" */
} LbCardRow;

typedef struct
{
  double mass;                         /* kg */
  char *name;                          /* "1¾ lb" */
  bool is_own;                         /* the document's weight */
  LbCardRow rows[LB_CARD_MOST_VALUES]; /* by depth */
} LbCardBlock;

typedef struct
{
  size_t n_depths, n_currents, n_weights;
  double depths[LB_CARD_MOST_VALUES];       /* m */
  char *depth_words[LB_CARD_MOST_VALUES];   /* "20 ft" */
  double currents[LB_CARD_MOST_VALUES];     /* m/s */
  char *current_words[LB_CARD_MOST_VALUES]; /* "2.5 mph" */
  char *length_unit;                        /* "ft" */
  LbCardBlock *blocks;                      /* by weight, rising */
  char *caption;      /* "Weight 4 in off the bed, boat 0.9 mph over the ground" */
  char *limits_title; /* "In the band" */
} LbCardTable;

/* What a state is called in a cell ("above", "too light"; "" in the band) and in the legend
 * ("above: a lure runs above the band"). Translated, static. */
const char *lb_card_state_words (LbRunState state);
const char *lb_card_state_legend (LbRunState state);

/* ---- Boat speed and wire angle ---- */

typedef struct
{
  double low, high;   /* m/s over the ground; both unset: at no speed */
  bool low_is_rest;   /* from rest */
  bool high_is_limit; /* as fast as was tried */
  char *words;        /* "0.4 to 1.6 mph over the ground" */
  char *sentence;     /* "With 24 ft 6 in out ... the lures stay in the band from ... to ..." */
} LbCardSpeedWindow;

typedef struct
{
  double angle;  /* rad from vertical, of the wire at the reel */
  double height; /* m, of the weight off the bed */
  char *words;   /* "6 in" */
  bool major;    /* carries its words */
} LbCardTick;

#define LB_CARD_MOST_TICKS 48

typedef struct
{
  size_t n_ticks;                       /* 0: there is no gauge, and `caption` says why */
  LbCardTick ticks[LB_CARD_MOST_TICKS]; /* both angle and height rise */
  double low, high;   /* rad: the scale holds between these; at `low` the first tick stands */
  bool touches_below; /* at smaller angles the weight is on the bed */
  double own_angle;   /* rad, of the document's own run; unset when not solved */
  char *title;        /* "Weight off the bed" */
  char *caption;      /* "24 ft 6 in out, 20 ft deep, current 2.7 mph" */
} LbCardGauge;

/* ---- All of it ---- */

typedef struct
{
  LbCard card;
  LbSetup setup; /* what was solved */
  LbUnits units;

  char *title; /* never "" */
  char *date;
  char *calibration;   /* "Not calibrated on the water." */
  char *estimate_mark; /* "≈" */
  char *estimate_note; /* "≈ computed or estimated; the river may differ." */
  char *computed_note; /* "≈ computed" */

  LbCardRig rig;
  LbCardRunning running;
  LbComparedRuns *runs;           /* the variants, where the running diagram shows them over one
                                     another; else NULL */
  LbCardTable table;              /* no weights unless LB_CARD_PART_TABLE prints */
  LbCardSpeedWindow speed_window; /* with the table */
  LbCardGauge gauge;              /* no ticks unless LB_CARD_PART_GAUGE prints */

  size_t n_cautions; /* of this rig and river first, then those that always hold; always printed */
  char **cautions;
  char *rules; /* the reminder of local rules; always printed */
  char *notes; /* the document's, if LB_CARD_PART_NOTES prints; may have several lines */
} LbCardContents;

void lb_card_contents_free (LbCardContents *contents); /* NULL is fine */

/* The whole card as text of several lines, for a screen reader and to be read over the radio. Free
 * with free(). */
char *lb_card_contents_dup_text (const LbCardContents *contents);
