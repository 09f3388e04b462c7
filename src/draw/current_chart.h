/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The river's speed curve: how fast the water runs at each height off the bed. */
#pragma once

#include "scene.h"

/* The curve of the picture's river where it is `setup->river.depth` deep, in `width` x `height`
 * drawing units, with axes in the user's units, measured points as dots, the speed at the surface,
 * close to the bed, and on average over the depth. Only setup, units and number style of the
 * picture count. lb_scene_describe() gives all of it in words. Free with lb_scene_free(). The
 * context must outlive the scene. */
LbScene *lb_current_chart_new (LbDrawContext *context,
                               const LbPicture *picture,
                               const LbStyle *style,
                               double width,
                               double height);
