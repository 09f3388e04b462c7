/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window_private.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "dispose.h"
#include "page_switch.h"
#include "timings.h"

G_DEFINE_FINAL_TYPE (LbWindow, lb_window, GTK_TYPE_APPLICATION_WINDOW)

static void
update_title (LbWindow *self)
{
  g_autofree char *name = NULL;
  g_autofree char *title = NULL;
  g_autofree char *shown = NULL;
  gboolean modified;

  g_object_get (self->session, "name", &name, "modified", &modified, NULL);
  /* The mark of a changed document stands in front, where a long name cannot push it out. */
  shown = g_strconcat (modified ? "• " : "", name, NULL);
  /* Translators: the window's title: the rig's name, then the program's. */
  title = g_strdup_printf (_ ("%s – Layback"), shown);
  gtk_label_set_text (GTK_LABEL (self->title_label), shown);
  gtk_widget_set_tooltip_text (self->title_label,
                               modified ? _ ("There are changes that are not saved") : NULL);
  gtk_window_set_title (GTK_WINDOW (self), title);
}

/* The end of the desktop's session waits while there is something to save. */
static void
update_inhibited (LbWindow *self)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  gboolean modified = lb_document_get_modified (lb_session_get_document (self->session));

  if (!application)
    return;
  if (modified && !self->inhibited)
    self->inhibited =
        gtk_application_inhibit (application, GTK_WINDOW (self), GTK_APPLICATION_INHIBIT_LOGOUT,
                                 _ ("There are changes that are not saved"));
  else if (!modified && self->inhibited)
    {
      gtk_application_uninhibit (application, self->inhibited);
      self->inhibited = 0;
    }
}

static void
message_closed_cb (LbWindow *self)
{
  lb_window_show_message (self, GTK_MESSAGE_OTHER, NULL);
}

static gboolean
drop_cb (LbWindow *self, const GValue *value)
{
  GSList *files;

  if (!G_VALUE_HOLDS (value, GDK_TYPE_FILE_LIST))
    return FALSE;
  files = g_value_get_boxed (value);
  if (!files)
    return FALSE;
  lb_window_take_file (self, files->data);
  return TRUE;
}

static void
add_drop_target (LbWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  /* Before the entries, which would take the file's name as text. */
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (target), GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

static void
timings_shown_cb (LbWindow *self)
{
  gtk_widget_set_visible (self->timings, lb_preferences_get_show_timings (self->preferences));
}

static gboolean
lb_window_close_request (GtkWindow *window)
{
  LbWindow *self = LB_WINDOW (window);

  lb_window_take_typed (self);
  if (!self->closing && lb_window_has_unsaved (self))
    {
      lb_window_do_or_ask (self, LB_PENDING_CLOSE, NULL);
      return TRUE;
    }
  g_object_set (self->preferences, "window-maximized", gtk_window_is_maximized (window), NULL);
  return GTK_WINDOW_CLASS (lb_window_parent_class)->close_request (window);
}

/* Remembers the size that the user gave it, not the one of a window that fills the screen. */
static void
size_cb (LbWindow *self)
{
  int width, height;

  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  if (width >= 480 && height >= 320)
    g_object_set (self->preferences, "window-width", width, "window-height", height, NULL);
}

static void
lb_window_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbWindow *self = LB_WINDOW (widget);

  GTK_WIDGET_CLASS (lb_window_parent_class)->size_allocate (widget, width, height, baseline);
  lb_window_fit_letters (self);
}

static void
lb_window_dispose (GObject *object)
{
  LbWindow *self = LB_WINDOW (object);

  lb_window_letters_dispose (self);
  lb_window_files_dispose (self);
  lb_window_menus_dispose (self);
  lb_window_recovery_dispose (self);
  lb_window_changed_dispose (self);
  lb_window_question_dispose (self);
  lb_dispose_session (&self->session, self);
  g_clear_object (&self->preferences);
  gtk_widget_dispose_template (GTK_WIDGET (self), LB_TYPE_WINDOW);
  G_OBJECT_CLASS (lb_window_parent_class)->dispose (object);
}

