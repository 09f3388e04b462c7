/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "variant_card.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "compare_sample.h"
#include "dispose.h"
#include "page_parts.h"
#include "variant_adder.h"
#include "variant_value.h"

struct _LbVariantCard
{
  GtkWidget parent;
  LbSession *session;
  gsize variant;
  gsize run;
  GtkWidget *sample_place; /* box */
  GtkWidget *name;
  char *shown; /* the name that the document has */
  GtkWidget *fault;
  GtkWidget *values; /* box of LbVariantValue */
  GtkWidget *none;   /* said while there are none */
  GtkWidget *adder;
  GtkWidget *up, *down, *copy;
};

G_DEFINE_FINAL_TYPE (LbVariantCard, lb_variant_card, GTK_TYPE_WIDGET)

static LbDocument *
document_of (LbVariantCard *self)
{
  return lb_session_get_document (self->session);
}

static const LbVariants *
variants_of (LbVariantCard *self)
{
  return &lb_document_get_contents (document_of (self))->variants;
}

/* NULL when it has gone. */
static const LbVariant *
variant_of (LbVariantCard *self)
{
  return self->variant < variants_of (self)->n ? &variants_of (self)->list[self->variant] : NULL;
}

/* ---- The name ---- */

static void
show_name (LbVariantCard *self)
{
  g_free (self->shown);
  self->shown = g_strdup (variant_of (self)->name);
  gtk_editable_set_text (GTK_EDITABLE (self->name), self->shown);
  lb_page_show_fault (self->fault, NULL);
}

static void
commit_name (LbVariantCard *self)
{
  g_autofree char *text = NULL;

  if (!self->session || !variant_of (self))
    return;
  text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name))));
  if (g_strcmp0 (text, self->shown) == 0)
    {
      lb_page_show_fault (self->fault, NULL);
      return;
    }
  if (*text == '\0')
    lb_page_show_fault (self->fault, _ ("A variant needs a name."));
  else if (lb_variants_find (variants_of (self), text))
    lb_page_show_fault (self->fault, _ ("Another variant has this name."));
  else
    lb_session_do (self->session,
                   lb_change_new_rename_variant (document_of (self), self->variant, text));
}

static gboolean
key_pressed_cb (LbVariantCard *self, guint key)
{
  if (key != GDK_KEY_Escape || !variant_of (self)
      || g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->name)), self->shown) == 0)
    return GDK_EVENT_PROPAGATE;
  show_name (self);
  return GDK_EVENT_STOP;
}

static GtkWidget *
make_name (LbVariantCard *self)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_autofree char *name = g_strdup_printf (_ ("Variant %zu: name"), self->variant + 1);

  lb_accessible_name (entry, name);
  gtk_entry_set_max_length (GTK_ENTRY (entry), LB_VARIANT_NAME_LONGEST);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (entry, keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (commit_name), self);
  gtk_widget_add_controller (entry, focus);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (commit_name), self);
  return entry;
}

/* ---- What it replaces ---- */

static gboolean
are_the_same_values (LbVariantCard *self, const LbVariant *variant)
{
  GtkWidget *value = gtk_widget_get_first_child (self->values);

  for (gsize i = 0; i < variant->n_overrides; i++, value = gtk_widget_get_next_sibling (value))
    if (!value
        || lb_variant_value_get_field (LB_VARIANT_VALUE (value)) != variant->overrides[i].field
        || lb_variant_value_get_leader (LB_VARIANT_VALUE (value)) != variant->overrides[i].leader)
      return FALSE;
  return value == NULL;
}

static void
make_values (LbVariantCard *self, const LbVariant *variant)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->values)))
    gtk_box_remove (GTK_BOX (self->values), child);
  for (gsize i = 0; i < variant->n_overrides; i++)
    gtk_box_append (GTK_BOX (self->values),
                    lb_variant_value_new (self->session, self->variant, variant->overrides[i].field,
                                          variant->overrides[i].leader));
  gtk_widget_set_visible (self->none, variant->n_overrides == 0);
}

static void
follow (LbVariantCard *self)
{
  const LbVariant *variant = variant_of (self);
  gsize n = variants_of (self)->n;

  gtk_widget_set_visible (GTK_WIDGET (self), variant != NULL);
  if (!variant)
    return;
  if (g_strcmp0 (variant->name, self->shown) != 0)
    show_name (self);
  if (!are_the_same_values (self, variant) || variant->n_overrides == 0)
    make_values (self, variant);
  for (GtkWidget *value = gtk_widget_get_first_child (self->values); value;
       value = gtk_widget_get_next_sibling (value))
    lb_variant_value_follow (LB_VARIANT_VALUE (value));
  gtk_widget_set_sensitive (self->up, self->variant > 0);
  gtk_widget_set_sensitive (self->down, self->variant + 1 < n);
  gtk_widget_set_sensitive (self->copy, n < LB_MAX_VARIANTS);
  gtk_widget_set_sensitive (self->adder, variant->n_overrides < LB_MAX_OVERRIDES);
}

