/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leader_card.h"

#include <glib/gi18n.h>

#include "dispose.h"
#include "part_button.h"
#include "rig_group.h"
#include "text_entry.h"
#include "words.h"

static const char *const line_paths[] = {
  "leaders[].diameter_m",    "leaders[].breaking_load_n",
  "leaders[].density_kg_m3", "leaders[].axial_stiffness_n",
  "leaders[].normal_drag",   "leaders[].tangential_drag",
  "leaders[].strum",         NULL,
};

static const char *const lure_paths[] = {
  "leaders[].lure.length_m",
  "leaders[].lure.hooks",
  "leaders[].lure.mass_kg",
  "leaders[].lure.buoyancy_n",
  "leaders[].lure.drag_area_m2",
  "leaders[].lure.down_force_ratio",
  NULL,
};

typedef struct
{
  const char *icon;
  const char *name; /* for a screen reader; a format with the leader's number */
  const char *tooltip;
} Action;

static const Action actions[LB_N_LEADER_ACTIONS] = {
  [LB_LEADER_UP] = { "go-up-symbolic", N_ ("Move leader %zu up the list"),
                     N_ ("Move up the list") },
  [LB_LEADER_DOWN] = { "go-down-symbolic", N_ ("Move leader %zu down the list"),
                       N_ ("Move down the list") },
  [LB_LEADER_DUPLICATE] = { "edit-copy-symbolic", N_ ("Add a leader like leader %zu"),
                            N_ ("Add another like this one") },
  [LB_LEADER_REMOVE] = { "user-trash-symbolic", N_ ("Take leader %zu away"),
                         N_ ("Take this leader away") },
};

struct _LbLeaderCard
{
  GtkWidget parent;
  LbSession *session;
  gsize leader;
  GtkWidget *role; /* "upper leader" */
  GtkWidget *buttons[LB_N_LEADER_ACTIONS];
  GtkWidget *attachment; /* groups */
  GtkWidget *line;
  GtkWidget *lure;
};

G_DEFINE_FINAL_TYPE (LbLeaderCard, lb_leader_card, GTK_TYPE_WIDGET)

static guint acted_signal;

static void
follow (LbLeaderCard *self)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  gsize n = setup->rig.n_leaders;
  g_autofree char *role = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self), self->leader < n);
  if (self->leader >= n)
    return;
  gtk_widget_set_sensitive (self->buttons[LB_LEADER_UP], self->leader > 0);
  gtk_widget_set_sensitive (self->buttons[LB_LEADER_DOWN], self->leader + 1 < n);
  gtk_widget_set_sensitive (self->buttons[LB_LEADER_DUPLICATE], n < LB_MAX_LEADERS);
  role = lb_words_leader (setup, self->leader);
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (self->role)), role) != 0)
    gtk_label_set_text (GTK_LABEL (self->role), role);
}

static LbChange *
make_change (LbLeaderCard *self, LbLeaderAction action, gsize *now)
{
  LbDocument *document = lb_session_get_document (self->session);

  switch (action)
    {
    case LB_LEADER_UP:
      *now = self->leader - 1;
      return lb_change_new_move_leader (document, self->leader, *now);
    case LB_LEADER_DOWN:
      *now = self->leader + 1;
      return lb_change_new_move_leader (document, self->leader, *now);
    case LB_LEADER_DUPLICATE:
      *now = self->leader + 1;
      return lb_change_new_duplicate_leader (document, self->leader);
    default:
      *now = self->leader;
      return lb_change_new_remove_leader (document, self->leader);
    }
}

static void
clicked_cb (LbLeaderCard *self, GtkWidget *button)
{
  LbLeaderAction action = 0;
  gsize now;

  while (action < LB_LEADER_REMOVE && self->buttons[action] != button)
    action++;
  if (lb_session_do (self->session, make_change (self, action, &now)))
    g_signal_emit (self, acted_signal, 0, (guint) action, (guint) now);
}

/* ---- Making ---- */

static void
lb_leader_card_dispose (GObject *object)
{
  LbLeaderCard *self = LB_LEADER_CARD (object);

  lb_dispose_session (&self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (lb_leader_card_parent_class)->dispose (object);
}

static void
lb_leader_card_class_init (LbLeaderCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_leader_card_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbleadercard");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  acted_signal = g_signal_new ("acted", LB_TYPE_LEADER_CARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_UINT);
}

static void
lb_leader_card_init (LbLeaderCard *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "rig-card");
}

