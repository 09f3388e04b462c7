/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "current_section.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "current_chart.h"
#include "dispose.h"
#include "field_row.h"
#include "page_parts.h"

#define CHART_HEIGHT 212

struct _LbCurrentSection
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *known;
  GtkWidget *surface;  /* row */
  GtkWidget *depth;    /* row: where that was, over an uneven bed */
  GtkWidget *drift;    /* LbFloatTimer */
  GtkWidget *measured; /* LbMeasuredSection */
  GtkWidget *law_box;  /* everything about the law, unless measured */
  GtkWidget *law;
  GtkWidget *law_note;
  GtkWidget *along;
  GtkWidget *chart;
  LbKnownFrom unmeasured; /* the choice while the law is not of measured points */
  gboolean following;
};

G_DEFINE_FINAL_TYPE (LbCurrentSection, lb_current_section, GTK_TYPE_WIDGET)

/* In the order they are offered. */
static const LbProfileLaw laws[] = { LB_PROFILE_LOG, LB_PROFILE_POWER, LB_PROFILE_UNIFORM };

static const LbRiver *
river_of (LbCurrentSection *self)
{
  return &lb_document_get_setup (lb_session_get_document (self->session))->river;
}

/* ---- Following the document ---- */

static const char *
note_of (LbProfileLaw law)
{
  switch (law)
    {
    case LB_PROFILE_LOG:
      return _ ("The rougher the bed, the more it holds the lowest water back. The roughness of "
                "each material is an estimate.");
    case LB_PROFILE_POWER:
      return _ ("6 suits most rivers: 5 over a rough bed, 10 over a smooth one.");
    default:
      return _ ("The water is as fast at the bed as at the surface. No river is so; good to "
                "compare with.");
    }
}

static guint
position_of (LbProfileLaw law)
{
  for (guint i = 0; i < G_N_ELEMENTS (laws); i++)
    if (laws[i] == law)
      return i;
  return GTK_INVALID_LIST_POSITION;
}

static void
follow (LbCurrentSection *self)
{
  const LbRiver *river = river_of (self);
  gboolean measured = river->profile.law == LB_PROFILE_POINTS;
  gboolean uneven = river->n_bed_points > 0;
  LbKnownFrom known = measured ? LB_KNOWN_MEASURED : self->unmeasured;

  self->following = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->known), known);
  if (!measured)
    {
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->law), position_of (river->profile.law));
      gtk_label_set_text (GTK_LABEL (self->law_note), note_of (river->profile.law));
    }
  gtk_widget_set_visible (self->surface, known == LB_KNOWN_SURFACE);
  gtk_widget_set_visible (self->drift, known == LB_KNOWN_FLOAT);
  gtk_widget_set_visible (self->measured, measured);
  gtk_widget_set_visible (self->law_box, !measured);
  gtk_widget_set_visible (self->depth, uneven);
  gtk_widget_set_visible (self->along, uneven);
  self->following = FALSE;
}

/* ---- What the user does ---- */

static void
known_cb (LbCurrentSection *self)
{
  guint known = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->known));
  gboolean measured = river_of (self)->profile.law == LB_PROFILE_POINTS;

  if (self->following || known == GTK_INVALID_LIST_POSITION)
    return;
  if (known != LB_KNOWN_MEASURED)
    self->unmeasured = known;
  if (known == LB_KNOWN_MEASURED && !measured)
    lb_measured_section_start (LB_MEASURED_SECTION (self->measured));
  else if (known != LB_KNOWN_MEASURED && measured)
    lb_session_set_value (self->session, lb_field ("river.profile.law"), 0, LB_PROFILE_POWER, 0);
  follow (self);
}

static void
law_cb (LbCurrentSection *self)
{
  guint position = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->law));

  if (self->following || position >= G_N_ELEMENTS (laws))
    return;
  lb_session_set_value (self->session, lb_field ("river.profile.law"), 0, laws[position], 0);
  follow (self);
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
  return lb_current_chart_new (context, picture, style, width, height);
}

static GtkWidget *
make_known (LbCurrentSection *self)
{
  const char *const names[] = {
    [LB_KNOWN_SURFACE] = _ ("Speed at the surface"),
    [LB_KNOWN_FLOAT] = _ ("Time of a drifting float"),
    [LB_KNOWN_MEASURED] = _ ("Speeds at several depths"),
  };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->known = lb_page_choice (names, G_N_ELEMENTS (names), _ ("Known from"));
  g_signal_connect_swapped (self->known, "notify::selected", G_CALLBACK (known_cb), self);
  gtk_box_append (GTK_BOX (box), lb_page_label (_ ("Known from"), NULL));
  gtk_box_append (GTK_BOX (box), self->known);
  return box;
}

