/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All colours, widths and letter sizes of the drawings, in one place. */
#pragma once

typedef enum
{
  LB_THEME_LIGHT,
  LB_THEME_DARK,
  LB_THEME_PRINT, /* greys on white, sparing of ink */
  LB_N_THEMES,
} LbTheme;

typedef enum
{
  LB_COLOUR_NONE,
  LB_COLOUR_SKY_TOP,
  LB_COLOUR_SKY_LOW,
  LB_COLOUR_WATER_TOP,
  LB_COLOUR_WATER_LOW,
  LB_COLOUR_SURFACE, /* the line between air and water */
  LB_COLOUR_BED_TOP,
  LB_COLOUR_BED_LOW,
  LB_COLOUR_BED_LINE,
  LB_COLOUR_PEBBLE,
  LB_COLOUR_PEBBLE_LIGHT,
  LB_COLOUR_GRID,
  LB_COLOUR_TEXT,       /* words that must be read */
  LB_COLOUR_TEXT_QUIET, /* scales */
  LB_COLOUR_TEXT_ON_BED,
  LB_COLOUR_CARD, /* what words stand on over the water */
  LB_COLOUR_CARD_EDGE,
  LB_COLOUR_POINTER, /* the thin line from a label to its thing */
  LB_COLOUR_HULL,
  LB_COLOUR_HULL_TRIM,
  LB_COLOUR_HULL_LINE,
  LB_COLOUR_REEL,
  LB_COLOUR_WIRE,
  LB_COLOUR_SHANK,
  LB_COLOUR_LEADER,
  LB_COLOUR_WEIGHT,
  LB_COLOUR_WEIGHT_LIGHT,
  LB_COLOUR_LURE_BACK,
  LB_COLOUR_LURE_BELLY,
  LB_COLOUR_LURE_LINE,
  LB_COLOUR_CURRENT, /* the arrows of the water's speed */
  LB_COLOUR_ANGLE,
  LB_COLOUR_BAND,
  LB_COLOUR_BAND_EDGE,
  LB_COLOUR_INSIDE, /* markers: in the band, above, below, on the bed */
  LB_COLOUR_ABOVE,
  LB_COLOUR_BELOW,
  LB_COLOUR_ON_BED,
  LB_COLOUR_REMARK, /* words of a remark, and its card */
  LB_COLOUR_REMARK_CARD,
  LB_COLOUR_HANDLE,      /* round what is pointed at or selected */
  LB_COLOUR_HANDLE_EDGE, /* of the small marks that can be dragged */
  LB_COLOUR_RUN_1,       /* runs laid over one another */
  LB_COLOUR_RUN_2,
  LB_COLOUR_RUN_3,
  LB_COLOUR_RUN_4,
  LB_N_COLOURS,
} LbColour;

typedef enum
{
  LB_FONT_SCALE,  /* numbers along the scales */
  LB_FONT_PLAIN,  /* second lines, scale headings */
  LB_FONT_STRONG, /* names and numbers that matter */
  LB_FONT_BIG,    /* the wire angle, line out */
  LB_FONT_TITLE,
  LB_N_FONTS,
} LbFont;

typedef struct
{
  double r, g, b, a; /* 0 to 1, not premultiplied */
} LbRgba;

/* A style made ready; plain values, copy with "=". Sizes are in drawing units (pixels, or points on
 * paper), already scaled. */
typedef struct
{
  LbTheme theme;
  double scale; /* all sizes below were multiplied with this */
  LbRgba colours[LB_N_COLOURS];
  double font_size[LB_N_FONTS];
  const char *font_family; /* static; a Pango list of families */
  double wire_width;
  double shank_width;
  double leader_width;
  double outline_width;
  double grid_width;
  double pointer_width;
  double pad;               /* inside a card, and the gap between things */
  double lure_length_least; /* a lure is drawn true to scale but never shorter */
  double weight_radius_least;
} LbStyle;

/* The scale that keeps words readable at arm's length in a drawing of `width` x `height` (side view
 * and bed strip together, drawing units): 1 for a laptop window, larger for a 4K screen. */
double lb_style_scale_for (double width, double height);

/* The style of `theme` with everything `scale` times its normal size. */
LbStyle lb_style_make (LbTheme theme, double scale);