/* ---- Buttons ---- */

static void
up_cb (LbVariantCard *self)
{
  lb_session_do (self->session,
                 lb_change_new_move_variant (document_of (self), self->variant, self->variant - 1));
}

static void
down_cb (LbVariantCard *self)
{
  lb_session_do (self->session,
                 lb_change_new_move_variant (document_of (self), self->variant, self->variant + 1));
}

static void
copy_cb (LbVariantCard *self)
{
  lb_session_do (self->session,
                 lb_change_new_duplicate_variant (document_of (self), self->variant));
}

static void
remove_cb (LbVariantCard *self)
{
  lb_session_do (self->session, lb_change_new_remove_variant (document_of (self), self->variant));
}

static GtkWidget *
add_button (LbVariantCard *self,
            GtkWidget *head,
            const char *icon,
            const char *what,
            void (*cb) (LbVariantCard *))
{
  /* Translators: the name of a button: "Variant 2: remove" */
  g_autofree char *name = g_strdup_printf (_ ("Variant %zu: %s"), self->variant + 1, what);
  GtkWidget *button = lb_page_icon_button (icon, name);

  g_signal_connect_swapped (button, "clicked", G_CALLBACK (cb), self);
  gtk_box_append (GTK_BOX (head), button);
  return button;
}

/* ---- The widget ---- */

static void
lb_variant_card_dispose (GObject *object)
{
  LbVariantCard *self = LB_VARIANT_CARD (object);

  lb_dispose_session (&self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (lb_variant_card_parent_class)->dispose (object);
}

static void
lb_variant_card_class_init (LbVariantCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_variant_card_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbvariantcard");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_variant_card_init (LbVariantCard *self)
{
  gtk_orientable_set_orientation (
      GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "rig-card");
}

static void
fill (LbVariantCard *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

  self->sample_place = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  self->name = make_name (self);
  self->fault = lb_page_fault ();
  self->values = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->none = lb_page_note (_ ("The rig as it is."));
  self->adder = lb_variant_adder_new (self->session, self->variant);
  gtk_box_append (GTK_BOX (head), self->sample_place);
  gtk_box_append (GTK_BOX (head), self->name);
  self->up = add_button (self, head, "go-up-symbolic", _ ("move up"), up_cb);
  self->down = add_button (self, head, "go-down-symbolic", _ ("move down"), down_cb);
  self->copy = add_button (self, head, "edit-copy-symbolic", _ ("duplicate"), copy_cb);
  add_button (self, head, "user-trash-symbolic", _ ("remove"), remove_cb);
  gtk_widget_set_parent (head, GTK_WIDGET (self));
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
  gtk_widget_set_parent (self->none, GTK_WIDGET (self));
  gtk_widget_set_parent (self->values, GTK_WIDGET (self));
  gtk_widget_set_parent (self->adder, GTK_WIDGET (self));
}

GtkWidget *
lb_variant_card_new (LbSession *session, gsize variant)
{
  LbVariantCard *self = g_object_new (LB_TYPE_VARIANT_CARD, NULL);

  self->session = g_object_ref (session);
  self->variant = variant;
  self->run = LB_MAX_VARIANTS;
  fill (self);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  follow (self);
  return GTK_WIDGET (self);
}

void
lb_variant_card_set_run (LbVariantCard *self, gsize run)
{
  GtkWidget *old = gtk_widget_get_first_child (self->sample_place);

  if (run == self->run)
    return;
  self->run = run;
  if (old)
    gtk_box_remove (GTK_BOX (self->sample_place), old);
  gtk_box_append (GTK_BOX (self->sample_place), lb_compare_sample_new (self->session, run));
}

GtkWidget *
lb_variant_card_get_name (LbVariantCard *self)
{
  return self->name;
}

GtkWidget *
lb_variant_card_get_adder (LbVariantCard *self)
{
  return self->adder;
}

GtkWidget *
lb_variant_card_get_value (LbVariantCard *self, const LbField *field, gsize leader)
{
  for (GtkWidget *value = gtk_widget_get_first_child (self->values); value;
       value = gtk_widget_get_next_sibling (value))
    if (lb_variant_value_get_field (LB_VARIANT_VALUE (value)) == field
        && lb_variant_value_get_leader (LB_VARIANT_VALUE (value)) == leader)
      return lb_variant_value_get_control (LB_VARIANT_VALUE (value));
  return NULL;
}
