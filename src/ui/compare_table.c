/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_table.h"

#include <glib/gi18n.h>

#include "compare_sample.h"
#include "comparison_words.h"
#include "dispose.h"
#include "page_parts.h"

struct _LbCompareTable
{
  GtkWidget parent;
  LbSession *session;
  LbComparison *comparison; /* NULL before the first */
  GtkWidget *lines;         /* box */
  GtkWidget *grid;
  GtkWidget *cautions; /* box */
};

G_DEFINE_FINAL_TYPE (LbCompareTable, lb_compare_table, GTK_TYPE_WIDGET)

/* ---- Lines ---- */

static void
add_line (LbCompareTable *self, const LbComparisonTable *table, gsize i)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  g_autofree char *text = g_strdup_printf (_ ("%s: %s"), table->names[i], table->sentences[i]);
  GtkWidget *label = lb_page_label (text, table->remarks[i] ? "compare-remark" : NULL);
  GtkWidget *sample = lb_compare_sample_new (self->session, i);

  gtk_widget_set_valign (sample, GTK_ALIGN_START);
  gtk_widget_set_margin_top (sample, 4);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), sample);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (self->lines), row);
}

/* ---- Table ---- */

static void
attach (LbCompareTable *self, const char *text, const char *css_class, int row, int column)
{
  GtkWidget *label = lb_page_label (text, css_class);

  gtk_widget_set_hexpand (label, column > 0);
  gtk_widget_set_valign (label, GTK_ALIGN_BASELINE);
  gtk_label_set_width_chars (GTK_LABEL (label), 8);
  gtk_grid_attach (GTK_GRID (self->grid), label, column, row, 1, 1);
}

/* "36.5°, 23° steeper" with what there is of it. */
static char *
cell_text (const LbComparisonCell *cell)
{
  GString *text = g_string_new (cell->value);

  if (cell->note)
    g_string_append_printf (text, _ (", %s"), cell->note);
  if (cell->difference)
    g_string_append_printf (text, "\n%s", cell->difference);
  return g_string_free (text, FALSE);
}

static void
add_names (LbCompareTable *self, const LbComparisonTable *table)
{
  for (gsize i = 0; i < table->n; i++)
    {
      GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
      GtkWidget *name = lb_page_label (table->names[i], "heading");

      gtk_box_append (GTK_BOX (head), lb_compare_sample_new (self->session, i));
      gtk_box_append (GTK_BOX (head), name);
      gtk_grid_attach (GTK_GRID (self->grid), head, (int) i + 1, 0, 1, 1);
    }
}

static void
add_row (LbCompareTable *self, const LbComparisonTable *table, gsize i)
{
  const LbComparisonRow *row = &table->rows[i];

  attach (self, row->label, "quiet", (int) i + 1, 0);
  for (gsize j = 0; j < table->n; j++)
    {
      g_autofree char *text = cell_text (&row->cells[j]);

      attach (self, text, NULL, (int) i + 1, (int) j + 1);
    }
}

static void
empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)))
    if (GTK_IS_GRID (box))
      gtk_grid_remove (GTK_GRID (box), child);
    else
      gtk_box_remove (GTK_BOX (box), child);
}

static void
add_cautions (LbCompareTable *self, const LbWording *wording)
{
  g_autoptr (GPtrArray) cautions = lb_comparison_cautions_new (self->comparison, wording);

  gtk_box_append (GTK_BOX (self->cautions), lb_page_heading (_ ("Mind")));
  for (guint i = 0; i < cautions->len; i++)
    {
      const LbCaution *caution = g_ptr_array_index (cautions, i);
      const char *css_class = caution->kind == LB_CAUTION_NOW ? "compare-remark" : NULL;

      gtk_box_append (GTK_BOX (self->cautions), lb_page_label (caution->text, css_class));
    }
}

static void
show (LbCompareTable *self)
{
  LbWording wording = lb_session_get_wording (self->session);
  g_autoptr (LbComparisonTable) table = NULL;

  empty (self->lines);
  empty (self->grid);
  empty (self->cautions);
  if (!self->comparison)
    return;
  table = lb_comparison_table_new (self->comparison, &wording);
  for (gsize i = 0; i < table->n; i++)
    add_line (self, table, i);
  add_names (self, table);
  for (gsize i = 0; i < table->n_rows; i++)
    add_row (self, table, i);
  add_cautions (self, &wording);
}

void
lb_compare_table_set (LbCompareTable *self, LbComparison *comparison)
{
  g_return_if_fail (LB_IS_COMPARE_TABLE (self));
  g_set_object (&self->comparison, comparison);
  show (self);
}

const char *
lb_compare_table_get_text (LbCompareTable *self, int row, int column)
{
  GtkWidget *label = gtk_grid_get_child_at (GTK_GRID (self->grid), column + 1, row + 1);

  return label ? gtk_label_get_text (GTK_LABEL (label)) : NULL;
}

const char *
lb_compare_table_get_line (LbCompareTable *self, int variant)
{
  GtkWidget *row = gtk_widget_get_first_child (self->lines);

  while (row && variant-- > 0)
    row = gtk_widget_get_next_sibling (row);
  return row ? gtk_label_get_text (GTK_LABEL (gtk_widget_get_last_child (row))) : NULL;
}

/* ---- The widget ---- */

static void
lb_compare_table_dispose (GObject *object)
{
  LbCompareTable *self = LB_COMPARE_TABLE (object);

  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->comparison);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_compare_table_parent_class)->dispose (object);
}

static void
lb_compare_table_class_init (LbCompareTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_compare_table_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbcomparetable");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_compare_table_init (LbCompareTable *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 10);
  self->lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 14);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 5);
  self->cautions = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_widget_set_parent (self->lines, GTK_WIDGET (self));
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  gtk_widget_set_parent (self->cautions, GTK_WIDGET (self));
}

GtkWidget *
lb_compare_table_new (LbSession *session)
{
  LbCompareTable *self = g_object_new (LB_TYPE_COMPARE_TABLE, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (show), self);
  return GTK_WIDGET (self);
}
