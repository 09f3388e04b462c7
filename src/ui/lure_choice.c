/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lure_choice.h"

#include "page_parts.h"
#include "words.h"

GtkWidget *
lb_lure_choice_new (const char *first, const char *name)
{
  return lb_page_choice (&first, 1, name);
}

/* Whether the list holds these lures already: a list that is made anew would close. */
static gboolean
is_same (GtkStringList *list, const LbSetup *setup)
{
  if (g_list_model_get_n_items (G_LIST_MODEL (list)) != 1 + setup->rig.n_leaders)
    return FALSE;
  for (guint i = 0; i < setup->rig.n_leaders; i++)
    {
      g_autofree char *words = lb_words_lure (setup, i);

      if (!g_str_equal (gtk_string_list_get_string (list, 1 + i), words))
        return FALSE;
    }
  return TRUE;
}

void
lb_lure_choice_update (GtkWidget *choice, const LbSetup *setup)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (choice)));
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (choice));

  if (is_same (list, setup))
    return;
  gtk_string_list_splice (list, 1, g_list_model_get_n_items (G_LIST_MODEL (list)) - 1, NULL);
  for (guint i = 0; i < setup->rig.n_leaders; i++)
    {
      g_autofree char *words = lb_words_lure (setup, i);

      gtk_string_list_append (list, words);
    }
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), chosen <= setup->rig.n_leaders ? chosen : 0);
}

int
lb_lure_choice_get (GtkWidget *choice)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (choice));

  return chosen == GTK_INVALID_LIST_POSITION ? -1 : (int) chosen - 1;
}
