/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sizes are exact by definition: the international yard and pound (1959), the standard gravity
 * 9.80665 m/s2, the nautical mile of 1852 m (NIST Special Publication 811). */
#include "units_table.h"

#define PI 3.14159265358979323846
#define POUND 0.45359237
#define POUND_FORCE (0.45359237 * 9.80665)

/* clang-format off */
const LbUnit lb_unit_table[] = {
  { LB_DIMENSION_NUMBER, 1, 100, 0, "%|percent|per cent", false, NULL },

  { LB_DIMENSION_LENGTH, 1, 1, 0, "m|meter|meters|metre|metres", false, NULL },
  { LB_DIMENSION_LENGTH, 1, 100, 0,
    "cm|centimeter|centimeters|centimetre|centimetres", false, NULL },
  { LB_DIMENSION_LENGTH, 1, 1000, 0,
    "mm|millimeter|millimeters|millimetre|millimetres", false, NULL },
  { LB_DIMENSION_LENGTH, 1000, 1, 0, "km|kilometer|kilometers|kilometre|kilometres", false, NULL },
  { LB_DIMENSION_LENGTH, 3048, 10000, 0, "ft|foot|feet|'|\u2032|\u2019", false, "in" },
  { LB_DIMENSION_LENGTH, 254, 10000, 0,
    "in|ins|inch|inches|\"|''|\u2033|\u201d|\u2032\u2032|\u2019\u2019", false, NULL },
  { LB_DIMENSION_LENGTH, 254, 1e7, 0, "thou|mil|mils", false, NULL },
  { LB_DIMENSION_LENGTH, 9144, 10000, 0, "yd|yds|yard|yards", false, NULL },
  { LB_DIMENSION_LENGTH, 18288, 10000, 0, "fathom|fathoms|ftm|fm", false, NULL },
  { LB_DIMENSION_LENGTH, 1609344, 1000, 0, "mi|mile|miles", false, NULL },

  { LB_DIMENSION_AREA, 1, 1, 0,
    "m2|sq m|sq. m|square meter|square meters|square metre|square metres", false, NULL },
  { LB_DIMENSION_AREA, 1, 1e4, 0,
    "cm2|sq cm|sq. cm|square centimeter|square centimeters|square centimetre|square centimetres",
    false, NULL },
  { LB_DIMENSION_AREA, 1, 1e6, 0,
    "mm2|sq mm|sq. mm|square millimeter|square millimeters|square millimetre|square millimetres",
    false, NULL },
  { LB_DIMENSION_AREA, 64516, 1e8, 0, "in2|sq in|sq. in|square inch|square inches", false, NULL },
  { LB_DIMENSION_AREA, 9290304, 1e8, 0, "ft2|sq ft|sq. ft|square foot|square feet", false, NULL },

  { LB_DIMENSION_SPEED, 1, 1, 0,
    "m/s|m/sec|meter per second|meters per second|metre per second|metres per second", false,
    NULL },
  { LB_DIMENSION_SPEED, 1, 100, 0, "cm/s|cm/sec", false, NULL },
  { LB_DIMENSION_SPEED, 10, 36, 0,
    "km/h|km/hr|kmh|kph|kmph|kilometer per hour|kilometers per hour|kilometre per hour|"
    "kilometres per hour", false, NULL },
  { LB_DIMENSION_SPEED, 44704, 100000, 0,
    "mph|mi/h|mi/hr|mile/h|miles/h|mile/hour|miles/hour|mile per hour|miles per hour|mile an hour|"
    "miles an hour", false, NULL },
  { LB_DIMENSION_SPEED, 1852, 3600, 0, "kn|kt|kts|knot|knots", false, NULL },
  { LB_DIMENSION_SPEED, 3048, 10000, 0,
    "ft/s|ft/sec|fps|foot per second|feet per second|feet/second", false, NULL },
  { LB_DIMENSION_SPEED, 254, 10000, 0, "in/s|in/sec|inch per second|inches per second", false,
    NULL },

  { LB_DIMENSION_MASS, POUND, 1, 0, "lb|lbs|pound|pounds", false, "oz" },
  { LB_DIMENSION_MASS, POUND, 16, 0, "oz|ounce|ounces", false, NULL },
  { LB_DIMENSION_MASS, 1, 1, 0,
    "kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes", false, NULL },
  { LB_DIMENSION_MASS, 1, 1000, 0, "g|gram|grams|gramme|grammes", false, NULL },
  { LB_DIMENSION_MASS, 1, 1e6, 0, "mg|milligram|milligrams", true, NULL },

  /* On the water a pull is said in pounds or kilos, too. */
  { LB_DIMENSION_FORCE, 1, 1, 0, "n|newton|newtons", false, NULL },
  { LB_DIMENSION_FORCE, 1, 1000, 0, "mN|mn|millinewton|millinewtons", true, NULL },
  { LB_DIMENSION_FORCE, 1000, 1, 0, "kN|kn|kilonewton|kilonewtons", true, NULL },
  { LB_DIMENSION_FORCE, POUND_FORCE, 1, 0,
    "lbf|lb f|lb|lbs|pound|pounds|pound force|pounds force|pound-force|pounds-force", false, "oz" },
  { LB_DIMENSION_FORCE, POUND_FORCE, 16, 0,
    "ozf|oz f|oz|ounce|ounces|ounce force|ounces force|ounce-force|ounces-force", false, NULL },
  { LB_DIMENSION_FORCE, 980665, 1e5, 0, "kgf|kg|kp|kilo|kilos|kilogram|kilograms", false, NULL },
  { LB_DIMENSION_FORCE, 980665, 1e8, 0, "gf|g|gram|grams", false, NULL },

  { LB_DIMENSION_TEMPERATURE, 1, 1, 0,
    "\u00b0 c|\u00ba c|\u2103|c|deg c|degree c|degrees c|celsius|centigrade|"
    "degree celsius|degrees celsius|degrees centigrade", false, NULL },
  { LB_DIMENSION_TEMPERATURE, 5, 9, -32,
    "\u00b0 f|\u00ba f|\u2109|f|deg f|degree f|degrees f|fahrenheit|degrees fahrenheit|"
    "degree fahrenheit", false, NULL },
  { LB_DIMENSION_TEMPERATURE, 1, 1, -273.15, "k|kelvin|kelvins", false, NULL },

  { LB_DIMENSION_ANGLE, PI, 180, 0, "\u00b0|\u00ba|deg|degs|degree|degrees", false, NULL },
  { LB_DIMENSION_ANGLE, 1, 1, 0, "rad|radian|radians", false, NULL },

  { LB_DIMENSION_DENSITY, 1, 1, 0,
    "kg/m3|kilograms per cubic meter|kilograms per cubic metre", false, NULL },
  { LB_DIMENSION_DENSITY, 1000, 1, 0,
    "g/cm3|g/cc|g/ml|kg/l|grams per cubic centimeter|grams per cubic centimetre", false, NULL },
  { LB_DIMENSION_DENSITY, POUND * 1e12, 3048.0 * 3048 * 3048, 0,
    "lb/ft3|lbs/ft3|pounds per cubic foot", false, NULL },

  { LB_DIMENSION_VISCOSITY, 1, 1, 0, "m2/s", false, NULL },
  { LB_DIMENSION_VISCOSITY, 1, 1e6, 0, "mm2/s|cst|centistokes", false, NULL },
  { LB_DIMENSION_VISCOSITY, 1, 1e4, 0, "cm2/s|st|stokes", false, NULL },

  { LB_DIMENSION_FREQUENCY, 1, 1, 0, "hz|hertz", false, NULL },
  { LB_DIMENSION_FREQUENCY, 1000, 1, 0, "khz|kilohertz", false, NULL },

  { LB_DIMENSION_TIME, 1, 1, 0, "s|sec|secs|second|seconds", false, NULL },
  { LB_DIMENSION_TIME, 1, 1000, 0, "ms|millisecond|milliseconds", true, NULL },
  { LB_DIMENSION_TIME, 60, 1, 0, "min|mins|minute|minutes", false, "s" },
  { LB_DIMENSION_TIME, 3600, 1, 0, "h|hr|hrs|hour|hours", false, "min" },
};

