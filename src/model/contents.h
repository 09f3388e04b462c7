/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a rig file holds: the setup and the words around it. Leaders are numbered from 0 and stand
 * in the order of the file, which has no meaning to the physics. */
#pragma once

#include <glib.h>

#include "card.h"
#include "pass_script.h"
#include "setup.h"
#include "variants.h"

typedef struct
{
  LbSetup setup;
  char *title;                      /* UTF-8, one line, never NULL once initialised */
  char *notes;                      /* UTF-8, never NULL once initialised */
  char *lure_names[LB_MAX_LEADERS]; /* UTF-8, one line, never NULL once initialised */
  LbVariants variants;              /* to compare with; none at first */
  LbCard card;                      /* to rig from */
  LbPassScript pass;                /* what boat and hand do on a pass */
} LbContents;

#define LB_TITLE_LONGEST 200   /* characters */
#define LB_NOTES_LONGEST 20000 /* characters */
#define LB_NAME_LONGEST 100    /* characters, of a lure */

/* Whether `text` may stand in a title or the name of a lure, which are shown in terminals and
 * written into pictures: one line, no control character, no code point that is no character. */
bool lb_text_is_one_line (const char *text);

/* `text` (UTF-8) with a blank for all that may not stand there. Free with g_free(). */
char *lb_text_to_one_line (const char *text);

/* The rig a new document starts from (lb_setup_default()), with plain names, an empty title, the
 * usual card and the usual pass. */
void lb_contents_init (LbContents *contents);

/* Frees the words. */
void lb_contents_clear (LbContents *contents);

/* Copies everything into `to`, which must be initialised. */
void lb_contents_copy (LbContents *to, const LbContents *from);

/* Heap copies, for g_autoptr(). */
LbContents *lb_contents_new (void);
LbContents *lb_contents_dup (const LbContents *contents);
void lb_contents_free (LbContents *contents);

/* Whether both mean the same: all that a file would hold is equal, numbers bit for bit. */
bool lb_contents_equal (const LbContents *a, const LbContents *b);

/* The same for setups alone. Values that do not apply (the exponent of a log law) do not count. */
bool lb_setup_equal (const LbSetup *a, const LbSetup *b);

/* Checks what no single field can: bed and profile points rising, attachments on the shank, band
 * low below high, and every field in range. On a fault returns FALSE and sets `error`
 * (LB_FILE_ERROR) to one line: path, value, what was expected. */
gboolean lb_setup_validate (const LbSetup *setup, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbContents, lb_contents_free)
