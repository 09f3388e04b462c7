/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every part of the rig as fields: reel and mainline, shank, weight, leaders with their lures, the
 * band, and what local rules allow. It is filled when it is first shown. */
#pragma once

#include <gtk/gtk.h>

#include "leader_card.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_RIG_PAGE (lb_rig_page_get_type ())
G_DECLARE_FINAL_TYPE (LbRigPage, lb_rig_page, LB, RIG_PAGE, GtkWidget)

GtkWidget *lb_rig_page_new (LbSession *session);

/* Whether the page has fields of that part of the drawing. */
gboolean lb_rig_page_has_part (LbRigPage *self, LbPickKind kind, int index);

/* Takes the focus to the first field of that part, which selects it. The page must be the one that
 * is shown (win.show-page). FALSE when it has none of that part. */
gboolean lb_rig_page_open_part (LbRigPage *self, LbPickKind kind, int index);

/* ---- For tests; (transfer none) ---- */

/* The box of a part that is there, or NULL. */
GtkWidget *lb_rig_page_get_group (LbRigPage *self, LbPickKind kind, int index);
LbLeaderCard *lb_rig_page_get_card (LbRigPage *self, gsize leader);
GtkWidget *lb_rig_page_get_add_button (LbRigPage *self);
GtkAdjustment *lb_rig_page_get_adjustment (LbRigPage *self);

G_END_DECLS
