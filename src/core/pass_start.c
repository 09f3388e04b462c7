/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_private.h"

#include <stdlib.h>
#include <string.h>

/* Added mass of a body per mass of water it displaces. The ball is potential flow's (textbook); the
 * others are estimates, means over all directions, as nothing is known of how they turn. */
#define BALL_ADDED_MASS 0.5
#define PEAR_ADDED_MASS 0.6
#define TORPEDO_ADDED_MASS 0.6
#define DISC_ADDED_MASS 1.0
#define LURE_ADDED_MASS 0.6

/* The first step is as many times shorter than the longest. */
#define FIRST_STEP_SHARE 64

LbPass *
lb_pass_new (void)
{
  LbPass *pass = calloc (1, sizeof *pass);

  if (pass == NULL)
    return NULL;
  lb_shape_init (&pass->shape);
  pass->steady = lb_steady_new ();
  if (pass->steady == NULL)
    {
      free (pass);
      return NULL;
    }
  return pass;
}

void
lb_pass_free (LbPass *pass)
{
  if (pass == NULL)
    return;
  lb_steady_free (pass->steady);
  lb_shape_clear (&pass->shape);
  free (pass->nodes);
  free (pass);
}

static double
added_mass (const LbTreeBody *body)
{
  if (body->kind == LB_BODY_LURE)
    return LURE_ADDED_MASS;
  switch (body->shape)
    {
    case LB_WEIGHT_PEAR:
      return PEAR_ADDED_MASS;
    case LB_WEIGHT_TORPEDO:
      return TORPEDO_ADDED_MASS;
    case LB_WEIGHT_DISC:
      return DISC_ADDED_MASS;
    case LB_WEIGHT_BALL:
      break;
    }
  return BALL_ADDED_MASS;
}

static LbStatus
reserve (LbPass *pass, size_t n_nodes)
{
  LbStatus status = lb_shape_resize (&pass->shape, n_nodes);

  if (status != LB_STATUS_OK)
    return status;
  if (n_nodes > pass->capacity)
    {
      LbPassNode *nodes = realloc (pass->nodes, n_nodes * sizeof *nodes);
      if (nodes == NULL)
        return LB_STATUS_OUT_OF_MEMORY;
      pass->nodes = nodes;
      pass->capacity = n_nodes;
    }
  pass->n_nodes = n_nodes;
  memset (pass->nodes, 0, n_nodes * sizeof *pass->nodes);
  return LB_STATUS_OK;
}

static void
load_masses (LbPass *pass)
{
  const LbTree *tree = &pass->steady->tree;
  double per_gravity = 1 / pass->setup.river.gravity;

  for (size_t i = 0; i < tree->n_lines; i++)
    {
      pass->dry[i] = per_gravity * tree->lines[i].weight_in_air;
      pass->added[i] = LB_PASS_LINE_ADDED_MASS * per_gravity * tree->lines[i].buoyancy;
    }
  for (size_t i = 0; i < tree->n_bodies; i++)
    {
      const LbTreeBody *body = &tree->bodies[i];
      pass->bodies[i].dry = per_gravity * body->weight_in_air;
      pass->bodies[i].added = added_mass (body) * per_gravity * fmax (body->buoyancy, 0);
    }
}

/* Whether all stays in the plane y = 0. */
static bool
stays_flat (const LbPass *pass, const LbShape *shape)
{
  for (size_t i = 0; i < shape->n_nodes; i++)
    if (shape->nodes[i].position.y != shape->nodes[0].position.y)
      return false;
  for (size_t i = 0; i < pass->plan.course.n_points; i++)
    if (pass->plan.course.points[i].heading != 0)
      return false;
  return !pass->options.spatial;
}

static void
load_nodes (LbPass *pass, const LbShape *shape)
{
  const LbTree *tree = &pass->steady->tree;
  LbVec3 velocity = lb_pass_boat_velocity (pass), reel = shape->nodes[0].position;

  for (size_t i = 0; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      LbVec3 p = shape->nodes[i].position;

      node->parent = i == 0 ? -1 : tree->nodes[i].parent;
      node->part = tree->nodes[i].part;
      node->body = tree->nodes[i].body;
      bool let_out = tree->nodes[i].rest_rate > 0;
      node->at_zero = let_out ? 0 : shape->nodes[i].rest_length;
      node->per_line = let_out ? shape->nodes[i].rest_length / shape->line_out : 0;
      node->rest = node->at_zero + node->per_line * pass->line_out;
      node->tension = fmax (shape->nodes[i].tension, 1e-9);
      node->r[LB_ALONG] = p.x;
      node->r[LB_UP] = p.z;
      node->r[LB_ACROSS] = p.y - reel.y;
      node->v[LB_ALONG] = velocity.x;
      node->v[LB_ACROSS] = velocity.y;
    }
  pass->nodes[0].body = -1;
  memcpy (pass->reel, pass->nodes[0].r, sizeof pass->reel);
}

