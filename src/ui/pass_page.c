/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n.h>

#include "accessible.h"
#include "page_parts.h"
#include "pass_page_private.h"
#include "pass_section.h"

G_DEFINE_FINAL_TYPE_WITH_CODE (LbPassPage,
                               lb_pass_page,
                               GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (LB_TYPE_MAIN_PAGE,
                                                      lb_pass_page_main_page_init))

/* ---- Playing ---- */

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  LbPassPage *self = LB_PASS_PAGE (widget);
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  gint64 last = self->last_frame;

  self->last_frame = now;
  if (last > 0)
    lb_pass_playback_advance (self->playback, (double) (now - last) / 1e6);
  return G_SOURCE_CONTINUE;
}

static void
playing_cb (LbPassPage *self)
{
  gboolean playing = lb_pass_playback_get_playing (self->playback);

  if (playing == (self->tick_id != 0))
    return;
  self->last_frame = 0;
  if (playing)
    self->tick_id = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
  else
    {
      gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick_id);
      self->tick_id = 0;
    }
}

static gboolean
wants_no_motion (GtkWidget *widget)
{
  gboolean animations = TRUE;

  g_object_get (gtk_widget_get_settings (widget), "gtk-enable-animations", &animations, NULL);
  return !animations;
}

/* ---- The page ---- */

static void
lb_pass_page_map (GtkWidget *widget)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  GTK_WIDGET_CLASS (lb_pass_page_parent_class)->map (widget);
  lb_pass_playback_set_active (self->playback, TRUE);
  if (!self->was_shown && !wants_no_motion (widget))
    lb_pass_playback_set_playing (self->playback, TRUE);
  self->was_shown = TRUE;
}

static void
lb_pass_page_unmap (GtkWidget *widget)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  if (self->playback)
    lb_pass_playback_set_active (self->playback, FALSE);
  GTK_WIDGET_CLASS (lb_pass_page_parent_class)->unmap (widget);
}

/* The drawing comes first: there the keys for playing work. */
static gboolean
lb_pass_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  LbPassPage *self = LB_PASS_PAGE (widget);
  LbPassDrawings *drawings = LB_PASS_DRAWINGS (self->drawings);

  if (direction == GTK_DIR_TAB_FORWARD && !gtk_widget_get_focus_child (widget))
    return gtk_widget_grab_focus (GTK_WIDGET (lb_pass_drawings_get_canvas (
        drawings,
        lb_pass_drawings_get_above (drawings) ? LB_PASS_CANVAS_ABOVE : LB_PASS_CANVAS_SIDE)));
  return GTK_WIDGET_CLASS (lb_pass_page_parent_class)->focus (widget, direction);
}

static void
lb_pass_page_dispose (GObject *object)
{
  LbPassPage *self = LB_PASS_PAGE (object);

  if (self->playback)
    {
      g_signal_handlers_disconnect_by_data (self->playback, self);
      lb_pass_playback_set_active (self->playback, FALSE);
    }
  if (self->tick_id)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick_id);
  self->tick_id = 0;
  G_OBJECT_CLASS (lb_pass_page_parent_class)->dispose (object);
  g_clear_object (&self->playback);
}

static void
lb_pass_page_class_init (LbPassPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pass_page_dispose;
  widget_class->map = lb_pass_page_map;
  widget_class->unmap = lb_pass_page_unmap;
  widget_class->focus = lb_pass_page_focus;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  lb_pass_page_install_actions (widget_class);
}

static void
lb_pass_page_init (LbPassPage *self)
{
}

static GtkWidget *
make_left (LbPassPage *self, LbSession *session)
{
  GtkWidget *left = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL,
                                  "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  self->drawings = lb_pass_drawings_new (session, self->playback);
  self->bar = lb_pass_bar_new (session, self->playback);
  g_signal_connect_swapped (self->bar, "view", G_CALLBACK (lb_pass_page_set_above), self);
  g_signal_connect_swapped (self->bar, "follow", G_CALLBACK (lb_pass_page_set_follows), self);
  gtk_box_append (GTK_BOX (left), self->drawings);
  gtk_box_append (GTK_BOX (left), self->bar);
  gtk_widget_set_hexpand (left, TRUE);
  return left;
}

