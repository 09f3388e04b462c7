/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_words.h"

#include <glib/gi18n-lib.h>

#include "words.h"

typedef struct
{
  const char *word;
  const char *name; /* a format, marked with N_() */
} Name;

static const Name lead[] = {
  [LB_WEIGHT_BALL] = { "ball", N_ ("%s lead ball") },
  [LB_WEIGHT_PEAR] = { "pear", N_ ("%s lead pear") },
  [LB_WEIGHT_TORPEDO] = { "torpedo", N_ ("%s lead torpedo") },
  [LB_WEIGHT_DISC] = { "disc", N_ ("%s lead disc") },
};

static const Name tungsten[] = {
  [LB_WEIGHT_BALL] = { "ball", N_ ("%s tungsten ball") },
  [LB_WEIGHT_PEAR] = { "pear", N_ ("%s tungsten pear") },
  [LB_WEIGHT_TORPEDO] = { "torpedo", N_ ("%s tungsten torpedo") },
  [LB_WEIGHT_DISC] = { "disc", N_ ("%s tungsten disc") },
};

static const Name lines[] = {
  { "wire", N_ ("stainless wire, %s") },
  { "nylon", N_ ("nylon, %s") },
  { "pvdf", N_ ("PVDF, %s") },
  { "braid", N_ ("braid, %s") },
};

static const Name lures[] = {
  { "shallow", N_ ("floating minnow, %s cm, shallow lip") },
  { "medium", N_ ("floating minnow, %s cm, medium lip") },
  { "deep", N_ ("floating minnow, %s cm, deep lip") },
};

static const char *const sources[] = {
  N_ ("Sizes: common practice, no source. Density: lead 11340 kg/m3, handbook value; "
      "lead with antimony is 10900 to 11250. Drag from the shape."),
  N_ ("Sizes: common practice, no source. Density: an estimate for tungsten heavy "
      "alloy, 17000 to 18500 kg/m3. Drag from the shape."),
  N_ ("Breaking load: least and most for hard-drawn stainless wire of this size, from a "
      "supplier's copy of ASTM A313, straight and unkinked; a crimp or loop holds 0.5 "
      "to 0.9 of it. Stiffness: 180 GPa, handbook value."),
  N_ ("Estimate: 0.5 to 1.0 GPa on the area, without knots; stiffness 2 GPa, which wet "
      "nylon may halve."),
  N_ ("Estimate: 0.5 to 0.8 GPa on the area, without knots; stiffness 2 GPa (1.5 to 3)."),
  N_ ("Estimate: 0.9 to 1.5 GPa on the outer area, without knots; stiffness 40 GPa (20 "
      "to 60). Floats."),
  N_ ("Estimate from body, lip and hooks of a generic lure of this size; low and high "
      "are given. Weigh and tow your own to know better."),
  NULL,
};

const char *const *
lb_catalogue_words_sources (void)
{
  return sources;
}

/* Puts `value` into the translated `format`, which holds one %s. */
static char *
fill_in (const char *format, const char *value)
{
  g_auto (GStrv) halves = g_strsplit (_ (format), "%s", 2);

  return g_strconcat (halves[0], value, halves[1], NULL);
}

char *
lb_catalogue_words_weight (const char *material, LbWeightShape shape, const char *size)
{
  if (g_str_equal (material, "lead"))
    return fill_in (lead[shape].name, size);
  if (g_str_equal (material, "tungsten"))
    return fill_in (tungsten[shape].name, size);
  return NULL;
}

static char *
name_of (const Name *names, size_t n, const char *word, const char *size)
{
  for (size_t i = 0; i < n; i++)
    if (g_str_equal (names[i].word, word))
      return fill_in (names[i].name, size);
  return NULL;
}

char *
lb_catalogue_words_line (const char *material, double diameter, LbUnits units)
{
  g_autofree char *size =
      lb_words_quantity (LB_QUANTITY_DIAMETER, units, diameter, units == LB_UNITS_US ? 3 : 2);

  return name_of (lines, G_N_ELEMENTS (lines), material, size);
}

char *
lb_catalogue_words_lure (const char *lip, double length)
{
  g_autofree char *size = lb_words_quantity (LB_QUANTITY_NUMBER, LB_UNITS_METRIC, length * 100, 0);

  return name_of (lures, G_N_ELEMENTS (lures), lip, size);
}
