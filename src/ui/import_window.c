/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "import_window.h"

#include <glib/gi18n.h>
#include <string.h>

#include "accessible.h"
#include "bed_preview.h"
#include "chart_image.h"
#include "import_river.h"
#include "page_parts.h"

#define WIDTH 720
#define HEIGHT 640
#define CHART_HEIGHT 210
#define PROGRESS_MS 60

struct _LbImportWindow
{
  GtkWindow parent;
  LbSession *session;
  GFile *file;
  GCancellable *cancellable; /* while reading */
  int progress;              /* thousandths; set by the reading thread */
  guint progress_id;
  LbImport *import; /* NULL until read */
  LbBedProfile profile;
  double *raw_x, *raw_depth; /* what was read, for the picture */
  gsize n_raw;
  GtkWidget *stack;
  GtkWidget *bar;
  GtkWidget *failed;    /* what is said when nothing was read */
  GtkWidget *what_read; /* and when something was */
  GtkWidget *failure;
  GtkWidget *table_start; /* box: the first lines of a table that was not understood */
  GtkWidget *first_lines;
  GtkWidget *summary;
  GtkWidget *bad; /* expander with the lines not used */
  GtkWidget *bad_text;
  GtkWidget *chart;
  GtkWidget *outcome;
  GtkWidget *options;
  GtkWidget *use;
  GtkWidget *close;
  gboolean closed;
};

G_DEFINE_FINAL_TYPE (LbImportWindow, lb_import_window, GTK_TYPE_WINDOW)

static guint used_signal;

static LbDocument *
document_of (LbImportWindow *self)
{
  return lb_session_get_document (self->session);
}

/* ---- The bed from what was read ---- */

static char *
outcome_words (LbImportWindow *self)
{
  const LbBedProfile *p = &self->profile;
  double length = p->x[p->n - 1], mean = lb_bed_profile_mean_depth (p);
  GString *text = g_string_new (NULL);
  g_autofree char *along = lb_session_dup_words (self->session, LB_QUANTITY_LENGTH, length);
  g_autofree char *off = lb_session_dup_words (self->session, LB_QUANTITY_HEIGHT, p->off);
  g_autofree char *deep = lb_session_dup_words (self->session, LB_QUANTITY_LENGTH, mean);
  g_autofree char *current =
      lb_session_dup_words (self->session, LB_QUANTITY_SPEED,
                            lb_document_get_setup (document_of (self))->river.surface_current);

  g_string_append_printf (text, _ ("A bed of %zu points over %s of river."), p->n, along);
  g_string_append_c (text, ' ');
  g_string_append_printf (text, _ ("It is off the cleaned depths by no more than %s."), off);
  g_string_append_c (text, ' ');
  g_string_append_printf (text,
                          g_dngettext (NULL, "%zu depth taken out as a spike.",
                                       "%zu depths taken out as spikes.", p->spikes),
                          p->spikes);
  if (p->widest_gap > LB_IMPORT_WIDEST_GAP)
    {
      g_autofree char *gap =
          lb_session_dup_words (self->session, LB_QUANTITY_LENGTH, p->widest_gap);

      g_string_append_c (text, ' ');
      g_string_append_printf (text, _ ("The bed is guessed where there is no depth for up to %s."),
                              gap);
    }
  if (p->out_of_range > 0)
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text,
                              g_dngettext (NULL, "%zu depth is too small or too large to be used.",
                                           "%zu depths are too small or too large to be used.",
                                           p->out_of_range),
                              p->out_of_range);
    }
  g_string_append_c (text, '\n');
  g_string_append_printf (text,
                          _ ("The current of %s at the surface will be that where it is %s deep, "
                             "the average."),
                          current, deep);
  return g_string_free (text, FALSE);
}

static void
make_profile (LbImportWindow *self)
{
  LbImportOptions options = lb_import_options_box_get (LB_IMPORT_OPTIONS_BOX (self->options));
  g_autoptr (GError) error = NULL;
  g_autoptr (LbChange) trial = NULL;
  g_autofree char *words = NULL;

  self->n_raw = 0;
  if (!self->import)
    return;
  if (lb_import_profile (self->import, &options, &self->profile, &error))
    trial = lb_change_new_imported_bed (document_of (self), &self->profile, "", &error);
  if (error)
    self->profile.n = 0;
  else
    self->n_raw =
        lb_import_raw (self->import, &options, &self->profile, self->raw_x, self->raw_depth);
  words = error ? g_strdup_printf (_ ("No bed can be made of it: %s."), error->message)
                : outcome_words (self);
  gtk_label_set_text (GTK_LABEL (self->outcome), words);
  gtk_widget_set_sensitive (self->use, self->profile.n > 0);
  gtk_widget_set_visible (self->chart, self->profile.n > 0);
  lb_chart_image_outdate (LB_CHART_IMAGE (self->chart));
}

