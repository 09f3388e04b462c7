/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the window can do, by name: for menus, buttons and keys. */
#include "window_private.h"

#include <glib/gi18n.h>

#define SHORTCUTS_RESOURCE "/org/layback/Layback/shortcuts.ui"

static void
new_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_do_or_ask (LB_WINDOW (widget), LB_PENDING_NEW, NULL);
}

static void
open_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_choose_open (LB_WINDOW (widget));
}

static void
import_log_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_choose_log (LB_WINDOW (widget));
}

static void
open_uri_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  lb_window_open_file (LB_WINDOW (widget), file);
}

static void
open_sample_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  lb_window_open_sample (LB_WINDOW (widget), file);
}

static void
show_samples_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (LB_WINDOW (widget)->recent_button));
}

static void
save_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_take_typed (LB_WINDOW (widget));
  lb_window_save (LB_WINDOW (widget));
}

static void
save_as_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_take_typed (LB_WINDOW (widget));
  lb_window_save_as (LB_WINDOW (widget));
}

static void
print_card_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_print_card (LB_WINDOW (widget));
}

static void
save_card_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_save_card (LB_WINDOW (widget));
}

static void
copy_card_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_copy_card (LB_WINDOW (widget));
}

/* Built when it is asked for: it is a hundred widgets that no start should wait for. */
static void
show_shortcuts_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkApplicationWindow *self = GTK_APPLICATION_WINDOW (widget);

  if (!gtk_application_window_get_help_overlay (self))
    {
      g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource (SHORTCUTS_RESOURCE);

      gtk_application_window_set_help_overlay (
          self, GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "shortcuts")));
    }
  gtk_window_present (GTK_WINDOW (gtk_application_window_get_help_overlay (self)));
}

static void
undo_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_session_undo (LB_WINDOW (widget)->session);
}

static void
redo_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_session_redo (LB_WINDOW (widget)->session);
}

static void
zoom_in_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_zoom (LB_WINDOW (widget), 1);
}

static void
zoom_out_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_zoom (LB_WINDOW (widget), -1);
}

static void
zoom_fit_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_zoom_fit (LB_WINDOW (widget));
}

static void
scale_true_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_scale_true (LB_WINDOW (widget));
}

static void
scale_stretched_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_scale_stretched (LB_WINDOW (widget));
}

/* Takes the focus to the fields of the part that is selected in the drawing. */
static void
open_selected_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbWindow *self = LB_WINDOW (widget);
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  if (lb_rig_page_has_part (LB_RIG_PAGE (self->rig_page), kind, index))
    {
      lb_window_show_page (self, "rig");
      lb_rig_page_open_part (LB_RIG_PAGE (self->rig_page), kind, index);
    }
  else if (lb_river_page_has_part (LB_RIVER_PAGE (self->river_page), kind, index))
    {
      lb_window_show_page (self, "river");
      lb_river_page_open_part (LB_RIVER_PAGE (self->river_page), kind, index);
    }
}

static void
copy_readings_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  LbWindow *self = LB_WINDOW (widget);
  g_autofree char *text = lb_readings_page_dup_text (LB_READINGS_PAGE (self->readings_page));

  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

static void
focus_line_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_show_main_page (LB_WINDOW (widget), LB_MAIN_PAGE_SIDE_VIEW);
  gtk_widget_grab_focus (
      GTK_WIDGET (lb_controls_get_line_control (LB_CONTROLS (LB_WINDOW (widget)->controls))));
}

static void
show_page_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_show_page (LB_WINDOW (widget), g_variant_get_string (parameter, NULL));
  lb_window_focus_page (LB_WINDOW (widget));
}

static void
next_page_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_move_page (LB_WINDOW (widget), 1);
}

static void
previous_page_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_move_page (LB_WINDOW (widget), -1);
}

static void
next_pane_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_move_pane (LB_WINDOW (widget), 1);
}

static void
previous_pane_cb (GtkWidget *widget, const char *name, GVariant *parameter)
{
  lb_window_move_pane (LB_WINDOW (widget), -1);
}

typedef struct
{
  const char *name;
  const char *parameter; /* type, or NULL */
  GtkWidgetActionActivateFunc activate;
  const char *keys[3]; /* up to the first NULL */
} Action;

