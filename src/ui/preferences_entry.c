/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferences_entry.h"

#include "accessible.h"
#include "dispose.h"

struct _LbPreferencesEntry
{
  GtkWidget parent;
  LbPreferences *preferences;
  const char *property;
  LbPreferencesShow show;
  LbPreferencesTake take;
  GtkWidget *entry;
  GtkWidget *fault; /* hidden while there is none */
  char *shown;      /* the text that stands for the value */
};

G_DEFINE_FINAL_TYPE (LbPreferencesEntry, lb_preferences_entry, GTK_TYPE_WIDGET)

static gboolean
is_being_edited (LbPreferencesEntry *self)
{
  return g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->entry)), self->shown) != 0;
}

static void
show_fault (LbPreferencesEntry *self, const char *fault)
{
  gtk_label_set_text (GTK_LABEL (self->fault), fault ? fault : "");
  gtk_widget_set_visible (self->fault, fault != NULL);
  if (fault)
    gtk_widget_add_css_class (self->entry, "error");
  else
    gtk_widget_remove_css_class (self->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               fault ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
}

static void
show_value (LbPreferencesEntry *self)
{
  g_free (self->shown);
  self->shown = self->show (self->preferences, self->property);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), self->shown);
  show_fault (self, NULL);
}

/* A text that could not be may do now; one that is being typed is left alone. */
static void
changed_cb (LbPreferencesEntry *self)
{
  if (lb_preferences_entry_get_fault (self))
    lb_preferences_entry_commit (self);
  else if (!is_being_edited (self))
    show_value (self);
}

static gboolean
lb_preferences_entry_grab_focus (GtkWidget *widget)
{
  return lb_accessible_pass_focus (widget, LB_PREFERENCES_ENTRY (widget)->entry);
}

static void
lb_preferences_entry_dispose (GObject *object)
{
  LbPreferencesEntry *self = LB_PREFERENCES_ENTRY (object);

  if (self->preferences)
    g_signal_handlers_disconnect_by_data (self->preferences, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->preferences);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (lb_preferences_entry_parent_class)->dispose (object);
}

static void
lb_preferences_entry_class_init (LbPreferencesEntryClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_preferences_entry_dispose;
  widget_class->grab_focus = lb_preferences_entry_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_preferences_entry_init (LbPreferencesEntry *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 32);
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (lb_preferences_entry_commit),
                            self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (lb_preferences_entry_commit), self);
  gtk_widget_add_controller (self->entry, focus);

  self->fault = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->fault), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->fault), 0);
  gtk_widget_add_css_class (self->fault, "error");
  gtk_widget_set_visible (self->fault, FALSE);
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
}

GtkWidget *
lb_preferences_entry_new (LbPreferences *preferences,
                          const char *property,
                          LbPreferencesShow show,
                          LbPreferencesTake take)
{
  LbPreferencesEntry *self = g_object_new (LB_TYPE_PREFERENCES_ENTRY, NULL);

  self->preferences = g_object_ref (preferences);
  self->property = property;
  self->show = show;
  self->take = take;
  show_value (self);
  g_signal_connect_swapped (preferences, "notify", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (preferences, "weights-changed", G_CALLBACK (changed_cb), self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_preferences_entry_get_entry (LbPreferencesEntry *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES_ENTRY (self), NULL);
  return self->entry;
}

const char *
lb_preferences_entry_get_fault (LbPreferencesEntry *self)
{
  g_return_val_if_fail (LB_IS_PREFERENCES_ENTRY (self), NULL);
  return gtk_widget_get_visible (self->fault) ? gtk_label_get_text (GTK_LABEL (self->fault)) : NULL;
}

void
lb_preferences_entry_commit (LbPreferencesEntry *self)
{
  g_autofree char *fault = NULL;
  g_autofree char *text = NULL;

  g_return_if_fail (LB_IS_PREFERENCES_ENTRY (self));
  /* What was only looked at keeps all its digits. */
  if (!is_being_edited (self))
    {
      show_fault (self, NULL);
      return;
    }
  text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));
  /* Meanwhile the text counts as the value's, so that the change does not come back here. */
  g_free (self->shown);
  self->shown = g_strdup (text);
  show_fault (self, NULL);
  fault = self->take (self->preferences, self->property, text);
  if (!fault)
    {
      show_value (self);
      return;
    }
  g_free (self->shown);
  self->shown = self->show (self->preferences, self->property);
  show_fault (self, fault);
}
