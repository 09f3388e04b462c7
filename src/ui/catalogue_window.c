/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_window.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "catalogue_details.h"
#include "tackle_image.h"

#define WIDTH 760
#define HEIGHT 540
#define DETAILS_WIDTH 300

struct _LbCatalogueWindow
{
  GtkWindow parent;
  LbSession *session;
  LbCatalogueStore *store;
  LbRigPlace place;
  GPtrArray *items; /* LbCatalogueItem, one for each row of the list */
  GtkWidget *fault;
  GtkWidget *search;
  GtkWidget *list;
  GtkWidget *scroller;
  GtkWidget *details;
  GtkWidget *use;
  GtkWidget *keep;
  GtkWidget *own;
  guint reveal_id;
};

G_DEFINE_FINAL_TYPE (LbCatalogueWindow, lb_catalogue_window, GTK_TYPE_WINDOW)

static const LbCatalogueItem *
item_of (LbCatalogueWindow *self, GtkListBoxRow *row)
{
  int index = row ? gtk_list_box_row_get_index (row) : -1;

  if (index < 0 || (guint) index >= self->items->len)
    return NULL;
  return g_ptr_array_index (self->items, index);
}

static const LbCatalogueItem *
selected (LbCatalogueWindow *self)
{
  return item_of (self, gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list)));
}

static void
show_selected (LbCatalogueWindow *self)
{
  const LbCatalogueItem *item = selected (self);

  lb_catalogue_details_show (LB_CATALOGUE_DETAILS (self->details), item);
  lb_own_row_show (LB_OWN_ROW (self->own), item);
  gtk_widget_set_sensitive (self->use, item != NULL);
}

/* ---- The list ---- */

static GtkWidget *
make_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
make_row (LbCatalogueWindow *self, const LbCatalogueItem *item, double per_metre)
{
  g_autofree char *summary = lb_catalogue_item_dup_summary (item, self->session);
  /* Translators: mark of a piece that the user has put into the catalogue */
  g_autofree char *own = item->is_own ? g_strdup_printf (_ ("your own · %s"), summary) : NULL;
  g_autofree char *name = g_strdup_printf ("%s, %s", item->name, own ? own : summary);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *image = lb_tackle_image_new (self->session);

  lb_tackle_image_show (LB_TACKLE_IMAGE (image), &item->tackle, per_metre);
  gtk_box_append (GTK_BOX (words), make_label (item->name, "part-name"));
  gtk_box_append (GTK_BOX (words), make_label (own ? own : summary, "row-note"));
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (line), image);
  gtk_box_append (GTK_BOX (line), words);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), line);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return row;
}

/* One scale for all drawings of the list, so that large pieces look large. */
static double
common_scale (LbCatalogueWindow *self)
{
  double per_metre = INFINITY;

  for (guint i = 0; i < self->items->len; i++)
    {
      const LbCatalogueItem *item = g_ptr_array_index (self->items, i);

      per_metre = fmin (per_metre, lb_tackle_image_fit (&item->tackle));
    }
  return per_metre;
}

static gboolean
filter_cb (GtkListBoxRow *row, gpointer user_data)
{
  LbCatalogueWindow *self = user_data;
  const LbCatalogueItem *item = item_of (self, row);
  g_autofree char *summary = item ? lb_catalogue_item_dup_summary (item, self->session) : NULL;

  return item
         && lb_catalogue_item_matches (item, summary,
                                       gtk_editable_get_text (GTK_EDITABLE (self->search)));
}

/* Selects the first row that is listed, unless the selected one is. */
static void
select_some (LbCatalogueWindow *self)
{
  GtkListBox *list = GTK_LIST_BOX (self->list);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (list);

  if (row && gtk_widget_get_child_visible (GTK_WIDGET (row)))
    return;
  for (int i = 0; (row = gtk_list_box_get_row_at_index (list, i)); i++)
    if (gtk_widget_get_child_visible (GTK_WIDGET (row)))
      break;
  gtk_list_box_select_row (list, row);
}

