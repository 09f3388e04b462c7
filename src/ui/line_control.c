/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "line_control.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "words.h"

struct _LbLineControl
{
  GtkWidget parent;
  LbSession *session;
  GtkWidget *choice;
  GtkWidget *stack;
  GtkWidget *slider;
  GtkWidget *answer; /* the line out, where it follows from the weight touching */
  int mode;          /* LbLineOutMode shown; -1: none yet */
  gboolean following;
};

G_DEFINE_FINAL_TYPE (LbLineControl, lb_line_control, GTK_TYPE_WIDGET)

static LbLineOut
line_out_of (LbLineControl *self)
{
  return lb_document_get_setup (lb_session_get_document (self->session))->rig.line_out;
}

static void
show_mode (LbLineControl *self, LbLineOutMode mode)
{
  LbSlider *slider = LB_SLIDER (self->slider);

  if (mode == LB_LINE_OUT_GIVEN)
    {
      lb_slider_set_accessible_name (slider, _ ("Line out"));
      lb_slider_set_field (slider, lb_field ("mainline.line_out.given_m"),
                           _ ("Mainline from the reel to the shank. Alt+L goes to the choice "
                              "before it, the arrow keys change it."));
    }
  else if (mode == LB_LINE_OUT_WEIGHT_ABOVE_BED)
    {
      lb_slider_set_accessible_name (slider, _ ("Weight held above the bed"));
      lb_slider_set_field (slider, lb_field ("mainline.line_out.weight_above_bed_m"),
                           _ ("How high above the bed the weight is held; the line out follows. "
                              "Alt+L goes to the choice before it, the arrow keys change it."));
    }
  gtk_stack_set_visible_child (GTK_STACK (self->stack),
                               mode == LB_LINE_OUT_TOUCHING ? self->answer : self->slider);
  self->mode = mode;
}

static void
follow (LbLineControl *self)
{
  LbLineOut line_out = line_out_of (self);

  if ((int) line_out.mode == self->mode)
    return;
  self->following = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choice), line_out.mode);
  self->following = FALSE;
  show_mode (self, line_out.mode);
}

static void
show_answer (LbLineControl *self)
{
  LbResult *result = lb_session_get_result (self->session);
  const LbReadings *readings = result ? lb_result_get_readings (result) : NULL;
  g_autofree char *words = NULL;
  g_autofree char *text = NULL;

  if (self->mode != LB_LINE_OUT_TOUCHING)
    return;
  words = lb_session_dup_words (self->session, LB_QUANTITY_LENGTH,
                                readings ? readings->line_out : LB_UNSET);
  text = g_strdup_printf (_ ("%s of line out"), words);
  gtk_inscription_set_text (GTK_INSCRIPTION (self->answer), text);
}

/* The value that goes with `mode` and leaves the rig where it is now. */
static double
value_for (LbLineControl *self, LbLineOutMode mode)
{
  LbResult *result = lb_session_get_result (self->session);
  const LbReadings *readings = result ? lb_result_get_readings (result) : NULL;

  double least = lb_preferences_get_hold_height (lb_session_get_preferences (self->session));

  if (mode == LB_LINE_OUT_GIVEN)
    return readings ? readings->line_out : lb_field ("mainline.line_out.given_m")->usual_low;
  if (!readings || readings->weight.on_bed || readings->weight.height < least)
    return least;
  return readings->weight.height;
}

static void
chosen_cb (LbLineControl *self)
{
  guint mode = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice));

  if (self->following || mode == GTK_INVALID_LIST_POSITION)
    return;
  lb_session_do (self->session, lb_change_new_line_out (mode, value_for (self, mode)));
  follow (self);
  show_answer (self);
}

static gboolean
lb_line_control_grab_focus (GtkWidget *widget)
{
  return lb_accessible_pass_focus (widget, LB_LINE_CONTROL (widget)->choice);
}

static void
lb_line_control_dispose (GObject *object)
{
  LbLineControl *self = LB_LINE_CONTROL (object);

  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_line_control_parent_class)->dispose (object);
}

