/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a change consists of, and how it gets into a document and out again. Internal to model. */
#pragma once

#include "change.h"

typedef enum
{
  LB_CHANGE_VALUE,
  LB_CHANGE_TITLE,
  LB_CHANGE_NOTES,
  LB_CHANGE_LURE_NAME,
  LB_CHANGE_PATCH, /* some bytes of the setup */
  LB_CHANGE_SETUP,
  LB_CHANGE_VARIANTS,
  LB_CHANGE_CARD,
  LB_CHANGE_PASS,
} LbChangeKind;

/* What a change puts into the document; only what its kind needs is set. */
typedef struct
{
  double value;   /* LB_CHANGE_VALUE */
  LbSetup *setup; /* LB_CHANGE_SETUP; LB_CHANGE_VALUE too, when other values follow the one set */
  guint8 *bytes;  /* LB_CHANGE_PATCH */
  char *text;     /* the three kinds of text; LB_CHANGE_PATCH: a lure's name, or NULL to leave it */
  char **lure_names;    /* LB_CHANGE_SETUP; LB_MAX_LEADERS names, or NULL to leave them */
  LbVariants *variants; /* LB_CHANGE_VARIANTS; LB_CHANGE_SETUP: NULL to leave them */
  LbCard *card;         /* LB_CHANGE_CARD */
  LbPassScript *pass;   /* LB_CHANGE_PASS */
} LbChangeState;

struct LbChange
{
  LbChangeKind kind;
  const LbField *field; /* LB_CHANGE_VALUE */
  size_t leader;
  size_t offset, size; /* LB_CHANGE_PATCH: in LbSetup */
  guint gesture;
  char *label;
  LbChangeState before; /* taken when the change is first applied */
  LbChangeState after;
};

void lb_change_state_clear (LbChangeState *state);

/* Takes note of what a change of that kind would replace. */
void lb_change_state_take (const LbChange *change, LbContents *contents, LbChangeState *state);

void lb_change_state_put (const LbChange *change, LbContents *contents, const LbChangeState *state);

/* Replaces one state of a change by another of the same change, or of one that merges with it. */
void lb_change_state_replace (const LbChange *change, LbChangeState *to, const LbChangeState *from);

/* Whether both would leave the same document behind. */
bool lb_change_state_same (const LbChange *change, const LbChangeState *a, const LbChangeState *b);
