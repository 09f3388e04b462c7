/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "measured_section.h"

#include <glib/gi18n.h>

#include "current.h"
#include "dispose.h"
#include "measured_points.h"
#include "page_parts.h"

#define LEAST_POINTS 2

/* Shares of the depth below the surface at which the current is usually gauged (ISO 748, from
 * memory), with the surface and a place close to the bed. */
static const double usual[] = { 0, 0.2, 0.6, 0.8, 0.95 };

struct _LbMeasuredSection
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *choice; /* depths or heights */
  GtkWidget *table;
  GtkWidget *add;
  GtkWidget *fault;
  LbMeasuredPoints points; /* as typed; not always what the document has */
};

G_DEFINE_FINAL_TYPE (LbMeasuredSection, lb_measured_section, GTK_TYPE_WIDGET)

static const LbRiver *
river_of (LbMeasuredSection *self)
{
  return &lb_document_get_setup (lb_session_get_document (self->session))->river;
}

static gboolean
by_height (LbMeasuredSection *self)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice)) == 1;
}

/* Depth to height off the bed, and back. */
static double
turned (LbMeasuredSection *self, double value)
{
  return by_height (self) ? value : river_of (self)->depth - value;
}

/* ---- Showing ---- */

static void
show_points (LbMeasuredSection *self)
{
  LbPointTable *table = LB_POINT_TABLE (self->table);
  double depth = river_of (self)->depth;
  double fastest = lb_field ("river.surface_current_m_s")->maximum;

  for (guint i = 0; i < self->points.n; i++)
    {
      lb_point_table_set_value (table, i, 0, turned (self, self->points.height[i]), 0, depth);
      lb_point_table_set_value (table, i, 1, self->points.speed[i], 0, fastest);
    }
}

static void
show_fault (LbMeasuredSection *self)
{
  LbWording wording = lb_session_get_wording (self->session);
  g_autofree char *fault = lb_measured_points_explain (&self->points, river_of (self), &wording);

  lb_page_show_fault (self->fault, fault);
}

static void
show (LbMeasuredSection *self)
{
  lb_point_table_set_count (LB_POINT_TABLE (self->table), (guint) self->points.n, LEAST_POINTS);
  gtk_widget_set_sensitive (self->add, self->points.n < LB_MAX_PROFILE_POINTS);
  show_points (self);
  show_fault (self);
}

/* What was typed stays in its order as long as it is what the document has. */
static void
follow (LbMeasuredSection *self)
{
  const LbRiver *river = river_of (self);

  if (river->profile.law == LB_PROFILE_POINTS && !lb_measured_points_are (&self->points, river))
    lb_measured_points_read (&self->points, river);
  if (gtk_widget_get_visible (GTK_WIDGET (self)))
    show (self);
}

/* ---- What the user does ---- */

static void
use (LbMeasuredSection *self, guint gesture)
{
  LbDocument *document = lb_session_get_document (self->session);
  LbChange *change = lb_measured_points_change (&self->points, document);

  lb_change_set_gesture (change, gesture);
  lb_session_do (self->session, change);
  show (self);
}

static void
entered_cb (LbMeasuredSection *self, guint point, guint column, double value, guint gesture)
{
  if (point >= self->points.n)
    return;
  if (column == 0)
    self->points.height[point] = turned (self, value);
  else
    self->points.speed[point] = value;
  use (self, gesture);
}

static void
remove_cb (LbMeasuredSection *self, guint point)
{
  lb_measured_points_remove (&self->points, point);
  use (self, 0);
}

static void
add_cb (LbMeasuredSection *self)
{
  if (!lb_measured_points_add (&self->points))
    return;
  show (self);
  lb_point_table_focus (LB_POINT_TABLE (self->table), (guint) self->points.n - 1);
}

static void
turned_cb (LbMeasuredSection *self)
{
  lb_point_table_set_heading (LB_POINT_TABLE (self->table), 0,
                              by_height (self) ? _ ("Off the bed") : _ ("Depth"));
  show (self);
}

/* ---- Making ---- */

