/* SPDX-License-Identifier: GPL-3.0-or-later */
/* An entry sets its value when Enter is pressed or the focus leaves it. Saving and closing do
 * neither, and what stands in the entry must not be missed. */
#include "window_private.h"

void
lb_window_take_typed (LbWindow *self)
{
  GtkWidget *focus;

  g_return_if_fail (LB_IS_WINDOW (self));
  focus = gtk_window_get_focus (GTK_WINDOW (self));
  if (!GTK_IS_EDITABLE (focus))
    return;
  g_object_ref (focus);
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
  gtk_window_set_focus (GTK_WINDOW (self), focus);
  g_object_unref (focus);
}
