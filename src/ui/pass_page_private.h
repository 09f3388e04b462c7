/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the Pass page share; internal to it. */
#pragma once

#include "main_page.h"
#include "pass_page.h"

struct _LbPassPage
{
  GtkBox parent;
  LbPassPlayback *playback;
  GtkWidget *drawings;
  GtkWidget *bar;
  GtkWidget *summary;
  GtkWidget *column; /* GtkStack */
  GtkWidget *snag;
  GtkWidget *fish;
  guint tick_id;
  gint64 last_frame; /* us; 0: none since it plays */
  gboolean was_shown;
};

/* Its actions and their keys. */
void lb_pass_page_install_actions (GtkWidgetClass *widget_class);

/* What the window's actions do on it. */
void lb_pass_page_main_page_init (LbMainPageInterface *iface);

/* Drawings and bar. */
void lb_pass_page_set_above (LbPassPage *self, gboolean above);
void lb_pass_page_set_follows (LbPassPage *self, gboolean follows);
