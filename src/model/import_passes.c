/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the boat turned back. A bend of the river turns it too, but slower: over LOOK metres to
 * either side a bend of a radius above LOOK / TURN (30 m) does not count. */
#include "import_track.h"

#include <math.h>

#define LOOK 60.0      /* m along the track */
#define LEAST_LOOK 8.0 /* m: at the ends, where there is less */
#define TURN 115.0     /* degrees */

typedef struct
{
  const LbTrack *track;
  guint back, ahead; /* legs: LOOK metres before and behind */
} Window;

static guint
fix_of (const LbTrack *track, guint leg)
{
  return g_array_index (track->legs, guint, leg);
}

static double
way (const LbTrack *track, guint a, guint b)
{
  return track->along[fix_of (track, b)] - track->along[fix_of (track, a)];
}

/* The turn at leg `k`, which must rise from call to call. */
static double
turn_at (Window *window, guint k, double *reach)
{
  const LbTrack *track = window->track;

  while (way (track, window->back, k) > LOOK)
    window->back++;
  while (window->ahead + 1 < track->legs->len && way (track, k, window->ahead) < LOOK)
    window->ahead++;
  if (way (track, window->back, k) < LEAST_LOOK || way (track, k, window->ahead) < LEAST_LOOK)
    return 0;
  return lb_track_turn (track, fix_of (track, window->back), fix_of (track, k),
                        fix_of (track, window->ahead), reach);
}

typedef struct
{
  gsize first, last; /* fixes */
  gsize count;
} Passes;

static void
end_pass (const LbTrack *track, Passes *longest, gsize first, gsize last)
{
  longest->count++;
  if (longest->count == 1
      || track->along[last] - track->along[first]
             > track->along[longest->last] - track->along[longest->first])
    {
      longest->first = first;
      longest->last = last;
    }
}

gsize
lb_track_longest_pass (const LbTrack *track, gsize *first, gsize *last)
{
  Window window = { track, 0, 0 };
  Passes longest = { 0 };
  gsize begun = 0, furthest = 0;
  double most = 0;

  for (guint k = 1; k + 1 < track->legs->len; k++)
    {
      double reach = 0;

      /* While it lasts, the turn is where what lies before and behind is furthest off. */
      if (turn_at (&window, k, &reach) >= TURN)
        {
          if (reach > most)
            furthest = fix_of (track, k);
          most = fmax (most, reach);
        }
      else if (most > 0)
        {
          end_pass (track, &longest, begun, furthest);
          begun = furthest;
          most = 0;
        }
    }
  if (most > 0)
    {
      end_pass (track, &longest, begun, furthest);
      begun = furthest;
    }
  end_pass (track, &longest, begun, track->n - 1);
  *first = longest.first;
  *last = longest.last;
  return longest.count;
}
