/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The units that are known, and which of them a quantity is shown in. Internal to core. */
#pragma once

#include "units.h"

/* What can be measured in the same units. */
typedef enum
{
  LB_DIMENSION_NUMBER,
  LB_DIMENSION_LENGTH,
  LB_DIMENSION_AREA,
  LB_DIMENSION_SPEED,
  LB_DIMENSION_MASS,
  LB_DIMENSION_FORCE,
  LB_DIMENSION_TEMPERATURE,
  LB_DIMENSION_ANGLE,
  LB_DIMENSION_DENSITY,
  LB_DIMENSION_VISCOSITY,
  LB_DIMENSION_FREQUENCY,
  LB_DIMENSION_TIME,
} LbDimension;

/* A unit: SI = (number + offset) * up / down. Two factors, so that "0.7 mm" becomes the very number
 * that 0.0007 is. */
typedef struct
{
  LbDimension dimension;
  double up, down;
  double offset;
  const char *spellings; /* with "|" between them; a blank stands for any number of blanks, a "2" or
                            a "3" for the raised figure, too */
  bool exact_case;       /* capitals matter: "mg" is not "Mg" */
  const char *smaller;   /* the unit of a bare number after this one: 5 ft 6; or NULL */
} LbUnit;

extern const LbUnit lb_unit_table[];
extern const size_t lb_unit_table_size;

/* How a quantity is shown in one of the two systems of units. */
typedef struct
{
  const char *name; /* of the main unit; one of its spellings, or with a raised figure */
  double up, down;  /* as above */
  double offset;
  int decimals;      /* at most */
  bool more_below_1; /* one decimal more when the number is smaller than 1 */
  bool fractions;    /* halves to eighths as common fractions */
  double step;       /* of a slider, in the main unit */
} LbUnitShown;

LbDimension lb_units_dimension (LbQuantity quantity);
const LbUnitShown *lb_units_shown (LbQuantity quantity, LbUnits units);
