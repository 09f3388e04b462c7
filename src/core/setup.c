/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "setup.h"

#define PI 3.14159265358979323846

/* ---- The default ---- */

static LbLine
nylon (double diameter, double axial_stiffness, double breaking_load)
{
  return (LbLine){
    .diameter = diameter,
    .density = 1140,
    .axial_stiffness = axial_stiffness,
    .breaking_load = breaking_load,
    .normal_drag = LB_UNSET,
    .tangential_drag = 0.02,
    .strum = 1,
  };
}

/* Hard-drawn stainless wire, 0.028 in. Breaking load: 1993 MPa, the least for this size (a
 * supplier's copy of ASTM A313), on its area; straight and unkinked, so an estimate. 180 GPa. */
static LbLine
wire (void)
{
  return (LbLine){
    .diameter = 0.0007112,
    .density = 7900,
    .axial_stiffness = 71510,
    .breaking_load = 792,
    .normal_drag = LB_UNSET,
    .tangential_drag = 0.02,
    .strum = 1,
  };
}

/* A 0.35 mm nylon leader with a generic 9 cm floating minnow with a medium lip; all lure values are
 * estimates, and so is the breaking load, 0.5 GPa on the area. */
static LbLeader
leader (double attach_above_weight, double length)
{
  return (LbLeader){
    .attach_above_weight = attach_above_weight,
    .length = length,
    .line = nylon (0.00035, 192, 48),
    .lure = {
      .drag_area = 0.00021,
      .down_force_ratio = 0.45,
      .buoyancy = 0.015,
      .mass = 0.00825,
      .length = 0.09,
      .hooks = 2, /* common practice, no source */
    },
  };
}

static LbRiver
spring_river (void)
{
  return (LbRiver){
    .depth = 6.096,
    .bed_friction = 0.5,
    .surface_current = 1.207008, /* 2.7 mph */
    .profile = { .law = LB_PROFILE_POWER, .exponent = 6 },
    .along = LB_ALONG_SAME_DISCHARGE,
    .temperature = 40 / 9.0, /* 40 °F */
    .density = LB_UNSET,
    .kinematic_viscosity = LB_UNSET,
    .gravity = 9.80665,
  };
}

/* Parts as the catalogue has them, and round numbers in feet, inches and mph. */
LbSetup
lb_setup_default (void)
{
  LbSetup setup = {
    .river = spring_river (),
    .boat = { .speed_over_ground = 0.402336, .reel_height = 0.4572 }, /* 0.9 mph, 18 in */
    .rig = {
      .mainline = wire (),
      .line_out = { LB_LINE_OUT_WEIGHT_ABOVE_BED, 0.1016 },
      .shank_length = 0.9144,
      .shank = nylon (0.0007, 770, LB_UNSET),
      .weight = { 0.79378665, 11340, LB_WEIGHT_BALL, LB_UNSET }, /* 1 3/4 lb */
      .n_leaders = 2,
    },
    .band = { 0.1016, 0.4572 }, /* 4 to 18 in */
    .rules = { LB_UNSET, LB_UNSET },
  };

  /* 10 and 20 ft; at 22 and 30 in both lures run within an inch of level, mid-band. Those that are
   * not used yet are what a file may leave open. */
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    setup.rig.leaders[i] = leader (0.5588, 3.048);
  setup.rig.leaders[1] = leader (0.762, 6.096);
  return setup;
}

/* ---- The check ---- */

static bool
is_positive (double value)
{
  return isfinite (value) && value > 0;
}

static bool
is_not_negative (double value)
{
  return isfinite (value) && value >= 0;
}

static bool
is_unset_or_positive (double value)
{
  return !lb_is_set (value) || is_positive (value);
}

static bool
is_unset_or_not_negative (double value)
{
  return !lb_is_set (value) || is_not_negative (value);
}

/* The checks below return what is at fault, or NULL. */

static const char *
bed_fault (const LbRiver *river)
{
  if (!is_positive (river->depth))
    return "river depth";
  if (river->n_bed_points > LB_MAX_BED_POINTS)
    return "number of bed points";
  for (size_t i = 0; i < river->n_bed_points; i++)
    {
      if (!is_positive (river->bed_depth[i]))
        return "depth of a bed point";
      if (!isfinite (river->bed_x[i]))
        return "distance of a bed point";
      if (i > 0 && !(river->bed_x[i] > river->bed_x[i - 1]))
        return "order of the bed points";
    }
  return NULL;
}

static const char *
profile_points_fault (const LbProfile *profile)
{
  if (profile->n_points < 1 || profile->n_points > LB_MAX_PROFILE_POINTS)
    return "number of profile points";
  for (size_t i = 0; i < profile->n_points; i++)
    {
      double height = profile->height_fraction[i];

      if (!is_not_negative (height) || height > 1)
        return "height of a profile point";
      if (!is_not_negative (profile->speed_fraction[i]))
        return "speed of a profile point";
      if (i > 0 && !(height > profile->height_fraction[i - 1]))
        return "order of the profile points";
    }
  return NULL;
}

static const char *
profile_fault (const LbProfile *profile)
{
  switch (profile->law)
    {
    case LB_PROFILE_POWER:
      return is_positive (profile->exponent) ? NULL : "profile exponent";
    case LB_PROFILE_LOG:
      return is_positive (profile->roughness) ? NULL : "bed roughness";
    case LB_PROFILE_UNIFORM:
      return NULL;
    case LB_PROFILE_POINTS:
      return profile_points_fault (profile);
    }
  return "profile law";
}