static void
lb_line_control_class_init (LbLineControlClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_line_control_dispose;
  widget_class->grab_focus = lb_line_control_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lblinecontrol");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_line_control_init (LbLineControl *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 8);
  self->mode = -1;
}

/* The list says in full what each way is; the button, which has little room, in a word or two. */
static void
bind_short_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  const LbField *field = lb_field ("mainline.line_out");
  const char *short_names[] = { _ ("Line out"), _ ("Hold at"), _ ("Touching") };
  const char *full = gtk_string_object_get_string (gtk_list_item_get_item (item));

  for (gsize i = 0; i < field->n_choices && i < G_N_ELEMENTS (short_names); i++)
    if (g_str_equal (full, _ (field->choices[i].label)))
      gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), short_names[i]);
}

static void
set_up_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_item_set_child (item, label);
}

static void
bind_full_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  const char *full = gtk_string_object_get_string (gtk_list_item_get_item (item));

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), full);
}

static void
make_choice (LbLineControl *self)
{
  const LbField *field = lb_field ("mainline.line_out");
  GtkStringList *ways = gtk_string_list_new (NULL);
  g_autoptr (GtkListItemFactory) button = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkListItemFactory) list = gtk_signal_list_item_factory_new ();

  for (gsize i = 0; i < field->n_choices; i++)
    gtk_string_list_append (ways, _ (field->choices[i].label));
  g_signal_connect (button, "setup", G_CALLBACK (set_up_cb), NULL);
  g_signal_connect (button, "bind", G_CALLBACK (bind_short_cb), NULL);
  g_signal_connect (list, "setup", G_CALLBACK (set_up_cb), NULL);
  g_signal_connect (list, "bind", G_CALLBACK (bind_full_cb), NULL);
  self->choice = gtk_drop_down_new (G_LIST_MODEL (ways), NULL);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (self->choice), button);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (self->choice), list);
  gtk_widget_set_valign (self->choice, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (
      self->choice, _ ("Give the line out, or hold the weight at a height above the bed, or let it "
                       "just touch; the line out then follows (Alt+L)"));
  lb_accessible_name_choice (GTK_DROP_DOWN (self->choice), _ ("How line out is given"));
  gtk_widget_set_parent (self->choice, GTK_WIDGET (self));
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (chosen_cb), self);
}

GtkWidget *
lb_line_control_new (LbSession *session)
{
  LbLineControl *self = g_object_new (LB_TYPE_LINE_CONTROL, NULL);

  self->session = g_object_ref (session);
  make_choice (self);
  self->slider = lb_slider_new (session, NULL);
  self->answer = gtk_inscription_new ("-");
  gtk_widget_add_css_class (self->answer, "numeric");
  self->stack = gtk_stack_new ();
  gtk_widget_set_hexpand (self->stack, TRUE);
  /* The titles are for screen readers alone. */
  gtk_stack_add_titled (GTK_STACK (self->stack), self->slider, NULL, _ ("Set by hand"));
  gtk_stack_add_titled (GTK_STACK (self->stack), self->answer, NULL, _ ("Line out that follows"));
  gtk_widget_set_parent (self->stack, GTK_WIDGET (self));
  g_signal_connect_swapped (session, "edited", G_CALLBACK (follow), self);
  g_signal_connect_swapped (session, "solved", G_CALLBACK (show_answer), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (show_answer), self);
  self->following = TRUE;
  follow (self);
  self->following = FALSE;
  show_answer (self);
  return GTK_WIDGET (self);
}

GtkWidget *
lb_line_control_get_choice (LbLineControl *self)
{
  g_return_val_if_fail (LB_IS_LINE_CONTROL (self), NULL);
  return self->choice;
}

LbSlider *
lb_line_control_get_slider (LbLineControl *self)
{
  g_return_val_if_fail (LB_IS_LINE_CONTROL (self), NULL);
  return LB_SLIDER (self->slider);
}
