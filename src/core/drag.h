/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Published drag curves, and how fast a wire strums. */
#pragma once

#include "setup.h"

/* A drag coefficient and its slope against the Reynolds number. */
typedef struct
{
  double value;
  double slope; /* d value / d Re */
} LbDragPoint;

/* Smooth circular cylinder across the flow, on the diameter; 1e-4 < Re < 2e5, held at the ends.
 * Source: Sucker and Brauer 1975, Waerme- und Stoffuebertragung 8, 149. */
LbDragPoint lb_drag_cylinder (double reynolds);

/* Smooth sphere, on the frontal area; Re up to 2e5 and held there (below the drag crisis), and
 * held below 1e-3. Source: Clift and Gauvin 1971. */
LbDragPoint lb_drag_sphere (double reynolds);

/* Drag coefficient of a weight of `shape` on its frontal area: the sphere curve for the ball, an
 * engineering estimate for the others, whose slope is 0. */
LbDragPoint lb_drag_weight (LbWeightShape shape, double reynolds);

/* Frequency, Hz, at which a line of `diameter` (m) sheds vortices in a cross flow of `speed` (m/s):
 * Strouhal number 0.2 (textbook value, holds for 3e2 < Re < 1e5). 0 for no flow. */
double lb_strum_frequency (double diameter, double speed);