/* What each node has to move, for the size of errors. */
static void
load_node_masses (LbPass *pass)
{
  for (size_t i = pass->n_nodes - 1; i >= 1; i--)
    {
      LbPassNode *node = &pass->nodes[i];
      double half = 0.5 * node->rest * (pass->dry[node->part] + pass->added[node->part]);

      node->mass += half;
      pass->nodes[node->parent].mass += half;
      if (node->body >= 0)
        node->mass += pass->bodies[node->body].dry + pass->bodies[node->body].added;
    }
}

/* The mesh stands in the steady solver's tree. */
static LbStatus
begin (LbPass *pass, const LbShape *shape)
{
  LbStatus status = reserve (pass, shape->n_nodes);

  if (status != LB_STATUS_OK)
    return status;
  pass->time = 0;
  pass->last_step = pass->before_last = pass->short_steps = 0;
  pass->step = pass->options.step / FIRST_STEP_SHARE;
  pass->course_line = 0;
  pass->first_line = shape->line_out;
  if (pass->setup.rig.line_out.mode == LB_LINE_OUT_GIVEN)
    pass->first_line = pass->setup.rig.line_out.value;
  pass->line_out = pass->first_line;
  pass->following = (LbPassFollowing){ .phase = LB_PASS_LOWERING };
  pass->held = 0;
  pass->factored_for = 0;
  pass->statistics = (LbPassStatistics){ .segments = shape->n_nodes - 1 };
  pass->flat = stays_flat (pass, shape);
  load_masses (pass);
  load_nodes (pass, shape);
  load_node_masses (pass);
  return LB_STATUS_OK;
}

/* Copies what is to be done; the boat's speed becomes the plan's at time 0. */
static LbStatus
load_plan (LbPass *pass, const LbSetup *setup, const LbPassPlan *plan, const LbPassOptions *options)
{
  static const LbPassPlan no_plan = { 0 };
  static const LbPassOptions no_options = { 0 };
  LbStatus status = lb_setup_check (setup, NULL);

  pass->n_nodes = 0;
  if (status == LB_STATUS_OK)
    status = lb_pass_plan_check (plan != NULL ? plan : &no_plan, NULL);
  if (status != LB_STATUS_OK)
    return status;
  pass->setup = *setup;
  pass->plan = plan != NULL ? *plan : no_plan;
  pass->options = options != NULL ? *options : no_options;
  if (!(pass->options.step > 0))
    pass->options.step = LB_PASS_DEFAULT_STEP;
  LbCoursePoint now = lb_pass_course_at (pass, 0);
  pass->setup.boat.speed_over_ground = now.speed * cos (now.heading);
  return LB_STATUS_OK;
}

/* The steady run that the pass starts from is a part of it. */
static bool
steady_cancel_cb (void *data, size_t iterations)
{
  const LbPass *pass = data;

  (void) iterations;
  return pass->options.cancel (pass->options.cancel_data, 0);
}

LbStatus
lb_pass_start (LbPass *pass,
               const LbSetup *setup,
               const LbPassPlan *plan,
               const LbPassOptions *options)
{
  LbStatus status = load_plan (pass, setup, plan, options);

  if (status != LB_STATUS_OK)
    return status;
  LbSteadyOptions steady = { .segments = pass->options.segments, .cold = true };
  if (pass->options.cancel != NULL)
    {
      steady.cancel = steady_cancel_cb;
      steady.cancel_data = pass;
    }
  LbStatus remark = lb_steady_solve (pass->steady, &pass->setup, &steady);
  if (lb_status_is_failure (remark))
    return remark;
  status = begin (pass, lb_steady_shape (pass->steady));
  return status == LB_STATUS_OK ? remark : status;
}

LbStatus
lb_pass_start_from (LbPass *pass,
                    const LbShape *shape,
                    const LbSetup *setup,
                    const LbPassPlan *plan,
                    const LbPassOptions *options)
{
  LbMeshPlan mesh = { LB_STEADY_DEFAULT_SEGMENTS, 1, LB_UNSET };
  LbStatus status = load_plan (pass, setup, plan, options);
  bool kept;

  if (status != LB_STATUS_OK)
    return status;
  if (pass->options.segments > 0)
    mesh.segments = pass->options.segments;
  status = lb_mesh_build (&pass->steady->tree, &pass->setup, &mesh, &kept);
  pass->steady->solved = false; /* the tree is no answer to start a steady run from */
  if (status != LB_STATUS_OK)
    return status;
  if (shape->n_nodes != pass->steady->tree.n_nodes)
    return LB_STATUS_BAD_SETUP;
  return begin (pass, shape);
}

void
lb_pass_hold (LbPass *pass, size_t node)
{
  pass->held = node < pass->n_nodes ? node : 0;
  if (pass->held != 0)
    memcpy (pass->hold_at, pass->nodes[node].r, sizeof pass->hold_at);
  pass->factored_for = 0;
  pass->step = pass->options.step / FIRST_STEP_SHARE;
}
