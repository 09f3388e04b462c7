/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "point_table.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "page_parts.h"
#include "quantity_entry.h"

#define ROWS 8
#define COLUMNS 2

typedef struct
{
  GtkWidget *number;
  GtkWidget *entries[COLUMNS];
  GtkWidget *remove;
} Row;

struct _LbPointTable
{
  GtkWidget parent;
  LbSession *session;
  LbPointColumn columns[COLUMNS];
  GtkWidget *headings[COLUMNS];
  Row rows[ROWS];
  GtkWidget *grid;
  GtkWidget *pager;
  GtkWidget *pager_label;
  GtkWidget *back;
  GtkWidget *on;
  GtkWidget *fault;
  guint n, least, first;
  int selected;
};

G_DEFINE_FINAL_TYPE (LbPointTable, lb_point_table, GTK_TYPE_WIDGET)

enum
{
  ENTERED,
  REMOVE,
  PICKED,
  PAGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- Where things are ---- */

static guint
row_of_widget (LbPointTable *self, gpointer widget, guint *column)
{
  for (guint row = 0; row < ROWS; row++)
    {
      if (self->rows[row].remove == widget)
        return row;
      for (guint c = 0; c < COLUMNS; c++)
        if (self->rows[row].entries[c] == widget)
          {
            if (column)
              *column = c;
            return row;
          }
    }
  g_assert_not_reached ();
}

static const Row *
row_of_point (LbPointTable *self, guint point)
{
  return point >= self->first && point < self->n && point < self->first + ROWS
             ? &self->rows[point - self->first]
             : NULL;
}

/* ---- Faults ---- */

static void
fault_cb (LbPointTable *self)
{
  for (guint row = 0; row < ROWS && self->first + row < self->n; row++)
    for (guint c = 0; c < COLUMNS; c++)
      {
        const char *fault =
            lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (self->rows[row].entries[c]));
        g_autofree char *text = NULL;

        if (!fault)
          continue;
        /* Translators: which number of a table is wrong, and why: "Point 3, Depth: ..." */
        text = g_strdup_printf (_ ("Point %u, %s: %s"), self->first + row + 1,
                                self->columns[c].heading, fault);
        lb_page_show_fault (self->fault, text);
        return;
      }
  lb_page_show_fault (self->fault, NULL);
}

/* ---- Showing ---- */

static void
name_row (LbPointTable *self, guint row)
{
  Row *r = &self->rows[row];
  guint number = self->first + row + 1;
  g_autofree char *shown = g_strdup_printf ("%u", number);
  g_autofree char *remove = g_strdup_printf (_ ("Take point %u away"), number);

  gtk_label_set_text (GTK_LABEL (r->number), shown);
  lb_accessible_name (r->remove, remove);
  gtk_widget_set_tooltip_text (r->remove, remove);
  for (guint c = 0; c < COLUMNS; c++)
    {
      /* Translators: the name of an entry for a screen reader: "Point 3, Depth" */
      g_autofree char *name =
          g_strdup_printf (_ ("Point %u, %s"), number, self->columns[c].heading);

      lb_quantity_entry_set_name (LB_QUANTITY_ENTRY (r->entries[c]), name);
    }
}

static void
show_rows (LbPointTable *self)
{
  g_autofree char *pages = NULL;

  for (guint row = 0; row < ROWS; row++)
    {
      Row *r = &self->rows[row];
      guint point = self->first + row;
      gboolean shown = point < self->n;

      gtk_widget_set_visible (r->number, shown);
      gtk_widget_set_visible (r->remove, shown);
      gtk_widget_set_sensitive (r->remove, self->n > self->least);
      for (guint c = 0; c < COLUMNS; c++)
        gtk_widget_set_visible (r->entries[c], shown);
      name_row (self, row);
      if (self->selected >= 0 && point == (guint) self->selected)
        gtk_widget_add_css_class (r->number, "selected-point");
      else
        gtk_widget_remove_css_class (r->number, "selected-point");
    }
  gtk_widget_set_visible (self->pager, self->n > ROWS);
  gtk_widget_set_sensitive (self->back, self->first > 0);
  gtk_widget_set_sensitive (self->on, self->first + ROWS < self->n);
  /* Translators: which points of a long table are shown: "9 to 16 of 40" */
  pages = g_strdup_printf (_ ("%u to %u of %u"), self->first + 1, MIN (self->first + ROWS, self->n),
                           self->n);
  gtk_label_set_text (GTK_LABEL (self->pager_label), pages);
  fault_cb (self);
}

