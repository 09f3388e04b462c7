/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything the physics needs to know: river, boat, rig. Plain values without pointers, so that a
 * setup is copied with "=" and handed to another thread as it is.
 *
 * SI units throughout: m, kg, s, N, kg/m3, degrees Celsius. A value that a file may leave open
 * ("null") is NAN here; lb_is_set() tells. */
#pragma once

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "status.h"

#define LB_MAX_LEADERS 8
#define LB_MAX_BED_POINTS 512
#define LB_MAX_PROFILE_POINTS 32

#define LB_UNSET NAN

static inline bool
lb_is_set (double value)
{
  return !isnan (value);
}

/* ---- River ---- */

typedef enum
{
  LB_PROFILE_POWER,   /* (height / depth)^(1 / exponent) */
  LB_PROFILE_LOG,     /* ln ((height + z0) / z0) / ln ((depth + z0) / z0), z0 = roughness / 30 */
  LB_PROFILE_UNIFORM, /* the surface speed at every height */
  LB_PROFILE_POINTS,  /* measured points, joined by a smooth monotone curve */
} LbProfileLaw;

typedef enum
{
  LB_BED_MATERIAL_NONE, /* the roughness is the user's own number */
  LB_BED_MATERIAL_SAND,
  LB_BED_MATERIAL_GRAVEL,
  LB_BED_MATERIAL_COBBLE,
  LB_BED_MATERIAL_BOULDER,
} LbBedMaterial;

typedef struct
{
  LbProfileLaw law;
  double exponent;        /* power law: m, 6 by default */
  LbBedMaterial material; /* log law: names the roughness, or NONE */
  double roughness;       /* log law: ks, m; kept in step with material by whoever sets it */
  size_t n_points;        /* points law */
  double height_fraction[LB_MAX_PROFILE_POINTS]; /* height above the bed / depth, rising, 0 to 1 */
  double speed_fraction[LB_MAX_PROFILE_POINTS];  /* speed / surface speed, >= 0 */
} LbProfile;

typedef enum
{
  LB_ALONG_SAME_DISCHARGE,     /* surface speed times depth is the same everywhere */
  LB_ALONG_SAME_SURFACE_SPEED, /* surface speed is the same everywhere */
} LbAlong;

typedef struct
{
  double depth;        /* m; of the plane bed, and the depth that surface_current belongs to */
  size_t n_bed_points; /* 0: plane bed */
  double bed_x[LB_MAX_BED_POINTS];     /* m, rising downstream */
  double bed_depth[LB_MAX_BED_POINTS]; /* m below the surface, > 0 */
  double bed_friction;                 /* Coulomb coefficient of the tackle on the bed */
  double surface_current; /* m/s over the ground, downstream, where the depth is depth */
  LbProfile profile;
  LbAlong along;
  double temperature;         /* C */
  double density;             /* kg/m3; unset: from the temperature */
  double kinematic_viscosity; /* m2/s; unset: from the temperature */
  double gravity;             /* m/s2 */
} LbRiver;

/* ---- Boat ---- */

typedef struct
{
  double speed_over_ground; /* m/s, upstream */
  double reel_height;       /* m above the water surface */
  double position;          /* m, where the reel is along the bed's x axis */
} LbBoat;

/* ---- Rig ---- */

typedef struct
{
  double diameter;        /* m */
  double density;         /* kg/m3 */
  double axial_stiffness; /* EA, N */
  double breaking_load;   /* N; unset: unknown */
  double normal_drag;     /* Cn on the diameter; unset: published curve of a smooth cylinder */
  double tangential_drag; /* Ct on the wetted perimeter */
  double strum;           /* factor on Cn, 1 (still) to 2.5 */
} LbLine;

typedef enum
{
  LB_LINE_OUT_GIVEN,            /* value: m of unstretched mainline from the reel to the shank */
  LB_LINE_OUT_WEIGHT_ABOVE_BED, /* value: m that the weight is held above the bed */
  LB_LINE_OUT_TOUCHING,         /* the weight just touches, carrying nothing */
} LbLineOutMode;

typedef struct
{
  LbLineOutMode mode;
  double value; /* m; no meaning when touching */
} LbLineOut;

typedef enum
{
  LB_WEIGHT_BALL,
  LB_WEIGHT_PEAR,
  LB_WEIGHT_TORPEDO,
  LB_WEIGHT_DISC,
} LbWeightShape;

typedef struct
{
  double mass;    /* kg */
  double density; /* kg/m3 */
  LbWeightShape shape;
  double drag_coefficient; /* on the frontal area; unset: from shape and curve */
} LbWeight;

typedef struct
{
  double drag_area;        /* S, m2: drag = 1/2 rho S v^2 */
  double down_force_ratio; /* down-force / drag, at right angles to the flow */
  double buoyancy;         /* N, net, up */
  double mass;             /* kg */
  double length;           /* m, for the drawing and for floating at the surface */
  double hooks;            /* how many local rules would count; no matter to the physics */
} LbLure;

typedef struct
{
  double attach_above_weight; /* m up the shank from the weight */
  double length;              /* m, unstretched */
  LbLine line;
  LbLure lure;
} LbLeader;

typedef struct
{
  LbLine mainline;
  LbLineOut line_out;
  double shank_length; /* m, unstretched, from the weight to the mainline; 0: no shank */
  LbLine shank;
  LbWeight weight;
  size_t n_leaders;
  LbLeader leaders[LB_MAX_LEADERS];
} LbRig;

/* ---- All of it ---- */

typedef struct
{
  double low;  /* m above the bed */
  double high; /* m above the bed */
} LbBand;

/* Limits of the local rules, as the user entered them; no matter to the physics. */
typedef struct
{
  double lures_per_line; /* unset: no limit */
  double hooks_per_line; /* unset: no limit */
} LbRules;

typedef struct
{
  LbRiver river;
  LbBoat boat;
  LbRig rig;
  LbBand band;
  LbRules rules;
} LbSetup;

/* The setup a new document starts from: 20 ft of spring river, 1 3/4 lb ball on 0.028 in wire, two
 * leaders of 10 and 20 ft. Common practice for the kind of rig; the lure values are estimates. */
LbSetup lb_setup_default (void);

/* Checks that the physics can be computed at all: finite numbers, positive where they must be,
 * attachments on the shank, bed and profile points in order. The limits a user sees are narrower
 * and belong to the model. Returns LB_STATUS_OK or LB_STATUS_BAD_SETUP; `what`, if not NULL,
 * then points to a static English phrase naming the value at fault. */
LbStatus lb_setup_check (const LbSetup *setup, const char **what);

/* Submerged weight of the weight (mass, less the water it displaces), N. `density` of the water. */
double lb_weight_in_water (const LbWeight *weight, double density, double gravity);

/* Area the weight shows to the flow, m2, from its mass, density and shape. */
double lb_weight_frontal_area (const LbWeight *weight);
