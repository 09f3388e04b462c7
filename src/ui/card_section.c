/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_section.h"

#include "page_parts.h"

#define NOTE_WIDTH 30 /* letters; rather more lines than a wider column */

typedef struct
{
  LbSession *session;
  gboolean showing;
} LbCardSectionPrivate;

G_DEFINE_TYPE_WITH_PRIVATE (LbCardSection, lb_card_section, GTK_TYPE_BOX)

static LbCardSectionPrivate *
private_of (LbCardSection *self)
{
  return lb_card_section_get_instance_private (self);
}

static void
show (LbCardSection *self)
{
  LbCardSectionPrivate *private = private_of (self);
  LbCard card = lb_card_section_get_card (self);

  private->showing = TRUE;
  LB_CARD_SECTION_GET_CLASS (self)->show (self, &card);
  private->showing = FALSE;
}

static void
lb_card_section_dispose (GObject *object)
{
  LbCardSectionPrivate *private = private_of (LB_CARD_SECTION (object));

  if (private->session)
    {
      g_signal_handlers_disconnect_by_data (private->session, object);
      g_signal_handlers_disconnect_by_data (lb_session_get_preferences (private->session), object);
    }
  /* Entries that lose the focus on the way out have nothing to change any more. */
  private->showing = TRUE;
  G_OBJECT_CLASS (lb_card_section_parent_class)->dispose (object);
}

static void
lb_card_section_finalize (GObject *object)
{
  g_clear_object (&private_of (LB_CARD_SECTION (object))->session);
  G_OBJECT_CLASS (lb_card_section_parent_class)->finalize (object);
}

static void
lb_card_section_class_init (LbCardSectionClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_card_section_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_card_section_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_card_section_init (LbCardSection *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-section");
  private_of (self)->showing = TRUE;
}

void
lb_card_section_add_heading (LbCardSection *self, const char *text)
{
  g_return_if_fail (LB_IS_CARD_SECTION (self));
  gtk_box_append (GTK_BOX (self), lb_page_heading (text));
}

void
lb_card_section_add_note (LbCardSection *self, const char *text)
{
  GtkWidget *note = lb_page_note (text);

  g_return_if_fail (LB_IS_CARD_SECTION (self));
  gtk_label_set_max_width_chars (GTK_LABEL (note), NOTE_WIDTH);
  gtk_box_append (GTK_BOX (self), note);
}

void
lb_card_section_start (LbCardSection *self, LbSession *session)
{
  LbCardSectionPrivate *private;

  g_return_if_fail (LB_IS_CARD_SECTION (self));
  private = private_of (self);
  private->session = g_object_ref (session);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (show), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (show), self);
  g_signal_connect_swapped (lb_session_get_preferences (session), "weights-changed",
                            G_CALLBACK (show), self);
  show (self);
}

LbSession *
lb_card_section_get_session (LbCardSection *self)
{
  g_return_val_if_fail (LB_IS_CARD_SECTION (self), NULL);
  return private_of (self)->session;
}

LbCard
lb_card_section_get_card (LbCardSection *self)
{
  g_return_val_if_fail (LB_IS_CARD_SECTION (self), lb_card_default ());
  return *lb_document_get_card (lb_session_get_document (private_of (self)->session));
}

void
lb_card_section_do (LbCardSection *self, const LbCard *card, const char *label, guint gesture)
{
  LbCardSectionPrivate *private;
  LbChange *change;

  g_return_if_fail (LB_IS_CARD_SECTION (self));
  private = private_of (self);
  if (private->showing)
    return;
  change = lb_change_new_card (card, label);
  lb_change_set_gesture (change, gesture);
  lb_session_do (private->session, change);
}
