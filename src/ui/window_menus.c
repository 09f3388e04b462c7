/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The menus of recent rigs and of samples, filled after the first frame: they read files. */
#include "window_private.h"

#include <glib/gi18n.h>

#include "data_path.h"

#define MOST_RECENT 8
#define ENDING ".rig"

/* The section of the menu with that "id" attribute. (transfer full) */
static GMenu *
section (LbWindow *self, const char *id)
{
  GMenuModel *menu = G_MENU_MODEL (self->open_menu);

  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autofree char *found = NULL;

      g_menu_model_get_item_attribute (menu, i, "id", "s", &found);
      if (g_strcmp0 (found, id) == 0)
        return G_MENU (g_menu_model_get_item_link (menu, i, G_MENU_LINK_SECTION));
    }
  g_assert_not_reached ();
}

static void
append_file (GMenu *menu, const char *label, const char *action, const char *uri)
{
  g_autoptr (GMenuItem) item = NULL;
  g_autofree char *escaped = NULL;
  g_auto (GStrv) parts = g_strsplit (label, "_", -1);

  /* An underline in a name is no mnemonic. */
  escaped = g_strjoinv ("__", parts);
  item = g_menu_item_new (escaped, NULL);
  g_menu_item_set_action_and_target (item, action, "s", uri);
  g_menu_append_item (menu, item);
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  GDateTime *x = gtk_recent_info_get_modified ((GtkRecentInfo *) a);
  GDateTime *y = gtk_recent_info_get_modified ((GtkRecentInfo *) b);

  return g_date_time_compare (y, x);
}

static void
fill_recent (LbWindow *self)
{
  g_autoptr (GMenu) menu = section (self, "recent");
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  int n = 0;

  g_menu_remove_all (menu);
  items = g_list_sort (items, newest_first);
  for (GList *l = items; l && n < MOST_RECENT; l = l->next)
    {
      GtkRecentInfo *info = l->data;
      g_autofree char *name = NULL;

      if (!gtk_recent_info_has_application (info, LB_RECENT_APPLICATION)
          || (gtk_recent_info_is_local (info) && !gtk_recent_info_exists (info)))
        continue;
      name = gtk_recent_info_get_short_name (info);
      append_file (menu, name, "win.open-uri", gtk_recent_info_get_uri (info));
      n++;
    }
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
}

static char *
samples_folder (void)
{
  const char *folder = g_getenv ("LAYBACK_SAMPLES_DIR");

  return folder && *folder ? g_strdup (folder) : lb_data_path ("samples");
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_strcmp0 (*(const char *const *) a, *(const char *const *) b);
}

static void
append_sample (GMenu *menu, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (LbDocument) document = lb_document_load (file, NULL);
  g_autofree char *uri = g_file_get_uri (file);
  g_autofree char *name = NULL;

  if (!document)
    return;
  name = lb_document_dup_display_name (document);
  append_file (menu, name, "win.open-sample", uri);
}

static void
fill_samples (LbWindow *self)
{
  g_autoptr (GMenu) menu = section (self, "samples");
  g_autofree char *folder = samples_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  while (dir && (name = g_dir_read_name (dir)))
    if (g_str_has_suffix (name, ENDING))
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (paths, compare_names);
  for (guint i = 0; i < paths->len; i++)
    append_sample (menu, g_ptr_array_index (paths, i));
}

static gboolean
fill_cb (gpointer user_data)
{
  LbWindow *self = user_data;

  self->menus_id = 0;
  fill_samples (self);
  fill_recent (self);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (fill_recent),
                           self, G_CONNECT_SWAPPED);
  return G_SOURCE_REMOVE;
}

void
lb_window_menus_start (LbWindow *self)
{
  self->menus_id = g_idle_add_full (G_PRIORITY_LOW, fill_cb, self, NULL);
}

void
lb_window_menus_dispose (LbWindow *self)
{
  g_clear_handle_id (&self->menus_id, g_source_remove);
}
