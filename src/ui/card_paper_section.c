/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The size of the card, and the sheets it is printed on. */
#include <glib/gi18n.h>

#include "card_section.h"
#include "page_parts.h"
#include "quantity_entry.h"

#define LB_TYPE_CARD_PAPER_SECTION (lb_card_paper_section_get_type ())
G_DECLARE_FINAL_TYPE (
    LbCardPaperSection, lb_card_paper_section, LB, CARD_PAPER_SECTION, LbCardSection)

struct _LbCardPaperSection
{
  LbCardSection parent;
  GtkWidget *size;
  GtkWidget *own; /* box: both sides */
  GtkWidget *width;
  GtkWidget *height;
  GtkWidget *wide;
  GtkWidget *sheet;
  GtkWidget *several;
};

G_DEFINE_FINAL_TYPE (LbCardPaperSection, lb_card_paper_section, LB_TYPE_CARD_SECTION)

static void
lb_card_paper_section_show (LbCardSection *section, const LbCard *card)
{
  LbCardPaperSection *self = LB_CARD_PAPER_SECTION (section);
  gboolean own = card->size == LB_CARD_OWN_SIZE;

  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->size), card->size);
  gtk_widget_set_visible (self->own, own);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->width), card->own_width);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->height), card->own_height);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->wide), card->wide);
  gtk_widget_set_visible (self->wide, !own);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->sheet), card->sheet);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->several), card->several);
  /* A sheet that is the card has room for one. */
  gtk_widget_set_sensitive (self->several, card->sheet != LB_CARD_SHEET_AS_CARD);
}

static void
changed_cb (LbCardPaperSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  card.size = (LbCardSize) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->size));
  card.wide = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->wide));
  card.sheet = (LbCardSheet) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->sheet));
  card.several = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->several));
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the card’s paper"), 0);
}

static void
side_cb (LbCardPaperSection *self, double value, LbQuantityEntry *entry)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  if (GTK_WIDGET (entry) == self->width)
    card.own_width = value;
  else
    card.own_height = value;
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the card’s size"),
                      lb_quantity_entry_get_gesture (entry));
}

static void
width_cb (LbCardPaperSection *self, double value)
{
  side_cb (self, value, LB_QUANTITY_ENTRY (self->width));
}

static void
height_cb (LbCardPaperSection *self, double value)
{
  side_cb (self, value, LB_QUANTITY_ENTRY (self->height));
}

static void
lb_card_paper_section_class_init (LbCardPaperSectionClass *klass)
{
  LB_CARD_SECTION_CLASS (klass)->show = lb_card_paper_section_show;
}

static void
lb_card_paper_section_init (LbCardPaperSection *self)
{
}

static GtkWidget *
make_choice (LbCardPaperSection *self, const char *const *names, gsize n, const char *name)
{
  GtkWidget *choice = lb_page_choice (names, n, name);

  g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (changed_cb), self);
  gtk_box_append (GTK_BOX (self), lb_page_row (name, choice));
  return choice;
}

static GtkWidget *
make_check (LbCardPaperSection *self, const char *label)
{
  GtkWidget *check = lb_page_check (label);

  g_signal_connect_swapped (check, "toggled", G_CALLBACK (changed_cb), self);
  gtk_box_append (GTK_BOX (self), check);
  return check;
}

static GtkWidget *
make_side (
    LbCardPaperSection *self, LbSession *session, const char *label, const char *name, GCallback cb)
{
  GtkWidget *entry = lb_quantity_entry_new (session, LB_QUANTITY_HEIGHT, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), LB_CARD_LEAST_SIDE, LB_CARD_MOST_SIDE);
  g_signal_connect_swapped (entry, "entered", cb, self);
  gtk_box_append (GTK_BOX (self->own), lb_page_row (label, entry));
  gtk_box_append (GTK_BOX (self->own), lb_page_fault_of (entry));
  return entry;
}

GtkWidget *
lb_card_paper_section_new (LbSession *session)
{
  LbCardPaperSection *self = g_object_new (LB_TYPE_CARD_PAPER_SECTION, NULL);
  const char *sizes[LB_N_CARD_SIZES];
  const char *sheets[LB_N_CARD_SHEETS];

  for (int i = 0; i < LB_N_CARD_SIZES; i++)
    sizes[i] = lb_card_size_label ((LbCardSize) i);
  for (int i = 0; i < LB_N_CARD_SHEETS; i++)
    sheets[i] = lb_card_sheet_label ((LbCardSheet) i);
  lb_card_section_add_heading (LB_CARD_SECTION (self), _ ("Paper"));
  self->size = make_choice (self, sizes, LB_N_CARD_SIZES, _ ("Size of the card"));
  self->own = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self), self->own);
  self->width =
      make_side (self, session, _ ("Width"), _ ("Width of the card"), G_CALLBACK (width_cb));
  self->height =
      make_side (self, session, _ ("Height"), _ ("Height of the card"), G_CALLBACK (height_cb));
  self->wide = make_check (self, _ ("Longer side across"));
  self->sheet = make_choice (self, sheets, LB_N_CARD_SHEETS, _ ("Printed on"));
  self->several = make_check (self, _ ("As many on a sheet as fit, with marks to cut by"));
  lb_card_section_start (LB_CARD_SECTION (self), session);
  return GTK_WIDGET (self);
}
