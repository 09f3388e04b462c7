/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bed_section.h"

#include <glib/gi18n.h>
#include <string.h>

#include "accessible.h"
#include "bed_preview.h"
#include "dispose.h"
#include "field_row.h"
#include "page_parts.h"
#include "rig_group.h"

#define CHART_HEIGHT 184
#define LEAST_POINTS 2 /* as a file must have */

/* The last bed of points, for those who only look what an even one would do. */
typedef struct
{
  gsize n;
  double x[LB_MAX_BED_POINTS], depth[LB_MAX_BED_POINTS];
} Points;

struct _LbBedSection
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *even, *profile; /* the switch */
  GtkWidget *even_box, *profile_box;
  GtkWidget *depth;
  GtkWidget *chart;
  GtkWidget *table;
  GtkWidget *add;
  LbDocument *document; /* that the kept points are of; only compared */
  Points kept;
  gboolean following;
};

G_DEFINE_FINAL_TYPE (LbBedSection, lb_bed_section, GTK_TYPE_WIDGET)

static LbDocument *
document_of (LbBedSection *self)
{
  return lb_session_get_document (self->session);
}

static const LbRiver *
river_of (LbBedSection *self)
{
  return &lb_document_get_setup (document_of (self))->river;
}

static int
selected_point (LbBedSection *self)
{
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  return kind == LB_PICK_BED_POINT ? index : -1;
}

/* ---- Following the document ---- */

/* A point stays between its neighbours. */
static void
show_point (LbBedSection *self, guint i)
{
  const LbRiver *river = river_of (self);
  const LbField *place = lb_field ("boat.position_m"), *depth = lb_field ("river.depth_m");
  double low = i > 0 ? river->bed_x[i - 1] + LB_BED_LEAST_SPACING : place->minimum;
  double high =
      i + 1 < river->n_bed_points ? river->bed_x[i + 1] - LB_BED_LEAST_SPACING : place->maximum;
  LbPointTable *table = LB_POINT_TABLE (self->table);

  lb_point_table_set_value (table, i, 0, river->bed_x[i], MIN (low, river->bed_x[i]),
                            MAX (high, river->bed_x[i]));
  lb_point_table_set_value (table, i, 1, river->bed_depth[i], depth->minimum, depth->maximum);
}

static void
show_points (LbBedSection *self)
{
  LbPointTable *table = LB_POINT_TABLE (self->table);
  guint first = lb_point_table_get_first (table);

  for (guint i = first; i < first + lb_point_table_get_shown (table); i++)
    show_point (self, i);
}

static void
keep_points (LbBedSection *self)
{
  const LbRiver *river = river_of (self);

  if (self->document != document_of (self))
    self->kept.n = 0;
  self->document = document_of (self);
  if (river->n_bed_points == 0)
    return;
  self->kept.n = river->n_bed_points;
  memcpy (self->kept.x, river->bed_x, river->n_bed_points * sizeof *river->bed_x);
  memcpy (self->kept.depth, river->bed_depth, river->n_bed_points * sizeof *river->bed_depth);
}

static void
follow (LbBedSection *self)
{
  const LbRiver *river = river_of (self);
  gboolean uneven = river->n_bed_points > 0;

  self->following = TRUE;
  keep_points (self);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (uneven ? self->profile : self->even), TRUE);
  gtk_widget_set_visible (self->even_box, !uneven);
  gtk_widget_set_visible (self->profile_box, uneven);
  gtk_widget_set_sensitive (self->add, river->n_bed_points < LB_MAX_BED_POINTS);
  lb_point_table_set_count (LB_POINT_TABLE (self->table), (guint) river->n_bed_points,
                            LEAST_POINTS);
  show_points (self);
  self->following = FALSE;
}

static void
selected_cb (LbBedSection *self)
{
  lb_point_table_select (LB_POINT_TABLE (self->table), selected_point (self));
  lb_chart_image_outdate (LB_CHART_IMAGE (self->chart));
}

/* ---- What the user does ---- */