static void
searched_cb (LbCatalogueWindow *self)
{
  gtk_list_box_invalidate_filter (GTK_LIST_BOX (self->list));
  select_some (self);
  show_selected (self);
}

/* Once the list has its size: what stands in the rig now is in sight. */
static gboolean
reveal_cb (gpointer user_data)
{
  LbCatalogueWindow *self = user_data;
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));
  GtkAdjustment *adjustment =
      gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  graphene_rect_t bounds;

  self->reveal_id = 0;
  if (row && gtk_widget_compute_bounds (GTK_WIDGET (row), self->list, &bounds))
    gtk_adjustment_clamp_page (adjustment, bounds.origin.y - bounds.size.height,
                               bounds.origin.y + 2 * bounds.size.height);
  return G_SOURCE_REMOVE;
}

static void
reveal_later (LbCatalogueWindow *self)
{
  if (!self->reveal_id)
    self->reveal_id = g_idle_add_full (GDK_PRIORITY_REDRAW + 10, reveal_cb, self, NULL);
}

static void
lb_catalogue_window_map (GtkWidget *widget)
{
  LbCatalogueWindow *self = LB_CATALOGUE_WINDOW (widget);

  GTK_WIDGET_CLASS (lb_catalogue_window_parent_class)->map (widget);
  reveal_later (self);
}

/* What the rig has, or what is most like it. */
static void
select_present (LbCatalogueWindow *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  const char *present =
      lb_rig_place_catalogue_name (self->place, lb_catalogue_store_get (self->store), setup,
                                   lb_session_get_units (self->session));
  LbTackle tackle = lb_rig_place_get (self->place, setup);
  GtkListBox *list = GTK_LIST_BOX (self->list);

  if (!present || !lb_catalogue_window_select (self, present))
    gtk_list_box_select_row (list, gtk_list_box_get_row_at_index (
                                       list, lb_catalogue_items_nearest (self->items, &tackle)));
}

static void
fill_list (LbCatalogueWindow *self)
{
  const char *fault = lb_catalogue_store_get_fault (self->store);
  g_autofree char *told = NULL;
  GtkWidget *row;
  double per_metre;

  /* What the old items point to is gone already. */
  g_ptr_array_set_size (self->items, 0);
  while ((row = GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0))))
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  self->items =
      lb_catalogue_items_for (self->store, self->place, lb_session_get_units (self->session));
  per_metre = common_scale (self);
  for (guint i = 0; i < self->items->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list),
                         make_row (self, g_ptr_array_index (self->items, i), per_metre));
  /* Translators: above the catalogue; the reason follows */
  told = g_strdup_printf (_ ("Your own parts cannot be read and are left as they are. %s"),
                          fault ? fault : "");
  gtk_label_set_text (GTK_LABEL (self->fault), told);
  gtk_widget_set_visible (self->fault, fault != NULL);
  select_present (self);
  show_selected (self);
}

/* Selects a part that was just kept or renamed, whatever is searched for. */
static void
kept_cb (LbCatalogueWindow *self, const char *id)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  gtk_list_box_invalidate_filter (GTK_LIST_BOX (self->list));
  for (guint i = 0; i < self->items->len; i++)
    {
      const LbCatalogueItem *item = g_ptr_array_index (self->items, i);

      if (g_str_equal (item->id, id))
        gtk_list_box_select_row (
            GTK_LIST_BOX (self->list),
            gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) i));
    }
  reveal_later (self);
}

/* ---- Using ---- */

static void
activated_cb (LbCatalogueWindow *self)
{
  lb_catalogue_window_use (self);
}

/* From the search the arrow keys go into the list. */
static gboolean
search_key_cb (LbCatalogueWindow *self, guint key)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  if ((key != GDK_KEY_Down && key != GDK_KEY_KP_Down) || !row)
    return GDK_EVENT_PROPAGATE;
  gtk_widget_grab_focus (GTK_WIDGET (row));
  return GDK_EVENT_STOP;
}

