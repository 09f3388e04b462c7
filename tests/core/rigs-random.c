/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rigs.h"

#include <stdlib.h>

#include <gsl/gsl_math.h>
#include <gsl/gsl_qrng.h>
#include <gsl/gsl_rng.h>

#define SOBOL_DIMENSIONS 40

struct RigSource
{
  RigKind kind;
  gsl_qrng *sobol;
  gsl_rng *rng;
  size_t index;
  double point[SOBOL_DIMENSIONS];
  size_t used; /* of point */
};

RigSource *
rig_source_new (RigKind kind)
{
  RigSource *s = calloc (1, sizeof *s);

  s->kind = kind;
  s->sobol = gsl_qrng_alloc (gsl_qrng_sobol, SOBOL_DIMENSIONS);
  s->rng = gsl_rng_alloc (gsl_rng_taus2);
  return s;
}

void
rig_source_free (RigSource *s)
{
  gsl_qrng_free (s->sobol);
  gsl_rng_free (s->rng);
  free (s);
}

void
rig_source_skip_to (RigSource *s, size_t index)
{
  gsl_qrng_init (s->sobol);
  for (s->index = 0; s->index < index; s->index++)
    gsl_qrng_get (s->sobol, s->point);
}

/* ---- Draws ---- */

static double
draw (RigSource *s)
{
  return s->used < SOBOL_DIMENSIONS ? s->point[s->used++] : gsl_rng_uniform (s->rng);
}

static double
between (RigSource *s, double low, double high)
{
  return low + (high - low) * draw (s);
}

static double
log_between (RigSource *s, double low, double high)
{
  return low * pow (high / low, draw (s));
}

/* From 0 to `high`, and exactly at one end one time in ten. */
static double
slider (RigSource *s, double high)
{
  double u = draw (s) * 1.1 - 0.05;

  return high * GSL_MAX_DBL (0, GSL_MIN_DBL (u, 1));
}

static size_t
choice (RigSource *s, size_t n)
{
  /* Drawn once: GSL_MIN is a macro. */
  return (size_t) (draw (s) * (double) n);
}

/* ---- Parts ---- */

/* Braid, nylon or steel. Typical densities and moduli; estimates, only the spread matters here. */
static LbLine
random_line (RigSource *s, double thinnest, double thickest)
{
  static const double density[] = { 970, 1140, 7850 };
  static const double modulus[] = { 40e9, 2e9, 150e9 };
  size_t material = choice (s, 3);
  LbLine line = { .density = density[material], .breaking_load = LB_UNSET };

  line.diameter = between (s, thinnest, thickest);
  line.axial_stiffness = modulus[material] * M_PI * line.diameter * line.diameter / 4;
  line.normal_drag = choice (s, 2) == 0 ? LB_UNSET : between (s, 0.9, 1.4);
  line.tangential_drag = between (s, 0.005, 0.04);
  line.strum = between (s, 1, 2.5);
  return line;
}

static void
random_profile (RigSource *s, LbProfile *p)
{
  *p = (LbProfile){ .law = (LbProfileLaw) choice (s, 4), .exponent = between (s, 3, 12) };
  p->roughness = log_between (s, 0.001, 0.3);
  if (p->law != LB_PROFILE_POINTS)
    return;
  p->n_points = 3 + choice (s, 5);
  for (size_t i = 0; i < p->n_points; i++)
    {
      p->height_fraction[i] = ((double) i + (i == 0 ? 0 : 0.6 * gsl_rng_uniform (s->rng)))
                              / ((double) p->n_points - 0.4);
      p->speed_fraction[i] =
          0.2 + 0.8 * pow (p->height_fraction[i], 0.5) + 0.2 * (gsl_rng_uniform (s->rng) - 0.5);
    }
}

