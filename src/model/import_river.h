/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An imported bed into a document. */
#pragma once

#include "change.h"
#include "import.h"

/* The soundings as they lie along the river: x rising downstream on the profile's axis, depths from
 * the surface. `x` and `depth` have room for all of import->soundings; returns how many. For a
 * picture of what the cleaning did. */
gsize lb_import_raw (const LbImport *import,
                     const LbImportOptions *options,
                     const LbBedProfile *profile,
                     double *x,
                     double *depth);

/* The average depth along the profile, m. */
double lb_bed_profile_mean_depth (const LbBedProfile *profile);

/* The change that gives `profile` to `document`: its points become the bed, the surface current is
 * from now on that where the water is as deep as the profile is on average, and a reel that would
 * be off the profile is put on it, no nearer to its downstream end than LB_IMPORT_REACH where it is
 * long enough. NULL with an LB_FILE_ERROR when the document cannot hold it. */
#define LB_IMPORT_REACH 30.0 /* m; about what a rig trails */
LbChange *lb_change_new_imported_bed (LbDocument *document,
                                      const LbBedProfile *profile,
                                      const char *label,
                                      GError **error);
