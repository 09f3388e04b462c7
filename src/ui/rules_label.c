/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rules_label.h"

#include <glib/gi18n.h>

#include "dispose.h"
#include "rules.h"

struct _LbRulesLabel
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *count;
  GtkWidget *excess;
};

G_DEFINE_FINAL_TYPE (LbRulesLabel, lb_rules_label, GTK_TYPE_WIDGET)

static void
follow (LbRulesLabel *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  g_autofree char *count = lb_rules_dup_count (setup);
  g_autofree char *excess = lb_rules_dup_excess (setup);

  if (g_strcmp0 (count, gtk_label_get_text (GTK_LABEL (self->count))) != 0)
    gtk_label_set_text (GTK_LABEL (self->count), count);
  if (g_strcmp0 (excess ? excess : "", gtk_label_get_text (GTK_LABEL (self->excess))) != 0)
    gtk_label_set_text (GTK_LABEL (self->excess), excess ? excess : "");
  gtk_widget_set_visible (self->count, excess == NULL);
  gtk_widget_set_visible (self->excess, excess != NULL);
}

static void
lb_rules_label_dispose (GObject *object)
{
  LbRulesLabel *self = LB_RULES_LABEL (object);

  lb_dispose_session (&self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (lb_rules_label_parent_class)->dispose (object);
}

static void
lb_rules_label_class_init (LbRulesLabelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_rules_label_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbruleslabel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
add_label (LbRulesLabel *self, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class)
    gtk_widget_add_css_class (label, css_class);
  gtk_widget_set_parent (label, GTK_WIDGET (self));
  return label;
}

static void
lb_rules_label_init (LbRulesLabel *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 2);
  self->count = add_label (self, NULL, NULL);
  self->excess = add_label (self, NULL, "row-fault");
  add_label (self, lb_rules_note (), "row-note");
}

GtkWidget *
lb_rules_label_new (LbSession *session)
{
  LbRulesLabel *self = g_object_new (LB_TYPE_RULES_LABEL, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  follow (self);
  return GTK_WIDGET (self);
}

const char *
lb_rules_label_get_excess (LbRulesLabel *self)
{
  g_return_val_if_fail (LB_IS_RULES_LABEL (self), NULL);
  if (!gtk_widget_get_visible (self->excess))
    return NULL;
  return gtk_label_get_text (GTK_LABEL (self->excess));
}
