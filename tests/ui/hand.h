/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A hand on a drawing: pointer and keys, given to its controllers as GTK would. */
#pragma once

#include "handles.h"
#include "harness.h"

void hand_move (LbCanvas *canvas, double x, double y);

/* Presses at (x, y); hand_drag() goes on to (x + dx, y + dy) in so many moves; hand_release(). */
void hand_press (LbCanvas *canvas, double x, double y);
void hand_drag (LbCanvas *canvas, double dx, double dy, int moves);
void hand_release (LbCanvas *canvas, double dx, double dy);

/* Presses, drags there in 8 moves and lets go. */
void hand_pull (LbCanvas *canvas, double x, double y, double dx, double dy);

void hand_click (LbCanvas *canvas, double x, double y, int times);

/* Returns whether the drawing took the key. */
gboolean hand_key (LbCanvas *canvas, guint key, GdkModifierType state);

/* Where a part is in a drawing; fails the test when it is not there. */
void hand_find (LbCanvas *canvas, LbPickKind kind, int index, double *x, double *y);
