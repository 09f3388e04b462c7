/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The equations of the rig in time, written anew. */
#include "pass-oracle-private.h"

#include <string.h>

#include <gsl/gsl_math.h>

#define PROFILE_FLOOR 0.01 /* m, of the power law near the bed */
#define LIP_FLOOR 0.1

/* The bed: a rounded spring, damped by how fast it is pressed in, and Coulomb friction that sets in
 * over 1 cm/s. */
#define BED_SOFTNESS 4e-5
#define BED_DEPTH 4.8e-4
#define BED_DAMPING 500
#define FRICTION_SPEED 0.01

/* ---- Where things are in the state: reel x, y, then six numbers by node ---- */

LbVec3
pass_oracle_place (const PassOracle *o, const double *y, size_t i)
{
  if (i == 0)
    return lb_vec3 (y[0], y[1], o->setup.boat.reel_height);
  const double *p = y + 2 + 6 * o->nodes[i].place;
  return lb_vec3 (p[0], p[1], p[2]);
}

static void
course_at (const PassOracle *o, double time, double *speed, double *heading)
{
  const LbCourse *c = &o->plan.course;
  size_t k = 0;

  *speed = o->setup.boat.speed_over_ground;
  *heading = 0;
  if (c->n_points == 0)
    return;
  while (k + 1 < c->n_points && c->points[k + 1].time < time)
    k++;
  const LbCoursePoint *a = &c->points[k], *b = &c->points[k + 1 < c->n_points ? k + 1 : k];
  double part = b > a ? fmin (fmax ((time - a->time) / (b->time - a->time), 0), 1) : 0;
  double share = gsl_pow_2 (sin (M_PI_2 * part));
  *speed = a->speed + share * (b->speed - a->speed);
  *heading = a->heading + share * (b->heading - a->heading);
}

LbVec3
pass_oracle_boat_velocity (const PassOracle *o, double time)
{
  double speed, heading;

  course_at (o, time, &speed, &heading);
  return lb_vec3 (-speed * cos (heading), speed * sin (heading), 0);
}

LbVec3
pass_oracle_velocity (const PassOracle *o, const double *y, double time, size_t i)
{
  if (i == 0)
    return pass_oracle_boat_velocity (o, time);
  const double *p = y + 2 + 6 * o->nodes[i].place + 3;
  return lb_vec3 (p[0], p[1], p[2]);
}

/* m, let out by the course: the integral of its rate in closed form. */
static double
let_out (const LbCourse *c, double time)
{
  double line = 0;

  for (size_t k = 0; k + 1 < c->n_points; k++)
    {
      const LbCoursePoint *a = &c->points[k], *b = a + 1;
      double whole = b->time - a->time, t = fmin (fmax (time - a->time, 0), whole);
      double lag = whole / M_PI * sin (M_PI * t / whole);
      line += a->line_rate * t + 0.5 * (b->line_rate - a->line_rate) * (t - lag);
    }
  if (c->n_points > 0 && time > c->points[c->n_points - 1].time)
    line += c->points[c->n_points - 1].line_rate * (time - c->points[c->n_points - 1].time);
  return line;
}

double
pass_oracle_line_out (const PassOracle *o, double time)
{
  const LbHand *hand = &o->plan.hand;
  if (o->taken_line > 0)
    return o->taken_line;

  double line = o->first_line + let_out (&o->plan.course, time);

  if (hand->motion == LB_HAND_LIFT_AND_DROP)
    {
      double turns = time / hand->period, x = fmin (2 * turns, 1);
      double swell = gsl_pow_3 (x) * (10 + x * (6 * x - 15));
      line -= hand->stroke * swell * gsl_pow_2 (sin (M_PI * turns));
    }
  return line;
}

/* ---- Forces ---- */

