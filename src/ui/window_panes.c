/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Going about the window with the keyboard: from pane to pane, and from page to page. */
#include "window_private.h"

/* ---- Panes ---- */

#define MOST_PANES 12

typedef struct
{
  GtkWidget *widgets[MOST_PANES];
  int n;
} Panes;

static void
add (Panes *panes, GtkWidget *widget)
{
  if (widget && gtk_widget_get_mapped (widget) && panes->n < MOST_PANES)
    panes->widgets[panes->n++] = widget;
}

/* Each child of a main page is a pane. */
static void
add_main_page (Panes *panes, LbWindow *self)
{
  GtkWidget *page =
      gtk_widget_get_first_child (gtk_stack_get_visible_child (GTK_STACK (self->main_pages)));

  for (GtkWidget *child = gtk_widget_get_first_child (page); child;
       child = gtk_widget_get_next_sibling (child))
    add (panes, child);
}

/* In the order that F6 goes through them. */
static Panes
panes_of (LbWindow *self)
{
  Panes panes = { { NULL }, 0 };

  if (gtk_info_bar_get_revealed (GTK_INFO_BAR (self->message_bar)))
    add (&panes, self->message_bar);
  if (!lb_window_is_side_view (self))
    add_main_page (&panes, self);
  add (&panes, self->drawings);
  add (&panes, self->controls);
  add (&panes, gtk_widget_get_visible (self->page_switcher) ? self->page_switcher : NULL);
  add (&panes, gtk_stack_get_visible_child (GTK_STACK (self->pages)));
  add (&panes, gtk_window_get_titlebar (GTK_WINDOW (self)));
  return panes;
}

void
lb_window_move_pane (LbWindow *self, int direction)
{
  Panes panes = panes_of (self);
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  int at = direction > 0 ? -1 : 0;

  for (int i = 0; i < panes.n; i++)
    if (focus && (focus == panes.widgets[i] || gtk_widget_is_ancestor (focus, panes.widgets[i])))
      at = i;
  /* A pane without anything to focus is passed over. */
  for (int k = 1; k <= panes.n; k++)
    if (gtk_widget_child_focus (panes.widgets[(at + panes.n * k + direction * k) % panes.n],
                                GTK_DIR_TAB_FORWARD))
      {
        gtk_window_set_focus_visible (GTK_WINDOW (self), TRUE);
        return;
      }
}

/* ---- Pages of the column ---- */

static void
show_page (LbWindow *self, GtkWidget *page)
{
  GtkWidget *old = gtk_stack_get_visible_child (GTK_STACK (self->pages));
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  gboolean was_inside = focus && gtk_widget_is_ancestor (focus, old);

  if (page == old)
    return;
  gtk_stack_set_visible_child (GTK_STACK (self->pages), page);
  /* What had the focus is no longer to be seen. */
  if (was_inside && !gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD))
    lb_window_move_pane (self, 1);
}

void
lb_window_show_page (LbWindow *self, const char *name)
{
  GtkWidget *page;

  g_return_if_fail (LB_IS_WINDOW (self));
  page = gtk_stack_get_child_by_name (GTK_STACK (self->pages), name);
  if (!page)
    return;
  /* The column stands beside the side view. */
  lb_window_show_main_page (self, LB_MAIN_PAGE_SIDE_VIEW);
  show_page (self, page);
}

/* Whoever asks for a page by a key wants to work on it. */
void
lb_window_focus_page (LbWindow *self)
{
  GtkWidget *page = gtk_stack_get_visible_child (GTK_STACK (self->pages));
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (focus && gtk_widget_is_ancestor (focus, page))
    return;
  if (gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD))
    gtk_window_set_focus_visible (GTK_WINDOW (self), TRUE);
}

const char *
lb_window_get_page (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->pages));
}

void
lb_window_move_page (LbWindow *self, int direction)
{
  GtkWidget *page = gtk_stack_get_visible_child (GTK_STACK (self->pages));
  LbMainPage *main_page = lb_window_get_main (self);
  GtkWidget *next =
      direction > 0 ? gtk_widget_get_next_sibling (page) : gtk_widget_get_prev_sibling (page);

  if (!lb_window_is_side_view (self))
    {
      LB_MAIN_PAGE_GET_IFACE (main_page)->move_page (main_page, direction);
      return;
    }
  if (!next)
    next = direction > 0 ? gtk_widget_get_first_child (self->pages)
                         : gtk_widget_get_last_child (self->pages);
  show_page (self, next);
}
