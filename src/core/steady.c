/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

#include <stdlib.h>
#include <string.h>

LbSteady *
lb_steady_new (void)
{
  LbSteady *steady = calloc (1, sizeof *steady);

  if (steady == NULL)
    return NULL;
  lb_shape_init (&steady->shape);
  steady->graded_for = LB_UNSET;
  return steady;
}

void
lb_steady_free (LbSteady *steady)
{
  if (steady == NULL)
    return;
  lb_tree_clear (&steady->tree);
  lb_shape_clear (&steady->shape);
  free (steady);
}

const LbShape *
lb_steady_shape (const LbSteady *steady)
{
  return &steady->shape;
}

LbSteadyStatistics
lb_steady_statistics (const LbSteady *steady)
{
  return steady->statistics;
}

LbStatus
lb_steady_solve_plan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, bool warm)
{
  bool kept;
  LbStatus status = lb_mesh_build (&steady->tree, setup, plan, &kept);

  if (status == LB_STATUS_OK)
    status = lb_shape_resize (&steady->shape, steady->tree.n_nodes);
  if (status == LB_STATUS_OK)
    {
      warm = warm && kept && steady->solved;
      if (!warm)
        lb_steady_forget (steady);
      status = lb_steady_solve_mesh (steady, setup, warm);
      if (status > LB_STATUS_OK)
        lb_steady_forget (steady);
      if (status > LB_STATUS_OK && steady->scans)
        status = lb_steady_scan (steady, setup, plan, status);
      if (status == LB_STATUS_OK)
        lb_steady_remember (steady, setup);
      else
        lb_steady_forget (steady);
    }
  steady->solved = !lb_status_is_failure (status);
  return status;
}

/* One try at a setup. */
typedef struct
{
  bool thorough; /* with every approach there is */
  bool held;     /* by friction, though at rest */
  double
      segments; /* times those asked for: a mesh cut otherwise gets by where another gets stuck */
} Try;

static const Try tries[] = {
  { false, false, 1 },  { false, true, 1 },  { false, false, 1.3 }, { false, true, 1.3 },
  { true, false, 1 },   { true, true, 1 },   { true, false, 0.8 },  { true, true, 0.8 },
  { true, false, 1.7 }, { true, true, 1.7 }, { true, false, 2.4 },
};

/* After a scan: from its answer, on the mesh that is graded for it, while that leads on and the
 * line out stays within a factor of two. */
static bool
go_on_from_scan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan)
{
  LbMeshPlan graded = *plan;
  double ratio;

  graded.graded_for = steady->graded_for;
  if (setup->rig.line_out.mode == LB_LINE_OUT_GIVEN || !lb_is_set (graded.graded_for))
    return false;
  steady->tree.held_at_rest = false;
  steady->warm_only = true;
  LbStatus status = lb_steady_solve_plan (steady, setup, &graded, true);
  steady->warm_only = false;
  ratio = steady->tree.line_out / graded.graded_for;
  return status == LB_STATUS_OK && ratio > 0.5 && ratio < 2;
}

/* Tries until one succeeds, and leaves its mesh in `plan`. At rest over the ground any friction up
 * to the most is a balance too: it is called in where a rig without friction would slide about and
 * find no place. */
static LbStatus
solve_somehow (LbSteady *steady, const LbSetup *setup, LbMeshPlan *plan, bool warm)
{
  size_t segments = plan->segments;
  bool at_rest = setup->boat.speed_over_ground == 0 && setup->river.bed_friction > 0;
  LbStatus status = LB_STATUS_NO_CONVERGENCE;

  if (warm && go_on_from_scan (steady, setup, plan))
    return LB_STATUS_OK;
  steady->graded_for = LB_UNSET;
  for (size_t i = 0; i < sizeof tries / sizeof *tries && status == LB_STATUS_NO_CONVERGENCE; i++)
    {
      if (steady->cancelled || (tries[i].held && !at_rest))
        continue;
      steady->thorough = tries[i].thorough;
      steady->tree.held_at_rest = tries[i].held;
      plan->segments = (size_t) ((double) segments * tries[i].segments);
      status = lb_steady_solve_plan (steady, setup, plan, warm && i == 0);
      if (status == LB_STATUS_OK && tries[i].held)
        status = LB_STATUS_HELD_BY_FRICTION;
    }
  return status;
}

