/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Setups the steady tests share: the rigs of the reference file, a single cable for the closed-form
 * cases, and quasi-random rigs. */
#pragma once

#include <stdio.h>

#include "setup.h"

/* The rig of answers/steady-cases.csv: 6 m of water, 1/6 power law, two leaders. Stiffnesses are
 * the material's modulus times the area, unrounded, as those answers were computed with. */
LbSetup rig_reference (double weight_mass, double boat_speed, double surface_current);

/* A line that weighs nothing in water and has no drag, and does not stretch to speak of. */
LbLine rig_ideal_line (const LbRiver *river);

/* One cable from a reel at the surface to a weight with the net weight `down` and the drag `back`
 * (N), in a uniform stream of `speed` m/s of density 1000. No shank. The cable has diameter
 * 0.5 mm, Cn 1.2, Ct 0, weighs nothing in water; change it in the setup that comes back. */
LbSetup rig_cable (double length, double down, double back, double speed);

/* Makes the weight of `setup` weigh `down` and drag `back` newtons where the water passes at
 * `speed`, whatever its size. */
void rig_set_weight (LbSetup *setup, double down, double back, double speed);

/* Density of a line that weighs `per_length` N/m in water. */
double rig_line_density (const LbSetup *setup, double diameter, double per_length);

/* ---- Quasi-random ---- */

typedef enum
{
  RIG_CLEAR, /* held well above the bed, nothing that floats up or sinks far: mostly no contact */
  RIG_WILD, /* every slider from end to end, uneven beds, everything on the bed or at the surface */
} RigKind;

/* A Sobol sequence over the first 40 values of a setup, pseudo-random for the rest. */
typedef struct RigSource RigSource;

RigSource *rig_source_new (RigKind kind);
void rig_source_free (RigSource *source);

/* The next setup. The k-th is the same on every run and machine. */
void rig_source_next (RigSource *source, LbSetup *setup);

/* Goes to the `index`-th setup (0 first), so that the next one is it. */
void rig_source_skip_to (RigSource *source, size_t index);

/* Writes every value of `setup` so that it can be read by a person and copied exactly. */
void rig_print (FILE *file, const LbSetup *setup);
