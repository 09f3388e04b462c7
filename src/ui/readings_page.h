/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The page of the column that says what the solve found: the plain sentence first, then the numbers
 * in sections, and the cautions. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_READINGS_PAGE (lb_readings_page_get_type ())
G_DECLARE_FINAL_TYPE (LbReadingsPage, lb_readings_page, LB, READINGS_PAGE, GtkWidget)

/* Signal "updated": the texts were set anew. */
GtkWidget *lb_readings_page_new (LbSession *session);

/* The sentence that is shown. */
const char *lb_readings_page_get_sentence (LbReadingsPage *self);

/* The value shown in a row, by the numbers of section and row; NULL where there is none. */
const char *lb_readings_page_get_value (LbReadingsPage *self, gsize section, gsize row);

/* All of the page as text, a reading a line. (transfer full) */
char *lb_readings_page_dup_text (LbReadingsPage *self);

G_END_DECLS
