/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "variant_adder.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "page_parts.h"

typedef struct
{
  const LbField *field;
  gsize leader;
} Choice;

typedef struct
{
  LbSession *session;
  gsize variant;
  GArray *choices; /* (element-type Choice) */
  gsize n_leaders; /* that the list was made for */
  GtkStringList *names;
} Adder;

static void
adder_free (gpointer data)
{
  Adder *adder = data;

  g_object_unref (adder->session);
  g_array_unref (adder->choices);
  g_free (adder);
}

static void
add_choice (Adder *adder, const LbField *field, gsize leader)
{
  Choice choice = { field, leader };
  g_autofree char *label = lb_field_full_label (field, leader);
  g_autofree char *touching = g_strdup_printf (_ ("%s: just touching"), label);

  g_array_append_val (adder->choices, choice);
  gtk_string_list_append (adder->names,
                          g_str_equal (field->path, "mainline.line_out") ? touching : label);
}

/* Leader by leader; what everybody compares comes first. */
static void
fill (Adder *adder)
{
  static const char *const first[] = { "weight.mass_kg", "boat.speed_over_ground_m_s",
                                       "river.surface_current_m_s", "river.depth_m" };
  gsize n_fields;
  const LbField *fields = lb_fields (&n_fields);
  gsize n = lb_document_get_setup (lb_session_get_document (adder->session))->rig.n_leaders;

  gtk_string_list_splice (adder->names, 0, g_list_model_get_n_items (G_LIST_MODEL (adder->names)),
                          NULL);
  g_array_set_size (adder->choices, 0);
  adder->n_leaders = n;
  gtk_string_list_append (adder->names, _ ("Change a value…"));
  for (gsize i = 0; i < G_N_ELEMENTS (first); i++)
    add_choice (adder, lb_field (first[i]), 0);
  for (gsize leader = 0; leader < n; leader++)
    for (gsize i = 0; i < n_fields; i++)
      if (fields[i].stride)
        add_choice (adder, &fields[i], leader);
  for (gsize i = 0; i < n_fields; i++)
    if (!fields[i].stride && !g_str_has_prefix (fields[i].path, "rules."))
      {
        gboolean is_there = FALSE;

        for (gsize j = 0; j < G_N_ELEMENTS (first); j++)
          is_there |= g_str_equal (fields[i].path, first[j]);
        if (!is_there)
          add_choice (adder, &fields[i], 0);
      }
}

/* The document's own value, or one to begin with where that is of no use. */
static double
start_value (LbSession *session, const LbField *field, gsize leader)
{
  double value = lb_session_get_value (session, field, leader);

  if (g_str_equal (field->path, "mainline.line_out"))
    return LB_LINE_OUT_TOUCHING;
  /* Both ways of giving line out keep their number in one place. */
  if (g_str_has_suffix (field->path, ".line_out.given_m")
      && !lb_field_applies (field, lb_document_get_setup (lb_session_get_document (session))))
    {
      LbResult *result = lb_session_get_result (session);
      const LbReadings *readings = result ? lb_result_get_readings (result) : NULL;

      return readings ? readings->line_out : field->usual_low;
    }
  if (g_str_has_suffix (field->path, ".weight_above_bed_m")
      && !lb_field_applies (field, lb_document_get_setup (lb_session_get_document (session))))
    return lb_preferences_get_hold_height (lb_session_get_preferences (session));
  if (field->kind == LB_FIELD_CHOICE)
    return lb_field_choice (field, (int) value)->name ? value : field->choices[1].value;
  return lb_is_set (value) ? lb_field_clamp (field, value) : field->usual_low;
}

gboolean
lb_variant_adder_add (LbSession *session, gsize variant, const LbField *field, gsize leader)
{
  return lb_session_do (session, lb_change_new_set_override (lb_session_get_document (session),
                                                             variant, field, leader,
                                                             start_value (session, field, leader)));
}

static void
chosen_cb (GtkDropDown *list, GParamSpec *pspec, Adder *adder)
{
  guint chosen = gtk_drop_down_get_selected (list);
  Choice choice;

  if (chosen == 0 || chosen == GTK_INVALID_LIST_POSITION || chosen > adder->choices->len)
    return;
  choice = g_array_index (adder->choices, Choice, chosen - 1);
  gtk_drop_down_set_selected (list, 0);
  lb_variant_adder_add (adder->session, adder->variant, choice.field, choice.leader);
}

static void
edited_cb (GtkDropDown *list)
{
  Adder *adder = g_object_get_data (G_OBJECT (list), "adder");
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (adder->session));

  if (setup->rig.n_leaders != adder->n_leaders)
    fill (adder);
}

GtkWidget *
lb_variant_adder_new (LbSession *session, gsize variant)
{
  Adder *adder = g_new0 (Adder, 1);
  /* Translators: the name of a list of values */
  g_autofree char *name = g_strdup_printf (_ ("Variant %zu: change a value"), variant + 1);
  GtkWidget *list = lb_page_choice (NULL, 0, name);
  GtkExpression *words = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  adder->session = g_object_ref (session);
  adder->variant = variant;
  adder->choices = g_array_new (FALSE, FALSE, sizeof (Choice));
  adder->names = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (list)));
  g_object_set_data_full (G_OBJECT (list), "adder", adder, adder_free);
  gtk_drop_down_set_expression (GTK_DROP_DOWN (list), words);
  gtk_expression_unref (words);
  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (list), TRUE);
  fill (adder);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (list), 0);
  g_signal_connect (list, "notify::selected", G_CALLBACK (chosen_cb), adder);
  g_signal_connect_object (session, "edited", G_CALLBACK (edited_cb), list, G_CONNECT_SWAPPED);
  return list;
}
