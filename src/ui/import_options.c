/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "import_options.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "page_parts.h"

#define MOST_COLUMNS 12 /* offered to choose from */

enum
{
  TRANSDUCER,
  SPIKES,
  TOLERANCE,
  FROM,
  TO,
  N_ENTRIES
};

struct _LbImportOptionsBox
{
  GtkWidget parent;
  LbSession *session;
  LbImportOptions options;
  GtkWidget *direction;
  GtkWidget *direction_row;
  GtkWidget *entries[N_ENTRIES];
  GtkWidget *rows[N_ENTRIES];
  GtkWidget *table; /* what is about tables alone */
  GtkWidget *separator, *decimal, *unit;
  GtkWidget *columns[LB_N_CSV_COLUMNS];
  GtkWidget *fault;
};

G_DEFINE_FINAL_TYPE (LbImportOptionsBox, lb_import_options_box, GTK_TYPE_WIDGET)

enum
{
  CHANGED,
  REREAD,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const char separators[] = { 0, ',', ';', '\t', ' ', '|' };
static const char decimals[] = { 0, '.', ',' };

/* ---- What the user does ---- */

static void
direction_cb (LbImportOptionsBox *self)
{
  self->options.boat_went_upstream =
      gtk_drop_down_get_selected (GTK_DROP_DOWN (self->direction)) == 0;
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
entered_cb (LbImportOptionsBox *self, double value, GtkWidget *entry)
{
  if (entry == self->entries[TRANSDUCER])
    self->options.transducer_depth = value;
  else if (entry == self->entries[SPIKES])
    self->options.spike_limit = value;
  else if (entry == self->entries[TOLERANCE])
    self->options.tolerance = value;
  else if (entry == self->entries[FROM])
    self->options.from = value;
  else
    self->options.to = value;
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
table_cb (LbImportOptionsBox *self)
{
  self->options.separator =
      separators[gtk_drop_down_get_selected (GTK_DROP_DOWN (self->separator))];
  self->options.decimal = decimals[gtk_drop_down_get_selected (GTK_DROP_DOWN (self->decimal))];
  self->options.unit = (LbCsvUnit) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->unit));
  for (int i = 0; i < LB_N_CSV_COLUMNS; i++)
    self->options.column[i] =
        (int) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->columns[i])) - 1;
  g_signal_emit (self, signals[REREAD], 0);
}

static const char *
name_of_entry (int i)
{
  switch (i)
    {
    case TRANSDUCER:
      return _ ("Transducer below the surface");
    case SPIKES:
      return _ ("Off its neighbours by more than this, a depth is a spike (0: none is)");
    case TOLERANCE:
      return _ ("Points follow the depths within");
    case FROM:
      return _ ("Only the stretch of the track from");
    default:
      return _ ("to (0: its end)");
    }
}

static void
fault_cb (LbImportOptionsBox *self)
{
  for (int i = 0; i < N_ENTRIES; i++)
    {
      const char *fault = lb_quantity_entry_get_fault (LB_QUANTITY_ENTRY (self->entries[i]));

      if (fault)
        {
          g_autofree char *text = g_strdup_printf ("%s: %s", name_of_entry (i), fault);

          lb_page_show_fault (self->fault, text);
          return;
        }
    }
  lb_page_show_fault (self->fault, NULL);
}

/* ---- Making ---- */

static void
add (LbImportOptionsBox *self, GtkWidget *child)
{
  gtk_widget_set_parent (child, GTK_WIDGET (self));
}

static void
add_direction (LbImportOptionsBox *self)
{
  const char *const names[] = { _ ("Upstream"), _ ("Downstream") };

  self->direction =
      lb_page_choice (names, G_N_ELEMENTS (names), _ ("While it was logged the boat went"));
  g_signal_connect_swapped (self->direction, "notify::selected", G_CALLBACK (direction_cb), self);
  self->direction_row = lb_page_row (_ ("While it was logged the boat went"), self->direction);
  add (self, self->direction_row);
}

