/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A rig whose run can be worked out by hand: lines that weigh nothing, have no drag and do not
 * stretch, in a stream as fast at every depth. The wire is then straight, and leans back by the
 * angle whose tangent is all the drag over what the weight weighs in water. The lure hangs in the
 * water neither up nor down, its leader is tied to the weight, and so it runs as high as the
 * weight. Statics as taught at school; the drag is 1/2 rho Cd A v2 on the weight and 1/2 rho S v2
 * on the lure. */
#pragma once

#include "setup.h"

#define IDEAL_DEPTH 6.0        /* m */
#define IDEAL_DOWN 7.0         /* N, the weight in water */
#define IDEAL_DRAG_AREA 2.5e-3 /* m2, Cd A of the weight */
#define IDEAL_LURE_AREA 1e-3   /* m2 */

/* With `n_leaders` (0 or 1) and the weight held at `height` above the bed. */
LbSetup ideal_rig (size_t n_leaders, double height);

/* N of drag of it all in water that comes past at `speed`. */
double ideal_drag (const LbSetup *setup, double speed);

/* rad from vertical, in that water. */
double ideal_angle (const LbSetup *setup, double speed);

/* m/s of the water for which the wire leans by `angle`. */
double ideal_speed (const LbSetup *setup, double angle);

/* m of the weight above the bed with `line_out` m at `angle`, and the other way round. */
double ideal_height (const LbSetup *setup, double line_out, double angle);
double ideal_angle_at (const LbSetup *setup, double line_out, double height);
