/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The limits are wider than any river or tackle for this kind of fishing, and narrower than what
 * the solver can take. Lure limits hold twice the estimated ranges (DEVELOPERS.md, "Numerics"). */
#include "field_table.h"

#include <glib/gi18n-lib.h>

#include "steady.h"

/* ---- Choices ---- */

static const LbFieldChoice law_choices[] = {
  { "power", N_ ("Power law"), LB_PROFILE_POWER },
  { "log", N_ ("Log law"), LB_PROFILE_LOG },
  { "uniform", N_ ("Same at every height"), LB_PROFILE_UNIFORM },
  { "points", N_ ("Measured points"), LB_PROFILE_POINTS },
};

static const LbFieldChoice material_choices[] = {
  { NULL, N_ ("Own roughness"), LB_BED_MATERIAL_NONE },
  { "sand", N_ ("Sand"), LB_BED_MATERIAL_SAND },
  { "gravel", N_ ("Gravel"), LB_BED_MATERIAL_GRAVEL },
  { "cobble", N_ ("Cobble"), LB_BED_MATERIAL_COBBLE },
  { "boulder", N_ ("Boulders"), LB_BED_MATERIAL_BOULDER },
};

static const LbFieldChoice along_choices[] = {
  { "same-discharge", N_ ("Faster where it is shallower"), LB_ALONG_SAME_DISCHARGE },
  { "same-surface-speed", N_ ("Same speed at the surface"), LB_ALONG_SAME_SURFACE_SPEED },
};

static const LbFieldChoice line_out_choices[] = {
  { "given_m", N_ ("Line out given"), LB_LINE_OUT_GIVEN },
  { "weight_above_bed_m", N_ ("Hold the weight above the bed"), LB_LINE_OUT_WEIGHT_ABOVE_BED },
  { "touching", N_ ("Weight just touching"), LB_LINE_OUT_TOUCHING },
};

static const LbFieldChoice shape_choices[] = {
  { "ball", N_ ("Ball"), LB_WEIGHT_BALL },
  { "pear", N_ ("Pear"), LB_WEIGHT_PEAR },
  { "torpedo", N_ ("Torpedo"), LB_WEIGHT_TORPEDO },
  { "disc", N_ ("Disc"), LB_WEIGHT_DISC },
};

/* ---- When a value counts ---- */

static bool
law_is_power (const LbSetup *setup)
{
  return setup->river.profile.law == LB_PROFILE_POWER;
}

static bool
law_is_log (const LbSetup *setup)
{
  return setup->river.profile.law == LB_PROFILE_LOG;
}

static bool
roughness_is_own (const LbSetup *setup)
{
  return law_is_log (setup) && setup->river.profile.material == LB_BED_MATERIAL_NONE;
}

static bool
line_out_is_given (const LbSetup *setup)
{
  return setup->rig.line_out.mode == LB_LINE_OUT_GIVEN;
}

static bool
weight_is_held (const LbSetup *setup)
{
  return setup->rig.line_out.mode == LB_LINE_OUT_WEIGHT_ABOVE_BED;
}

/* ---- The table ---- */

#define AT(member) .offset = offsetof (LbSetup, member)
#define AT_LEADER(member)                                                                          \
  .offset = offsetof (LbSetup, rig.leaders[0].member), .stride = sizeof (LbLeader)
#define NUMBER(q, low, high)                                                                       \
  .kind = LB_FIELD_NUMBER, .quantity = LB_QUANTITY_##q, .minimum = (low), .maximum = (high)
#define CHOICE(list)                                                                               \
  .kind = LB_FIELD_CHOICE, .quantity = LB_QUANTITY_NUMBER, .choices = (list),                      \
  .n_choices = G_N_ELEMENTS (list), .maximum = G_N_ELEMENTS (list) - 1