static void
lb_window_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  g_value_set_string (value, lb_window_get_main_page (LB_WINDOW (object)));
}

static void
lb_window_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  lb_window_show_main_page (LB_WINDOW (object), g_value_get_string (value));
}

/* An action of the same name shows a page, and tells which is shown. */
static void
install_main_page (GtkWidgetClass *klass)
{
  GParamSpec *pspec =
      g_param_spec_string ("main-page", NULL, NULL, LB_MAIN_PAGE_SIDE_VIEW,
                           G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);

  G_OBJECT_CLASS (klass)->get_property = lb_window_get_property;
  G_OBJECT_CLASS (klass)->set_property = lb_window_set_property;
  g_object_class_install_property (G_OBJECT_CLASS (klass), 1, pspec);
  gtk_widget_class_install_property_action (klass, "win.main-page", "main-page");
}

static void
lb_window_class_init (LbWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = lb_window_close_request;
  widget_class->size_allocate = lb_window_size_allocate;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/layback/Layback/window.ui");
  gtk_widget_class_bind_template_child (widget_class, LbWindow, title_label);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, recent_button);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, message_bar);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, message_icon);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, message_label);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, page_switch);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, main_pages);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, body);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, main_side);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, column);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, page_switcher);
  gtk_widget_class_bind_template_child (widget_class, LbWindow, open_menu);
  install_main_page (widget_class);
  lb_window_actions_install (widget_class);
  g_signal_new ("stayed", LB_TYPE_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_window_init (LbWindow *self)
{
  g_type_ensure (LB_TYPE_PAGE_SWITCH);
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->message_bar, "response", G_CALLBACK (message_closed_cb), self);
  gtk_widget_set_visible (self->message_bar, FALSE);
  lb_accessible_name_close (GTK_INFO_BAR (self->message_bar));
  add_drop_target (self);
}

/* Adds a page to the column. With a second one there is something to switch. */
static void
add_page (LbWindow *self, GtkWidget *page, const char *name, const char *title)
{
  gboolean first = !gtk_widget_get_first_child (self->pages);

  gtk_stack_add_titled (GTK_STACK (self->pages), page, name, title);
  gtk_widget_set_visible (self->page_switcher, !first);
}

static void
fill (LbWindow *self)
{
  self->drawings = lb_drawings_new (self->session);
  self->controls = lb_controls_new (self->session);
  self->readings_page = lb_readings_page_new (self->session);
  g_signal_connect_object (self->readings_page, "updated", G_CALLBACK (lb_drawings_make_way),
                           self->drawings, G_CONNECT_SWAPPED);
  self->timings = lb_timings_new (self->session, LB_DRAWINGS (self->drawings));
  gtk_box_append (GTK_BOX (self->main_side), self->drawings);
  gtk_box_append (GTK_BOX (self->main_side), self->controls);
  add_page (self, self->readings_page, "readings", _ ("Readings"));
  self->rig_page = lb_rig_page_new (self->session);
  add_page (self, self->rig_page, "rig", _ ("Rig"));
  self->river_page = lb_river_page_new (self->session);
  add_page (self, self->river_page, "river", _ ("River"));
  gtk_box_append (GTK_BOX (self->column), self->timings);
  for (gsize i = 0; i < lb_main_page_n_kinds; i++)
    lb_window_add_main_page (self, &lb_main_page_kinds[i]);
}

static void
follow_session (LbWindow *self)
{
  g_signal_connect_swapped (self->session, "notify::name", G_CALLBACK (update_title), self);
  g_signal_connect_swapped (self->session, "notify::modified", G_CALLBACK (update_title), self);
  g_signal_connect_swapped (self->session, "notify::modified", G_CALLBACK (update_inhibited), self);
  g_signal_connect_swapped (self->session, "notify::undo-label",
                            G_CALLBACK (lb_window_actions_update), self);
  g_signal_connect_swapped (self->session, "notify::redo-label",
                            G_CALLBACK (lb_window_actions_update), self);
  update_title (self);
  lb_window_actions_update (self);
}

