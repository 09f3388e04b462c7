/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The way along the fixes. */
#include "import_track.h"

#include <math.h>

#include "earth.h"

/* A boat that keeps within so many metres for so many seconds lies still: at anchor it swings. */
#define STILL_RADIUS 8.0
#define STILL_TIME 120.0

void
lb_track_init (LbTrack *track, const GArray *fixes)
{
  *track = (LbTrack){ .fixes = (const LbFix *) (const void *) fixes->data, .n = fixes->len };
  track->along = g_new0 (double, track->n + 1);
  track->is_gap = g_new0 (gboolean, track->n + 1);
  track->legs = g_array_new (FALSE, FALSE, sizeof (guint));
}

void
lb_track_clear (LbTrack *track)
{
  g_free (track->along);
  g_free (track->is_gap);
  g_array_unref (track->legs);
}

static double
way_between (const LbFix *a, const LbFix *b, double *bearing)
{
  return lb_earth_way (a->latitude, a->longitude, b->latitude, b->longitude, bearing);
}

double
lb_track_distance (const LbTrack *track, gsize a, gsize b)
{
  return way_between (&track->fixes[a], &track->fixes[b], NULL);
}

double
lb_track_turn (const LbTrack *track, gsize a, gsize b, gsize c, double *reach)
{
  const LbFix *at = &track->fixes[b];
  double back, ahead;

  *reach = way_between (at, &track->fixes[a], &back) + way_between (at, &track->fixes[c], &ahead);
  return fabs (remainder (ahead - back - 180, 360));
}

/* ---- Legs ---- */

static guint
leg (const LbTrack *track, guint k)
{
  return g_array_index (track->legs, guint, k);
}

static gboolean
leaves_gap (const LbTrack *track, gsize i)
{
  double passed = track->fixes[i + 1].time - track->fixes[i].time;

  return (lb_is_set (passed) && (passed > LB_IMPORT_LONGEST_GAP || passed < 0))
         || lb_track_distance (track, i, i + 1) > LB_IMPORT_WIDEST_GAP;
}

/* A new leg is begun where the boat has gone far enough, and on both sides of a gap. */
static void
cut_into_legs (LbTrack *track)
{
  guint begun = 0;

  for (guint i = 0; i + 1 < track->n; i++)
    {
      track->is_gap[i] = leaves_gap (track, i);
      track->n_gaps += track->is_gap[i];
    }
  g_array_append_val (track->legs, begun);
  for (guint i = 1; i < track->n; i++)
    {
      if (!track->is_gap[i - 1] && !track->is_gap[i] && i + 1 < track->n
          && lb_track_distance (track, begun, i) < LB_IMPORT_LEG)
        continue;
      g_array_append_val (track->legs, i);
      begun = i;
    }
}

/* How many legs from `k` on are only swinging about one place; 0: the boat is under way. */
static guint
count_still (const LbTrack *track, guint k)
{
  guint to = k;

  while (to + 1 < track->legs->len && !track->is_gap[leg (track, to + 1) - 1]
         && lb_track_distance (track, leg (track, k), leg (track, to + 1)) < STILL_RADIUS)
    to++;
  return track->fixes[leg (track, to)].time - track->fixes[leg (track, k)].time >= STILL_TIME
             ? to - k
             : 0;
}

/* ---- Between the ends of a leg ---- */

/* How far fix `i` has come from `a` towards `b`, as a share: by time, else by place. */
static double
share_of (const LbTrack *track, guint a, guint b, guint i, double bearing, double way)
{
  const LbFix *from = &track->fixes[a], *to = &track->fixes[b], *at = &track->fixes[i];
  double passed = to->time - from->time, metres, towards;

  if (passed > 0 && lb_is_set (at->time))
    return (at->time - from->time) / passed;
  metres = way_between (from, at, &towards);
  return way > 0 ? metres * cos ((towards - bearing) * G_PI / 180) / way : 0;
}

static void
lay_leg (LbTrack *track, guint a, guint b, gboolean still)
{
  const LbFix *from = &track->fixes[a], *to = &track->fixes[b];
  double bearing, way = way_between (from, to, &bearing);

  if (still)
    way = 0;
  for (guint i = a + 1; i < b; i++)
    track->along[i] = track->along[a] + way * CLAMP (share_of (track, a, b, i, bearing, way), 0, 1);
  track->along[b] = track->along[a] + way;
}

void
lb_track_measure (LbTrack *track)
{
  guint still_to = 0;

  cut_into_legs (track);
  for (guint k = 0; k + 1 < track->legs->len; k++)
    {
      guint still = k >= still_to ? count_still (track, k) : 0;

      still_to = MAX (still_to, k + still);
      lay_leg (track, leg (track, k), leg (track, k + 1), k < still_to);
    }
  for (gsize i = 0; i + 1 < track->n; i++)
    track->duration += fmax (track->fixes[i + 1].time - track->fixes[i].time, 0);
}
