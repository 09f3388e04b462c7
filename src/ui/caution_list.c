/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "caution_list.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"

/* More than this, and the list scrolls: the readings need the room too. */
#define HEIGHT_MOST 132
#define HEIGHT_LEAST 72
/* New numbers wait until the last ones have stood for so long: wrapped text is dear to lay out, and
 * nobody reads faster. A caution that comes or goes, also in place of another one, never waits. */
#define WORDS_STAND_MS 500

struct _LbCautionList
{
  GtkWidget parent;
  GtkWidget *scroller;
  GtkWidget *box;
  char *shown;        /* all texts, to see whether anything changed */
  gint64 shown_at;    /* us */
  GPtrArray *waiting; /* LbCaution, or NULL */
  guint wait_id;
};

G_DEFINE_FINAL_TYPE (LbCautionList, lb_caution_list, GTK_TYPE_WIDGET)

static const char *
style_of (const LbCaution *caution)
{
  return caution->kind == LB_CAUTION_NOW ? "caution-now" : "caution-advice";
}

static GtkWidget *
make_row (const LbCaution *caution)
{
  gboolean now = caution->kind == LB_CAUTION_NOW;
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *icon = g_object_new (
      GTK_TYPE_IMAGE, "icon-name", now ? "dialog-warning-symbolic" : "dialog-information-symbolic",
      "accessible-role", now ? GTK_ACCESSIBLE_ROLE_IMG : GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
  GtkWidget *label = gtk_label_new (caution->text);

  if (now)
    lb_accessible_name (icon, _ ("Warning"));
  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), icon);
  gtk_box_append (GTK_BOX (row), label);
  gtk_widget_add_css_class (row, style_of (caution));
  return row;
}

/* Only the words change while a slider moves, and of one row at most: to make and measure all of
 * them anew would take longer than a frame has. */
static gboolean
reword_row (GtkWidget *row, const LbCaution *caution)
{
  GtkLabel *label = GTK_LABEL (gtk_widget_get_last_child (row));

  if (!gtk_widget_has_css_class (row, style_of (caution)))
    return FALSE;
  if (g_strcmp0 (gtk_label_get_label (label), caution->text) != 0)
    gtk_label_set_label (label, caution->text);
  return TRUE;
}

static void
show_rows (LbCautionList *self, GPtrArray *cautions)
{
  GtkWidget *row = gtk_widget_get_first_child (self->box);

  for (guint i = 0; i < cautions->len; i++)
    {
      const LbCaution *caution = g_ptr_array_index (cautions, i);

      if (row && reword_row (row, caution))
        row = gtk_widget_get_next_sibling (row);
      else
        gtk_box_insert_child_after (GTK_BOX (self->box), make_row (caution),
                                    row ? gtk_widget_get_prev_sibling (row)
                                        : gtk_widget_get_last_child (self->box));
    }
  while (row)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (row);

      gtk_box_remove (GTK_BOX (self->box), row);
      row = next;
    }
}

static char *
all_texts (GPtrArray *cautions)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < cautions->len; i++)
    {
      const LbCaution *caution = g_ptr_array_index (cautions, i);

      g_string_append_printf (text, "%d %s\n", (int) caution->kind, caution->text);
    }
  return g_string_free (text, FALSE);
}

static void
stop_waiting (LbCautionList *self)
{
  g_clear_handle_id (&self->wait_id, g_source_remove);
  g_clear_pointer (&self->waiting, g_ptr_array_unref);
}

/* Takes `texts`. */
static void
show_now (LbCautionList *self, GPtrArray *cautions, char *texts)
{
  show_rows (self, cautions);
  g_free (self->shown);
  self->shown = texts;
  self->shown_at = g_get_monotonic_time ();
}

static gboolean
wait_is_over_cb (gpointer data)
{
  LbCautionList *self = data;
  g_autoptr (GPtrArray) cautions = g_steal_pointer (&self->waiting);

  self->wait_id = 0;
  show_now (self, cautions, all_texts (cautions));
  return G_SOURCE_REMOVE;
}

static const char *
next_letter (const char *text)
{
  while (*text && !g_unichar_isalpha (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  return text;
}

/* Whether both say the same but for their numbers. */
static gboolean
differ_in_numbers (const char *a, const char *b)
{
  for (a = next_letter (a), b = next_letter (b); *a && *b;
       a = next_letter (g_utf8_next_char (a)), b = next_letter (g_utf8_next_char (b)))
    if (g_utf8_get_char (a) != g_utf8_get_char (b))
      return FALSE;
  return !*a && !*b;
}

static gboolean
is_row_for (GtkWidget *row, const LbCaution *caution)
{
  const char *shown = gtk_label_get_label (GTK_LABEL (gtk_widget_get_last_child (row)));

  return gtk_widget_has_css_class (row, style_of (caution))
         && differ_in_numbers (shown, caution->text);
}

/* Whether the rows are for cautions like these, so that only numbers differ. */
static gboolean
has_rows_for (LbCautionList *self, GPtrArray *cautions)
{
  GtkWidget *row = gtk_widget_get_first_child (self->box);

  for (guint i = 0; i < cautions->len; i++)
    {
      if (!row || !is_row_for (row, g_ptr_array_index (cautions, i)))
        return FALSE;
      row = gtk_widget_get_next_sibling (row);
    }
  return !row;
}

static void
lb_caution_list_dispose (GObject *object)
{
  LbCautionList *self = LB_CAUTION_LIST (object);

  stop_waiting (self);
  lb_dispose_children (GTK_WIDGET (object));
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (lb_caution_list_parent_class)->dispose (object);
}

static void
lb_caution_list_class_init (LbCautionListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_caution_list_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbcautions");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_caution_list_init (LbCautionList *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *title = gtk_label_new (_ ("Cautions"));
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "heading");
  gtk_widget_set_parent (title, GTK_WIDGET (self));

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), HEIGHT_LEAST);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), HEIGHT_MOST);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->box);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), _ ("Cautions"));
  self->scroller = scroller;
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
}

GtkWidget *
lb_caution_list_new (void)
{
  return g_object_new (LB_TYPE_CAUTION_LIST, NULL);
}

void
lb_caution_list_keep_height (LbCautionList *self)
{
  g_return_if_fail (LB_IS_CAUTION_LIST (self));
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->scroller), HEIGHT_MOST);
}

void
lb_caution_list_update (LbCautionList *self, GPtrArray *cautions)
{
  g_autofree char *texts = all_texts (cautions);
  gint64 stood;

  g_return_if_fail (LB_IS_CAUTION_LIST (self));
  stop_waiting (self);
  if (g_strcmp0 (texts, self->shown) == 0)
    return;
  stood = (g_get_monotonic_time () - self->shown_at) / 1000;
  if (stood >= WORDS_STAND_MS || !has_rows_for (self, cautions))
    {
      show_now (self, cautions, g_steal_pointer (&texts));
      return;
    }
  self->waiting = g_ptr_array_ref (cautions);
  self->wait_id = g_timeout_add ((guint) (WORDS_STAND_MS - stood), wait_is_over_cb, self);
}
