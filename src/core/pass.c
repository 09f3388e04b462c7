/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Steps in time: the second-order backward differences (BDF2) of variable step, for the positions
 * and for the velocities. */
#include "pass_private.h"
#include "tree_math.h"

#include <string.h>

/* Newton has arrived when no more than this is left, m and N. Of shorter steps than the usual less
 * is left, for the force that a move takes goes with the square of beta; down to rounding. */
#define MOVE_LEFT 2e-8
#define USUAL_BETA (1.5 / LB_PASS_DEFAULT_STEP)
#define LEAST_MOVE_LEFT 1e-13
#define PULL_LEFT 1e-5

#define MOST_ITERATIONS 25
#define MOST_BEFORE_FACTORS 3 /* iterations with kept factors before new ones are made */
#define MOST_WITH_KEPT 4      /* iterations, after which they are made anew every time */
#define FIRST_SLOWNESS 1      /* while nothing is known of the factors */
#define LARGEST_SLOWNESS 0.3  /* that kept factors are worth keeping at */
#define LEAST_SLOWNESS 0.01
#define OLDEST_FACTORS 50 /* steps */
#define DIVERGED 50.0     /* m */

/* A step may miss what was foreseen by this much, m/s over the step and N; and is not shortened for
 * it below these, s and a share of the longest. A landing, the ringing of the wire after it and a
 * line that comes taut take some thousands of such steps. What goes on for longer, and soon a slack
 * line that flaps and snaps in the air, is followed in longer steps until it is quiet again. */
#define SPEED_LIMIT 2e-4
#define PULL_LIMIT 3e-3
#define SHORTEST_FOR_BLOW 2e-5 /* in shorter ones rounding tells */
#define SHORTEST_FOR_FLAPPING (1.0 / 8)
#define BLOW_STEPS 5000
#define SLACK_COUNTS 20 /* steps, that one with a slack line counts for */
#define QUIET (1.0 / 4) /* share of the longest step, from which on it is quiet */
#define QUIET_STEPS 20  /* that make it so for good */
#define SHORTEST 1e-8   /* and never below this share */

/* ---- The start of a step ---- */

/* Where a node would be if it went on as it does: the parabola through its last places. */
static double
foresee (const LbPassNode *node, int k, double step, double last, double last_but_one)
{
  if (!(last > 0))
    return node->r_old[k] + step * node->v_old[k];
  double rate = (node->r_old[k] - node->r1[k]) / last;
  if (!(last_but_one > 0))
    return node->r_old[k]
           + step * (node->v_old[k] + 0.5 * step / last * (node->v_old[k] - node->v1[k]));
  double before = (node->r1[k] - node->r2[k]) / last_but_one;
  return node->r_old[k] + step * (rate + (step + last) * (rate - before) / (last + last_but_one));
}

/* Backward differences with the step before: derivative = (now * new + old * last + older *
 * last but one) / step. */
typedef struct
{
  double now, old, older;
} Differences;

static Differences
find_differences (double step, double last)
{
  if (!(last > 0))
    return (Differences){ 1, -1, 0 };
  double ratio = step / last;
  return (Differences){ (1 + 2 * ratio) / (1 + ratio), -(1 + ratio), ratio * ratio / (1 + ratio) };
}

static void
set_off (LbPass *pass, double step)
{
  Differences d = find_differences (step, pass->last_step);
  double ratio = pass->last_step > 0 ? step / pass->last_step : 0;

  pass->beta = d.now / step;
  for (size_t i = 0; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      for (int k = 0; k < 3; k++)
        {
          node->v_const[k] = (d.old * node->r_old[k] + d.older * node->r1[k]) / step;
          node->a_const[k] = (d.old * node->v_old[k] + d.older * node->v1[k]) / step;
          node->guess[k] = foresee (node, k, step, pass->last_step, pass->before_last);
          node->r[k] = node->guess[k];
        }
      node->rest = node->at_zero + node->per_line * pass->line_out;
      node->tension_guess = node->tension_old + ratio * (node->tension_old - node->tension1);
      node->tension = node->tension_old;
      if (node->tension > 1e-3)
        node->tension = fmax (node->tension_guess, 0.3 * node->tension);
    }
}

/* The reel and the line out at the end of a step. */
static void
move_boat (LbPass *pass, double step, double *reel, double *course_line)
{
  double wanted = pass->course_line;

  memcpy (reel, pass->reel, sizeof pass->reel);
  lb_pass_course_go (pass, pass->time, pass->time + step, reel, &wanted);
  *course_line = lb_pass_line_course (pass, wanted);
  pass->line_out = lb_pass_line_at (pass, *course_line, pass->time + step);
}

/* ---- Newton ---- */

/* By how much the step missed what was foreseen; 1 is the limit. Of the moves the root of the mean
 * square over all mass, for what is light may swing about. */
static double
miss (const LbPass *pass, double step)
{
  double squares = 0, mass = 0, pull = 0;

  for (size_t i = 1; i < pass->n_nodes; i++)
    {
      const LbPassNode *node = &pass->nodes[i];
      for (int k = 0; k < 3; k++)
        squares += node->mass * (node->r[k] - node->guess[k]) * (node->r[k] - node->guess[k]);
      mass += node->mass;
      pull = lb_larger (pull, fabs (node->tension - node->tension_guess));
    }
  return fmax (sqrt (squares / mass) / step / SPEED_LIMIT, pull / PULL_LIMIT);
}

