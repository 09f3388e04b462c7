/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lays soundings along the track of the fixes. */
#include "import_track.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "earth.h"

/* ---- Which soundings ---- */

/* Sounders send the same depth in several sentences: the kind that says most is used, if it is
 * there often enough. */
static LbSoundingKind
choose_kind (const GArray *soundings)
{
  gsize count[LB_N_SOUNDING_KINDS] = { 0 }, most = 0;
  LbSoundingKind kind = LB_SOUNDING_TABLE;

  for (guint i = 0; i < soundings->len; i++)
    count[g_array_index (soundings, LbRawSounding, i).kind]++;
  for (int k = 0; k < LB_N_SOUNDING_KINDS; k++)
    most = MAX (most, count[k]);
  while (2 * count[kind] < most)
    kind++;
  return kind;
}

/* Of two sounders, or of one that comes twice over, the talker that is heard most: two may differ
 * in what they count from. */
static guint16
choose_talker (const GArray *soundings, LbSoundingKind kind)
{
  g_autofree guint *count = g_new0 (guint, G_MAXUINT16 + 1);
  guint16 talker = 0;

  for (guint i = 0; i < soundings->len; i++)
    {
      const LbRawSounding *raw = &g_array_index (soundings, LbRawSounding, i);

      if (raw->kind == kind && ++count[raw->talker] > count[talker])
        talker = raw->talker;
    }
  return talker;
}

/* Keeps those alone, and moves the fixes' marks along. */
static void
keep_one_kind (LbImporter *importer)
{
  GArray *soundings = importer->soundings;
  LbSoundingKind kind = choose_kind (soundings);
  guint16 talker = choose_talker (soundings, kind);
  guint kept = 0, fix = 0;

  for (guint i = 0; i <= soundings->len; i++)
    {
      for (; fix < importer->fixes->len
             && g_array_index (importer->fixes, LbFix, fix).depths_before <= i;
           fix++)
        g_array_index (importer->fixes, LbFix, fix).depths_before = kept;
      if (i < soundings->len)
        {
          LbRawSounding raw = g_array_index (soundings, LbRawSounding, i);

          if (raw.kind == kind && raw.talker == talker)
            g_array_index (soundings, LbRawSounding, kept++) = raw;
        }
    }
  importer->import->unused_depths = soundings->len - kept;
  g_array_set_size (soundings, kept);
}

/* ---- Placing ---- */

/* Puts sounding `s`, the `k`-th of `n` between fix `i` and the next, in its place. FALSE if there
 * is none near enough. */
static gboolean
place (const LbTrack *track, LbSounding *s, gsize i, gsize k, gsize n)
{
  const LbFix *a = &track->fixes[i], *b;
  double share = (double) (k + 1) / (double) (n + 1);

  if (lb_is_set (s->latitude))
    {
      s->along = track->along[i];
      /* Its own fix may have been dropped. */
      return s->latitude == a->latitude && s->longitude == a->longitude;
    }
  if (i + 1 >= track->n || track->is_gap[i])
    return FALSE;
  b = &track->fixes[i + 1];
  s->along = track->along[i] + share * (track->along[i + 1] - track->along[i]);
  s->latitude = a->latitude + share * (b->latitude - a->latitude);
  s->longitude =
      remainder (a->longitude + share * remainder (b->longitude - a->longitude, 360), 360);
  return TRUE;
}

/* The soundings between fix `i` and the next: from the first number up to the second. */
static void
soundings_after (const LbImporter *importer, const LbTrack *track, gsize i, gsize range[2])
{
  range[0] = track->fixes[i].depths_before;
  range[1] = i + 1 < track->n ? track->fixes[i + 1].depths_before : importer->soundings->len;
}

