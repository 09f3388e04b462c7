/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The current from the time that a float takes over a known distance. */
#pragma once

#include <gtk/gtk.h>

#include "quantity_entry.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_FLOAT_TIMER (lb_float_timer_get_type ())
G_DECLARE_FINAL_TYPE (LbFloatTimer, lb_float_timer, LB, FLOAT_TIMER, GtkWidget)

/* Two entries; as soon as both are given the surface current of the document is set from them, and
 * said. The distance and the time are not kept in the document. */
GtkWidget *lb_float_timer_new (LbSession *session);

LbQuantityEntry *lb_float_timer_get_distance (LbFloatTimer *self); /* (transfer none) */
LbQuantityEntry *lb_float_timer_get_time (LbFloatTimer *self);     /* (transfer none) */

/* What is said below the entries: the speed, or what is wrong. */
const char *lb_float_timer_get_words (LbFloatTimer *self);

G_END_DECLS
