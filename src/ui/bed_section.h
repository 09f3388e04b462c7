/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river page's bed: one depth, or points along the reach. */
#pragma once

#include "chart_image.h"
#include "point_table.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_BED_SECTION (lb_bed_section_get_type ())
G_DECLARE_FINAL_TYPE (LbBedSection, lb_bed_section, LB, BED_SECTION, GtkWidget)

GtkWidget *lb_bed_section_new (LbSession *session);

/* The switch between one depth and points. (transfer none) */
GtkToggleButton *lb_bed_section_get_even_button (LbBedSection *self);
GtkToggleButton *lb_bed_section_get_profile_button (LbBedSection *self);

LbPointTable *lb_bed_section_get_table (LbBedSection *self);   /* (transfer none) */
GtkWidget *lb_bed_section_get_add_button (LbBedSection *self); /* (transfer none) */
LbChartImage *lb_bed_section_get_chart (LbBedSection *self);   /* (transfer none) */

/* Takes the focus to the depth, or to point `point` (-1: whichever is first). */
void lb_bed_section_focus (LbBedSection *self, int point);

G_END_DECLS
