/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The inside of the pass's oracle. */
#pragma once

#include "pass-oracle.h"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

typedef struct
{
  size_t parent, place; /* place: in the integrator's order */
  const LbLine *line;
  double rest, per_line;
  double area_drag, lip, dry, added, net_up; /* of the body, if any */
} PassOracleNode;

struct PassOracle
{
  LbSetup setup;
  LbPassPlan plan;
  size_t n;
  PassOracleNode *nodes;
  double first_line, grip;
  double taken_line; /* m, out of the pass whose state was taken; 0: none was, the plan tells */

  /* Of the last forces: */
  double *force, *mass; /* 3 and 9 by node */
  double damped;        /* W, what water and bed put in: below 0 they take out */
  LbVec3 outside;       /* N, of water, weight and bed on all that moves */
  LbVec3 turned;        /* N, of the momentum of the water that goes with lines that turn */

  SUNContext context;
  void *cvode;
  N_Vector y;
  SUNMatrix matrix;
  SUNLinearSolver linear;
  double time;
};

/* The state `y`: reel x, y, then six numbers by node. */
LbVec3 pass_oracle_place (const PassOracle *o, const double *y, size_t i);
LbVec3 pass_oracle_velocity (const PassOracle *o, const double *y, double time, size_t i);
LbVec3 pass_oracle_boat_velocity (const PassOracle *o, double time);

/* m, of the mainline. */
double pass_oracle_line_out (const PassOracle *o, double time);

/* N, of a segment `length` m long. */
double pass_oracle_pull (const PassOracleNode *node, double length, double line);

/* Finds all forces and masses. */
void pass_oracle_load (PassOracle *o, const double *y, double time);

/* Everything where the shape has it, moving as the boat does. */
void pass_oracle_set_state (PassOracle *o, const LbShape *shape);