static GtkWidget *
make_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
make_button (LbLeaderCard *self, LbLeaderAction action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (actions[action].icon);
  g_autofree char *name = g_strdup_printf (_ (actions[action].name), self->leader + 1);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "small");
  gtk_widget_set_tooltip_text (button, _ (actions[action].tooltip));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked_cb), self);
  return button;
}

static GtkWidget *
make_header (LbLeaderCard *self)
{
  GtkWidget *header = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *names = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *title = g_strdup_printf (_ ("Leader %zu"), self->leader + 1);

  self->role = make_label (NULL, "row-note");
  gtk_box_append (GTK_BOX (names), make_label (title, "part-name"));
  gtk_box_append (GTK_BOX (names), self->role);
  gtk_widget_set_hexpand (names, TRUE);
  gtk_box_append (GTK_BOX (header), names);
  for (LbLeaderAction a = 0; a < LB_N_LEADER_ACTIONS; a++)
    {
      self->buttons[a] = make_button (self, a);
      gtk_widget_set_valign (self->buttons[a], GTK_ALIGN_START);
      gtk_box_append (GTK_BOX (header), self->buttons[a]);
    }
  return header;
}

static void
fill_line (LbLeaderCard *self, LbCatalogueStore *store)
{
  LbRigPlace place = { LB_PLACE_LEADER_LINE, self->leader };
  g_autofree char *name =
      g_strdup_printf (_ ("Leader %zu: more numbers of the line"), self->leader + 1);
  LbRigGroup *group;

  self->line = lb_rig_group_new (self->session, LB_PICK_LEADER, (int) self->leader);
  group = LB_RIG_GROUP (self->line);
  lb_rig_group_append_field (group, "leaders[].length_m", self->leader, NULL);
  lb_rig_group_append (group, lb_part_button_new (self->session, store, place));
  lb_rig_group_append_seldom (group, _ ("More numbers of the line"), name, line_paths,
                              self->leader);
}

static void
fill_lure (LbLeaderCard *self, LbCatalogueStore *store)
{
  LbRigPlace place = { LB_PLACE_LURE, self->leader };
  g_autofree char *numbers =
      g_strdup_printf (_ ("Leader %zu: more numbers of the lure"), self->leader + 1);
  GtkWidget *name = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *entry = lb_text_entry_new_lure_name (self->session, self->leader);
  LbRigGroup *group;

  self->lure = lb_rig_group_new (self->session, LB_PICK_LURE, (int) self->leader);
  group = LB_RIG_GROUP (self->lure);
  lb_rig_group_append (group, lb_part_button_new (self->session, store, place));
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  gtk_widget_set_tooltip_text (entry, _ ("What you call this lure; it stands in the drawing"));
  gtk_box_append (GTK_BOX (name), make_label (_ ("Named"), "plain"));
  gtk_box_append (GTK_BOX (name), entry);
  gtk_widget_add_css_class (name, "name-row");
  lb_rig_group_append (group, name);
  lb_rig_group_append_seldom (group, _ ("More numbers of the lure"), numbers, lure_paths,
                              self->leader);
}

GtkWidget *
lb_leader_card_new (LbSession *session, LbCatalogueStore *store, gsize leader)
{
  LbLeaderCard *self = g_object_new (LB_TYPE_LEADER_CARD, NULL);

  self->session = g_object_ref (session);
  self->leader = leader;
  gtk_widget_set_parent (make_header (self), GTK_WIDGET (self));
  self->attachment = lb_rig_group_new (session, LB_PICK_ATTACHMENT, (int) leader);
  lb_rig_group_append_field (LB_RIG_GROUP (self->attachment), "leaders[].attach_above_weight_m",
                             leader, NULL);
  gtk_widget_set_parent (self->attachment, GTK_WIDGET (self));
  fill_line (self, store);
  gtk_widget_set_parent (self->line, GTK_WIDGET (self));
  fill_lure (self, store);
  gtk_widget_set_parent (self->lure, GTK_WIDGET (self));
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  follow (self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_leader_card_get_button (LbLeaderCard *self, LbLeaderAction action)
{
  g_return_val_if_fail (LB_IS_LEADER_CARD (self), NULL);
  return self->buttons[action];
}

GtkWidget *
lb_leader_card_get_group (LbLeaderCard *self, LbPickKind kind)
{
  g_return_val_if_fail (LB_IS_LEADER_CARD (self), NULL);
  switch (kind)
    {
    case LB_PICK_ATTACHMENT:
      return self->attachment;
    case LB_PICK_LEADER:
      return self->line;
    case LB_PICK_LURE:
      return self->lure;
    default:
      return NULL;
    }
}