static void
add_entry (LbImportOptionsBox *self, int i, LbQuantity quantity, double value, double most)
{
  self->entries[i] = lb_quantity_entry_new (self->session, quantity, name_of_entry (i));
  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (self->entries[i]), 0, most);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->entries[i]), value);
  g_signal_connect_swapped (self->entries[i], "entered", G_CALLBACK (entered_cb), self);
  g_signal_connect_swapped (self->entries[i], "fault-changed", G_CALLBACK (fault_cb), self);
  self->rows[i] = lb_page_row (name_of_entry (i), self->entries[i]);
  add (self, self->rows[i]);
}

static GtkWidget *
add_table_choice (
    LbImportOptionsBox *self, GtkBox *box, const char *const *names, gsize n, const char *name)
{
  GtkWidget *choice = lb_page_choice (names, n, name);

  g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (table_cb), self);
  gtk_box_append (box, lb_page_row (name, choice));
  return choice;
}

static void
add_columns (LbImportOptionsBox *self, GtkBox *box)
{
  const char *const what[] = { _ ("Column of the distance"), _ ("Column of the depth"),
                               _ ("Column of the latitude"), _ ("Column of the longitude") };
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (names, g_strdup (_ ("As found")));
  for (int i = 1; i <= MOST_COLUMNS; i++)
    g_ptr_array_add (names, g_strdup_printf ("%d", i));
  for (int i = 0; i < LB_N_CSV_COLUMNS; i++)
    self->columns[i] =
        add_table_choice (self, box, (const char *const *) names->pdata, names->len, what[i]);
}

static void
add_table (LbImportOptionsBox *self)
{
  const char *const separator_names[] = { _ ("As found"), _ ("Comma"), _ ("Semicolon"),
                                          _ ("Tab"),      _ ("Blank"), _ ("Upright stroke") };
  const char *const decimal_names[] = { _ ("As found"), _ ("Point"), _ ("Comma") };
  const char *const unit_names[] = { _ ("As found"), _ ("Metres"), _ ("Feet") };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->table = gtk_expander_new (_ ("How the table is read"));
  lb_accessible_name (self->table, _ ("How the table is read"));
  gtk_expander_set_child (GTK_EXPANDER (self->table), box);
  self->unit = add_table_choice (self, GTK_BOX (box), unit_names, G_N_ELEMENTS (unit_names),
                                 _ ("Distances and depths are in"));
  self->separator = add_table_choice (self, GTK_BOX (box), separator_names,
                                      G_N_ELEMENTS (separator_names), _ ("Between columns"));
  self->decimal = add_table_choice (self, GTK_BOX (box), decimal_names,
                                    G_N_ELEMENTS (decimal_names), _ ("Decimal sign"));
  add_columns (self, GTK_BOX (box));
  add (self, self->table);
}

static void
lb_import_options_box_dispose (GObject *object)
{
  LbImportOptionsBox *self = LB_IMPORT_OPTIONS_BOX (object);

  if (self->session)
    {
      GtkWidget *const choices[] = { self->direction, self->separator, self->decimal, self->unit };

      for (gsize i = 0; i < G_N_ELEMENTS (choices); i++)
        g_signal_handlers_disconnect_by_data (choices[i], self);
      for (int i = 0; i < LB_N_CSV_COLUMNS; i++)
        g_signal_handlers_disconnect_by_data (self->columns[i], self);
      for (int i = 0; i < N_ENTRIES; i++)
        g_signal_handlers_disconnect_by_data (self->entries[i], self);
    }
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_import_options_box_parent_class)->dispose (object);
}

