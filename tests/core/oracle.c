/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "oracle.h"

#include <string.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_multiroots.h>
#include <gsl/gsl_odeiv2.h>

#include "oracle-river.h"

#define TOLERANCE 1e-13     /* of the integrator: relative, and absolute in m and N */
#define MEETING 1e-10       /* m, where ends count as joined */
#define MOST_ITERATIONS 300 /* of the root finder */
#define MOST_SWEEPS 400     /* of the search for a first guess */
#define UNKNOWNS (2 * (LB_MAX_LEADERS + 1))

typedef struct
{
  OracleRiver river;
  const LbRig *rig;
  size_t order[LB_MAX_LEADERS]; /* leaders by attachment height, lowest first */
  OracleAnswer *answer;
} Problem;

/* A point that travels up a line. y: x, z, tension vector (what is above pulls with). */
typedef struct
{
  const OracleRiver *river;
  const LbLine *line;
  bool in_air;
  bool by_height; /* the independent variable is z, and y[1] is the length */
} Traveller;

static int
along_line (double s, const double y[], double dy[], void *data)
{
  const Traveller *t = data;
  double tension = hypot (y[2], y[3]);
  double stretch = 1 + tension / t->line->axial_stiffness;
  double direction[2] = { y[2] / tension, y[3] / tension };
  double p[2] = { y[0], t->by_height ? s : y[1] };
  double load[2];

  if (!isfinite (tension) || !(tension > 0))
    return GSL_EBADFUNC;
  oracle_line_load (t->river, t->line, p, direction, stretch, t->in_air, load);
  dy[0] = stretch * direction[0];
  dy[1] = stretch * direction[1];
  dy[2] = -load[0];
  dy[3] = -load[1];
  if (t->by_height)
    {
      double rise = dy[1];
      dy[0] /= rise;
      dy[1] = 1 / rise;
      dy[2] /= rise;
      dy[3] /= rise;
    }
  return GSL_SUCCESS;
}

static void
note_extremes (const Problem *problem, const double y[], bool mainline)
{
  OracleAnswer *a = problem->answer;

  a->lowest = fmin (a->lowest, y[1] + oracle_bed_depth (&problem->river, y[0]));
  if (!mainline)
    a->highest = fmax (a->highest, y[1]);
}

/* From the state before a step that broke through the surface: integrates over z to exactly z = 0
 * (Henon's trick), and returns the length used up by it. */
static bool
climb_to_surface (Traveller *traveller, double y[4], double *length)
{
  gsl_odeiv2_system system = { along_line, NULL, 4, traveller };
  gsl_odeiv2_driver *driver;
  double z = y[1];
  int status;

  traveller->by_height = true;
  y[1] = 0;
  driver =
      gsl_odeiv2_driver_alloc_y_new (&system, gsl_odeiv2_step_rk8pd, -z / 2, TOLERANCE, TOLERANCE);
  status = gsl_odeiv2_driver_apply (driver, &z, 0, y);
  gsl_odeiv2_driver_free (driver);
  *length = y[1];
  y[1] = 0;
  traveller->by_height = false;
  traveller->in_air = true;
  return status == GSL_SUCCESS;
}

typedef struct
{
  gsl_odeiv2_step *step;
  gsl_odeiv2_control *control;
  gsl_odeiv2_evolve *evolve;
} Integrator;

static bool
integrate (const Problem *problem,
           Integrator *in,
           Traveller *traveller,
           double length,
           bool mainline,
           double y[4])
{
  gsl_odeiv2_system system = { along_line, NULL, 4, traveller };
  double s = 0;
  double step = length / 4;

  while (s < length)
    {
      double before[4], s_before = s;

      memcpy (before, y, sizeof before);
      if (gsl_odeiv2_evolve_apply (in->evolve, in->control, in->step, &system, &s, length, &step, y)
          != GSL_SUCCESS)
        return false;
      if (mainline && !traveller->in_air && before[1] < 0 && y[1] > 0)
        {
          double climbed;
          memcpy (y, before, sizeof before);
          if (!climb_to_surface (traveller, y, &climbed))
            return false;
          s = s_before + climbed;
          step = (length - s) / 4;
          gsl_odeiv2_evolve_reset (in->evolve);
          gsl_odeiv2_step_reset (in->step);
        }
      note_extremes (problem, y, mainline);
      if (!isfinite (y[0] + y[1] + y[2] + y[3]) || in->evolve->count > 20000)
        return false;
    }
  return true;
}

/* Follows `length` of `line` up from the state `y`. */
static bool
travel (const Problem *problem, const LbLine *line, double length, bool mainline, double y[4])
{
  Traveller traveller = { &problem->river, line, mainline && y[1] >= 0, false };
  Integrator in;
  bool done;

  if (length <= 0)
    return true;
  in.step = gsl_odeiv2_step_alloc (gsl_odeiv2_step_rk8pd, 4);
  in.control = gsl_odeiv2_control_y_new (TOLERANCE, TOLERANCE);
  in.evolve = gsl_odeiv2_evolve_alloc (4);
  done = integrate (problem, &in, &traveller, length, mainline, y);
  gsl_odeiv2_evolve_free (in.evolve);
  gsl_odeiv2_control_free (in.control);
  gsl_odeiv2_step_free (in.step);
  return done;
}

