/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The changing texts are inscriptions: unlike labels they keep their size when their text changes,
 * so that a moving slider does not lay out the whole window anew at every frame. */
#include "readings_page.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "caution_list.h"
#include "dispose.h"
#include "flat.h"
#include "sentence_label.h"

/* A note stands behind its value where there is room: with a label and a note of no more characters
 * than this. Elsewhere it stands below, so that it is never cut off. */
#define ROOM_FOR_NOTE 24

/* While a slider moves the texts follow at most this often, ms: faster than anyone reads, and the
 * frames between are for the drawings. */
#define TEXT_INTERVAL 80

/* The widgets of one row. */
typedef struct
{
  GtkInscription *value;
  GtkInscription *note; /* below; hidden while there is none */
} Row;

struct _LbReadingsPage
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *sentence;
  GtkWidget *sections;
  GtkWidget *cautions;
  LbDocument *document;   /* that the height of the sentence is for; only compared */
  LbReadingsTable *table; /* that the widgets show; NULL: none yet */
  GArray *rows;           /* Row, of all sections one after another */
  gint64 updated_at;      /* us, monotonic */
  guint update_later;     /* source; 0: the texts are those of the latest answer */
};

G_DEFINE_FINAL_TYPE (LbReadingsPage, lb_readings_page, GTK_TYPE_WIDGET)

static void
set_text (GtkInscription *inscription, const char *text)
{
  if (g_strcmp0 (gtk_inscription_get_text (inscription), text) != 0)
    gtk_inscription_set_text (inscription, text);
}

/* Whether the widgets made for `a` do for `b`: only values differ. */
static gboolean
same_form (const LbReadingsTable *a, const LbReadingsTable *b)
{
  if (!a || a->n_sections != b->n_sections)
    return FALSE;
  for (gsize s = 0; s < a->n_sections; s++)
    {
      const LbReadingsSection *x = &a->sections[s], *y = &b->sections[s];

      if (x->n_rows != y->n_rows || g_strcmp0 (x->title, y->title) != 0)
        return FALSE;
      for (gsize r = 0; r < x->n_rows; r++)
        if (g_strcmp0 (x->rows[r].label, y->rows[r].label) != 0)
          return FALSE;
    }
  return TRUE;
}

static GtkWidget *
make_title (const char *text)
{
  GtkWidget *title = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_label_set_wrap (GTK_LABEL (title), TRUE);
  gtk_widget_add_css_class (title, "heading");
  return title;
}

static GtkInscription *
make_inscription (const char *css_class)
{
  GtkWidget *inscription = gtk_inscription_new (NULL);

  gtk_inscription_set_xalign (GTK_INSCRIPTION (inscription), 1);
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (inscription), 0);
  gtk_inscription_set_nat_chars (GTK_INSCRIPTION (inscription), 0);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (inscription),
                                     GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_set_hexpand (inscription, TRUE);
  gtk_widget_add_css_class (inscription, css_class);
  return GTK_INSCRIPTION (inscription);
}

static void
add_row (LbReadingsPage *self, GtkBox *section, const char *text)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (text);
  Row row = { make_inscription ("numeric"), make_inscription ("note") };

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "quiet");
  gtk_accessible_update_property (GTK_ACCESSIBLE (row.value), GTK_ACCESSIBLE_PROPERTY_LABEL, text,
                                  -1);
  gtk_widget_set_visible (GTK_WIDGET (row.note), FALSE);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (row.value));
  gtk_box_append (section, box);
  gtk_box_append (section, GTK_WIDGET (row.note));
  g_array_append_val (self->rows, row);
}

static GtkWidget *
make_section (LbReadingsPage *self, const LbReadingsSection *section)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  /* Its distance to the next is inside it, so that what is repainted of both is one rectangle. */
  gtk_widget_add_css_class (box, "readings");
  gtk_box_append (GTK_BOX (box), make_title (section->title));
  for (gsize r = 0; r < section->n_rows; r++)
    add_row (self, GTK_BOX (box), section->rows[r].label);
  return box;
}

static void
rebuild (LbReadingsPage *self, const LbReadingsTable *table)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->sections)))
    gtk_box_remove (GTK_BOX (self->sections), child);
  g_array_set_size (self->rows, 0);
  for (gsize s = 0; s < table->n_sections; s++)
    gtk_box_append (GTK_BOX (self->sections),
                    lb_flat_new (make_section (self, &table->sections[s])));
}

static void
show_row (const Row *row, const LbReadingsRow *reading)
{
  gboolean noted = reading->note && *reading->note;
  gboolean below =
      noted
      && g_utf8_strlen (reading->label, -1) + g_utf8_strlen (reading->note, -1) > ROOM_FOR_NOTE;
  g_autofree char *text =
      noted && !below ? g_strdup_printf ("%s · %s", reading->value, reading->note) : NULL;

  set_text (row->value, text ? text : reading->value);
  if (below)
    set_text (row->note, reading->note);
  gtk_widget_set_visible (GTK_WIDGET (row->note), below);
}

