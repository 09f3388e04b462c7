/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What most widgets do when they are disposed of. May be called again, as dispose is. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

/* Unparents all that a widget holds. */
void lb_dispose_children (GtkWidget *widget);

/* No signal of the session reaches `self` any more, and the reference is dropped. */
void lb_dispose_session (LbSession **session, void *self);