/* On a mesh fine enough to be refined, which is left in `plan`. A line out that is to be found is
 * looked for on the coarse mesh: scanning on the fine one would take seconds, and the two might end
 * on different branches. */
static LbStatus
solve_finely (LbSteady *steady, const LbSetup *setup, LbMeshPlan *plan)
{
  size_t segments = lb_steady_fine_segments (setup, plan->segments);
  LbStatus status = LB_STATUS_NO_CONVERGENCE;

  if (setup->rig.line_out.mode != LB_LINE_OUT_GIVEN)
    status = solve_somehow (steady, setup, plan, false);
  steady->scans = false;
  plan->segments = segments;
  if (!lb_status_is_failure (status))
    {
      plan->graded_for = steady->shape.line_out;
      if (lb_steady_carry_over (steady, setup, plan, status) == LB_STATUS_OK)
        return status;
    }
  return solve_somehow (steady, setup, plan, false);
}

/* Whether the answer at hand is a remark on the same setup, the end of a long search. */
static bool
was_remarked (const LbSteady *steady, const LbSetup *setup, size_t segments)
{
  return steady->remark != LB_STATUS_OK && steady->remark_segments == segments
         && memcmp (&steady->remark_setup, setup, sizeof *setup) == 0;
}

static void
keep_remark (LbSteady *steady, const LbSetup *setup, size_t segments, LbStatus status)
{
  if (status <= LB_STATUS_OK || status > LB_STATUS_HEIGHT_LEAPS)
    return;
  steady->remark = status;
  steady->remark_segments = segments;
  memcpy (&steady->remark_setup, setup, sizeof *setup);
}

/* Makes ready for a solve of its own. */
static void
begin (LbSteady *steady, const LbSteadyOptions *options)
{
  steady->statistics = (LbSteadyStatistics){ .leap_high = LB_UNSET, .leap_low = LB_UNSET };
  steady->remark = LB_STATUS_OK;
  steady->limit =
      options->max_iterations > 0 ? options->max_iterations : LB_STEADY_DEFAULT_ITERATIONS;
  steady->iterations = 0;
  steady->cancel = options->cancel;
  steady->cancel_data = options->cancel_data;
  steady->cancelled = false;
  steady->scans = true;
}

LbStatus
lb_steady_solve (LbSteady *steady, const LbSetup *setup, const LbSteadyOptions *options)
{
  static const LbSteadyOptions defaults = { 0 };
  LbMeshPlan plan = { LB_STEADY_DEFAULT_SEGMENTS, 1, LB_UNSET, 0, LB_UNSET };
  LbStatus status = lb_setup_check (setup, NULL);

  if (options == NULL)
    options = &defaults;
  if (options->segments > 0)
    plan.segments = options->segments;
  size_t segments = plan.segments;
  if (!options->cold && !options->fine && was_remarked (steady, setup, segments))
    return steady->remark;
  begin (steady, options);
  if (status != LB_STATUS_OK)
    return status;
  status = options->fine ? solve_finely (steady, setup, &plan)
                         : solve_somehow (steady, setup, &plan, !options->cold);
  if (options->fine && !lb_status_is_failure (status))
    status = lb_steady_refine (steady, setup, &plan, status);
  if (!options->fine)
    keep_remark (steady, setup, segments, status);
  steady->statistics.segments = steady->tree.n_nodes - 1;
  steady->statistics.iterations = steady->iterations;
  return steady->cancelled && lb_status_is_failure (status) ? LB_STATUS_CANCELLED : status;
}
