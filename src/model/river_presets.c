/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "river_presets.h"

#include <glib/gi18n-lib.h>

#include "current.h"

/* Round numbers in feet, miles per hour and degrees Fahrenheit. */
#define FT(feet) (0.3048 * (feet))
#define MPH(speed) (0.44704 * (speed))
#define F(degrees) ((-32 + (degrees)) / 1.8)

/* Speeds as a float at the surface would show them; all of it estimated. */
static const LbRiverPreset presets[] = {
  { "slow-pool", N_ ("Slow pool"),
    N_ ("Deep, lazy water over sand; the lures run on the boat's speed more than on the river's."),
    FT (20), MPH (0.7), LB_BED_MATERIAL_SAND, F (57) },
  { "summer-low", N_ ("Low summer water"),
    N_ ("Shallow and warm over gravel; little line out, and the weight soon touches."), FT (8),
    MPH (1.1), LB_BED_MATERIAL_GRAVEL, F (64) },
  { "steady-run", N_ ("Steady run"),
    N_ ("Even water of middling depth over gravel; good to learn on."), FT (12), MPH (1.8),
    LB_BED_MATERIAL_GRAVEL, F (50) },
  { "deep-channel", N_ ("Deep channel"),
    N_ ("The main channel of a large river: deep and pushy, so that much line is out."), FT (35),
    MPH (2.2), LB_BED_MATERIAL_GRAVEL, F (48) },
  { "spring-run", N_ ("Spring run"),
    N_ ("High, cold water over cobble after the thaw has begun; dress for the water."), FT (20),
    MPH (2.7), LB_BED_MATERIAL_COBBLE, F (40) },
  { "fast-chute", N_ ("Fast chute"),
    N_ ("A narrow, fast tongue over boulders, which take hold of a weight in no time."), FT (10),
    MPH (4), LB_BED_MATERIAL_BOULDER, F (46) },
  { "spring-flood", N_ ("Spring flood"),
    N_ ("Very fast, cold, and full of drifting wood: better looked at on the screen than from a "
        "boat."),
    FT (25), MPH (5.4), LB_BED_MATERIAL_COBBLE, F (37) },
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
