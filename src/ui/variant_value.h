/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One value that a variant replaces, as a row: its name, an entry or a list of choices, and a
 * button that lets the variant have the document's value again. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_VARIANT_VALUE (lb_variant_value_get_type ())
G_DECLARE_FINAL_TYPE (LbVariantValue, lb_variant_value, LB, VARIANT_VALUE, GtkWidget)

GtkWidget *
lb_variant_value_new (LbSession *session, gsize variant, const LbField *field, gsize leader);

/* Shows the document's present value. */
void lb_variant_value_follow (LbVariantValue *self);

const LbField *lb_variant_value_get_field (LbVariantValue *self);
gsize lb_variant_value_get_leader (LbVariantValue *self);

/* The entry, drop-down or label of the value. (transfer none) */
GtkWidget *lb_variant_value_get_control (LbVariantValue *self);

G_END_DECLS
