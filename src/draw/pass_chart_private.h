/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the time chart share; internal to it. */
#pragma once

#include "chart_axes.h"
#include "pass_parts.h"

/* Style units. */
#define LB_CHART_GAP 7.0     /* between panels */
#define LB_CHART_SAMPLE 26.0 /* a piece of a line beside its words */

typedef enum
{
  LB_CHART_HEIGHTS,
  LB_CHART_ANGLE,
  LB_CHART_HAND,
  LB_CHART_SPEED,
  LB_CHART_APART, /* only when there are lines that can come near each other */
  LB_CHART_N_PANELS
} LbChartPanel;

typedef struct
{
  const char *name; /* N_() */
  LbQuantity quantity;
  LbColour colour;
} LbChartPanelKind;

extern const LbChartPanelKind lb_chart_panels[LB_CHART_N_PANELS];

/* One rig of the chart: the first, and the second if there is one. */
typedef struct
{
  const LbPassTrack *track; /* NULL: there is no such rig */
  LbTrackMoment moment;     /* now */
  bool is_known;
} LbChartRig;

#define LB_CHART_N_RIGS 2

typedef struct
{
  LbScene *scene;
  const LbPassPicture *picture;
  LbChartRig rigs[LB_CHART_N_RIGS];
  LbPlot plots[LB_CHART_N_PANELS];
  int n_panels;  /* of them */
  double beside; /* where the words beside the panels begin */
} LbPassChart;

/* Of a panel; of heights that of a thing (LB_TRACK_WEIGHT or a lure). */
double lb_chart_value (const LbTrackMoment *moment, LbChartPanel panel, int thing);

/* The least and the most of it that is known of the rig; beyond each other when nothing is. */
void lb_chart_range (const LbChartRig *rig, LbChartPanel panel, int thing, double range[2]);

LbQuantity lb_chart_quantity (const LbPassChart *chart, LbChartPanel panel);
LbLook lb_chart_look (const LbPassChart *chart, LbChartPanel panel, int thing);

/* Whether the panel has a line of its own for the second rig: both go with one boat, and how near
 * lines come counts for both together. */
bool lb_chart_has_rig (const LbPassChart *chart, LbChartPanel panel, int rig);

/* ---- pass_chart_lines.c ---- */

void lb_chart_add_curves (const LbPassChart *chart);
void lb_chart_add_cursor (const LbPassChart *chart);

/* ---- pass_chart_words.c ---- */

void lb_chart_add_words (const LbPassChart *chart);
char *lb_chart_describe (const LbPassChart *chart);
