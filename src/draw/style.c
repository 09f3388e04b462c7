/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "style.h"

#include <math.h>

/* Hues are chosen so that no two things that must be told apart rest on red against green: markers
 * run from deep blue to orange, differ in lightness, and have a shape and a word besides. */

#define RGB(hex)                                                                                   \
  {                                                                                                \
    ((hex) >> 16 & 255) / 255.0, ((hex) >> 8 & 255) / 255.0, ((hex) &255) / 255.0, 1.0             \
  }
#define RGBA(hex, alpha)                                                                           \
  {                                                                                                \
    ((hex) >> 16 & 255) / 255.0, ((hex) >> 8 & 255) / 255.0, ((hex) &255) / 255.0, (alpha)         \
  }

static const LbRgba light[LB_N_COLOURS] = {
  [LB_COLOUR_SKY_TOP] = RGB (0xF3EEE4),        [LB_COLOUR_SKY_LOW] = RGB (0xFBF8F1),
  [LB_COLOUR_WATER_TOP] = RGB (0xD3EAEC),      [LB_COLOUR_WATER_LOW] = RGB (0x8FC0C9),
  [LB_COLOUR_SURFACE] = RGB (0x3F7F90),        [LB_COLOUR_BED_TOP] = RGB (0xD9C7A6),
  [LB_COLOUR_BED_LOW] = RGB (0xC6AF88),        [LB_COLOUR_BED_LINE] = RGB (0x6A5433),
  [LB_COLOUR_PEBBLE] = RGBA (0x8B7349, 0.42),  [LB_COLOUR_PEBBLE_LIGHT] = RGBA (0xF3E8D0, 0.60),
  [LB_COLOUR_GRID] = RGBA (0x1C4A58, 0.13),    [LB_COLOUR_TEXT] = RGB (0x10242C),
  [LB_COLOUR_TEXT_QUIET] = RGB (0x27464F),     [LB_COLOUR_TEXT_ON_BED] = RGB (0x3E2F17),
  [LB_COLOUR_CARD] = RGBA (0xFDFEFE, 0.90),    [LB_COLOUR_CARD_EDGE] = RGBA (0x2F6070, 0.35),
  [LB_COLOUR_POINTER] = RGBA (0x10242C, 0.55), [LB_COLOUR_HULL] = RGB (0xE9EEEE),
  [LB_COLOUR_HULL_TRIM] = RGB (0x2C6E7F),      [LB_COLOUR_HULL_LINE] = RGB (0x243B43),
  [LB_COLOUR_REEL] = RGB (0xC8872B),           [LB_COLOUR_WIRE] = RGB (0x12222B),
  [LB_COLOUR_SHANK] = RGB (0x7B2D12),          [LB_COLOUR_LEADER] = RGB (0x4A3A86),
  [LB_COLOUR_WEIGHT] = RGB (0x47525A),         [LB_COLOUR_WEIGHT_LIGHT] = RGB (0x9DA9B0),
  [LB_COLOUR_LURE_BACK] = RGB (0xE0641E),      [LB_COLOUR_LURE_BELLY] = RGB (0xFFE7B8),
  [LB_COLOUR_LURE_LINE] = RGB (0x53230A),      [LB_COLOUR_CURRENT] = RGB (0x1B5E8C),
  [LB_COLOUR_ANGLE] = RGB (0x9A3B0B),          [LB_COLOUR_BAND] = RGBA (0xFBE08A, 0.62),
  [LB_COLOUR_BAND_EDGE] = RGB (0x8A6400),      [LB_COLOUR_INSIDE] = RGB (0x0B4F8A),
  [LB_COLOUR_ABOVE] = RGB (0x6B3FA0),          [LB_COLOUR_BELOW] = RGB (0x9A3F06),
  [LB_COLOUR_ON_BED] = RGB (0x5A3512),         [LB_COLOUR_REMARK] = RGB (0x5E2303),
  [LB_COLOUR_REMARK_CARD] = RGB (0xFFF1D6),    [LB_COLOUR_HANDLE] = RGB (0xB0126E),
  [LB_COLOUR_HANDLE_EDGE] = RGB (0xFFFFFF),    [LB_COLOUR_RUN_1] = RGB (0x12222B),
  [LB_COLOUR_RUN_2] = RGB (0x0A5AA8),          [LB_COLOUR_RUN_3] = RGB (0x9E3B00),
  [LB_COLOUR_RUN_4] = RGB (0x7A2483),
};