static GtkWidget *
make_choices (LbPassPage *self, LbSession *session)
{
  GtkWidget *sections;
  GtkWidget *scroller = lb_page_scroller (_ ("Choices for the pass"), &sections);

  self->summary = lb_pass_summary_view_new (session, self->playback);
  gtk_box_append (GTK_BOX (sections),
                  lb_pass_summary_view_get_said (LB_PASS_SUMMARY_VIEW (self->summary)));
  gtk_box_append (GTK_BOX (sections), lb_pass_course_section_new (session));
  gtk_box_append (GTK_BOX (sections), lb_pass_hand_section_new (session));
  gtk_box_append (GTK_BOX (sections), lb_pass_second_section_new (session));
  gtk_box_append (GTK_BOX (sections), self->summary);
  return scroller;
}

static void
add_page (LbPassPage *self, const char *name, const char *title, GtkWidget *page)
{
  GtkWidget *sections;
  GtkWidget *scroller = lb_page_scroller (title, &sections);

  gtk_box_append (GTK_BOX (sections), page);
  gtk_stack_add_titled (GTK_STACK (self->column), scroller, name, title);
}

/* The choices, and what may happen besides, one page of the column each. */
static GtkWidget *
make_column (LbPassPage *self, LbSession *session)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *switcher = gtk_stack_switcher_new ();

  gtk_widget_add_css_class (column, "column");
  gtk_widget_set_hexpand (column, FALSE);
  self->column = gtk_stack_new ();
  self->snag = lb_pass_snag_page_new (session);
  self->fish = lb_pass_fish_page_new (session);
  gtk_stack_set_vhomogeneous (GTK_STACK (self->column), FALSE);
  gtk_widget_set_vexpand (self->column, TRUE);
  gtk_stack_add_titled (GTK_STACK (self->column), make_choices (self, session), "choices",
                        _ ("Choices"));
  add_page (self, "snag", _ ("Snag"), self->snag);
  add_page (self, "fish", _ ("Fish on"), self->fish);
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (self->column));
  lb_accessible_name (switcher, _ ("Page of the column"));
  gtk_widget_add_css_class (switcher, "page-switcher");
  gtk_box_append (GTK_BOX (column), switcher);
  gtk_box_append (GTK_BOX (column), self->column);
  return column;
}

GtkWidget *
lb_pass_page_new (LbSession *session)
{
  LbPassPage *self = g_object_new (LB_TYPE_PASS_PAGE, NULL);

  self->playback = lb_pass_playback_new (session);
  gtk_box_append (GTK_BOX (self), make_left (self, session));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), make_column (self, session));
  g_signal_connect_swapped (self->playback, "playing", G_CALLBACK (playing_cb), self);
  return GTK_WIDGET (self);
}

LbPassPlayback *
lb_pass_page_get_playback (LbPassPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_PAGE (self), NULL);
  return self->playback;
}

LbPassDrawings *
lb_pass_page_get_drawings (LbPassPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_PAGE (self), NULL);
  return LB_PASS_DRAWINGS (self->drawings);
}

LbPassBar *
lb_pass_page_get_bar (LbPassPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_PAGE (self), NULL);
  return LB_PASS_BAR (self->bar);
}

LbPassSummaryView *
lb_pass_page_get_summary (LbPassPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_PAGE (self), NULL);
  return LB_PASS_SUMMARY_VIEW (self->summary);
}

LbPassSnagPage *
lb_pass_page_get_snag (LbPassPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_PAGE (self), NULL);
  return LB_PASS_SNAG_PAGE (self->snag);
}

LbPassFishPage *
lb_pass_page_get_fish (LbPassPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_PAGE (self), NULL);
  return LB_PASS_FISH_PAGE (self->fish);
}
