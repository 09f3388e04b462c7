/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "river_page.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "field_row.h"
#include "page_parts.h"
#include "presets_button.h"
#include "readings_table.h"
#include "rig_group.h"

struct _LbRiverPage
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *scroller;
  GtkWidget *sections; /* box */
  GtkWidget *bed;      /* NULL until the page is filled */
  GtkWidget *current;
  GtkWidget *current_card;
  GtkWidget *presets;
  GtkWidget *import;
  GtkWidget *caution_row;
  GtkWidget *caution;
  guint scroll_id;
};

G_DEFINE_FINAL_TYPE (LbRiverPage, lb_river_page, GTK_TYPE_WIDGET)

static const LbSetup *
setup_of (LbRiverPage *self)
{
  return lb_document_get_setup (lb_session_get_document (self->session));
}

/* ---- Cold water ---- */

static void
follow (LbRiverPage *self)
{
  LbWording wording = lb_session_get_wording (self->session);
  g_autofree char *text = lb_caution_cold_water (setup_of (self)->river.temperature, &wording);

  gtk_label_set_text (GTK_LABEL (self->caution), text ? text : "");
  gtk_widget_set_visible (self->caution_row, text != NULL);
}

static GtkWidget *
make_caution (LbRiverPage *self)
{
  self->caution_row = lb_page_caution (NULL);
  self->caution = gtk_widget_get_last_child (self->caution_row);
  return self->caution_row;
}

/* ---- Scrolling to what is selected ---- */

/* What of the page is about that part; NULL: nothing. */
static GtkWidget *
widget_of (LbRiverPage *self, LbPickKind kind, int index)
{
  LbPointTable *table;

  switch (kind)
    {
    case LB_PICK_BED:
      return self->bed;
    case LB_PICK_BED_POINT:
      table = lb_bed_section_get_table (LB_BED_SECTION (self->bed));
      return lb_point_table_get_entry (table, (guint) MAX (index, 0), 0);
    case LB_PICK_CURRENT:
    case LB_PICK_SURFACE:
      return self->current_card;
    default:
      return NULL;
    }
}

static gboolean
scroll_cb (gpointer user_data)
{
  LbRiverPage *self = user_data;
  GtkWidget *widget;
  LbPickKind kind;
  int index;

  self->scroll_id = 0;
  lb_session_get_selected (self->session, &kind, &index);
  widget = widget_of (self, kind, index);
  if (widget)
    lb_page_scroll_to (GTK_SCROLLED_WINDOW (self->scroller), self->sections, widget);
  return G_SOURCE_REMOVE;
}

/* After the layout that an edit may have called for. */
static void
selected_cb (LbRiverPage *self)
{
  if (self->bed && !self->scroll_id && gtk_widget_get_mapped (GTK_WIDGET (self)))
    self->scroll_id = g_idle_add_full (GDK_PRIORITY_REDRAW + 10, scroll_cb, self, NULL);
}

/* ---- Filling ---- */

static void
add (LbRiverPage *self, GtkWidget *child)
{
  gtk_box_append (GTK_BOX (self->sections), child);
}

static GtkWidget *
add_card (LbRiverPage *self, const char *heading, LbPickKind kind)
{
  GtkWidget *card = lb_rig_group_new (self->session, kind, 0);

  gtk_widget_add_css_class (card, "rig-card");
  add (self, lb_page_heading (heading));
  add (self, card);
  return card;
}

static void
add_start (LbRiverPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->presets = lb_presets_button_new (self->session);
  self->import = gtk_button_new_with_label (_ ("Import a log…"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->import), "win.import-log");
  gtk_widget_set_tooltip_text (
      self->import,
      _ ("The bed from a sounder or GPS log: NMEA 0183, GPX, or a table of numbers (Ctrl+I)"));
  gtk_widget_add_css_class (box, "page-start");
  gtk_box_append (GTK_BOX (box), self->presets);
  gtk_box_append (GTK_BOX (box), self->import);
  add (self, box);
}

static void
add_water (LbRiverPage *self)
{
  static const char *const seldom[] = { "river.bed_friction", "river.density_kg_m3",
                                        "river.kinematic_viscosity_m2_s", "river.gravity_m_s2",
                                        NULL };
  GtkWidget *card = add_card (self, _ ("Water"), LB_PICK_NOTHING);

  lb_rig_group_append_field (LB_RIG_GROUP (card), "river.temperature_c", 0, NULL);
  lb_rig_group_append (LB_RIG_GROUP (card), make_caution (self));
  lb_rig_group_append_seldom (LB_RIG_GROUP (card), _ ("Seldom changed"),
                              _ ("Water: seldom changed"), seldom, 0);
}

