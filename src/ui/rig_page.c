/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rig_page.h"

#include <glib/gi18n.h>

#include "dispose.h"
#include "notes_view.h"
#include "page_parts.h"
#include "rig_sections.h"
#include "text_entry.h"

struct _LbRigPage
{
  GtkWidget parent;
  LbSession *session;
  LbCatalogueStore *store; /* NULL until the page is filled */
  GtkWidget *scroller;
  GtkWidget *sections; /* box */
  GPtrArray *groups;   /* (element-type LbRigGroup), of all but the leaders */
  GtkWidget *cards[LB_MAX_LEADERS];
  GtkWidget *cards_box;
  GtkWidget *add;
  GtkWidget *none; /* said while there are no leaders */
  guint scroll_id;
};

G_DEFINE_FINAL_TYPE (LbRigPage, lb_rig_page, GTK_TYPE_WIDGET)

static gsize
n_leaders (LbRigPage *self)
{
  return lb_document_get_setup (lb_session_get_document (self->session))->rig.n_leaders;
}

/* ---- Scrolling to what is selected ---- */

/* A frame, and what it takes to lay a card out. */
#define LAYOUT_MS 30

static gboolean
scroll_cb (gpointer user_data)
{
  LbRigPage *self = user_data;
  GtkWidget *group;
  LbPickKind kind;
  int index;

  self->scroll_id = 0;
  lb_session_get_selected (self->session, &kind, &index);
  group = lb_rig_page_get_group (self, kind, index);
  /* A leader that was added a moment ago. */
  if (group && gtk_widget_get_height (group) == 0 && gtk_widget_get_mapped (group))
    self->scroll_id = g_timeout_add (LAYOUT_MS, scroll_cb, self);
  else if (group)
    lb_page_scroll_to (GTK_SCROLLED_WINDOW (self->scroller), self->sections, group);
  return G_SOURCE_REMOVE;
}

/* After the layout that an edit may have called for. */
static void
selected_cb (LbRigPage *self)
{
  if (self->store && !self->scroll_id && gtk_widget_get_mapped (GTK_WIDGET (self)))
    self->scroll_id = g_idle_add_full (GDK_PRIORITY_REDRAW + 10, scroll_cb, self, NULL);
}

/* ---- Leaders ---- */

static void
acted_cb (LbRigPage *self, guint action, guint leader)
{
  GtkWidget *button = NULL;

  if (leader >= n_leaders (self) && leader > 0)
    leader--;
  if (leader >= n_leaders (self))
    {
      gtk_widget_grab_focus (self->add);
      return;
    }
  /* The focus goes along with the leader, to a button that can be pressed. */
  button = lb_leader_card_get_button (LB_LEADER_CARD (self->cards[leader]), action);
  if (!gtk_widget_is_sensitive (button))
    button = lb_leader_card_get_button (LB_LEADER_CARD (self->cards[leader]),
                                        action == LB_LEADER_UP ? LB_LEADER_DOWN : LB_LEADER_UP);
  gtk_widget_grab_focus (button);
  if (gtk_widget_is_sensitive (button))
    lb_session_select (self->session, LB_PICK_LEADER, (int) leader);
}

static void
follow (LbRigPage *self)
{
  gsize n = n_leaders (self);

  for (gsize i = 0; i < n; i++)
    if (!self->cards[i])
      {
        self->cards[i] = lb_leader_card_new (self->session, self->store, i);
        g_signal_connect_swapped (self->cards[i], "acted", G_CALLBACK (acted_cb), self);
        gtk_box_append (GTK_BOX (self->cards_box), self->cards[i]);
      }
  gtk_widget_set_visible (self->none, n == 0);
  gtk_widget_set_sensitive (self->add, n < LB_MAX_LEADERS);
}

static void
add_cb (LbRigPage *self)
{
  LbDocument *document = lb_session_get_document (self->session);

  if (lb_session_do (self->session, lb_change_new_add_leader (document)))
    lb_rig_page_open_part (self, LB_PICK_ATTACHMENT, (int) n_leaders (self) - 1);
}

/* ---- Filling ---- */

static void
add_heading (LbRigPage *self, const char *text)
{
  gtk_box_append (GTK_BOX (self->sections), lb_page_heading (text));
}

static void
add_group (LbRigPage *self, GtkWidget *group)
{
  gtk_widget_add_css_class (group, "rig-card");
  gtk_box_append (GTK_BOX (self->sections), group);
  g_ptr_array_add (self->groups, group);
}

static void
add_band (LbRigPage *self)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  const LbPickKind edges[] = { LB_PICK_BAND_LOW, LB_PICK_BAND_HIGH };

  add_heading (self, _ ("Band that lures should run in"));
  for (gsize i = 0; i < G_N_ELEMENTS (edges); i++)
    {
      GtkWidget *group = lb_rig_section_new_band_edge (self->session, edges[i]);

      gtk_box_append (GTK_BOX (card), group);
      g_ptr_array_add (self->groups, group);
    }
  gtk_widget_add_css_class (card, "rig-card");
  gtk_box_append (GTK_BOX (self->sections), card);
}

