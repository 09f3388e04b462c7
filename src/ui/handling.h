/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What pointer and keys do on a drawing.
 *
 * Pointer: a part is shown by a glow; pressed, it is selected, and dragged, it is pulled (grab.h),
 * one step of the history for a drag, which Escape takes back. Elsewhere a drag moves the drawing.
 * A double click on a part opens its field, on the bed it adds a point, elsewhere it shows the
 * whole rig. The wheel and two fingers zoom.
 *
 * Keys: see handling_keys.c. */
#pragma once

#include <gtk/gtk.h>

#include "handles.h"
#include "viewport.h"

G_BEGIN_DECLS

typedef struct LbHandling LbHandling;

/* What the drawing does for its handling. */
typedef struct
{
  LbScene *(*get_scene) (GtkWidget *canvas); /* as it is now; NULL while there is none */
  void (*refresh) (GtkWidget *canvas);       /* handles changed: make the scene anew */
} LbHandlingHost;

/* For `canvas`, which owns it; adds its controllers. `name`: what a screen reader calls the drawing
 * while nothing is selected. */
LbHandling *lb_handling_new (GtkWidget *canvas,
                             const LbHandlingHost *host,
                             const char *name,
                             LbSession *session,
                             LbViewport *viewport,
                             gboolean is_side_view);

/* Takes back what is half done. NULL is fine. */
void lb_handling_free (LbHandling *self);

/* What the next scene is to show. (transfer none) */
const LbHandles *lb_handling_get_handles (LbHandling *self);

G_END_DECLS
