/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A hooked fish that is towed along on one of the lures: what the hand has to hold.
 *
 * The fish is drag and nothing else: it weighs nothing in water to speak of, and does not swim,
 * pull or leap. A live one pulls harder for moments, by an amount that nothing here can tell. All
 * of it is an ESTIMATE, to be shown as one:
 *
 * - closed mouth: the skin and form drag of a streamlined body on its wetted area, which is 0.4 of
 *   the length squared, with a coefficient of 0.015 (Webb 1975, Hydrodynamics and energetics of
 * fish propulsion, Bull. Fish. Res. Board Can. 190; both numbers from memory; dead and limp fish
 * drag up to some three times that);
 * - open mouth: besides, a cup as wide as a tenth of the length (estimate) that faces the flow,
 * with 1.4 on its opening (hollow half sphere, Hoerner 1965, Fluid-Dynamic Drag, from memory). */
#pragma once

#include "readings.h"
#include "steady.h"

typedef struct
{
  double length; /* m */
  bool mouth_open;
} LbFish;

/* m2: its drag is 1/2 rho area v^2. */
double lb_fish_drag_area (const LbFish *fish);

/* The setup with the fish on the lure of a leader. The lure presses down as it did. */
LbSetup lb_fish_hook (const LbSetup *setup, size_t leader, const LbFish *fish);

typedef struct
{
  double in_hand;        /* N */
  double drag;           /* N, of the fish alone */
  double leader_pull;    /* N, the largest in its leader */
  double leader_spare;   /* breaking load / pull, of its leader; unset when unknown */
  double mainline_spare; /* the same of the mainline */
  double shank_spare;    /* and of the shank */
  LbWeakest weakest;     /* of all lines; its spare is unset where the load is */
  double water_speed;    /* m/s, past the fish */
} LbFishLoad;

/* Solves the steady run with the fish on a leader's lure, with `line_out` m of line as it was when
 * the fish took it, and the boat at `speed` m/s over the ground. Returns what the steady run does;
 * LB_STATUS_BAD_SETUP too for a leader that is not there or a length that is not above 0. */
LbStatus lb_fish_hold (LbSteady *steady,
                       const LbSetup *setup,
                       size_t leader,
                       const LbFish *fish,
                       double line_out,
                       double speed,
                       LbFishLoad *load);
