/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_pane.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "card_choices.h"
#include "card_pane_bar.h"
#include "card_wish.h"
#include "main_page.h"

struct _LbCardPane
{
  GtkBox parent;
  LbSession *session;
  LbCardMaker *maker;
  LbCardOutput *output;
  GtkWidget *scroller;
  GtkWidget *preview;
  GtkWidget *bar;
  gsize sheet;
  LbCardWish wish;
};

static void lb_card_pane_main_page_init (LbMainPageInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (LbCardPane,
                               lb_card_pane,
                               GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (LB_TYPE_MAIN_PAGE,
                                                      lb_card_pane_main_page_init))

/* ---- Showing ---- */

static gsize
n_sheets (LbCardPane *self)
{
  LbMadeCard *card = lb_card_maker_get_card (self->maker);

  return card ? lb_card_drawing_n_sheets (lb_made_card_get_drawing (card)) : 0;
}

static void
show_sheet (LbCardPane *self)
{
  LbMadeCard *card = lb_card_maker_get_card (self->maker);
  LbCardPaneBar *bar = LB_CARD_PANE_BAR (self->bar);
  g_autofree char *name = NULL;

  if (!card)
    return;
  self->sheet = MIN (self->sheet, n_sheets (self) - 1);
  lb_card_pane_bar_show (bar, self->session, lb_made_card_get_drawing (card), self->sheet);
  /* Translators: %s is "Page 1 of 2" */
  name =
      g_strdup_printf (_ ("The card as it will be printed. %s"), lb_card_pane_bar_get_page (bar));
  lb_card_preview_show (LB_CARD_PREVIEW (self->preview), card, self->sheet, name);
  lb_main_page_abilities_changed (LB_MAIN_PAGE (self));
}

/* What is to be known of the card before it is printed; NULL: nothing. */
static char *
warning (const LbCardDrawing *drawing)
{
  const char *out = lb_card_drawing_left_out (drawing);
  g_autofree char *unlettered = lb_card_drawing_dup_unlettered (drawing);

  if (out)
    return g_strdup_printf (_ ("Left out, as there is no room for it: %s"), out);
  if (!unlettered)
    return NULL;
  return g_strdup_printf (_ ("Printed as boxes, as no font of this computer has the letters: %s"),
                          g_strdelimit (unlettered, "\n", ' '));
}

static void
say (LbCardPane *self)
{
  LbMadeCard *card = lb_card_maker_get_card (self->maker);
  gboolean current = lb_card_maker_is_current (self->maker);
  g_autofree char *text = NULL;

  if (current && card)
    text = warning (lb_made_card_get_drawing (card));
  else if (!current)
    text = g_strdup (card ? _ ("The card is being computed anew…")
                          : _ ("The card is being computed…"));
  lb_card_pane_bar_say (LB_CARD_PANE_BAR (self->bar), text, !current);
}

/* ---- Wishes ---- */

static void
fulfil (LbCardPane *self)
{
  LbMadeCard *card = lb_card_maker_get_card (self->maker);

  if (!card || !lb_card_maker_is_current (self->maker))
    return;
  lb_card_wish_fulfil (self->wish, self->output, card, self->sheet, self->session);
  self->wish = LB_CARD_WISH_NOTHING;
}

static void
wish_for (LbCardPane *self, LbCardWish wish)
{
  self->wish = wish;
  fulfil (self);
}

void
lb_card_pane_print (LbCardPane *self)
{
  g_return_if_fail (LB_IS_CARD_PANE (self));
  wish_for (self, LB_CARD_WISH_PRINT);
}

void
lb_card_pane_save (LbCardPane *self)
{
  g_return_if_fail (LB_IS_CARD_PANE (self));
  wish_for (self, LB_CARD_WISH_SAVE);
}

void
lb_card_pane_copy (LbCardPane *self)
{
  g_return_if_fail (LB_IS_CARD_PANE (self));
  wish_for (self, LB_CARD_WISH_COPY);
}

/* ---- Following the card ---- */

static void
made_cb (LbCardPane *self)
{
  show_sheet (self);
  say (self);
}

static void
busy_cb (LbCardPane *self)
{
  say (self);
  fulfil (self);
}

static void
turn_to (LbCardPane *self, gsize sheet)
{
  if (sheet == self->sheet || sheet >= n_sheets (self))
    return;
  self->sheet = sheet;
  show_sheet (self);
}

static void
lb_card_pane_move_page (LbMainPage *page, int direction)
{
  LbCardPane *self = LB_CARD_PANE (page);

  if (direction > 0 || self->sheet > 0)
    turn_to (self, direction > 0 ? self->sheet + 1 : self->sheet - 1);
}

static gboolean
lb_card_pane_can_move_page (LbMainPage *page, int direction)
{
  LbCardPane *self = LB_CARD_PANE (page);

  return direction > 0 ? self->sheet + 1 < n_sheets (self) : self->sheet > 0;
}

static void
turned_cb (LbCardPane *self, int turn)
{
  if (turn == 2 || turn == -2)
    turn_to (self, turn > 0 ? n_sheets (self) - 1 : 0);
  else
    lb_card_pane_move_page (LB_MAIN_PAGE (self), turn);
}

/* ---- How large ---- */

static void
lb_card_pane_zoom (LbMainPage *page, double factor)
{
  lb_card_preview_zoom (LB_CARD_PREVIEW (LB_CARD_PANE (page)->preview), factor);
}

static void
lb_card_pane_fit (LbMainPage *page)
{
  lb_card_preview_fit (LB_CARD_PREVIEW (LB_CARD_PANE (page)->preview));
}

static void
lb_card_pane_scale_true (LbMainPage *page)
{
  lb_card_preview_true_size (LB_CARD_PREVIEW (LB_CARD_PANE (page)->preview));
}

static void
lb_card_pane_main_page_init (LbMainPageInterface *iface)
{
  iface->zoom = lb_card_pane_zoom;
  iface->fit = lb_card_pane_fit;
  iface->scale_true = lb_card_pane_scale_true;
  iface->move_page = lb_card_pane_move_page;
  iface->can_move_page = lb_card_pane_can_move_page;
}

/* ---- Making ---- */

static void
lb_card_pane_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (lb_card_pane_parent_class)->map (widget);
  lb_card_maker_set_active (LB_CARD_PANE (widget)->maker, TRUE);
}

