/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page_switch.h"

#include <glib/gi18n.h>

#include "accessible.h"

#define ACTION "win.main-page"

struct _LbPageSwitch
{
  GtkWidget parent;
  GtkWidget *row;
  GtkWidget *menu_button;
  GMenu *menu;
  int n;
};

G_DEFINE_FINAL_TYPE (LbPageSwitch, lb_page_switch, GTK_TYPE_WIDGET)

/* As little as the menu's button needs, and as much as the row would like. */
static void
lb_page_switch_measure (GtkWidget *widget,
                        GtkOrientation orientation,
                        int for_size,
                        int *minimum,
                        int *natural,
                        int *minimum_baseline,
                        int *natural_baseline)
{
  LbPageSwitch *self = LB_PAGE_SWITCH (widget);
  int row_minimum, row, button_minimum, button;

  gtk_widget_measure (self->row, orientation, -1, &row_minimum, &row, NULL, NULL);
  gtk_widget_measure (self->menu_button, orientation, -1, &button_minimum, &button, NULL, NULL);
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN (row_minimum, button_minimum)
                                                       : MAX (row_minimum, button_minimum);
  *natural = MAX (row, button);
}

static void
lb_page_switch_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbPageSwitch *self = LB_PAGE_SWITCH (widget);
  int minimum;
  gboolean room;

  gtk_widget_measure (self->row, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  room = minimum <= width;
  gtk_widget_set_child_visible (self->row, room);
  gtk_widget_set_child_visible (self->menu_button, !room);
  gtk_widget_size_allocate (room ? self->row : self->menu_button,
                            &(GtkAllocation){ 0, 0, width, height }, baseline);
}

static void
lb_page_switch_dispose (GObject *object)
{
  LbPageSwitch *self = LB_PAGE_SWITCH (object);

  g_clear_pointer (&self->row, gtk_widget_unparent);
  g_clear_pointer (&self->menu_button, gtk_widget_unparent);
  g_clear_object (&self->menu);
  G_OBJECT_CLASS (lb_page_switch_parent_class)->dispose (object);
}

static void
lb_page_switch_class_init (LbPageSwitchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_page_switch_dispose;
  widget_class->measure = lb_page_switch_measure;
  widget_class->size_allocate = lb_page_switch_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "lbpageswitch");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_page_switch_init (LbPageSwitch *self)
{
  self->menu = g_menu_new ();
  self->row = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  gtk_widget_add_css_class (self->row, "linked");
  lb_accessible_name (self->row, _ ("Main pages"));
  self->menu_button = gtk_menu_button_new ();
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (self->menu_button), G_MENU_MODEL (self->menu));
  gtk_menu_button_set_always_show_arrow (GTK_MENU_BUTTON (self->menu_button), TRUE);
  gtk_widget_set_halign (self->menu_button, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (self->menu_button, _ ("Main pages"));
  lb_accessible_name (self->menu_button, _ ("Main pages"));
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  gtk_widget_set_parent (self->menu_button, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

/* "Compare (F4)" */
static char *
tooltip (const LbMainPageKind *kind)
{
  g_autofree char *key = NULL;
  GdkModifierType modifiers;
  guint value;

  if (!kind->key || !gtk_accelerator_parse (kind->key, &value, &modifiers))
    return g_strdup (_ (kind->title));
  key = gtk_accelerator_get_label (value, modifiers);
  /* Translators: a page of the window and its key. */
  return g_strdup_printf (_ ("%s (%s)"), _ (kind->title), key);
}

void
lb_page_switch_add (LbPageSwitch *self, const LbMainPageKind *kind)
{
  GtkWidget *button;
  g_autoptr (GMenuItem) item = NULL;
  g_autofree char *words = NULL;

  g_return_if_fail (LB_IS_PAGE_SWITCH (self));
  button = gtk_toggle_button_new_with_label (_ (kind->title));
  words = tooltip (kind);
  item = g_menu_item_new (_ (kind->title), NULL);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), ACTION);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", kind->name);
  gtk_widget_set_tooltip_text (button, words);
  /* The page that is asked for gets it. */
  gtk_widget_set_focus_on_click (button, FALSE);
  gtk_box_append (GTK_BOX (self->row), button);
  g_menu_item_set_action_and_target (item, ACTION, "s", kind->name);
  g_menu_append_item (self->menu, item);
  self->n++;
  gtk_widget_set_visible (GTK_WIDGET (self), self->n > 1);
}

void
lb_page_switch_set_shown (LbPageSwitch *self, const char *title)
{
  g_return_if_fail (LB_IS_PAGE_SWITCH (self));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->menu_button), title);
}

gboolean
lb_page_switch_is_row (LbPageSwitch *self)
{
  g_return_val_if_fail (LB_IS_PAGE_SWITCH (self), FALSE);
  return gtk_widget_get_child_visible (self->row);
}
