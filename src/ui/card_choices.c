/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_choices.h"

#include <glib/gi18n.h>

#include "card_section.h"
#include "page_parts.h"

GtkWidget *
lb_card_choices_new (LbSession *session)
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
