/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays soundings along the track of the fixes. Distances by the geodesic routines of PROJ (Karney
 * 2013, J. Geodesy 87, 43). */
#include "import_private.h"

#include <geodesic.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#define WGS84_RADIUS 6378137.0
#define WGS84_FLATTENING (1 / 298.257223563)

/* A track whose ends are nearer than this share of its way goes back or round. */
#define STRAIGHT_ENOUGH 0.5
#define SHORTEST_WARNED 30.0 /* m */

/* ---- Which soundings ---- */

/* Sounders send the same depth in several sentences: the kind that says most is used, if it is
 * there often enough. */
static LbSoundingKind
choose_kind (const LbImporter *importer, gsize *others)
{
  gsize count[LB_N_SOUNDING_KINDS] = { 0 }, most = 0;
  LbSoundingKind kind = LB_SOUNDING_TABLE;

  for (guint i = 0; i < importer->soundings->len; i++)
    count[g_array_index (importer->soundings, LbRawSounding, i).kind]++;
  for (int k = 0; k < LB_N_SOUNDING_KINDS; k++)
    most = MAX (most, count[k]);
  while (2 * count[kind] < most)
    kind++;
  *others = importer->soundings->len - count[kind];
  return kind;
}

/* ---- The track ---- */

typedef struct
{
  struct geod_geodesic earth;
  const LbFix *fixes;
  gsize n;
  double *along;    /* m, by fix */
  gboolean *is_gap; /* by fix: between it and the next */
} Track;

static double
distance (const Track *track, gsize a, gsize b)
{
  double metres;

  geod_inverse (&track->earth, track->fixes[a].latitude, track->fixes[a].longitude,
                track->fixes[b].latitude, track->fixes[b].longitude, &metres, NULL, NULL);
  return metres;
}

/* Spreads the fixes between two ends of a leg evenly in time, or in number. */
static void
spread (Track *track, gsize from, gsize to)
{
  const LbFix *a = &track->fixes[from], *b = &track->fixes[to];
  gboolean by_time = lb_is_set (a->time) && lb_is_set (b->time) && b->time > a->time;

  for (gsize i = from + 1; i < to; i++)
    {
      double share = by_time && lb_is_set (track->fixes[i].time)
                         ? (track->fixes[i].time - a->time) / (b->time - a->time)
                         : (double) (i - from) / (double) (to - from);

      track->along[i] =
          track->along[from] + CLAMP (share, 0, 1) * (track->along[to] - track->along[from]);
    }
}

static gboolean
leaves_gap (const Track *track, gsize i)
{
  double passed = track->fixes[i + 1].time - track->fixes[i].time;

  return (lb_is_set (passed) && passed > LB_IMPORT_LONGEST_GAP)
         || distance (track, i, i + 1) > LB_IMPORT_WIDEST_GAP;
}

static void
measure (Track *track, LbImport *import)
{
  gsize leg = 0;

  for (gsize i = 1; i < track->n; i++)
    {
      double way = distance (track, leg, i);
      gboolean last = i + 1 == track->n;

      track->is_gap[i - 1] = leaves_gap (track, i - 1);
      import->gaps += track->is_gap[i - 1];
      if (way < LB_IMPORT_LEG && !last && !track->is_gap[i - 1])
        continue;
      track->along[i] = track->along[leg] + way;
      spread (track, leg, i);
      leg = i;
    }
  import->length = track->along[track->n - 1];
}

static void
tell_of_track (LbImporter *importer, const Track *track)
{
  LbImport *import = importer->import;
  const LbFix *first = &track->fixes[0], *last = &track->fixes[track->n - 1];

  if (lb_is_set (first->time) && lb_is_set (last->time))
    import->duration = last->time - first->time;
  if (import->length > SHORTEST_WARNED
      && distance (track, 0, track->n - 1) < STRAIGHT_ENOUGH * import->length)
    lb_importer_warn (importer,
                      _ ("The track turns back or goes round: the profile follows it, and what was "
                         "passed twice is in it twice."));
}

