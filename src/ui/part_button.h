/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What piece of tackle stands in a place of the rig: a small drawing and its name. A press opens
 * the catalogue to choose another. */
#pragma once

#include <gtk/gtk.h>

#include "catalogue_store.h"
#include "rig_place.h"

G_BEGIN_DECLS

#define LB_TYPE_PART_BUTTON (lb_part_button_get_type ())
G_DECLARE_FINAL_TYPE (LbPartButton, lb_part_button, LB, PART_BUTTON, GtkButton)

GtkWidget *lb_part_button_new (LbSession *session, LbCatalogueStore *store, LbRigPlace place);

/* The name shown. */
const char *lb_part_button_get_name (LbPartButton *self);

G_END_DECLS
