/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "steady_solver.h"

#include <stdlib.h>

/* The answer is accepted when no force above the first of these, N, is left anywhere; or, when a
 * step can do no better, above the second. */
#define FORCE_TOLERANCE 2e-10
#define FORCE_LIMIT 6e-9
#define SMALLEST_MOVE 1e-9 /* m */

/* And no misfit of a segment's length, or of the height of the weight, above these, m. */
#define LENGTH_TOLERANCE 1e-10
#define HEIGHT_TOLERANCE 1e-8

/* A Newton step this small, m and N, leaves an error far below the tolerances: it is squared by
 * each step. */
#define LAST_MOVE 2e-5
#define LAST_PULL 2e-4

#define LARGEST_MOVE 1.0     /* m, in one Newton step, */
#define MOVE_PER_LINE 0.06   /* and per m of line out */
#define LARGEST_TURN 0.7     /* of any segment in one step, as a share of its length */
#define DIRECT_ITERATIONS 20 /* before Newton from the present state is given up */
#define SWEEPS 10
#define HARDEN_ITERATIONS 30
#define FAST_FLOW 5.0       /* m/s, that a hard case is started from */
#define FIRST_SLOWING 0.5   /* share that is kept of it at the first step */
#define LEAST_SLOWING 0.999 /* slower than this is given up */
#define SLOWEST_EXTRA 1e-3  /* m/s */
#define SEARCH_TRIALS 80    /* of the line out */
#define SEARCH_GROWTH 1.5
#define MOST_WAYS_BACK 8
#define FIRST_PSEUDO_TIME 0.02 /* s */
#define TRY_NEWTON_SPEED 0.02  /* m/s, of the fastest node: below it Newton is tried */
#define LARGEST_PSEUDO_SIZE 3  /* of a step that is taken, against the one aimed at */
#define MOST_REFUSED 2
#define LEAST_GROWTH 1.6

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

/* Evaluates the forces once: fills the shape and tells whether it is the answer, after a step of
 * `move`. */
static bool
balanced (LbSteady *steady, double move)
{
  LbTree *tree = &steady->tree;
  double gap, residual = lb_tree_forces (tree, &steady->shape, &gap);

  steady->statistics.residual = residual;
  return residual <= (move > SMALLEST_MOVE ? FORCE_TOLERANCE : FORCE_LIMIT)
         && gap <= LENGTH_TOLERANCE
         && (!tree->holding
             || fabs (lb_tree_weight_height (tree) - tree->hold_height) <= HEIGHT_TOLERANCE);
}

static double
largest_move (const LbTree *tree)
{
  return LARGEST_MOVE + MOVE_PER_LINE * tree->line_out;
}

/* The share of a step that may be taken without turning any segment too far. */
static double
take_factor (const LbTree *tree, const LbTreeStep *step)
{
  double largest = fmax (step->move, fabs (step->line));
  double limit = largest_move (tree);
  double by_move = largest > limit ? limit / largest : 1;

  return step->turn > LARGEST_TURN ? fmin (by_move, LARGEST_TURN / step->turn) : by_move;
}

/* Newton from the present state; true when it has arrived. */
static bool
newton (LbSteady *steady, size_t iterations)
{
  LbTree *tree = &steady->tree;
  double last_move = INFINITY;

  for (size_t k = 0; k < iterations && steady->iterations < steady->limit; k++)
    {
      LbTreeStep step = lb_tree_step (tree, INFINITY);
      steady->iterations++;
      if (!step.finite)
        return false;
      double largest = fmax (step.move, fabs (step.line));
      double factor = take_factor (tree, &step);
      /* Steps that do not get smaller go to and fro across a kink. */
      if (k > 4 && step.move > 0.8 * last_move)
        factor *= 0.5;
      last_move = step.move;
      lb_tree_take (tree, factor);
      if (tree->holding)
        tree->line_out =
            fmin (fmax (tree->line_out, LB_STEADY_SHORTEST_LINE), LB_STEADY_LONGEST_LINE);
      if (largest <= LAST_MOVE && step.pull <= LAST_PULL && balanced (steady, largest))
        return true;
    }
  return false;
}

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

/* Rough shape from nothing: loads give directions, directions give places, a few times over. */
static void
start_cold (LbTree *tree)
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

  for (size_t k = 0; k < iterations && steady->iterations < steady->limit; k++)
    {
      LbTreeStep step = lb_tree_step (tree, pseudo_time);
      double size = fmax (step.turn / turn, step.move / (0.3 * largest_move (tree)));
      double speed = step.move / pseudo_time;

      steady->iterations++;
      if (!step.finite)
        return false;
      /* A step too large is tried again shorter, but not for ever: lengths that do not fit yet have
       * to be put right whatever the time step. */
      refused = size > LARGEST_PSEUDO_SIZE && refused < MOST_REFUSED ? refused + 1 : 0;
      if (refused == 0)
        lb_tree_take (tree, take_factor (tree, &step));
      pseudo_time = next_pseudo_time (pseudo_time, size, &growth);
      if (size < 1 && speed < try_below)
        {
          lb_tree_keep (tree);
          if (newton (steady, HARDEN_ITERATIONS))
            return true;
          lb_tree_restore (tree);
          try_below = 0.1 * speed;
        }
    }
  return false;
}

