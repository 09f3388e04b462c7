/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the window share. */
#pragma once

#include "window.h"

/* Who entered a file in the desktop's list of recent files; a key, not shown. */
#define LB_RECENT_APPLICATION "layback"

/* What waits for the question about unsaved changes to be answered. */
typedef enum
{
  LB_PENDING_NOTHING,
  LB_PENDING_CLOSE,
  LB_PENDING_NEW,
  LB_PENDING_OPEN,
  LB_PENDING_OPEN_SAMPLE,
} LbPending;

/* A button of a question. */
typedef struct
{
  const char *mnemonic;
  int response;
  gboolean destructive; /* something is lost by it */
} LbWindowAnswer;

/* GTK_RESPONSE_CANCEL or GTK_RESPONSE_DELETE_EVENT when none of the others was chosen. */
typedef void (*LbWindowAnswered) (LbWindow *self, int response);

struct _LbWindow
{
  GtkApplicationWindow parent;

  LbPreferences *preferences;
  LbRecovery *recovery;
  LbDocument *watched; /* a copy of it is kept */
  LbSession *session;
  GtkWidget *drawings;
  GtkWidget *controls;
  GtkWidget *readings_page;
  GtkWidget *rig_page;
  GtkWidget *river_page;
  GtkWidget *timings;

  GtkWidget *title_label;
  GtkWidget *recent_button;
  GtkWidget *undo_button;
  GtkWidget *redo_button;
  GtkWidget *message_bar;
  GtkWidget *message_icon;
  GtkWidget *message_label;
  GtkWidget *recovery_bar;
  GtkWidget *changed_bar;
  GtkWidget *changed_label;
  GtkWidget *reload_button;
  LbDocument *followed; /* whose file is looked after */
  gboolean kept_mine;   /* the file is another by now, and the user keeps what is in the window */
  GtkWidget *page_switch;
  GtkWidget *main_pages;
  GtkWidget *body; /* the main page with the side view */
  GtkWidget *main_side;
  GtkWidget *column;
  GtkWidget *pages;
  GtkWidget *page_switcher;
  GMenu *open_menu;

  LbPending pending;
  GFile *pending_file;
  GtkNativeDialog *chooser;  /* while open */
  GtkWidget *question;       /* while open */
  LbWindowAnswered answered; /* who is told */
  guint menus_id;
  guint letters_id;
  guint inhibited;  /* cookie; 0: not */
  gboolean closing; /* the question was answered: close without asking */
};

/* window_actions.c */
void lb_window_actions_install (GtkWidgetClass *widget_class);
void lb_window_actions_update (LbWindow *self);

/* window_letters.c */
void lb_window_letters_start (LbWindow *self);
void lb_window_letters_dispose (LbWindow *self);
void lb_window_fit_letters (LbWindow *self);
void lb_window_fit_width (LbWindow *self, int width);

/* window_question.c: asks, with the buttons up to the one without a mnemonic; the last that is not
 * destructive is the default. A question that is open already stays, and comes to the front. */
void lb_window_ask (LbWindow *self,
                    const char *title,
                    const char *detail,
                    const LbWindowAnswer *answers,
                    LbWindowAnswered answered);
void lb_window_question_dispose (LbWindow *self);

/* window_changed.c */
void lb_window_changed_start (LbWindow *self);
void lb_window_changed_dispose (LbWindow *self);
void lb_window_ask_to_replace (LbWindow *self);

/* window_recovery.c */
void lb_window_recovery_start (LbWindow *self, LbRecovery *recovery);
void lb_window_recovery_dispose (LbWindow *self);

/* window_panes.c */
void lb_window_move_pane (LbWindow *self, int direction);
void lb_window_move_page (LbWindow *self, int direction);
void lb_window_focus_page (LbWindow *self);

/* window_pages.c */
LbMainPage *lb_window_get_main (LbWindow *self); /* what is shown, if it does anything at actions */
gboolean lb_window_is_side_view (LbWindow *self);
void lb_window_main_page_actions_update (LbWindow *self);
void lb_window_zoom (LbWindow *self, int steps); /* > 0: closer */
void lb_window_zoom_fit (LbWindow *self);
void lb_window_scale_true (LbWindow *self);
void lb_window_scale_stretched (LbWindow *self);

/* window_card.c */
void lb_window_print_card (LbWindow *self);
void lb_window_save_card (LbWindow *self);
void lb_window_copy_card (LbWindow *self);

/* window_import.c */
void lb_window_choose_log (LbWindow *self);

/* window_files.c */
void lb_window_do_or_ask (LbWindow *self, LbPending pending, GFile *file);
void lb_window_choose_open (LbWindow *self);
void lb_window_save (LbWindow *self);
void lb_window_save_as (LbWindow *self);
void lb_window_save_over (LbWindow *self);
void lb_window_drop_pending (LbWindow *self);
void lb_window_files_dispose (LbWindow *self);

/* window_menus.c */
void lb_window_menus_start (LbWindow *self);
void lb_window_menus_dispose (LbWindow *self);
