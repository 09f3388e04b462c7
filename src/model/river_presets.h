/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rivers to start from, from a slow pool to a spring flood. None of them is a real place: every
 * number is an estimate of what such water is like, to be replaced by one's own soundings and drift
 * times. */
#pragma once

#include "setup.h"

typedef struct
{
  const char *id;         /* "spring-flood" */
  const char *name;       /* translatable, marked with N_(); show it with _(): "Spring flood" */
  const char *sentence;   /* the same: what such water is like, and what to mind */
  double depth;           /* m; estimate */
  double surface_current; /* m/s; estimate */
  LbBedMaterial material; /* of the log law */
  double temperature;     /* C; estimate */
} LbRiverPreset;

/* All of them, from slow to fast. (transfer none) */
const LbRiverPreset *lb_river_presets (size_t *n_presets);

/* "An estimate, and no real river. Measure your own: sound the depth, time a float." To be shown
 * wherever a preset is offered. (transfer none) */
const char *lb_river_presets_note (void);

/* `river` as `preset` has it: plane, log law over its material, same discharge along the reach.
 * Friction, gravity, and density and viscosity as computed from the temperature. For
 * lb_change_new_river(). */
void lb_river_preset_apply (const LbRiverPreset *preset, LbRiver *river);