static void
add_leaders (LbRigPage *self)
{
  add_heading (self, _ ("Leaders"));
  self->none = lb_page_label (_ ("No leaders yet: the weight runs alone."), "quiet");
  self->cards_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->add = gtk_button_new_with_label (_ ("Add a leader"));
  gtk_widget_set_tooltip_text (self->add,
                               _ ("Like the last one, longer and higher up the shank; at most 8"));
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_append (GTK_BOX (self->sections), self->none);
  gtk_box_append (GTK_BOX (self->sections), self->cards_box);
  gtk_box_append (GTK_BOX (self->sections), self->add);
}

static void
fill (LbRigPage *self)
{
  self->store = lb_catalogue_store_new ();
  add_heading (self, _ ("Name of the rig"));
  gtk_box_append (GTK_BOX (self->sections), lb_text_entry_new_title (self->session));
  add_heading (self, _ ("Weight"));
  add_group (self, lb_rig_section_new_weight (self->session, self->store));
  add_heading (self, _ ("Shank"));
  add_group (self, lb_rig_section_new_shank (self->session, self->store));
  add_leaders (self);
  add_heading (self, _ ("Reel and mainline"));
  add_group (self, lb_rig_section_new_reel (self->session));
  add_group (self, lb_rig_section_new_mainline (self->session, self->store));
  add_band (self);
  add_heading (self, _ ("Local rules"));
  add_group (self, lb_rig_section_new_rules (self->session));
  add_heading (self, _ ("Notes"));
  gtk_box_append (GTK_BOX (self->sections), lb_notes_view_new (self->session));
  g_signal_connect_swapped (self->session, "edited", G_CALLBACK (follow), self);
  follow (self);
}

static void
lb_rig_page_map (GtkWidget *widget)
{
  LbRigPage *self = LB_RIG_PAGE (widget);

  if (!self->store)
    fill (self);
  GTK_WIDGET_CLASS (lb_rig_page_parent_class)->map (widget);
  selected_cb (self);
}

/* ---- Making ---- */

static void
lb_rig_page_dispose (GObject *object)
{
  LbRigPage *self = LB_RIG_PAGE (object);

  g_clear_handle_id (&self->scroll_id, g_source_remove);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_pointer (&self->groups, g_ptr_array_unref);
  g_clear_object (&self->store);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_rig_page_parent_class)->dispose (object);
}

static void
lb_rig_page_class_init (LbRigPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_rig_page_dispose;
  widget_class->map = lb_rig_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbrigpage");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_rig_page_init (LbRigPage *self)
{
  self->groups = g_ptr_array_new ();
  self->scroller = lb_page_scroller (_ ("Rig"), &self->sections);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
}

GtkWidget *
lb_rig_page_new (LbSession *session)
{
  LbRigPage *self = g_object_new (LB_TYPE_RIG_PAGE, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "selected", G_CALLBACK (selected_cb), self);
  return GTK_WIDGET (self);
}

/* ---- Parts ---- */

GtkWidget *
lb_rig_page_get_group (LbRigPage *self, LbPickKind kind, int index)
{
  g_return_val_if_fail (LB_IS_RIG_PAGE (self), NULL);
  if (kind == LB_PICK_BOAT)
    kind = LB_PICK_REEL;
  if (kind == LB_PICK_NOTHING)
    return NULL;
  for (guint i = 0; i < self->groups->len; i++)
    if (lb_rig_group_is_of (g_ptr_array_index (self->groups, i), kind, index))
      return g_ptr_array_index (self->groups, i);
  if (index < 0 || index >= LB_MAX_LEADERS || !self->cards[index])
    return NULL;
  return lb_leader_card_get_group (LB_LEADER_CARD (self->cards[index]), kind);
}

gboolean
lb_rig_page_has_part (LbRigPage *self, LbPickKind kind, int index)
{
  g_return_val_if_fail (LB_IS_RIG_PAGE (self), FALSE);
  switch (kind)
    {
    case LB_PICK_BOAT:
    case LB_PICK_REEL:
    case LB_PICK_MAINLINE:
    case LB_PICK_SHANK:
    case LB_PICK_WEIGHT:
    case LB_PICK_BAND_LOW:
    case LB_PICK_BAND_HIGH:
      return TRUE;
    case LB_PICK_ATTACHMENT:
    case LB_PICK_LEADER:
    case LB_PICK_LURE:
      return index >= 0 && (gsize) index < n_leaders (self);
    default:
      return FALSE;
    }
}

gboolean
lb_rig_page_open_part (LbRigPage *self, LbPickKind kind, int index)
{
  GtkWidget *group;

  g_return_val_if_fail (LB_IS_RIG_PAGE (self), FALSE);
  if (!lb_rig_page_has_part (self, kind, index))
    return FALSE;
  if (!self->store)
    fill (self);
  group = lb_rig_page_get_group (self, kind, index);
  return group && gtk_widget_child_focus (group, GTK_DIR_TAB_FORWARD);
}

LbLeaderCard *
lb_rig_page_get_card (LbRigPage *self, gsize leader)
{
  g_return_val_if_fail (LB_IS_RIG_PAGE (self) && leader < LB_MAX_LEADERS, NULL);
  return self->cards[leader] ? LB_LEADER_CARD (self->cards[leader]) : NULL;
}

GtkWidget *
lb_rig_page_get_add_button (LbRigPage *self)
{
  g_return_val_if_fail (LB_IS_RIG_PAGE (self), NULL);
  return self->add;
}

GtkAdjustment *
lb_rig_page_get_adjustment (LbRigPage *self)
{
  g_return_val_if_fail (LB_IS_RIG_PAGE (self), NULL);
  return gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
}