/* A count of something. */
#define COUNT(low, high) NUMBER (NUMBER, low, high), .whole = true, .step = 1
#define USUAL(low, high) .usual_low = (low), .usual_high = (high)
#define NEEDED .required = true
#define OPTIONAL .required = false
#define NULLABLE(meaning) .nullable = true, .unset_label = (meaning)

/* What every line has in common; `AT_LINE (member)` places it. */
#define LINE_DIAMETER(prefix, place)                                                               \
  {                                                                                                \
    .path = prefix "diameter_m", .label = N_ ("diameter"),                                         \
    .hint = N_ ("Outer diameter of the line"), NUMBER (DIAMETER, 5e-5, 0.005),                     \
    USUAL (1e-4, 0.0015), NEEDED, place (diameter)                                                 \
  }
#define LINE_DENSITY(prefix, place)                                                                \
  {                                                                                                \
    .path = prefix "density_kg_m3", .label = N_ ("density"),                                       \
    .hint = N_ ("Stainless steel 7900, nylon 1140, PVDF 1780, braid 970"),                         \
    NUMBER (DENSITY, 500, 20000), USUAL (900, 8000), NEEDED, place (density)                       \
  }
#define LINE_STIFFNESS(prefix, place)                                                              \
  {                                                                                                \
    .path = prefix "axial_stiffness_n", .label = N_ ("stretch resistance"),                        \
    .hint = N_ ("Pull that would double the length, if the line did not part"),                    \
    NUMBER (STIFFNESS, 10, 1e7), USUAL (10, 1e5), NEEDED, place (axial_stiffness)                  \
  }
#define LINE_BREAKING_LOAD(prefix, place)                                                          \
  {                                                                                                \
    .path = prefix "breaking_load_n", .label = N_ ("breaking load"),                               \
    .hint = N_ ("Of the line with its knots and crimps"), NUMBER (FORCE, 1, 1e5),                  \
    USUAL (10, 1000), OPTIONAL, NULLABLE (N_ ("unknown")), place (breaking_load)                   \
  }
#define LINE_NORMAL_DRAG(prefix, place)                                                            \
  {                                                                                                \
    .path = prefix "normal_drag", .label = N_ ("drag across"),                                     \
    .hint = N_ ("Drag coefficient across the line, on its diameter"), NUMBER (NUMBER, 0, 5),       \
    USUAL (0.8, 2), .step = 0.05, OPTIONAL, NULLABLE (N_ ("from the published curve")),            \
    place (normal_drag)                                                                            \
  }
#define LINE_TANGENTIAL_DRAG(prefix, place)                                                        \
  {                                                                                                \
    .path = prefix "tangential_drag", .label = N_ ("drag along"),                                  \
    .hint = N_ ("Drag coefficient along the line, on its wetted surface"),                         \
    NUMBER (NUMBER, 0, 0.5), USUAL (0, 0.1), .step = 0.005, NEEDED, place (tangential_drag)        \
  }
#define LINE_STRUM(prefix, place)                                                                  \
  {                                                                                                \
    .path = prefix "strum", .label = N_ ("strum factor"),                                          \
    .hint = N_ ("How much a humming line drags more: 1 for none, up to 2.5"),                      \
    NUMBER (NUMBER, 1, 2.5), .step = 0.05, NEEDED, place (strum)                                   \
  }

#define AT_MAINLINE(member) AT (rig.mainline.member)
#define AT_SHANK(member) AT (rig.shank.member)
#define AT_LEADER_LINE(member) AT_LEADER (line.member)

