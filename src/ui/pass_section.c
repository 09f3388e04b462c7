/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_section.h"

typedef struct
{
  LbSession *session;
  gboolean showing;
} LbPassSectionPrivate;

G_DEFINE_TYPE_WITH_PRIVATE (LbPassSection, lb_pass_section, GTK_TYPE_BOX)

static LbPassSectionPrivate *
private_of (LbPassSection *self)
{
  return lb_pass_section_get_instance_private (self);
}

static void
show (LbPassSection *self)
{
  LbPassSectionPrivate *private = private_of (self);
  LbPassScript script = lb_pass_section_get_script (self);

  private->showing = TRUE;
  LB_PASS_SECTION_GET_CLASS (self)->show (self, &script);
  private->showing = FALSE;
}

static void
lb_pass_section_dispose (GObject *object)
{
  LbPassSectionPrivate *private = private_of (LB_PASS_SECTION (object));

  if (private->session)
    g_signal_handlers_disconnect_by_data (private->session, object);
  /* Entries that lose the focus on the way out have nothing to change any more. */
  private->showing = TRUE;
  G_OBJECT_CLASS (lb_pass_section_parent_class)->dispose (object);
}

static void
lb_pass_section_finalize (GObject *object)
{
  g_clear_object (&private_of (LB_PASS_SECTION (object))->session);
  G_OBJECT_CLASS (lb_pass_section_parent_class)->finalize (object);
}

static void
lb_pass_section_class_init (LbPassSectionClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_pass_section_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pass_section_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_pass_section_init (LbPassSection *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-section");
  private_of (self)->showing = TRUE;
}

void
lb_pass_section_start (LbPassSection *self, LbSession *session)
{
  g_return_if_fail (LB_IS_PASS_SECTION (self));
  private_of (self)->session = g_object_ref (session);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (show), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (show), self);
  show (self);
}

LbSession *
lb_pass_section_get_session (LbPassSection *self)
{
  g_return_val_if_fail (LB_IS_PASS_SECTION (self), NULL);
  return private_of (self)->session;
}

LbPassScript
lb_pass_section_get_script (LbPassSection *self)
{
  LbDocument *document = lb_session_get_document (private_of (self)->session);

  return lb_document_get_contents (document)->pass;
}

void
lb_pass_section_do (LbPassSection *self,
                    const LbPassScript *script,
                    const char *label,
                    guint gesture)
{
  LbPassSectionPrivate *private;
  LbChange *change;

  g_return_if_fail (LB_IS_PASS_SECTION (self));
  private = private_of (self);
  if (private->showing)
    return;
  change = lb_change_new_pass (script, label);
  lb_change_set_gesture (change, gesture);
  lb_session_do (private->session, change);
}
