/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass-oracle.h"

#include <string.h>

#include <cvode/cvode.h>
#include <gsl/gsl_math.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

#define PROFILE_FLOOR 0.01 /* m, of the power law near the bed */
#define LURE_ADDED 0.6
#define BALL_ADDED 0.5
#define LIP_FLOOR 0.1

/* The bed: a rounded spring, damped by how fast it is pressed in, and Coulomb friction that sets in
 * over 1 cm/s. */
#define BED_SOFTNESS 4e-5
#define BED_DEPTH 4.8e-4
#define LEAST_GRIP 10
#define BED_DAMPING 500
#define FRICTION_SPEED 0.01

typedef struct
{
  size_t parent, place; /* place: in the integrator's order */
  const LbLine *line;
  double rest, per_line;
  double area_drag, lip, dry, added, net_up; /* of the body, if any */
} Node;

struct PassOracle
{
  LbSetup setup;
  LbPassPlan plan;
  size_t n;
  Node *nodes;
  double first_line, grip;
  double *force, *mass; /* 3 and 9 by node */
  double damped;        /* W, taken out by water and bed, of the last forces */
  LbVec3 reel_pull;

  SUNContext context;
  void *cvode;
  N_Vector y;
  SUNMatrix matrix;
  SUNLinearSolver linear;
  double time;
};

/* ---- Where things are in the state: reel x, y, then six numbers by node ---- */

static LbVec3
position_in (const PassOracle *o, const double *y, size_t i)
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

static LbVec3
boat_velocity (const PassOracle *o, double time)
{
  double speed, heading;

  course_at (o, time, &speed, &heading);
  return lb_vec3 (-speed * cos (heading), speed * sin (heading), 0);
}

