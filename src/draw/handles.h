/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a drawing shows of being handled: a glow round the part under the pointer or selected, marks
 * where it can be pulled to, the bed's points, and the value that is being set. All of it is
 * foreground, and nothing of it is in a picture without handles. */
#pragma once

#include "scene.h"

struct LbHandles
{
  LbPickKind hover; /* under the pointer; LB_PICK_NOTHING: nothing */
  int hover_index;
  LbPickKind selected;
  int selected_index;
  bool hover_pulls; /* whether it can be dragged: then there are marks for it */
  bool selected_pulls;
  const char *words; /* UTF-8, beside (x, y); NULL or "": none */
  double x, y;       /* drawing units; unset: at the selected part, if it is in this drawing */
};

/* Where a part is in the drawing: the middle of what can be picked of it. False, and nothing
 * written, when it is not in this drawing. */
bool lb_scene_part_place (const LbScene *scene, LbPickKind kind, int index, double *x, double *y);

/* How many drawing units a metre of height takes: in the side view as the view has it. */
double lb_scene_per_metre_up (const LbScene *scene);

/* The drawing y of the bed under a drawing x: a straight line in the bed strip. */
double lb_scene_bed_line (const LbScene *scene, double x);
