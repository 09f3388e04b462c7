/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is printed on the card, and the date. */
#include <glib/gi18n.h>

#include "card_section.h"
#include "line_entry.h"
#include "page_parts.h"

#define LB_TYPE_CARD_PRINT_SECTION (lb_card_print_section_get_type ())
G_DECLARE_FINAL_TYPE (
    LbCardPrintSection, lb_card_print_section, LB, CARD_PRINT_SECTION, LbCardSection)

struct _LbCardPrintSection
{
  LbCardSection parent;
  GtkWidget *parts[LB_N_CARD_PARTS];
  GtkWidget *variants;
  GtkWidget *today;
  GtkWidget *date_row;
  GtkWidget *date;
};

G_DEFINE_FINAL_TYPE (LbCardPrintSection, lb_card_print_section, LB_TYPE_CARD_SECTION)

static void
lb_card_print_section_show (LbCardSection *section, const LbCard *card)
{
  LbCardPrintSection *self = LB_CARD_PRINT_SECTION (section);

  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->parts[i]), card->prints[i]);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->variants), card->running_variants);
  gtk_widget_set_sensitive (self->variants, card->prints[LB_CARD_PART_RUNNING]);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->today), card->dated_today);
  gtk_widget_set_visible (self->date_row, !card->dated_today);
  lb_line_entry_set_text (LB_LINE_ENTRY (self->date), card->date.text);
}

static void
part_cb (LbCardPrintSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    card.prints[i] = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->parts[i]));
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change what the card holds"), 0);
}

static void
variants_cb (LbCardPrintSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  card.running_variants = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->variants));
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change what the running diagram shows"),
                      0);
}

static void
today_cb (LbCardPrintSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  card.dated_today = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->today));
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the card’s date"), 0);
}

static void
date_cb (LbCardPrintSection *self, const char *text)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  lb_card_words_set (&card.date, text);
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the card’s date"), 0);
}

static void
lb_card_print_section_class_init (LbCardPrintSectionClass *klass)
{
  LB_CARD_SECTION_CLASS (klass)->show = lb_card_print_section_show;
}

static void
lb_card_print_section_init (LbCardPrintSection *self)
{
}

static GtkWidget *
add_check (LbCardPrintSection *self, const char *label, GCallback cb)
{
  GtkWidget *check = lb_page_check (label);

  g_signal_connect_swapped (check, "toggled", cb, self);
  gtk_box_append (GTK_BOX (self), check);
  return check;
}

/* What is on it, and under the running diagram what that shows. */
static void
add_parts (LbCardPrintSection *self)
{
  for (int i = 0; i < LB_N_CARD_PARTS; i++)
    {
      self->parts[i] = add_check (self, lb_card_part_label ((LbCardPart) i), G_CALLBACK (part_cb));
      if (i != LB_CARD_PART_RUNNING)
        continue;
      self->variants =
          add_check (self, _ ("Variants over one another in it"), G_CALLBACK (variants_cb));
      gtk_widget_add_css_class (self->variants, "under-another");
      gtk_widget_set_tooltip_text (self->variants,
                                   _ ("The running diagram shows the variants of the page Compare "
                                      "(F4) instead of the rig alone"));
    }
}

GtkWidget *
lb_card_print_section_new (LbSession *session)
{
  LbCardPrintSection *self = g_object_new (LB_TYPE_CARD_PRINT_SECTION, NULL);

  lb_card_section_add_heading (LB_CARD_SECTION (self), _ ("On the card"));
  add_parts (self);
  self->today = add_check (self, _ ("Dated the day it is printed"), G_CALLBACK (today_cb));
  self->date = lb_line_entry_new (_ ("Date on the card"), LB_CARD_WORDS_LONGEST);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->date), _ ("none"));
  gtk_editable_set_width_chars (GTK_EDITABLE (self->date), 14);
  g_signal_connect_swapped (self->date, "entered", G_CALLBACK (date_cb), self);
  self->date_row = lb_page_row (_ ("Date"), self->date);
  gtk_box_append (GTK_BOX (self), self->date_row);
  lb_card_section_add_note (LB_CARD_SECTION (self),
                            _ ("Cautions, the reminder of local rules and whether the rig was "
                               "calibrated are always on it."));
  lb_card_section_start (LB_CARD_SECTION (self), session);
  return GTK_WIDGET (self);
}
