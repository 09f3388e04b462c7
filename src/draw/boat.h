/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures of the boat as it is drawn: an open river skiff of 5.2 m; for this folder only. */
#pragma once

#define LB_BOAT_BOW 3.75   /* m, from the reel upstream to the tip of the bow */
#define LB_BOAT_STERN 1.75 /* m, from the reel back to the motor */
#define LB_BOAT_TOP 1.05   /* m, above the water */
#define LB_BOAT_RAIL 0.56  /* m, the gunwale at the reel */
#define LB_REEL_ABOVE 0.25 /* m, from the reel's middle to its top and bracket */