static const LbRgba dark[LB_N_COLOURS] = {
  [LB_COLOUR_SKY_TOP] = RGB (0x12181C),        [LB_COLOUR_SKY_LOW] = RGB (0x1B252B),
  [LB_COLOUR_WATER_TOP] = RGB (0x1B4552),      [LB_COLOUR_WATER_LOW] = RGB (0x0C2630),
  [LB_COLOUR_SURFACE] = RGB (0x7CC0CF),        [LB_COLOUR_BED_TOP] = RGB (0x4A3D2A),
  [LB_COLOUR_BED_LOW] = RGB (0x33291B),        [LB_COLOUR_BED_LINE] = RGB (0xC9A76B),
  [LB_COLOUR_PEBBLE] = RGBA (0x1C160D, 0.55),  [LB_COLOUR_PEBBLE_LIGHT] = RGBA (0x8A7550, 0.45),
  [LB_COLOUR_GRID] = RGBA (0xCDEBF2, 0.10),    [LB_COLOUR_TEXT] = RGB (0xF2F7F8),
  [LB_COLOUR_TEXT_QUIET] = RGB (0xD3E5E9),     [LB_COLOUR_TEXT_ON_BED] = RGB (0xF0E4CC),
  [LB_COLOUR_CARD] = RGBA (0x0B1A20, 0.86),    [LB_COLOUR_CARD_EDGE] = RGBA (0x7CC0CF, 0.40),
  [LB_COLOUR_POINTER] = RGBA (0xE6F2F4, 0.60), [LB_COLOUR_HULL] = RGB (0x55646B),
  [LB_COLOUR_HULL_TRIM] = RGB (0x8FD0DC),      [LB_COLOUR_HULL_LINE] = RGB (0xD5E2E5),
  [LB_COLOUR_REEL] = RGB (0xF0B45A),           [LB_COLOUR_WIRE] = RGB (0xF4F7F8),
  [LB_COLOUR_SHANK] = RGB (0xFFB28C),          [LB_COLOUR_LEADER] = RGB (0xC9BDF7),
  [LB_COLOUR_WEIGHT] = RGB (0xAEBAC0),         [LB_COLOUR_WEIGHT_LIGHT] = RGB (0xE6ECEE),
  [LB_COLOUR_LURE_BACK] = RGB (0xFF8A3D),      [LB_COLOUR_LURE_BELLY] = RGB (0xFFE9BF),
  [LB_COLOUR_LURE_LINE] = RGB (0xFFF3DC),      [LB_COLOUR_CURRENT] = RGB (0x8CC8F2),
  [LB_COLOUR_ANGLE] = RGB (0xFFC08F),          [LB_COLOUR_BAND] = RGBA (0xE8B93C, 0.26),
  [LB_COLOUR_BAND_EDGE] = RGB (0xF0CD6E),      [LB_COLOUR_INSIDE] = RGB (0x8CCBFF),
  [LB_COLOUR_ABOVE] = RGB (0xD6B8FF),          [LB_COLOUR_BELOW] = RGB (0xFFB072),
  [LB_COLOUR_ON_BED] = RGB (0xE7C79A),         [LB_COLOUR_REMARK] = RGB (0xFFE3B0),
  [LB_COLOUR_REMARK_CARD] = RGB (0x4A2A0A),    [LB_COLOUR_HANDLE] = RGB (0xFF8AD0),
  [LB_COLOUR_HANDLE_EDGE] = RGB (0x1B0A14),    [LB_COLOUR_RUN_1] = RGB (0xFFFFFF),
  [LB_COLOUR_RUN_2] = RGB (0x7CC4FF),          [LB_COLOUR_RUN_3] = RGB (0xFFA45C),
  [LB_COLOUR_RUN_4] = RGB (0xF0B3EE),
};