/* Leader `i` from its lure to its upper end: `y` is the state there. */
static bool
follow_leader (const Problem *problem, size_t i, double y[4])
{
  const LbLeader *leader = &problem->rig->leaders[i];
  double force[2];

  oracle_lure_force (&problem->river, &leader->lure, problem->answer->lure[i], force);
  y[0] = problem->answer->lure[i][0];
  y[1] = problem->answer->lure[i][1];
  y[2] = -force[0];
  y[3] = -force[1];
  note_extremes (problem, y, false);
  if (!travel (problem, &leader->line, leader->length, false, y))
    return false;
  problem->answer->attachment_tension[i] = hypot (y[2], y[3]);
  return true;
}

/* Everything from the tips in `answer` up. Fills the gaps at the leaders' upper ends and, last, at
 * the reel. */
static bool
shoot (const Problem *problem, double gap[UNKNOWNS])
{
  OracleAnswer *a = problem->answer;
  const LbRig *rig = problem->rig;
  const LbBoat *boat = &problem->river.setup->boat;
  double leader[LB_MAX_LEADERS][4], y[4], force[2], at = 0;

  a->lowest = INFINITY;
  a->highest = -INFINITY;
  a->evaluations++;
  for (size_t i = 0; i < rig->n_leaders; i++)
    if (!follow_leader (problem, i, leader[i]))
      return false;
  oracle_weight_force (&problem->river, a->weight, force);
  y[0] = a->weight[0];
  y[1] = a->weight[1];
  y[2] = -force[0];
  y[3] = -force[1];
  note_extremes (problem, y, false);
  for (size_t k = 0; k < rig->n_leaders; k++)
    {
      size_t i = problem->order[k];
      double height = rig->leaders[i].attach_above_weight;
      if (!travel (problem, &rig->shank, height - at, false, y))
        return false;
      at = height;
      for (int c = 0; c < 2; c++)
        {
          a->attachment[i][c] = y[c];
          gap[2 * i + c] = leader[i][c] - y[c];
          y[2 + c] += leader[i][2 + c];
        }
    }
  if (!travel (problem, &rig->shank, rig->shank_length - at, false, y))
    return false;
  memcpy (a->shank_top, y, sizeof a->shank_top);
  a->shank_top_tension = hypot (y[2], y[3]);
  if (!travel (problem, &rig->mainline, a->line_out, true, y))
    return false;
  gap[2 * rig->n_leaders] = y[0] - boat->position;
  gap[2 * rig->n_leaders + 1] = y[1] - boat->reel_height;
  a->reel_pull[0] = -y[2];
  a->reel_pull[1] = -y[3];
  return true;
}

static bool
is_held (const Problem *problem)
{
  return problem->rig->line_out.mode != LB_LINE_OUT_GIVEN;
}

static double
held_height (const Problem *problem)
{
  const LbLineOut *out = &problem->rig->line_out;

  return out->mode == LB_LINE_OUT_TOUCHING ? 0 : out->value;
}

static void
hold_weight (const Problem *problem)
{
  OracleAnswer *a = problem->answer;

  if (is_held (problem))
    a->weight[1] = held_height (problem) - oracle_bed_depth (&problem->river, a->weight[0]);
}

/* ---- The root finder's view ---- */

static void
put_unknowns (const Problem *problem, gsl_vector *u)
{
  const OracleAnswer *a = problem->answer;
  size_t n = problem->rig->n_leaders;

  for (size_t i = 0; i < n; i++)
    {
      gsl_vector_set (u, 2 * i, a->lure[i][0]);
      gsl_vector_set (u, 2 * i + 1, a->lure[i][1]);
    }
  gsl_vector_set (u, 2 * n, a->weight[0]);
  gsl_vector_set (u, 2 * n + 1, is_held (problem) ? a->line_out : a->weight[1]);
}

static void
get_unknowns (const Problem *problem, const gsl_vector *u)
{
  OracleAnswer *a = problem->answer;
  size_t n = problem->rig->n_leaders;

  for (size_t i = 0; i < n; i++)
    {
      a->lure[i][0] = gsl_vector_get (u, 2 * i);
      a->lure[i][1] = gsl_vector_get (u, 2 * i + 1);
    }
  a->weight[0] = gsl_vector_get (u, 2 * n);
  if (is_held (problem))
    a->line_out = gsl_vector_get (u, 2 * n + 1);
  else
    a->weight[1] = gsl_vector_get (u, 2 * n + 1);
  hold_weight (problem);
}

