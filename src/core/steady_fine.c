/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

/* The coarsest mesh of the three has at least so many segments, and so many for each line. */
#define COARSEST_SEGMENTS 400
#define COARSEST_PER_LINE 60

#define N_LEVELS 3

/* The node at the water surface is put there to within this, m. */
#define WATERLINE_TOLERANCE 1e-9
#define WATERLINE_TRIES 12

/* The setup with the line out as it was found when it could not be as asked. */
static LbSetup
settle_line_out (const LbSetup *setup, LbStatus remark, double line_out)
{
  LbSetup settled = *setup;

  if (remark != LB_STATUS_OK && remark != LB_STATUS_HELD_BY_FRICTION)
    settled.rig.line_out = (LbLineOut){ LB_LINE_OUT_GIVEN, line_out };
  return settled;
}

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
  double last = LB_UNSET, last_z = LB_UNSET; /* the try before this one */

  for (int try = 0; try < WATERLINE_TRIES; try++)
    {
      status = lb_steady_solve_plan (steady, setup, plan, true);
      if (lb_status_is_failure (status) || !lb_is_set (plan->waterline))
        return status;
      size_t i = plan->dry * plan->refine;
      const LbTreeNode *node = &steady->tree.nodes[i], *above = node - 1;
      double rest = lb_tree_rest (&steady->tree, i);
      if (fabs (node->position.z) <= WATERLINE_TOLERANCE)
        return status;
      /* Along the segment above, and then by the secant: the line rises as it gets longer. */
      double z = node->position.z;
      double change = lb_is_set (last) ? z * (plan->waterline - last) / (last_z - z)
                                       : z * rest / (above->position.z - z);
      last = plan->waterline;
      last_z = z;
      plan->waterline += fmin (fmax (change, -0.5 * plan->waterline), plan->waterline);
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

/* ---- From a coarse mesh ---- */

/* The length of unstretched line, m, that `part` has in `shape`. */
static double
length_of_part (const LbShape *shape, int part)
{
  double length = 0;

  for (size_t i = 1; i < shape->n_nodes; i++)
    if (shape->nodes[i].part == part)
      length += shape->nodes[i].rest_length;
  return length;
}

/* Places the nodes of one part along that of `coarse`. */
static void
place_part (LbTree *tree, const LbShape *coarse, int part)
{
  double total = length_of_part (coarse, part), reached = 0, upper = 0;
  size_t k = 1;

  while (k < coarse->n_nodes && coarse->nodes[k].part != part)
    k++;
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      if (tree->nodes[i].part != part)
        continue;
      reached += lb_tree_rest (tree, i);
      while (upper + coarse->nodes[k].rest_length < fmin (reached, total * (1 - 1e-9)))
        upper += coarse->nodes[k++].rest_length;
      const LbShapeNode *node = &coarse->nodes[k];
      double share = fmin ((reached - upper) / node->rest_length, 1);
      tree->nodes[i].position =
          lb_vec3_lerp (coarse->nodes[node->parent].position, node->position, share);
      tree->nodes[i].tension = node->tension;
    }
}

/* From `coarse`: solves on the mesh of `plan`, on the same branch. */
static LbStatus
carry_over (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, const LbShape *coarse)
{
  LbTree *tree = &steady->tree;
  bool kept;
  LbStatus status = lb_mesh_build (tree, setup, plan, &kept);

  if (status != LB_STATUS_OK)
    return status;
  tree->line_out = coarse->line_out;
  for (int part = 0; part < (int) setup->rig.n_leaders + LB_PART_LEADER_0; part++)
    place_part (tree, coarse, part);
  lb_steady_forget (steady);
  steady->solved = true;
  steady->warm_only = true;
  status = lb_steady_solve_plan (steady, setup, plan, true);
  steady->warm_only = false;
  return status;
}

LbStatus
lb_steady_carry_over (LbSteady *steady,
                      const LbSetup *setup,
                      const LbMeshPlan *plan,
                      LbStatus remark)
{
  LbSetup settled = settle_line_out (setup, remark, steady->shape.line_out);
  LbShape coarse;

  lb_shape_init (&coarse);
  LbStatus status = lb_shape_copy (&coarse, &steady->shape);
  if (status == LB_STATUS_OK)
    status = carry_over (steady, &settled, plan, &coarse);
  lb_shape_clear (&coarse);
  return status;
}

/* ---- Extrapolation ---- */

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

/* As many segments for what is above the water as the mainline has on that length, or one. */
static size_t
count_dry (const LbTree *tree, double waterline)
{
  return 1 + (size_t) ((double) tree->key.mainline * waterline / tree->line_out);
}

/* The coarsest mesh is that of `start`, but for the node at the surface. A level that ends with a
 * remark has lost the branch. */
static LbStatus
solve_levels (
    LbSteady *steady, const LbSetup *setup, LbMeshPlan plan, const LbShape *start, LbShape *level)
{
  LbStatus status = LB_STATUS_OK;

  for (size_t k = 0; k < N_LEVELS && status == LB_STATUS_OK; k++)
    {
      if (k == 0)
        /* A failure leaves it to the other ways of a cold solve. */
        carry_over (steady, setup, &plan, start);
      else
        status = refine_state (steady, setup, &plan, &level[k - 1]);
      if (status == LB_STATUS_OK)
        status = solve_level (steady, setup, &plan);
      if (status == LB_STATUS_OK)
        status = lb_shape_copy (&level[k], &steady->shape);
      plan.refine *= 2;
    }
  if (status > LB_STATUS_OK)
    return LB_STATUS_NO_CONVERGENCE;
  return status == LB_STATUS_OK ? join_levels (steady, level) : status;
}

/* With a node at the water surface, or where that cannot be had without one. */
static LbStatus
solve_levels_somehow (
    LbSteady *steady, const LbSetup *setup, LbMeshPlan plan, const LbShape *start, LbShape *level)
{
  LbStatus status = LB_STATUS_NO_CONVERGENCE;

  plan.waterline = find_waterline (&steady->tree);
  if (lb_is_set (plan.waterline))
    {
      plan.dry = count_dry (&steady->tree, plan.waterline);
      status = solve_levels (steady, setup, plan, start, level);
      plan.waterline = LB_UNSET;
    }
  if (status == LB_STATUS_NO_CONVERGENCE && !steady->cancelled)
    status = solve_levels (steady, setup, plan, start, level);
  return status;
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
  LbShape start, level[N_LEVELS];
  LbSetup settled = settle_line_out (setup, remark, steady->tree.line_out);

  lb_shape_init (&start);
  for (size_t k = 0; k < N_LEVELS; k++)
    lb_shape_init (&level[k]);
  LbStatus status = lb_shape_copy (&start, &steady->shape);
  if (status == LB_STATUS_OK)
    status = solve_levels_somehow (steady, &settled, *plan, &start, level);
  lb_shape_clear (&start);
  for (size_t k = 0; k < N_LEVELS; k++)
    lb_shape_clear (&level[k]);
  /* The tree now holds the finest mesh alone, which is not what is returned. */
  lb_steady_forget (steady);
  steady->solved = false;
  return status == LB_STATUS_OK ? remark : status;
}
