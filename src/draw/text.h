/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shaped text and label memory of a draw context; for the files of this folder only. */
#pragma once

#include <pango/pangocairo.h>

#include "draw_context.h"
#include "style.h"

typedef struct
{
  PangoLayout *layout; /* owned by the context; take a reference to keep it */
  double width;        /* drawing units */
  double height;
} LbText;

/* `text` (UTF-8) shaped in `font` of `style`. `wrap` above 0: broken into lines of at most so many
 * drawing units; below 0: one line of at most -wrap, cut short with dots; 0: one line. */
LbText lb_draw_context_text (
    LbDrawContext *context, const LbStyle *style, LbFont font, const char *text, double wrap);

/* Tells that a new scene begins, so that text not used for a while can be let go. */
void lb_draw_context_begin (LbDrawContext *context);

/* Where label number `label` (below LB_LABEL_MEMORY) stood in the last drawing; -1: unknown. */
#define LB_LABEL_MEMORY 72
int lb_draw_context_last_slot (const LbDrawContext *context, int label);
void lb_draw_context_keep_slot (LbDrawContext *context, int label, int slot);
