/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Steffen's monotone cubic through given points (1990, Astron. Astrophys. 239, 443). Internal to
 * core. */
#pragma once

#include <stddef.h>

typedef struct
{
  double value;
  double slope; /* d value / d x */
  double bend;  /* d2 value / d x2 */
} LbSteffenPoint;

/* Fills `slope` with d y / d x at the `n` points; `x` must rise. One point has slope 0. */
void lb_steffen_slopes (size_t n, const double *x, const double *y, double *slope);

/* The curve at `at`; beyond the first and the last point their y is held, with no slope. n >= 1. */
LbSteffenPoint
lb_steffen_at (size_t n, const double *x, const double *y, const double *slope, double at);
