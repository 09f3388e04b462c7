/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_snag_page.h"

#include <glib/gi18n.h>

#include "chart_image.h"
#include "dispose.h"
#include "lure_choice.h"
#include "page_parts.h"
#include "snag_chart.h"
#include "snag_words.h"

#define CHART_HEIGHT 216

struct _LbPassSnagPage
{
  GtkBox parent;
  LbSession *session;
  GtkWidget *held;
  GtkWidget *boat;
  GtkWidget *sentence;
  GtkWidget *chart;
  GtkWidget *table; /* box */
  LbReadingsTable *shown;
  LbSnagPicture picture;
};

G_DEFINE_FINAL_TYPE (LbPassSnagPage, lb_pass_snag_page, GTK_TYPE_BOX)

/* ---- Following the answers ---- */

static void
show (LbPassSnagPage *self, const LbResult *result)
{
  LbWording wording = lb_session_get_wording (self->session);
  guint stopped = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->boat)) == 1;
  size_t lure = (size_t) (lb_lure_choice_get (self->held) + 1);
  LbHangUp cases[LB_SNAG_CURVES] = { lb_hang_up (result, lure, false),
                                     lb_hang_up (result, lure, true) };
  g_autofree char *sentence = lb_snag_words_sentence (result, &cases[stopped], &wording);

  self->picture =
      (LbSnagPicture){ .snag = cases[0].snag, .limit = LB_HAND_LIMIT, .chosen = (int) stopped };
  for (int i = 0; i < LB_SNAG_CURVES; i++)
    {
      self->picture.speed[i] = cases[i].speed;
      self->picture.times[i] = cases[i].times;
    }
  gtk_label_set_text (GTK_LABEL (self->sentence), sentence);
  g_clear_pointer (&self->shown, lb_readings_table_free);
  self->shown = lb_snag_words_table (result, &cases[stopped], &wording);
  lb_page_show_table (self->table, self->shown);
  lb_chart_image_outdate (LB_CHART_IMAGE (self->chart));
}

static void
update (LbPassSnagPage *self)
{
  LbResult *result = lb_session_get_result (self->session);
  gboolean known = result && !lb_result_get_failed (result);

  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  gtk_widget_set_visible (self->chart, known);
  gtk_widget_set_visible (self->table, known);
  if (!known)
    {
      gtk_label_set_text (GTK_LABEL (self->sentence), _ ("The rig has no answer as it is."));
      return;
    }
  lb_lure_choice_update (self->held, lb_result_get_setup (result));
  show (self, result);
}

static LbScene *
make_chart (LbDrawContext *context,
            const LbPicture *picture,
            const LbStyle *style,
            double width,
            double height,
            gpointer data)
{
  return lb_snag_chart_new (context, picture, &LB_PASS_SNAG_PAGE (data)->picture, style, width,
                            height);
}

/* ---- The widget ---- */

static void
lb_pass_snag_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (lb_pass_snag_page_parent_class)->map (widget);
  update (LB_PASS_SNAG_PAGE (widget));
}

static void
lb_pass_snag_page_dispose (GObject *object)
{
  LbPassSnagPage *self = LB_PASS_SNAG_PAGE (object);

  lb_dispose_session (&self->session, self);
  g_clear_pointer (&self->shown, lb_readings_table_free);
  G_OBJECT_CLASS (lb_pass_snag_page_parent_class)->dispose (object);
}

static void
lb_pass_snag_page_class_init (LbPassSnagPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pass_snag_page_dispose;
  widget_class->map = lb_pass_snag_page_map;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_pass_snag_page_init (LbPassSnagPage *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-section");
}

static void
add_choices (LbPassSnagPage *self)
{
  const char *const boats[LB_SNAG_CURVES] = { _ ("goes on, motor on"),
                                              _ ("drifts, motor stopped") };

  self->held = lb_lure_choice_new (_ ("weight"), _ ("What hangs up"));
  self->boat = lb_page_choice (boats, LB_SNAG_CURVES, _ ("What the boat does"));
  g_signal_connect_swapped (self->held, "notify::selected", G_CALLBACK (update), self);
  g_signal_connect_swapped (self->boat, "notify::selected", G_CALLBACK (update), self);
  gtk_box_append (GTK_BOX (self), lb_page_row (_ ("It hangs up"), self->held));
  gtk_box_append (GTK_BOX (self), lb_page_row (_ ("The boat"), self->boat));
}

GtkWidget *
lb_pass_snag_page_new (LbSession *session)
{
  LbPassSnagPage *self = g_object_new (LB_TYPE_PASS_SNAG_PAGE, NULL);
  GtkBox *box = GTK_BOX (self);

  self->session = g_object_ref (session);
  gtk_box_append (box, lb_page_heading (_ ("If it hung up now")));
  add_choices (self);
  self->sentence = lb_page_label (NULL, NULL);
  gtk_box_append (box, self->sentence);
  self->chart = lb_chart_image_new (session, _ ("Pull in the hand after it hung up"), CHART_HEIGHT,
                                    make_chart, self);
  gtk_box_append (box, self->chart);
  self->table = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_add_css_class (self->table, "card-section");
  gtk_box_append (box, self->table);
  gtk_box_append (box, lb_page_caution (_ ("Let go, or cut. Never wrap wire or leader round a "
                                           "hand or finger.")));
  gtk_box_append (
      box, lb_page_note (_ ("An estimate, from the rig as it runs with these settings, with a hand "
                            "that gives no line and a bed that does not yield: the blow when it "
                            "stops dead comes on top. The hand limit is what the car industry’s "
                            "ergonomics allow for a first pull "
                            "with two hands (tables behind it: Snook and Ciriello 1991).")));
  g_signal_connect_swapped (session, "solved", G_CALLBACK (update), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (update), self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_pass_snag_page_get_held (LbPassSnagPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_SNAG_PAGE (self), NULL);
  return self->held;
}

GtkWidget *
lb_pass_snag_page_get_boat (LbPassSnagPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_SNAG_PAGE (self), NULL);
  return self->boat;
}

char *
lb_pass_snag_page_dup_text (LbPassSnagPage *self)
{
  GString *text;
  g_autofree char *chart = NULL;

  g_return_val_if_fail (LB_IS_PASS_SNAG_PAGE (self), NULL);
  chart = lb_chart_image_describe (LB_CHART_IMAGE (self->chart));
  text = g_string_new (gtk_label_get_text (GTK_LABEL (self->sentence)));
  lb_page_table_text (text, self->shown);
  g_string_append_printf (text, "\n%s", chart);
  return g_string_free (text, FALSE);
}
