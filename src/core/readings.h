/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a person wants to know of a solved rig. */
#pragma once

#include "approach.h"
#include "shape.h"

/* The edges of the band are this wide, m, and belong to it: what is held just at an edge would else
 * be out of the band for half of the time, by rounding and by what a solve leaves over (1e-8 m). */
#define LB_BAND_EDGE 1e-5

/* A part lies on the bed when the bed carries it with more than this, N. */
#define LB_TOUCHING_FORCE 1e-5

typedef enum
{
  LB_BAND_BELOW,  /* lower than the band, clear of the bed */
  LB_BAND_INSIDE, /* in the band */
  LB_BAND_ABOVE,  /* higher than the band */
  LB_BAND_ON_BED, /* carried by the bed */
} LbBandState;

typedef struct
{
  LbVec3 position;    /* m, as in LbShapeNode */
  double layback;     /* m, downstream of the reel */
  double depth;       /* m below the water surface */
  double height;      /* m above the bed straight under it */
  double water_speed; /* m/s, of the water past it */
  bool on_bed;
} LbPointReading;

typedef struct
{
  LbPointReading at;
  LbBandState band;
  double leader_tension;     /* N, in the leader at the lure */
  double attachment_tension; /* N, in the leader at its attachment */
  double leader_angle;       /* rad, of the leader at the lure: 0 level, positive when the lure
                                is below the line it hangs on */
  double attachment_angle;   /* rad, of the leader at its attachment, counted the same way */
  double largest_tension;    /* N, anywhere in the leader */
  double leader_spare;       /* breaking load / largest tension; unset when unknown */
} LbLureReading;

typedef struct
{
  double line_out;          /* m */
  double wire_angle;        /* rad from vertical, at the reel */
  double hand_tension;      /* N, at the reel */
  double largest_tension;   /* N, anywhere in the mainline */
  double mainline_spare;    /* breaking load / largest tension; unset when unknown */
  double strum_frequency;   /* Hz, the mainline where the water crosses it fastest */
  double bed_depth_at_reel; /* m */
  LbPointReading weight;
  LbPointReading shank_top;
  double weight_tension;   /* N, in the line the weight hangs on, at the weight */
  double shank_angle;      /* rad from vertical, of the shank at its top (of the wire at the
                              weight, when there is no shank) */
  double shank_tension;    /* N, in the shank at its top */
  double shank_spare;      /* breaking load / largest tension in it; unset when unknown */
  double weight_bed_force; /* N, with which the bed carries the weight */
  size_t n_leaders;
  LbPointReading attachments[LB_MAX_LEADERS];
  LbLureReading lures[LB_MAX_LEADERS];
  double level_difference; /* m, highest lure less lowest, over all; unset with fewer than 2 */
  double spacing;          /* m, layback of the rearmost lure less the foremost; unset same */
  LbApproach closest; /* nearest approach of a leader to any other line, away from its attachment */
  bool touches[LB_MAX_LEADERS + 2]; /* by LbPart: some of that line or its body lies on the bed */
} LbReadings;

/* The line that is nearest to parting. */
typedef struct
{
  double spare; /* breaking load / largest tension; INFINITY when no line's is known */
  int part;     /* LbPart; no meaning then */
} LbWeakest;

/* Reads everything off a solved shape. `setup` must be the one it was solved for. */
void lb_readings_compute (LbReadings *readings, const LbSetup *setup, const LbShape *shape);

/* Of the mainline, the shank and all leaders. */
LbWeakest lb_readings_weakest (const LbReadings *readings);

/* The same tests the readings use, for a drawing of its own. */
LbBandState lb_band_state (const LbBand *band, double height, bool on_bed);
