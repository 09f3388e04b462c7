/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Shows a text of a few lines that changes at every frame. It takes the height of the longest text
 * so far, so that what stands below does not jump up and down while a slider moves. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define LB_TYPE_SENTENCE_LABEL (lb_sentence_label_get_type ())
G_DECLARE_FINAL_TYPE (LbSentenceLabel, lb_sentence_label, LB, SENTENCE_LABEL, GtkWidget)

GtkWidget *lb_sentence_label_new (void);

void lb_sentence_label_set_text (LbSentenceLabel *self, const char *text);
const char *lb_sentence_label_get_text (LbSentenceLabel *self);

/* Takes no more height than the present text needs; for another document. */
void lb_sentence_label_settle (LbSentenceLabel *self);

G_END_DECLS
