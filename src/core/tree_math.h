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

/* ---- Blocks ---- */

/* Matrices are stored row by row, three to a row, whatever the dimension. */

LB_INNER double
lb_block_dot (const double *a, const double *b, int dim)
{
  double sum = a[0] * b[0] + a[1] * b[1];

  return dim == 3 ? sum + a[2] * b[2] : sum;
}

/* P += k Q R. */
LB_INNER void
lb_block_add_product (double *p, double k, const double *q, const double *r, int dim)
{
  for (int i = 0; i < dim; i++)
    for (int j = 0; j < dim; j++)
      for (int l = 0; l < dim; l++)
        p[3 * i + j] += k * q[3 * i + l] * r[3 * l + j];
}

/* The inverse of m, which must have one. */
LB_INNER void
lb_block_invert (const double *m, double *inverse, int dim)
{
  if (dim == 2)
    {
      double per_det = 1 / (m[0] * m[4] - m[1] * m[3]);
      inverse[0] = per_det * m[4];
      inverse[1] = -per_det * m[1];
      inverse[3] = -per_det * m[3];
      inverse[4] = per_det * m[0];
      return;
    }
  double c00 = m[4] * m[8] - m[5] * m[7];
  double c10 = m[5] * m[6] - m[3] * m[8];
  double c20 = m[3] * m[7] - m[4] * m[6];
  double k = 1 / (m[0] * c00 + m[1] * c10 + m[2] * c20);
  inverse[0] = k * c00;
  inverse[1] = k * (m[2] * m[7] - m[1] * m[8]);
  inverse[2] = k * (m[1] * m[5] - m[2] * m[4]);
  inverse[3] = k * c10;
  inverse[4] = k * (m[0] * m[8] - m[2] * m[6]);
  inverse[5] = k * (m[2] * m[3] - m[0] * m[5]);
  inverse[6] = k * c20;
  inverse[7] = k * (m[1] * m[6] - m[0] * m[7]);
  inverse[8] = k * (m[0] * m[4] - m[1] * m[3]);
}
