/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Vectors in space. Earth frame, right-handed: x downstream, y across, z up. */
#pragma once

#include <math.h>

typedef struct
{
  double x, y, z;
} LbVec3;

static inline LbVec3
lb_vec3 (double x, double y, double z)
{
  return (LbVec3){ x, y, z };
}

static inline LbVec3
lb_vec3_add (LbVec3 a, LbVec3 b)
{
  return lb_vec3 (a.x + b.x, a.y + b.y, a.z + b.z);
}

static inline LbVec3
lb_vec3_sub (LbVec3 a, LbVec3 b)
{
  return lb_vec3 (a.x - b.x, a.y - b.y, a.z - b.z);
}

static inline LbVec3
lb_vec3_scale (LbVec3 a, double k)
{
  return lb_vec3 (k * a.x, k * a.y, k * a.z);
}

/* a + k b */
static inline LbVec3
lb_vec3_add_scaled (LbVec3 a, double k, LbVec3 b)
{
  return lb_vec3 (a.x + k * b.x, a.y + k * b.y, a.z + k * b.z);
}

static inline double
lb_vec3_dot (LbVec3 a, LbVec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline double
lb_vec3_norm (LbVec3 a)
{
  return sqrt (lb_vec3_dot (a, a));
}

static inline LbVec3
lb_vec3_lerp (LbVec3 a, LbVec3 b, double t)
{
  return lb_vec3_add_scaled (a, t, lb_vec3_sub (b, a));
}
