/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_chooser.h"

#include <glib/gi18n.h>

#include "card_export.h"

#define RESOLUTION "resolution" /* name of the dialog's choice */

static void
add_resolution (GtkFileChooser *chooser)
{
  const char *values[] = { "300", "150", "600", NULL };
  /* Translators: of a picture in pixels. */
  const char *labels[] = { _ ("300 to the inch"), _ ("150 to the inch"), _ ("600 to the inch"),
                           NULL };

  gtk_file_chooser_add_choice (chooser, RESOLUTION, _ ("Pixels of a PNG"), values, labels);
}

static void
add_filter (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("PDF, SVG and PNG (as the name ends)"));
  gtk_file_filter_add_suffix (filter, "pdf");
  gtk_file_filter_add_suffix (filter, "svg");
  gtk_file_filter_add_suffix (filter, "png");
  gtk_file_chooser_add_filter (chooser, filter);
}

GtkNativeDialog *
lb_card_chooser_new (GtkWindow *parent, const char *name)
{
  g_autofree char *plain = g_strdelimit (g_strdup (name), "/\\", '-');
  g_autofree char *full = g_strconcat (plain, LB_CARD_ENDING, NULL);
  GtkFileChooserNative *native =
      gtk_file_chooser_native_new (_ ("Save the card as PDF, SVG or PNG"), parent,
                                   GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (native), TRUE);
  add_filter (GTK_FILE_CHOOSER (native));
  add_resolution (GTK_FILE_CHOOSER (native));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (native), full);
  return GTK_NATIVE_DIALOG (native);
}

double
lb_card_chooser_get_resolution (GtkFileChooser *chooser)
{
  const char *resolution = gtk_file_chooser_get_choice (chooser, RESOLUTION);

  return resolution ? g_ascii_strtod (resolution, NULL) : LB_CARD_RESOLUTION;
}
