/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where a moving slider leads: the next answer foreseen from the last few. */
#include "steady_solver.h"

#include <string.h>

/* No answer counts more than this many times over in what is foreseen. */
#define MOST_WEIGHT 12

static void
read_sliders (double *value, const LbSetup *setup)
{
  const double now[LB_STEADY_SLIDERS] = {
    setup->river.surface_current, setup->boat.speed_over_ground,
    setup->rig.weight.mass,       setup->rig.line_out.value,
    setup->river.depth,           setup->boat.reel_height,
  };

  memcpy (value, now, sizeof now);
}

/* The one slider that has moved from every answer to the next and on to `next`; -1 if others have.
 */
static int
moving_slider (const LbSteadyForesight *foresight, const double *next, size_t answers)
{
  int moving = -1;

  for (int i = 0; i < LB_STEADY_SLIDERS; i++)
    for (size_t k = 0; k < answers; k++)
      if (foresight->value[k][i] != (k == 0 ? next[i] : foresight->value[k - 1][i]))
        {
          if (moving >= 0 && moving != i)
            return -1;
          moving = i;
        }
  return moving;
}

/* How much each of the last answers counts at `next`: the polynomial through them (Lagrange). False
 * where that says nothing. */
static bool
find_weights (const LbSteadyForesight *foresight,
              const double *next,
              size_t answers,
              double *weight)
{
  int slider = moving_slider (foresight, next, answers);

  if (slider < 0)
    return false;
  for (size_t k = 0; k < answers; k++)
    {
      weight[k] = 1;
      for (size_t j = 0; j < answers; j++)
        if (j != k)
          weight[k] *= (next[slider] - foresight->value[j][slider])
                       / (foresight->value[k][slider] - foresight->value[j][slider]);
      if (!(fabs (weight[k]) <= MOST_WEIGHT))
        return false;
    }
  return true;
}

bool
lb_steady_foresee (LbSteady *steady, const LbSetup *setup)
{
  LbTree *tree = &steady->tree;
  const LbSteadyForesight *foresight = &steady->foresight;
  size_t answers = foresight->answers < LB_TREE_ANSWERS ? foresight->answers : LB_TREE_ANSWERS;
  double next[LB_STEADY_SLIDERS], weight[LB_TREE_ANSWERS], line_out = 0;

  read_sliders (next, setup);
  while (answers >= 2 && !find_weights (foresight, next, answers, weight))
    answers--;
  if (answers < 2)
    return false;
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbVec3 position = { 0, 0, 0 };
      double tension = 0;
      for (size_t k = 0; k < answers; k++)
        {
          position = lb_vec3_add_scaled (position, weight[k], tree->memory[k][i].position);
          tension += weight[k] * tree->memory[k][i].tension;
        }
      tree->nodes[i].position = position;
      tree->nodes[i].tension = fmax (tension, 0.5 * tree->memory[0][i].tension);
    }
  for (size_t k = 0; k < answers; k++)
    line_out += weight[k] * foresight->line_out[k];
  if (tree->holding)
    tree->line_out = line_out;
  return true;
}

void
lb_steady_forget (LbSteady *steady)
{
  steady->foresight.answers = 0;
}

void
lb_steady_remember (LbSteady *steady, const LbSetup *setup)
{
  LbTree *tree = &steady->tree;
  LbSteadyForesight *foresight = &steady->foresight;
  LbTreeState *oldest = tree->memory[LB_TREE_ANSWERS - 1];

  for (int k = LB_TREE_ANSWERS - 1; k > 0; k--)
    {
      tree->memory[k] = tree->memory[k - 1];
      memcpy (foresight->value[k], foresight->value[k - 1], sizeof foresight->value[k]);
      foresight->line_out[k] = foresight->line_out[k - 1];
    }
  tree->memory[0] = oldest;
  lb_tree_keep (tree, 0);
  read_sliders (foresight->value[0], setup);
  foresight->line_out[0] = tree->line_out;
  foresight->answers++;
}
