/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drag.h"
#include "load.h"
#include "pass_private.h"

#include <string.h>

/* The bed takes the swing out of what falls on it: its force is larger by this, per m/s of sinking
 * in, and dies away as fast when left. Things come to rest on it within a fraction of a millimetre
 * and do not bounce. */
#define BED_DAMPING 500

/* Friction sets in up to this speed over the ground, m/s. */
#define FRICTION_SPEED 0.01

/* A lure's lip pushes at right angles to the flow; this keeps a direction in upright flow, where it
 * has none. */
#define UPRIGHT_FLOW 0.1

/* How hard what hangs up is held, N/m, and kept from bouncing, N s/m. */
#define HOLD_STIFFNESS 1e5
#define HOLD_DAMPING 500

LbPassBedForce
lb_pass_bed_force (const LbTree *tree, double sunk, double sinking)
{
  double slope, force = lb_load_bed_law (tree, sunk, &slope);
  double swing = sinking > 0 ? 1 + BED_DAMPING * sinking : exp (BED_DAMPING * sinking);
  double swing_rate = sinking > 0 ? BED_DAMPING : BED_DAMPING * swing;

  return (LbPassBedForce){ force * swing, slope * swing, force * swing_rate };
}

/* ---- Bodies ---- */

/* Drag and the lip's push in the flow w, and how they change with it (row by row). */
static void
body_drag (const LbTreeBody *body, const double *w, double *force, double *by_flow)
{
  double squared = w[0] * w[0] + w[1] * w[1] + w[2] * w[2];
  double speed = sqrt (squared) + 1e-12;
  LbDragPoint cd = { body->drag_coefficient, 0 };

  if (!lb_is_set (cd.value))
    cd = lb_drag_weight (body->shape, body->reynolds_per_speed * speed);
  double scale = body->drag_scale * cd.value;
  double bend = (scale + body->drag_scale * body->reynolds_per_speed * speed * cd.slope) / speed;
  double level = (w[LB_ALONG] * w[LB_ALONG] + w[LB_ACROSS] * w[LB_ACROSS]) / (speed * speed);
  double lip = body->down_force_ratio * scale
               / sqrt (level + UPRIGHT_FLOW * UPRIGHT_FLOW * (1 - level) + 1e-30);

  for (int i = 0; i < 3; i++)
    {
      double up = i == LB_UP ? 1 : 0;
      force[i] = scale * speed * w[i] - lip * (squared * up - w[i] * w[LB_UP]);
      for (int j = 0; j < 3; j++)
        by_flow[3 * i + j] = (i == j ? scale * speed + lip * w[LB_UP] : 0) + bend * w[i] * w[j]
                             - lip * (2 * up * w[j] - (j == LB_UP ? w[i] : 0));
    }
}

static void
load_body (const LbPass *pass, const LbPassNode *node, double *force, double *matrix)
{
  const LbTree *tree = &pass->steady->tree;
  const LbTreeBody *body = &tree->bodies[node->body];
  const LbPassBody *mass = &pass->bodies[node->body];
  LbCurrentPoint current = lb_current_at (&tree->current, node->r[LB_ALONG], node->r[LB_UP]);
  double shear[3] = { current.d_dx, current.d_dz, 0 };
  double w[3] = { current.speed - node->v[0], -node->v[1], -node->v[2] };
  double wet_rate, wet = lb_load_wetness (node->r[LB_UP], body->half_height, &wet_rate);
  double drag[3], by_flow[9];

  body_drag (body, w, drag, by_flow);
  double inertia = mass->dry + wet * mass->added;
  for (int i = 0; i < 3; i++)
    force[i] += wet * drag[i] - inertia * node->a[i];
  force[LB_UP] += wet * body->buoyancy - body->weight_in_air;
  if (matrix == NULL)
    return;
  for (int i = 0; i < 3; i++)
    {
      for (int j = 0; j < 3; j++)
        matrix[3 * i + j] += wet * (by_flow[3 * i] * shear[j] - pass->beta * by_flow[3 * i + j]);
      matrix[4 * i] -= inertia * pass->beta * pass->beta;
      matrix[3 * i + LB_UP] += wet_rate * (drag[i] - mass->added * node->a[i]);
    }
  matrix[3 * LB_UP + LB_UP] += wet_rate * body->buoyancy;
}

