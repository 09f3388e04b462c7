/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_page_private.h"

#define STEP 0.1      /* s */
#define LONG_STEP 1.0 /* s */
#define ZOOM 1.25

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

void
lb_pass_page_set_above (LbPassPage *self, gboolean above)
{
  lb_pass_drawings_set_above (LB_PASS_DRAWINGS (self->drawings), above);
  lb_pass_bar_set_above (LB_PASS_BAR (self->bar), above);
}

static void
view_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  lb_pass_page_set_above (self, !lb_pass_drawings_get_above (LB_PASS_DRAWINGS (self->drawings)));
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

void
lb_pass_page_set_follows (LbPassPage *self, gboolean follows)
{
  lb_pass_drawings_set_follows (LB_PASS_DRAWINGS (self->drawings), follows);
  lb_pass_bar_set_follows (LB_PASS_BAR (self->bar), follows);
}

static void
fit_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  lb_pass_page_set_follows (self, FALSE);
  lb_pass_canvas_fit (view_of (self));
}

static void
follow_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbPassPage *self = LB_PASS_PAGE (widget);

  lb_pass_page_set_follows (self,
                            !lb_pass_drawings_get_follows (LB_PASS_DRAWINGS (self->drawings)));
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

void
lb_pass_page_install_actions (GtkWidgetClass *widget_class)
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

void
lb_pass_page_main_page_init (LbMainPageInterface *iface)
{
  iface->zoom = lb_pass_page_zoom;
  iface->fit = lb_pass_page_fit;
  iface->move_page = lb_pass_page_move_page;
}