static GtkWidget *
make_law (LbCurrentSection *self)
{
  static const char *const paths[] = { "river.profile.exponent", "river.profile.bed_material",
                                       "river.profile.roughness_m" };
  const char *const names[] = {
    _ ("By the bed's material (log law)"),
    _ ("By an exponent (power law)"),
    _ ("Not at all (uniform)"),
  };
  GtkBox *box;

  self->law_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  box = GTK_BOX (self->law_box);
  self->law = lb_page_choice (names, G_N_ELEMENTS (names), _ ("How it slows towards the bed"));
  self->law_note = lb_page_note (NULL);
  g_signal_connect_swapped (self->law, "notify::selected", G_CALLBACK (law_cb), self);
  gtk_box_append (box, lb_page_label (_ ("How it slows towards the bed"), NULL));
  gtk_box_append (box, self->law);
  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++)
    gtk_box_append (box, lb_field_row_new (self->session, lb_field (paths[i]), 0, NULL));
  gtk_box_append (box, self->law_note);
  return self->law_box;
}

/* A row whose name, for a screen reader, is not the field's own: that stands elsewhere too. */
static GtkWidget *
make_row (LbCurrentSection *self, const char *path, const char *label, const char *name)
{
  GtkWidget *row = lb_field_row_new (self->session, lb_field (path), 0, label);

  lb_accessible_name (lb_field_row_get_control (LB_FIELD_ROW (row)), name);
  return lb_page_slot (row);
}

static void
lb_current_section_dispose (GObject *object)
{
  LbCurrentSection *self = LB_CURRENT_SECTION (object);

  if (self->session)
    {
      g_signal_handlers_disconnect_by_data (self->session, self);
      g_signal_handlers_disconnect_by_data (self->known, self);
      g_signal_handlers_disconnect_by_data (self->law, self);
    }
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_current_section_parent_class)->dispose (object);
}

static void
lb_current_section_class_init (LbCurrentSectionClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_current_section_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_current_section_init (LbCurrentSection *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 4);
}

GtkWidget *
lb_current_section_new (LbSession *session)
{
  LbCurrentSection *self = g_object_new (LB_TYPE_CURRENT_SECTION, NULL);
  GtkWidget *children[8];

  self->session = g_object_ref (session);
  children[0] = make_known (self);
  children[1] = self->surface = make_row (self, "river.surface_current_m_s", _ ("At the surface"),
                                          _ ("Current at the surface"));
  children[2] = self->drift = lb_float_timer_new (session);
  children[3] = self->measured = lb_measured_section_new (session);
  children[4] = self->depth = make_row (self, "river.depth_m", _ ("Where the depth is"),
                                        _ ("Depth where the current was measured"));
  children[5] = make_law (self);
  children[6] = self->chart =
      lb_chart_image_new (session, _ ("Speed curve"), CHART_HEIGHT, make_chart, self);
  children[7] = self->along =
      lb_page_slot (lb_field_row_new (session, lb_field ("river.along"), 0, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_widget_set_parent (children[i], GTK_WIDGET (self));
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  follow (self);
  return GTK_WIDGET (self);
}

GtkDropDown *
lb_current_section_get_known (LbCurrentSection *self)
{
  g_return_val_if_fail (LB_IS_CURRENT_SECTION (self), NULL);
  return GTK_DROP_DOWN (self->known);
}

GtkDropDown *
lb_current_section_get_law (LbCurrentSection *self)
{
  g_return_val_if_fail (LB_IS_CURRENT_SECTION (self), NULL);
  return GTK_DROP_DOWN (self->law);
}

LbFloatTimer *
lb_current_section_get_float (LbCurrentSection *self)
{
  g_return_val_if_fail (LB_IS_CURRENT_SECTION (self), NULL);
  return LB_FLOAT_TIMER (self->drift);
}

LbMeasuredSection *
lb_current_section_get_measured (LbCurrentSection *self)
{
  g_return_val_if_fail (LB_IS_CURRENT_SECTION (self), NULL);
  return LB_MEASURED_SECTION (self->measured);
}

LbChartImage *
lb_current_section_get_chart (LbCurrentSection *self)
{
  g_return_val_if_fail (LB_IS_CURRENT_SECTION (self), NULL);
  return LB_CHART_IMAGE (self->chart);
}