/* The place is gone when its leader is. */
static void
edited_cb (LbCatalogueWindow *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));

  if (!lb_rig_place_exists (self->place, setup))
    gtk_window_close (GTK_WINDOW (self));
}

/* ---- Making ---- */

static void
lb_catalogue_window_dispose (GObject *object)
{
  LbCatalogueWindow *self = LB_CATALOGUE_WINDOW (object);

  g_clear_handle_id (&self->reveal_id, g_source_remove);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  if (self->store)
    g_signal_handlers_disconnect_by_data (self->store, self);
  if (self->list)
    {
      g_signal_handlers_disconnect_by_data (self->list, self);
      g_signal_handlers_disconnect_by_data (self->search, self);
      gtk_list_box_set_filter_func (GTK_LIST_BOX (self->list), NULL, NULL, NULL);
    }
  self->list = NULL;
  g_clear_object (&self->session);
  g_clear_object (&self->store);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  G_OBJECT_CLASS (lb_catalogue_window_parent_class)->dispose (object);
}

static void
lb_catalogue_window_class_init (LbCatalogueWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_catalogue_window_dispose;
  GTK_WIDGET_CLASS (klass)->map = lb_catalogue_window_map;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close",
                                       NULL);
}

static void
lb_catalogue_window_init (LbCatalogueWindow *self)
{
  self->items = g_ptr_array_new ();
}

static GtkWidget *
make_left_side (LbCatalogueWindow *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->search = gtk_search_entry_new ();
  g_object_set (self->search, "placeholder-text", _ ("Search by words or numbers"), NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->search), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Search the catalogue"), -1);
  g_signal_connect_swapped (self->search, "search-changed", G_CALLBACK (searched_cb), self);
  g_signal_connect_swapped (self->search, "activate", G_CALLBACK (activated_cb), self);
  g_signal_connect_swapped (self->search, "stop-search", G_CALLBACK (gtk_window_close), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (search_key_cb), self);
  gtk_widget_add_controller (self->search, keys);

  self->list = gtk_list_box_new ();
  gtk_list_box_set_activate_on_single_click (GTK_LIST_BOX (self->list), FALSE);
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_BROWSE);
  gtk_list_box_set_filter_func (GTK_LIST_BOX (self->list), filter_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Catalogue"), -1);
  g_signal_connect_swapped (self->list, "row-selected", G_CALLBACK (show_selected), self);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (activated_cb), self);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (self->scroller), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->list);
  gtk_widget_set_vexpand (self->scroller, TRUE);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (self->scroller), _ ("Catalogue"));

  gtk_box_append (GTK_BOX (side), self->search);
  gtk_box_append (GTK_BOX (side), self->scroller);
  self->keep = lb_keep_row_new (self->session, self->store, self->place);
  g_signal_connect_swapped (self->keep, "kept", G_CALLBACK (kept_cb), self);
  gtk_box_append (GTK_BOX (side), self->keep);
  gtk_widget_set_hexpand (side, TRUE);
  return side;
}

static GtkWidget *
make_right_side (LbCatalogueWindow *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->details = lb_catalogue_details_new (self->session);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->details);
  gtk_widget_set_vexpand (scroller, TRUE);
  lb_accessible_name_scroller (GTK_SCROLLED_WINDOW (scroller), _ ("About this part"));
  self->use = gtk_button_new_with_label (_ ("Use in the rig"));
  gtk_widget_add_css_class (self->use, "suggested-action");
  g_signal_connect_swapped (self->use, "clicked", G_CALLBACK (activated_cb), self);

  gtk_box_append (GTK_BOX (side), scroller);
  self->own = lb_own_row_new (self->store, lb_rig_place_uses (self->place));
  g_signal_connect_swapped (self->own, "kept", G_CALLBACK (kept_cb), self);
  gtk_box_append (GTK_BOX (side), self->own);
  gtk_box_append (GTK_BOX (side), self->use);
  gtk_widget_set_size_request (side, DETAILS_WIDTH, -1);
  return side;
}

