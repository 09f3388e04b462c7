/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river page's current: how fast, how it is known, how it slows towards the bed, and a picture
 * of that. */
#pragma once

#include "chart_image.h"
#include "float_timer.h"
#include "measured_section.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_CURRENT_SECTION (lb_current_section_get_type ())
G_DECLARE_FINAL_TYPE (LbCurrentSection, lb_current_section, LB, CURRENT_SECTION, GtkWidget)

/* How the current is known; the numbers of the choices. */
typedef enum
{
  LB_KNOWN_SURFACE,
  LB_KNOWN_FLOAT,
  LB_KNOWN_MEASURED,
} LbKnownFrom;

GtkWidget *lb_current_section_new (LbSession *session);

GtkDropDown *lb_current_section_get_known (LbCurrentSection *self); /* (transfer none) */

/* How the current slows towards the bed: log law, power law, uniform. (transfer none) */
GtkDropDown *lb_current_section_get_law (LbCurrentSection *self);

LbFloatTimer *lb_current_section_get_float (LbCurrentSection *self);         /* (transfer none) */
LbMeasuredSection *lb_current_section_get_measured (LbCurrentSection *self); /* (transfer none) */
LbChartImage *lb_current_section_get_chart (LbCurrentSection *self);         /* (transfer none) */

G_END_DECLS
