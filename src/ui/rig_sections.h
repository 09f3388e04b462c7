/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sections of the rig page other than the leaders. Each returns its group (LbRigGroup). */
#pragma once

#include "catalogue_store.h"
#include "rig_group.h"

GtkWidget *lb_rig_section_new_reel (LbSession *session);
GtkWidget *lb_rig_section_new_mainline (LbSession *session, LbCatalogueStore *store);
GtkWidget *lb_rig_section_new_shank (LbSession *session, LbCatalogueStore *store);
GtkWidget *lb_rig_section_new_weight (LbSession *session, LbCatalogueStore *store);

/* One edge of the band each: LB_PICK_BAND_LOW or LB_PICK_BAND_HIGH. */
GtkWidget *lb_rig_section_new_band_edge (LbSession *session, LbPickKind edge);

/* What local rules allow, and how many are on the line; of no part. */
GtkWidget *lb_rig_section_new_rules (LbSession *session);