/* A text that is no value belongs to a point that may no longer be in its row. */
static void
reset_rows (LbPointTable *self)
{
  for (guint row = 0; row < ROWS; row++)
    for (guint c = 0; c < COLUMNS; c++)
      lb_quantity_entry_reset (LB_QUANTITY_ENTRY (self->rows[row].entries[c]));
}

static void
turn_to (LbPointTable *self, guint first)
{
  if (first == self->first)
    return;
  self->first = first;
  reset_rows (self);
  show_rows (self);
  g_signal_emit (self, signals[PAGED], 0);
}

static void
back_cb (LbPointTable *self)
{
  turn_to (self, self->first - MIN (self->first, ROWS));
}

static void
on_cb (LbPointTable *self)
{
  if (self->first + ROWS < self->n)
    turn_to (self, self->first + ROWS);
}

/* ---- What the user does ---- */

static void
entered_cb (LbPointTable *self, double value, LbQuantityEntry *entry)
{
  guint column = 0, row = row_of_widget (self, entry, &column);

  g_signal_emit (self, signals[ENTERED], 0, self->first + row, column, value,
                 lb_quantity_entry_get_gesture (entry));
}

static void
remove_cb (LbPointTable *self, GtkWidget *button)
{
  guint point = self->first + row_of_widget (self, button, NULL);

  g_signal_emit (self, signals[REMOVE], 0, point);
  /* The row may be gone, and the focus with it. */
  if (self->n > 0)
    lb_point_table_focus (self, MIN (point, self->n - 1));
}

static void
enter_cb (LbPointTable *self, GtkEventController *controller)
{
  GtkWidget *widget = gtk_event_controller_get_widget (controller);

  g_signal_emit (self, signals[PICKED], 0, self->first + row_of_widget (self, widget, NULL));
}

/* ---- Making ---- */

static void
add_row (LbPointTable *self, guint row)
{
  Row *r = &self->rows[row];

  r->number = gtk_label_new (NULL);
  gtk_widget_add_css_class (r->number, "point-number");
  gtk_grid_attach (GTK_GRID (self->grid), r->number, 0, (int) row + 1, 1, 1);
  for (guint c = 0; c < COLUMNS; c++)
    {
      GtkEventController *focus = gtk_event_controller_focus_new ();

      r->entries[c] = lb_quantity_entry_new (self->session, self->columns[c].quantity, "");
      gtk_widget_set_hexpand (r->entries[c], TRUE);
      g_signal_connect_swapped (r->entries[c], "entered", G_CALLBACK (entered_cb), self);
      g_signal_connect_swapped (r->entries[c], "fault-changed", G_CALLBACK (fault_cb), self);
      g_signal_connect_swapped (focus, "enter", G_CALLBACK (enter_cb), self);
      gtk_widget_add_controller (r->entries[c], focus);
      gtk_grid_attach (GTK_GRID (self->grid), r->entries[c], (int) c + 1, (int) row + 1, 1, 1);
    }
  r->remove = lb_page_icon_button ("list-remove-symbolic", "");
  g_signal_connect_swapped (r->remove, "clicked", G_CALLBACK (remove_cb), self);
  gtk_grid_attach (GTK_GRID (self->grid), r->remove, COLUMNS + 1, (int) row + 1, 1, 1);
}

static void
add_pager (LbPointTable *self)
{
  self->pager = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  self->back = lb_page_icon_button ("go-previous-symbolic", _ ("Earlier points"));
  self->on = lb_page_icon_button ("go-next-symbolic", _ ("Further points"));
  self->pager_label = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->pager_label, "numeric");
  gtk_widget_set_hexpand (self->pager_label, TRUE);
  g_signal_connect_swapped (self->back, "clicked", G_CALLBACK (back_cb), self);
  g_signal_connect_swapped (self->on, "clicked", G_CALLBACK (on_cb), self);
  gtk_box_append (GTK_BOX (self->pager), self->back);
  gtk_box_append (GTK_BOX (self->pager), self->pager_label);
  gtk_box_append (GTK_BOX (self->pager), self->on);
}

static void
lb_point_table_dispose (GObject *object)
{
  LbPointTable *self = LB_POINT_TABLE (object);

  for (guint row = 0; row < ROWS && self->session; row++)
    for (guint c = 0; c < COLUMNS; c++)
      g_signal_handlers_disconnect_by_data (self->rows[row].entries[c], self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_point_table_parent_class)->dispose (object);
}