static LbVec3
velocity_in (const PassOracle *o, const double *y, double time, size_t i)
{
  if (i == 0)
    return boat_velocity (o, time);
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

static double
line_out (const PassOracle *o, double time)
{
  const LbHand *hand = &o->plan.hand;
  double line = o->first_line + let_out (&o->plan.course, time);

  if (hand->motion == LB_HAND_LIFT_AND_DROP)
    {
      double turns = time / hand->period, x = fmin (2 * turns, 1);
      line -= hand->stroke * x * x * (3 - 2 * x) * gsl_pow_2 (sin (M_PI * turns));
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

/* One end of a segment: half of all. `ending` is the end's velocity in the water. */
static void
load_end (PassOracle *o,
          size_t i,
          LbVec3 pull,
          LbVec3 half,
          LbVec3 ending,
          LbVec3 u,
          LbVec3 turning,
          double wet)
{
  LbVec3 swirl = lb_vec3_add (lb_vec3_scale (turning, lb_vec3_dot (ending, u)),
                              lb_vec3_scale (u, lb_vec3_dot (ending, turning)));

  add_force (o, i, lb_vec3_add (pull, half));
  add_force (o, i, lb_vec3_scale (swirl, 0.5 * wet));
  add_mass (o, i, wet, 1, u);
}

static double
tension_of (const Node *node, double length, double line)
{
  double rest = node->rest + node->per_line * line;

  return node->line->axial_stiffness * (length / rest - 1);
}

static void
load_segment (PassOracle *o, const double *y, double time, double line, size_t i)
{
  const Node *node = &o->nodes[i];
  const LbRiver *river = &o->setup.river;
  double rest = node->rest + node->per_line * line, d = node->line->diameter;
  double area = M_PI_4 * d * d, rho = river->density;
  LbVec3 below = position_in (o, y, i), above = position_in (o, y, node->parent);
  LbVec3 v = velocity_in (o, y, time, i), vp = velocity_in (o, y, time, node->parent);
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
  LbVec3 half = lb_vec3_scale (drag, 0.5);
  LbVec3 turning =
      lb_vec3_scale (lb_vec3_add_scaled (spread, -lb_vec3_dot (spread, u), u), 1 / length);
  LbVec3 pull = lb_vec3_scale (u, tension_of (node, length, line));

  o->damped += lb_vec3_dot (drag, mean);
  half.z -= 0.5 * rest * area * (node->line->density - rho) * river->gravity;
  double wet = 0.5 * rest * area * rho, dry = 0.5 * rest * area * node->line->density;
  load_end (o, i, pull, half, lb_vec3_sub (v, stream), u, turning, wet);
  load_end (o, node->parent, lb_vec3_scale (pull, -1), half, lb_vec3_sub (vp, stream), u, turning,
            wet);
  add_mass (o, i, dry, 0, u);
  add_mass (o, node->parent, dry, 0, u);
}

static void
load_body (PassOracle *o, const double *y, double time, size_t i)
{
  const Node *node = &o->nodes[i];
  LbVec3 at = position_in (o, y, i), v = velocity_in (o, y, time, i);
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
  add_force (o, i, f);
  add_mass (o, i, node->dry + node->added, 0, lb_vec3 (0, 0, 0));
}

static void
load_bed (PassOracle *o, const double *y, double time, size_t i)
{
  LbVec3 at = position_in (o, y, i), v = velocity_in (o, y, time, i);
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
  add_force (o, i, f);
}

static void
find_forces (PassOracle *o, const double *y, double time)
{
  double line = line_out (o, time);

  memset (o->force, 0, 3 * o->n * sizeof (double));
  memset (o->mass, 0, 9 * o->n * sizeof (double));
  o->damped = 0;
  for (size_t i = 1; i < o->n; i++)
    {
      load_segment (o, y, time, line, i);
      if (o->nodes[i].dry > 0)
        load_body (o, y, time, i);
      load_bed (o, y, time, i);
    }
}

/* Solves the symmetric m a = f by Cramer's rule. */
static void
solve (const double *m, const double *f, double *a)
{
  double c0 = m[4] * m[8] - m[5] * m[7], c1 = m[5] * m[6] - m[3] * m[8];
  double c2 = m[3] * m[7] - m[4] * m[6], det = m[0] * c0 + m[1] * c1 + m[2] * c2;
  double i11 = m[0] * m[8] - m[2] * m[6], i22 = m[0] * m[4] - m[1] * m[3];
  double i12 = m[2] * m[3] - m[0] * m[5];

  a[0] = (c0 * f[0] + c1 * f[1] + c2 * f[2]) / det;
  a[1] = (c1 * f[0] + i11 * f[1] + i12 * f[2]) / det;
  a[2] = (c2 * f[0] + i12 * f[1] + i22 * f[2]) / det;
}

static int
rates (realtype time, N_Vector state, N_Vector rate, void *data)
{
  PassOracle *o = data;
  const double *y = N_VGetArrayPointer (state);
  double *dy = N_VGetArrayPointer (rate);
  LbVec3 boat = boat_velocity (o, time);

  find_forces (o, y, time);
  dy[0] = boat.x;
  dy[1] = boat.y;
  for (size_t i = 1; i < o->n; i++)
    {
      size_t k = 2 + 6 * o->nodes[i].place;
      memcpy (dy + k, y + k + 3, 3 * sizeof (double));
      solve (o->mass + 9 * i, o->force + 3 * i, dy + k + 3);
    }
  return 0;
}

/* ---- Setting up ---- */

static const LbLine *
line_of (const LbRig *rig, int part)
{
  if (part == LB_PART_MAINLINE)
    return &rig->mainline;
  return part == LB_PART_SHANK ? &rig->shank : &rig->leaders[part - LB_PART_LEADER_0].line;
}

static void
set_bodies (PassOracle *o, const LbShape *start)
{
  const LbRig *rig = &o->setup.rig;
  double rho = o->setup.river.density, g = o->setup.river.gravity;
  Node *weight = &o->nodes[start->weight];
  double displaced = rig->weight.mass / rig->weight.density * rho;

  weight->dry = rig->weight.mass;
  weight->added = BALL_ADDED * displaced;
  weight->area_drag =
      0.5 * rho * lb_weight_frontal_area (&rig->weight) * rig->weight.drag_coefficient;
  weight->net_up = (displaced - rig->weight.mass) * g;
  for (size_t k = 0; k < start->n_leaders; k++)
    {
      const LbLure *lure = &rig->leaders[k].lure;
      Node *node = &o->nodes[start->lure[k]];
      node->dry = lure->mass;
      node->added = LURE_ADDED * fmax (lure->mass + lure->buoyancy / g, 0);
      node->area_drag = 0.5 * rho * lure->drag_area;
      node->lip = lure->down_force_ratio;
      node->net_up = lure->buoyancy;
    }
}

/* Nodes equally many segments away from the reel stand next to each other, which makes the band
 * narrow. Returns its half width. */
static size_t
set_places (PassOracle *o)
{
  size_t place = 0, widest = 1;
  size_t *depth = calloc (o->n, sizeof *depth);

  for (size_t i = 1; i < o->n; i++)
    depth[i] = depth[o->nodes[i].parent] + 1;
  for (size_t level = 1; level < o->n; level++)
    for (size_t i = 1; i < o->n; i++)
      if (depth[i] == level)
        o->nodes[i].place = place++;
  for (size_t i = 1; i < o->n; i++)
    if (o->nodes[i].parent != 0)
      widest = GSL_MAX (widest, o->nodes[i].place - o->nodes[o->nodes[i].parent].place);
  free (depth);
  return GSL_MIN (6 * widest + 5, 6 * o->n - 4);
}

static void
set_state (PassOracle *o, const LbShape *start)
{
  double *y = N_VGetArrayPointer (o->y);
  LbVec3 v = boat_velocity (o, 0);

  y[0] = start->nodes[0].position.x;
  y[1] = start->nodes[0].position.y;
  for (size_t i = 1; i < o->n; i++)
    {
      LbVec3 p = start->nodes[i].position;
      double state[6] = { p.x, p.y, p.z, v.x, v.y, v.z };
      memcpy (y + 2 + 6 * o->nodes[i].place, state, sizeof state);
    }
}

PassOracle *
pass_oracle_new (const LbShape *start,
                 const LbSetup *setup,
                 const LbPassPlan *plan,
                 double tolerance)
{
  PassOracle *o = calloc (1, sizeof *o);
  size_t n = start->n_nodes, size = 2 + 6 * (n - 1);

  o->setup = *setup;
  o->plan = *plan;
  o->n = n;
  o->nodes = calloc (n, sizeof *o->nodes);
  o->force = calloc (3 * n, sizeof (double));
  o->mass = calloc (9 * n, sizeof (double));
  o->first_line = start->line_out;
  o->grip = fmax (LEAST_GRIP, setup->rig.weight.mass * setup->river.gravity);
  for (size_t i = 1; i < n; i++)
    {
      const LbShapeNode *node = &start->nodes[i];
      bool main = node->part == LB_PART_MAINLINE;
      o->nodes[i] = (Node){ .parent = node->parent,
                            .line = line_of (&o->setup.rig, node->part),
                            .rest = main ? 0 : node->rest_length,
                            .per_line = main ? node->rest_length / start->line_out : 0 };
    }
  set_bodies (o, start);
  size_t band = set_places (o);
  SUNContext_Create (NULL, &o->context);
  o->y = N_VNew_Serial ((sunindextype) size, o->context);
  set_state (o, start);
  o->cvode = CVodeCreate (CV_BDF, o->context);
  CVodeInit (o->cvode, rates, 0, o->y);
  CVodeSStolerances (o->cvode, tolerance, tolerance);
  o->matrix =
      SUNBandMatrix ((sunindextype) size, (sunindextype) band, (sunindextype) band, o->context);
  o->linear = SUNLinSol_Band (o->y, o->matrix, o->context);
  CVodeSetLinearSolver (o->cvode, o->linear, o->matrix);
  CVodeSetUserData (o->cvode, o);
  /* The wire rings along itself, undamped: of these formulas the first two alone stay stable then
   * without following every swing. */
  CVodeSetMaxOrd (o->cvode, 2);
  CVodeSetMaxNumSteps (o->cvode, 10000000);
  return o;
}

void
pass_oracle_free (PassOracle *o)
{
  CVodeFree (&o->cvode);
  SUNLinSolFree (o->linear);
  SUNMatDestroy (o->matrix);
  N_VDestroy (o->y);
  SUNContext_Free (&o->context);
  free (o->nodes);
  free (o->force);
  free (o->mass);
  free (o);
}

bool
pass_oracle_advance (PassOracle *o, double time)
{
  realtype reached;

  CVodeSetStopTime (o->cvode, time);
  if (CVode (o->cvode, time, o->y, &reached, CV_NORMAL) < 0)
    return false;
  o->time = reached;
  return true;
}

/* ---- What came out ---- */

LbVec3
pass_oracle_position (const PassOracle *o, size_t node)
{
  return position_in (o, N_VGetArrayPointer (o->y), node);
}

double
pass_oracle_tension (const PassOracle *o, size_t i)
{
  const double *y = N_VGetArrayPointer (o->y);
  LbVec3 span = lb_vec3_sub (position_in (o, y, o->nodes[i].parent), position_in (o, y, i));

  return tension_of (&o->nodes[i], lb_vec3_norm (span), line_out (o, o->time));
}

long
pass_oracle_steps (const PassOracle *o)
{
  long steps = 0;

  CVodeGetNumSteps (o->cvode, &steps);
  return steps;
}

void
pass_oracle_take (PassOracle *o, LbPass *pass)
{
  const LbShape *shape = lb_pass_shape (pass);

  set_state (o, shape);
  double *y = N_VGetArrayPointer (o->y);
  for (size_t i = 1; i < o->n; i++)
    {
      LbVec3 v = lb_pass_velocity (pass, i);
      double state[3] = { v.x, v.y, v.z };
      memcpy (y + 2 + 6 * o->nodes[i].place + 3, state, sizeof state);
    }
  o->time = lb_pass_time (pass);
}

double
pass_oracle_energy (const PassOracle *o)
{
  const double *y = N_VGetArrayPointer (o->y);
  const LbRiver *river = &o->setup.river;
  double energy = 0;

  for (size_t i = 1; i < o->n; i++)
    {
      const Node *node = &o->nodes[i];
      double rest = node->rest + node->per_line * o->first_line, d = node->line->diameter;
      double dry = 0.5 * rest * M_PI_4 * d * d * node->line->density;
      double wet = 0.5 * rest * M_PI_4 * d * d * river->density;
      LbVec3 ends[2] = { position_in (o, y, i), position_in (o, y, node->parent) };
      LbVec3 v[2] = { velocity_in (o, y, o->time, i), velocity_in (o, y, o->time, node->parent) };
      LbVec3 span = lb_vec3_sub (ends[1], ends[0]);
      double length = lb_vec3_norm (span), stretch = length / rest - 1;
      for (int k = 0; k < 2; k++)
        {
          double along = lb_vec3_dot (v[k], span) / length, square = lb_vec3_dot (v[k], v[k]);
          energy += 0.5 * dry * square + 0.5 * wet * (square - along * along);
          energy += (dry - wet) * river->gravity * ends[k].z;
        }
      energy += 0.5 * node->line->axial_stiffness * rest * stretch * stretch;
      energy +=
          0.5 * (node->dry + node->added) * lb_vec3_dot (v[0], v[0]) - node->net_up * ends[0].z;
    }
  return energy;
}

double
pass_oracle_power (PassOracle *o)
{
  const double *y = N_VGetArrayPointer (o->y);

  find_forces (o, y, o->time);
  return o->damped;
}
