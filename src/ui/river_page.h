/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The column's page with the river: its bed, its current, its water. */
#pragma once

#include <gtk/gtk.h>

#include "bed_section.h"
#include "current_section.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_RIVER_PAGE (lb_river_page_get_type ())
G_DECLARE_FINAL_TYPE (LbRiverPage, lb_river_page, LB, RIVER_PAGE, GtkWidget)

/* Filled when it is first shown. It follows the session's selection; its button for logs activates
 * the window's "win.import-log". */
GtkWidget *lb_river_page_new (LbSession *session);

/* Whether that part of the drawing has its fields here; takes the focus to them. */
gboolean lb_river_page_has_part (LbRiverPage *self, LbPickKind kind, int index);
gboolean lb_river_page_open_part (LbRiverPage *self, LbPickKind kind, int index);

/* All (transfer none), and NULL before the page was shown. */
LbBedSection *lb_river_page_get_bed (LbRiverPage *self);
LbCurrentSection *lb_river_page_get_current (LbRiverPage *self);
GtkWidget *lb_river_page_get_presets_button (LbRiverPage *self);
GtkWidget *lb_river_page_get_import_button (LbRiverPage *self);

/* The caution about cold water; NULL while the water is not cold. */
const char *lb_river_page_get_caution (LbRiverPage *self);

GtkAdjustment *lb_river_page_get_adjustment (LbRiverPage *self);

G_END_DECLS