/* ---- Line out given ---- */

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
    start_cold (tree);
}

/* Solves on a soft bed and hardens it. */
static bool
solve_softly (LbSteady *steady, const Approach *approach)
{
  LbTree *tree = &steady->tree;

  tree->bed_softness = approach->softness;
  start (tree, approach->stretched_out);
  bool solved = newton (steady, HARDEN_ITERATIONS);
  if (!solved)
    {
      start (tree, approach->stretched_out);
      solved = settle (steady, approach->turn, approach->iterations);
    }
  if (solved)
    {
      lb_tree_harden (tree, LB_TREE_BED_SOFTNESS);
      lb_tree_keep (tree);
      solved = newton (steady, HARDEN_ITERATIONS);
      if (!solved)
        {
          lb_tree_restore (tree);
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

      lb_tree_keep (tree);
      tree->extra_flow = share * flow > SLOWEST_EXTRA ? share * flow : 0;
      if (newton (steady, DIRECT_ITERATIONS))
        share = fmax (share * share, FIRST_SLOWING);
      else
        {
          lb_tree_restore (tree);
          tree->extra_flow = flow;
          share = sqrt (share);
          solved = share < LEAST_SLOWING;
        }
    }
  tree->extra_flow = 0;
  return solved;
}

static bool
solve_given (LbSteady *steady, bool warm)
{
  LbTree *tree = &steady->tree;

  steady->statistics.warm = warm && newton (steady, DIRECT_ITERATIONS);
  if (steady->statistics.warm)
    return true;
  start_cold (tree);
  if (newton (steady, DIRECT_ITERATIONS))
    return true;
  if (solve_softly (steady, &first_approach) || solve_from_fast (steady))
    return true;
  for (size_t i = 0; steady->thorough && i < sizeof more_approaches / sizeof *more_approaches; i++)
    if (solve_softly (steady, &more_approaches[i]))
      return true;
  return false;
}

/* ---- Weight held: the line out is an unknown ---- */

static bool
hold_directly (LbSteady *steady, bool warm)
{
  LbTree *tree = &steady->tree;

  steady->statistics.warm = warm;
  if (!warm)
    start_cold (tree);
  return newton (steady, DIRECT_ITERATIONS) && tree->line_out < LB_STEADY_LONGEST_LINE
         && tree->line_out > LB_STEADY_SHORTEST_LINE;
}

/* How far the weight is above where it should be with `line_out`; true when that was found. */
static bool
height_error (LbSteady *steady, double line_out, double *error)
{
  steady->tree.holding = false;
  steady->tree.line_out = line_out;
  if (!solve_given (steady, true))
    return false;
  *error = lb_tree_weight_height (&steady->tree) - steady->tree.hold_height;
  return true;
}

/* The same, but where nothing is found the trial goes half the way back to `sound`, a line out that
 * was solved, a few times over. */
static bool
height_error_towards (LbSteady *steady, double sound, double *trial, double *error)
{
  for (int k = 0; k < MOST_WAYS_BACK; k++)
    {
      if (height_error (steady, *trial, error))
        return true;
      *trial = 0.5 * (sound + *trial);
    }
  return false;
}

/* From the rig with the line out that the rough shape came to: a sound start for Newton. Leaves
 * that rig and its `*error` when Newton fails; true when that much was found. */
static bool
solve_guess (LbSteady *steady, double *error)
{
  LbTree *tree = &steady->tree;

  tree->holding = true;
  start_cold (tree);
  return height_error (steady, fmin (tree->line_out, LB_STEADY_LONGEST_LINE), error);
}

/* Newton on the line out from the present trial, if it stays between the two ends. */
static bool
hold_between (LbSteady *steady, double low, double high)
{
  LbTree *tree = &steady->tree;
  double trial = tree->line_out;

  tree->holding = true;
  lb_tree_keep (tree);
  if (newton (steady, DIRECT_ITERATIONS) && tree->line_out >= low && tree->line_out <= high)
    return true;
  lb_tree_restore (tree);
  tree->holding = false;
  tree->line_out = trial;
  return false;
}

/* Between a line that is too short and one that is long enough, closes in on the one that is right:
 * by Newton, and while that fails by false position that halves the weight of an end that stays
 * (Illinois). */
static LbStatus
close_in (LbSteady *steady, double low, double low_error, double high, double high_error)
{
  for (int k = 0; k < SEARCH_TRIALS && high - low > 1e-12 * high; k++)
    {
      double error, trial = low + (high - low) * low_error / (low_error - high_error);
      if (k % 2 == 0 && hold_between (steady, low, high))
        return LB_STATUS_OK;
      if (!(trial > low && trial < high))
        trial = 0.5 * (low + high);
      if (!height_error_towards (steady, low, &trial, &error))
        return LB_STATUS_NO_CONVERGENCE;
      if (fabs (error) <= HEIGHT_TOLERANCE)
        return LB_STATUS_OK;
      if (error > 0)
        {
          low = trial;
          low_error = error;
          high_error *= 0.5;
        }
      else
        {
          high = trial;
          high_error = error;
          low_error *= 0.5;
        }
    }
  /* The height leaps here: with a hair more line the weight is lower than asked. */
  return LB_STATUS_HEIGHT_LEAPS;
}

/* Finds a line out that holds the weight at its height by trial: from the guess at hand longer and
 * longer until it is low enough, or shorter until it is high enough, then closing in. */
static LbStatus
hold_by_search (LbSteady *steady, double error)
{
  double guess = steady->tree.line_out, trial = guess, last, last_error;
  bool longer = error > 0;

  do
    {
      if (longer && trial >= LB_STEADY_LONGEST_LINE)
        return LB_STATUS_LINE_AT_LONGEST;
      if (!longer && trial <= LB_STEADY_SHORTEST_LINE)
        return LB_STATUS_LINE_AT_SHORTEST;
      last = trial;
      last_error = error;
      trial = longer ? fmin (SEARCH_GROWTH * trial + 0.2, LB_STEADY_LONGEST_LINE)
                     : fmax (trial / SEARCH_GROWTH - 0.2, LB_STEADY_SHORTEST_LINE);
      if (!height_error_towards (steady, last, &trial, &error))
        return LB_STATUS_NO_CONVERGENCE;
    }
  while ((error > 0) == longer);
  return longer ? close_in (steady, last, last_error, trial, error)
                : close_in (steady, trial, error, last, last_error);
}

LbStatus
lb_steady_solve_mesh (LbSteady *steady, const LbSetup *setup, bool warm)
{
  LbTree *tree = &steady->tree;
  const LbLineOut *line_out = &setup->rig.line_out;

  tree->holding = line_out->mode != LB_LINE_OUT_GIVEN;
  tree->hold_height = line_out->mode == LB_LINE_OUT_WEIGHT_ABOVE_BED ? line_out->value : 0;
  if (!tree->holding)
    {
      tree->line_out = line_out->value;
      return solve_given (steady, warm) ? LB_STATUS_OK : LB_STATUS_NO_CONVERGENCE;
    }
  if (warm && hold_directly (steady, true))
    return LB_STATUS_OK;
  double first_guess = fmax (setup->river.depth + setup->boat.reel_height - setup->rig.shank_length
                                 - tree->hold_height,
                             LB_STEADY_SHORTEST_LINE);
  tree->line_out = first_guess;
  if (hold_directly (steady, false))
    return LB_STATUS_OK;
  tree->line_out = first_guess;
  double error;
  if (!solve_guess (steady, &error))
    return LB_STATUS_NO_CONVERGENCE;
  if (hold_between (steady, LB_STEADY_SHORTEST_LINE, LB_STEADY_LONGEST_LINE))
    return LB_STATUS_OK;
  return hold_by_search (steady, error);
}

LbStatus
lb_steady_solve_plan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, bool warm)
{
  bool kept;
  LbStatus status = lb_mesh_build (&steady->tree, setup, plan, &kept);

  if (status == LB_STATUS_OK)
    status = lb_shape_resize (&steady->shape, steady->tree.n_nodes);
  if (status == LB_STATUS_OK)
    status = lb_steady_solve_mesh (steady, setup, kept && steady->solved && warm);
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

/* Tries until one succeeds. At rest over the ground any friction up to the most is a balance too:
 * it is called in where a rig without friction would slide about and find no place. */
static LbStatus
solve_somehow (LbSteady *steady, const LbSetup *setup, LbMeshPlan plan, bool warm)
{
  size_t segments = plan.segments;
  bool at_rest = setup->boat.speed_over_ground == 0 && setup->river.bed_friction > 0;
  LbStatus status = LB_STATUS_NO_CONVERGENCE;

  for (size_t i = 0; i < sizeof tries / sizeof *tries && status == LB_STATUS_NO_CONVERGENCE; i++)
    {
      if (tries[i].held && !at_rest)
        continue;
      steady->thorough = tries[i].thorough;
      steady->tree.held_at_rest = tries[i].held;
      plan.segments = (size_t) ((double) segments * tries[i].segments);
      status = lb_steady_solve_plan (steady, setup, &plan, warm && i == 0);
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
  if (status != LB_STATUS_OK)
    return status;
  if (options->segments > 0)
    plan.segments = options->segments;
  steady->limit =
      options->max_iterations > 0 ? options->max_iterations : LB_STEADY_DEFAULT_ITERATIONS;
  steady->iterations = 0;
  status = options->fine ? lb_steady_solve_fine (steady, setup, &plan)
                         : solve_somehow (steady, setup, plan, !options->cold);
  steady->statistics.segments = steady->tree.n_nodes - 1;
  steady->statistics.iterations = steady->iterations;
  return status;
}
