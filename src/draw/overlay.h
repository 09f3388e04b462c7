/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Several runs of a rig laid over one another, in the side view and in the bed strip: one scale for
 * all, every run with a line pattern and a colour of its own and its name at its line. Scenes like
 * any other: painted, picked (LbPick.run) and described in the same way. */
#pragma once

#include "compared_runs.h"
#include "scene.h"

#define LB_OVERLAY_MOST LB_COMPARED_RUNS_MOST

/* Of run `run` (below LB_OVERLAY_MOST), for keys beside the drawing. */
LbColour lb_overlay_colour (size_t run);

/* The dashes of run `run` for cairo_set_dash() at a line width of `width`; how many there are, 0
 * for a solid line. */
#define LB_OVERLAY_MOST_DASHES 4
int lb_overlay_dashes (size_t run, double width, double dashes[LB_OVERLAY_MOST_DASHES]);

/* "solid line", "dashed line" ...: for words about a drawing. Static, translated. */
const char *lb_overlay_pattern_words (size_t run);

typedef struct
{
  const char *name;  /* UTF-8, short */
  const char *words; /* how it runs, or why it has no answer; for the description */
  LbPicture picture; /* not solved: nothing is drawn of it */
} LbOverlayRun;

/* Nothing is owned and nothing is kept, as in LbPicture. */
typedef struct
{
  LbPicture ground; /* the river, the boat and the words round the drawing; its `remark` says what
                       there is to say of the runs. Its rig is not drawn */
  size_t n;
  LbOverlayRun runs[LB_OVERLAY_MOST];
} LbOverlay;

/* The overlay of `runs`; units, title and the lures' names as in `like`, whose other members do not
 * count. */
LbOverlay lb_overlay_of_runs (const LbComparedRuns *runs, const LbPicture *like);

/* All of the boat, of all runs and of the beds under them. */
LbExtents lb_overlay_extents (const LbOverlay *overlay);

/* As lb_side_view_new() and lb_bed_strip_new(). */
LbScene *lb_overlay_side_view_new (LbDrawContext *context,
                                   const LbOverlay *overlay,
                                   const LbStyle *style,
                                   const LbView *view,
                                   double width,
                                   double height);
LbScene *lb_overlay_strip_new (LbDrawContext *context,
                               const LbOverlay *overlay,
                               const LbStyle *style,
                               const LbView *view,
                               double width,
                               double height);