static void
switched_cb (LbBedSection *self)
{
  gboolean uneven = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->profile));
  LbChange *change;

  if (self->following || uneven == (river_of (self)->n_bed_points > 0))
    return;
  if (!uneven)
    change = lb_change_new_bed (NULL, NULL, 0, _ ("Make the bed even"));
  else if (self->kept.n > 0)
    change = lb_change_new_bed (self->kept.x, self->kept.depth, self->kept.n,
                                _ ("Make the bed of points"));
  else
    change = lb_change_new_bed_from_plane (document_of (self));
  lb_session_do (self->session, change);
  follow (self);
}

static void
entered_cb (LbBedSection *self, guint point, guint column, double value, guint gesture)
{
  const LbRiver *river = river_of (self);
  LbChange *change;

  if (point >= river->n_bed_points)
    return;
  change = lb_change_new_move_bed_point (document_of (self), point,
                                         column == 0 ? value : river->bed_x[point],
                                         column == 1 ? value : river->bed_depth[point]);
  lb_change_set_gesture (change, gesture);
  lb_session_do (self->session, change);
  follow (self);
}

static void
remove_cb (LbBedSection *self, guint point)
{
  lb_session_do (self->session, lb_change_new_remove_bed_point (document_of (self), point));
  follow (self);
}

static void
picked_cb (LbBedSection *self, guint point)
{
  lb_session_select (self->session, LB_PICK_BED_POINT, (int) point);
}

/* Half way to the next one; downstream of the last one as far again as the one before. */
static double
place_of_new (const LbRiver *river, int selected)
{
  size_t n = river->n_bed_points, last = n - 1;

  if (selected >= 0 && (size_t) selected < last)
    return (river->bed_x[selected] + river->bed_x[selected + 1]) / 2;
  return river->bed_x[last] + (n > 1 ? river->bed_x[last] - river->bed_x[last - 1] : 10);
}

static void
add_cb (LbBedSection *self)
{
  const LbRiver *river = river_of (self);
  size_t index = 0;
  double x;

  if (river->n_bed_points == 0)
    return;
  x = place_of_new (river, selected_point (self));
  if (!lb_session_do (self->session,
                      lb_change_new_add_bed_point (document_of (self), x, LB_UNSET, &index)))
    return;
  follow (self);
  lb_point_table_focus (LB_POINT_TABLE (self->table), (guint) index);
}

/* A click on the picture selects the point next to it. */
static void
chart_picked_cb (LbBedSection *self, double x)
{
  const LbRiver *river = river_of (self);
  size_t nearest = 0;

  if (river->n_bed_points == 0)
    return;
  for (size_t i = 1; i < river->n_bed_points; i++)
    if (fabs (river->bed_x[i] - x) < fabs (river->bed_x[nearest] - x))
      nearest = i;
  lb_session_select (self->session, LB_PICK_BED_POINT, (int) nearest);
}

/* ---- Making ---- */

static LbScene *
make_chart (LbDrawContext *context,
            const LbPicture *picture,
            const LbStyle *style,
            double width,
            double height,
            gpointer data)
{
  LbBedPreview preview = { .selected = selected_point (data), .show_reel = true };

  return lb_bed_preview_new (context, picture, &preview, style, width, height);
}

static GtkWidget *
make_switch (LbBedSection *self)
{
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "homogeneous", TRUE, "accessible-role",
                                 GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  self->even = gtk_toggle_button_new_with_label (_ ("One depth"));
  self->profile = gtk_toggle_button_new_with_label (_ ("Bed of points"));
  gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (self->profile), GTK_TOGGLE_BUTTON (self->even));
  gtk_widget_set_tooltip_text (self->even, _ ("The same depth all along the river"));
  gtk_widget_set_tooltip_text (
      self->profile, _ ("A depth at each of several places, to be dragged in the drawing too"));
  gtk_widget_add_css_class (box, "linked");
  gtk_widget_add_css_class (box, "page-switch");
  gtk_box_append (GTK_BOX (box), self->even);
  gtk_box_append (GTK_BOX (box), self->profile);
  lb_accessible_name (box, _ ("Bed"));
  g_signal_connect_swapped (self->profile, "toggled", G_CALLBACK (switched_cb), self);
  return box;
}

