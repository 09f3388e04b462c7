/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_maker.h"

#include "card_compute.h"

/* A slider on the move is not computed for at every step. */
#define REST_MS 120

struct _LbCardMaker
{
  GObject parent;
  LbSession *session;
  gboolean active;
  gboolean current;
  guint rest_id;
  GCancellable *computing; /* while it is; what is asked for by then is `asked` */
  LbContents *asked;
  char *name; /* of the document, as it was asked for */
  LbComputedCard *computed;
  LbContents *made_of; /* what `card` was made of */
  LbMadeCard *card;
};

G_DEFINE_FINAL_TYPE (LbCardMaker, lb_card_maker, G_TYPE_OBJECT)

enum
{
  MADE,
  BUSY,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
set_current (LbCardMaker *self, gboolean current)
{
  if (self->current == current)
    return;
  self->current = current;
  g_signal_emit (self, signals[BUSY], 0);
}

static const LbContents *
contents_now (LbCardMaker *self)
{
  return lb_document_get_contents (lb_session_get_document (self->session));
}

/* Lays out what is computed; `made_of` is what is in the document. */
static void
lay_out (LbCardMaker *self)
{
  LbPreferences *preferences = lb_session_get_preferences (self->session);

  g_clear_pointer (&self->card, lb_made_card_unref);
  self->card = lb_made_card_new (self->computed, &self->made_of->card,
                                 lb_preferences_get_decimals (preferences));
  g_signal_emit (self, signals[MADE], 0);
}

static void
stop (LbCardMaker *self)
{
  g_clear_handle_id (&self->rest_id, g_source_remove);
  if (self->computing)
    g_cancellable_cancel (self->computing);
  g_clear_object (&self->computing);
}

/* Who asked, and what calls it off. */
typedef struct
{
  LbCardMaker *maker;
  GCancellable *cancellable;
} Job;

static void
job_free (Job *job)
{
  g_object_unref (job->maker);
  g_object_unref (job->cancellable);
  g_free (job);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Job, job_free)

static void
computed_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (Job) job = data;
  LbCardMaker *self = job->maker;
  LbCardContents *contents = lb_card_compute_finish (result, NULL);

  /* Called off: another one is on its way, or none is wanted. */
  if (!contents || job->cancellable != self->computing)
    {
      lb_card_contents_free (contents);
      return;
    }
  g_clear_object (&self->computing);
  lb_computed_card_unref (self->computed);
  self->computed = lb_computed_card_new (contents);
  g_clear_pointer (&self->made_of, lb_contents_free);
  self->made_of = g_steal_pointer (&self->asked);
  lay_out (self);
  set_current (self, TRUE);
}

static gboolean
compute_cb (gpointer data)
{
  LbCardMaker *self = data;
  Job *job = g_new (Job, 1);
  LbCardRequest request = {
    .contents = contents_now (self),
    .wording = lb_session_get_wording (self->session),
  };
  gsize n;

  self->rest_id = 0;
  g_free (self->name);
  self->name = lb_document_dup_display_name (lb_session_get_document (self->session));
  request.name = self->name;
  request.weights = lb_preferences_get_weights (lb_session_get_preferences (self->session), &n);
  request.n_weights = n;
  g_clear_pointer (&self->asked, lb_contents_free);
  self->asked = lb_contents_dup (request.contents);
  self->computing = g_cancellable_new ();
  *job = (Job){ g_object_ref (self), g_object_ref (self->computing) };
  lb_card_compute_async (&request, self->computing, computed_cb, job);
  return G_SOURCE_REMOVE;
}

/* What is being computed is of no use any more. */
static void
outdate (LbCardMaker *self)
{
  stop (self);
  set_current (self, FALSE);
  if (self->active)
    self->rest_id = g_timeout_add (self->card ? REST_MS : 0, compute_cb, self);
}

/* Whether nothing but the paper is another than what the card was made of. */
static gboolean
only_paper_differs (LbCardMaker *self)
{
  const LbContents *now = contents_now (self);
  g_autoptr (LbContents) then = NULL;

  if (!self->made_of || !self->current)
    return FALSE;
  then = lb_contents_dup (self->made_of);
  then->card.size = now->card.size;
  then->card.own_width = now->card.own_width;
  then->card.own_height = now->card.own_height;
  then->card.wide = now->card.wide;
  then->card.sheet = now->card.sheet;
  then->card.several = now->card.several;
  return lb_contents_equal (then, now);
}

static void
edited_cb (LbCardMaker *self)
{
  if (!only_paper_differs (self))
    {
      outdate (self);
      return;
    }
  if (lb_contents_equal (self->made_of, contents_now (self)))
    return;
  lb_contents_copy (self->made_of, contents_now (self));
  lay_out (self);
}

/* A title that is not given is the file's name. */
static void
named_cb (LbCardMaker *self)
{
  g_autofree char *name = lb_document_dup_display_name (lb_session_get_document (self->session));

  if (self->name && g_strcmp0 (name, self->name) != 0)
    outdate (self);
}

static void
lb_card_maker_dispose (GObject *object)
{
  LbCardMaker *self = LB_CARD_MAKER (object);

  if (self->session)
    {
      g_signal_handlers_disconnect_by_data (self->session, self);
      g_signal_handlers_disconnect_by_data (lb_session_get_preferences (self->session), self);
    }
  stop (self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_card_maker_parent_class)->dispose (object);
}

static void
lb_card_maker_finalize (GObject *object)
{
  LbCardMaker *self = LB_CARD_MAKER (object);

  g_free (self->name);
  g_clear_pointer (&self->asked, lb_contents_free);
  g_clear_pointer (&self->made_of, lb_contents_free);
  g_clear_pointer (&self->card, lb_made_card_unref);
  lb_computed_card_unref (self->computed);
  G_OBJECT_CLASS (lb_card_maker_parent_class)->finalize (object);
}

static void
lb_card_maker_class_init (LbCardMakerClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_card_maker_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_card_maker_finalize;
  signals[MADE] =
      g_signal_new ("made", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[BUSY] =
      g_signal_new ("busy", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_card_maker_init (LbCardMaker *self)
{
}

LbCardMaker *
lb_card_maker_new (LbSession *session)
{
  LbCardMaker *self = g_object_new (LB_TYPE_CARD_MAKER, NULL);
  LbPreferences *preferences = lb_session_get_preferences (session);

  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (edited_cb), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (outdate), self);
  g_signal_connect_swapped (session, "notify::name", G_CALLBACK (named_cb), self);
  g_signal_connect_swapped (preferences, "weights-changed", G_CALLBACK (outdate), self);
  return self;
}

void
lb_card_maker_set_active (LbCardMaker *self, gboolean active)
{
  g_return_if_fail (LB_IS_CARD_MAKER (self));
  if (active == self->active)
    return;
  self->active = active;
  if (!active)
    stop (self);
  else if (!self->current)
    outdate (self);
}

LbMadeCard *
lb_card_maker_get_card (LbCardMaker *self)
{
  g_return_val_if_fail (LB_IS_CARD_MAKER (self), NULL);
  return self->card;
}

gboolean
lb_card_maker_is_current (LbCardMaker *self)
{
  g_return_val_if_fail (LB_IS_CARD_MAKER (self), FALSE);
  return self->current;
}