LbWindow *
lb_window_new (GtkApplication *application,
               LbPreferences *preferences,
               LbAppearance *appearance,
               LbRecovery *recovery)
{
  LbWindow *self = g_object_new (LB_TYPE_WINDOW, "application", application, NULL);
  int width, height;
  gboolean maximized;

  self->preferences = g_object_ref (preferences);
  self->session = lb_session_new (preferences, appearance);
  fill (self);
  follow_session (self);
  lb_window_changed_start (self);
  lb_window_recovery_start (self, recovery);
  g_object_get (preferences, "window-width", &width, "window-height", &height, "window-maximized",
                &maximized, NULL);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  lb_window_fit_width (self, width);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));
  g_signal_connect (self, "notify::default-width", G_CALLBACK (size_cb), NULL);
  g_signal_connect (self, "notify::default-height", G_CALLBACK (size_cb), NULL);
  g_signal_connect_object (preferences, "notify::show-timings", G_CALLBACK (timings_shown_cb), self,
                           G_CONNECT_SWAPPED);
  lb_window_letters_start (self);
  timings_shown_cb (self);
  lb_window_menus_start (self);
  /* Not in an entry, whose text would then stand out as if something were to be typed. */
  gtk_window_set_focus (GTK_WINDOW (self), lb_slider_get_scale (lb_controls_get_current (
                                               LB_CONTROLS (self->controls))));
  return self;
}

LbSession *
lb_window_get_session (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return self->session;
}

LbDrawings *
lb_window_get_drawings (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return LB_DRAWINGS (self->drawings);
}

LbControls *
lb_window_get_controls (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return LB_CONTROLS (self->controls);
}

LbReadingsPage *
lb_window_get_readings_page (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return LB_READINGS_PAGE (self->readings_page);
}

LbRigPage *
lb_window_get_rig_page (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return LB_RIG_PAGE (self->rig_page);
}

LbRiverPage *
lb_window_get_river_page (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return LB_RIVER_PAGE (self->river_page);
}

static const char *
icon_for (GtkMessageType type)
{
  if (type == GTK_MESSAGE_ERROR)
    return "dialog-error-symbolic";
  return type == GTK_MESSAGE_WARNING ? "dialog-warning-symbolic" : "dialog-information-symbolic";
}

void
lb_window_show_message (LbWindow *self, GtkMessageType type, const char *text)
{
  g_return_if_fail (LB_IS_WINDOW (self));
  gtk_info_bar_set_message_type (GTK_INFO_BAR (self->message_bar), type);
  gtk_image_set_from_icon_name (GTK_IMAGE (self->message_icon), icon_for (type));
  gtk_label_set_text (GTK_LABEL (self->message_label), text ? text : "");
  gtk_info_bar_set_revealed (GTK_INFO_BAR (self->message_bar), text != NULL);
  /* Else a screen reader comes across what is empty. */
  gtk_widget_set_visible (self->message_bar, text != NULL);
}

const char *
lb_window_get_message (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  if (!gtk_info_bar_get_revealed (GTK_INFO_BAR (self->message_bar)))
    return NULL;
  return gtk_label_get_text (GTK_LABEL (self->message_label));
}

const char *
lb_window_get_timings_text (LbWindow *self)
{
  g_return_val_if_fail (LB_IS_WINDOW (self), NULL);
  return lb_timings_get_text (LB_TIMINGS (self->timings));
}

gboolean
lb_window_is_pristine (LbWindow *self)
{
  LbDocument *document;

  g_return_val_if_fail (LB_IS_WINDOW (self), FALSE);
  document = lb_session_get_document (self->session);
  return !lb_document_get_file (document) && !lb_document_get_modified (document)
         && *lb_document_get_title (document) == '\0';
}