/* Those of the pass from fix `first` to fix `last`. */
static void
place_pass (LbImporter *importer, const LbTrack *track, gsize first, gsize last)
{
  LbImport *import = importer->import;

  for (gsize i = first; i <= last; i++)
    {
      gsize range[2];

      soundings_after (importer, track, i, range);
      for (gsize j = range[0]; j < range[1]; j++)
        {
          LbSounding s = g_array_index (importer->soundings, LbRawSounding, j).sounding;

          /* What comes after the turn belongs to the next pass, unless it lies at the turn. */
          if (i == last && last + 1 < track->n && !lb_is_set (s.latitude))
            import->other_passes++;
          else if (!place (track, &s, i, j - range[0], range[1] - range[0]))
            import->unplaced++;
          else
            {
              s.along -= track->along[first];
              g_array_append_val (import->soundings, s);
            }
        }
    }
}

static void
tell_of_passes (LbImporter *importer)
{
  const LbImport *import = importer->import;

  if (import->passes > 1)
    lb_importer_warn (importer,
                      g_dngettext (GETTEXT_PACKAGE,
                                   "The boat turned back once: only the longer stretch is used.",
                                   "The boat turned back %zu times: only the longest stretch "
                                   "without a turn is used.",
                                   import->passes - 1),
                      import->passes - 1);
  if (import->odd_fixes > 0)
    lb_importer_warn (importer,
                      g_dngettext (GETTEXT_PACKAGE,
                                   "%zu position was left out that no boat can have reached.",
                                   "%zu positions were left out that no boat can have reached.",
                                   import->odd_fixes),
                      import->odd_fixes);
}

static void
place_along_track (LbImporter *importer)
{
  LbImport *import = importer->import;
  LbTrack track;
  gsize first, last, range[2];

  lb_track_init (&track, importer->fixes);
  if (track.n > 1)
    {
      lb_track_measure (&track);
      import->gaps = track.n_gaps;
      if (track.duration > 0)
        import->duration = track.duration;
      import->passes = lb_track_longest_pass (&track, &first, &last);
      import->length = track.along[last] - track.along[first];
      import->track_length = track.along[track.n - 1];
      soundings_after (importer, &track, first, range);
      import->unplaced += first == 0 ? range[0] : 0;
      import->other_passes += first == 0 ? 0 : range[0];
      place_pass (importer, &track, first, last);
      soundings_after (importer, &track, last, range);
      import->other_passes += importer->soundings->len - range[1];
    }
  else
    import->unplaced = importer->soundings->len;
  lb_track_clear (&track);
  tell_of_passes (importer);
}

/* Of a table of distances. */
static void
take_as_placed (LbImporter *importer)
{
  LbImport *import = importer->import;
  double least = INFINITY, most = -INFINITY;

  for (guint i = 0; i < importer->soundings->len; i++)
    {
      LbSounding *s = &g_array_index (importer->soundings, LbRawSounding, i).sounding;

      least = fmin (least, s->along);
      most = fmax (most, s->along);
      g_array_append_val (import->soundings, *s);
    }
  import->length = import->track_length = most - least;
  import->passes = 1;
}

static int
compare_along (gconstpointer a, gconstpointer b)
{
  double x = ((const LbSounding *) a)->along, y = ((const LbSounding *) b)->along;

  return (x > y) - (x < y);
}

gboolean
lb_importer_place (LbImporter *importer, GError **error)
{
  LbImport *import = importer->import;

  if (importer->soundings->len > 0)
    keep_one_kind (importer);
  import->odd_fixes = lb_fixes_drop_odd (importer->fixes);
  import->fixes = importer->fixes->len;
  if (importer->soundings->len == 0)
    return TRUE;
  if (lb_is_set (g_array_index (importer->soundings, LbRawSounding, 0).sounding.along))
    take_as_placed (importer);
  else if (!lb_earth_open (error))
    return FALSE;
  else
    place_along_track (importer);
  g_array_sort (import->soundings, compare_along);
  for (guint i = 0; i < import->soundings->len; i++)
    import->has_transducer_depths =
        import->has_transducer_depths
        || g_array_index (import->soundings, LbSounding, i).datum == LB_DEPTH_OF_TRANSDUCER;
  return TRUE;
}