const size_t lb_unit_table_size = sizeof lb_unit_table / sizeof *lb_unit_table;

/* Name, up, down, offset, decimals, more below 1, fractions, step; US first. */
static const LbUnitShown shown[LB_N_QUANTITIES][2] = {
  [LB_QUANTITY_NUMBER] = {
    { "", 1, 1, 0, 3, false, false, 0.05 },
    { "", 1, 1, 0, 3, false, false, 0.05 } },
  [LB_QUANTITY_LENGTH] = { /* decimals of the inch; see lb_units_format() */
    { "ft", 3048, 10000, 0, 0, false, false, 0.5 },
    { "m", 1, 1, 0, 2, false, false, 0.1 } },
  [LB_QUANTITY_HEIGHT] = {
    { "in", 254, 10000, 0, 1, false, false, 1 },
    { "cm", 1, 100, 0, 1, false, false, 1 } },
  [LB_QUANTITY_DIAMETER] = {
    { "in", 254, 10000, 0, 4, false, false, 0.001 },
    { "mm", 1, 1000, 0, 3, false, false, 0.05 } },
  [LB_QUANTITY_AREA] = {
    { "in\u00b2", 64516, 1e8, 0, 3, false, false, 0.05 },
    { "cm\u00b2", 1, 1e4, 0, 2, false, false, 0.2 } },
  [LB_QUANTITY_SPEED] = {
    { "mph", 44704, 100000, 0, 1, false, false, 0.1 },
    { "m/s", 1, 1, 0, 2, false, false, 0.05 } },
  [LB_QUANTITY_MASS] = {
    { "lb", POUND, 1, 0, 2, false, true, 0.125 },
    { "kg", 1, 1, 0, 2, true, false, 0.05 } },
  [LB_QUANTITY_SMALL_MASS] = {
    { "oz", POUND, 16, 0, 2, false, true, 0.05 },
    { "g", 1, 1000, 0, 1, false, false, 0.5 } },
  [LB_QUANTITY_FORCE] = {
    { "lbf", POUND_FORCE, 1, 0, 1, true, false, 1 },
    { "N", 1, 1, 0, 1, true, false, 5 } },
  [LB_QUANTITY_SMALL_FORCE] = {
    { "ozf", POUND_FORCE, 16, 0, 2, true, false, 0.02 },
    { "mN", 1, 1000, 0, 1, false, false, 5 } },
  [LB_QUANTITY_TEMPERATURE] = {
    { "\u00b0F", 5, 9, -32, 1, false, false, 1 },
    { "\u00b0C", 1, 1, 0, 1, false, false, 1 } },
  [LB_QUANTITY_ANGLE] = {
    { "\u00b0", PI, 180, 0, 1, false, false, 1 },
    { "\u00b0", PI, 180, 0, 1, false, false, 1 } },
  [LB_QUANTITY_DENSITY] = {
    { "kg/m\u00b3", 1, 1, 0, 1, false, false, 10 },
    { "kg/m\u00b3", 1, 1, 0, 1, false, false, 10 } },
  [LB_QUANTITY_VISCOSITY] = {
    { "mm\u00b2/s", 1, 1e6, 0, 3, false, false, 0.05 },
    { "mm\u00b2/s", 1, 1e6, 0, 3, false, false, 0.05 } },
  [LB_QUANTITY_STIFFNESS] = {
    { "lbf", POUND_FORCE, 1, 0, 0, false, false, 50 },
    { "N", 1, 1, 0, 0, false, false, 100 } },
  [LB_QUANTITY_FREQUENCY] = {
    { "Hz", 1, 1, 0, 0, true, false, 1 },
    { "Hz", 1, 1, 0, 0, true, false, 1 } },
  [LB_QUANTITY_TIME] = {
    { "s", 1, 1, 0, 1, false, false, 1 },
    { "s", 1, 1, 0, 1, false, false, 1 } },
};
/* clang-format on */

