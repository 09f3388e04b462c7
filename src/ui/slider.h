/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A slider with its number beside it, for one value of the document. A drag, or a row of key
 * presses, is one step of the history. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_SLIDER (lb_slider_get_type ())
G_DECLARE_FINAL_TYPE (LbSlider, lb_slider, LB, SLIDER, GtkWidget)

/* `label` (with a mnemonic) stands before it; NULL for none. */
GtkWidget *lb_slider_new (LbSession *session, const char *label);

/* Which value it moves. The slider goes over the field's usual range; the number beside it takes
 * all that the field allows, and the slider then goes as far. `tooltip` is translated. */
void lb_slider_set_field (LbSlider *self, const LbField *field, const char *tooltip);

/* Ticks (SI, rising). A drag stops at them; Page Up and Page Down go from one to the next. */
void lb_slider_set_marks (LbSlider *self, const double *values, gsize n);

GtkWidget *lb_slider_get_label (LbSlider *self); /* (transfer none) (nullable) */
GtkWidget *lb_slider_get_scale (LbSlider *self); /* (transfer none) */
GtkWidget *lb_slider_get_entry (LbSlider *self); /* (transfer none) */

/* What it is called for a screen reader when it has no label of its own. */
void lb_slider_set_accessible_name (LbSlider *self, const char *name);

G_END_DECLS
