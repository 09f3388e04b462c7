/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One leader on the rig page: where it is attached, its line, its lure, and buttons to move it,
 * to make another like it, and to take it away. */
#pragma once

#include <gtk/gtk.h>

#include "catalogue_store.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_LEADER_CARD (lb_leader_card_get_type ())
G_DECLARE_FINAL_TYPE (LbLeaderCard, lb_leader_card, LB, LEADER_CARD, GtkWidget)

typedef enum
{
  LB_LEADER_UP,
  LB_LEADER_DOWN,
  LB_LEADER_DUPLICATE,
  LB_LEADER_REMOVE,
  LB_N_LEADER_ACTIONS,
} LbLeaderAction;

/* A card for leader `leader`, which need not be there; the card hides while it is not. Signal
 * "acted" (LbLeaderAction as guint, new number of the leader as guint) after a button did its work:
 * where the focus should go. */
GtkWidget *lb_leader_card_new (LbSession *session, LbCatalogueStore *store, gsize leader);

/* The button of an action. (transfer none) */
GtkWidget *lb_leader_card_get_button (LbLeaderCard *self, LbLeaderAction action);

/* The group of one of its parts (LB_PICK_ATTACHMENT, LB_PICK_LEADER, LB_PICK_LURE), or NULL. */
GtkWidget *lb_leader_card_get_group (LbLeaderCard *self, LbPickKind kind);

G_END_DECLS
