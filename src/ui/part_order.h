/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts of the drawings in the order that keys go through them. */
#pragma once

#include "scene.h"
#include "setup.h"

/* The part after (`direction` 1) or before (-1) another one, round and round; from LB_PICK_NOTHING,
 * and with `direction` 2 or -2, the first or the last: from the reel down the rig, leader by
 * leader, to the weight; the water, the boat, the band; the bed and its points. */
void lb_part_next (
    const LbSetup *setup, LbPickKind kind, int index, int direction, LbPickKind *next, int *number);