static void
lb_card_pane_unmap (GtkWidget *widget)
{
  LbCardPane *self = LB_CARD_PANE (widget);

  GTK_WIDGET_CLASS (lb_card_pane_parent_class)->unmap (widget);
  self->wish = LB_CARD_WISH_NOTHING;
  if (self->maker)
    lb_card_maker_set_active (self->maker, FALSE);
}

/* The preview comes first, also before anything has its place. */
static gboolean
lb_card_pane_focus (GtkWidget *widget, GtkDirectionType direction)
{
  LbCardPane *self = LB_CARD_PANE (widget);

  if (direction == GTK_DIR_TAB_FORWARD && !gtk_widget_get_focus_child (widget))
    return gtk_widget_grab_focus (self->preview);
  return GTK_WIDGET_CLASS (lb_card_pane_parent_class)->focus (widget, direction);
}

static void
lb_card_pane_dispose (GObject *object)
{
  LbCardPane *self = LB_CARD_PANE (object);

  if (self->maker)
    {
      g_signal_handlers_disconnect_by_data (self->maker, self);
      lb_card_maker_set_active (self->maker, FALSE);
    }
  G_OBJECT_CLASS (lb_card_pane_parent_class)->dispose (object);
  g_clear_object (&self->maker);
  g_clear_object (&self->output);
  g_clear_object (&self->session);
}

static void
lb_card_pane_class_init (LbCardPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_card_pane_dispose;
  widget_class->focus = lb_card_pane_focus;
  widget_class->map = lb_card_pane_map;
  widget_class->unmap = lb_card_pane_unmap;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_card_pane_init (LbCardPane *self)
{
}

static GtkWidget *
make_left (LbCardPane *self)
{
  GtkWidget *left = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->preview = lb_card_preview_new ();
  g_signal_connect_swapped (self->preview, "turned", G_CALLBACK (turned_cb), self);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->preview);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (self->scroller), _ ("Preview of the card"));
  gtk_widget_add_css_class (self->scroller, "card-desk");
  gtk_widget_set_vexpand (self->scroller, TRUE);
  self->bar = lb_card_pane_bar_new ();
  gtk_box_append (GTK_BOX (left), self->scroller);
  gtk_box_append (GTK_BOX (left), self->bar);
  gtk_widget_set_hexpand (left, TRUE);
  return left;
}

GtkWidget *
lb_card_pane_new (LbSession *session)
{
  LbCardPane *self = g_object_new (LB_TYPE_CARD_PANE, NULL);

  self->session = g_object_ref (session);
  self->maker = lb_card_maker_new (session);
  self->output = lb_card_output_new (GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (self), make_left (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), lb_card_choices_new (session));
  g_signal_connect_swapped (self->maker, "made", G_CALLBACK (made_cb), self);
  g_signal_connect_swapped (self->maker, "busy", G_CALLBACK (busy_cb), self);
  say (self);
  return GTK_WIDGET (self);
}

gsize
lb_card_pane_get_sheet (LbCardPane *self)
{
  g_return_val_if_fail (LB_IS_CARD_PANE (self), 0);
  return self->sheet;
}

LbCardMaker *
lb_card_pane_get_maker (LbCardPane *self)
{
  g_return_val_if_fail (LB_IS_CARD_PANE (self), NULL);
  return self->maker;
}

LbCardPreview *
lb_card_pane_get_preview (LbCardPane *self)
{
  g_return_val_if_fail (LB_IS_CARD_PANE (self), NULL);
  return LB_CARD_PREVIEW (self->preview);
}

LbCardOutput *
lb_card_pane_get_output (LbCardPane *self)
{
  g_return_val_if_fail (LB_IS_CARD_PANE (self), NULL);
  return self->output;
}