static const Action actions[] = {
  { "win.new", NULL, new_cb, { "<Control>n" } },
  { "win.open", NULL, open_cb, { "<Control>o" } },
  { "win.import-log", NULL, import_log_cb, { "<Control>i" } },
  { "win.open-uri", "s", open_uri_cb, { NULL } },
  { "win.open-sample", "s", open_sample_cb, { NULL } },
  { "win.show-samples", NULL, show_samples_cb, { "<Control>r" } },
  { "win.save", NULL, save_cb, { "<Control>s" } },
  { "win.save-as", NULL, save_as_cb, { "<Control><Shift>s" } },
  { "win.print-card", NULL, print_card_cb, { "<Control>p" } },
  { "win.save-card", NULL, save_card_cb, { "<Control><Shift>e" } },
  { "win.copy-card", NULL, copy_card_cb, { "<Control><Shift>k" } },
  { "win.show-shortcuts", NULL, show_shortcuts_cb, { "<Control>question", "<Control>F1" } },
  { "win.undo", NULL, undo_cb, { "<Control>z" } },
  { "win.redo", NULL, redo_cb, { "<Control><Shift>z", "<Control>y" } },
  { "win.zoom-in", NULL, zoom_in_cb, { "<Control>plus", "<Control>equal" } },
  { "win.zoom-out", NULL, zoom_out_cb, { "<Control>minus" } },
  { "win.zoom-fit", NULL, zoom_fit_cb, { "<Control>0" } },
  { "win.scale-true", NULL, scale_true_cb, { "<Control>1" } },
  { "win.scale-stretched", NULL, scale_stretched_cb, { "<Control>2" } },
  { "win.open-selected", NULL, open_selected_cb, { "F2" } },
  { "win.copy-readings", NULL, copy_readings_cb, { "<Control><Shift>c" } },
  { "win.focus-line", NULL, focus_line_cb, { "<Alt>l" } },
  { "win.show-page", "s", show_page_cb, { NULL } },
  { "win.next-page", NULL, next_page_cb, { "<Control>Page_Down" } },
  { "win.previous-page", NULL, previous_page_cb, { "<Control>Page_Up" } },
  { "win.next-pane", NULL, next_pane_cb, { "F6" } },
  { "win.previous-pane", NULL, previous_pane_cb, { "<Shift>F6" } },
};

/* Keys of actions with a parameter. */
static const struct
{
  const char *name; /* with the parameter */
  const char *keys[2];
} detailed[] = {
  { "win.show-page::readings", { "<Alt>1" } },
  { "win.show-page::rig", { "<Alt>2" } },
  { "win.show-page::river", { "<Alt>3" } },
};

void
lb_window_actions_install (GtkWidgetClass *widget_class)
{
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, actions[i].parameter,
                                     actions[i].activate);
}

void
lb_window_set_accels (GtkApplication *application)
{
  for (gsize i = 0; i < G_N_ELEMENTS (actions); i++)
    if (actions[i].keys[0])
      gtk_application_set_accels_for_action (application, actions[i].name, actions[i].keys);
  for (gsize i = 0; i < G_N_ELEMENTS (detailed); i++)
    gtk_application_set_accels_for_action (application, detailed[i].name, detailed[i].keys);
  for (gsize i = 0; i < lb_main_page_n_kinds; i++)
    {
      const char *keys[] = { lb_main_page_kinds[i].key, NULL };
      g_autofree char *name = g_strconcat ("win.main-page::", lb_main_page_kinds[i].name, NULL);

      gtk_application_set_accels_for_action (application, name, keys);
    }
}

/* "Undo: Change “Current” (Ctrl+Z)" */
static void
word_button (GtkWidget *button, const char *format, const char *plain, const char *label)
{
  g_autofree char *text = label ? g_strdup_printf (format, label) : NULL;

  /* Setting a tooltip asks the display where the pointer is; not at every move of a slider. */
  if (g_strcmp0 (gtk_widget_get_tooltip_text (button), text ? text : plain) != 0)
    gtk_widget_set_tooltip_text (button, text ? text : plain);
}

void
lb_window_actions_update (LbWindow *self)
{
  g_autofree char *undo_label = NULL;
  g_autofree char *redo_label = NULL;
  gboolean can_undo, can_redo;

  g_object_get (self->session, "can-undo", &can_undo, "can-redo", &can_redo, "undo-label",
                &undo_label, "redo-label", &redo_label, NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.undo", can_undo);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.redo", can_redo);
  /* Translators: %s is what was done, as in "Take a leader away". */
  word_button (self->undo_button, _ ("Undo: %s (Ctrl+Z)"), _ ("Undo (Ctrl+Z)"), undo_label);
  word_button (self->redo_button, _ ("Redo: %s (Ctrl+Shift+Z)"), _ ("Redo (Ctrl+Shift+Z)"),
               redo_label);
}
