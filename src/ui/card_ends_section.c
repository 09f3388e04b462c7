/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How the ends of the lines are terminated, in the user's words, and what line that takes. */
#include <glib/gi18n.h>

#include "card_section.h"
#include "line_entry.h"
#include "page_parts.h"
#include "quantity_entry.h"

#define LB_TYPE_CARD_ENDS_SECTION (lb_card_ends_section_get_type ())
G_DECLARE_FINAL_TYPE (LbCardEndsSection, lb_card_ends_section, LB, CARD_ENDS_SECTION, LbCardSection)

struct _LbCardEndsSection
{
  LbCardSection parent;
  GtkWidget *how[LB_N_CARD_JOINTS];
  GtkWidget *allowance[LB_N_CARD_JOINTS];
};

G_DEFINE_FINAL_TYPE (LbCardEndsSection, lb_card_ends_section, LB_TYPE_CARD_SECTION)

static void
lb_card_ends_section_show (LbCardSection *section, const LbCard *card)
{
  LbCardEndsSection *self = LB_CARD_ENDS_SECTION (section);

  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    {
      lb_line_entry_set_text (LB_LINE_ENTRY (self->how[i]), card->terminations[i].how.text);
      lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->allowance[i]),
                                   card->terminations[i].allowance);
    }
}

static int
joint_of (GtkWidget *const *entries, gpointer entry)
{
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    if (entries[i] == entry)
      return i;
  g_assert_not_reached ();
}

static void
how_cb (LbLineEntry *entry, const char *text, LbCardEndsSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  lb_card_words_set (&card.terminations[joint_of (self->how, entry)].how, text);
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change how lines are terminated"), 0);
}

static void
allowance_cb (LbQuantityEntry *entry, double value, LbCardEndsSection *self)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  card.terminations[joint_of (self->allowance, entry)].allowance = value;
  lb_card_section_do (LB_CARD_SECTION (self), &card, _ ("Change the line for terminations"),
                      lb_quantity_entry_get_gesture (entry));
}

static void
lb_card_ends_section_class_init (LbCardEndsSectionClass *klass)
{
  LB_CARD_SECTION_CLASS (klass)->show = lb_card_ends_section_show;
}

static void
lb_card_ends_section_init (LbCardEndsSection *self)
{
}

/* The words, and beside them the line for each end. */
static void
add_joint (LbCardEndsSection *self, LbSession *session, int i)
{
  const char *joint = lb_card_joint_label ((LbCardJoint) i);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  /* Translators: %s is where two parts are joined, as in "Leader to lure". */
  g_autofree char *how = g_strdup_printf (_ ("%s: knot, crimp or the like"), joint);
  g_autofree char *allowance = g_strdup_printf (_ ("%s: line for each end"), joint);

  self->how[i] = lb_line_entry_new (how, LB_CARD_WORDS_LONGEST);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->how[i]), _ ("not said"));
  gtk_widget_set_hexpand (self->how[i], TRUE);
  self->allowance[i] = lb_quantity_entry_new (session, LB_QUANTITY_HEIGHT, allowance);
  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (self->allowance[i]), 0, LB_CARD_MOST_ALLOWANCE);
  g_signal_connect (self->how[i], "entered", G_CALLBACK (how_cb), self);
  g_signal_connect (self->allowance[i], "entered", G_CALLBACK (allowance_cb), self);
  gtk_box_append (GTK_BOX (row), self->how[i]);
  gtk_box_append (GTK_BOX (row), self->allowance[i]);
  gtk_widget_add_css_class (row, "page-row");
  gtk_box_append (GTK_BOX (self), lb_page_label (joint, NULL));
  gtk_box_append (GTK_BOX (self), row);
  gtk_box_append (GTK_BOX (self), lb_page_fault_of (self->allowance[i]));
}

GtkWidget *
lb_card_ends_section_new (LbSession *session)
{
  LbCardEndsSection *self = g_object_new (LB_TYPE_CARD_ENDS_SECTION, NULL);

  lb_card_section_add_heading (LB_CARD_SECTION (self), _ ("Knots and crimps"));
  lb_card_section_add_note (LB_CARD_SECTION (self),
                            _ ("In your own words, and the line that each end takes up: it is "
                               "added to the length that is cut."));
  for (int i = 0; i < LB_N_CARD_JOINTS; i++)
    add_joint (self, session, i);
  lb_card_section_start (LB_CARD_SECTION (self), session);
  return GTK_WIDGET (self);
}
