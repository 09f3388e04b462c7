/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-fixture.h"

#include "model-support.h"

static void
count_cb (GObject *object, int *count)
{
  (*count)++;
}

static void
count_notify_cb (GObject *object, GParamSpec *pspec, int *count)
{
  (*count)++;
}

int
fixture_set_up (void **state)
{
  Fixture *f = g_new0 (Fixture, 1);

  f->document = lb_document_new ();
  f->history = lb_history_new (f->document);
  g_signal_connect (f->document, "changed", G_CALLBACK (count_cb), &f->n_changed);
  g_signal_connect (f->document, "notify::modified", G_CALLBACK (count_notify_cb), &f->n_modified);
  *state = f;
  return 0;
}

int
fixture_tear_down (void **state)
{
  Fixture *f = *state;

  g_object_unref (f->history);
  g_assert_finalize_object (f->document);
  g_free (f);
  return 0;
}

const LbSetup *
setup_of (Fixture *f)
{
  return lb_document_get_setup (f->document);
}

void
undo_all (Fixture *f)
{
  g_autoptr (LbContents) start = lb_contents_new ();

  while (lb_history_undo (f->history))
    ;
  assert_same_contents (lb_document_get_contents (f->document), start);
}
