/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The list of hardware. */
#include <glib/gi18n.h>

#include "card_hardware_row.h"
#include "card_section.h"
#include "line_entry.h"
#include "page_parts.h"

#define LB_TYPE_CARD_HARDWARE_SECTION (lb_card_hardware_section_get_type ())
G_DECLARE_FINAL_TYPE (
    LbCardHardwareSection, lb_card_hardware_section, LB, CARD_HARDWARE_SECTION, LbCardSection)

struct _LbCardHardwareSection
{
  LbCardSection parent;
  GtkWidget *list;                        /* box of the rows */
  GtkWidget *rows[LB_CARD_MOST_HARDWARE]; /* made when they are first wanted */
  GtkWidget *add;
};

G_DEFINE_FINAL_TYPE (LbCardHardwareSection, lb_card_hardware_section, LB_TYPE_CARD_SECTION)

static size_t
index_of (LbCardHardwareSection *self, gpointer row)
{
  for (size_t i = 0; i < LB_CARD_MOST_HARDWARE; i++)
    if (self->rows[i] == row)
      return i;
  g_assert_not_reached ();
}

/* ---- What the user does ---- */

static void
count_cb (LbCardHardwareRow *row, int count, LbCardHardwareSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  card.hardware[index_of (self, row)].count = count;
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the hardware"), 0);
}

static void
what_cb (LbCardHardwareRow *row, const char *text, LbCardHardwareSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  lb_card_words_set (&card.hardware[index_of (self, row)].what, text);
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the hardware"), 0);
}

static void
move_cb (LbCardHardwareRow *row, int direction, LbCardHardwareSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));
  size_t from = index_of (self, row);
  size_t to = direction > 0 ? from + 1 : from - 1;
  LbCardHardware moved = card.hardware[from];

  if ((direction < 0 && from == 0) || to >= card.n_hardware)
    return;
  card.hardware[from] = card.hardware[to];
  card.hardware[to] = moved;
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the order of the hardware"), 0);
  lb_card_hardware_row_focus (LB_CARD_HARDWARE_ROW (self->rows[to]));
}

static void
focus_row (LbCardHardwareSection *self, size_t n, size_t i)
{
  if (n > 0)
    lb_card_hardware_row_focus (LB_CARD_HARDWARE_ROW (self->rows[MIN (i, n - 1)]));
  else
    gtk_widget_grab_focus (self->add);
}

static void
remove_cb (LbCardHardwareRow *row, LbCardHardwareSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));
  size_t i = index_of (self, row);

  if (i >= card.n_hardware)
    return;
  /* Before the row goes, which has the focus. */
  focus_row (self, card.n_hardware - 1, i + 1 < card.n_hardware ? i + 1 : i - 1);
  card.n_hardware--;
  for (size_t k = i; k < card.n_hardware; k++)
    card.hardware[k] = card.hardware[k + 1];
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Take hardware off the list"), 0);
  focus_row (self, card.n_hardware, i);
}

static void
add_cb (LbCardHardwareSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  if (card.n_hardware >= LB_CARD_MOST_HARDWARE)
    return;
  card.hardware[card.n_hardware] = (LbCardHardware){ .count = 1 };
  lb_card_words_set (&card.hardware[card.n_hardware].what, _ ("swivel"));
  card.n_hardware++;
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Add hardware"), 0);
  focus_row (self, card.n_hardware, card.n_hardware - 1);
}

/* ---- Showing ---- */

static void
make_row (LbCardHardwareSection *self, size_t i)
{
  GtkWidget *row = lb_card_hardware_row_new ((int) i);

  g_signal_connect (row, "count", G_CALLBACK (count_cb), self);
  g_signal_connect (row, "what", G_CALLBACK (what_cb), self);
  g_signal_connect (row, "move", G_CALLBACK (move_cb), self);
  g_signal_connect (row, "remove", G_CALLBACK (remove_cb), self);
  gtk_box_append (GTK_BOX (self->list), row);
  self->rows[i] = row;
}

static void
lb_card_hardware_section_show (LbCardSection *section, const LbCard *card)
{
  LbCardHardwareSection *self = LB_CARD_HARDWARE_SECTION (section);

  for (size_t i = 0; i < LB_CARD_MOST_HARDWARE; i++)
    {
      if (i < card->n_hardware && !self->rows[i])
        make_row (self, i);
      if (!self->rows[i])
        continue;
      gtk_widget_set_visible (self->rows[i], i < card->n_hardware);
      if (i < card->n_hardware)
        lb_card_hardware_row_show (LB_CARD_HARDWARE_ROW (self->rows[i]), &card->hardware[i],
                                   (int) card->n_hardware);
    }
  gtk_widget_set_sensitive (self->add, card->n_hardware < LB_CARD_MOST_HARDWARE);
}

static void
lb_card_hardware_section_class_init (LbCardHardwareSectionClass *klass)
{
  LB_CARD_SECTION_CLASS (klass)->show = lb_card_hardware_section_show;
}

static void
lb_card_hardware_section_init (LbCardHardwareSection *self)
{
}

GtkWidget *
lb_card_hardware_section_new (LbSession *session)
{
  LbCardHardwareSection *self = g_object_new (LB_TYPE_CARD_HARDWARE_SECTION, NULL);

  lb_card_section_add_heading (LB_CARD_SECTION (self), _ ("Hardware"));
  self->list = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL,
                             "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  gtk_box_append (GTK_BOX (self), self->list);
  self->add = gtk_button_new_with_label (_ ("Add hardware"));
  gtk_widget_set_halign (self->add, GTK_ALIGN_START);
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_append (GTK_BOX (self), self->add);
  lb_card_section_start (LB_CARD_SECTION (self), session);
  return GTK_WIDGET (self);
}
