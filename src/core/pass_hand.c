/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_private.h"

#define PI 3.14159265358979323846

/* A hand that follows the bed lets out, and takes in, at most this fast, m/s, and gets there at
 * this much, m/s2: estimates of an unhurried hand. */
#define HAND_SPEED 0.4
#define HAND_PUSH 1.5
#define HAND_BRAKE 1.0 /* m/s2, at which it begins to slow down */
#define SMOOTHLY 0.1   /* s */

/* What may be left of a stroke, m, and how slow a hand is at rest, m/s. */
#define STROKE_LEFT 1e-4
#define AT_REST 2e-3

/* The weight is felt to touch when the bed carries this share of what it weighs in water. */
#define FELT 0.25

/* The line is never taken in to less than this, m. */
#define SHORTEST_LINE LB_STEADY_SHORTEST_LINE

/* A hand stops with this much out, m: before the end of the line stops it. */
#define LINE_KEPT (SHORTEST_LINE + 0.005)

/* Taken in and let out like a raised cosine. The first stroke swells from nothing, with a push that
 * never jumps, so that the hand starts as smoothly as it goes on. */
static double
lifted (const LbHand *hand, double time)
{
  double part = time / hand->period, begun = fmin (2 * part, 1);
  double swell = begun * begun * begun * (10 - 15 * begun + 6 * begun * begun);

  return hand->stroke * swell * (0.5 - 0.5 * cos (2 * PI * part));
}

double
lb_pass_hand_line (const LbPass *pass, double time)
{
  const LbHand *hand = &pass->plan.hand;
  const LbPassFollowing *now = &pass->following;
  double since = time - pass->time;

  switch (hand->motion)
    {
    case LB_HAND_LIFT_AND_DROP:
      return -lifted (hand, time);
    case LB_HAND_FOLLOW_BED:
      return now->line + since * (now->rate + 0.5 * since * now->change);
    case LB_HAND_HOLD:
      break;
    }
  return 0;
}

/* What the hand can still take in, m, of its stroke or of the line. */
static double
left_of_stroke (const LbPass *pass)
{
  return fmin (pass->plan.hand.stroke - pass->following.taken_in, pass->line_out - LINE_KEPT);
}

/* m/s2, so that a step of any length gets to a rate smoothly. */
static double
go_over_to (const LbPassFollowing *now, double rate)
{
  return (rate - now->rate) / SMOOTHLY;
}

/* The change of rate, m/s2, that the hand would have now. */
static double
wanted_change (const LbPass *pass)
{
  const LbPassFollowing *now = &pass->following;
  double left = fmax (left_of_stroke (pass), STROKE_LEFT);

  if (now->phase == LB_PASS_LOWERING)
    return go_over_to (now, HAND_SPEED);
  if (now->phase == LB_PASS_HOLDING)
    return go_over_to (now, 0);
  /* Slowing down so that it comes to rest where the stroke ends. */
  if (now->rate < 0 && now->rate * now->rate > 2 * HAND_BRAKE * left)
    return 0.5 * now->rate * now->rate / left;
  return go_over_to (now, -HAND_SPEED);
}

static bool
weight_is_felt (const LbPass *pass)
{
  const LbTree *tree = &pass->steady->tree;
  const LbPassNode *weight = &pass->nodes[tree->weight];
  const LbTreeBody *body = &tree->bodies[0];
  LbBedPoint bed = lb_bed_at (&tree->current.bed, weight->r[LB_ALONG]);
  double sunk = -weight->r[LB_UP] - bed.depth;
  double sinking = -weight->v[LB_UP] - bed.slope * weight->v[LB_ALONG];

  return lb_pass_bed_force (tree, sunk, sinking).force
         > FELT * (body->weight_in_air - body->buoyancy);
}

static bool
at_shortest (const LbPass *pass)
{
  return pass->line_out <= SHORTEST_LINE && pass->following.rate <= 0;
}

static void
change_phase (LbPass *pass)
{
  LbPassFollowing *now = &pass->following;
  LbPassPhase next = now->phase;

  if (now->phase == LB_PASS_HOLDING && fabs (now->rate) > AT_REST)
    now->since = pass->time;
  if (now->phase == LB_PASS_LOWERING && weight_is_felt (pass))
    next = LB_PASS_LIFTING;
  else if (now->phase == LB_PASS_LIFTING
           && (left_of_stroke (pass) <= STROKE_LEFT || at_shortest (pass)))
    next = LB_PASS_HOLDING;
  else if (now->phase == LB_PASS_HOLDING && pass->time - now->since >= pass->plan.hand.period)
    next = LB_PASS_LOWERING;
  if (next == now->phase)
    return;
  now->phase = next;
  now->since = pass->time;
  now->taken_in = 0;
}

void
lb_pass_hand_decide (LbPass *pass)
{
  LbPassFollowing *now = &pass->following;
  double step = pass->last_step;

  if (pass->plan.hand.motion != LB_HAND_FOLLOW_BED)
    return;
  double moved = step * (now->rate + 0.5 * step * now->change);
  now->line += moved;
  now->rate += step * now->change;
  /* From the longest: the hand goes on a little before it turns. */
  if (now->phase == LB_PASS_LIFTING)
    now->taken_in = fmax (now->taken_in - moved, 0);
  change_phase (pass);
  now->change = fmin (fmax (wanted_change (pass), -HAND_PUSH), HAND_PUSH);
  if (at_shortest (pass) && now->change <= 0)
    now->rate = now->change = 0;
}
