/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page_parts.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "line_entry.h"
#include "quantity_entry.h"

/* Left free above and below a part that is scrolled to. */
#define SCROLL_MARGIN 12
#define CHECK_WIDTH 26 /* letters */

GtkWidget *
lb_page_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

GtkWidget *
lb_page_heading (const char *text)
{
  return lb_page_label (text, "heading");
}

GtkWidget *
lb_page_note (const char *text)
{
  return lb_page_label (text, "row-note");
}

GtkWidget *
lb_page_caution (const char *text)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = lb_page_label (text, "row-note");
  GtkWidget *icon =
      g_object_new (GTK_TYPE_IMAGE, "icon-name", "dialog-warning-symbolic", "accessible-role",
                    GTK_ACCESSIBLE_ROLE_IMG, "valign", GTK_ALIGN_START, NULL);

  lb_accessible_name (icon, _ ("Warning"));
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (row, "page-caution");
  gtk_box_append (GTK_BOX (row), icon);
  gtk_box_append (GTK_BOX (row), label);
  return row;
}

GtkWidget *
lb_page_fault (void)
{
  GtkWidget *fault = lb_page_label (NULL, "row-fault");

  gtk_widget_set_visible (fault, FALSE);
  return fault;
}

void
lb_page_show_fault (GtkWidget *fault, const char *text)
{
  gtk_label_set_text (GTK_LABEL (fault), text ? text : "");
  gtk_widget_set_visible (fault, text != NULL);
}

static void
entry_fault_cb (GtkWidget *fault, GtkWidget *entry)
{
  lb_page_show_fault (fault, LB_IS_LINE_ENTRY (entry)
                                 ? lb_line_entry_get_fault (LB_LINE_ENTRY (entry))
                                 : lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (entry)));
}

GtkWidget *
lb_page_fault_of (GtkWidget *entry)
{
  GtkWidget *fault = lb_page_fault ();

  g_signal_connect_object (entry, "fault-changed", G_CALLBACK (entry_fault_cb), fault,
                           G_CONNECT_SWAPPED);
  return fault;
}

GtkWidget *
lb_page_check (const char *label)
{
  GtkWidget *check = gtk_check_button_new ();
  GtkWidget *words = lb_page_label (label, NULL);

  /* Rather two lines than a wider column. */
  gtk_label_set_max_width_chars (GTK_LABEL (words), CHECK_WIDTH);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (check), words);
  lb_accessible_name (check, label);
  return check;
}

GtkWidget *
lb_page_row (const char *text, GtkWidget *control)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = lb_page_label (text, NULL);

  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_valign (control, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), control);
  gtk_widget_add_css_class (row, "page-row");
  return row;
}

/* "1.8 lbf at 12 s" */
static void
add_reading (GtkWidget *box, const LbReadingsRow *row)
{
  /* Translators: a number, and when or of what it is: "1.8 lbf at 12 s", "82 % of the time" */
  g_autofree char *text = row->note ? g_strdup_printf (_ ("%s %s"), row->value, row->note) : NULL;
  GtkWidget *value = lb_page_label (text ? text : row->value, "numeric");

  gtk_label_set_xalign (GTK_LABEL (value), 1);
  gtk_box_append (GTK_BOX (box), lb_page_row (row->label, value));
}

void
lb_page_show_table (GtkWidget *box, const LbReadingsTable *table)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)))
    gtk_box_remove (GTK_BOX (box), child);
  for (gsize s = 0; table && s < table->n_sections; s++)
    {
      const LbReadingsSection *section = &table->sections[s];

      gtk_box_append (GTK_BOX (box), lb_page_heading (section->title));
      for (gsize r = 0; r < section->n_rows; r++)
        add_reading (box, &section->rows[r]);
    }
}

void
lb_page_table_text (GString *text, const LbReadingsTable *table)
{
  for (gsize s = 0; table && s < table->n_sections; s++)
    for (gsize r = 0; r < table->sections[s].n_rows; r++)
      {
        const LbReadingsRow *row = &table->sections[s].rows[r];

        g_string_append_printf (text, "\n%s\t%s%s%s", row->label, row->value, row->note ? "\t" : "",
                                row->note ? row->note : "");
      }
}

static void
set_up_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)),
                      gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

GtkWidget *
lb_page_choice (const char *const *names, gsize n, const char *name)
{
  GtkStringList *list = gtk_string_list_new (NULL);
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();
  GtkWidget *choice;

  for (gsize i = 0; i < n; i++)
    gtk_string_list_append (list, names[i]);
  g_signal_connect (factory, "setup", G_CALLBACK (set_up_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  choice = gtk_drop_down_new (G_LIST_MODEL (list), NULL);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (choice), factory);
  lb_accessible_name_choice (GTK_DROP_DOWN (choice), name);
  return choice;
}

GtkWidget *
lb_page_icon_button (const char *icon, const char *name)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, name);
  lb_accessible_name (button, name);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "small");
  return button;
}

GtkWidget *
lb_page_slot (GtkWidget *child)
{
  GtkWidget *slot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (slot), child);
  return slot;
}

GtkWidget *
lb_page_scroller (const char *name, GtkWidget **sections)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  *sections = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_add_css_class (*sections, "rig-sections");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), *sections);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), name);
  return scroller;
}

void
lb_page_scroll_to (GtkScrolledWindow *scroller, GtkWidget *sections, GtkWidget *part)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (scroller);
  double page = gtk_adjustment_get_page_size (adjustment);
  double value = gtk_adjustment_get_value (adjustment);
  graphene_rect_t bounds;
  double top, bottom;

  if (!gtk_widget_compute_bounds (part, sections, &bounds))
    return;
  top = bounds.origin.y - SCROLL_MARGIN;
  bottom = bounds.origin.y + bounds.size.height + SCROLL_MARGIN;
  if (bottom > value + page)
    value = bottom - page;
  if (top < value)
    value = top;
  gtk_adjustment_set_value (adjustment, value);
}
