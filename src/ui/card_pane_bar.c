/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_pane_bar.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "fold.h"
#include "page_parts.h"

#define METRES_PER_POINT (0.0254 / 72)

struct _LbCardPaneBar
{
  GtkWidget parent;
  GtkWidget *page;
  GtkWidget *size;
  GtkWidget *said; /* box: spinner and words */
  GtkWidget *spinner;
  GtkWidget *words;
};

G_DEFINE_FINAL_TYPE (LbCardPaneBar, lb_card_pane_bar, GTK_TYPE_WIDGET)

static void
lb_card_pane_bar_dispose (GObject *object)
{

  lb_dispose_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (lb_card_pane_bar_parent_class)->dispose (object);
}

static void
lb_card_pane_bar_class_init (LbCardPaneBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_card_pane_bar_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbcardbar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
group (GtkWidget *row)
{
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  gtk_widget_add_css_class (box, "linked");
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), box);
  return box;
}

static GtkWidget *
add_button (GtkWidget *box, GtkWidget *button, const char *action, const char *tooltip)
{
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
add_turning (LbCardPaneBar *self, GtkWidget *row)
{
  GtkWidget *box = group (row);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *back = gtk_button_new_from_icon_name ("go-previous-symbolic");
  GtkWidget *on = gtk_button_new_from_icon_name ("go-next-symbolic");

  lb_accessible_name (back, _ ("Previous page of the card"));
  lb_accessible_name (on, _ ("Next page of the card"));
  add_button (box, back, "win.previous-page", _ ("Previous page (Ctrl+Page Up)"));
  add_button (box, on, "win.next-page", _ ("Next page (Ctrl+Page Down)"));
  self->page = lb_page_label (NULL, "numeric");
  self->size = lb_page_label (NULL, "row-note");
  gtk_label_set_wrap (GTK_LABEL (self->page), FALSE);
  gtk_label_set_wrap (GTK_LABEL (self->size), FALSE);
  gtk_box_append (GTK_BOX (words), self->page);
  gtk_box_append (GTK_BOX (words), self->size);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (row), words);
}

static void
add_zoom (GtkWidget *row)
{
  GtkWidget *box = group (row);

  add_button (box, gtk_button_new_with_label (_ ("Fit")), "win.zoom-fit",
              _ ("The whole page (Ctrl+0)"));
  add_button (box, gtk_button_new_with_label (_ ("True size")), "win.scale-true",
              _ ("As large as on paper, if the screen tells its size truly (Ctrl+1)"));
}

static void
add_ways_out (GtkWidget *row)
{
  GtkWidget *box = group (row);

  add_button (box, gtk_button_new_with_label (_ ("Copy")), "win.copy-card",
              _ ("Copy the card as a picture and as text (Ctrl+Shift+K)"));
  add_button (box, gtk_button_new_with_label (_ ("Save card…")), "win.save-card",
              _ ("Save the card as PDF, SVG or PNG (Ctrl+Shift+E)"));
  gtk_widget_add_css_class (add_button (box, gtk_button_new_with_label (_ ("Print…")),
                                        "win.print-card", _ ("Print the card (Ctrl+P)")),
                            "suggested-action");
}

static void
lb_card_pane_bar_init (LbCardPaneBar *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *left = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->said = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->spinner = gtk_spinner_new ();
  lb_accessible_name (self->spinner, _ ("Computing"));
  self->words = lb_page_label (NULL, NULL);
  gtk_box_append (GTK_BOX (self->said), self->spinner);
  gtk_box_append (GTK_BOX (self->said), self->words);
  gtk_widget_set_parent (self->said, GTK_WIDGET (self));
  gtk_widget_set_visible (self->said, FALSE);
  add_turning (self, left);
  add_zoom (right);
  add_ways_out (right);
  gtk_widget_set_parent (lb_fold_new (left, right), GTK_WIDGET (self));
}

GtkWidget *
lb_card_pane_bar_new (void)
{
  return g_object_new (LB_TYPE_CARD_PANE_BAR, NULL);
}

static char *
size_words (LbSession *session, const LbCardDrawing *drawing, gsize sheet)
{
  double width, height;
  g_autofree char *across = NULL;
  g_autofree char *up = NULL;

  lb_card_drawing_sheet_size (drawing, sheet, &width, &height);
  across = lb_session_dup_words (session, LB_QUANTITY_HEIGHT, width * METRES_PER_POINT);
  up = lb_session_dup_words (session, LB_QUANTITY_HEIGHT, height * METRES_PER_POINT);
  /* Translators: the size of a paper: width and height. */
  return g_strdup_printf (_ ("%s by %s"), across, up);
}

void
lb_card_pane_bar_show (LbCardPaneBar *self,
                       LbSession *session,
                       const LbCardDrawing *drawing,
                       gsize sheet)
{
  g_autofree char *page = g_strdup_printf (_ ("Page %d of %d"), (int) sheet + 1,
                                           (int) lb_card_drawing_n_sheets (drawing));
  g_autofree char *size = size_words (session, drawing, sheet);

  g_return_if_fail (LB_IS_CARD_PANE_BAR (self));
  gtk_label_set_text (GTK_LABEL (self->page), page);
  gtk_label_set_text (GTK_LABEL (self->size), size);
}

void
lb_card_pane_bar_say (LbCardPaneBar *self, const char *text, gboolean busy)
{
  g_return_if_fail (LB_IS_CARD_PANE_BAR (self));
  gtk_label_set_text (GTK_LABEL (self->words), text ? text : "");
  gtk_spinner_set_spinning (GTK_SPINNER (self->spinner), busy);
  gtk_widget_set_visible (self->spinner, busy);
  gtk_widget_set_visible (self->said, text != NULL);
}

const char *
lb_card_pane_bar_get_page (LbCardPaneBar *self)
{
  g_return_val_if_fail (LB_IS_CARD_PANE_BAR (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->page));
}

const char *
lb_card_pane_bar_get_text (LbCardPaneBar *self)
{
  g_return_val_if_fail (LB_IS_CARD_PANE_BAR (self), NULL);
  return gtk_widget_get_visible (self->said) ? gtk_label_get_text (GTK_LABEL (self->words)) : NULL;
}
