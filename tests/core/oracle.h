/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The oracle: the steady run solved by another method with another library. Every line is
 * integrated from its free end up with GSL's eighth-order Runge-Kutta pair (rk8pd), the leaders
 * join the shank, the mainline ends at the reel, and GSL's hybrid root finder moves the free ends
 * until all ends meet. It knows no bed contact and no floating at the surface, and says when the
 * answer would need either. */
#pragma once

#include "setup.h"

typedef struct
{
  /* Positions, m: [0] downstream on the bed's axis, [1] above the water surface. */
  double weight[2];
  double shank_top[2];
  double attachment[LB_MAX_LEADERS][2];
  double lure[LB_MAX_LEADERS][2];
  double line_out;                           /* m */
  double reel_pull[2];                       /* N, what the mainline pulls the reel with */
  double shank_top_tension;                  /* N, just above the top of the shank */
  double attachment_tension[LB_MAX_LEADERS]; /* N, in the leader */
  double lowest;      /* m, least height above the bed of any point of the rig */
  double highest;     /* m, greatest height above the surface of anything but the mainline */
  double misfit;      /* m, largest gap left where ends should meet */
  size_t evaluations; /* times that all lines were integrated */
} OracleAnswer;

/* Solves the steady run of `setup`. `guess` may be NULL; else its positions and line out are where
 * the search starts. True when the ends meet to 1e-10 m. */
bool oracle_solve (const LbSetup *setup, const OracleAnswer *guess, OracleAnswer *answer);
