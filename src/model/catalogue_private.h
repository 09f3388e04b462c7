/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the catalogue share. Internal to model. */
#pragma once

#include "catalogue.h"

#define LB_CATALOGUE_LARGEST (1024 * 1024) /* bytes */

#define LB_CATALOGUE_FORMAT "layback-catalogue"
#define LB_CATALOGUE_VERSION 1

/* An empty catalogue. */
LbCatalogue *lb_catalogue_new (void);

/* As lb_catalogue_parse() for the user's own: lists may be empty, every part has a name of its own,
 * and a line's breaking load may be null. */
LbCatalogue *
lb_catalogue_parse_own (const char *text, gssize length, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The text of the user's own, as lb_catalogue_parse_own() reads it. Free with g_free(). */
char *lb_catalogue_write_own (const LbCatalogue *own, gsize *length);
