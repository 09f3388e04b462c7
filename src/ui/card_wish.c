/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_wish.h"

#include <glib/gi18n.h>

static void
save (LbCardOutput *output, LbMadeCard *card, LbSession *session)
{
  g_autofree char *document = lb_document_dup_display_name (lb_session_get_document (session));
  /* Translators: name of a file for the card of the rig %s. */
  g_autofree char *name = g_strdup_printf (_ ("%s, card"), document);

  lb_card_output_choose_file (output, card, name);
}

void
lb_card_wish_fulfil (
    LbCardWish wish, LbCardOutput *output, LbMadeCard *card, gsize sheet, LbSession *session)
{
  if (wish == LB_CARD_WISH_PRINT)
    lb_card_output_print (output, card);
  else if (wish == LB_CARD_WISH_COPY)
    lb_card_output_copy (output, card, sheet);
  else if (wish == LB_CARD_WISH_SAVE)
    save (output, card, session);
}
