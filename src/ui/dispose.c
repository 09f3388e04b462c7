/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "dispose.h"

void
lb_dispose_children (GtkWidget *widget)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (widget)))
    gtk_widget_unparent (child);
}

void
lb_dispose_session (LbSession **session, void *self)
{
  if (*session)
    g_signal_handlers_disconnect_by_data (*session, self);
  g_clear_object (session);
}
