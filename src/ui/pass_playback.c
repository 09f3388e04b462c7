/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_playback.h"

struct _LbPassPlayback
{
  GObject parent_instance;

  LbSession *session;
  LbPassRunner *runner;
  gboolean active;
  gboolean outdated; /* the document may have changed since the last request */
  gboolean dropped;  /* the last request was called off when nobody looked */
  LbSetup setup;     /* of the last request */
  LbPassScript script;
  GArray *moments; /* LbTrackMoment */
  GArray *second;  /* the same of a second rig */
  double time;
  gboolean playing;
  double speed;
  LbPassSample sample; /* of the moment */
  LbShape shape;
  LbShape second_shape;
};

G_DEFINE_FINAL_TYPE (LbPassPlayback, lb_pass_playback, G_TYPE_OBJECT)

enum
{
  MOVED,
  GROWN,
  RESTARTED,
  PLAYING,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const LbContents *
contents_of (LbPassPlayback *self)
{
  return lb_document_get_contents (lb_session_get_document (self->session));
}

/* ---- Computing ---- */

/* Another pass. */
static void
compute (LbPassPlayback *self)
{
  const LbContents *contents = contents_of (self);

  self->setup = contents->setup;
  self->script = contents->pass;
  self->time = 0;
  g_array_set_size (self->moments, 0);
  g_array_set_size (self->second, 0);
  lb_pass_runner_request (self->runner, &self->setup, &self->script);
  g_signal_emit (self, signals[RESTARTED], 0);
  g_signal_emit (self, signals[MOVED], 0);
}

void
lb_pass_playback_go_on (LbPassPlayback *self)
{
  g_return_if_fail (LB_IS_PASS_PLAYBACK (self));
  self->dropped = FALSE;
  lb_pass_runner_go_on (self->runner);
  g_signal_emit (self, signals[GROWN], 0);
}

/* A change of a name or of the card is none of the pass. */
static void
update (LbPassPlayback *self)
{
  const LbContents *contents = contents_of (self);
  gboolean is_same = lb_pass_runner_get_state (self->runner) != LB_PASS_RUN_NOTHING
                     && lb_setup_equal (&self->setup, &contents->setup)
                     && lb_pass_script_equal (&self->script, &contents->pass);
  gboolean dropped = self->dropped;

  self->outdated = self->dropped = FALSE;
  if (!is_same)
    compute (self);
  else if (dropped)
    lb_pass_playback_go_on (self);
}

static void
edited_cb (LbPassPlayback *self)
{
  self->outdated = TRUE;
  if (self->active)
    update (self);
}

static void
progressed_cb (LbPassPlayback *self)
{
  LbPassRecord *record = lb_pass_runner_get_record (self->runner);
  gboolean is_first = self->moments->len == 0;

  if (record)
    lb_track_add (self->moments, record);
  if (record && lb_pass_record_second (record))
    lb_track_add (self->second, lb_pass_record_second (record));
  g_signal_emit (self, signals[GROWN], 0);
  if (is_first && self->moments->len > 0)
    g_signal_emit (self, signals[MOVED], 0);
}

void
lb_pass_playback_set_active (LbPassPlayback *self, gboolean active)
{
  g_return_if_fail (LB_IS_PASS_PLAYBACK (self));
  self->active = active;
  if (!active)
    {
      /* It goes on when it is wanted again. */
      if (lb_pass_runner_get_state (self->runner) == LB_PASS_RUN_GOING)
        {
          lb_pass_runner_cancel (self->runner);
          self->outdated = self->dropped = TRUE;
        }
      lb_pass_playback_set_playing (self, FALSE);
    }
  else if (self->outdated)
    update (self);
}

LbPassRunner *
lb_pass_playback_get_runner (LbPassPlayback *self)
{
  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), NULL);
  return self->runner;
}

/* ---- The moment ---- */

double
lb_pass_playback_get_time (LbPassPlayback *self)
{
  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), 0);
  return self->time;
}

double
lb_pass_playback_get_duration (LbPassPlayback *self)
{
  LbPassRecord *record;

  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), 0);
  record = lb_pass_runner_get_record (self->runner);
  return record ? lb_pass_record_duration (record) : 0;
}

double
lb_pass_playback_get_end (LbPassPlayback *self)
{
  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), 0);
  return self->moments->len
             ? g_array_index (self->moments, LbTrackMoment, self->moments->len - 1).time
             : 0;
}

void
lb_pass_playback_go_to (LbPassPlayback *self, double time)
{
  g_return_if_fail (LB_IS_PASS_PLAYBACK (self));
  time = CLAMP (time, 0, lb_pass_playback_get_end (self));
  if (time == self->time)
    return;
  self->time = time;
  g_signal_emit (self, signals[MOVED], 0);
}

/* ---- Playing ---- */

gboolean
lb_pass_playback_get_playing (LbPassPlayback *self)
{
  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), FALSE);
  return self->playing;
}

/* The thread is done before its last moments have come here. */
gboolean
lb_pass_playback_get_settled (LbPassPlayback *self)
{
  LbPassRecord *record;

  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), FALSE);
  if (lb_pass_runner_get_state (self->runner) == LB_PASS_RUN_GOING)
    return FALSE;
  record = lb_pass_runner_get_record (self->runner);
  return !record || self->moments->len == lb_pass_record_count (record);
}

static gboolean
is_at_end (LbPassPlayback *self)
{
  return self->moments->len > 0 && self->time >= lb_pass_playback_get_end (self)
         && lb_pass_playback_get_settled (self);
}