static void
show_table (LbReadingsPage *self, LbReadingsTable *table)
{
  gsize n = 0;

  if (!same_form (self->table, table))
    rebuild (self, table);
  for (gsize s = 0; s < table->n_sections; s++)
    for (gsize r = 0; r < table->sections[s].n_rows; r++)
      show_row (&g_array_index (self->rows, Row, n++), &table->sections[s].rows[r]);
  g_clear_pointer (&self->table, lb_readings_table_free);
  self->table = table;
}

static void
update (LbReadingsPage *self)
{
  g_autofree char *sentence = lb_session_dup_sentence (self->session);
  g_autoptr (GPtrArray) cautions = lb_session_dup_cautions (self->session);
  LbReadingsTable *table = lb_session_dup_table (self->session);
  LbDocument *document = lb_session_get_document (self->session);

  if (sentence)
    lb_sentence_label_set_text (LB_SENTENCE_LABEL (self->sentence), sentence);
  if (document != self->document)
    lb_sentence_label_settle (LB_SENTENCE_LABEL (self->sentence));
  self->document = document;
  if (table)
    show_table (self, table);
  lb_caution_list_update (LB_CAUTION_LIST (self->cautions), cautions);
  self->updated_at = g_get_monotonic_time ();
  g_clear_handle_id (&self->update_later, g_source_remove);
  g_signal_emit_by_name (self, "updated");
}

static gboolean
update_later_cb (gpointer data)
{
  LbReadingsPage *self = data;

  self->update_later = 0;
  update (self);
  return G_SOURCE_REMOVE;
}

static void
solved_cb (LbReadingsPage *self)
{
  gint64 passed = (g_get_monotonic_time () - self->updated_at) / 1000;

  if (self->update_later != 0)
    return;
  if (passed >= TEXT_INTERVAL)
    update (self);
  else
    self->update_later = g_timeout_add ((guint) (TEXT_INTERVAL - passed), update_later_cb, self);
}

/* For those who read the texts in code: they are then of the latest answer. */
static void
catch_up (LbReadingsPage *self)
{
  if (self->update_later != 0)
    update (self);
}

static void
lb_readings_page_dispose (GObject *object)
{
  LbReadingsPage *self = LB_READINGS_PAGE (object);

  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_handle_id (&self->update_later, g_source_remove);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_pointer (&self->table, lb_readings_table_free);
  g_clear_pointer (&self->rows, g_array_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_readings_page_parent_class)->dispose (object);
}

static void
lb_readings_page_class_init (LbReadingsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_readings_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbreadingspage");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  g_signal_new ("updated", LB_TYPE_READINGS_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 0);
}

static GtkWidget *
make_scroller (LbReadingsPage *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->sections = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_add_css_class (self->sections, "sections");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->sections);
  gtk_widget_set_vexpand (scroller, TRUE);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), _ ("Readings"));
  return scroller;
}

static void
lb_readings_page_init (LbReadingsPage *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->rows = g_array_new (FALSE, FALSE, sizeof (Row));

  self->sentence = lb_sentence_label_new ();
  gtk_widget_add_css_class (self->sentence, "sentence");
  gtk_widget_set_parent (lb_flat_new (self->sentence), GTK_WIDGET (self));

  gtk_widget_set_parent (make_scroller (self), GTK_WIDGET (self));

  self->cautions = lb_caution_list_new ();
  gtk_widget_set_parent (self->cautions, GTK_WIDGET (self));
}

GtkWidget *
lb_readings_page_new (LbSession *session)
{
  LbReadingsPage *self = g_object_new (LB_TYPE_READINGS_PAGE, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "solved", G_CALLBACK (solved_cb), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (update), self);
  update (self);
  return GTK_WIDGET (self);
}

const char *
lb_readings_page_get_sentence (LbReadingsPage *self)
{
  g_return_val_if_fail (LB_IS_READINGS_PAGE (self), NULL);
  catch_up (self);
  return lb_sentence_label_get_text (LB_SENTENCE_LABEL (self->sentence));
}

const char *
lb_readings_page_get_value (LbReadingsPage *self, gsize section, gsize row)
{
  gsize n = 0;

  g_return_val_if_fail (LB_IS_READINGS_PAGE (self), NULL);
  catch_up (self);
  if (!self->table || section >= self->table->n_sections
      || row >= self->table->sections[section].n_rows)
    return NULL;
  for (gsize s = 0; s < section; s++)
    n += self->table->sections[s].n_rows;
  return gtk_inscription_get_text (g_array_index (self->rows, Row, n + row).value);
}

char *
lb_readings_page_dup_text (LbReadingsPage *self)
{
  GString *text = g_string_new (NULL);

  g_return_val_if_fail (LB_IS_READINGS_PAGE (self), NULL);
  catch_up (self);
  g_string_append_printf (text, "%s\n", lb_readings_page_get_sentence (self));
  for (gsize s = 0; self->table && s < self->table->n_sections; s++)
    {
      const LbReadingsSection *section = &self->table->sections[s];

      g_string_append_printf (text, "\n%s\n", section->title);
      for (gsize r = 0; r < section->n_rows; r++)
        g_string_append_printf (text, "%s\t%s\n", section->rows[r].label,
                                lb_readings_page_get_value (self, s, r));
    }
  return g_string_free (text, FALSE);
}
