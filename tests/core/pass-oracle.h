/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The oracle of the pass: the same rig in time, its equations written anew as an ordinary
 * differential equation (tension from the stretch, no unknown of its own) and integrated by CVODE
 * of SUNDIALS. It takes mesh and start from a shape and nothing else from the program: for setups
 * with a plane bed, the power law or a uniform stream, pinned drag constants, density and gravity,
 * a reel at the surface and nothing slack. */
#pragma once

#include "pass.h"

typedef struct PassOracle PassOracle;

/* Starts where a pass starts: everything moves as the boat does. `tolerance` relative and in m. */
PassOracle *pass_oracle_new (const LbShape *start,
                             const LbSetup *setup,
                             const LbPassPlan *plan,
                             double tolerance);
void pass_oracle_free (PassOracle *oracle);

/* False when the integrator gave up. */
bool pass_oracle_advance (PassOracle *oracle, double time);

LbVec3 pass_oracle_position (const PassOracle *oracle, size_t node);
double pass_oracle_tension (const PassOracle *oracle, size_t node);
long pass_oracle_steps (const PassOracle *oracle);

/* Makes the oracle's state that of a pass, line out included, to weigh it up by the oracle's own
 * formulas. */
void pass_oracle_take (PassOracle *oracle, LbPass *pass);

/* What a state comes to. The half segment at the reel, which moves as the boat does, counts as part
 * of the rig; so the hand's force is all of the pull on the reel in an LbShape. */
typedef struct
{
  LbVec3 momentum; /* kg m/s, of all that moves and of the water that goes with it */
  double energy;   /* J, moving, in the stretch, and of weight less buoyancy */

  LbVec3 outside; /* N, drag, weight less buoyancy, bed and its friction: all but the hand */
  double power;   /* W, what water and bed put in; below 0: they take out */

  /* The water that goes with a line has the momentum M v, and asks for M a + 1/2 dM/dt (v -
   * stream), which keeps its energy. What is left of dM/dt v goes to the water farther away: N, in
   * the momentum's books. */
  LbVec3 turned;

  /* Per m of line that is let out, kg/s and J/m: it comes in everywhere along the mainline, moving
   * as the line does there, and takes from the stretch. */
  LbVec3 momentum_per_line;
  double energy_per_line;
} PassBooks;

PassBooks pass_oracle_books (PassOracle *oracle);
