/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Positions that a receiver made up: far off for a moment, then back. */
#include "import_track.h"

#include <math.h>

#define FASTEST 25.0   /* m/s */
#define ALLOWANCE 30.0 /* m, for what a receiver jitters */
#define SETTLED 5      /* so many fixes in a row that agree are believed */
#define LOG_PAUSE 600  /* s */
#define UNTIMED 40     /* s, that are allowed for between fixes without times */

/* Near enough for the purpose, and a hundred times cheaper than a geodesic. */
static double
rough_distance (const LbFix *a, const LbFix *b)
{
  double degree = 111200.0;
  double east = remainder (b->longitude - a->longitude, 360) * cos (a->latitude * G_PI / 180);

  return degree * hypot (b->latitude - a->latitude, east);
}

static gboolean
can_follow (const LbFix *a, const LbFix *b)
{
  double passed = b->time - a->time;

  /* Logs that were joined: anything can have happened in between. */
  if (lb_is_set (passed) && (passed < 0 || passed > LOG_PAUSE))
    return TRUE;
  return rough_distance (a, b) <= ALLOWANCE + FASTEST * (lb_is_set (passed) ? passed : UNTIMED);
}

/* Keeps fixes that can follow one another. One that cannot follow the last one kept is held back
 * until it is clear who is right: the next fix of the old track, or SETTLED in a row at the new
 * place. What was kept before is odd itself when it is less than that. */
gsize
lb_fixes_drop_odd (GArray *fixes)
{
  guint kept = 0, run = 0, held = 0;
  LbFix waiting[SETTLED];

  /* Too few to say who is right. */
  if (fixes->len < 2 * SETTLED)
    return 0;
  for (guint i = 0; i < fixes->len; i++)
    {
      LbFix fix = g_array_index (fixes, LbFix, i);

      if (kept == 0 || can_follow (&g_array_index (fixes, LbFix, kept - 1), &fix))
        {
          held = 0;
          run++;
          g_array_index (fixes, LbFix, kept++) = fix;
          continue;
        }
      if (held > 0 && !can_follow (&waiting[held - 1], &fix))
        held = 0;
      waiting[held++] = fix;
      if (held < SETTLED)
        continue;
      if (run < SETTLED)
        kept -= run;
      for (guint k = 0; k < held; k++)
        g_array_index (fixes, LbFix, kept++) = waiting[k];
      run = held;
      held = 0;
    }
  held = fixes->len - kept;
  g_array_set_size (fixes, kept);
  return held;
}
