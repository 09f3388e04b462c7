/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A section of the choices for the card: what all of them have in common. A section shows what the
 * document's card says and changes it in steps of the history. */
#pragma once

#include <gtk/gtk.h>

#include "card.h"
#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_CARD_SECTION (lb_card_section_get_type ())
G_DECLARE_DERIVABLE_TYPE (LbCardSection, lb_card_section, LB, CARD_SECTION, GtkBox)

struct _LbCardSectionClass
{
  GtkBoxClass parent_class;

  /* Shows `card`; what its controls emit meanwhile changes nothing. */
  void (*show) (LbCardSection *self, const LbCard *card);
};

/* Call when all controls are made: shows the card, and again whenever it, the units or the weights
 * owned change. */
void lb_card_section_start (LbCardSection *self, LbSession *session);

/* Adds a heading, and a note in small letters. */
void lb_card_section_add_heading (LbCardSection *self, const char *text);
void lb_card_section_add_note (LbCardSection *self, const char *text);

LbSession *lb_card_section_get_session (LbCardSection *self); /* (transfer none) */

/* The document's card, to be changed and handed to lb_card_section_do(). */
LbCard lb_card_section_get_card (LbCardSection *self);

/* Makes `card` the document's, as a step called `label` (translated) in `gesture` (0: of none). */
void lb_card_section_do (LbCardSection *self, const LbCard *card, const char *label, guint gesture);

/* ---- The sections ---- */

GtkWidget *lb_card_paper_section_new (LbSession *session);
GtkWidget *lb_card_print_section_new (LbSession *session); /* what is printed, and the date */
GtkWidget *lb_card_ends_section_new (LbSession *session);
GtkWidget *lb_card_hardware_section_new (LbSession *session);
GtkWidget *lb_card_table_section_new (LbSession *session);

G_END_DECLS
