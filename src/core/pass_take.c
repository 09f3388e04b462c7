/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_private.h"
#include "tree_math.h"

#define MOST_ROUNDS 60

/* ---- What the bed carries ---- */

/* A node over the bed within a step: it sinks at beta * sunk + rest. */
typedef struct
{
  double beta, rest;
} Sinking;

/* How deep a node ends that the rest of the rig would put at `sunk` while the bed pushes with
 * `force`, when it gives way by 1 / hold per newton: where the bed's own law pushes as much.
 * `sunk` at first is a guess. */
static double
settle_on_bed (const LbTree *tree, Sinking sinking, double hold, double aim, double sunk)
{
  double most = aim / hold, least = -INFINITY;

  sunk = fmin (sunk, most);
  for (int k = 0; k < MOST_ROUNDS; k++)
    {
      LbPassBedForce n = lb_pass_bed_force (tree, sunk, sinking.beta * sunk + sinking.rest);
      double excess = n.force + hold * sunk - aim;
      double slope = n.by_sunk + sinking.beta * n.by_sinking + hold;

      if (excess > 0)
        most = fmin (most, sunk);
      else
        least = fmax (least, sunk);
      double next = sunk - excess / slope;
      if (next > most || next < least)
        next = isinf (least) ? most : 0.5 * (most + least);
      if (fabs (next - sunk) <= 1e-14)
        return next;
      sunk = next;
    }
  return sunk;
}

static void
take_near_bed (LbPass *pass, LbPassNode *node, double dx, double dz)
{
  const LbTree *tree = &pass->steady->tree;
  double beyond = -LB_TREE_BED_REACH * tree->bed_softness;
  LbBedPoint bed = lb_bed_at (&tree->current.bed, node->r[LB_ALONG]);
  double sunk = -node->r[LB_UP] - bed.depth;
  double sinking = -node->v[LB_UP] - bed.slope * node->v[LB_ALONG];
  double wanted = sunk - dz - bed.slope * dx;

  node->r[LB_ALONG] += dx;
  node->r[LB_UP] += dz;
  LbBedPoint there = lb_bed_at (&tree->current.bed, node->r[LB_ALONG]);
  double straight = -node->r[LB_UP] - there.depth;
  if (fmax (sunk, straight) < beyond)
    return;
  pass->touches = true;
  double force = lb_pass_bed_force (tree, sunk, sinking).force + node->bed_rate * (wanted - sunk);
  double hold = node->bed_hold;
  Sinking law = { pass->beta,
                  pass->beta * there.depth - node->v_const[LB_UP]
                      - there.slope * (pass->beta * node->r[LB_ALONG] + node->v_const[LB_ALONG]) };
  double next = settle_on_bed (tree, law, hold, force + hold * wanted, sunk);
  node->r[LB_UP] = -next - there.depth;
}

/* ---- Slack ---- */

/* The tension of a segment that the rest of the rig would stretch to `length` under `tension`, and
 * shortens by 1 / hold per newton: where the segment's own law gives that length. */
static double
settle_tension (const LbTreeLine *line, double rest, double hold, double tension, double length)
{
  double aim = length + tension / hold, slope;
  double taut = (aim - rest) / (1 / hold + rest / line->stiffness);

  if (taut > 40 * SLACK_TENSION)
    return taut;
  double low = 0, high = 40 * SLACK_TENSION;
  /* Near the answer, so that Newton goes up to it: what a taut line would have, or a slack one that
   * gives way no more. */
  double t = taut > 0 ? taut : -SLACK_TENSION * log1p (-fmin (aim / rest, 1 - 1e-15));
  if (!(t > low && t < high))
    t = 0.1 * SLACK_TENSION;
  for (int k = 0; k < MOST_ROUNDS; k++)
    {
      double lack = aim - t / hold - rest * (1 + lb_stretch (line, t, &slope));

      if (lack > 0)
        low = fmax (low, t);
      else
        high = fmin (high, t);
      double next = t + lack / (1 / hold + rest * slope);
      if (!(next > low && next < high))
        next = 0.5 * (low + high);
      if (fabs (next - t) <= 1e-12 * t)
        break;
      t = next;
    }
  return t;
}

static void
take_tension (LbPass *pass, LbPassNode *node)
{
  const LbTreeLine *line = &pass->steady->tree.lines[node->part];
  double wanted = node->tension + node->pull, slope;

  if (lb_larger (-wanted, -node->tension) < -LB_PASS_NEARLY_SLACK)
    {
      node->tension = wanted;
      return;
    }
  pass->slack = true;
  double length =
      node->rest * (1 + lb_stretch (line, node->tension, &slope)) + node->compliance * node->pull;
  node->tension = settle_tension (line, node->rest, node->held_by, wanted, length);
}

void
lb_pass_take (LbPass *pass)
{
  const LbTree *tree = &pass->steady->tree;

  pass->touches = pass->slack = false;
  for (size_t i = 1; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      double dx = node->move[LB_ALONG], dz = node->move[LB_UP];

      node->r[LB_ACROSS] += node->move[LB_ACROSS];
      if (lb_tree_near_bed (tree, node->r[LB_UP] + (dz < 0 ? dz : 0)))
        take_near_bed (pass, node, dx, dz);
      else
        {
          node->r[LB_ALONG] += dx;
          node->r[LB_UP] += dz;
        }
      take_tension (pass, node);
    }
}
