/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "variant_value.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "page_parts.h"
#include "quantity_entry.h"

struct _LbVariantValue
{
  GtkWidget parent;
  LbSession *session;
  gsize variant;
  const LbField *field;
  gsize leader;
  GtkWidget *control;
  GtkWidget *fault;
  gboolean following; /* the control is being set, not used */
};

G_DEFINE_FINAL_TYPE (LbVariantValue, lb_variant_value, GTK_TYPE_WIDGET)

static LbDocument *
document_of (LbVariantValue *self)
{
  return lb_session_get_document (self->session);
}

/* NULL when the variant or the value has gone. */
static const LbOverride *
override_of (LbVariantValue *self)
{
  const LbVariants *variants = &lb_document_get_contents (document_of (self))->variants;

  return self->variant < variants->n
             ? lb_variant_get_override (&variants->list[self->variant], self->field, self->leader)
             : NULL;
}

/* ---- Numbers ---- */

static void
show_fault (LbVariantValue *self)
{
  lb_page_show_fault (self->fault, lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (self->control)));
}

static void
entered_cb (LbVariantValue *self, double value)
{
  LbChange *change = lb_change_new_set_override (document_of (self), self->variant, self->field,
                                                 self->leader, value);

  lb_change_set_gesture (change, lb_quantity_entry_get_gesture (LB_QUANTITY_ENTRY (self->control)));
  lb_session_do (self->session, change);
}

static GtkWidget *
number_control (LbVariantValue *self, const char *name)
{
  GtkWidget *entry = lb_quantity_entry_new (self->session, self->field->quantity, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), self->field->minimum,
                               self->field->maximum);
  if (self->field->nullable)
    {
      lb_quantity_entry_set_optional (LB_QUANTITY_ENTRY (entry), TRUE);
      gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ (self->field->unset_label));
    }
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 11);
  g_signal_connect_swapped (entry, "entered", G_CALLBACK (entered_cb), self);
  g_signal_connect_swapped (entry, "fault-changed", G_CALLBACK (show_fault), self);
  return entry;
}

/* ---- Choices ---- */

/* The choices that have a name in a file: the first may be one that has none. */
static gsize
first_choice (const LbField *field)
{
  return field->choices[0].name ? 0 : 1;
}

static void
chosen_cb (LbVariantValue *self)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->control));
  const LbFieldChoice *choice;

  if (self->following || chosen == GTK_INVALID_LIST_POSITION)
    return;
  choice = &self->field->choices[chosen + first_choice (self->field)];
  lb_session_do (self->session,
                 lb_change_new_set_override (document_of (self), self->variant, self->field,
                                             self->leader, choice->value));
}

static GtkWidget *
choice_control (LbVariantValue *self, const char *name)
{
  const LbField *field = self->field;
  g_autofree const char **names = g_new0 (const char *, field->n_choices);
  gsize first = first_choice (field);
  GtkWidget *choice;

  for (gsize i = first; i < field->n_choices; i++)
    names[i - first] = _ (field->choices[i].label);
  choice = lb_page_choice (names, field->n_choices - first, name);
  g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (chosen_cb), self);
  return choice;
}

/* Of the ways to give line out only "just touching" stands by itself: there is nothing to choose.
 */
static gboolean
is_fixed (const LbField *field)
{
  return g_str_equal (field->path, "mainline.line_out");
}

/* ---- All of it ---- */

void
lb_variant_value_follow (LbVariantValue *self)
{
  const LbOverride *override = override_of (self);

  if (!override || is_fixed (self->field))
    return;
  self->following = TRUE;
  if (self->field->kind == LB_FIELD_NUMBER)
    lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->control), override->value);
  else
    for (gsize i = first_choice (self->field); i < self->field->n_choices; i++)
      if (self->field->choices[i].value == (int) override->value)
        gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control),
                                    (guint) (i - first_choice (self->field)));
  self->following = FALSE;
}

static void
remove_cb (LbVariantValue *self)
{
  lb_session_do (self->session, lb_change_new_unset_override (document_of (self), self->variant,
                                                              self->field, self->leader));
}

static void
lb_variant_value_dispose (GObject *object)
{
  LbVariantValue *self = LB_VARIANT_VALUE (object);

  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_variant_value_parent_class)->dispose (object);
}

static void
lb_variant_value_class_init (LbVariantValueClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_variant_value_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbvariantvalue");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_variant_value_init (LbVariantValue *self)
{
  gtk_orientable_set_orientation (
      GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
lb_variant_value_new (LbSession *session, gsize variant, const LbField *field, gsize leader)
{
  LbVariantValue *self = g_object_new (LB_TYPE_VARIANT_VALUE, NULL);
  g_autofree char *label = lb_field_full_label (field, leader);
  /* Translators: the name of a control: "Variant 2, Weight" */
  g_autofree char *name = g_strdup_printf (_ ("Variant %zu, %s"), variant + 1, label);
  g_autofree char *undo =
      g_strdup_printf (_ ("Variant %zu, %s: as in the rig"), variant + 1, label);
  GtkWidget *row, *remove = lb_page_icon_button ("edit-clear-symbolic", undo);

  self->session = g_object_ref (session);
  self->variant = variant;
  self->field = field;
  self->leader = leader;
  if (is_fixed (field))
    self->control = lb_page_label (_ ("just touching"), NULL);
  else
    self->control =
        field->kind == LB_FIELD_NUMBER ? number_control (self, name) : choice_control (self, name);
  row = lb_page_row (label, self->control);
  gtk_box_append (GTK_BOX (row), remove);
  self->fault = lb_page_fault ();
  gtk_widget_set_parent (row, GTK_WIDGET (self));
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (remove_cb), self);
  lb_variant_value_follow (self);
  return GTK_WIDGET (self);
}

const LbField *
lb_variant_value_get_field (LbVariantValue *self)
{
  return self->field;
}

gsize
lb_variant_value_get_leader (LbVariantValue *self)
{
  return self->leader;
}

GtkWidget *
lb_variant_value_get_control (LbVariantValue *self)
{
  return self->control;
}
