/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A JSON value as it may stand in a message of one line. Internal to model. */
#pragma once

#include <json-glib/json-glib.h>

/* -3, "six" (text), an object, a list. Free with g_free(). */
char *lb_json_shown (JsonNode *node);
