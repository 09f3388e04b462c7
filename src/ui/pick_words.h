/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the pointer is on, in words and numbers: the drawings' tooltips. */
#pragma once

#include "scene.h"
#include "session.h"

/* Free with g_free(). NULL when there is nothing to say. */
char *lb_pick_words (LbSession *session, const LbPick *pick);
