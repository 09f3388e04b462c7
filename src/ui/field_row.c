/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field_row.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "field_entry.h"
#include "misfit.h"
#include "page_parts.h"

#define ENTRY_CHARS 9
/* Choices of no more characters than this stand beside their name, others below it. */
#define ROOM_FOR_CHOICE 14

struct _LbFieldRow
{
  GtkWidget parent;
  LbSession *session;
  const LbField *field;
  gsize leader;
  GtkWidget *control; /* LbFieldEntry or GtkDropDown */
  GtkWidget *fault;
  gboolean following; /* the choice is being set from the document */
};

G_DEFINE_FINAL_TYPE (LbFieldRow, lb_field_row, GTK_TYPE_WIDGET)

/* The choice in the list that stands for the value, or GTK_INVALID_LIST_POSITION. */
static guint
position_of (const LbField *field, double value)
{
  for (gsize i = 0; i < field->n_choices; i++)
    if (field->choices[i].value == (int) value)
      return (guint) i;
  return GTK_INVALID_LIST_POSITION;
}

static void
follow (LbFieldRow *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));

  gtk_widget_set_visible (GTK_WIDGET (self), lb_field_applies (self->field, setup));
  if (self->field->kind != LB_FIELD_CHOICE)
    return;
  self->following = TRUE;
  gtk_drop_down_set_selected (
      GTK_DROP_DOWN (self->control),
      position_of (self->field, lb_field_get (self->field, setup, self->leader)));
  self->following = FALSE;
}

/* Why the choice could not be made; the list is then back at the one that holds. */
static void
show_misfit (LbFieldRow *self, double value)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  LbWording wording = lb_session_get_wording (self->session);
  g_autofree char *text = lb_misfit_explain (setup, self->field, self->leader, value, &wording);

  gtk_label_set_text (GTK_LABEL (self->fault), text ? text : "");
  gtk_widget_set_visible (self->fault, text != NULL);
}

static void
chosen_cb (LbFieldRow *self)
{
  guint position = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->control));
  double value;

  if (self->following || position >= self->field->n_choices)
    return;
  value = self->field->choices[position].value;
  show_misfit (self, value);
  lb_session_set_value (self->session, self->field, self->leader, value, 0);
  follow (self);
}

static void
fault_cb (LbFieldRow *self)
{
  const char *fault = lb_field_entry_get_fault (LB_FIELD_ENTRY (self->control));
  double value = lb_session_get_value (self->session, self->field, self->leader);
  g_autofree char *words = NULL;
  g_autofree char *text = NULL;

  gtk_widget_set_visible (self->fault, fault != NULL);
  if (!fault)
    return;
  words = lb_session_dup_words (self->session, self->field->quantity, value);
  /* Translators: why a text is no value, then the value that still holds. */
  text = lb_is_set (value) ? g_strdup_printf (_ ("%s It is still %s."), fault, words)
                           : g_strdup (fault);
  gtk_label_set_text (GTK_LABEL (self->fault), text);
}

/* ---- Making ---- */

/* A field's label may start small, since it stands behind the name of a part elsewhere. */
static char *
start_large (const char *text)
{
  g_autofree char *first = g_utf8_substring (text, 0, *text ? 1 : 0);
  g_autofree char *large = g_utf8_strup (first, -1);

  return g_strconcat (large, g_utf8_offset_to_pointer (text, *text ? 1 : 0), NULL);
}

static GtkWidget *
make_choice (const LbField *field, const char *name)
{
  g_autofree const char **names = g_new (const char *, field->n_choices);
  GtkWidget *choice;

  for (gsize i = 0; i < field->n_choices; i++)
    names[i] = _ (field->choices[i].label);
  choice = lb_page_choice (names, field->n_choices, name);
  if (field->hint)
    gtk_widget_set_tooltip_text (choice, _ (field->hint));
  return choice;
}

static gboolean
has_long_choices (const LbField *field)
{
  for (gsize i = 0; i < field->n_choices; i++)
    if (g_utf8_strlen (_ (field->choices[i].label), -1) > ROOM_FOR_CHOICE)
      return TRUE;
  return FALSE;
}

