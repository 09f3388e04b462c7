/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

#define SWEEPS 10
#define HARDEN_ITERATIONS 30
#define FAST_FLOW 5.0          /* m/s, that a hard case is started from */
#define FIRST_SLOWING 0.5      /* share that is kept of it at the first step */
#define LEAST_SLOWING 0.999    /* slower than this is given up */
#define SLOWEST_EXTRA 1e-3     /* m/s */
#define FIRST_PSEUDO_TIME 0.02 /* s */
#define TRY_NEWTON_SPEED 0.02  /* m/s, of the fastest node: below it Newton is tried */
#define LARGEST_PSEUDO_SIZE 3  /* of a step that is taken, against the one aimed at */
#define MOST_REFUSED 2
#define LEAST_GROWTH 1.6

/* Everything straight downstream from the reel, level or sloping down to just under the surface: a
 * start that touches nothing. */
static void
stretch_out (LbTree *tree)
{
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      LbVec3 from = tree->nodes[node->parent].position;
      double rest = lb_tree_rest (tree, i);
      double fall = fmin (fmax (from.z + 0.02, 0), 0.7 * rest);

      node->position = from;
      node->position.x += sqrt (rest * rest - fall * fall);
      node->position.z -= fall;
      node->tension = 0.01;
    }
}

/* Straight down from the reel, leaders straight downstream: the start of a cold solve. */
static void
hang_straight (LbTree *tree)
{
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];
      bool leader = node->part >= LB_PART_LEADER_0;

      node->move[LB_ALONG] = leader ? 1 : 0;
      node->move[LB_UP] = leader ? 0 : -1;
      node->move[LB_ACROSS] = 0;
      node->position = tree->nodes[node->parent].position;
      node->position.x += leader ? lb_tree_rest (tree, i) : 0;
      node->position.z -= leader ? 0 : lb_tree_rest (tree, i);
      double bed = -lb_bed_at (&tree->current.bed, node->position.x).depth;
      node->position.z = fmax (node->position.z, bed);
      node->tension = 0;
    }
}

void
lb_steady_start_cold (LbTree *tree)
{
  hang_straight (tree);
  for (size_t k = 0; k < SWEEPS; k++)
    lb_tree_sweep (tree, k == 0 ? 1 : 0.38);
}

/* The next pseudo-time step after one of `size`, 1 being the size aimed at. `growth` is how fast it
 * may grow, which every step that came out too large makes less. */
static double
next_pseudo_time (double pseudo_time, double size, double *growth)
{
  if (size > 1)
    *growth = fmax (LEAST_GROWTH, 1 + 0.7 * (*growth - 1));
  double factor = fmin (*growth, 1 / (size + 1e-9));
  return fmin (fmax (pseudo_time * fmax (factor, 0.2), 1e-6), 1e8);
}

/* Lets the rig settle in pseudo-time, ever faster, until Newton takes over. Finds a stable shape
 * from anywhere. */
static bool
settle (LbSteady *steady, double turn, size_t iterations)
{
  LbTree *tree = &steady->tree;
  double pseudo_time = FIRST_PSEUDO_TIME, growth = 3, try_below = TRY_NEWTON_SPEED;
  int refused = 0;

  for (size_t k = 0; k < iterations && lb_steady_may_go_on (steady); k++)
    {
      LbTreeStep step = lb_tree_step (tree, pseudo_time);
      double size = fmax (step.turn / turn, step.move / (0.3 * lb_steady_largest_move (tree)));
      double speed = step.move / pseudo_time;

      if (!step.finite)
        return false;
      /* A step too large is tried again shorter, but not for ever: lengths that do not fit yet have
       * to be put right whatever the time step. */
      refused = size > LARGEST_PSEUDO_SIZE && refused < MOST_REFUSED ? refused + 1 : 0;
      if (refused == 0)
        lb_tree_take (tree, lb_steady_take_factor (tree, &step));
      pseudo_time = next_pseudo_time (pseudo_time, size, &growth);
      if (size < 1 && speed < try_below)
        {
          lb_tree_keep (tree, LB_TREE_MEMORY_TRIAL);
          if (lb_steady_newton (steady, HARDEN_ITERATIONS))
            return true;
          lb_tree_restore (tree, LB_TREE_MEMORY_TRIAL);
          try_below = 0.1 * speed;
        }
    }
  return false;
}

