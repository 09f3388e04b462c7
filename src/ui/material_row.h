/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a weight is made of, as a list of materials that stand for a density. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_MATERIAL_ROW (lb_material_row_get_type ())
G_DECLARE_FINAL_TYPE (LbMaterialRow, lb_material_row, LB, MATERIAL_ROW, GtkWidget)

/* Signal "other-chosen": a density of its own is wanted, which is to be given elsewhere. */
GtkWidget *lb_material_row_new (LbSession *session);

/* The list. (transfer none) */
GtkDropDown *lb_material_row_get_choice (LbMaterialRow *self);

G_END_DECLS
