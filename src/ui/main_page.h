/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A main page of the window: what fills it between the bar of buttons and the lower edge, in place
 * of the side view and the column beside it. All main pages show the same document, the session's.
 *
 * To add one, write a widget and give it a line in the table of main_page.c. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

/* Names of main pages; each window begins with the side view. */
#define LB_MAIN_PAGE_SIDE_VIEW "side-view"
#define LB_MAIN_PAGE_CARD "card"

/* What there is to know of a main page before it is made. */
typedef struct
{
  const char *name;  /* for "win.main-page" */
  const char *title; /* on the switch; N_() */
  const char *key;   /* accelerator; NULL: none */
  /* Makes the page, which fills its place. Called when it is shown for the first time. NULL: it is
   * part of every window from the start. */
  GtkWidget *(*make) (LbSession *session);
} LbMainPageKind;

/* All main pages in the order of the switch. */
extern const LbMainPageKind lb_main_page_kinds[];
extern const gsize lb_main_page_n_kinds;

/* What a main page may do at the window's actions. A page that does nothing of it need not have the
 * interface; the actions of functions that are NULL cannot be chosen while the page is shown. */
#define LB_TYPE_MAIN_PAGE (lb_main_page_get_type ())
G_DECLARE_INTERFACE (LbMainPage, lb_main_page, LB, MAIN_PAGE, GtkWidget)

struct _LbMainPageInterface
{
  GTypeInterface parent;

  void (*zoom) (LbMainPage *self, double factor);      /* > 1: closer */
  void (*fit) (LbMainPage *self);                      /* all of the drawing */
  void (*scale_true) (LbMainPage *self);               /* true to scale, or true size */
  void (*scale_stretched) (LbMainPage *self);          /* heights stretched */
  void (*move_page) (LbMainPage *self, int direction); /* 1: on to the next page in it; -1: back */
  /* Whether there is a page to move to; NULL: always. */
  gboolean (*can_move_page) (LbMainPage *self, int direction);
};

/* Tells the window that lb_main_page_can_move() has changed. */
void lb_main_page_abilities_changed (LbMainPage *self);

/* Whether "next page" (direction 1) or "previous page" (-1) can be chosen. */
gboolean lb_main_page_can_move (LbMainPage *self, int direction);
