/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the runs of an overlay are told apart. Every run is told by its line pattern alone, for
 * printers and eyes that show no colours; the colours come on top. */
#include <glib/gi18n-lib.h>

#include "overlay.h"
#include "scene_build.h"

static const LbColour colours[LB_OVERLAY_MOST] = { LB_COLOUR_RUN_1, LB_COLOUR_RUN_2,
                                                   LB_COLOUR_RUN_3, LB_COLOUR_RUN_4 };

static const LbLinePattern patterns[LB_OVERLAY_MOST] = { LB_LINE_SOLID, LB_LINE_LONG_DASHED,
                                                         LB_LINE_SPOTTED, LB_LINE_DASH_DOTTED };

LbColour
lb_overlay_colour (size_t run)
{
  return colours[run % LB_OVERLAY_MOST];
}

LbLinePattern
lb_overlay_pattern (size_t run)
{
  return patterns[run % LB_OVERLAY_MOST];
}

int
lb_overlay_dashes (size_t run, double width, double dashes[LB_OVERLAY_MOST_DASHES])
{
  return lb_pattern_dashes (lb_overlay_pattern (run), width, width / 2, dashes);
}

const char *
lb_overlay_pattern_words (size_t run)
{
  switch (lb_overlay_pattern (run))
    {
    case LB_LINE_LONG_DASHED:
      return _ ("dashed line");
    case LB_LINE_SPOTTED:
      return _ ("dotted line");
    case LB_LINE_DASH_DOTTED:
      return _ ("line of dashes and dots");
    default:
      return _ ("solid line");
    }
}

static bool
is_line (LbColour stroke)
{
  return stroke == LB_COLOUR_WIRE || stroke == LB_COLOUR_SHANK || stroke == LB_COLOUR_LEADER;
}

static LbColour
own_colour (const LbScene *scene, LbColour colour)
{
  switch (colour)
    {
    case LB_COLOUR_WIRE:
    case LB_COLOUR_SHANK:
    case LB_COLOUR_LEADER:
    case LB_COLOUR_WEIGHT:
    case LB_COLOUR_LURE_BACK:
    case LB_COLOUR_LURE_LINE:
    case LB_COLOUR_INSIDE:
    case LB_COLOUR_ABOVE:
    case LB_COLOUR_BELOW:
    case LB_COLOUR_ON_BED:
      return lb_overlay_colour ((size_t) scene->run);
    default:
      return colour;
    }
}

/* Dashed lines, hollow bodies. */
static LbLook
second_look (LbLook look)
{
  if (!look.fill && is_line (look.stroke))
    look.pattern = LB_LINE_LONG_DASHED;
  if (look.fill == LB_COLOUR_WEIGHT || look.fill == LB_COLOUR_WEIGHT_LIGHT
      || look.fill == LB_COLOUR_LURE_BACK || look.fill == LB_COLOUR_LURE_BELLY)
    look.fill = LB_COLOUR_CARD;
  return look;
}

LbLook
lb_overlay_look (const LbScene *scene, LbLook look)
{
  if (scene->is_second)
    return second_look (look);
  if (scene->run < 0)
    return look;
  if (!look.fill && is_line (look.stroke))
    {
      look.pattern = lb_overlay_pattern ((size_t) scene->run);
      /* Thin dashes look like dots. */
      look.width = MAX (look.width, 1.9 * scene->style.scale);
    }
  look.stroke = own_colour (scene, look.stroke);
  look.fill = own_colour (scene, look.fill);
  return look;
}