static LbScene *
make_chart (LbDrawContext *context,
            const LbPicture *picture,
            const LbStyle *style,
            double width,
            double height,
            gpointer data)
{
  LbImportWindow *self = data;
  g_autofree LbSetup *setup = g_memdup2 (picture->setup, sizeof *setup);
  LbPicture other = *picture;
  LbBedPreview preview = { .soundings = { self->raw_x, self->raw_depth, self->n_raw },
                           .selected = -1 };

  setup->river.n_bed_points = self->profile.n;
  memcpy (setup->river.bed_x, self->profile.x, sizeof self->profile.x);
  memcpy (setup->river.bed_depth, self->profile.depth, sizeof self->profile.depth);
  other.setup = setup;
  return lb_bed_preview_new (context, &other, &preview, style, width, height);
}

/* ---- Reading ---- */

/* In the reading thread. */
static void
progress_from_thread (double share, gpointer data)
{
  g_atomic_int_set (&LB_IMPORT_WINDOW (data)->progress, (int) (1000 * share));
}

static gboolean
progress_cb (gpointer data)
{
  LbImportWindow *self = data;

  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar),
                                 g_atomic_int_get (&self->progress) / 1000.0);
  return G_SOURCE_CONTINUE;
}

static void
show_bad_lines (LbImportWindow *self)
{
  GString *text = g_string_new (NULL);
  gsize all = 0;
  g_autofree char *title = NULL;

  for (int i = 0; i < LB_N_BAD_LINES; i++)
    all += self->import->bad[i];
  for (guint i = 0; i < self->import->first_bad->len; i++)
    {
      const LbBadLine *bad = &g_array_index (self->import->first_bad, LbBadLine, i);

      g_string_append_printf (text, "%s%zu: %s", i ? "\n" : "", bad->line, bad->reason);
    }
  title = g_strdup_printf (
      g_dngettext (NULL, "%zu line not used", "%zu lines not used, the first of them:", all), all);
  gtk_expander_set_label (GTK_EXPANDER (self->bad), title);
  lb_accessible_name (self->bad, title);
  gtk_label_set_text (GTK_LABEL (self->bad_text), text->str);
  gtk_widget_set_visible (self->bad, all > 0);
  g_string_free (text, TRUE);
}

/* Only a table can be read otherwise, and who is to say how must see it. */
static void
show_table_start (LbImportWindow *self)
{
  g_autofree char *lines = lb_import_dup_table_start (self->file);

  gtk_label_set_text (GTK_LABEL (self->first_lines), lines ? lines : "");
  gtk_widget_set_visible (self->table_start, lines != NULL);
  gtk_widget_set_visible (self->options, lines != NULL);
  lb_import_options_box_fit_unread (LB_IMPORT_OPTIONS_BOX (self->options));
}

static void
show_read (LbImportWindow *self, gboolean read)
{
  gtk_widget_set_visible (self->failed, !read);
  gtk_widget_set_visible (self->what_read, read);
  gtk_widget_set_visible (self->outcome, read);
  if (!read)
    gtk_widget_set_visible (self->chart, FALSE);
  gtk_widget_set_visible (self->use, read);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "read");
}

static void
take_import (LbImportWindow *self, LbImport *import)
{
  g_autofree char *summary = lb_import_dup_summary (import);

  self->import = import;
  self->raw_x = g_renew (double, self->raw_x, MAX (import->soundings->len, 1));
  self->raw_depth = g_renew (double, self->raw_depth, MAX (import->soundings->len, 1));
  gtk_label_set_text (GTK_LABEL (self->summary), summary);
  show_bad_lines (self);
  gtk_widget_set_visible (self->options, TRUE);
  lb_import_options_box_fit (LB_IMPORT_OPTIONS_BOX (self->options), import);
  make_profile (self);
  show_read (self, TRUE);
  if (gtk_widget_get_sensitive (self->use))
    gtk_widget_grab_focus (self->use);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (LbImportWindow) self = data;
  g_autoptr (GError) error = NULL;
  LbImport *import = lb_import_read_finish (result, &error);

  g_clear_handle_id (&self->progress_id, g_source_remove);
  g_clear_object (&self->cancellable);
  if (self->closed)
    {
      g_clear_pointer (&import, lb_import_free);
      return;
    }
  if (import)
    take_import (self, import);
  else
    {
      gtk_label_set_text (GTK_LABEL (self->failure), error->message);
      show_table_start (self);
      show_read (self, FALSE);
    }
}

