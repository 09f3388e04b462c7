/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the settings table is computed for: depths, currents, and the weights owned. */
#include <glib/gi18n.h>

#include "accessible.h"
#include "card_section.h"
#include "line_entry.h"
#include "page_parts.h"
#include "preferences_entry.h"
#include "preferences_window.h"
#include "quantity_entry.h"
#include "quantity_list.h"

#define LB_TYPE_CARD_TABLE_SECTION (lb_card_table_section_get_type ())
G_DECLARE_FINAL_TYPE (
    LbCardTableSection, lb_card_table_section, LB, CARD_TABLE_SECTION, LbCardSection)

enum
{
  FROM,
  TO,
  STEP,
  N_ENTRIES
};

/* The depths or the currents. */
typedef struct
{
  LbCardSeriesOf of;
  LbQuantity quantity;
  LbQuantity step_quantity;
  GtkWidget *kind;
  GtkWidget *steps; /* box of the entries */
  GtkWidget *entries[N_ENTRIES];
  GtkWidget *list_row;
  GtkWidget *list;
} Series;

struct _LbCardTableSection
{
  LbCardSection parent;
  Series series[LB_N_CARD_SERIES];
};

G_DEFINE_FINAL_TYPE (LbCardTableSection, lb_card_table_section, LB_TYPE_CARD_SECTION)

/* ---- Showing ---- */

static void
show_series (LbCardTableSection *self, Series *s, const LbCardSeries *series)
{
  LbUnits units = lb_session_get_units (lb_card_section_get_session (LB_CARD_SECTION (self)));
  g_autofree char *list = lb_quantity_list_words (s->quantity, units, series->values, series->n);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (s->kind), series->kind);
  gtk_widget_set_visible (s->steps, series->kind == LB_CARD_SERIES_STEPS);
  gtk_widget_set_visible (s->list_row, series->kind == LB_CARD_SERIES_LIST);
  if (series->kind == LB_CARD_SERIES_STEPS)
    {
      lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (s->entries[FROM]), series->from);
      lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (s->entries[TO]), series->to);
      lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (s->entries[STEP]), series->step);
    }
  if (series->kind == LB_CARD_SERIES_LIST)
    lb_line_entry_set_text (LB_LINE_ENTRY (s->list), list);
}

static void
lb_card_table_section_show (LbCardSection *section, const LbCard *card)
{
  LbCardTableSection *self = LB_CARD_TABLE_SECTION (section);

  for (int i = 0; i < LB_N_CARD_SERIES; i++)
    show_series (self, &self->series[i], &card->series[i]);
}

/* ---- What the user does ---- */

static Series *
series_of (LbCardTableSection *self, gpointer control)
{
  for (int i = 0; i < LB_N_CARD_SERIES; i++)
    {
      Series *s = &self->series[i];

      if (s->kind == control || s->list == control)
        return s;
      for (int k = 0; k < N_ENTRIES; k++)
        if (s->entries[k] == control)
          return s;
    }
  g_assert_not_reached ();
}

static void
set_series (LbCardTableSection *self, const Series *s, const LbCardSeries *series, guint gesture)
{
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));

  card.series[s->of] = *series;
  lb_card_section_do (LB_CARD_SECTION (self), &card,
                      s->of == LB_CARD_SERIES_OF_DEPTHS ? _ ("Change the table’s depths")
                                                        : _ ("Change the table’s currents"),
                      gesture);
}

/* The other way of giving them begins with the values that there are. */
static void
kind_cb (GtkDropDown *kind, GParamSpec *pspec, LbCardTableSection *self)
{
  const Series *s = series_of (self, kind);
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));
  LbCardSeries series = card.series[s->of];
  LbSession *session = lb_card_section_get_session (LB_CARD_SECTION (self));
  const LbSetup *setup;
  double values[LB_CARD_MOST_VALUES];
  size_t n;

  if (!session || gtk_drop_down_get_selected (kind) == series.kind)
    return;
  setup = lb_document_get_setup (lb_session_get_document (session));
  n = lb_card_series_get_values (&series, s->of, lb_session_get_units (session),
                                 s->of == LB_CARD_SERIES_OF_DEPTHS ? setup->river.depth
                                                                   : setup->river.surface_current,
                                 values);
  series.kind = (LbCardSeriesKind) gtk_drop_down_get_selected (kind);
  series.from = values[0];
  series.to = values[n - 1];
  series.step = n > 1 ? values[1] - values[0] : lb_units_step (s->step_quantity, LB_UNITS_METRIC);
  series.n = n;
  for (size_t i = 0; i < n; i++)
    series.values[i] = values[i];
  set_series (self, s, &series, 0);
}

static void
entry_cb (LbQuantityEntry *entry, double value, LbCardTableSection *self)
{
  const Series *s = series_of (self, entry);
  LbCard card = lb_card_section_get_card (LB_CARD_SECTION (self));
  LbCardSeries series = card.series[s->of];

  if (GTK_WIDGET (entry) == s->entries[FROM])
    {
      series.from = value;
      series.to = MAX (series.to, value);
    }
  else if (GTK_WIDGET (entry) == s->entries[TO])
    {
      series.to = value;
      series.from = MIN (series.from, value);
    }
  else
    series.step = value;
  set_series (self, s, &series, lb_quantity_entry_get_gesture (entry));
}