static double
current (const PassOracle *o, double z)
{
  const LbRiver *river = &o->setup.river;
  double above = z + river->depth;

  if (river->profile.law == LB_PROFILE_UNIFORM || z >= 0)
    return river->surface_current;
  above = 0.5 * (above + hypot (above, PROFILE_FLOOR));
  double top = 0.5 * (river->depth + hypot (river->depth, PROFILE_FLOOR));
  return river->surface_current * pow (above / top, 1 / river->profile.exponent);
}

static void
add_force (PassOracle *o, size_t i, LbVec3 f)
{
  o->force[3 * i] += f.x;
  o->force[3 * i + 1] += f.y;
  o->force[3 * i + 2] += f.z;
}

/* mass * (I - across u u) */
static void
add_mass (PassOracle *o, size_t i, double mass, double along, LbVec3 u)
{
  double v[3] = { u.x, u.y, u.z };

  for (int k = 0; k < 3; k++)
    for (int l = 0; l < 3; l++)
      o->mass[9 * i + 3 * k + l] += mass * ((k == l) - along * v[k] * v[l]);
}

/* What both ends of a segment share. */
typedef struct
{
  LbVec3 u, turning, stream;
  LbVec3 half;     /* N, of what water and weight exert */
  double wet, dry; /* kg, at either end */
} Segment;

/* How the part of `v` along the segment changes as the segment turns. */
static LbVec3
swirl (const Segment *s, LbVec3 v)
{
  return lb_vec3_add (lb_vec3_scale (s->turning, lb_vec3_dot (v, s->u)),
                      lb_vec3_scale (s->u, lb_vec3_dot (v, s->turning)));
}

/* One end of a segment, moving at `v`. The water that goes with it asks for M a + 1/2 dM/dt w,
 * where w is its velocity past the water and M its mass, across the segment only. */
static void
load_end (PassOracle *o, size_t i, LbVec3 v, LbVec3 pull, const Segment *s)
{
  LbVec3 kept = lb_vec3_scale (swirl (s, lb_vec3_sub (v, s->stream)), 0.5 * s->wet);

  add_force (o, i, lb_vec3_add (pull, lb_vec3_add (s->half, kept)));
  add_mass (o, i, s->wet, 1, s->u);
  add_mass (o, i, s->dry, 0, s->u);
  o->outside = lb_vec3_add (o->outside, s->half);
  o->turned = lb_vec3_add (o->turned, lb_vec3_add_scaled (kept, -s->wet, swirl (s, v)));
  /* Past resting water this is nothing. */
  o->damped += lb_vec3_dot (v, lb_vec3_add_scaled (kept, -0.5 * s->wet, swirl (s, v)));
}

double
pass_oracle_pull (const PassOracleNode *node, double length, double line)
{
  double rest = node->rest + node->per_line * line;

  return node->line->axial_stiffness * (length / rest - 1);
}

static void
load_segment (PassOracle *o, const double *y, double time, double line, size_t i)
{
  const PassOracleNode *node = &o->nodes[i];
  const LbRiver *river = &o->setup.river;
  double rest = node->rest + node->per_line * line, d = node->line->diameter;
  double area = M_PI_4 * d * d, rho = river->density;
  LbVec3 below = pass_oracle_place (o, y, i), above = pass_oracle_place (o, y, node->parent);
  LbVec3 v = pass_oracle_velocity (o, y, time, i),
         vp = pass_oracle_velocity (o, y, time, node->parent);
  LbVec3 span = lb_vec3_sub (above, below);
  double length = lb_vec3_norm (span);
  LbVec3 u = lb_vec3_scale (span, 1 / length), spread = lb_vec3_sub (vp, v);
  LbVec3 stream = lb_vec3 (current (o, 0.5 * (below.z + above.z)), 0, 0);
  LbVec3 mean = lb_vec3_lerp (v, vp, 0.5), w = lb_vec3_sub (stream, mean);
  double along = lb_vec3_dot (w, u);
  LbVec3 across = lb_vec3_add_scaled (w, -along, u);
  double kn = 0.5 * rho * d * node->line->strum * node->line->normal_drag * lb_vec3_norm (across);
  double kt = 0.5 * rho * d * M_PI * node->line->tangential_drag * fabs (along);
  LbVec3 drag = lb_vec3_scale (
      lb_vec3_add (lb_vec3_scale (across, kn), lb_vec3_scale (u, kt * along)), length);
  LbVec3 pull = lb_vec3_scale (u, pass_oracle_pull (node, length, line));
  Segment s = { .u = u, .stream = stream, .half = lb_vec3_scale (drag, 0.5) };

  s.turning = lb_vec3_scale (lb_vec3_add_scaled (spread, -lb_vec3_dot (spread, u), u), 1 / length);
  s.half.z -= 0.5 * rest * area * (node->line->density - rho) * river->gravity;
  s.wet = 0.5 * rest * area * rho;
  s.dry = 0.5 * rest * area * node->line->density;
  o->damped += lb_vec3_dot (drag, mean);
  load_end (o, i, v, pull, &s);
  load_end (o, node->parent, vp, lb_vec3_scale (pull, -1), &s);
}

