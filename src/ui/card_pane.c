/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_pane.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "card_pane_bar.h"
#include "card_section.h"
#include "main_page.h"
#include "page_parts.h"

#define METRES_PER_POINT (0.0254 / 72)

/* What is to be done as soon as the card is made. */
typedef enum
{
  NOTHING,
  PRINT,
  SAVE,
  COPY,
} Wish;

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
  Wish wish;
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

/* "4 in by 6 in" */
static char *
size_words (LbCardPane *self, const LbCardDrawing *drawing)
{
  double width, height;
  g_autofree char *across = NULL;
  g_autofree char *up = NULL;

  lb_card_drawing_sheet_size (drawing, self->sheet, &width, &height);
  across = lb_session_dup_words (self->session, LB_QUANTITY_HEIGHT, width * METRES_PER_POINT);
  up = lb_session_dup_words (self->session, LB_QUANTITY_HEIGHT, height * METRES_PER_POINT);
  /* Translators: the size of a paper: width and height. */
  return g_strdup_printf (_ ("%s by %s"), across, up);
}

static void
show_sheet (LbCardPane *self)
{
  LbMadeCard *card = lb_card_maker_get_card (self->maker);
  g_autofree char *page = NULL;
  g_autofree char *name = NULL;
  g_autofree char *size = NULL;

  if (!card)
    return;
  self->sheet = MIN (self->sheet, n_sheets (self) - 1);
  page = g_strdup_printf (_ ("Page %d of %d"), (int) self->sheet + 1, (int) n_sheets (self));
  /* Translators: %s is "Page 1 of 2" */
  name = g_strdup_printf (_ ("The card as it will be printed. %s"), page);
  size = size_words (self, lb_made_card_get_drawing (card));
  lb_card_pane_bar_show (LB_CARD_PANE_BAR (self->bar), page, size);
  lb_card_preview_show (LB_CARD_PREVIEW (self->preview), card, self->sheet, name);
  lb_main_page_abilities_changed (LB_MAIN_PAGE (self));
}

static void
say (LbCardPane *self)
{
  LbMadeCard *card = lb_card_maker_get_card (self->maker);
  const char *out = card ? lb_card_drawing_left_out (lb_made_card_get_drawing (card)) : NULL;
  gboolean current = lb_card_maker_is_current (self->maker);
  g_autofree char *text = NULL;

  if (current && out)
    text = g_strdup_printf (_ ("Left out, as there is no room for it: %s"), out);
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
  Wish wish = self->wish;

  if (wish == NOTHING || !card || !lb_card_maker_is_current (self->maker))
    return;
  self->wish = NOTHING;
  if (wish == PRINT)
    lb_card_output_print (self->output, card);
  else if (wish == COPY)
    lb_card_output_copy (self->output, card, self->sheet);
  else if (wish == SAVE)
    {
      g_autofree char *document =
          lb_document_dup_display_name (lb_session_get_document (self->session));
      /* Translators: name of a file for the card of the rig %s. */
      g_autofree char *name = g_strdup_printf (_ ("%s, card"), document);

      lb_card_output_choose_file (self->output, card, name);
    }
}

static void
wish_for (LbCardPane *self, Wish wish)
{
  self->wish = wish;
  fulfil (self);
}

void
lb_card_pane_print (LbCardPane *self)
{
  g_return_if_fail (LB_IS_CARD_PANE (self));
  wish_for (self, PRINT);
}

void
lb_card_pane_save (LbCardPane *self)
{
  g_return_if_fail (LB_IS_CARD_PANE (self));
  wish_for (self, SAVE);
}

void
lb_card_pane_copy (LbCardPane *self)
{
  g_return_if_fail (LB_IS_CARD_PANE (self));
  wish_for (self, COPY);
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
  self->wish = NOTHING;
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

static GtkWidget *
make_choices (LbSession *session)
{
  GtkWidget *sections;
  GtkWidget *scroller = lb_page_scroller (_ ("Choices for the card"), &sections);

  gtk_widget_add_css_class (scroller, "column");
  /* The preview has the room. */
  gtk_widget_set_hexpand (scroller, FALSE);
  gtk_box_append (GTK_BOX (sections), lb_card_paper_section_new (session));
  gtk_box_append (GTK_BOX (sections), lb_card_print_section_new (session));
  gtk_box_append (GTK_BOX (sections), lb_card_table_section_new (session));
  gtk_box_append (GTK_BOX (sections), lb_card_hardware_section_new (session));
  gtk_box_append (GTK_BOX (sections), lb_card_ends_section_new (session));
  return scroller;
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
  gtk_box_append (GTK_BOX (self), make_choices (session));
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