static void
list_cb (LbLineEntry *entry, const char *text, LbCardTableSection *self)
{
  const Series *s = series_of (self, entry);
  LbUnits units = lb_session_get_units (lb_card_section_get_session (LB_CARD_SECTION (self)));
  LbCardSeries series = { .kind = LB_CARD_SERIES_LIST };
  g_autofree char *fault = NULL;

  series.n = lb_quantity_list_parse (s->quantity, units, lb_card_series_least (s->of),
                                     lb_card_series_most (s->of), text, series.values,
                                     LB_CARD_MOST_VALUES, &fault);
  lb_line_entry_set_fault (entry, fault);
  if (!fault)
    set_series (self, s, &series, 0);
}

/* ---- Making ---- */

static void
lb_card_table_section_class_init (LbCardTableSectionClass *klass)
{
  LB_CARD_SECTION_CLASS (klass)->show = lb_card_table_section_show;
}

static void
lb_card_table_section_init (LbCardTableSection *self)
{
}

static void
add_entry (LbCardTableSection *self, LbSession *session, Series *s, int k, const char *label)
{
  const char *of =
      s->of == LB_CARD_SERIES_OF_DEPTHS ? _ ("Depths of the table") : _ ("Currents of the table");
  /* Translators: what an entry is of, and which: "Depths of the table: from". */
  g_autofree char *name = g_strdup_printf (_ ("%s: %s"), of, label);
  GtkWidget *entry =
      lb_quantity_entry_new (session, k == STEP ? s->step_quantity : s->quantity, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry),
                               k == STEP ? LB_CARD_LEAST_STEP : lb_card_series_least (s->of),
                               lb_card_series_most (s->of));
  g_signal_connect (entry, "entered", G_CALLBACK (entry_cb), self);
  s->entries[k] = entry;
  gtk_box_append (GTK_BOX (s->steps), lb_page_row (label, entry));
  gtk_box_append (GTK_BOX (s->steps), lb_page_fault_of (entry));
}

static void
add_list (LbCardTableSection *self, Series *s, const char *name)
{
  s->list = lb_line_entry_new (name, 0);
  s->list_row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_signal_connect (s->list, "entered", G_CALLBACK (list_cb), self);
  gtk_box_append (GTK_BOX (s->list_row), s->list);
  gtk_box_append (GTK_BOX (s->list_row), lb_page_fault_of (s->list));
  gtk_box_append (GTK_BOX (s->list_row), lb_page_note (_ ("Put a semicolon between them.")));
  gtk_box_append (GTK_BOX (self), s->list_row);
}

static void
add_series (LbCardTableSection *self, LbSession *session, LbCardSeriesOf of)
{
  const char *const kinds[] = { _ ("around the rig’s own"), _ ("in steps"), _ ("as listed") };
  gboolean depths = of == LB_CARD_SERIES_OF_DEPTHS;
  Series *s = &self->series[of];

  *s = (Series){ .of = of,
                 .quantity = depths ? LB_QUANTITY_LENGTH : LB_QUANTITY_SPEED,
                 .step_quantity = depths ? LB_QUANTITY_LENGTH : LB_QUANTITY_SPEED };
  s->kind = lb_page_choice (kinds, G_N_ELEMENTS (kinds),
                            depths ? _ ("Depths of the table") : _ ("Currents of the table"));
  g_signal_connect (s->kind, "notify::selected", G_CALLBACK (kind_cb), self);
  gtk_box_append (GTK_BOX (self), lb_page_row (depths ? _ ("Depths") : _ ("Currents"), s->kind));
  s->steps = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self), s->steps);
  add_entry (self, session, s, FROM, C_ ("a range", "from"));
  add_entry (self, session, s, TO, C_ ("a range", "to"));
  add_entry (self, session, s, STEP, C_ ("a range", "in steps of"));
  add_list (self, s,
            depths ? _ ("Depths of the table, as listed") : _ ("Currents of the table, as listed"));
}

GtkWidget *
lb_card_table_section_new (LbSession *session)
{
  LbCardTableSection *self = g_object_new (LB_TYPE_CARD_TABLE_SECTION, NULL);
  GtkWidget *weights = lb_preferences_weights_entry_new (lb_session_get_preferences (session));
  GtkWidget *entry = lb_preferences_entry_get_entry (LB_PREFERENCES_ENTRY (weights));

  lb_card_section_add_heading (LB_CARD_SECTION (self), _ ("Settings table"));
  add_series (self, session, LB_CARD_SERIES_OF_DEPTHS);
  add_series (self, session, LB_CARD_SERIES_OF_CURRENTS);
  gtk_box_append (GTK_BOX (self), lb_page_label (_ ("Weights you own"), "page-row"));
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  lb_accessible_name (entry, _ ("Weights you own"));
  gtk_box_append (GTK_BOX (self), weights);
  lb_card_section_add_note (LB_CARD_SECTION (self),
                            _ ("The same as in the preferences, for all rigs. "
                               "Put a semicolon between them."));
  lb_card_section_start (LB_CARD_SECTION (self), session);
  return GTK_WIDGET (self);
}
