/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The current as measured at several depths, in a table that is turned into the document's measured
 * points as soon as it makes sense. */
#pragma once

#include "point_table.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_MEASURED_SECTION (lb_measured_section_get_type ())
G_DECLARE_FINAL_TYPE (LbMeasuredSection, lb_measured_section, LB, MEASURED_SECTION, GtkWidget)

/* The speed at the surface is taken to be that of the uppermost point. */
GtkWidget *lb_measured_section_new (LbSession *session);

/* Makes the present current one of measured points, at the depths where streams are usually
 * gauged, for the user to put own numbers in. */
void lb_measured_section_start (LbMeasuredSection *self);

LbPointTable *lb_measured_section_get_table (LbMeasuredSection *self);   /* (transfer none) */
GtkDropDown *lb_measured_section_get_choice (LbMeasuredSection *self);   /* (transfer none) */
GtkWidget *lb_measured_section_get_add_button (LbMeasuredSection *self); /* (transfer none) */

/* What keeps the table from being used, in words; NULL when nothing does. */
const char *lb_measured_section_get_fault (LbMeasuredSection *self);

G_END_DECLS
