/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Mouse and keys in the drawing of a comparison: the wheel and a pinch zoom, a drag and the arrow
 * keys move it, + and - zoom, 0 shows all. */
#pragma once

#include <gtk/gtk.h>

#include "viewport.h"

typedef struct LbCompareHandling LbCompareHandling;

/* Adds its controllers to `drawings`. Free it when that is finalized. */
LbCompareHandling *lb_compare_handling_new (GtkWidget *drawings, LbViewport *viewport);
void lb_compare_handling_free (LbCompareHandling *self);

/* About where the rig hangs, in the lower half of the drawing. */
void lb_compare_handling_zoom (LbCompareHandling *self, double factor);

/* Whether what has just been released was a drag, and no click. */
gboolean lb_compare_handling_was_drag (LbCompareHandling *self);
