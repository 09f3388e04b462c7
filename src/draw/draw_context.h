/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What lasts from one drawing to the next: shaped text, and where the labels stood last time so
 * that they do not jump about while a slider moves. */
#pragma once

/* Keep one for each canvas. Belongs to one thread at a time. A fresh one for each picture makes
 * the output depend on the picture alone. */
typedef struct LbDrawContext LbDrawContext;

/* Free with lb_draw_context_free(). Never NULL. */
LbDrawContext *lb_draw_context_new (void);

void lb_draw_context_free (LbDrawContext *context); /* NULL is fine */

/* Forgets where the labels stood; call it when another document is shown. */
void lb_draw_context_forget_labels (LbDrawContext *context);