/* One way to a hard case: from where, on how soft a bed, and how carefully. */
typedef struct
{
  bool stretched_out; /* else from the rough shape of the sweeps */
  double softness;    /* m */
  double turn;        /* of any segment in one pseudo-time step */
  size_t iterations;
} Approach;

static const Approach first_approach = { false, 0.01, 0.4, 400 };

static const Approach more_approaches[] = {
  { true, 0.01, 0.4, 400 },  { false, 0.05, 0.15, 1500 }, { true, 0.002, 0.15, 1500 },
  { true, 0.05, 0.4, 1500 }, { false, 4e-5, 0.1, 3000 },  { true, 0.0005, 0.05, 4000 },
};

static void
start (LbTree *tree, bool stretched_out)
{
  if (stretched_out)
    stretch_out (tree);
  else
    lb_steady_start_cold (tree);
}

/* Solves on a soft bed and hardens it. */
static bool
solve_softly (LbSteady *steady, const Approach *approach)
{
  LbTree *tree = &steady->tree;

  tree->bed_softness = approach->softness;
  start (tree, approach->stretched_out);
  bool solved = lb_steady_newton (steady, HARDEN_ITERATIONS);
  if (!solved)
    {
      start (tree, approach->stretched_out);
      solved = settle (steady, approach->turn, approach->iterations);
    }
  if (solved)
    {
      lb_tree_harden (tree, LB_TREE_BED_SOFTNESS);
      lb_tree_keep (tree, LB_TREE_MEMORY_TRIAL);
      solved = lb_steady_newton (steady, HARDEN_ITERATIONS);
      if (!solved)
        {
          lb_tree_restore (tree, LB_TREE_MEMORY_TRIAL);
          solved = settle (steady, approach->turn, approach->iterations);
        }
    }
  tree->bed_softness = LB_TREE_BED_SOFTNESS;
  return solved;
}

/* Solves in a much faster flow, which lifts the whole rig and stretches it out, and slows it down
 * step by step. */
static bool
solve_from_fast (LbSteady *steady)
{
  LbTree *tree = &steady->tree;
  double share = FIRST_SLOWING;
  bool solved;

  tree->extra_flow = FAST_FLOW;
  stretch_out (tree);
  solved = settle (steady, first_approach.turn, first_approach.iterations);
  while (solved && tree->extra_flow > 0)
    {
      double flow = tree->extra_flow;

      lb_tree_keep (tree, LB_TREE_MEMORY_TRIAL);
      tree->extra_flow = share * flow > SLOWEST_EXTRA ? share * flow : 0;
      if (lb_steady_newton (steady, LB_STEADY_DIRECT_ITERATIONS))
        share = fmax (share * share, FIRST_SLOWING);
      else
        {
          lb_tree_restore (tree, LB_TREE_MEMORY_TRIAL);
          tree->extra_flow = flow;
          share = sqrt (share);
          solved = share < LEAST_SLOWING;
        }
    }
  tree->extra_flow = 0;
  return solved;
}

bool
lb_steady_solve_given (LbSteady *steady, bool warm)
{
  LbTree *tree = &steady->tree;

  if (warm && lb_steady_newton (steady, LB_STEADY_DIRECT_ITERATIONS))
    return true;
  lb_steady_start_cold (tree);
  if (lb_steady_newton (steady, LB_STEADY_DIRECT_ITERATIONS))
    return true;
  if (solve_softly (steady, &first_approach) || solve_from_fast (steady))
    return true;
  for (size_t i = 0; steady->thorough && i < sizeof more_approaches / sizeof *more_approaches; i++)
    if (solve_softly (steady, &more_approaches[i]))
      return true;
  return false;
}
