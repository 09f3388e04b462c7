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

/* Makes the oracle's state that of a pass, to weigh it up by the oracle's own formulas. */
void pass_oracle_take (PassOracle *oracle, LbPass *pass);

/* J: of the moving masses with the water that goes with them, of weight and stretch. Only where the
 * water rests and no line is let out. */
double pass_oracle_energy (const PassOracle *oracle);

/* W: what the reel puts in, and what the water and the bed take out. */
double pass_oracle_power (PassOracle *oracle);