static const LbRgba print[LB_N_COLOURS] = {
  [LB_COLOUR_SKY_TOP] = RGB (0xFFFFFF),       [LB_COLOUR_SKY_LOW] = RGB (0xFFFFFF),
  [LB_COLOUR_WATER_TOP] = RGB (0xFAFAFA),     [LB_COLOUR_WATER_LOW] = RGB (0xEDEDED),
  [LB_COLOUR_SURFACE] = RGB (0x303030),       [LB_COLOUR_BED_TOP] = RGB (0xDCDCDC),
  [LB_COLOUR_BED_LOW] = RGB (0xD2D2D2),       [LB_COLOUR_BED_LINE] = RGB (0x202020),
  [LB_COLOUR_PEBBLE] = RGBA (0x707070, 0.45), [LB_COLOUR_PEBBLE_LIGHT] = RGBA (0xFFFFFF, 0.70),
  [LB_COLOUR_GRID] = RGBA (0x000000, 0.12),   [LB_COLOUR_TEXT] = RGB (0x000000),
  [LB_COLOUR_TEXT_QUIET] = RGB (0x303030),    [LB_COLOUR_TEXT_ON_BED] = RGB (0x1A1A1A),
  [LB_COLOUR_CARD] = RGBA (0xFFFFFF, 0.94),   [LB_COLOUR_CARD_EDGE] = RGB (0x9A9A9A),
  [LB_COLOUR_POINTER] = RGB (0x606060),       [LB_COLOUR_HULL] = RGB (0xFFFFFF),
  [LB_COLOUR_HULL_TRIM] = RGB (0x707070),     [LB_COLOUR_HULL_LINE] = RGB (0x000000),
  [LB_COLOUR_REEL] = RGB (0xB0B0B0),          [LB_COLOUR_WIRE] = RGB (0x000000),
  [LB_COLOUR_SHANK] = RGB (0x2A2A2A),         [LB_COLOUR_LEADER] = RGB (0x404040),
  [LB_COLOUR_WEIGHT] = RGB (0x505050),        [LB_COLOUR_WEIGHT_LIGHT] = RGB (0xC0C0C0),
  [LB_COLOUR_LURE_BACK] = RGB (0x808080),     [LB_COLOUR_LURE_BELLY] = RGB (0xFFFFFF),
  [LB_COLOUR_LURE_LINE] = RGB (0x000000),     [LB_COLOUR_CURRENT] = RGB (0x404040),
  [LB_COLOUR_ANGLE] = RGB (0x202020),         [LB_COLOUR_BAND] = RGBA (0x000000, 0.10),
  [LB_COLOUR_BAND_EDGE] = RGB (0x404040),     [LB_COLOUR_INSIDE] = RGB (0x000000),
  [LB_COLOUR_ABOVE] = RGB (0x303030),         [LB_COLOUR_BELOW] = RGB (0x303030),
  [LB_COLOUR_ON_BED] = RGB (0x303030),        [LB_COLOUR_REMARK] = RGB (0x000000),
  [LB_COLOUR_REMARK_CARD] = RGB (0xFFFFFF),   [LB_COLOUR_HANDLE] = RGB (0x505050),
  [LB_COLOUR_HANDLE_EDGE] = RGB (0xFFFFFF),   [LB_COLOUR_RUN_1] = RGB (0x000000),
  [LB_COLOUR_RUN_2] = RGB (0x202020),         [LB_COLOUR_RUN_3] = RGB (0x202020),
  [LB_COLOUR_RUN_4] = RGB (0x202020),
};

static const LbRgba *const palettes[LB_N_THEMES] = { light, dark, print };

double
lb_style_scale_for (double width, double height)
{
  double room = fmin (width / 900, height / 480);

  return fmax (0.88, fmin (4.0, pow (fmax (room, 0.01), 0.75)));
}

LbStyle
lb_style_make (LbTheme theme, double scale)
{
  LbStyle style = {
    .theme = theme,
    .scale = scale,
    .font_size = {
      [LB_FONT_SCALE] = 12.0 * scale,
      [LB_FONT_PLAIN] = 13.0 * scale,
      [LB_FONT_STRONG] = 14.5 * scale,
      [LB_FONT_BIG] = 19.0 * scale,
      [LB_FONT_TITLE] = 20.0 * scale,
    },
    .font_family = "Cantarell, DejaVu Sans, sans-serif",
    .wire_width = 2.0 * scale,
    .shank_width = 3.2 * scale,
    .leader_width = 1.5 * scale,
    .outline_width = 1.2 * scale,
    .grid_width = 1.0 * scale,
    .pointer_width = 1.0 * scale,
    .pad = 6.0 * scale,
    .lure_length_least = 34.0 * scale,
    .weight_radius_least = 7.5 * scale,
  };

  for (int i = 0; i < LB_N_COLOURS; i++)
    style.colours[i] = palettes[theme][i];
  return style;
}