static void
make_control (LbFieldRow *self)
{
  g_autofree char *name = lb_field_full_label (self->field, self->leader);

  if (self->field->kind == LB_FIELD_CHOICE)
    {
      self->control = make_choice (self->field, name);
      g_signal_connect_swapped (self->control, "notify::selected", G_CALLBACK (chosen_cb), self);
    }
  else
    {
      self->control = lb_field_entry_new (self->session, self->field, self->leader);
      gtk_editable_set_width_chars (GTK_EDITABLE (self->control), ENTRY_CHARS);
      gtk_editable_set_max_width_chars (GTK_EDITABLE (self->control), ENTRY_CHARS);
      g_signal_connect_swapped (self->control, "notify::fault", G_CALLBACK (fault_cb), self);
    }
  gtk_widget_set_valign (self->control, GTK_ALIGN_CENTER);
  if (GTK_IS_DROP_DOWN (self->control))
    lb_accessible_name_choice (GTK_DROP_DOWN (self->control), name);
  else
    lb_accessible_name (self->control, name);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->control),
                                  GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, self->fault, NULL, -1);
}

static void
fill (LbFieldRow *self, const char *text)
{
  GtkWidget *line = gtk_box_new (has_long_choices (self->field) ? GTK_ORIENTATION_VERTICAL
                                                                : GTK_ORIENTATION_HORIZONTAL,
                                 has_long_choices (self->field) ? 2 : 8);
  g_autofree char *own = start_large (_ (self->field->label));
  GtkWidget *label = lb_page_label (text ? text : own, NULL);

  gtk_widget_set_hexpand (label, TRUE);
  if (self->field->hint)
    gtk_widget_set_tooltip_text (label, _ (self->field->hint));
  gtk_box_append (GTK_BOX (line), label);
  gtk_box_append (GTK_BOX (line), self->control);
  gtk_widget_set_parent (line, GTK_WIDGET (self));
  if (self->field->nullable && self->field->unset_label)
    {
      /* Translators: what an empty entry stands for: "Empty: from the published curve" */
      g_autofree char *note = g_strdup_printf (_ ("Empty: %s"), _ (self->field->unset_label));

      gtk_widget_set_parent (lb_page_label (note, "row-note"), GTK_WIDGET (self));
    }
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
}

static gboolean
lb_field_row_grab_focus (GtkWidget *widget)
{
  return lb_accessible_pass_focus (widget, LB_FIELD_ROW (widget)->control);
}

static void
lb_field_row_dispose (GObject *object)
{
  LbFieldRow *self = LB_FIELD_ROW (object);

  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  if (self->control)
    g_signal_handlers_disconnect_by_data (self->control, self);
  lb_dispose_children (GTK_WIDGET (self));
  self->control = NULL;
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_field_row_parent_class)->dispose (object);
}

static void
lb_field_row_class_init (LbFieldRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_field_row_dispose;
  widget_class->grab_focus = lb_field_row_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbfieldrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_field_row_init (LbFieldRow *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->fault = lb_page_label (NULL, "row-fault");
  gtk_widget_set_visible (self->fault, FALSE);
}

GtkWidget *
lb_field_row_new (LbSession *session, const LbField *field, gsize leader, const char *label)
{
  LbFieldRow *self = g_object_new (LB_TYPE_FIELD_ROW, NULL);

  self->session = g_object_ref (session);
  self->field = field;
  self->leader = leader;
  make_control (self);
  fill (self, label);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  follow (self);
  return GTK_WIDGET (self);
}

const LbField *
lb_field_row_get_field (LbFieldRow *self)
{
  g_return_val_if_fail (LB_IS_FIELD_ROW (self), NULL);
  return self->field;
}

GtkWidget *
lb_field_row_get_control (LbFieldRow *self)
{
  g_return_val_if_fail (LB_IS_FIELD_ROW (self), NULL);
  return self->control;
}

const char *
lb_field_row_get_fault (LbFieldRow *self)
{
  g_return_val_if_fail (LB_IS_FIELD_ROW (self), NULL);
  if (!gtk_widget_get_visible (self->fault))
    return NULL;
  return gtk_label_get_text (GTK_LABEL (self->fault));
}
