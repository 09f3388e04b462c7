/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "part_order.h"

#define LEADER_PARTS 3

static const LbPickKind before[] = { LB_PICK_REEL, LB_PICK_MAINLINE, LB_PICK_SHANK };
static const LbPickKind of_leader[LEADER_PARTS] = {
  LB_PICK_ATTACHMENT,
  LB_PICK_LEADER,
  LB_PICK_LURE,
};
static const LbPickKind after[] = {
  LB_PICK_WEIGHT, LB_PICK_CURRENT, LB_PICK_BOAT, LB_PICK_BAND_LOW, LB_PICK_BAND_HIGH, LB_PICK_BED,
};

#define N_BEFORE ((int) G_N_ELEMENTS (before))
#define N_AFTER ((int) G_N_ELEMENTS (after))

static int
n_parts (const LbSetup *setup)
{
  return N_BEFORE + LEADER_PARTS * (int) setup->rig.n_leaders + N_AFTER
         + (int) setup->river.n_bed_points;
}

static LbPickKind
part_at (const LbSetup *setup, int place, int *index)
{
  int in_leaders = LEADER_PARTS * (int) setup->rig.n_leaders;

  *index = 0;
  if (place < N_BEFORE)
    return before[place];
  place -= N_BEFORE;
  if (place < in_leaders)
    {
      *index = place / LEADER_PARTS;
      return of_leader[place % LEADER_PARTS];
    }
  place -= in_leaders;
  if (place < N_AFTER)
    return after[place];
  *index = place - N_AFTER;
  return LB_PICK_BED_POINT;
}

/* -1 when it is not among them. */
static int
place_of (const LbSetup *setup, LbPickKind kind, int index)
{
  for (int place = 0; place < n_parts (setup); place++)
    {
      int number;

      if (part_at (setup, place, &number) == kind && number == index)
        return place;
    }
  return -1;
}

void
lb_part_next (
    const LbSetup *setup, LbPickKind kind, int index, int direction, LbPickKind *next, int *number)
{
  int n = n_parts (setup);
  int at = direction > 1 || direction < -1 ? -1 : place_of (setup, kind, index);

  if (at < 0)
    at = direction > 0 ? 0 : n - 1;
  else
    at = (at + direction + n) % n;
  *next = part_at (setup, at, number);
}
