/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One sheet of a card, as it will be printed. Put it into a scrolled window. */
#pragma once

#include <gtk/gtk.h>

#include "card_maker.h"

G_BEGIN_DECLS

#define LB_TYPE_CARD_PREVIEW (lb_card_preview_get_type ())
G_DECLARE_FINAL_TYPE (LbCardPreview, lb_card_preview, LB, CARD_PREVIEW, GtkWidget)

/* An empty one. Signal "turned" (int: 1 to the next sheet, -1 back, 2 to the last, -2 to the first)
 * when its keys ask for another sheet. */
GtkWidget *lb_card_preview_new (void);

/* Shows a sheet of `card`; `name` is what a screen reader calls it. */
void lb_card_preview_show (LbCardPreview *self, LbMadeCard *card, gsize sheet, const char *name);

/* The whole sheet, as large as there is room for. This is how it begins. */
void lb_card_preview_fit (LbCardPreview *self);
gboolean lb_card_preview_is_fit (LbCardPreview *self);

/* As large as it will be on paper, if the screen tells its size truly. */
void lb_card_preview_true_size (LbCardPreview *self);
gboolean lb_card_preview_is_true_size (LbCardPreview *self);

/* `factor` > 1: larger. */
void lb_card_preview_zoom (LbCardPreview *self, double factor);

/* Pixels for a point of 1/72 in. */
double lb_card_preview_get_scale (LbCardPreview *self);

G_END_DECLS