const LbUnitShown *
lb_units_shown (LbQuantity quantity, LbUnits units)
{
  return &shown[quantity][units == LB_UNITS_METRIC];
}

LbDimension
lb_units_dimension (LbQuantity quantity)
{
  switch (quantity)
    {
    case LB_QUANTITY_LENGTH:
    case LB_QUANTITY_HEIGHT:
    case LB_QUANTITY_DIAMETER:
      return LB_DIMENSION_LENGTH;
    case LB_QUANTITY_AREA:
      return LB_DIMENSION_AREA;
    case LB_QUANTITY_SPEED:
      return LB_DIMENSION_SPEED;
    case LB_QUANTITY_MASS:
    case LB_QUANTITY_SMALL_MASS:
      return LB_DIMENSION_MASS;
    case LB_QUANTITY_FORCE:
    case LB_QUANTITY_SMALL_FORCE:
    case LB_QUANTITY_STIFFNESS:
      return LB_DIMENSION_FORCE;
    case LB_QUANTITY_TEMPERATURE:
      return LB_DIMENSION_TEMPERATURE;
    case LB_QUANTITY_ANGLE:
      return LB_DIMENSION_ANGLE;
    case LB_QUANTITY_DENSITY:
      return LB_DIMENSION_DENSITY;
    case LB_QUANTITY_VISCOSITY:
      return LB_DIMENSION_VISCOSITY;
    case LB_QUANTITY_FREQUENCY:
      return LB_DIMENSION_FREQUENCY;
    case LB_QUANTITY_TIME:
      return LB_DIMENSION_TIME;
    case LB_QUANTITY_NUMBER:
    case LB_N_QUANTITIES:
      break;
    }
  return LB_DIMENSION_NUMBER;
}