static void
load_body (PassOracle *o, const double *y, double time, size_t i)
{
  const PassOracleNode *node = &o->nodes[i];
  LbVec3 at = pass_oracle_place (o, y, i), v = pass_oracle_velocity (o, y, time, i);
  LbVec3 w = lb_vec3_sub (lb_vec3 (current (o, at.z), 0, 0), v);
  double speed = lb_vec3_norm (w);
  LbVec3 f = lb_vec3_scale (w, node->area_drag * speed);

  if (node->lip > 0 && speed > 0)
    {
      double level = (w.x * w.x + w.y * w.y) / (speed * speed);
      double k = node->lip * node->area_drag / sqrt (level + LIP_FLOOR * LIP_FLOOR * (1 - level));
      f = lb_vec3_add_scaled (f, k * w.z, w);
      f.z -= k * speed * speed;
    }
  o->damped += lb_vec3_dot (f, v);
  f.z += node->net_up;
  o->outside = lb_vec3_add (o->outside, f);
  add_force (o, i, f);
  add_mass (o, i, node->dry + node->added, 0, lb_vec3 (0, 0, 0));
}

static void
load_bed (PassOracle *o, const double *y, double time, size_t i)
{
  LbVec3 at = pass_oracle_place (o, y, i), v = pass_oracle_velocity (o, y, time, i);
  double sunk = -at.z - o->setup.river.depth, x = (sunk - BED_DEPTH) / BED_SOFTNESS;

  if (x < -30)
    return;
  double n = o->grip * (x > 30 ? x : log1p (exp (x)));
  n *= v.z < 0 ? 1 - BED_DAMPING * v.z : exp (-BED_DAMPING * v.z);
  double slip = hypot (v.x, v.y), q = slip / FRICTION_SPEED;
  double per = q < 1 ? (1.5 - 0.5 * q * q) / FRICTION_SPEED : 1 / slip;
  LbVec3 f = { -o->setup.river.bed_friction * n * per * v.x,
               -o->setup.river.bed_friction * n * per * v.y, n };
  o->damped += lb_vec3_dot (f, v);
  o->outside = lb_vec3_add (o->outside, f);
  add_force (o, i, f);
}

void
pass_oracle_load (PassOracle *o, const double *y, double time)
{
  double line = pass_oracle_line_out (o, time);

  memset (o->force, 0, 3 * o->n * sizeof (double));
  memset (o->mass, 0, 9 * o->n * sizeof (double));
  o->damped = 0;
  o->outside = o->turned = lb_vec3 (0, 0, 0);
  for (size_t i = 1; i < o->n; i++)
    {
      load_segment (o, y, time, line, i);
      if (o->nodes[i].dry > 0)
        load_body (o, y, time, i);
      load_bed (o, y, time, i);
    }
}
