/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_output.h"

#include <glib/gi18n.h>
#include <string.h>

#include "card_chooser.h"
#include "card_export.h"
#include "card_print.h"
#include "window.h"

struct _LbCardOutput
{
  GObject parent;
  GtkWidget *page; /* NULL once it is gone */
  GtkPrintSettings *settings;
  GtkNativeDialog *chooser; /* while open */
  LbMadeCard *choosing_for;
};

G_DEFINE_FINAL_TYPE (LbCardOutput, lb_card_output, G_TYPE_OBJECT)

static void
say (LbCardOutput *self, GtkMessageType type, const char *text)
{
  GtkRoot *root = self->page ? gtk_widget_get_root (self->page) : NULL;

  if (LB_IS_WINDOW (root))
    lb_window_show_message (LB_WINDOW (root), type, text);
}

static GtkWindow *
window_of (LbCardOutput *self)
{
  GtkRoot *root = self->page ? gtk_widget_get_root (self->page) : NULL;

  return GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL;
}

/* ---- Printing ---- */

static void
say_not_printed (LbCardOutput *self, const GError *error)
{
  g_autofree char *text = g_strdup_printf (_ ("The card was not printed: %s"), error->message);

  say (self, GTK_MESSAGE_ERROR, text);
}

static void
printed_cb (LbCardOutput *self, GtkPrintOperationResult result, GtkPrintOperation *operation)
{
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    g_set_object (&self->settings, gtk_print_operation_get_print_settings (operation));
  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  gtk_print_operation_get_error (operation, &error);
  if (error)
    say_not_printed (self, error);
}

void
lb_card_output_print (LbCardOutput *self, LbMadeCard *card)
{
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GError) error = NULL;

  g_return_if_fail (LB_IS_CARD_OUTPUT (self));
  operation = lb_card_print_new (card, self->settings);
  g_signal_connect_object (operation, "done", G_CALLBACK (printed_cb), self, G_CONNECT_SWAPPED);
  /* It keeps itself alive; an error is told by "done", too. */
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, window_of (self),
                           &error);
}

/* ---- Files ---- */

/* What is written on another thread. */
typedef struct
{
  LbMadeCard *card;
  char *path;
  LbExportFormat format;
  double resolution;
  char **paths; /* that there are afterwards */
} Job;

static void
job_free (Job *job)
{
  lb_made_card_unref (job->card);
  g_free (job->path);
  g_strfreev (job->paths);
  g_free (job);
}

static void
write_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  g_autoptr (LbCardDrawing) drawing = lb_made_card_draw (job->card);
  GError *error = NULL;

  if (lb_card_export_write (drawing, job->path, job->format, job->resolution, NULL, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  LbCardOutput *self = LB_CARD_OUTPUT (source);
  const Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autofree char *first = NULL;
  g_autofree char *last = NULL;
  g_autofree char *text = NULL;
  guint n = g_strv_length (job->paths);

  if (!g_task_propagate_boolean (G_TASK (result), &error))
    {
      say (self, GTK_MESSAGE_ERROR, error->message);
      return;
    }
  first = g_filename_display_basename (job->paths[0]);
  last = g_filename_display_basename (job->paths[n - 1]);
  text = n == 1 ? g_strdup_printf (_ ("The card is saved as “%s”."), first)
                : g_strdup_printf (_ ("The card is saved as “%s” to “%s”."), first, last);
  say (self, GTK_MESSAGE_INFO, text);
}

/* The first of `paths`, other than `chosen`, that there is already; NULL: none. */
static const char *
in_the_way (char **paths, const char *chosen)
{
  for (; *paths; paths++)
    if (strcmp (*paths, chosen) != 0 && g_file_test (*paths, G_FILE_TEST_EXISTS))
      return *paths;
  return NULL;
}

/* The dialog asked about the name as it was typed, not about others that are made of it. */
static gboolean
may_write (LbCardOutput *self, char **paths, const char *chosen)
{
  const char *other = in_the_way (paths, chosen);
  g_autofree char *name = other ? g_filename_display_basename (other) : NULL;
  g_autofree char *text = NULL;

  if (!other)
    return TRUE;
  text = g_strdup_printf (_ ("Not saved: “%s” exists already. Choose another name."), name);
  say (self, GTK_MESSAGE_WARNING, text);
  return FALSE;
}

void
lb_card_output_save (LbCardOutput *self, LbMadeCard *card, GFile *file, double resolution)
{
  g_autofree char *chosen = g_file_get_path (file);
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *path = NULL;
  g_auto (GStrv) paths = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GTask) task = NULL;
  LbExportFormat format;
  Job *job;

  g_return_if_fail (LB_IS_CARD_OUTPUT (self));
  if (!chosen)
    {
      say (self, GTK_MESSAGE_ERROR, _ ("Not saved: choose a folder of this computer."));
      return;
    }
  path = strchr (name, '.') ? g_strdup (chosen) : g_strconcat (chosen, LB_CARD_ENDING, NULL);
  if (!lb_export_format_for_path (path, &format, &error))
    {
      say (self, GTK_MESSAGE_ERROR, error->message);
      return;
    }
  paths = lb_card_export_paths (lb_made_card_get_drawing (card), path, format);
  if (!may_write (self, paths, chosen))
    return;
  job = g_new0 (Job, 1);
  *job = (Job){ lb_made_card_ref (card), g_steal_pointer (&path), format, resolution,
                g_steal_pointer (&paths) };
  task = g_task_new (self, NULL, written_cb, NULL);
  g_task_set_task_data (task, job, (GDestroyNotify) job_free);
  g_task_run_in_thread (task, write_cb);
}

