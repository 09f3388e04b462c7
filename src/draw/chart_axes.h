/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The plot of a small chart and its axes; for the files of this folder only. */
#pragma once

#include "phrases.h"

/* Where a chart's plot lies, drawing units, and what its edges stand for, SI. */
typedef struct
{
  double left, right, top, bottom;
  double x_from, x_to; /* at left and right */
  double y_from, y_to; /* at bottom and top */
} LbPlot;

static inline double
lb_plot_x (const LbPlot *plot, double value)
{
  return plot->left
         + (value - plot->x_from) / (plot->x_to - plot->x_from) * (plot->right - plot->left);
}

static inline double
lb_plot_y (const LbPlot *plot, double value)
{
  return plot->bottom
         - (value - plot->y_from) / (plot->y_to - plot->y_from) * (plot->bottom - plot->top);
}

/* The scene of a chart of `setup`, worded as `picture` wants it. */
LbScene *lb_plot_scene (LbDrawContext *context,
                        const LbPicture *picture,
                        const LbSetup *setup,
                        const LbStyle *style,
                        double width,
                        double height);

/* A round step, SI, for values of `quantity` of which `range` (SI) takes `room` drawing units, so
 * that numbers stand at least `least` apart. Steps of 1, 2 and 5. */
double lb_plot_step (LbQuantity quantity, LbUnits units, double range, double room, double least);

/* Ticks, numbers and faint lines. `sign` turns what is shown about: -1 for depths on an axis of
 * heights. */
void lb_plot_add_y_axis (LbScene *scene, const LbPlot *plot, LbQuantity quantity, double sign);
void lb_plot_add_x_axis (LbScene *scene, const LbPlot *plot, LbQuantity quantity);

/* One box of colour. */
void lb_plot_add_ground (
    LbScene *scene, double x, double y, double width, double height, LbColour top, LbColour low);

/* Words on a small card in the plot, `align_x` of them at x, their top at y; pushed into the plot
 * from its sides. FALSE when other words stand there. */
bool lb_plot_add_card (LbScene *scene,
                       const LbPlot *plot,
                       const char *words,
                       double x,
                       double y,
                       double align_x,
                       LbColour colour);

/* A heading with the axis' unit: "Off the bed, ft". */
LbPhrase lb_plot_heading (const LbScene *scene, const char *name, LbQuantity quantity);
