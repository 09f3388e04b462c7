/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A path as straight pieces; for the files of this folder only. */
#pragma once

#include "scene_build.h"

/* Gets one straight piece; `data` as given. */
typedef void (*LbPieceFunc) (double x1, double y1, double x2, double y2, void *data);

/* Calls `piece` for all pieces of `item` in order, closing pieces included. */
void lb_item_flatten (const LbScene *scene, const LbItem *item, LbPieceFunc piece, void *data);
