/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "part_drawing.h"

#include <math.h>

#include "scene_build.h"

/* Left free at each side. */
#define MARGIN 3.0
#define LINE_PART 0.2
/* kg/m3: above it a line is metal; below the water's, a braid that floats. */
#define METAL_FROM 4000.0
#define BRAID_BELOW 1000.0

typedef struct
{
  double width, height; /* m */
} Size;

static Size
weight_size (const LbWeight *weight)
{
  double r = lb_weight_radius (weight);

  switch (weight->shape)
    {
    case LB_WEIGHT_PEAR:
      return (Size){ 2 * r, 2.4 * r };
    case LB_WEIGHT_TORPEDO:
      return (Size){ 4.4 * r, 1.6 * r };
    case LB_WEIGHT_DISC:
      return (Size){ 1.1 * r, 3.2 * r };
    default:
      return (Size){ 2 * r, 2 * r };
    }
}

double
lb_part_drawing_fit (const LbTackle *tackle, double width, double height)
{
  Size size = { 1, 1 };

  if (tackle->kind == LB_TACKLE_LINE)
    return LINE_PART * height / tackle->line.diameter;
  if (tackle->kind == LB_TACKLE_WEIGHT)
    size = weight_size (&tackle->weight);
  else
    size = (Size){ 1.35 * tackle->lure.length, 0.5 * tackle->lure.length };
  return fmin ((width - 2 * MARGIN) / size.width, (height - 2 * MARGIN) / size.height);
}

/* ---- Lines ---- */

/* A bend of a line that is `width` thick, `shift` below the middle. */
static void
trace_line (LbScene *scene, double width, double shift)
{
  double w = scene->width, y = scene->height / 2 + shift, bend = 0.22 * scene->height;
  double end = MARGIN + width / 2;

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_move_to (scene, end, y + bend);
  lb_scene_curve_to (scene, 0.35 * w, y + bend, 0.25 * w, y - bend, 0.5 * w, y - bend);
  lb_scene_curve_to (scene, 0.75 * w, y - bend, 0.65 * w, y + bend, w - end, y + bend);
}

/* What shows of the make: a glint on metal, a clear core of nylon, the plaits of a braid. */
static void
add_line_make (LbScene *scene, double density, double width)
{
  LbLook look = { .stroke = LB_COLOUR_WEIGHT_LIGHT, .width = 0.3 * width, .opacity = 0.8 };

  if (width < 1.8)
    return;
  if (density < BRAID_BELOW)
    {
      look.width = 0.55 * width;
      look.pattern = LB_LINE_DOTTED;
      look.stroke = LB_COLOUR_CARD;
      trace_line (scene, width, 0);
    }
  else if (density < METAL_FROM)
    {
      look.width = fmax (width - 1.6, 0.5 * width);
      look.stroke = LB_COLOUR_CARD;
      trace_line (scene, width, 0);
    }
  else
    trace_line (scene, width, -0.2 * width);
  lb_scene_end (scene, look);
}

static void
add_line (LbScene *scene, const LbLine *line)
{
  double width = fmax (line->diameter * scene->view.per_metre_x, 0.8);
  LbLook look = { .stroke = LB_COLOUR_LEADER, .width = width };

  if (line->density >= METAL_FROM)
    look.stroke = LB_COLOUR_WIRE;
  trace_line (scene, width, 0);
  lb_scene_end (scene, look);
  add_line_make (scene, line->density, width);
}

/* ---- All of it ---- */

static void
add_tackle (LbScene *scene, const LbTackle *tackle)
{
  double x = scene->width / 2, y = scene->height / 2;
  double length = tackle->lure.length * scene->view.per_metre_x;

  switch (tackle->kind)
    {
    case LB_TACKLE_WEIGHT:
      lb_scene_add_weight (scene, x, y, INFINITY);
      break;
    case LB_TACKLE_LINE:
      add_line (scene, &tackle->line);
      break;
    case LB_TACKLE_LURE:
      lb_scene_add_lure (scene, 0, x - 0.42 * length, y - 0.04 * length, INFINITY);
      break;
    }
}

LbScene *
lb_part_drawing_new (LbDrawContext *context,
                     const LbTackle *tackle,
                     const LbStyle *style,
                     double per_metre,
                     double width,
                     double height)
{
  LbSetup setup = lb_setup_default ();
  LbPicture picture = { .setup = &setup };
  LbView view = { .per_metre_x = per_metre, .width = width, .height = height };
  LbStyle own = *style;
  LbScene *scene;

  setup.rig.weight = tackle->weight;
  setup.rig.leaders[0].lure = tackle->lure;
  own.weight_radius_least = 0;
  own.lure_length_least = 0;
  scene = lb_scene_new (LB_SCENE_PART, context, &picture, &own, &view, width, height);
  add_tackle (scene, tackle);
  lb_scene_finish (scene);
  return scene;
}