static const char *
river_fault (const LbRiver *river)
{
  const char *what = bed_fault (river);

  if (what == NULL)
    what = profile_fault (&river->profile);
  if (what != NULL)
    return what;
  if (!is_not_negative (river->surface_current))
    return "surface current";
  if (river->along != LB_ALONG_SAME_DISCHARGE && river->along != LB_ALONG_SAME_SURFACE_SPEED)
    return "rule along the river";
  if (!is_not_negative (river->bed_friction))
    return "bed friction";
  if (!(river->temperature >= -20 && river->temperature <= 110))
    return "water temperature";
  if (!is_unset_or_positive (river->density))
    return "water density";
  if (!is_unset_or_positive (river->kinematic_viscosity))
    return "water viscosity";
  return is_positive (river->gravity) ? NULL : "gravity";
}

static const char *
boat_fault (const LbBoat *boat)
{
  if (!isfinite (boat->speed_over_ground))
    return "boat speed";
  if (!is_not_negative (boat->reel_height))
    return "reel height";
  return isfinite (boat->position) ? NULL : "boat position";
}

static bool
is_line (const LbLine *line)
{
  return is_positive (line->diameter) && is_positive (line->density)
         && is_positive (line->axial_stiffness) && is_unset_or_positive (line->breaking_load)
         && is_unset_or_not_negative (line->normal_drag) && is_not_negative (line->tangential_drag)
         && is_not_negative (line->strum);
}

static const char *
line_out_fault (const LbLineOut *line_out)
{
  switch (line_out->mode)
    {
    case LB_LINE_OUT_GIVEN:
      return is_positive (line_out->value) ? NULL : "line out";
    case LB_LINE_OUT_WEIGHT_ABOVE_BED:
      return is_not_negative (line_out->value) ? NULL : "height of the weight above the bed";
    case LB_LINE_OUT_TOUCHING:
      return NULL;
    }
  return "way the line out is given";
}

static const char *
weight_fault (const LbWeight *weight)
{
  if (!is_positive (weight->mass))
    return "mass of the weight";
  if (!is_positive (weight->density))
    return "density of the weight";
  if (!is_unset_or_not_negative (weight->drag_coefficient))
    return "drag coefficient of the weight";
  switch (weight->shape)
    {
    case LB_WEIGHT_BALL:
    case LB_WEIGHT_PEAR:
    case LB_WEIGHT_TORPEDO:
    case LB_WEIGHT_DISC:
      return NULL;
    }
  return "shape of the weight";
}

static const char *
leader_fault (const LbLeader *leader, double shank_length)
{
  const LbLure *lure = &leader->lure;

  if (!is_not_negative (leader->attach_above_weight) || leader->attach_above_weight > shank_length)
    return "attachment of a leader";
  if (!is_positive (leader->length))
    return "length of a leader";
  if (!is_line (&leader->line))
    return "line of a leader";
  if (!is_not_negative (lure->drag_area))
    return "drag area of a lure";
  if (!is_not_negative (lure->down_force_ratio))
    return "down-force ratio of a lure";
  if (!isfinite (lure->buoyancy))
    return "buoyancy of a lure";
  if (!is_not_negative (lure->mass))
    return "mass of a lure";
  return is_not_negative (lure->length) ? NULL : "length of a lure";
}

static const char *
rig_fault (const LbRig *rig)
{
  const char *what = line_out_fault (&rig->line_out);

  if (what == NULL)
    what = weight_fault (&rig->weight);
  if (what != NULL)
    return what;
  if (!is_line (&rig->mainline))
    return "mainline";
  if (!is_not_negative (rig->shank_length))
    return "length of the shank";
  if (!is_line (&rig->shank))
    return "line of the shank";
  if (rig->n_leaders > LB_MAX_LEADERS)
    return "number of leaders";
  for (size_t i = 0; i < rig->n_leaders && what == NULL; i++)
    what = leader_fault (&rig->leaders[i], rig->shank_length);
  return what;
}

static const char *
band_fault (const LbBand *band)
{
  return isfinite (band->low) && isfinite (band->high) && band->low <= band->high ? NULL : "band";
}

LbStatus
lb_setup_check (const LbSetup *setup, const char **what)
{
  const char *fault = river_fault (&setup->river);

  if (fault == NULL)
    fault = boat_fault (&setup->boat);
  if (fault == NULL)
    fault = rig_fault (&setup->rig);
  if (fault == NULL)
    fault = band_fault (&setup->band);
  if (fault == NULL)
    return LB_STATUS_OK;
  if (what != NULL)
    *what = fault;
  return LB_STATUS_BAD_SETUP;
}

/* ---- The weight ---- */

double
lb_weight_in_water (const LbWeight *weight, double density, double gravity)
{
  return weight->mass * gravity * (1 - density / weight->density);
}

double
lb_weight_frontal_area (const LbWeight *weight)
{
  double volume = weight->mass / weight->density;
  double d;

  switch (weight->shape)
    {
    case LB_WEIGHT_PEAR:
      /* Half a ball under a cone of height d, hanging point up: the volume of a ball of the same d.
       * The flow meets it from the side. */
      d = cbrt (6 * volume / PI);
      return (PI / 8 + 0.5) * d * d;
    case LB_WEIGHT_TORPEDO:
      /* A rod of length 4 d that keeps its nose to the flow. */
      d = cbrt (volume / PI);
      return PI / 4 * d * d;
    case LB_WEIGHT_DISC:
      /* A coin of thickness d / 6 hung by its edge. A plate that is free to swing round turns its
       * face to the flow, which is also the safe side. */
      d = cbrt (24 * volume / PI);
      return PI / 4 * d * d;
    case LB_WEIGHT_BALL:
      break;
    }
  d = cbrt (6 * volume / PI);
  return PI / 4 * d * d;
}