static void
chosen_cb (LbCardOutput *self, int response, GtkFileChooser *chooser)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (chooser);
  g_autoptr (LbMadeCard) card = g_steal_pointer (&self->choosing_for);

  if (response == GTK_RESPONSE_ACCEPT && file && card)
    lb_card_output_save (self, card, file, lb_card_chooser_get_resolution (chooser));
  g_clear_object (&self->chooser);
}

void
lb_card_output_choose_file (LbCardOutput *self, LbMadeCard *card, const char *name)
{
  g_return_if_fail (LB_IS_CARD_OUTPUT (self));
  g_clear_object (&self->chooser);
  self->chooser = lb_card_chooser_new (window_of (self), name);
  lb_made_card_unref (self->choosing_for);
  self->choosing_for = lb_made_card_ref (card);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (chosen_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_native_dialog_show (self->chooser);
}

GtkFileChooser *
lb_card_output_get_chooser (LbCardOutput *self)
{
  g_return_val_if_fail (LB_IS_CARD_OUTPUT (self), NULL);
  return self->chooser ? GTK_FILE_CHOOSER (self->chooser) : NULL;
}

/* ---- Clipboard ---- */

void
lb_card_output_copy (LbCardOutput *self, LbMadeCard *card, gsize sheet)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  g_autoptr (GdkContentProvider) both = NULL;
  char *text;
  GdkContentProvider *forms[2];

  g_return_if_fail (LB_IS_CARD_OUTPUT (self));
  bytes = lb_card_export_png (lb_made_card_get_drawing (card), sheet, LB_CARD_RESOLUTION, &error);
  if (bytes)
    texture = gdk_texture_new_from_bytes (bytes, &error);
  if (!texture)
    {
      say (self, GTK_MESSAGE_ERROR, error->message);
      return;
    }
  text = lb_card_contents_dup_text (lb_made_card_get_contents (card));
  forms[0] = gdk_content_provider_new_typed (GDK_TYPE_TEXTURE, texture);
  forms[1] = gdk_content_provider_new_typed (G_TYPE_STRING, text);
  free (text);
  both = gdk_content_provider_new_union (forms, G_N_ELEMENTS (forms));
  gdk_clipboard_set_content (gtk_widget_get_clipboard (self->page), both);
  say (self, GTK_MESSAGE_INFO, _ ("The card is copied: as a picture, and as text."));
}

static void
lb_card_output_finalize (GObject *object)
{
  LbCardOutput *self = LB_CARD_OUTPUT (object);

  g_clear_weak_pointer (&self->page);
  g_clear_object (&self->chooser);
  g_clear_object (&self->settings);
  lb_made_card_unref (self->choosing_for);
  G_OBJECT_CLASS (lb_card_output_parent_class)->finalize (object);
}

static void
lb_card_output_class_init (LbCardOutputClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lb_card_output_finalize;
}

static void
lb_card_output_init (LbCardOutput *self)
{
}

LbCardOutput *
lb_card_output_new (GtkWidget *page)
{
  LbCardOutput *self = g_object_new (LB_TYPE_CARD_OUTPUT, NULL);

  g_set_weak_pointer (&self->page, page);
  return self;
}
