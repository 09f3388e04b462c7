/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "river_presets.h"

#include <glib/gi18n-lib.h>

#include "current.h"

/* Speeds as a float at the surface would show them; all of it estimated. */
static const LbRiverPreset presets[] = {
  { "slow-pool", N_ ("Slow pool"),
    N_ ("Deep, lazy water over sand; the lures run on the boat's speed more than on the river's."),
    6, 0.3, LB_BED_MATERIAL_SAND, 14 },
  { "summer-low", N_ ("Low summer water"),
    N_ ("Shallow and warm over gravel; little line out, and the weight soon touches."), 2.5, 0.5,
    LB_BED_MATERIAL_GRAVEL, 18 },
  { "steady-run", N_ ("Steady run"),
    N_ ("Even water of middling depth over gravel; good to learn on."), 4, 0.8,
    LB_BED_MATERIAL_GRAVEL, 10 },
  { "deep-channel", N_ ("Deep channel"),
    N_ ("The main channel of a large river: deep and pushy, so that much line is out."), 11, 1.0,
    LB_BED_MATERIAL_GRAVEL, 9 },
  { "spring-run", N_ ("Spring run"),
    N_ ("High, cold water over cobble after the thaw has begun; dress for the water."), 6, 1.2,
    LB_BED_MATERIAL_COBBLE, 4 },
  { "fast-chute", N_ ("Fast chute"),
    N_ ("A narrow, fast tongue over boulders, which take hold of a weight in no time."), 3, 1.8,
    LB_BED_MATERIAL_BOULDER, 8 },
  { "spring-flood", N_ ("Spring flood"),
    N_ ("Very fast, cold, and full of drifting wood: better looked at on the screen than from a "
        "boat."),
    8, 2.4, LB_BED_MATERIAL_COBBLE, 3 },
};

const LbRiverPreset *
lb_river_presets (size_t *n_presets)
{
  if (n_presets)
    *n_presets = G_N_ELEMENTS (presets);
  return presets;
}

const char *
lb_river_presets_note (void)
{
  return _ ("An estimate, and no real river. Measure your own: sound the depth, time a float.");
}

void
lb_river_preset_apply (const LbRiverPreset *preset, LbRiver *river)
{
  *river = lb_setup_default ().river;
  river->depth = preset->depth;
  river->surface_current = preset->surface_current;
  river->profile.law = LB_PROFILE_LOG;
  river->profile.material = preset->material;
  river->profile.roughness = lb_bed_material_roughness (preset->material);
  river->along = LB_ALONG_SAME_DISCHARGE;
  river->temperature = preset->temperature;
}
