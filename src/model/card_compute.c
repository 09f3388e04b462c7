/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_numbers.h"

LbCardContents *
lb_card_compute (const LbCardRequest *request,
                 LbCardProgress progress,
                 void *progress_data,
                 GCancellable *cancellable,
                 GError **error)
{
  g_autoptr (LbCardNumbers) numbers = NULL;

  g_return_val_if_fail (request != NULL && request->contents != NULL, NULL);
  numbers = lb_card_numbers_compute (request, progress, progress_data, cancellable, error);
  return numbers ? lb_card_wording_write (request, numbers) : NULL;
}

/* ---- On a thread of its own ---- */

/* The thread computes numbers; the words are written where they are asked for, as the locale is
 * not to be read from two threads at once. */

static LbCardRequest *
request_dup (const LbCardRequest *request)
{
  LbCardRequest *copy = g_memdup2 (request, sizeof *request);

  copy->contents = lb_contents_dup (request->contents);
  copy->name = g_strdup (request->name);
  copy->weights = g_memdup2 (request->weights, request->n_weights * sizeof *request->weights);
  copy->today = g_strdup (request->today);
  return copy;
}

static void
request_free (void *data)
{
  LbCardRequest *request = data;

  lb_contents_free ((LbContents *) request->contents);
  g_free ((char *) request->name);
  g_free ((double *) request->weights);
  g_free ((char *) request->today);
  g_free (request);
}

static void
numbers_free (void *numbers)
{
  lb_card_numbers_free (numbers);
}

static void
compute_cb (GTask *task, void *source, void *data, GCancellable *cancellable)
{
  GError *error = NULL;
  LbCardNumbers *numbers = lb_card_numbers_compute (data, NULL, NULL, cancellable, &error);

  if (numbers)
    g_task_return_pointer (task, numbers, numbers_free);
  else
    g_task_return_error (task, error);
}

void
lb_card_compute_async (const LbCardRequest *request,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       void *user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_return_if_fail (request != NULL && request->contents != NULL);
  g_task_set_task_data (task, request_dup (request), request_free);
  g_task_run_in_thread (task, compute_cb);
}

LbCardContents *
lb_card_compute_finish (GAsyncResult *result, GError **error)
{
  g_autoptr (LbCardNumbers) numbers = NULL;

  g_return_val_if_fail (g_task_is_valid (result, NULL), NULL);
  numbers = g_task_propagate_pointer (G_TASK (result), error);
  return numbers ? lb_card_wording_write (g_task_get_task_data (G_TASK (result)), numbers) : NULL;
}
