/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hang_up.h"

#include "current.h"

/* After the hand's limit nothing is known to break: told on for half the time it took to get there.
 */
#define TOLD_ON 1.5

/* The boat as the current at the reel takes it along at once. */
static double
drift (const LbSetup *setup)
{
  LbCurrent current;

  lb_current_init (&current, &setup->river);
  return lb_current_at (&current, setup->boat.position, 0).speed;
}

static double
end_of (const LbSnagTimes *times)
{
  double end = 0;

  if (lb_is_set (times->until_breaks))
    end = times->until_breaks;
  else if (lb_is_set (times->until_hand))
    end = TOLD_ON * times->until_hand;
  return fmin (end, LB_HANG_UP_LONGEST);
}

LbHangUp
lb_hang_up_at (const LbSetup *setup, const LbShape *shape, size_t lure, bool motor_stopped)
{
  size_t node = lure == 0 ? shape->weight : shape->lure[lure - 1];
  LbHangUp self = {
    .snag = lb_snag_hold (setup, shape, node),
    .speed = motor_stopped ? -drift (setup) : setup->boat.speed_over_ground,
  };

  self.times = lb_snag_times (&self.snag, &setup->rig, self.speed, LB_HAND_LIMIT);
  self.end = end_of (&self.times);
  return self;
}

LbHangUp
lb_hang_up (const LbResult *result, size_t lure, bool motor_stopped)
{
  return lb_hang_up_at (lb_result_get_setup (result), lb_result_get_shape (result), lure,
                        motor_stopped);
}

double
lb_hang_up_pull (const LbHangUp *self, double time)
{
  if (!(time > 0))
    return self->snag.pull_now;
  return lb_snag_pull (&self->snag, self->speed, time);
}

bool
lb_hang_up_comes (double time)
{
  return lb_is_set (time) && time < LB_HANG_UP_FAR_OFF;
}

double
lb_hang_up_until (const LbHangUp *self)
{
  return fmin (self->times.until_hand, self->times.until_breaks);
}