static void
lb_point_table_class_init (LbPointTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_point_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbpoints");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[ENTERED] =
      g_signal_new ("entered", LB_TYPE_POINT_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                    G_TYPE_NONE, 4, G_TYPE_UINT, G_TYPE_UINT, G_TYPE_DOUBLE, G_TYPE_UINT);
  signals[REMOVE] = g_signal_new ("remove", LB_TYPE_POINT_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[PICKED] = g_signal_new ("picked", LB_TYPE_POINT_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[PAGED] = g_signal_new ("paged", LB_TYPE_POINT_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
lb_point_table_init (LbPointTable *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->selected = -1;
}

GtkWidget *
lb_point_table_new (LbSession *session, const LbPointColumn columns[2])
{
  LbPointTable *self = g_object_new (LB_TYPE_POINT_TABLE, NULL);

  self->session = g_object_ref (session);
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 3);
  for (guint c = 0; c < COLUMNS; c++)
    {
      self->columns[c] = columns[c];
      self->headings[c] = lb_page_note (columns[c].heading);
      gtk_label_set_xalign (GTK_LABEL (self->headings[c]), 1);
      gtk_grid_attach (GTK_GRID (self->grid), self->headings[c], (int) c + 1, 0, 1, 1);
    }
  for (guint row = 0; row < ROWS; row++)
    add_row (self, row);
  add_pager (self);
  self->fault = lb_page_fault ();
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  gtk_widget_set_parent (self->pager, GTK_WIDGET (self));
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
  show_rows (self);
  return GTK_WIDGET (self);
}

/* ---- What the owner sets ---- */

void
lb_point_table_set_heading (LbPointTable *self, guint column, const char *heading)
{
  g_return_if_fail (LB_IS_POINT_TABLE (self) && column < COLUMNS);
  self->columns[column].heading = heading;
  gtk_label_set_text (GTK_LABEL (self->headings[column]), heading);
  show_rows (self);
}

void
lb_point_table_set_count (LbPointTable *self, guint n, guint least)
{
  g_return_if_fail (LB_IS_POINT_TABLE (self));
  if (n == self->n && least == self->least)
    return;
  if (n != self->n)
    reset_rows (self);
  self->n = n;
  self->least = least;
  if (self->selected >= (int) n)
    self->selected = -1;
  if (self->first >= n)
    self->first = n > 0 ? (n - 1) / ROWS * ROWS : 0;
  show_rows (self);
}

void
lb_point_table_set_value (
    LbPointTable *self, guint point, guint column, double value, double minimum, double maximum)
{
  const Row *row;

  g_return_if_fail (LB_IS_POINT_TABLE (self) && column < COLUMNS);
  row = row_of_point (self, point);
  if (!row)
    return;
  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (row->entries[column]), minimum, maximum);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (row->entries[column]), value);
}

guint
lb_point_table_get_first (LbPointTable *self)
{
  g_return_val_if_fail (LB_IS_POINT_TABLE (self), 0);
  return self->first;
}

guint
lb_point_table_get_shown (LbPointTable *self)
{
  g_return_val_if_fail (LB_IS_POINT_TABLE (self), 0);
  return MIN (ROWS, self->n - MIN (self->first, self->n));
}

void
lb_point_table_select (LbPointTable *self, int point)
{
  g_return_if_fail (LB_IS_POINT_TABLE (self));
  if (point >= (int) self->n)
    point = -1;
  if (point == self->selected)
    return;
  self->selected = point;
  if (point >= 0)
    turn_to (self, (guint) point / ROWS * ROWS);
  show_rows (self);
}

void
lb_point_table_focus (LbPointTable *self, guint point)
{
  GtkWidget *entry;

  g_return_if_fail (LB_IS_POINT_TABLE (self));
  if (point < self->n)
    turn_to (self, point / ROWS * ROWS);
  entry = lb_point_table_get_entry (self, point, 0);
  if (entry)
    gtk_widget_grab_focus (entry);
}

GtkWidget *
lb_point_table_get_entry (LbPointTable *self, guint point, guint column)
{
  const Row *row;

  g_return_val_if_fail (LB_IS_POINT_TABLE (self) && column < COLUMNS, NULL);
  row = row_of_point (self, point);
  return row ? row->entries[column] : NULL;
}

GtkWidget *
lb_point_table_get_remove_button (LbPointTable *self, guint point)
{
  const Row *row;

  g_return_val_if_fail (LB_IS_POINT_TABLE (self), NULL);
  row = row_of_point (self, point);
  return row ? row->remove : NULL;
}

const char *
lb_point_table_get_fault (LbPointTable *self)
{
  g_return_val_if_fail (LB_IS_POINT_TABLE (self), NULL);
  return gtk_widget_get_visible (self->fault) ? gtk_label_get_text (GTK_LABEL (self->fault)) : NULL;
}
