/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_hardware_row.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "line_entry.h"
#include "page_parts.h"

struct _LbCardHardwareRow
{
  GtkWidget parent;
  GtkWidget *count;
  GtkWidget *what;
  GtkWidget *up;
  GtkWidget *down;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (LbCardHardwareRow, lb_card_hardware_row, GTK_TYPE_WIDGET)

enum
{
  COUNT,
  WHAT,
  MOVE,
  REMOVE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
count_cb (LbCardHardwareRow *self)
{
  if (!self->showing)
    g_signal_emit (self, signals[COUNT], 0,
                   gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->count)));
}

static void
what_cb (LbCardHardwareRow *self, const char *text)
{
  g_signal_emit (self, signals[WHAT], 0, text);
}

static void
up_cb (LbCardHardwareRow *self)
{
  g_signal_emit (self, signals[MOVE], 0, -1);
}

static void
down_cb (LbCardHardwareRow *self)
{
  g_signal_emit (self, signals[MOVE], 0, 1);
}

static void
remove_cb (LbCardHardwareRow *self)
{
  g_signal_emit (self, signals[REMOVE], 0);
}

static gboolean
key_pressed_cb (LbCardHardwareRow *self, guint key, guint code, GdkModifierType state)
{
  if ((state & gtk_accelerator_get_default_mod_mask ()) != GDK_ALT_MASK
      || (key != GDK_KEY_Up && key != GDK_KEY_Down))
    return GDK_EVENT_PROPAGATE;
  /* What is typed goes along. */
  lb_line_entry_commit (LB_LINE_ENTRY (self->what));
  g_signal_emit (self, signals[MOVE], 0, key == GDK_KEY_Up ? -1 : 1);
  return GDK_EVENT_STOP;
}

static void
lb_card_hardware_row_dispose (GObject *object)
{

  LB_CARD_HARDWARE_ROW (object)->showing = TRUE;
  lb_dispose_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (lb_card_hardware_row_parent_class)->dispose (object);
}

static void
lb_card_hardware_row_class_init (LbCardHardwareRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_card_hardware_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[COUNT] = g_signal_new ("count", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                 1, G_TYPE_INT);
  signals[WHAT] = g_signal_new ("what", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_STRING);
  signals[MOVE] = g_signal_new ("move", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_INT);
  signals[REMOVE] =
      g_signal_new ("remove", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_card_hardware_row_init (LbCardHardwareRow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 2);
  gtk_widget_add_css_class (GTK_WIDGET (self), "page-row");
  gtk_widget_add_css_class (GTK_WIDGET (self), "hardware");
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

static GtkWidget *
add_button (
    LbCardHardwareRow *self, const char *icon, const char *name, const char *tooltip, GCallback cb)
{
  GtkWidget *button = lb_page_icon_button (icon, name);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", cb, self);
  gtk_widget_set_parent (button, GTK_WIDGET (self));
  return button;
}

static void
add_buttons (LbCardHardwareRow *self, int index)
{
  g_autofree char *up = g_strdup_printf (_ ("Hardware %d: up"), index + 1);
  g_autofree char *down = g_strdup_printf (_ ("Hardware %d: down"), index + 1);
  g_autofree char *take_away = g_strdup_printf (_ ("Hardware %d: take away"), index + 1);

  self->up = add_button (self, "go-up-symbolic", up, _ ("Up (Alt+Up)"), G_CALLBACK (up_cb));
  self->down =
      add_button (self, "go-down-symbolic", down, _ ("Down (Alt+Down)"), G_CALLBACK (down_cb));
  add_button (self, "list-remove-symbolic", take_away, _ ("Take it off the list"),
              G_CALLBACK (remove_cb));
}

GtkWidget *
lb_card_hardware_row_new (int index)
{
  LbCardHardwareRow *self = g_object_new (LB_TYPE_CARD_HARDWARE_ROW, NULL);
  g_autofree char *count = g_strdup_printf (_ ("Hardware %d: how many"), index + 1);
  g_autofree char *what = g_strdup_printf (_ ("Hardware %d: what"), index + 1);

  self->count = gtk_spin_button_new_with_range (1, LB_CARD_MOST_COUNT, 1);
  gtk_spin_button_set_numeric (GTK_SPIN_BUTTON (self->count), TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->count), 2);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->count), 2);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->count), GTK_ORIENTATION_HORIZONTAL);
  lb_accessible_name (self->count, count);
  g_signal_connect_swapped (self->count, "value-changed", G_CALLBACK (count_cb), self);
  gtk_widget_set_parent (self->count, GTK_WIDGET (self));
  self->what = lb_line_entry_new (what, LB_CARD_WORDS_LONGEST);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->what), _ ("swivels, snaps, sleeves"));
  gtk_widget_set_hexpand (self->what, TRUE);
  g_signal_connect_swapped (self->what, "entered", G_CALLBACK (what_cb), self);
  gtk_widget_set_parent (self->what, GTK_WIDGET (self));
  add_buttons (self, index);
  return GTK_WIDGET (self);
}

void
lb_card_hardware_row_show (LbCardHardwareRow *self, const LbCardHardware *hardware, int n)
{
  g_return_if_fail (LB_IS_CARD_HARDWARE_ROW (self));
  self->showing = TRUE;
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->count), hardware->count);
  lb_line_entry_set_text (LB_LINE_ENTRY (self->what), hardware->what.text);
  self->showing = FALSE;
}

void
lb_card_hardware_row_focus (LbCardHardwareRow *self)
{
  g_return_if_fail (LB_IS_CARD_HARDWARE_ROW (self));
  gtk_widget_grab_focus (self->what);
}

GtkSpinButton *
lb_card_hardware_row_get_count (LbCardHardwareRow *self)
{
  g_return_val_if_fail (LB_IS_CARD_HARDWARE_ROW (self), NULL);
  return GTK_SPIN_BUTTON (self->count);
}

GtkEntry *
lb_card_hardware_row_get_what (LbCardHardwareRow *self)
{
  g_return_val_if_fail (LB_IS_CARD_HARDWARE_ROW (self), NULL);
  return GTK_ENTRY (self->what);
}