static GtkWidget *
make_choice (LbMeasuredSection *self)
{
  const char *const names[] = { _ ("Depths below the surface"), _ ("Heights off the bed") };

  self->choice = lb_page_choice (names, G_N_ELEMENTS (names), _ ("What is measured"));
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (turned_cb), self);
  return self->choice;
}

static void
lb_measured_section_dispose (GObject *object)
{
  LbMeasuredSection *self = LB_MEASURED_SECTION (object);

  if (self->session)
    {
      g_signal_handlers_disconnect_by_data (self->session, self);
      g_signal_handlers_disconnect_by_data (self->table, self);
      g_signal_handlers_disconnect_by_data (self->choice, self);
    }
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_measured_section_parent_class)->dispose (object);
}

static void
lb_measured_section_class_init (LbMeasuredSectionClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_measured_section_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_measured_section_init (LbMeasuredSection *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 4);
}

GtkWidget *
lb_measured_section_new (LbSession *session)
{
  LbMeasuredSection *self = g_object_new (LB_TYPE_MEASURED_SECTION, NULL);
  const LbPointColumn columns[] = {
    { _ ("Depth"), LB_QUANTITY_LENGTH },
    { _ ("Current"), LB_QUANTITY_SPEED },
  };

  self->session = g_object_ref (session);
  gtk_widget_set_parent (make_choice (self), GTK_WIDGET (self));
  self->table = lb_point_table_new (session, columns);
  gtk_widget_set_parent (self->table, GTK_WIDGET (self));
  self->fault = lb_page_fault ();
  gtk_widget_set_parent (self->fault, GTK_WIDGET (self));
  self->add = gtk_button_new_with_label (_ ("Add a measured speed"));
  gtk_widget_set_parent (self->add, GTK_WIDGET (self));
  gtk_widget_set_parent (
      lb_page_note (_ ("The surface is taken to run as fast as the uppermost point, and the bed as "
                       "the lowest.")),
      GTK_WIDGET (self));
  g_signal_connect_swapped (self->table, "entered", G_CALLBACK (entered_cb), self);
  g_signal_connect_swapped (self->table, "remove", G_CALLBACK (remove_cb), self);
  g_signal_connect_swapped (self->table, "paged", G_CALLBACK (show_points), self);
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (add_cb), self);
  g_signal_connect (self, "notify::visible", G_CALLBACK (follow), NULL);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (show_fault), self);
  follow (self);
  return GTK_WIDGET (self);
}

void
lb_measured_section_start (LbMeasuredSection *self)
{
  LbRiver river;
  LbCurrent current;

  g_return_if_fail (LB_IS_MEASURED_SECTION (self));
  river = *river_of (self);
  river.n_bed_points = 0;
  lb_current_init (&current, &river);
  self->points.n = G_N_ELEMENTS (usual);
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
    {
      self->points.height[i] = river.depth * (1 - usual[i]);
      self->points.speed[i] = lb_current_at (&current, 0, -river.depth * usual[i]).speed;
    }
  use (self, 0);
}

LbPointTable *
lb_measured_section_get_table (LbMeasuredSection *self)
{
  g_return_val_if_fail (LB_IS_MEASURED_SECTION (self), NULL);
  return LB_POINT_TABLE (self->table);
}

GtkDropDown *
lb_measured_section_get_choice (LbMeasuredSection *self)
{
  g_return_val_if_fail (LB_IS_MEASURED_SECTION (self), NULL);
  return GTK_DROP_DOWN (self->choice);
}

GtkWidget *
lb_measured_section_get_add_button (LbMeasuredSection *self)
{
  g_return_val_if_fail (LB_IS_MEASURED_SECTION (self), NULL);
  return self->add;
}

const char *
lb_measured_section_get_fault (LbMeasuredSection *self)
{
  const char *typed;

  g_return_val_if_fail (LB_IS_MEASURED_SECTION (self), NULL);
  typed = lb_point_table_get_fault (LB_POINT_TABLE (self->table));
  if (typed)
    return typed;
  return gtk_widget_get_visible (self->fault) ? gtk_label_get_text (GTK_LABEL (self->fault)) : NULL;
}
