/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "session.h"

#include "sentence.h"
#include "solver.h"
#include "words.h"

/* How long a change waits for its answer, so that both are in the same frame. A warm solve needs
 * far less; a slow one comes when it is done, and drawing goes on meanwhile. */
#define LONGEST_WAIT_US 4000
/* The same for a document just opened: the first frame shows a rig. */
#define LONGEST_FIRST_WAIT_US 150000

struct _LbSession
{
  GObject parent;
  LbPreferences *preferences;
  LbAppearance *appearance;
  LbHistory *history;
  LbDocument *document; /* of the history */
  LbSolver *solver;
  LbResult *result; /* latest; NULL before the first */
  LbPickKind selected;
  int selected_index;
};

G_DEFINE_FINAL_TYPE (LbSession, lb_session, G_TYPE_OBJECT)

enum
{
  PROP_NAME = 1,
  PROP_MODIFIED,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_UNDO_LABEL,
  PROP_REDO_LABEL,
  N_PROPS
};

enum
{
  EDITED,
  SOLVED,
  REWORDED,
  SELECTED,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

static void
notify_document (LbSession *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_NAME]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_MODIFIED]);
}

static void
notify_history (LbSession *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_CAN_UNDO]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_CAN_REDO]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_UNDO_LABEL]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_REDO_LABEL]);
}

static void
solve (LbSession *self, gint64 longest_wait)
{
  lb_solver_request_and_wait (self->solver, lb_document_get_setup (self->document), longest_wait);
}

static void
solved_cb (LbSession *self, LbResult *result)
{
  g_set_object (&self->result, result);
  g_signal_emit (self, signals[SOLVED], 0);
}

/* Whether the document has that part. */
static gboolean
has_part (LbSession *self, LbPickKind kind, int index)
{
  const LbSetup *setup = lb_document_get_setup (self->document);

  switch (kind)
    {
    case LB_PICK_ATTACHMENT:
    case LB_PICK_LEADER:
    case LB_PICK_LURE:
      return index >= 0 && (gsize) index < setup->rig.n_leaders;
    case LB_PICK_BED_POINT:
      return index >= 0 && (gsize) index < setup->river.n_bed_points;
    default:
      return index == 0;
    }
}

static void
drop_lost_selection (LbSession *self)
{
  if (!has_part (self, self->selected, self->selected_index))
    lb_session_select (self, LB_PICK_NOTHING, 0);
}

static void
document_changed_cb (LbSession *self)
{
  drop_lost_selection (self);
  g_signal_emit (self, signals[EDITED], 0);
  solve (self, LONGEST_WAIT_US);
}

static void
reworded_cb (LbSession *self)
{
  g_signal_emit (self, signals[REWORDED], 0);
}

static void
drop_document (LbSession *self)
{
  if (self->history)
    g_signal_handlers_disconnect_by_data (self->history, self);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->history);
  g_clear_object (&self->document);
}

