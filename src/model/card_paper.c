/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How large cards and sheets are, and what sizes and other choices are called. */
#include "card.h"

#include <math.h>
#include <glib/gi18n-lib.h>

#define INCH 0.0254
#define MILLIMETRE 1e-3

/* A sheet may be this much too small for its card, m: a letter card does go on a letter sheet. */
#define HAIR 1e-6

typedef struct
{
  const char *name;
  const char *label;
  double width, height; /* m, upright */
} Paper;

/* Letter: ANSI Y14.1 size A; A4 to A6: ISO 216; the others by definition. */
static const Paper sizes[LB_N_CARD_SIZES] = {
  [LB_CARD_3X5] = { "3x5-in", N_ ("3 × 5 in"), 3 * INCH, 5 * INCH },
  [LB_CARD_4X6] = { "4x6-in", N_ ("4 × 6 in"), 4 * INCH, 6 * INCH },
  [LB_CARD_HALF_LETTER] = { "half-letter", N_ ("Half letter, 5½ × 8½ in"), 5.5 * INCH, 8.5 * INCH },
  [LB_CARD_LETTER] = { "letter", N_ ("Letter, 8½ × 11 in"), 8.5 * INCH, 11 * INCH },
  [LB_CARD_A6] = { "a6", N_ ("A6, 105 × 148 mm"), 105 * MILLIMETRE, 148 * MILLIMETRE },
  [LB_CARD_A5] = { "a5", N_ ("A5, 148 × 210 mm"), 148 * MILLIMETRE, 210 * MILLIMETRE },
  [LB_CARD_A4] = { "a4", N_ ("A4, 210 × 297 mm"), 210 * MILLIMETRE, 297 * MILLIMETRE },
  [LB_CARD_OWN_SIZE] = { "own", N_ ("Own size"), 0, 0 },
};

static const struct
{
  const char *name;
  const char *label;
  LbCardSize size;
} sheets[LB_N_CARD_SHEETS] = {
  [LB_CARD_SHEET_AS_CARD] = { "as-card", N_ ("As large as the card"), LB_CARD_OWN_SIZE },
  [LB_CARD_SHEET_LETTER] = { "letter", N_ ("Letter, 8½ × 11 in"), LB_CARD_LETTER },
  [LB_CARD_SHEET_A4] = { "a4", N_ ("A4, 210 × 297 mm"), LB_CARD_A4 },
};

typedef struct
{
  const char *name;
  const char *label;
} Named;

static const Named parts[LB_N_CARD_PARTS] = {
  [LB_CARD_PART_RIG] = { "rig_diagram", N_ ("Rig diagram") },
  [LB_CARD_PART_RUNNING] = { "running_diagram", N_ ("Running diagram") },
  [LB_CARD_PART_TABLE] = { "settings_table", N_ ("Settings table") },
  [LB_CARD_PART_GAUGE] = { "wire_angle_gauge", N_ ("Wire-angle gauge") },
  [LB_CARD_PART_TEMPLATE] = { "shank_template", N_ ("Shank template at true size") },
  [LB_CARD_PART_NOTES] = { "notes", N_ ("Notes") },
};

static const Named joints[LB_N_CARD_JOINTS] = {
  [LB_CARD_MAINLINE_TO_SHANK] = { "mainline_to_shank", N_ ("Mainline to shank") },
  [LB_CARD_SHANK_TO_WEIGHT] = { "shank_to_weight", N_ ("Shank to weight") },
  [LB_CARD_LEADER_TO_SHANK] = { "leader_to_shank", N_ ("Leader to shank") },
  [LB_CARD_LEADER_TO_LURE] = { "leader_to_lure", N_ ("Leader to lure") },
};

/* ---- Measures ---- */

void
lb_card_size_get_measures (LbCardSize size, double *width, double *height)
{
  *width = sizes[size].width;
  *height = sizes[size].height;
}

void
lb_card_get_measures (const LbCard *card, double *width, double *height)
{
  double w, h;

  lb_card_size_get_measures (card->size, &w, &h);
  if (card->size == LB_CARD_OWN_SIZE)
    {
      w = card->own_width;
      h = card->own_height;
    }
  *width = card->wide && card->size != LB_CARD_OWN_SIZE ? h : w;
  *height = card->wide && card->size != LB_CARD_OWN_SIZE ? w : h;
}

void
lb_card_get_sheet_measures (const LbCard *card, double *width, double *height)
{
  double w, h, sheet_w, sheet_h;

  lb_card_get_measures (card, &w, &h);
  lb_card_size_get_measures (sheets[card->sheet].size, &sheet_w, &sheet_h);
  if (fmin (w, h) > sheet_w + HAIR || fmax (w, h) > sheet_h + HAIR)
    {
      sheet_w = w;
      sheet_h = h;
    }
  *width = sheet_w;
  *height = sheet_h;
}

/* ---- Names ---- */

const char *
lb_card_size_name (LbCardSize size)
{
  return sizes[size].name;
}

const char *
lb_card_sheet_name (LbCardSheet sheet)
{
  return sheets[sheet].name;
}

const char *
lb_card_part_name (LbCardPart part)
{
  return parts[part].name;
}

const char *
lb_card_joint_name (LbCardJoint joint)
{
  return joints[joint].name;
}

const char *
lb_card_size_label (LbCardSize size)
{
  return _ (sizes[size].label);
}

const char *
lb_card_sheet_label (LbCardSheet sheet)
{
  return _ (sheets[sheet].label);
}

const char *
lb_card_part_label (LbCardPart part)
{
  return _ (parts[part].label);
}

const char *
lb_card_joint_label (LbCardJoint joint)
{
  return _ (joints[joint].label);
}
