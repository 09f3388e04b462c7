/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

/* The coarsest mesh of the three has at least so many segments, and so many for each line. */
#define COARSEST_SEGMENTS 400
#define COARSEST_PER_LINE 60

#define N_LEVELS 3

/* The node at the water surface is put there to within this, m. */
#define WATERLINE_TOLERANCE 1e-9
#define WATERLINE_TRIES 12

/* Where the mainline comes out of the water, as m of unstretched line from the reel; unset when it
 * does not. */
static double
find_waterline (const LbTree *tree)
{
  double from_reel = 0;

  for (size_t i = 1; i <= tree->shank_top; i++)
    {
      double upper = tree->nodes[i - 1].position.z, lower = tree->nodes[i].position.z;
      double rest = lb_tree_rest (tree, i);
      if (upper > 0 && lower <= 0)
        return from_reel + rest * upper / (upper - lower);
      from_reel += rest;
    }
  return LB_UNSET;
}

/* Solves with a node of the mainline where it meets the surface, moving that node until it does. */
static LbStatus
solve_level (LbSteady *steady, const LbSetup *setup, LbMeshPlan *plan)
{
  LbStatus status = LB_STATUS_OK;

  for (int try = 0; try < WATERLINE_TRIES; try++)
    {
      status = lb_steady_solve_plan (steady, setup, plan, true);
      if (lb_status_is_failure (status) || !lb_is_set (plan->waterline))
        return status;
      const LbTreeNode *node = &steady->tree.nodes[plan->refine];
      const LbTreeNode *above = &steady->tree.nodes[plan->refine - 1];
      double rest = lb_tree_rest (&steady->tree, plan->refine);
      if (fabs (node->position.z) <= WATERLINE_TOLERANCE)
        return status;
      plan->waterline += node->position.z * rest / (above->position.z - node->position.z);
    }
  return LB_STATUS_NO_CONVERGENCE;
}

/* Starts the mesh of `plan`, which cuts that of `coarse` in half, from the coarse answer. */
static LbStatus
refine_state (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, const LbShape *coarse)
{
  LbTree *tree = &steady->tree;
  bool kept;
  LbStatus status = lb_mesh_build (tree, setup, plan, &kept);

  if (status != LB_STATUS_OK)
    return status;
  for (size_t i = 1; i < coarse->n_nodes; i++)
    {
      const LbShapeNode *node = &coarse->nodes[i];
      LbTreeNode *upper = &tree->nodes[2 * i - 1], *lower = &tree->nodes[2 * i];

      upper->position = lb_vec3_lerp (coarse->nodes[node->parent].position, node->position, 0.5);
      lower->position = node->position;
      upper->tension = lower->tension = node->tension;
    }
  steady->solved = true;
  return LB_STATUS_OK;
}

/* From values with errors in h^2, h^4, ... at h, h/2 and h/4. */
static double
extrapolate (double h1, double h2, double h4)
{
  double first = h2 + (h2 - h1) / 3, second = h4 + (h4 - h2) / 3;

  return second + (second - first) / 15;
}

static LbVec3
extrapolate_vec3 (LbVec3 h1, LbVec3 h2, LbVec3 h4)
{
  return lb_vec3 (extrapolate (h1.x, h2.x, h4.x), extrapolate (h1.y, h2.y, h4.y),
                  extrapolate (h1.z, h2.z, h4.z));
}

/* Joins the three answers at the nodes of the coarsest. */
static LbStatus
join_levels (LbSteady *steady, const LbShape *level)
{
  LbShape *shape = &steady->shape;
  LbStatus status = lb_shape_copy (shape, &level[0]);

  if (status != LB_STATUS_OK)
    return status;
  shape->line_out = extrapolate (level[0].line_out, level[1].line_out, level[2].line_out);
  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      LbShapeNode *node = &shape->nodes[i];
      const LbShapeNode *h1 = &level[0].nodes[i];
      const LbShapeNode *h2 = &level[1].nodes[2 * i], *h4 = &level[2].nodes[4 * i];
      const LbShapeNode *top2 = h2 - 1, *top4 = h4 - 3;

      node->position = extrapolate_vec3 (h1->position, h2->position, h4->position);
      node->pull_on_node = extrapolate_vec3 (h1->pull_on_node, h2->pull_on_node, h4->pull_on_node);
      node->pull_on_parent =
          extrapolate_vec3 (h1->pull_on_parent, top2->pull_on_parent, top4->pull_on_parent);
      node->tension = 0.5 * (h4[-1].tension + h4[-2].tension);
      node->bed_force = extrapolate (h1->bed_force, h2->bed_force, h4->bed_force);
    }
  return LB_STATUS_OK;
}

/* The coarsest mesh is the one that was solved. */
static LbStatus
solve_levels (LbSteady *steady, const LbSetup *setup, LbMeshPlan plan, LbShape *level)
{
  LbStatus status = LB_STATUS_OK;

  plan.waterline = find_waterline (&steady->tree);
  for (size_t k = 0; k < N_LEVELS && !lb_status_is_failure (status); k++)
    {
      if (k > 0)
        status = refine_state (steady, setup, &plan, &level[k - 1]);
      if (!lb_status_is_failure (status))
        status = solve_level (steady, setup, &plan);
      if (!lb_status_is_failure (status))
        status = lb_shape_copy (&level[k], &steady->shape);
      plan.refine *= 2;
    }
  return lb_status_is_failure (status) ? status : join_levels (steady, level);
}

size_t
lb_steady_fine_segments (const LbSetup *setup, size_t segments)
{
  size_t for_lines = COARSEST_PER_LINE * (setup->rig.n_leaders + 2);
  size_t least = for_lines > COARSEST_SEGMENTS ? for_lines : COARSEST_SEGMENTS;

  return segments > least ? segments : least;
}

LbStatus
lb_steady_refine (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, LbStatus remark)
{
  LbShape level[N_LEVELS];
  LbSetup settled = *setup;

  /* A line out that could not be as asked stays as it was found. */
  if (remark != LB_STATUS_OK && remark != LB_STATUS_HELD_BY_FRICTION)
    settled.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, steady->tree.line_out };
  for (size_t k = 0; k < N_LEVELS; k++)
    lb_shape_init (&level[k]);
  LbStatus status = solve_levels (steady, &settled, *plan, level);
  for (size_t k = 0; k < N_LEVELS; k++)
    lb_shape_clear (&level[k]);
  /* The tree now holds the finest mesh alone, which is not what is returned. */
  lb_steady_forget (steady);
  steady->solved = false;
  return status == LB_STATUS_OK ? remark : status;
}
