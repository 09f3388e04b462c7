/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the handling share. */
#pragma once

#include "grab.h"
#include "handling.h"

typedef enum
{
  LB_HOLD_NOTHING,
  LB_HOLD_PRESSED, /* not moved yet */
  LB_HOLD_PART,
  LB_HOLD_VIEW,
  LB_HOLD_LET_GO, /* taken back; the button is still down */
} LbHold;

struct LbHandling
{
  GtkWidget *canvas;
  LbHandlingHost host;
  char *name;
  LbSession *session;
  LbViewport *viewport;
  gboolean is_side_view;
  LbHandles handles;
  char *words;        /* of the handles */
  const char *cursor; /* static; NULL: the usual one */

  /* Pointer. */
  double x, y; /* where it was last */
  LbHold hold;
  LbPick pressed; /* what the press was on */
  gboolean can_pull;
  LbGrab grab;
  guint gesture;        /* of the history; 0: none */
  LbDocument *document; /* pulled at; only compared */
  double moved_x, moved_y;
  double pinched;

  /* Keys. */
  guint key_gesture;
  guint pause_id, words_id;
};

/* handling.c */
const LbSetup *lb_handling_setup (LbHandling *self);
void lb_handling_refresh (LbHandling *self);
void lb_handling_select (LbHandling *self, LbPickKind kind, int index);
void lb_handling_open (LbHandling *self);
/* Takes hold of a part in this drawing; FALSE as lb_grab_begin(). */
gboolean lb_handling_grab (LbHandling *self, LbPickKind kind, int index, LbGrab *grab);
/* Adds a point to the bed at `x` (m) and selects it. */
gboolean lb_handling_add_bed_point (LbHandling *self, double x);
/* Escape during a drag. FALSE when there is none. */
gboolean lb_handling_let_go (LbHandling *self);
void lb_handling_show_words (LbHandling *self, char *words, double x, double y); /* takes words */

/* handling_keys.c */
void lb_handling_add_keys (LbHandling *self);
void lb_handling_end_keys (LbHandling *self);
