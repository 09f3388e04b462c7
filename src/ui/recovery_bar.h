/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a program that died left unsaved, offered in a bar over the drawings: each with its name,
 * its file and the time of the copy, to be restored or removed. Nothing waits for an answer: the
 * bar can be closed, and what it shows is there again at the next start. */
#pragma once

#include <gtk/gtk.h>

#include "recovery.h"

G_BEGIN_DECLS

#define LB_TYPE_RECOVERY_BAR (lb_recovery_bar_get_type ())
G_DECLARE_FINAL_TYPE (LbRecoveryBar, lb_recovery_bar, LB, RECOVERY_BAR, GtkWidget)

/* Signals: "restored" (LbDocument): the user wants this document back, show it;
 *          "failed" (string): why one could not be restored or removed.
 * Hidden until lb_recovery_bar_show_lost() finds something. */
GtkWidget *lb_recovery_bar_new (LbRecovery *recovery);

/* Lists what there is now; shows the bar when there is any, and hides it when there is none.
 * Returns how many are shown. */
guint lb_recovery_bar_show_lost (LbRecoveryBar *self);

G_END_DECLS
