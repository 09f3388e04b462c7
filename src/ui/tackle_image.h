/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A small drawing of one piece of tackle. */
#pragma once

#include <gtk/gtk.h>

#include "part_drawing.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_TACKLE_IMAGE (lb_tackle_image_get_type ())
G_DECLARE_FINAL_TYPE (LbTackleImage, lb_tackle_image, LB, TACKLE_IMAGE, GtkWidget)

/* Empty at first. It follows the session's colours and text size. A screen reader passes over it:
 * the words beside it say what it is. */
GtkWidget *lb_tackle_image_new (LbSession *session);

/* Makes it `size` times as large as usual. */
void lb_tackle_image_set_size (LbTackleImage *self, double size);

/* Shows `tackle`; `per_metre`: pixels that a metre of it takes with letters of the normal size, 0
 * for as large as fits. */
void lb_tackle_image_show (LbTackleImage *self, const LbTackle *tackle, double per_metre);

/* The most pixels that a metre of `tackle` may take to fit. */
double lb_tackle_image_fit (const LbTackle *tackle);

G_END_DECLS