const LbField lb_field_table[] = {
  { .path = "river.depth_m",
    .label = N_ ("Depth"),
    .hint = N_ ("Depth of the water, and where the surface current was measured"),
    NUMBER (LENGTH, 0.1, 100),
    USUAL (1, 15),
    NEEDED,
    AT (river.depth) },
  { .path = "river.bed_friction",
    .label = N_ ("Bed friction"),
    .hint = N_ ("Friction of the tackle on the bed; an estimate"),
    NUMBER (NUMBER, 0, 2),
    USUAL (0, 1),
    .step = 0.05,
    OPTIONAL,
    AT (river.bed_friction) },
  { .path = "river.surface_current_m_s",
    .label = N_ ("Current"),
    .hint = N_ ("Speed of the water at the surface, over the ground"),
    NUMBER (SPEED, 0, 6),
    USUAL (0, 2.5),
    NEEDED,
    AT (river.surface_current) },
  { .path = "river.profile.law",
    .label = N_ ("Current against depth"),
    .hint = N_ ("How the current slows towards the bed"),
    CHOICE (law_choices),
    NEEDED,
    AT (river.profile.law) },
  { .path = "river.profile.exponent",
    .label = N_ ("Exponent"),
    .hint = N_ ("5 for a rough bed to 10 for a smooth one"),
    NUMBER (NUMBER, 1, 20),
    USUAL (4, 10),
    .step = 0.5,
    NEEDED,
    AT (river.profile.exponent),
    .applies = law_is_power },
  { .path = "river.profile.bed_material",
    .label = N_ ("Bed material"),
    .hint = N_ ("Stands for a roughness; an estimate"),
    CHOICE (material_choices),
    OPTIONAL,
    AT (river.profile.material),
    .applies = law_is_log },
  { .path = "river.profile.roughness_m",
    .label = N_ ("Bed roughness"),
    .hint = N_ ("Equivalent sand roughness of the bed"),
    NUMBER (HEIGHT, 1e-5, 3),
    USUAL (0.001, 0.5),
    NEEDED,
    AT (river.profile.roughness),
    .applies = roughness_is_own },
  { .path = "river.along",
    .label = N_ ("Along the reach"),
    .hint = N_ ("What the current does where the depth changes"),
    CHOICE (along_choices),
    NEEDED,
    AT (river.along) },
  { .path = "river.temperature_c",
    .label = N_ ("Water temperature"),
    .hint = N_ ("Sets the density and the viscosity of the water"),
    NUMBER (TEMPERATURE, 0, 30),
    NEEDED,
    AT (river.temperature) },
  { .path = "river.density_kg_m3",
    .label = N_ ("Water density"),
    .hint = NULL,
    NUMBER (DENSITY, 900, 1100),
    OPTIONAL,
    NULLABLE (N_ ("from the temperature")),
    AT (river.density) },
  { .path = "river.kinematic_viscosity_m2_s",
    .label = N_ ("Water viscosity"),
    .hint = NULL,
    NUMBER (VISCOSITY, 1e-7, 1e-5),
    OPTIONAL,
    NULLABLE (N_ ("from the temperature")),
    AT (river.kinematic_viscosity) },
  { .path = "river.gravity_m_s2",
    .label = N_ ("Gravity"),
    .hint = N_ ("In m/s2"),
    NUMBER (NUMBER, 9.7, 9.9),
    NEEDED,
    AT (river.gravity) },

  { .path = "boat.speed_over_ground_m_s",
    .label = N_ ("Boat speed"),
    .hint = N_ ("Over the ground, against the current"),
    NUMBER (SPEED, 0, 5),
    USUAL (0, 1.5),
    NEEDED,
    AT (boat.speed_over_ground) },
  { .path = "boat.reel_height_m",
    .label = N_ ("Reel height"),
    .hint = N_ ("Where the line leaves the boat, above the water"),
    NUMBER (HEIGHT, 0, 5),
    USUAL (0, 1.5),
    NEEDED,
    AT (boat.reel_height) },
  { .path = "boat.position_m",
    .label = N_ ("Boat position"),
    .hint = N_ ("Along the reach, on the scale of the bed points"),
    NUMBER (LENGTH, -1e4, 1e4),
    USUAL (-50, 50),
    OPTIONAL,
    AT (boat.position) },

  LINE_DIAMETER ("mainline.", AT_MAINLINE),
  LINE_DENSITY ("mainline.", AT_MAINLINE),
  LINE_STIFFNESS ("mainline.", AT_MAINLINE),
  LINE_BREAKING_LOAD ("mainline.", AT_MAINLINE),
  LINE_NORMAL_DRAG ("mainline.", AT_MAINLINE),
  LINE_TANGENTIAL_DRAG ("mainline.", AT_MAINLINE),
  LINE_STRUM ("mainline.", AT_MAINLINE),
  { .path = "mainline.line_out",
    .label = N_ ("Line out"),
    .hint = N_ ("Given, or whatever it takes to hold the weight where it should be"),
    CHOICE (line_out_choices),
    NEEDED,
    AT (rig.line_out.mode) },
  { .path = "mainline.line_out.given_m",
    .label = N_ ("Line out"),
    .hint = N_ ("From the reel to the top of the shank"),
    NUMBER (LENGTH, LB_STEADY_SHORTEST_LINE, LB_STEADY_LONGEST_LINE),
    USUAL (1, 30),
    NEEDED,
    AT (rig.line_out.value),
    .applies = line_out_is_given },
  { .path = "mainline.line_out.weight_above_bed_m",
    .label = N_ ("Weight above the bed"),
    .hint = N_ ("The line out follows from it"),
    NUMBER (HEIGHT, 0, 100),
    USUAL (0, 1),
    NEEDED,
    AT (rig.line_out.value),
    .applies = weight_is_held },

  { .path = "shank.length_m",
    .label = N_ ("Shank length"),
    .hint = N_ ("From the weight up to the mainline; 0 for none"),
    NUMBER (HEIGHT, 0, 10),
    USUAL (0, 3),
    NEEDED,
    AT (rig.shank_length) },
  LINE_DIAMETER ("shank.", AT_SHANK),
  LINE_DENSITY ("shank.", AT_SHANK),
  LINE_STIFFNESS ("shank.", AT_SHANK),
  LINE_NORMAL_DRAG ("shank.", AT_SHANK),
  LINE_TANGENTIAL_DRAG ("shank.", AT_SHANK),
  LINE_STRUM ("shank.", AT_SHANK),

  { .path = "weight.mass_kg",
    .label = N_ ("Weight"),
    .hint = N_ ("What it weighs in air"),
    NUMBER (MASS, 0.01, 20),
    USUAL (0.2, 1.85),
    NEEDED,
    AT (rig.weight.mass) },
  { .path = "weight.density_kg_m3",
    .label = N_ ("Density of the weight"),
    .hint = N_ ("Lead 11340, tungsten alloy 17000 to 18500, steel 7850, stone 2600"),
    NUMBER (DENSITY, 1500, 20000),
    USUAL (2500, 19300),
    NEEDED,
    AT (rig.weight.density) },
  { .path = "weight.shape",
    .label = N_ ("Shape of the weight"),
    .hint = NULL,
    CHOICE (shape_choices),
    NEEDED,
    AT (rig.weight.shape) },
  { .path = "weight.drag_coefficient",
    .label = N_ ("Drag of the weight"),
    .hint = N_ ("Drag coefficient on the frontal area"),
    NUMBER (NUMBER, 0, 3),
    USUAL (0.1, 1.5),
    .step = 0.05,
    OPTIONAL,
    NULLABLE (N_ ("from its shape")),
    AT (rig.weight.drag_coefficient) },

  { .path = "leaders[].attach_above_weight_m",
    .label = N_ ("attached above the weight"),
    .hint = N_ ("Measured up the shank"),
    NUMBER (HEIGHT, 0, 10),
    USUAL (0, 2),
    NEEDED,
    AT_LEADER (attach_above_weight) },
  { .path = "leaders[].length_m",
    .label = N_ ("length"),
    .hint = N_ ("From the shank to the lure"),
    NUMBER (LENGTH, 0.05, 60),
    USUAL (0.5, 12),
    NEEDED,
    AT_LEADER (length) },
  LINE_DIAMETER ("leaders[].", AT_LEADER_LINE),
  LINE_DENSITY ("leaders[].", AT_LEADER_LINE),
  LINE_STIFFNESS ("leaders[].", AT_LEADER_LINE),
  LINE_NORMAL_DRAG ("leaders[].", AT_LEADER_LINE),
  LINE_TANGENTIAL_DRAG ("leaders[].", AT_LEADER_LINE),
  LINE_STRUM ("leaders[].", AT_LEADER_LINE),
  LINE_BREAKING_LOAD ("leaders[].", AT_LEADER_LINE),
  { .path = "leaders[].lure.drag_area_m2",
    .label = N_ ("drag area of the lure"),
    .hint = N_ ("Drag divided by half the density and the speed squared; an estimate"),
    NUMBER (AREA, 1e-6, 0.02),
    USUAL (2e-5, 0.001),
    NEEDED,
    AT_LEADER (lure.drag_area) },
  { .path = "leaders[].lure.down_force_ratio",
    .label = N_ ("dive of the lure"),
    .hint = N_ ("Down-force of the lip divided by the drag; an estimate"),
    NUMBER (NUMBER, 0, 2),
    USUAL (0, 1.2),
    .step = 0.05,
    NEEDED,
    AT_LEADER (lure.down_force_ratio) },
  { .path = "leaders[].lure.buoyancy_n",
    .label = N_ ("buoyancy of the lure"),
    .hint = N_ ("What it lifts in still water; below 0 it sinks"),
    NUMBER (SMALL_FORCE, -2, 2),
    USUAL (0, 0.1),
    NEEDED,
    AT_LEADER (lure.buoyancy) },
  { .path = "leaders[].lure.mass_kg",
    .label = N_ ("mass of the lure"),
    .hint = NULL,
    NUMBER (SMALL_MASS, 0, 1),
    USUAL (0.001, 0.04),
    NEEDED,
    AT_LEADER (lure.mass) },
  { .path = "leaders[].lure.length_m",
    .label = N_ ("length of the lure"),
    .hint = NULL,
    NUMBER (HEIGHT, 0.005, 0.5),
    USUAL (0.03, 0.15),
    NEEDED,
    AT_LEADER (lure.length) },
  { .path = "leaders[].lure.hooks",
    .label = N_ ("hooks on the lure"),
    .hint = N_ ("As your local rules count them: a treble may be one hook or three"),
    COUNT (0, 9),
    OPTIONAL,
    AT_LEADER (lure.hooks) },

  { .path = "band.low_m",
    .label = N_ ("Band, low"),
    .hint = N_ ("Lures should run above this height over the bed"),
    NUMBER (HEIGHT, 0, 100),
    USUAL (0, 1),
    NEEDED,
    AT (band.low) },
  { .path = "band.high_m",
    .label = N_ ("Band, high"),
    .hint = N_ ("Lures should run below this height over the bed"),
    NUMBER (HEIGHT, 0, 100),
    USUAL (0, 2),
    NEEDED,
    AT (band.high) },

  { .path = "rules.lures_per_line",
    .label = N_ ("Lures allowed on a line"),
    .hint = N_ ("By your local rules, which decide; Layback only counts"),
    COUNT (1, 20),
    USUAL (1, 5),
    OPTIONAL,
    NULLABLE (N_ ("no limit")),
    AT (rules.lures_per_line) },
  { .path = "rules.hooks_per_line",
    .label = N_ ("Hooks allowed on a line"),
    .hint = N_ ("By your local rules, which decide; Layback only counts"),
    COUNT (1, 60),
    USUAL (1, 9),
    OPTIONAL,
    NULLABLE (N_ ("no limit")),
    AT (rules.hooks_per_line) },
};

const size_t lb_field_table_length = G_N_ELEMENTS (lb_field_table);