/* Newton for the step that was set off. */
static bool
newton (LbPass *pass)
{
  bool factor = fabs (pass->beta / pass->factored_for - 1) > 0.02 || pass->kept_for > OLDEST_FACTORS
                || !(pass->factored_for > 0);
  double last = INFINITY, faster = USUAL_BETA / pass->beta;
  double move_left = fmax (MOVE_LEFT * fmin (faster * faster, 1), LEAST_MOVE_LEFT);
  int with_these = 0;

  /* How the bed holds, friction above all, or a slack line changes from one step to the next. */
  if (pass->touches || pass->slack)
    pass->slowness = FIRST_SLOWNESS;
  for (int k = 0; k < MOST_ITERATIONS; k++)
    {
      lb_pass_rates (pass);
      LbPassChange change = lb_pass_iterate (pass, factor);
      if (factor)
        {
          pass->factored_for = pass->beta;
          pass->kept_for = 0;
          pass->slowness = FIRST_SLOWNESS;
          last = INFINITY;
          with_these = 0;
        }
      if (!change.finite || change.move > DIVERGED)
        return false;
      lb_pass_take (pass);
      double size = fmax (change.move / move_left, change.pull / PULL_LEFT);
      if (with_these > 0 && size > 0)
        pass->slowness = fmax (fmin (size / last, 0.95), LEAST_SLOWNESS);
      with_these++;
      if (pass->slowness / (1.001 - pass->slowness) * size < 1 || size < 1)
        {
          lb_pass_rates (pass);
          return true;
        }
      /* Kept factors that do no good are made anew. New ones may be on the wrong side of a kink,
       * and made every other time they always are: then they are kept no more. */
      factor = k >= MOST_WITH_KEPT || with_these >= MOST_BEFORE_FACTORS
               || (with_these > 1 && size > LARGEST_SLOWNESS * last);
      last = size;
    }
  return false;
}

/* ---- Steps ---- */

static void
remember (LbPass *pass)
{
  for (size_t i = 0; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      memcpy (node->r_old, node->r, sizeof node->r);
      memcpy (node->v_old, node->v, sizeof node->v);
      node->tension_old = node->tension;
    }
}

static void
accept (LbPass *pass, double step, const double *reel, double course_line)
{
  for (size_t i = 0; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      memcpy (node->r2, node->r1, sizeof node->r2);
      memcpy (node->r1, node->r_old, sizeof node->r1);
      memcpy (node->v1, node->v_old, sizeof node->v1);
      node->tension1 = node->tension_old;
    }
  pass->before_last = pass->last_step;
  pass->last_step = step;
  pass->time += step;
  pass->course_line = course_line;
  memcpy (pass->reel, reel, sizeof pass->reel);
  pass->kept_for++;
  pass->statistics.steps++;
  lb_pass_hand_decide (pass);
}

static void
go_back (LbPass *pass, double line_out)
{
  for (size_t i = 0; i < pass->n_nodes; i++)
    {
      LbPassNode *node = &pass->nodes[i];
      memcpy (node->r, node->r_old, sizeof node->r);
      memcpy (node->v, node->v_old, sizeof node->v);
      node->tension = node->tension_old;
      node->rest = node->at_zero + node->per_line * line_out;
    }
  pass->line_out = line_out;
  pass->statistics.refused++;
}

/* The shortest step, s, that errors are worth. */
static double
shortest_for_error (const LbPass *pass)
{
  double longest = pass->options.step;

  return fmin (longest, pass->short_steps < BLOW_STEPS
                            ? SHORTEST_FOR_BLOW
                            : fmax (SHORTEST_FOR_FLAPPING * longest, SHORTEST_FOR_BLOW));
}

/* Sets the step to be tried after one that was taken. */
static void
set_next_step (LbPass *pass, double step, double error)
{
  double longest = pass->options.step;
  bool grow = error < 0.1 || !(pass->before_last > 0) || step < 0.5 * shortest_for_error (pass);

  if (step < QUIET * longest)
    pass->short_steps += pass->slack ? SLACK_COUNTS : 1;
  else
    pass->short_steps = fmax (pass->short_steps - (double) BLOW_STEPS / QUIET_STEPS, 0);
  pass->step = fmin (grow ? 2 * step : fmin (pass->step, 2 * step), longest);
}

/* Tries one step; true when it was taken. Sets the next one to be tried. */
static bool
try_step (LbPass *pass, double step)
{
  double reel[3], course_line, before = pass->line_out, shortest = shortest_for_error (pass);

  remember (pass);
  move_boat (pass, step, reel, &course_line);
  set_off (pass, step);
  memcpy (pass->nodes[0].r, reel, sizeof reel);
  if (!newton (pass))
    {
      go_back (pass, before);
      pass->factored_for = 0;
      pass->step = 0.25 * step;
      return false;
    }
  double error = miss (pass, step);
  if (pass->before_last > 0 && error > 1 && step > 1.01 * shortest)
    {
      go_back (pass, before);
      pass->step = fmax ((error > 8 ? 0.25 : 0.5) * step, shortest);
      return false;
    }
  accept (pass, step, reel, course_line);
  set_next_step (pass, step, error);
  return true;
}

LbStatus
lb_pass_advance (LbPass *pass, double time)
{
  double shortest = pass->options.step * SHORTEST;

  if (pass->n_nodes == 0)
    return LB_STATUS_BAD_SETUP;
  while (time - pass->time > 1e-12 * fmax (1, fabs (time)))
    {
      double left = time - pass->time;
      /* As many equal steps as it takes, so that the last is not a scrap. */
      double step = left / fmax (ceil (left / pass->step - 1e-6), 1);
      bool last = step > 0.999999 * left;
      if (!try_step (pass, step) && pass->step < shortest)
        return LB_STATUS_NO_CONVERGENCE;
      if (last && pass->time > time - 0.5 * step)
        pass->time = time;
      if (pass->options.cancel != NULL
          && pass->options.cancel (pass->options.cancel_data, pass->time))
        return LB_STATUS_CANCELLED;
    }
  return LB_STATUS_OK;
}