static void
start (LbImportWindow *self)
{
  LbImportOptions options = lb_import_options_box_get (LB_IMPORT_OPTIONS_BOX (self->options));

  if (self->cancellable)
    return;
  g_clear_pointer (&self->import, lb_import_free);
  self->n_raw = self->profile.n = 0;
  gtk_widget_set_visible (self->use, FALSE);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar), 0);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), "reading");
  self->progress = 0;
  self->progress_id = g_timeout_add (PROGRESS_MS, progress_cb, self);
  self->cancellable = g_cancellable_new ();
  lb_import_read_async (self->file, &options, progress_from_thread, self, self->cancellable,
                        read_cb, g_object_ref (self));
}

/* ---- What the user does ---- */

static void
use_cb (LbImportWindow *self)
{
  g_autofree char *name = g_file_get_basename (self->file);
  g_autofree char *shown = g_filename_display_name (name);
  /* Translators: what is undone: %s is a file's name. */
  g_autofree char *label = g_strdup_printf (_ ("Import the bed of “%s”"), shown);
  LbChange *change;

  if (self->profile.n == 0)
    return;
  change = lb_change_new_imported_bed (document_of (self), &self->profile, label, NULL);
  if (!change)
    return;
  lb_session_do (self->session, change);
  g_signal_emit (self, used_signal, 0);
  gtk_window_close (GTK_WINDOW (self));
}

static gboolean
lb_import_window_close_request (GtkWindow *window)
{
  LbImportWindow *self = LB_IMPORT_WINDOW (window);

  self->closed = TRUE;
  g_cancellable_cancel (self->cancellable);
  return GTK_WINDOW_CLASS (lb_import_window_parent_class)->close_request (window);
}

static void
reread_cb (LbImportWindow *self)
{
  start (self);
}

/* ---- Making ---- */

static GtkWidget *
make_reading (LbImportWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->bar = gtk_progress_bar_new ();
  lb_accessible_name (self->bar, _ ("How much of the log is read"));
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), lb_page_label (_ ("Reading the log…"), NULL));
  gtk_box_append (GTK_BOX (box), self->bar);
  return box;
}

static GtkWidget *
make_table_start (LbImportWindow *self)
{
  self->table_start = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->first_lines = lb_page_label (NULL, "first-lines");
  gtk_label_set_wrap (GTK_LABEL (self->first_lines), FALSE);
  gtk_label_set_ellipsize (GTK_LABEL (self->first_lines), PANGO_ELLIPSIZE_END);
  gtk_box_append (GTK_BOX (self->table_start), lb_page_heading (_ ("It begins with")));
  gtk_box_append (GTK_BOX (self->table_start), self->first_lines);
  gtk_box_append (
      GTK_BOX (self->table_start),
      lb_page_note (_ ("If it is a table, say how it is to be read. Columns are counted "
                       "from the left; ⇥ is a tab.")));
  return self->table_start;
}

static GtkWidget *
make_failure (LbImportWindow *self)
{
  self->failed = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  self->failure = lb_page_label (NULL, NULL);
  gtk_label_set_selectable (GTK_LABEL (self->failure), TRUE);
  gtk_box_append (GTK_BOX (self->failed), lb_page_heading (_ ("This log cannot be used")));
  gtk_box_append (GTK_BOX (self->failed), self->failure);
  gtk_box_append (GTK_BOX (self->failed),
                  lb_page_note (_ ("Logs of sounders and GPS receivers are read as NMEA 0183, as "
                                   "GPX with depths, and as tables of distance and depth or of "
                                   "latitude, longitude and depth.")));
  gtk_box_append (GTK_BOX (self->failed), make_table_start (self));
  return self->failed;
}

static GtkWidget *
make_read (LbImportWindow *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkBox *box = GTK_BOX (content);

  self->chart = lb_chart_image_new (self->session, _ ("The bed, as read and as it will be used"),
                                    CHART_HEIGHT, make_chart, self);
  self->outcome = lb_page_label (NULL, NULL);
  self->options = lb_import_options_box_new (self->session);
  self->summary = lb_page_label (NULL, NULL);
  self->bad_text = lb_page_label (NULL, "row-note");
  gtk_label_set_selectable (GTK_LABEL (self->bad_text), TRUE);
  self->bad = gtk_expander_new (NULL);
  gtk_expander_set_child (GTK_EXPANDER (self->bad), self->bad_text);
  gtk_box_append (box, make_failure (self));
  gtk_box_append (box, self->chart);
  gtk_box_append (box, self->outcome);
  gtk_box_append (box, self->options);
  self->what_read = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  gtk_box_append (GTK_BOX (self->what_read), lb_page_heading (_ ("What was read")));
  gtk_box_append (GTK_BOX (self->what_read), self->summary);
  gtk_box_append (GTK_BOX (self->what_read), self->bad);
  gtk_box_append (box, self->what_read);
  g_signal_connect_swapped (self->options, "changed", G_CALLBACK (make_profile), self);
  g_signal_connect_swapped (self->options, "reread", G_CALLBACK (reread_cb), self);
  /* Room for the bar that comes over it. */
  gtk_widget_set_margin_end (content, 12);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), content);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), _ ("The log"));
  return scroller;
}