static void
fill (LbCatalogueWindow *self)
{
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 16);

  GtkWidget *right = make_right_side (self);

  self->fault = make_label (NULL, "row-fault");
  gtk_box_append (GTK_BOX (sides), make_left_side (self));
  gtk_box_append (GTK_BOX (sides), right);
  gtk_box_append (GTK_BOX (all), self->fault);
  gtk_box_append (GTK_BOX (all), sides);
  gtk_widget_add_css_class (all, "catalogue");
  gtk_window_set_child (GTK_WINDOW (self), all);
}

GtkWidget *
lb_catalogue_window_new (LbSession *session, LbCatalogueStore *store, LbRigPlace place)
{
  LbCatalogueWindow *self =
      g_object_new (LB_TYPE_CATALOGUE_WINDOW, "modal", TRUE, "destroy-with-parent", TRUE,
                    "default-width", WIDTH, "default-height", HEIGHT, NULL);
  g_autofree char *name = lb_rig_place_dup_name (place);
  /* Translators: the catalogue's window for one place: "Leader 2: lure – from the catalogue" */
  g_autofree char *title = g_strdup_printf (_ ("%s – from the catalogue"), name);

  self->session = g_object_ref (session);
  self->store = g_object_ref (store);
  self->place = place;
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  fill (self);
  lb_catalogue_store_reload (store);
  fill_list (self);
  g_signal_connect_swapped (store, "changed", G_CALLBACK (fill_list), self);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (edited_cb), self);
  gtk_window_set_focus (GTK_WINDOW (self), self->search);
  return GTK_WIDGET (self);
}

guint
lb_catalogue_window_get_n_listed (LbCatalogueWindow *self)
{
  GtkListBoxRow *row;
  guint n = 0;

  g_return_val_if_fail (LB_IS_CATALOGUE_WINDOW (self), 0);
  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), i)); i++)
    n += gtk_widget_get_child_visible (GTK_WIDGET (row));
  return n;
}

void
lb_catalogue_window_search (LbCatalogueWindow *self, const char *text)
{
  g_return_if_fail (LB_IS_CATALOGUE_WINDOW (self));
  gtk_editable_set_text (GTK_EDITABLE (self->search), text);
  searched_cb (self);
}

gboolean
lb_catalogue_window_select (LbCatalogueWindow *self, const char *name)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_WINDOW (self), FALSE);
  for (guint i = 0; i < self->items->len; i++)
    {
      const LbCatalogueItem *item = g_ptr_array_index (self->items, i);

      if (!g_str_equal (item->name, name))
        continue;
      gtk_list_box_select_row (GTK_LIST_BOX (self->list),
                               gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) i));
      return TRUE;
    }
  return FALSE;
}

void
lb_catalogue_window_use (LbCatalogueWindow *self)
{
  const LbCatalogueItem *item;

  g_return_if_fail (LB_IS_CATALOGUE_WINDOW (self));
  item = selected (self);
  if (!item)
    return;
  lb_session_do (self->session,
                 lb_rig_place_change (self->place, lb_session_get_document (self->session),
                                      &item->tackle, item->name));
  gtk_window_close (GTK_WINDOW (self));
}

char *
lb_catalogue_window_dup_details (LbCatalogueWindow *self)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_WINDOW (self), NULL);
  return lb_catalogue_details_dup_text (LB_CATALOGUE_DETAILS (self->details));
}

LbKeepRow *
lb_catalogue_window_get_keep_row (LbCatalogueWindow *self)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_WINDOW (self), NULL);
  return LB_KEEP_ROW (self->keep);
}

LbOwnRow *
lb_catalogue_window_get_own_row (LbCatalogueWindow *self)
{
  g_return_val_if_fail (LB_IS_CATALOGUE_WINDOW (self), NULL);
  return LB_OWN_ROW (self->own);
}
