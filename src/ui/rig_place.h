/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The places of a rig that a piece of tackle from the catalogue can stand in. */
#pragma once

#include "catalogue.h"
#include "part_drawing.h"
#include "session.h"

typedef enum
{
  LB_PLACE_MAINLINE,
  LB_PLACE_SHANK,
  LB_PLACE_WEIGHT,
  LB_PLACE_LEADER_LINE,
  LB_PLACE_LURE,
} LbPlaceKind;

typedef struct
{
  LbPlaceKind kind;
  gsize leader; /* of the last two, else 0 */
} LbRigPlace;

/* What a piece of the catalogue for this place is. */
LbTackleKind lb_rig_place_tackle_kind (LbRigPlace place);

/* Where a line for this place must do; 0 when it is none for lines. */
guint lb_rig_place_uses (LbRigPlace place);

/* Whether the rig has such a place: a leader's goes with the leader. */
gboolean lb_rig_place_exists (LbRigPlace place, const LbSetup *setup);

/* What stands there now. */
LbTackle lb_rig_place_get (LbRigPlace place, const LbSetup *setup);

/* "Mainline", "Leader 2: line", "Leader 2: lure". Free with g_free(). */
char *lb_rig_place_dup_name (LbRigPlace place);

/* A change that puts `tackle` there. Of a line its thickness, density, stretch and strength are
 * taken; how much it drags and strums stays. `name` is the lure's, for a lure. */
LbChange *lb_rig_place_change (LbRigPlace place,
                               LbDocument *document,
                               const LbTackle *tackle,
                               const char *name);

/* The name the catalogue has for what stands there; NULL for values of its own. (transfer none) */
const char *lb_rig_place_catalogue_name (LbRigPlace place,
                                         const LbCatalogue *catalogue,
                                         const LbSetup *setup,
                                         LbUnits units);

/* A piece in a few words for one that has no name: "0.7 mm line", "1¾ lb ball". Free with g_free().
 */
char *lb_tackle_dup_words (const LbTackle *tackle, LbSession *session);