static void
fill (LbRiverPage *self)
{
  add_start (self);
  self->bed = lb_bed_section_new (self->session);
  lb_rig_group_append (LB_RIG_GROUP (add_card (self, _ ("Bed"), LB_PICK_NOTHING)), self->bed);
  self->current = lb_current_section_new (self->session);
  self->current_card = add_card (self, _ ("Current"), LB_PICK_CURRENT);
  lb_rig_group_append (LB_RIG_GROUP (self->current_card), self->current);
  add_water (self);
  g_signal_connect_swapped (self->session, "edited", G_CALLBACK (follow), self);
  g_signal_connect_swapped (self->session, "reworded", G_CALLBACK (follow), self);
  follow (self);
}

static void
lb_river_page_map (GtkWidget *widget)
{
  LbRiverPage *self = LB_RIVER_PAGE (widget);

  if (!self->bed)
    fill (self);
  GTK_WIDGET_CLASS (lb_river_page_parent_class)->map (widget);
  selected_cb (self);
}

/* ---- Making ---- */

static void
lb_river_page_dispose (GObject *object)
{
  LbRiverPage *self = LB_RIVER_PAGE (object);

  g_clear_handle_id (&self->scroll_id, g_source_remove);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_river_page_parent_class)->dispose (object);
}

static void
lb_river_page_class_init (LbRiverPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_river_page_dispose;
  widget_class->map = lb_river_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lbriverpage");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_river_page_init (LbRiverPage *self)
{
  self->scroller = lb_page_scroller (_ ("River"), &self->sections);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
  /* Nothing on the page takes width from the drawings. */
  gtk_widget_set_hexpand (GTK_WIDGET (self), FALSE);
}

GtkWidget *
lb_river_page_new (LbSession *session)
{
  LbRiverPage *self = g_object_new (LB_TYPE_RIVER_PAGE, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "selected", G_CALLBACK (selected_cb), self);
  return GTK_WIDGET (self);
}

/* ---- Parts ---- */

gboolean
lb_river_page_has_part (LbRiverPage *self, LbPickKind kind, int index)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), FALSE);
  switch (kind)
    {
    case LB_PICK_BED:
    case LB_PICK_CURRENT:
    case LB_PICK_SURFACE:
      return TRUE;
    case LB_PICK_BED_POINT:
      return index >= 0 && (size_t) index < setup_of (self)->river.n_bed_points;
    default:
      return FALSE;
    }
}

gboolean
lb_river_page_open_part (LbRiverPage *self, LbPickKind kind, int index)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), FALSE);
  if (!lb_river_page_has_part (self, kind, index))
    return FALSE;
  if (!self->bed)
    fill (self);
  if (kind == LB_PICK_BED || kind == LB_PICK_BED_POINT)
    lb_bed_section_focus (LB_BED_SECTION (self->bed), kind == LB_PICK_BED_POINT ? index : -1);
  else
    gtk_widget_child_focus (self->current, GTK_DIR_TAB_FORWARD);
  return TRUE;
}

LbBedSection *
lb_river_page_get_bed (LbRiverPage *self)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), NULL);
  return self->bed ? LB_BED_SECTION (self->bed) : NULL;
}

LbCurrentSection *
lb_river_page_get_current (LbRiverPage *self)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), NULL);
  return self->current ? LB_CURRENT_SECTION (self->current) : NULL;
}

GtkWidget *
lb_river_page_get_presets_button (LbRiverPage *self)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), NULL);
  return self->presets;
}

GtkWidget *
lb_river_page_get_import_button (LbRiverPage *self)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), NULL);
  return self->import;
}

const char *
lb_river_page_get_caution (LbRiverPage *self)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), NULL);
  return self->caution_row && gtk_widget_get_visible (self->caution_row)
             ? gtk_label_get_text (GTK_LABEL (self->caution))
             : NULL;
}

GtkAdjustment *
lb_river_page_get_adjustment (LbRiverPage *self)
{
  g_return_val_if_fail (LB_IS_RIVER_PAGE (self), NULL);
  return gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
}
