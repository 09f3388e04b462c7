/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_page.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "main_page.h"
#include "page_parts.h"
#include "pass_section.h"

#define STEP 0.1      /* s */
#define LONG_STEP 1.0 /* s */
#define ZOOM 1.25

struct _LbPassPage
{
  GtkBox parent;
  LbPassPlayback *playback;
  GtkWidget *drawings;
  GtkWidget *bar;
  GtkWidget *summary;
  GtkWidget *column; /* GtkStack */
  GtkWidget *snag;
  GtkWidget *fish;
  guint tick_id;
  gint64 last_frame; /* us; 0: none since it plays */
  gboolean was_shown;
};

static void lb_pass_page_main_page_init (LbMainPageInterface *iface);

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

/* ---- Actions ---- */

static void
play_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbPassPlayback *playback = LB_PASS_PAGE (widget)->playback;

  lb_pass_playback_set_playing (playback, !lb_pass_playback_get_playing (playback));
}

static void
move (GtkWidget *widget, double seconds)
{
  LbPassPlayback *playback = LB_PASS_PAGE (widget)->playback;

  lb_pass_playback_set_playing (playback, FALSE);
  lb_pass_playback_go_to (playback, lb_pass_playback_get_time (playback) + seconds);
}

static void
step_back_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  move (widget, -STEP);
}

static void
step_on_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  move (widget, STEP);
}

static void
long_back_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  move (widget, -LONG_STEP);
}

static void
long_on_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  move (widget, LONG_STEP);
}

static void
start_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  move (widget, -LB_PASS_LONGEST);
}

static void
end_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  move (widget, LB_PASS_LONGEST);
}

static void
slower_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_pass_bar_change_speed (LB_PASS_BAR (LB_PASS_PAGE (widget)->bar), -1);
}

static void
faster_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_pass_bar_change_speed (LB_PASS_BAR (LB_PASS_PAGE (widget)->bar), 1);
}

static void
set_above (LbPassPage *self, gboolean above)
{
  lb_pass_drawings_set_above (LB_PASS_DRAWINGS (self->drawings), above);
  lb_pass_bar_set_above (LB_PASS_BAR (self->bar), above);
}

static void
view_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  set_above (self, !lb_pass_drawings_get_above (LB_PASS_DRAWINGS (self->drawings)));
}

static LbPassCanvas *
view_of (gpointer page)
{
  return lb_pass_drawings_get_view (LB_PASS_DRAWINGS (LB_PASS_PAGE (page)->drawings));
}

static void
zoom_in_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_pass_canvas_zoom (view_of (widget), ZOOM);
}

static void
zoom_out_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_pass_canvas_zoom (view_of (widget), 1 / ZOOM);
}

static void
set_follows (LbPassPage *self, gboolean follows)
{
  lb_pass_drawings_set_follows (LB_PASS_DRAWINGS (self->drawings), follows);
  lb_pass_bar_set_follows (LB_PASS_BAR (self->bar), follows);
}

static void
fit_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  set_follows (self, FALSE);
  lb_pass_canvas_fit (view_of (self));
}

static void
follow_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  set_follows (self, !lb_pass_drawings_get_follows (LB_PASS_DRAWINGS (self->drawings)));
}

static void
cancel_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_pass_runner_cancel (lb_pass_playback_get_runner (LB_PASS_PAGE (widget)->playback));
}

static void
go_on_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_pass_playback_go_on (LB_PASS_PAGE (widget)->playback);
}

static void
show_column (GtkWidget *widget, const char *name)
{
  gtk_stack_set_visible_child_name (GTK_STACK (LB_PASS_PAGE (widget)->column), name);
}

static void
choices_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_column (widget, "choices");
}

static void
snag_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_column (widget, "snag");
}

static void
fish_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_column (widget, "fish");
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  static const struct
  {
    const char *name;
    GtkWidgetActionActivateFunc activate;
    guint key;
    GdkModifierType modifiers;
  } actions[] = {
    { "pass.play", play_cb, GDK_KEY_space, 0 },
    { "pass.step-back", step_back_cb, GDK_KEY_Left, 0 },
    { "pass.step-on", step_on_cb, GDK_KEY_Right, 0 },
    { "pass.long-step-back", long_back_cb, GDK_KEY_Left, GDK_CONTROL_MASK },
    { "pass.long-step-on", long_on_cb, GDK_KEY_Right, GDK_CONTROL_MASK },
    { "pass.start", start_cb, GDK_KEY_Home, 0 },
    { "pass.end", end_cb, GDK_KEY_End, 0 },
    { "pass.slower", slower_cb, GDK_KEY_bracketleft, 0 },
    { "pass.faster", faster_cb, GDK_KEY_bracketright, 0 },
    { "pass.view", view_cb, GDK_KEY_v, 0 },
    { "pass.zoom-in", zoom_in_cb, GDK_KEY_plus, 0 },
    { "pass.zoom-in", zoom_in_cb, GDK_KEY_equal, 0 },
    { "pass.zoom-out", zoom_out_cb, GDK_KEY_minus, 0 },
    { "pass.zoom-fit", fit_cb, GDK_KEY_0, 0 },
    { "pass.follow", follow_cb, GDK_KEY_t, 0 },
    { "pass.cancel", cancel_cb, GDK_KEY_Escape, 0 },
    { "pass.go-on", go_on_cb, GDK_KEY_r, 0 },
    { "pass.choices", choices_cb, GDK_KEY_c, 0 },
    { "pass.snag", snag_cb, GDK_KEY_s, 0 },
    { "pass.fish", fish_cb, GDK_KEY_f, 0 },
  };

  /* The keys count where no control of the page takes them first. */
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      gtk_widget_class_install_action (widget_class, actions[i].name, NULL, actions[i].activate);
      gtk_widget_class_add_binding_action (widget_class, actions[i].key, actions[i].modifiers,
                                           actions[i].name, NULL);
    }
}

/* ---- The window's actions ---- */

static void
lb_pass_page_zoom (LbMainPage *page, double factor)
{
  lb_pass_canvas_zoom (view_of (page), factor);
}

static void
lb_pass_page_fit (LbMainPage *page)
{
  fit_cb (GTK_WIDGET (page), NULL, NULL);
}

/* Of the column. */
static void
lb_pass_page_move_page (LbMainPage *page, int direction)
{
  GtkStack *column = GTK_STACK (LB_PASS_PAGE (page)->column);
  GtkWidget *shown = gtk_stack_get_visible_child (column);
  GtkWidget *next =
      direction > 0 ? gtk_widget_get_next_sibling (shown) : gtk_widget_get_prev_sibling (shown);

  if (next)
    gtk_stack_set_visible_child (column, next);
}

static void
lb_pass_page_main_page_init (LbMainPageInterface *iface)
{
  iface->zoom = lb_pass_page_zoom;
  iface->fit = lb_pass_page_fit;
  iface->move_page = lb_pass_page_move_page;
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
  install_actions (widget_class);
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
  g_signal_connect_swapped (self->bar, "view", G_CALLBACK (set_above), self);
  g_signal_connect_swapped (self->bar, "follow", G_CALLBACK (set_follows), self);
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
