/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One leg of the boat's course as a person says it: its speed, its time or distance, its turn or
 * turn rate, and the line let out. What the leg is given by it stays given by.
 *
 * Signals: "changed" (guint gesture): lb_pass_leg_row_get_leg() is another; "removed". */
#pragma once

#include <gtk/gtk.h>

#include "leg_times.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_LEG_ROW (lb_pass_leg_row_get_type ())
G_DECLARE_FINAL_TYPE (LbPassLegRow, lb_pass_leg_row, LB, PASS_LEG_ROW, GtkBox)

typedef enum
{
  LB_LEG_SPEED,
  LB_LEG_TIME,
  LB_LEG_DISTANCE,
  LB_LEG_TURN,
  LB_LEG_TURN_RATE,
  LB_LEG_LINE,
  LB_N_LEG_ENTRIES
} LbLegEntry;

/* `number`: 1 for the first. */
GtkWidget *lb_pass_leg_row_new (LbSession *session, int number);

/* Shows `leg`, which comes to `times`; `own_speed` (m/s) is what one without a speed goes at. Emits
 * nothing. */
void lb_pass_leg_row_show (LbPassLegRow *self,
                           const LbCourseLeg *leg,
                           const LbLegTimes *times,
                           double own_speed);

LbCourseLeg lb_pass_leg_row_get_leg (LbPassLegRow *self);

/* Parts of it. (transfer none) */
GtkWidget *lb_pass_leg_row_get_entry (LbPassLegRow *self, LbLegEntry which); /* LbQuantityEntry */
GtkWidget *lb_pass_leg_row_get_length (LbPassLegRow *self);  /* GtkDropDown: time, distance */
GtkWidget *lb_pass_leg_row_get_turning (LbPassLegRow *self); /* GtkDropDown: turn, turn rate */

G_END_DECLS