static void
make_profile (LbBedSection *self)
{
  const LbPointColumn columns[] = {
    { _ ("Downstream"), LB_QUANTITY_LENGTH },
    { _ ("Depth"), LB_QUANTITY_LENGTH },
  };
  GtkBox *box;

  self->profile_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  box = GTK_BOX (self->profile_box);
  self->chart =
      lb_chart_image_new (self->session, _ ("The whole bed"), CHART_HEIGHT, make_chart, self);
  self->table = lb_point_table_new (self->session, columns);
  self->add = gtk_button_new_with_label (_ ("Add a point"));
  gtk_widget_set_tooltip_text (self->add, _ ("After the selected point, or after the last one"));
  gtk_box_append (
      box, lb_field_row_new (self->session, lb_field ("boat.position_m"), 0, _ ("Reel is at")));
  gtk_box_append (box, self->chart);
  gtk_box_append (box, self->table);
  gtk_box_append (box, self->add);
  g_signal_connect_swapped (self->chart, "picked", G_CALLBACK (chart_picked_cb), self);
  g_signal_connect_swapped (self->table, "entered", G_CALLBACK (entered_cb), self);
  g_signal_connect_swapped (self->table, "remove", G_CALLBACK (remove_cb), self);
  g_signal_connect_swapped (self->table, "picked", G_CALLBACK (picked_cb), self);
  g_signal_connect_swapped (self->table, "paged", G_CALLBACK (show_points), self);
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (add_cb), self);
}

static void
lb_bed_section_dispose (GObject *object)
{
  LbBedSection *self = LB_BED_SECTION (object);

  if (self->session)
    {
      g_signal_handlers_disconnect_by_data (self->session, self);
      g_signal_handlers_disconnect_by_data (self->table, self);
      g_signal_handlers_disconnect_by_data (self->profile, self);
    }
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_bed_section_parent_class)->dispose (object);
}

static void
lb_bed_section_class_init (LbBedSectionClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_bed_section_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_bed_section_init (LbBedSection *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
lb_bed_section_new (LbSession *session)
{
  LbBedSection *self = g_object_new (LB_TYPE_BED_SECTION, NULL);

  self->session = g_object_ref (session);
  gtk_widget_set_parent (make_switch (self), GTK_WIDGET (self));
  self->even_box = lb_rig_group_new (session, LB_PICK_BED, 0);
  self->depth = lb_rig_group_append_field (LB_RIG_GROUP (self->even_box), "river.depth_m", 0, NULL);
  gtk_widget_set_parent (self->even_box, GTK_WIDGET (self));
  make_profile (self);
  gtk_widget_set_parent (self->profile_box, GTK_WIDGET (self));
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  g_signal_connect_swapped (session, "selected", G_CALLBACK (selected_cb), self);
  follow (self);
  selected_cb (self);
  return GTK_WIDGET (self);
}

GtkToggleButton *
lb_bed_section_get_even_button (LbBedSection *self)
{
  g_return_val_if_fail (LB_IS_BED_SECTION (self), NULL);
  return GTK_TOGGLE_BUTTON (self->even);
}

GtkToggleButton *
lb_bed_section_get_profile_button (LbBedSection *self)
{
  g_return_val_if_fail (LB_IS_BED_SECTION (self), NULL);
  return GTK_TOGGLE_BUTTON (self->profile);
}

LbPointTable *
lb_bed_section_get_table (LbBedSection *self)
{
  g_return_val_if_fail (LB_IS_BED_SECTION (self), NULL);
  return LB_POINT_TABLE (self->table);
}

GtkWidget *
lb_bed_section_get_add_button (LbBedSection *self)
{
  g_return_val_if_fail (LB_IS_BED_SECTION (self), NULL);
  return self->add;
}

LbChartImage *
lb_bed_section_get_chart (LbBedSection *self)
{
  g_return_val_if_fail (LB_IS_BED_SECTION (self), NULL);
  return LB_CHART_IMAGE (self->chart);
}

void
lb_bed_section_focus (LbBedSection *self, int point)
{
  g_return_if_fail (LB_IS_BED_SECTION (self));
  if (river_of (self)->n_bed_points == 0)
    gtk_widget_grab_focus (self->depth);
  else
    lb_point_table_focus (LB_POINT_TABLE (self->table), (guint) MAX (point, 0));
}