void
lb_pass_playback_set_playing (LbPassPlayback *self, gboolean playing)
{
  g_return_if_fail (LB_IS_PASS_PLAYBACK (self));
  if (playing == self->playing)
    return;
  if (playing && is_at_end (self))
    lb_pass_playback_go_to (self, 0);
  self->playing = playing;
  g_signal_emit (self, signals[PLAYING], 0);
}

double
lb_pass_playback_get_speed (LbPassPlayback *self)
{
  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), 1);
  return self->speed;
}

void
lb_pass_playback_set_speed (LbPassPlayback *self, double speed)
{
  g_return_if_fail (LB_IS_PASS_PLAYBACK (self));
  self->speed = CLAMP (speed, LB_PASS_SLOWEST, LB_PASS_FASTEST);
}

void
lb_pass_playback_advance (LbPassPlayback *self, double seconds)
{
  g_return_if_fail (LB_IS_PASS_PLAYBACK (self));
  if (!self->playing)
    return;
  lb_pass_playback_go_to (self, self->time + seconds * self->speed);
  if (is_at_end (self))
    lb_pass_playback_set_playing (self, FALSE);
}

/* ---- What is drawn ---- */

/* The words round the drawing are the session's; the rig and its place are the pass's. */
static void
start_picture (LbPassPlayback *self, LbPicture *now)
{
  lb_session_get_picture (self->session, now);
  now->setup = &self->setup;
  now->shape = NULL;
  now->readings = NULL;
  now->status = lb_pass_runner_get_status (self->runner);
  now->title = now->remark = NULL;
  now->handles = NULL;
}

static LbPassTrack
track_of (const GArray *moments, const LbPassRecord *record)
{
  return (LbPassTrack){ .moments = (const LbTrackMoment *) moments->data,
                        .n = moments->len,
                        .n_lures = lb_pass_record_setup (record)->rig.n_leaders,
                        .duration = lb_pass_record_duration (record) };
}

static void
add_second (LbPassPlayback *self, const LbPassRecord *record, LbPassPicture *picture)
{
  const LbPassRecord *second = lb_pass_record_second (record);

  if (!second)
    return;
  picture->second = track_of (self->second, second);
  picture->second_setup = lb_pass_record_setup (second);
  if (lb_pass_record_shape_at (second, self->time, &self->second_shape) == LB_STATUS_OK)
    picture->second_shape = &self->second_shape;
}

gboolean
lb_pass_playback_get_picture (LbPassPlayback *self, LbPassPicture *picture)
{
  LbPassRecord *record;

  g_return_val_if_fail (LB_IS_PASS_PLAYBACK (self), FALSE);
  record = lb_pass_runner_get_record (self->runner);
  *picture = (LbPassPicture){ .time = self->time,
                              .tangle = self->script.tangle_distance,
                              .reach_start = self->setup.boat.position };
  start_picture (self, &picture->now);
  if (!record)
    return FALSE;
  picture->now.setup = lb_pass_record_setup (record);
  picture->reach_start = picture->now.setup->boat.position;
  picture->track = track_of (self->moments, record);
  if (self->moments->len == 0 || !lb_pass_record_at (record, self->time, &self->sample)
      || lb_pass_record_shape_at (record, self->time, &self->shape) != LB_STATUS_OK)
    return FALSE;
  add_second (self, record, picture);
  picture->now.status = LB_STATUS_OK;
  picture->now.shape = &self->shape;
  picture->now.readings = &self->sample.readings;
  return TRUE;
}

/* ---- The object ---- */

static void
lb_pass_playback_dispose (GObject *object)
{
  LbPassPlayback *self = LB_PASS_PLAYBACK (object);

  if (self->runner)
    g_signal_handlers_disconnect_by_data (self->runner, self);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->runner);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_pass_playback_parent_class)->dispose (object);
}

static void
lb_pass_playback_finalize (GObject *object)
{
  LbPassPlayback *self = LB_PASS_PLAYBACK (object);

  g_array_unref (self->moments);
  g_array_unref (self->second);
  lb_shape_clear (&self->shape);
  lb_shape_clear (&self->second_shape);
  G_OBJECT_CLASS (lb_pass_playback_parent_class)->finalize (object);
}

static void
lb_pass_playback_class_init (LbPassPlaybackClass *klass)
{
  static const char *const names[N_SIGNALS] = { "moved", "grown", "restarted", "playing" };

  G_OBJECT_CLASS (klass)->dispose = lb_pass_playback_dispose;
  G_OBJECT_CLASS (klass)->finalize = lb_pass_playback_finalize;
  for (int i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (names[i], G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                               NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_pass_playback_init (LbPassPlayback *self)
{
  self->speed = 1;
  self->outdated = TRUE;
  self->moments = g_array_new (FALSE, TRUE, sizeof (LbTrackMoment));
  self->second = g_array_new (FALSE, TRUE, sizeof (LbTrackMoment));
  lb_shape_init (&self->shape);
  lb_shape_init (&self->second_shape);
}

LbPassPlayback *
lb_pass_playback_new (LbSession *session)
{
  LbPassPlayback *self = g_object_new (LB_TYPE_PASS_PLAYBACK, NULL);

  self->session = g_object_ref (session);
  self->runner = lb_pass_runner_new ();
  g_signal_connect_swapped (self->runner, "progressed", G_CALLBACK (progressed_cb), self);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (edited_cb), self);
  return self;
}
