/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

#include <stdlib.h>

LbSteady *
lb_steady_new (void)
{
  LbSteady *steady = calloc (1, sizeof *steady);

  if (steady != NULL)
    lb_shape_init (&steady->shape);
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

/* Tries until one succeeds, and leaves its mesh in `plan`. At rest over the ground any friction up
 * to the most is a balance too: it is called in where a rig without friction would slide about and
 * find no place. */
static LbStatus
solve_somehow (LbSteady *steady, const LbSetup *setup, LbMeshPlan *plan, bool warm)
{
  size_t segments = plan->segments;
  bool at_rest = setup->boat.speed_over_ground == 0 && setup->river.bed_friction > 0;
  LbStatus status = LB_STATUS_NO_CONVERGENCE;

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

LbStatus
lb_steady_solve (LbSteady *steady, const LbSetup *setup, const LbSteadyOptions *options)
{
  static const LbSteadyOptions defaults = { 0 };
  LbMeshPlan plan = { LB_STEADY_DEFAULT_SEGMENTS, 1, LB_UNSET };
  LbStatus status = lb_setup_check (setup, NULL);

  if (options == NULL)
    options = &defaults;
  steady->statistics = (LbSteadyStatistics){ 0 };
  if (status != LB_STATUS_OK)
    return status;
  if (options->segments > 0)
    plan.segments = options->segments;
  steady->limit =
      options->max_iterations > 0 ? options->max_iterations : LB_STEADY_DEFAULT_ITERATIONS;
  steady->iterations = 0;
  steady->cancel = options->cancel;
  steady->cancel_data = options->cancel_data;
  steady->cancelled = false;
  if (options->fine)
    plan.segments = lb_steady_fine_segments (setup, plan.segments);
  status = solve_somehow (steady, setup, &plan, !options->cold && !options->fine);
  if (options->fine && !lb_status_is_failure (status))
    status = lb_steady_refine (steady, setup, &plan, status);
  steady->statistics.segments = steady->tree.n_nodes - 1;
  steady->statistics.iterations = steady->iterations;
  return steady->cancelled && lb_status_is_failure (status) ? LB_STATUS_CANCELLED : status;
}