/* ---- Placing ---- */

/* Puts sounding `s`, the `k`-th of `n` between fix `i` and the next, in its place. FALSE if there
 * is none near enough. */
static gboolean
place (const Track *track, LbSounding *s, gsize i, gsize k, gsize n)
{
  const LbFix *a = &track->fixes[i], *b;
  double share = (double) (k + 1) / (double) (n + 1);

  if (lb_is_set (s->latitude))
    {
      s->along = track->along[i];
      return TRUE;
    }
  if (i + 1 >= track->n || track->is_gap[i])
    return FALSE;
  b = &track->fixes[i + 1];
  s->along = track->along[i] + share * (track->along[i + 1] - track->along[i]);
  s->latitude = a->latitude + share * (b->latitude - a->latitude);
  s->longitude = a->longitude + share * (b->longitude - a->longitude);
  return TRUE;
}

static void
place_all (LbImporter *importer, const Track *track, LbSoundingKind kind)
{
  LbImport *import = importer->import;
  gsize first = track->n > 0 ? track->fixes[0].depths_before : importer->soundings->len;

  for (gsize i = 0; i < first; i++)
    import->unplaced += g_array_index (importer->soundings, LbRawSounding, i).kind == kind;
  for (gsize i = 0; i < track->n; i++)
    {
      gsize from = track->fixes[i].depths_before;
      gsize to = i + 1 < track->n ? track->fixes[i + 1].depths_before : importer->soundings->len;
      gsize n = 0, k = 0;

      for (gsize j = from; j < to; j++)
        n += g_array_index (importer->soundings, LbRawSounding, j).kind == kind;
      for (gsize j = from; j < to; j++)
        {
          LbRawSounding *raw = &g_array_index (importer->soundings, LbRawSounding, j);

          if (raw->kind != kind)
            continue;
          if (place (track, &raw->sounding, i, k++, n))
            g_array_append_val (import->soundings, raw->sounding);
          else
            import->unplaced++;
        }
    }
}

/* Of a table of distances. */
static void
take_as_placed (LbImporter *importer)
{
  LbImport *import = importer->import;

  for (guint i = 0; i < importer->soundings->len; i++)
    g_array_append_val (import->soundings,
                        g_array_index (importer->soundings, LbRawSounding, i).sounding);
}

static int
compare_along (gconstpointer a, gconstpointer b)
{
  double x = ((const LbSounding *) a)->along, y = ((const LbSounding *) b)->along;

  return (x > y) - (x < y);
}

void
lb_importer_place (LbImporter *importer)
{
  LbImport *import = importer->import;
  GArray *fixes = importer->fixes;
  Track track = { .fixes = (const LbFix *) (void *) fixes->data, .n = fixes->len };
  LbSoundingKind kind = choose_kind (importer, &import->unused_depths);
  gboolean has_distances =
      importer->soundings->len > 0
      && lb_is_set (g_array_index (importer->soundings, LbRawSounding, 0).sounding.along);

  import->fixes = track.n;
  if (has_distances)
    take_as_placed (importer);
  else
    {
      geod_init (&track.earth, WGS84_RADIUS, WGS84_FLATTENING);
      track.along = g_new0 (double, track.n + 1);
      track.is_gap = g_new0 (gboolean, track.n + 1);
      if (track.n > 1)
        {
          measure (&track, import);
          tell_of_track (importer, &track);
        }
      place_all (importer, &track, kind);
      g_free (track.along);
      g_free (track.is_gap);
    }
  g_array_sort (import->soundings, compare_along);
  for (guint i = 0; i < import->soundings->len; i++)
    import->has_transducer_depths =
        import->has_transducer_depths
        || g_array_index (import->soundings, LbSounding, i).datum == LB_DEPTH_OF_TRANSDUCER;
  if (has_distances && import->soundings->len > 0)
    import->length = g_array_index (import->soundings, LbSounding, import->soundings->len - 1).along
                     - g_array_index (import->soundings, LbSounding, 0).along;
}
