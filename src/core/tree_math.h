/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Small things the files of the discrete rig share. Internal to core. */
#pragma once

#include "tree.h"

/* A line cannot push: its slack folds. Below a few times this tension, N, a segment folds up, as
 * 1 - exp (-tension / this), so that no tension is ever below 0 and every shape is held together.
 * A line that carries anything at all is not changed by it. */
#define SLACK_TENSION 1e-6

/* The inner loops are written once for any number of dimensions and compiled for two, which is what
 * a straight run needs, and for three. */
#define LB_INNER static inline __attribute__ ((always_inline))

/* fmax() without its care for NAN, which keeps it a library call in the inner loops. */
LB_INNER double
lb_larger (double a, double b)
{
  return a > b ? a : b;
}

/* From the order of LB_ALONG and so on. */
static inline LbVec3
lb_tree_vec3 (const double *v)
{
  return lb_vec3 (v[LB_ALONG], v[LB_ACROSS], v[LB_UP]);
}

/* Stretch of a segment under `tension` and its slope. */
LB_INNER double
lb_stretch (const LbTreeLine *line, double tension, double *slope)
{
  double elastic = tension / line->stiffness;

  *slope = 1 / line->stiffness;
  if (tension > 40 * SLACK_TENSION)
    return elastic;
  double folded = exp (-tension / SLACK_TENSION);
  *slope = *slope * (1 - folded) + (1 + elastic) * folded / SLACK_TENSION;
  return (1 + elastic) * (1 - folded) - 1;
}