static GtkWidget *
make_buttons (LbImportWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->close = lb_accessible_button_new (_ ("_Cancel"));
  self->use = lb_accessible_button_new (_ ("_Use this bed"));
  gtk_widget_add_css_class (self->use, "suggested-action");
  gtk_widget_set_halign (box, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (box), self->close);
  gtk_box_append (GTK_BOX (box), self->use);
  g_signal_connect_swapped (self->close, "clicked", G_CALLBACK (gtk_window_close), self);
  g_signal_connect_swapped (self->use, "clicked", G_CALLBACK (use_cb), self);
  return box;
}

static void
fill (LbImportWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->stack = gtk_stack_new ();
  gtk_widget_set_vexpand (self->stack, TRUE);
  gtk_stack_add_named (GTK_STACK (self->stack), make_reading (self), "reading");
  gtk_stack_add_named (GTK_STACK (self->stack), make_read (self), "read");
  gtk_widget_add_css_class (box, "import");
  gtk_box_append (GTK_BOX (box), self->stack);
  gtk_box_append (GTK_BOX (box), make_buttons (self));
  gtk_window_set_child (GTK_WINDOW (self), box);
}

static void
lb_import_window_dispose (GObject *object)
{
  LbImportWindow *self = LB_IMPORT_WINDOW (object);

  self->closed = TRUE;
  g_clear_handle_id (&self->progress_id, g_source_remove);
  g_cancellable_cancel (self->cancellable);
  if (self->options)
    g_signal_handlers_disconnect_by_data (self->options, self);
  self->options = NULL;
  G_OBJECT_CLASS (lb_import_window_parent_class)->dispose (object);
}

static void
lb_import_window_finalize (GObject *object)
{
  LbImportWindow *self = LB_IMPORT_WINDOW (object);

  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->import, lb_import_free);
  g_free (self->raw_x);
  g_free (self->raw_depth);
  g_clear_object (&self->file);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_import_window_parent_class)->finalize (object);
}

static void
lb_import_window_class_init (LbImportWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_import_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_import_window_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = lb_import_window_close_request;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close",
                                       NULL);
  used_signal = g_signal_new ("used", LB_TYPE_IMPORT_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 0);
}

static void
lb_import_window_init (LbImportWindow *self)
{
}

GtkWidget *
lb_import_window_new (GtkWindow *parent, LbSession *session, GFile *file)
{
  LbImportWindow *self = g_object_new (LB_TYPE_IMPORT_WINDOW, NULL);
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *shown = g_filename_display_name (name);
  /* Translators: a window's title: %s is a file's name. */
  g_autofree char *title = g_strdup_printf (_ ("Import the log “%s”"), shown);

  self->session = g_object_ref (session);
  self->file = g_object_ref (file);
  fill (self);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  gtk_window_set_transient_for (GTK_WINDOW (self), parent);
  gtk_window_set_modal (GTK_WINDOW (self), TRUE);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (self), TRUE);
  start (self);
  return GTK_WIDGET (self);
}

LbImportState
lb_import_window_get_state (LbImportWindow *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_WINDOW (self), LB_IMPORT_FAILED);
  if (self->cancellable)
    return LB_IMPORT_READING;
  return self->import && self->profile.n > 0 ? LB_IMPORT_READ : LB_IMPORT_FAILED;
}

const char *
lb_import_window_get_summary (LbImportWindow *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_WINDOW (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->import ? self->summary : self->failure));
}

const char *
lb_import_window_get_outcome (LbImportWindow *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_WINDOW (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->outcome));
}

const char *
lb_import_window_get_first_lines (LbImportWindow *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_WINDOW (self), NULL);
  if (!gtk_widget_get_visible (self->failed) || !gtk_widget_get_visible (self->table_start))
    return NULL;
  return gtk_label_get_text (GTK_LABEL (self->first_lines));
}

LbImportOptionsBox *
lb_import_window_get_options (LbImportWindow *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_WINDOW (self), NULL);
  return LB_IMPORT_OPTIONS_BOX (self->options);
}

GtkWidget *
lb_import_window_get_use_button (LbImportWindow *self)
{
  g_return_val_if_fail (LB_IS_IMPORT_WINDOW (self), NULL);
  return self->use;
}