static void
lb_session_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  LbSession *self = LB_SESSION (object);

  switch (id)
    {
    case PROP_NAME:
      g_value_take_string (value, lb_document_dup_display_name (self->document));
      break;
    case PROP_MODIFIED:
      g_value_set_boolean (value, lb_document_get_modified (self->document));
      break;
    case PROP_CAN_UNDO:
      g_value_set_boolean (value, lb_history_get_can_undo (self->history));
      break;
    case PROP_CAN_REDO:
      g_value_set_boolean (value, lb_history_get_can_redo (self->history));
      break;
    case PROP_UNDO_LABEL:
      g_value_set_string (value, lb_history_get_undo_label (self->history));
      break;
    case PROP_REDO_LABEL:
      g_value_set_string (value, lb_history_get_redo_label (self->history));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
lb_session_dispose (GObject *object)
{
  LbSession *self = LB_SESSION (object);

  drop_document (self);
  if (self->solver)
    g_signal_handlers_disconnect_by_data (self->solver, self);
  g_clear_object (&self->solver);
  g_clear_object (&self->result);
  g_clear_object (&self->preferences);
  g_clear_object (&self->appearance);
  G_OBJECT_CLASS (lb_session_parent_class)->dispose (object);
}

static guint
make_signal (const char *name)
{
  return g_signal_new (name, LB_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                       0);
}

static void
lb_session_class_init (LbSessionClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS;

  object_class->dispose = lb_session_dispose;
  object_class->get_property = lb_session_get_property;

  props[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, NULL, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  props[PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, flags);
  props[PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, flags);
  props[PROP_UNDO_LABEL] = g_param_spec_string ("undo-label", NULL, NULL, NULL, flags);
  props[PROP_REDO_LABEL] = g_param_spec_string ("redo-label", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[EDITED] = make_signal ("edited");
  signals[SOLVED] = make_signal ("solved");
  signals[REWORDED] = make_signal ("reworded");
  signals[SELECTED] = make_signal ("selected");
}

static void
lb_session_init (LbSession *self)
{
  self->solver = lb_solver_new ();
  g_signal_connect_swapped (self->solver, "solved", G_CALLBACK (solved_cb), self);
}

LbSession *
lb_session_new (LbPreferences *preferences, LbAppearance *appearance)
{
  LbSession *self = g_object_new (LB_TYPE_SESSION, NULL);

  self->preferences = g_object_ref (preferences);
  self->appearance = g_object_ref (appearance);
  g_signal_connect_object (preferences, "notify::units", G_CALLBACK (reworded_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (preferences, "notify::decimals", G_CALLBACK (reworded_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (preferences, "notify::level-within", G_CALLBACK (reworded_cb), self,
                           G_CONNECT_SWAPPED);
  lb_session_open_new (self);
  return self;
}

LbPreferences *
lb_session_get_preferences (LbSession *self)
{
  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  return self->preferences;
}

LbAppearance *
lb_session_get_appearance (LbSession *self)
{
  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  return self->appearance;
}

LbUnits
lb_session_get_units (LbSession *self)
{
  g_return_val_if_fail (LB_IS_SESSION (self), LB_UNITS_US);
  return lb_preferences_get_units (self->preferences);
}

LbDocument *
lb_session_get_document (LbSession *self)
{
  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  return self->document;
}

void
lb_session_set_document (LbSession *self, LbDocument *document)
{
  g_return_if_fail (LB_IS_SESSION (self));
  g_return_if_fail (LB_IS_DOCUMENT (document));

  g_object_ref (document);
  drop_document (self);
  self->document = document;
  self->history = lb_history_new (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (document_changed_cb), self);
  g_signal_connect_swapped (document, "notify", G_CALLBACK (notify_document), self);
  g_signal_connect_swapped (self->history, "notify", G_CALLBACK (notify_history), self);

  notify_document (self);
  notify_history (self);
  lb_session_select (self, LB_PICK_NOTHING, 0);
  g_signal_emit (self, signals[EDITED], 0);
  solve (self, LONGEST_FIRST_WAIT_US);
}

gboolean
lb_session_open (LbSession *self, GFile *file, GError **error)
{
  g_autoptr (LbDocument) document = NULL;

  g_return_val_if_fail (LB_IS_SESSION (self), FALSE);
  document = lb_document_load (file, error);
  if (!document)
    return FALSE;
  lb_session_set_document (self, document);
  return TRUE;
}

gboolean
lb_session_open_copy (LbSession *self, GFile *file, GError **error)
{
  g_autoptr (LbDocument) document = NULL;
  g_autoptr (LbDocument) copy = NULL;

  g_return_val_if_fail (LB_IS_SESSION (self), FALSE);
  document = lb_document_load (file, error);
  if (!document)
    return FALSE;
  copy = lb_document_new_with (lb_document_get_contents (document));
  lb_session_set_document (self, copy);
  return TRUE;
}

void
lb_session_open_new (LbSession *self)
{
  g_autoptr (LbContents) contents = lb_contents_new ();
  g_autoptr (LbDocument) document = NULL;
  double low, high;

  g_return_if_fail (LB_IS_SESSION (self));
  lb_preferences_get_band (self->preferences, &low, &high);
  if (low < high)
    contents->setup.band = (LbBand){ low, high };
  document = lb_document_new_with (contents);
  lb_session_set_document (self, document);
}

gboolean
lb_session_save (LbSession *self, GFile *file, GError **error)
{
  g_return_val_if_fail (LB_IS_SESSION (self), FALSE);
  return lb_history_save (self->history, file, error);
}

gboolean
lb_session_save_over (LbSession *self, GFile *file, GError **error)
{
  g_return_val_if_fail (LB_IS_SESSION (self), FALSE);
  return lb_history_save_over (self->history, file, error);
}

gboolean
lb_session_do (LbSession *self, LbChange *change)
{
  g_return_val_if_fail (LB_IS_SESSION (self), FALSE);
  return lb_history_do (self->history, change);
}

gboolean
lb_session_set_value (
    LbSession *self, const LbField *field, gsize leader, double value, guint gesture)
{
  LbChange *change;

  g_return_val_if_fail (LB_IS_SESSION (self), FALSE);
  change = lb_change_new_value (field, leader, value);
  lb_change_set_gesture (change, gesture);
  return lb_session_do (self, change);
}

double
lb_session_get_value (LbSession *self, const LbField *field, gsize leader)
{
  g_return_val_if_fail (LB_IS_SESSION (self), 0);
  return lb_document_get_value (self->document, field, leader);
}

guint
lb_session_new_gesture (LbSession *self)
{
  g_return_val_if_fail (LB_IS_SESSION (self), 0);
  return lb_history_new_gesture (self->history);
}

gboolean
lb_session_cancel_gesture (LbSession *self, guint gesture)
{
  g_return_val_if_fail (LB_IS_SESSION (self), FALSE);
  return lb_history_cancel_gesture (self->history, gesture);
}

static gboolean
same_leader (const LbLeader *a, const LbLeader *b)
{
  return memcmp (a, b, sizeof *a) == 0;
}

/* A step of the history; a leader that comes back with it is selected, so that it is in sight. */
static void
step (LbSession *self, gboolean (*step_history) (LbHistory *history))
{
  const LbRig *rig = &lb_document_get_setup (self->document)->rig;
  g_autofree LbRig *before = g_memdup2 (rig, sizeof *rig);
  gsize back = 0;

  step_history (self->history);
  rig = &lb_document_get_setup (self->document)->rig;
  if (rig->n_leaders <= before->n_leaders)
    return;
  while (back < before->n_leaders && same_leader (&rig->leaders[back], &before->leaders[back]))
    back++;
  lb_session_select (self, LB_PICK_LEADER, (int) back);
}

void
lb_session_undo (LbSession *self)
{
  g_return_if_fail (LB_IS_SESSION (self));
  step (self, lb_history_undo);
}

void
lb_session_redo (LbSession *self)
{
  g_return_if_fail (LB_IS_SESSION (self));
  step (self, lb_history_redo);
}

void
lb_session_get_selected (LbSession *self, LbPickKind *kind, int *index)
{
  g_return_if_fail (LB_IS_SESSION (self));
  *kind = self->selected;
  *index = self->selected_index;
}

void
lb_session_select (LbSession *self, LbPickKind kind, int index)
{
  g_return_if_fail (LB_IS_SESSION (self));
  if ((kind == self->selected && index == self->selected_index) || !has_part (self, kind, index))
    return;
  self->selected = kind;
  self->selected_index = index;
  g_signal_emit (self, signals[SELECTED], 0);
}

LbResult *
lb_session_get_result (LbSession *self)
{
  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  return self->result;
}

void
lb_session_get_picture (LbSession *self, LbPicture *picture)
{
  g_return_if_fail (LB_IS_SESSION (self));

  *picture = (LbPicture){
    .setup = lb_document_get_setup (self->document),
    .units = lb_session_get_units (self),
    .decimal = lb_words_decimal (),
    .decimals_plus_1 = lb_preferences_get_decimals (self->preferences) + 1,
    .title = lb_document_get_title (self->document),
  };
  for (gsize i = 0; i < LB_MAX_LEADERS; i++)
    picture->lure_names[i] = lb_document_get_lure_name (self->document, i);
  if (!self->result)
    return;
  /* The answer is drawn in the river it was solved for, should a later one not be there yet. */
  picture->setup = lb_result_get_setup (self->result);
  picture->shape = lb_result_get_shape (self->result);
  picture->readings = lb_result_get_readings (self->result);
  picture->status = lb_result_get_status (self->result);
}

LbWording
lb_session_get_wording (LbSession *self)
{
  g_return_val_if_fail (LB_IS_SESSION (self), lb_wording_default (LB_UNITS_US));
  return (LbWording){ lb_session_get_units (self), lb_preferences_get_decimals (self->preferences),
                      lb_preferences_get_level_within (self->preferences) };
}

char *
lb_session_dup_sentence (LbSession *self)
{
  LbWording wording = lb_session_get_wording (self);

  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  return self->result ? lb_sentence_of_result (self->result, &wording) : NULL;
}

LbReadingsTable *
lb_session_dup_table (LbSession *self)
{
  LbWording wording = lb_session_get_wording (self);

  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  if (!self->result)
    return NULL;
  return lb_readings_table_new (self->result, lb_document_get_contents (self->document), &wording);
}

GPtrArray *
lb_session_dup_cautions (LbSession *self)
{
  LbWording wording = lb_session_get_wording (self);

  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  return lb_cautions_new (lb_document_get_setup (self->document), self->result, &wording);
}

char *
lb_session_dup_words (LbSession *self, LbQuantity quantity, double value)
{
  g_return_val_if_fail (LB_IS_SESSION (self), NULL);
  return lb_words_quantity (quantity, lb_session_get_units (self), value,
                            lb_preferences_get_decimals (self->preferences));
}
