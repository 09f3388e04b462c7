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

/* What follows the choice is told once, and only when the list is whole again: while its lures are
 * exchanged the list holds none, and to be asked to follow the rig then would add them twice. */
void
lb_lure_choice_update (GtkWidget *choice, const LbSetup *setup)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (choice)));
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (choice));
  g_autoptr (GStrvBuilder) names = NULL;
  g_auto (GStrv) lures = NULL;

  if (is_same (list, setup))
    return;
  names = g_strv_builder_new ();
  for (guint i = 0; i < setup->rig.n_leaders; i++)
    {
      g_autofree char *words = lb_words_lure (setup, i);

      g_strv_builder_add (names, words);
    }
  lures = g_strv_builder_end (names);
  g_object_freeze_notify (G_OBJECT (choice));
  gtk_string_list_splice (list, 1, g_list_model_get_n_items (G_LIST_MODEL (list)) - 1,
                          (const char *const *) lures);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), chosen <= setup->rig.n_leaders ? chosen : 0);
  g_object_thaw_notify (G_OBJECT (choice));
}

int
lb_lure_choice_get (GtkWidget *choice)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (choice));

  return chosen == GTK_INVALID_LIST_POSITION ? -1 : (int) chosen - 1;
}