/* A walk of surveyed points on both sides of the boat, from half to one and a half of the depth. */
static void
random_bed (RigSource *s, LbRiver *river, double unevenness)
{
  double x = -between (s, 1, 40);
  double depth = river->depth;

  river->n_bed_points = 3 + choice (s, 60);
  for (size_t i = 0; i < river->n_bed_points; i++)
    {
      double step = 0.4 + 4 * gsl_rng_uniform (s->rng);
      river->bed_x[i] = x;
      river->bed_depth[i] = depth;
      x += step;
      depth += unevenness * step * (2 * gsl_rng_uniform (s->rng) - 1);
      depth = GSL_MAX_DBL (0.5 * river->depth, GSL_MIN_DBL (depth, 1.5 * river->depth));
      depth = GSL_MAX_DBL (depth, 0.2);
    }
}

static void
random_leader (RigSource *s, const LbRig *rig, bool wild, LbLeader *leader)
{
  size_t place = choice (s, 8);
  bool sinking = wild && choice (s, 4) == 0;

  leader->attach_above_weight = place == 0   ? 0
                                : place == 1 ? rig->shank_length
                                             : between (s, 0, rig->shank_length);
  leader->length = wild ? log_between (s, 0.1, 10) : between (s, 0.5, 8);
  leader->line = random_line (s, 0.00015, 0.0006);
  if (!wild && leader->line.density > 2000)
    leader->line.density = 1140;
  leader->lure.drag_area = log_between (s, 3e-5, 7e-4);
  leader->lure.down_force_ratio = between (s, 0, wild ? 1.2 : 0.4);
  leader->lure.buoyancy = sinking ? -log_between (s, 0.001, 0.5) : log_between (s, 0.001, 0.04);
  leader->lure.mass = between (s, 0.002, 0.03);
  /* What sinks must be heavier than the water it displaces. */
  leader->lure.mass = GSL_MAX_DBL (leader->lure.mass, -1.2 * leader->lure.buoyancy / 9.8);
  leader->lure.length = between (s, 0.04, 0.15);
}

/* ---- Setups ---- */

static void
random_clear (RigSource *s, LbSetup *setup)
{
  LbRiver *river = &setup->river;
  LbRig *rig = &setup->rig;

  river->depth = between (s, 3, 15);
  river->surface_current = between (s, 0.4, 2);
  setup->boat.speed_over_ground = between (s, 0, 1);
  rig->weight.mass = between (s, 0.5, 2.5);
  rig->line_out.mode = (LbLineOutMode) choice (s, 2);
  rig->line_out.value =
      river->depth
      * (rig->line_out.mode == LB_LINE_OUT_GIVEN ? between (s, 0.4, 0.7) : between (s, 0.25, 0.5));
  setup->boat.reel_height = slider (s, 1.5);
  rig->n_leaders = choice (s, 6) == 5 ? 8 : choice (s, 5);
  rig->shank_length = between (s, 0.2, 1.2);
  if (choice (s, 3) == 0)
    random_bed (s, river, 0.15);
}

static void
random_wild (RigSource *s, LbSetup *setup)
{
  LbRiver *river = &setup->river;
  LbRig *rig = &setup->rig;

  river->depth = log_between (s, 0.3, 15);
  river->surface_current = slider (s, 3);
  setup->boat.speed_over_ground = slider (s, 1.5);
  rig->weight.mass = log_between (s, 0.1, 3);
  rig->line_out.mode = (LbLineOutMode) choice (s, 3);
  if (rig->line_out.mode == LB_LINE_OUT_GIVEN)
    rig->line_out.value = log_between (s, 0.1, 60);
  else
    rig->line_out.value = slider (s, river->depth);
  setup->boat.reel_height = slider (s, 2);
  rig->n_leaders = choice (s, LB_MAX_LEADERS + 1);
  rig->shank_length = choice (s, 10) == 0 ? 0 : log_between (s, 0.05, 3);
  if (choice (s, 2) == 0)
    random_bed (s, river, 0.5);
}

