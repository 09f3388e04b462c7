/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Small pieces that pages are put together from. */
#pragma once

#include <gtk/gtk.h>

#include "readings_table.h"

/* A wrapping label of a page; `css_class` may be NULL. */
GtkWidget *lb_page_label (const char *text, const char *css_class);

/* A heading, a note in small letters, and a fault (hidden until lb_page_show_fault()). */
GtkWidget *lb_page_heading (const char *text);
GtkWidget *lb_page_note (const char *text);
GtkWidget *lb_page_fault (void);

/* A caution with its sign; the label is the last child. */
GtkWidget *lb_page_caution (const char *text);

/* Shows `text` in a label of lb_page_fault(); NULL hides it. */
void lb_page_show_fault (GtkWidget *fault, const char *text);

/* `text` on the left, `control` on the right. */
GtkWidget *lb_page_row (const char *text, GtkWidget *control);

/* Fills `box` with the rows of `table` under their headings, in place of what stood there. */
void lb_page_show_table (GtkWidget *box, const LbReadingsTable *table);

/* The same as text, a row on each line; NULL appends nothing. */
void lb_page_table_text (GString *text, const LbReadingsTable *table);

/* A fault that follows the "fault-changed" of `entry`, an LbQuantityEntry or LbLineEntry. */
GtkWidget *lb_page_fault_of (GtkWidget *entry);

/* A check button whose label wraps. */
GtkWidget *lb_page_check (const char *label);

/* A drop-down of the `n` translated `names`, wide enough for a page, cut short with dots. */
GtkWidget *lb_page_choice (const char *const *names, gsize n, const char *name);

/* A bare button with an icon alone, named for a screen reader and by its tooltip. */
GtkWidget *lb_page_icon_button (const char *icon, const char *name);

/* A box around `child` that can be hidden, for one that shows and hides itself (LbFieldRow). */
GtkWidget *lb_page_slot (GtkWidget *child);

/* A page of its own: a scroller named `name` with a box, put into `sections`, for what it holds. */
GtkWidget *lb_page_scroller (const char *name, GtkWidget **sections);

/* Scrolls as little as it takes to have `part`, which is somewhere in `sections`, in sight. */
void lb_page_scroll_to (GtkScrolledWindow *scroller, GtkWidget *sections, GtkWidget *part);
