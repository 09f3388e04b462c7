/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From a document to everything its card says. The table, the speed window and the gauge take many
 * solves, so a window asks for them off its thread. */
#pragma once

#include <gio/gio.h>

#include "card_contents.h"
#include "contents.h"
#include "words.h"

/* What goes into a card; all of it is copied before the call returns. */
typedef struct
{
  const LbContents *contents;
  const char *name;      /* a title for a document without one; NULL: "Untitled rig" */
  const double *weights; /* kg, of the weights owned, in any order; the document's is added */
  size_t n_weights;
  LbWording wording;
  const char *today; /* the date in words; NULL: asks the clock */
} LbCardRequest;

/* Told now and then how much is done, 0 to 1, on the thread that computes. */
typedef void (*LbCardProgress) (void *data, double done);

/* Computes here and now. NULL with G_IO_ERROR_CANCELLED when `cancellable` (may be NULL) said so;
 * nothing else fails: what could not be solved says so. `progress` may be NULL. (transfer full):
 * free with lb_card_contents_free(). */
LbCardContents *lb_card_compute (const LbCardRequest *request,
                                 LbCardProgress progress,
                                 void *progress_data,
                                 GCancellable *cancellable,
                                 GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same on a thread of its own; `callback` comes on the caller's main context. */
void lb_card_compute_async (const LbCardRequest *request,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            void *user_data);
LbCardContents *lb_card_compute_finish (GAsyncResult *result,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbCardContents, lb_card_contents_free)