/* ---- The bed ---- */

/* Friction per newton of the bed's force, against the slip (along the bed and across), and how it
 * changes with the slip. */
static void
friction (double coefficient, const double *slip, double *share, double *by_slip)
{
  double speed = hypot (slip[0], slip[1]);
  double q = speed / FRICTION_SPEED, per_speed, fall;

  if (q < 1)
    {
      per_speed = (1.5 - 0.5 * q * q) / FRICTION_SPEED;
      fall = -1 / (FRICTION_SPEED * FRICTION_SPEED * FRICTION_SPEED);
    }
  else
    {
      per_speed = 1 / speed;
      fall = -1 / (speed * speed * speed);
    }
  for (int i = 0; i < 2; i++)
    {
      share[i] = -coefficient * per_speed * slip[i];
      for (int j = 0; j < 2; j++)
        by_slip[2 * i + j] = -coefficient * ((i == j ? per_speed : 0) + fall * slip[i] * slip[j]);
    }
}

static void
load_bed (const LbPass *pass, LbPassNode *node, double *force, double *matrix)
{
  const LbTree *tree = &pass->steady->tree;

  if (matrix != NULL)
    {
      node->bed_rate = node->bed_slope = 0;
      memcpy (node->bed_push, (double[]){ [LB_UP] = 1, [LB_ACROSS] = 0 }, sizeof node->bed_push);
    }
  if (!lb_tree_near_bed (tree, node->r[LB_UP]))
    return;
  LbBedPoint bed = lb_bed_at (&tree->current.bed, node->r[LB_ALONG]);
  double sunk = -node->r[LB_UP] - bed.depth;
  if (sunk <= -LB_TREE_BED_REACH * tree->bed_softness)
    return;

  double s = bed.slope, norm = sqrt (1 + s * s);
  double normal[3] = { s / norm, 1 / norm, 0 };
  double tangent[2][3] = { { 1 / norm, -s / norm, 0 }, { 0, 0, 1 } };
  double sinking = -node->v[LB_UP] - s * node->v[LB_ALONG];
  LbPassBedForce n = lb_pass_bed_force (tree, sunk, sinking);
  double slip[2] = { (node->v[LB_ALONG] - s * node->v[LB_UP]) / norm, node->v[LB_ACROSS] };
  double share[2], by_slip[4], along[3];

  friction (tree->bed_friction, slip, share, by_slip);
  for (int i = 0; i < 3; i++)
    {
      along[i] = normal[i] + share[0] * tangent[0][i] + share[1] * tangent[1][i];
      force[i] += n.force * along[i];
    }
  if (matrix == NULL)
    return;
  double by_sunk = n.by_sunk + pass->beta * n.by_sinking;
  double down[3] = { -s, -1, 0 }, bend = bed.bend / (norm * norm * norm);
  node->bed_rate = by_sunk;
  node->bed_slope = s;
  memcpy (node->bed_push, along, sizeof along);
  for (int i = 0; i < 3; i++)
    {
      for (int j = 0; j < 3; j++)
        {
          double slide = 0;
          for (int k = 0; k < 2; k++)
            for (int l = 0; l < 2; l++)
              slide += tangent[k][i] * by_slip[2 * k + l] * tangent[l][j];
          matrix[3 * i + j] += by_sunk * along[i] * down[j] + pass->beta * n.force * slide;
        }
      matrix[3 * i] += n.force * bend * ((i == LB_ALONG) - (i == LB_UP) * s);
    }
}

/* ---- What hangs up ---- */

static void
load_held (const LbPass *pass, const LbPassNode *node, double *force, double *matrix)
{
  for (int i = 0; i < 3; i++)
    {
      force[i] -= HOLD_STIFFNESS * (node->r[i] - pass->hold_at[i]) + HOLD_DAMPING * node->v[i];
      if (matrix != NULL)
        matrix[4 * i] -= HOLD_STIFFNESS + pass->beta * HOLD_DAMPING;
    }
}

void
lb_pass_load_node (const LbPass *pass, LbPassNode *node, double *force, double *matrix)
{
  if (node->body >= 0)
    load_body (pass, node, force, matrix);
  load_bed (pass, node, force, matrix);
  if (pass->held != 0 && node == &pass->nodes[pass->held])
    load_held (pass, node, force, matrix);
}
