/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_private.h"

#include <string.h>

double
lb_pass_top_tension (const LbPass *pass)
{
  return pass->n_nodes > 1 ? pass->nodes[1].tension : 0;
}

double
lb_pass_bed_force_on (const LbPass *pass, size_t node)
{
  const LbTree *tree = &pass->steady->tree;
  const LbPassNode *n = &pass->nodes[node];
  LbBedPoint bed = lb_bed_at (&tree->current.bed, n->r[LB_ALONG]);

  return lb_pass_bed_force (tree, -n->r[LB_UP] - bed.depth,
                            -n->v[LB_UP] - bed.slope * n->v[LB_ALONG])
      .force;
}

static void
fill_node (const LbPass *pass, size_t i, LbShapeNode *out)
{
  const LbPassNode *node = &pass->nodes[i];

  memset (out, 0, sizeof *out);
  out->position = lb_vec3 (node->r[LB_ALONG], node->r[LB_ACROSS] + pass->plan.course.reel_across,
                           node->r[LB_UP]);
  if (i == 0)
    return;
  out->parent = (size_t) node->parent;
  out->part = node->part;
  out->rest_length = node->rest;
  out->tension = node->tension;
  out->bed_force = lb_pass_bed_force_on (pass, i);
}

const LbShape *
lb_pass_shape (LbPass *pass)
{
  const LbTree *tree = &pass->steady->tree;
  LbShape *shape = &pass->shape;

  shape->line_out = pass->line_out;
  shape->shank_top = tree->shank_top;
  shape->weight = tree->weight;
  shape->n_leaders = tree->n_leaders;
  memcpy (shape->attachment, tree->attachment, sizeof shape->attachment);
  memcpy (shape->lure, tree->lure, sizeof shape->lure);
  for (size_t i = 0; i < pass->n_nodes; i++)
    fill_node (pass, i, &shape->nodes[i]);
  lb_pass_fill_pulls (pass, shape);
  return shape;
}

/* The speed of the water past a node. */
static double
speed_past (const LbPass *pass, size_t i)
{
  const LbPassNode *node = &pass->nodes[i];
  const LbCurrent *current = &pass->steady->tree.current;
  double speed = lb_current_at (current, node->r[LB_ALONG], node->r[LB_UP]).speed;

  return lb_vec3_norm (lb_vec3 (speed - node->v[LB_ALONG], -node->v[LB_ACROSS], -node->v[LB_UP]));
}

void
lb_pass_readings (LbPass *pass, LbReadings *readings)
{
  const LbShape *shape = lb_pass_shape (pass);

  pass->setup.boat.speed_over_ground = -lb_pass_boat_velocity (pass).x;
  lb_readings_compute (readings, &pass->setup, shape);
  readings->weight.water_speed = speed_past (pass, shape->weight);
  readings->shank_top.water_speed = speed_past (pass, shape->shank_top);
  for (size_t i = 0; i < shape->n_leaders; i++)
    {
      readings->attachments[i].water_speed = speed_past (pass, shape->attachment[i]);
      readings->lures[i].at.water_speed = speed_past (pass, shape->lure[i]);
    }
}

LbVec3
lb_pass_velocity (const LbPass *pass, size_t node)
{
  const double *v = pass->nodes[node].v;

  return lb_vec3 (v[LB_ALONG], v[LB_ACROSS], v[LB_UP]);
}

LbVec3
lb_pass_boat_velocity (const LbPass *pass)
{
  LbCoursePoint now = lb_pass_course_at (pass, pass->time);

  return lb_vec3 (-now.speed * cos (now.heading), now.speed * sin (now.heading), 0);
}

double
lb_pass_heading (const LbPass *pass)
{
  return lb_pass_course_at (pass, pass->time).heading;
}

double
lb_pass_time (const LbPass *pass)
{
  return pass->time;
}

LbPassStatistics
lb_pass_statistics (const LbPass *pass)
{
  return pass->statistics;
}
