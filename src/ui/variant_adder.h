/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A list of all values that a variant may replace, to choose one from. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

/* A drop-down whose choice is added to variant `variant` with the document's own value. */
GtkWidget *lb_variant_adder_new (LbSession *session, gsize variant);

/* Adds the value as choosing it does. FALSE when it cannot be added. */
gboolean
lb_variant_adder_add (LbSession *session, gsize variant, const LbField *field, gsize leader);