static void
lb_import_options_box_class_init (LbImportOptionsBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_import_options_box_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_IMPORT_OPTIONS_BOX, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REREAD] = g_signal_new ("reread", LB_TYPE_IMPORT_OPTIONS_BOX, G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_import_options_box_init (LbImportOptionsBox *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
lb_import_options_box_new (LbSession *session)
{
  LbImportOptionsBox *self = g_object_new (LB_TYPE_IMPORT_OPTIONS_BOX, NULL);

  self->session = g_object_ref (session);
  self->options = lb_import_options_default (lb_session_get_units (session));
  add_direction (self);
  add_entry (self, TRANSDUCER, LB_QUANTITY_HEIGHT, self->options.transducer_depth, 5);
  add_entry (self, SPIKES, LB_QUANTITY_HEIGHT, self->options.spike_limit, 50);
  add_entry (self, TOLERANCE, LB_QUANTITY_HEIGHT, self->options.tolerance, 5);
  add_entry (self, FROM, LB_QUANTITY_LENGTH, self->options.from, 1e7);
  add_entry (self, TO, LB_QUANTITY_LENGTH, self->options.to, 1e7);
  self->fault = lb_page_fault ();
  add (self, self->fault);
  add_table (self);
  return GTK_WIDGET (self);
}

void
lb_import_options_box_fit (LbImportOptionsBox *self, const LbImport *import)
{
  g_return_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self));
  for (int i = 0; i < N_ENTRIES; i++)
    gtk_widget_set_visible (self->rows[i], i != TRANSDUCER || import->has_transducer_depths);
  gtk_widget_set_visible (self->direction_row, TRUE);
  gtk_widget_set_visible (self->table, import->format == LB_IMPORT_CSV);
}

void
lb_import_options_box_fit_unread (LbImportOptionsBox *self)
{
  g_return_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self));
  for (int i = 0; i < N_ENTRIES; i++)
    gtk_widget_set_visible (self->rows[i], FALSE);
  gtk_widget_set_visible (self->direction_row, FALSE);
  gtk_expander_set_expanded (GTK_EXPANDER (self->table), TRUE);
}

LbImportOptions
lb_import_options_box_get (LbImportOptionsBox *self)
{
  LbImportOptions options;

  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), lb_import_options_default (LB_UNITS_US));
  options = self->options;
  /* To the end of the track, wherever that is. */
  if (options.from > 0 && options.to == 0)
    options.to = G_MAXDOUBLE;
  return options;
}

GtkDropDown *
lb_import_options_box_get_direction (LbImportOptionsBox *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), NULL);
  return GTK_DROP_DOWN (self->direction);
}

GtkDropDown *
lb_import_options_box_get_unit (LbImportOptionsBox *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), NULL);
  return GTK_DROP_DOWN (self->unit);
}

GtkDropDown *
lb_import_options_box_get_column (LbImportOptionsBox *self, LbCsvColumn column)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self) && column < LB_N_CSV_COLUMNS, NULL);
  return GTK_DROP_DOWN (self->columns[column]);
}

LbQuantityEntry *
lb_import_options_box_get_transducer (LbImportOptionsBox *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), NULL);
  return LB_QUANTITY_ENTRY (self->entries[TRANSDUCER]);
}

LbQuantityEntry *
lb_import_options_box_get_spike_limit (LbImportOptionsBox *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), NULL);
  return LB_QUANTITY_ENTRY (self->entries[SPIKES]);
}

LbQuantityEntry *
lb_import_options_box_get_from (LbImportOptionsBox *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), NULL);
  return LB_QUANTITY_ENTRY (self->entries[FROM]);
}

LbQuantityEntry *
lb_import_options_box_get_to (LbImportOptionsBox *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), NULL);
  return LB_QUANTITY_ENTRY (self->entries[TO]);
}

const char *
lb_import_options_box_get_fault (LbImportOptionsBox *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_OPTIONS_BOX (self), NULL);
  return gtk_widget_get_visible (self->fault) ? gtk_label_get_text (GTK_LABEL (self->fault)) : NULL;
}
