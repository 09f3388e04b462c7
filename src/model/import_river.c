/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "import_river.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "fields.h"
#include "file_error.h"

gsize
lb_import_raw (const LbImport *import,
               const LbImportOptions *options,
               const LbBedProfile *profile,
               double *x,
               double *depth)
{
  double to = options->to > 0 ? options->to : INFINITY, first = 0, last = 0;
  gsize n = 0;

  if (profile->n == 0)
    return 0;
  for (guint i = 0; i < import->soundings->len; i++)
    {
      const LbSounding *sounding = &g_array_index (import->soundings, LbSounding, i);
      gboolean deeper = sounding->datum == LB_DEPTH_OF_TRANSDUCER;

      if (sounding->along < options->from || sounding->along > to)
        continue;
      first = n > 0 ? first : sounding->along;
      last = sounding->along;
      x[n] = sounding->along;
      depth[n++] = sounding->depth + (deeper ? options->transducer_depth : 0);
    }
  for (gsize i = 0; i < n; i++)
    x[i] = options->boat_went_upstream ? last - x[i] : x[i] - first;
  return n;
}

double
lb_bed_profile_mean_depth (const LbBedProfile *profile)
{
  double area = 0, length = profile->x[profile->n - 1] - profile->x[0];

  for (gsize i = 1; i < profile->n; i++)
    area += 0.5 * (profile->depth[i] + profile->depth[i - 1]) * (profile->x[i] - profile->x[i - 1]);
  return length > 0 ? area / length : profile->depth[0];
}

static double
reel_on (const LbBedProfile *profile, double reel)
{
  double from = profile->x[0], to = profile->x[profile->n - 1];

  if (reel >= from && reel <= fmax (from, to - LB_IMPORT_REACH))
    return reel;
  return reel < from ? from : fmax (from, to - LB_IMPORT_REACH);
}

LbChange *
lb_change_new_imported_bed (LbDocument *document,
                            const LbBedProfile *profile,
                            const char *label,
                            GError **error)
{
  g_autofree LbSetup *setup = g_memdup2 (lb_document_get_setup (document), sizeof (LbSetup));
  const LbField *place = lb_field ("boat.position_m");
  LbChange *change;

  g_return_val_if_fail (profile->n >= 2 && profile->n <= LB_MAX_BED_POINTS, NULL);
  if (profile->x[profile->n - 1] > place->maximum)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_RANGE,
                   _ ("the log covers %.1f km of river; no more than %.0f km can be used"),
                   profile->x[profile->n - 1] / 1000, place->maximum / 1000);
      return NULL;
    }
  setup->river.n_bed_points = profile->n;
  memcpy (setup->river.bed_x, profile->x, profile->n * sizeof *profile->x);
  memcpy (setup->river.bed_depth, profile->depth, profile->n * sizeof *profile->depth);
  setup->river.depth = lb_bed_profile_mean_depth (profile);
  setup->boat.position = reel_on (profile, setup->boat.position);
  change = lb_change_new_setup (setup, NULL, label);
  if (!change)
    g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_RANGE, "%s",
                 _ ("the depths are not such as a river of this program can have"));
  return change;
}