void
rig_source_next (RigSource *s, LbSetup *setup)
{
  LbRiver *river = &setup->river;
  LbRig *rig = &setup->rig;
  bool wild = s->kind == RIG_WILD;

  gsl_qrng_get (s->sobol, s->point);
  s->used = 0;
  gsl_rng_set (s->rng, 1000003UL * (s->index + 1));
  s->index++;

  *setup = (LbSetup){ 0 };
  if (wild)
    random_wild (s, setup);
  else
    random_clear (s, setup);
  random_profile (s, &river->profile);
  river->along = (LbAlong) choice (s, 2);
  river->bed_friction = slider (s, 1);
  river->temperature = between (s, 0, 25);
  river->density = river->kinematic_viscosity = LB_UNSET;
  river->gravity = 9.80665;
  setup->boat.position = between (s, -10, 10);
  rig->weight.shape = (LbWeightShape) choice (s, 4);
  rig->weight.density = choice (s, 3) == 0 ? 7850 : 11340;
  rig->weight.drag_coefficient = choice (s, 2) == 0 ? LB_UNSET : between (s, 0.2, 1.1);
  rig->mainline = random_line (s, 0.0003, 0.0012);
  rig->shank = random_line (s, 0.0004, 0.001);
  for (size_t i = 0; i < rig->n_leaders; i++)
    random_leader (s, rig, wild, &rig->leaders[i]);
  setup->band = (LbBand){ 0.1, 0.45 };
}

/* ---- Printing ---- */

static void
print_line (FILE *file, const char *name, const LbLine *l)
{
  fprintf (file, "%s: d %.17g density %.17g EA %.17g Cn %.17g Ct %.17g strum %.17g\n", name,
           l->diameter, l->density, l->axial_stiffness, l->normal_drag, l->tangential_drag,
           l->strum);
}

static void
print_river (FILE *file, const LbRiver *r)
{
  const LbProfile *p = &r->profile;

  fprintf (
      file,
      "river: depth %.17g current %.17g along %d friction %.17g temperature %.17g density %.17g "
      "viscosity %.17g gravity %.17g\n",
      r->depth, r->surface_current, r->along, r->bed_friction, r->temperature, r->density,
      r->kinematic_viscosity, r->gravity);
  fprintf (file, "profile: law %d exponent %.17g roughness %.17g", p->law, p->exponent,
           p->roughness);
  for (size_t i = 0; i < p->n_points; i++)
    fprintf (file, " (%.17g, %.17g)", p->height_fraction[i], p->speed_fraction[i]);
  fprintf (file, "\nbed:");
  for (size_t i = 0; i < r->n_bed_points; i++)
    fprintf (file, " (%.17g, %.17g)", r->bed_x[i], r->bed_depth[i]);
  fprintf (file, "\n");
}

void
rig_print (FILE *file, const LbSetup *setup)
{
  const LbRig *rig = &setup->rig;

  print_river (file, &setup->river);
  fprintf (file, "boat: speed %.17g reel height %.17g position %.17g\n",
           setup->boat.speed_over_ground, setup->boat.reel_height, setup->boat.position);
  fprintf (file, "line out: mode %d value %.17g; shank length %.17g\n", rig->line_out.mode,
           rig->line_out.value, rig->shank_length);
  fprintf (file, "weight: mass %.17g density %.17g shape %d Cd %.17g\n", rig->weight.mass,
           rig->weight.density, rig->weight.shape, rig->weight.drag_coefficient);
  print_line (file, "mainline", &rig->mainline);
  print_line (file, "shank", &rig->shank);
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      const LbLeader *l = &rig->leaders[i];
      fprintf (file,
               "leader %zu: attach %.17g length %.17g; lure S %.17g ratio %.17g buoyancy "
               "%.17g mass %.17g length %.17g\n  ",
               i, l->attach_above_weight, l->length, l->lure.drag_area, l->lure.down_force_ratio,
               l->lure.buoyancy, l->lure.mass, l->lure.length);
      print_line (file, "line", &l->line);
    }
}
