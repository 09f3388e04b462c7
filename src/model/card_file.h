/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The card in a rig file: the value of the optional key "card". Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

#include "card.h"
#include "json_text.h"

#define LB_CARD_KEY "card"

/* Reads `node` over `card`, which holds what counts for keys that are left out. FALSE with an
 * LB_FILE_ERROR that names the path; `card` is then of no use. */
gboolean lb_card_read (JsonNode *node, LbCard *card, GError **error);

/* Writes the object with all its keys. */
void lb_card_write (LbJsonText *json, const LbCard *card);

/* The same for the depths or currents alone. */
gboolean lb_card_read_series (
    JsonNode *node, const char *path, LbCardSeriesOf of, LbCardSeries *series, GError **error);

/* The word of the running diagram in the file: the rig as it is, or its variants. */
const char *lb_card_running_name (int variants);
