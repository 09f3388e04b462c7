/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Quantities, their units, and text to number and back. No locale: the caller says which decimal
 * sign to write; reading takes both "." and ",". */
#pragma once

#include <stdbool.h>
#include <stddef.h>

typedef enum
{
  LB_QUANTITY_NUMBER,      /* no unit */
  LB_QUANTITY_LENGTH,      /* m: depth, line, layback; shown as ft and in, or m */
  LB_QUANTITY_HEIGHT,      /* m: near the bed, along the shank; shown as in, or cm */
  LB_QUANTITY_DIAMETER,    /* m; in (thousandths), or mm */
  LB_QUANTITY_AREA,        /* m2; in2, or cm2 */
  LB_QUANTITY_SPEED,       /* m/s; mph, or m/s */
  LB_QUANTITY_MASS,        /* kg: weights; lb and oz, or kg */
  LB_QUANTITY_SMALL_MASS,  /* kg: lures; oz, or g */
  LB_QUANTITY_FORCE,       /* N: hand and line; lbf, or N */
  LB_QUANTITY_SMALL_FORCE, /* N: buoyancy; ozf, or mN */
  LB_QUANTITY_TEMPERATURE, /* C; F, or C */
  LB_QUANTITY_ANGLE,       /* rad; degrees in both */
  LB_QUANTITY_DENSITY,     /* kg/m3 in both */
  LB_QUANTITY_VISCOSITY,   /* m2/s; 1e-6 m2/s in both */
  LB_QUANTITY_STIFFNESS,   /* N; lbf, or N */
  LB_QUANTITY_FREQUENCY,   /* Hz in both */
  LB_QUANTITY_TIME,        /* s in both */
  LB_N_QUANTITIES,
} LbQuantity;

typedef enum
{
  LB_UNITS_US,
  LB_UNITS_METRIC,
} LbUnits;

typedef enum
{
  LB_PARSE_OK,
  LB_PARSE_EMPTY,        /* nothing but blanks */
  LB_PARSE_NOT_A_NUMBER, /* no number where one must stand */
  LB_PARSE_UNKNOWN_UNIT, /* a word that is no unit at all */
  LB_PARSE_WRONG_UNIT,   /* a unit of another quantity ("3 lb" for a length) */
  LB_PARSE_OUT_OF_RANGE, /* too large for a number */
} LbParseResult;

/* Reads `text` as a `quantity` into SI. Takes whole and decimal numbers, fractions ("1 1/4 lb",
 * "3/8"), several parts ("20 ft 6 in", "2 lb 3 oz", "5' 6\""), any unit of the quantity whatever
 * the setting, and a bare number in the main unit that `units` shows. A bare number after feet is
 * inches, after pounds ounces. Pounds and kilograms are taken for a force as well. Both "." and ","
 * are the decimal sign; digits are never grouped. Minus in front counts for the whole. On anything
 * but LB_PARSE_OK `*value` is left alone. */
LbParseResult lb_units_parse (LbQuantity quantity, LbUnits units, const char *text, double *value);

/* Writes `value` (SI) as a person would, with its unit: "20 ft 6 in", "1¾ lb", "2.5 mph".
 * `decimal` is the decimal sign ('.' or ','). `decimals` < 0 takes the quantity's own. Always ends
 * `text` with a zero; returns the length the whole would have, like snprintf(). An unset value
 * gives "-". */
size_t lb_units_format (LbQuantity quantity,
                        LbUnits units,
                        double value,
                        int decimals,
                        char decimal,
                        char *text,
                        size_t size);

/* How many decimals to write `value` with when `decimals` are asked for: as many, unless the number
 * would then be off by more than a twentieth of itself ("0.9 kg" as "1 kg"); -1, the quantity's
 * own, instead. Of a length in feet and inches the decimals are those of the inches. */
int lb_units_fit_decimals (LbQuantity quantity, LbUnits units, double value, int decimals);

/* The main unit's name as it is shown ("ft", "mph", "kg"), "" for a plain number. */
const char *lb_units_name (LbQuantity quantity, LbUnits units);

/* How many SI units make one of the main unit; for temperature the size of a degree. */
double lb_units_size (LbQuantity quantity, LbUnits units);

/* SI to the main unit and back, the offset of temperature included. */
double lb_units_from_si (LbQuantity quantity, LbUnits units, double value);
double lb_units_to_si (LbQuantity quantity, LbUnits units, double value);

/* A handy step for a slider or spin button, in SI. */
double lb_units_step (LbQuantity quantity, LbUnits units);