static int
gaps (const gsl_vector *u, void *data, gsl_vector *f)
{
  Problem *problem = data;
  double gap[UNKNOWNS] = { 0 };

  get_unknowns (problem, u);
  if (!shoot (problem, gap))
    return GSL_EBADFUNC;
  for (size_t i = 0; i < f->size; i++)
    gsl_vector_set (f, i, gap[i]);
  return GSL_SUCCESS;
}

static bool
polish (Problem *problem)
{
  size_t n = 2 * (problem->rig->n_leaders + 1);
  gsl_multiroot_function function = { gaps, n, problem };
  gsl_multiroot_fsolver *solver = gsl_multiroot_fsolver_alloc (gsl_multiroot_fsolver_hybrids, n);
  gsl_vector *u = gsl_vector_alloc (n);
  double best = INFINITY;

  put_unknowns (problem, u);
  if (gsl_multiroot_fsolver_set (solver, &function, u) == GSL_SUCCESS)
    for (int k = 0; k < MOST_ITERATIONS && !(best < MEETING / 10); k++)
      {
        int status = gsl_multiroot_fsolver_iterate (solver);
        double largest = 0;
        for (size_t i = 0; i < n; i++)
          largest = fmax (largest, fabs (gsl_vector_get (solver->f, i)));
        best = largest;
        if (status != GSL_SUCCESS)
          break;
      }
  if (isfinite (best))
    {
      gaps (solver->x, problem, u);
      problem->answer->misfit = best;
    }
  gsl_vector_free (u);
  gsl_multiroot_fsolver_free (solver);
  return best < MEETING;
}

/* ---- A first guess of its own ---- */

/* Hangs everything straight down, lures straight back. */
static void
guess_straight (Problem *problem)
{
  OracleAnswer *a = problem->answer;
  const LbRig *rig = problem->rig;
  const LbBoat *boat = &problem->river.setup->boat;
  double depth = oracle_bed_depth (&problem->river, boat->position);

  a->weight[0] = boat->position;
  if (is_held (problem))
    {
      a->weight[1] = held_height (problem) - depth;
      a->line_out = fmax (boat->reel_height - a->weight[1] - rig->shank_length, 0.1);
    }
  else
    {
      a->line_out = rig->line_out.value;
      a->weight[1] = fmax (boat->reel_height - a->line_out - rig->shank_length, 0.1 - depth);
    }
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      a->lure[i][0] = a->weight[0] + rig->leaders[i].length;
      a->lure[i][1] = a->weight[1] + rig->leaders[i].attach_above_weight;
    }
}

/* Moves every tip part of the way by the gap at the other end of its line; lengthens a held line by
 * what it lacks in height. Settles to about a millimetre. */
static bool
sweep (Problem *problem)
{
  OracleAnswer *a = problem->answer;
  size_t n = problem->rig->n_leaders;

  for (int k = 0; k < MOST_SWEEPS; k++)
    {
      double gap[UNKNOWNS] = { 0 }, largest = 0;
      double blend = k < 20 ? 0.5 : 0.3;
      if (!shoot (problem, gap))
        return false;
      for (size_t i = 0; i < 2 * n + 2; i++)
        largest = fmax (largest, fabs (gap[i]));
      if (largest < 1e-3)
        return true;
      for (size_t i = 0; i < n; i++)
        for (int c = 0; c < 2; c++)
          a->lure[i][c] -= blend * gap[2 * i + c];
      for (size_t i = 0; i < n; i++)
        a->lure[i][1] = fmin (a->lure[i][1], -1e-3);
      a->weight[0] -= blend * gap[2 * n];
      if (is_held (problem))
        a->line_out = fmax (a->line_out - blend * gap[2 * n + 1], 0.01);
      else
        a->weight[1] = fmin (a->weight[1] - blend * gap[2 * n + 1], -1e-3);
      hold_weight (problem);
    }
  return true;
}

static void
sort_leaders (Problem *problem)
{
  const LbLeader *leaders = problem->rig->leaders;

  for (size_t i = 0; i < problem->rig->n_leaders; i++)
    {
      size_t k = i;
      for (; k > 0; k--)
        {
          size_t lower = problem->order[k - 1];
          if (leaders[lower].attach_above_weight <= leaders[i].attach_above_weight)
            break;
          problem->order[k] = lower;
        }
      problem->order[k] = i;
    }
}

bool
oracle_solve (const LbSetup *setup, const OracleAnswer *guess, OracleAnswer *answer)
{
  Problem problem = { .rig = &setup->rig, .answer = answer };
  gsl_error_handler_t *handler = gsl_set_error_handler_off ();
  bool solved;

  oracle_river_init (&problem.river, setup);
  sort_leaders (&problem);
  if (guess != NULL)
    {
      *answer = *guess;
      if (!is_held (&problem))
        answer->line_out = setup->rig.line_out.value;
      hold_weight (&problem);
      solved = polish (&problem);
    }
  else
    {
      *answer = (OracleAnswer){ 0 };
      guess_straight (&problem);
      solved = sweep (&problem) && polish (&problem);
    }
  oracle_river_clear (&problem.river);
  gsl_set_error_handler (handler);
  return solved;
}
