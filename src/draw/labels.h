/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Labels: small cards with words, placed near their things and clear of one another; for the
 * files of this folder only. */
#pragma once

#include "phrases.h"

#define LB_LABEL_WORDINGS 3
#define LB_LABELS_MOST 16 /* in one scene */

/* One way to say it; an empty title: no such wording. */
typedef struct
{
  LbPhrase title;
  LbPhrase detail; /* second line, may be empty */
} LbWording;

typedef struct
{
  int memory;    /* below LB_LABEL_MEMORY: its own place in the draw context */
  double x, y;   /* the thing */
  double clear;  /* drawing units to keep off the thing */
  double toward; /* where the label would best stand: radians, clockwise from the right */
  LbFont title_font;
  LbColour accent;       /* of a small bar at the card's edge; LB_COLOUR_NONE: none */
  LbLinePattern pattern; /* unless solid: the bar is a piece of such a line */
  LbWording wordings[LB_LABEL_WORDINGS]; /* longest first */
} LbLabel;

/* Places the labels, the first with the best choice, and adds their items. A label that fits
 * nowhere takes its shorter wordings; one that does not fit even so is left out (the words are
 * still in lb_scene_describe()) and counted in n_missing_labels. */
void lb_labels_place (LbScene *scene, const LbLabel *labels, size_t n);

/* Places those of the side view, and `n` more after them. */
void lb_labels_place_side (LbScene *scene, const LbLabel *more, size_t n);
