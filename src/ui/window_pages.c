/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The main pages of the window, of which one is shown: made when they are first wanted, so that a
 * window opens no slower for having them. */
#include "window_private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "page_switch.h"

#define ZOOM_STEP 1.25
#define KIND "lb-main-page-kind"

static const LbMainPageKind *
kind_of (GtkWidget *place)
{
  return g_object_get_data (G_OBJECT (place), KIND);
}

/* The place of the page that is shown. */
static GtkWidget *
shown (LbWindow *self)
{
  return gtk_stack_get_visible_child (GTK_STACK (self->main_pages));
}

LbMainPage *
lb_window_get_main (LbWindow *self)
{
  GtkWidget *child = gtk_widget_get_first_child (shown (self));

  return LB_IS_MAIN_PAGE (child) ? LB_MAIN_PAGE (child) : NULL;
}

gboolean
lb_window_is_side_view (LbWindow *self)
{
  return shown (self) == self->body;
}

/* Into the page that was asked for, but not away from the buttons of the switch. */
static void
move_focus (LbWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (focus
      && (gtk_widget_is_ancestor (focus, shown (self))
          || gtk_widget_is_ancestor (focus, self->page_switch)))
    return;
  if (gtk_widget_child_focus (shown (self), GTK_DIR_TAB_FORWARD))
    gtk_window_set_focus_visible (GTK_WINDOW (self), TRUE);
}

static void
make (LbWindow *self, GtkWidget *place)
{
  const LbMainPageKind *kind = kind_of (place);
  GtkWidget *page;

  if (!kind->make || gtk_widget_get_first_child (place))
    return;
  page = kind->make (self->session);
  gtk_widget_set_hexpand (page, TRUE);
  gtk_widget_set_vexpand (page, TRUE);
  if (LB_IS_MAIN_PAGE (page))
    g_signal_connect_object (page, "abilities-changed",
                             G_CALLBACK (lb_window_main_page_actions_update), self,
                             G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (place), page);
}

void
lb_window_show_main_page (LbWindow *self, const char *name)
{
  GtkWidget *place;

  g_return_if_fail (LB_IS_WINDOW (self));
  place = name ? gtk_stack_get_child_by_name (GTK_STACK (self->main_pages), name) : NULL;
  if (!place)
    return;
  if (place != shown (self))
    {
      /* What is typed there belongs to the document, whose drawing is looked at next. */
      lb_window_take_typed (self);
      make (self, place);
      gtk_stack_set_visible_child (GTK_STACK (self->main_pages), place);
      lb_page_switch_set_shown (LB_PAGE_SWITCH (self->page_switch), _ (kind_of (place)->title));
      lb_window_main_page_actions_update (self);
      g_object_notify (G_OBJECT (self), "main-page");
    }
  move_focus (self);
}

const char *
lb_window_get_main_page (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return kind_of (shown (self))->name;
}

GtkWidget *
lb_window_get_main_page_widget (LbWindow *self, const char *name)
{
  GtkWidget *place;

  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  place = gtk_stack_get_child_by_name (GTK_STACK (self->main_pages), name);
  return place && place != self->body ? gtk_widget_get_first_child (place) : NULL;
}

void
lb_window_add_main_page (LbWindow *self, const LbMainPageKind *kind)
{
  GtkWidget *place = self->body;

  g_return_if_fail (LB_IS_WINDOW (self));
  if (kind->make)
    {
      place = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);
      gtk_stack_add_named (GTK_STACK (self->main_pages), place, kind->name);
    }
  g_object_set_data (G_OBJECT (place), KIND, (gpointer) kind);
  lb_page_switch_add (LB_PAGE_SWITCH (self->page_switch), kind);
  if (place == shown (self))
    lb_page_switch_set_shown (LB_PAGE_SWITCH (self->page_switch), _ (kind->title));
}

/* ---- What the actions do on the page that is shown ---- */

void
lb_window_main_page_actions_update (LbWindow *self)
{
  LbMainPage *page = lb_window_get_main (self);
  LbMainPageInterface *iface = page ? LB_MAIN_PAGE_GET_IFACE (page) : NULL;
  gboolean all = lb_window_is_side_view (self);
  const struct
  {
    const char *name;
    gboolean can;
  } actions[] = {
    { "win.zoom-in", all || (iface && iface->zoom) },
    { "win.zoom-out", all || (iface && iface->zoom) },
    { "win.zoom-fit", all || (iface && iface->fit) },
    { "win.scale-true", all || (iface && iface->scale_true) },
    { "win.scale-stretched", all || (iface && iface->scale_stretched) },
    { "win.next-page", all || (page && lb_main_page_can_move (page, 1)) },
    { "win.previous-page", all || (page && lb_main_page_can_move (page, -1)) },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), actions[i].name, actions[i].can);
}

void
lb_window_zoom (LbWindow *self, int steps)
{
  LbMainPage *page = lb_window_get_main (self);
  double factor = pow (ZOOM_STEP, steps);

  if (page)
    LB_MAIN_PAGE_GET_IFACE (page)->zoom (page, factor);
  else
    lb_drawings_zoom (LB_DRAWINGS (self->drawings), factor);
}

void
lb_window_zoom_fit (LbWindow *self)
{
  LbMainPage *page = lb_window_get_main (self);

  if (page)
    LB_MAIN_PAGE_GET_IFACE (page)->fit (page);
  else
    lb_viewport_fit (lb_drawings_get_viewport (LB_DRAWINGS (self->drawings)));
}

void
lb_window_scale_true (LbWindow *self)
{
  LbMainPage *page = lb_window_get_main (self);

  if (page)
    LB_MAIN_PAGE_GET_IFACE (page)->scale_true (page);
  else
    lb_viewport_set_stretched (lb_drawings_get_viewport (LB_DRAWINGS (self->drawings)), FALSE);
}

void
lb_window_scale_stretched (LbWindow *self)
{
  LbMainPage *page = lb_window_get_main (self);

  if (page)
    LB_MAIN_PAGE_GET_IFACE (page)->scale_stretched (page);
  else
    lb_viewport_set_stretched (lb_drawings_get_viewport (LB_DRAWINGS (self->drawings)), TRUE);
}
