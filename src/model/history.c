/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "history.h"

#include "document_private.h"

struct _LbHistory
{
  GObject parent_instance;

  LbDocument *document;
  GPtrArray *changes; /* (element-type LbChange) */
  guint position;     /* how many of them are applied */
  gint saved;         /* the position as in the file; -1: cannot be reached any more */
  guint last_gesture;
};

G_DEFINE_FINAL_TYPE (LbHistory, lb_history, G_TYPE_OBJECT)

enum
{
  PROP_CAN_UNDO = 1,
  PROP_CAN_REDO,
  PROP_UNDO_LABEL,
  PROP_REDO_LABEL,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

static void
lb_history_finalize (GObject *object)
{
  LbHistory *self = LB_HISTORY (object);

  g_ptr_array_unref (self->changes);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (lb_history_parent_class)->finalize (object);
}

static void
lb_history_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  LbHistory *self = LB_HISTORY (object);

  switch (prop_id)
    {
    case PROP_CAN_UNDO:
      g_value_set_boolean (value, lb_history_get_can_undo (self));
      break;
    case PROP_CAN_REDO:
      g_value_set_boolean (value, lb_history_get_can_redo (self));
      break;
    case PROP_UNDO_LABEL:
      g_value_set_string (value, lb_history_get_undo_label (self));
      break;
    case PROP_REDO_LABEL:
      g_value_set_string (value, lb_history_get_redo_label (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
lb_history_class_init (LbHistoryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->finalize = lb_history_finalize;
  object_class->get_property = lb_history_get_property;

  props[PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, flags);
  props[PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, flags);
  props[PROP_UNDO_LABEL] = g_param_spec_string ("undo-label", NULL, NULL, NULL, flags);
  props[PROP_REDO_LABEL] = g_param_spec_string ("redo-label", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
lb_history_init (LbHistory *self)
{
  self->changes = g_ptr_array_new_with_free_func ((GDestroyNotify) lb_change_free);
}

LbHistory *
lb_history_new (LbDocument *document)
{
  LbHistory *self;

  g_return_val_if_fail (LB_IS_DOCUMENT (document), NULL);
  self = g_object_new (LB_TYPE_HISTORY, NULL);
  self->document = g_object_ref (document);
  /* What was recovered is in no file. */
  self->saved = lb_document_get_modified (document) ? -1 : 0;
  return self;
}

/* After every step: the document and whoever shows the two buttons must know. */
static void
tell (LbHistory *self)
{
  lb_document_set_modified (self->document, (gint) self->position != self->saved);
  for (guint i = 1; i < N_PROPS; i++)
    g_object_notify_by_pspec (G_OBJECT (self), props[i]);
}

/* What was undone is gone once something else is done. */
static void
forget_undone (LbHistory *self)
{
  if (self->position == self->changes->len)
    return;
  g_ptr_array_set_size (self->changes, (gint) self->position);
  if (self->saved > (gint) self->position)
    self->saved = -1;
}

static void
forget_oldest (LbHistory *self)
{
  if (self->changes->len <= LB_HISTORY_LONGEST)
    return;
  g_ptr_array_remove_index (self->changes, 0);
  self->position--;
  self->saved = MAX (self->saved - 1, -1);
}

static LbChange *
last_change (LbHistory *self)
{
  return self->position > 0 ? g_ptr_array_index (self->changes, self->position - 1) : NULL;
}

static void
drop_last (LbHistory *self)
{
  g_ptr_array_set_size (self->changes, (gint) --self->position);
  if (self->saved > (gint) self->position)
    self->saved = -1;
}

/* Lets the last step take `change` over, if it can. */
static gboolean
merge_into_last (LbHistory *self, const LbChange *change)
{
  LbChange *last = last_change (self);

  if (last == NULL || (gint) self->position == self->saved || !lb_change_merge (last, change))
    return FALSE;
  if (lb_change_is_idle (last))
    drop_last (self);
  return TRUE;
}

gboolean
lb_history_do (LbHistory *self, LbChange *change)
{
  g_autoptr (LbChange) owned = change;

  g_return_val_if_fail (LB_IS_HISTORY (self), FALSE);
  if (change == NULL || !lb_change_apply (change, self->document))
    return FALSE;

  forget_undone (self);
  if (!merge_into_last (self, change))
    {
      g_ptr_array_add (self->changes, g_steal_pointer (&owned));
      self->position++;
      forget_oldest (self);
    }
  tell (self);
  return TRUE;
}

gboolean
lb_history_cancel_gesture (LbHistory *self, guint gesture)
{
  gboolean any = FALSE;

  g_return_val_if_fail (LB_IS_HISTORY (self), FALSE);
  if (gesture == 0 || self->position != self->changes->len)
    return FALSE;
  /* Other things done in the same gesture, and a save in the middle of it, make further steps. */
  while (last_change (self) && lb_change_get_gesture (last_change (self)) == gesture)
    {
      lb_change_revert (last_change (self), self->document);
      drop_last (self);
      any = TRUE;
    }
  if (any)
    tell (self);
  return any;
}

gboolean
lb_history_undo (LbHistory *self)
{
  if (!lb_history_get_can_undo (self))
    return FALSE;
  lb_change_revert (g_ptr_array_index (self->changes, --self->position), self->document);
  tell (self);
  return TRUE;
}

gboolean
lb_history_redo (LbHistory *self)
{
  if (!lb_history_get_can_redo (self))
    return FALSE;
  lb_change_repeat (g_ptr_array_index (self->changes, self->position++), self->document);
  tell (self);
  return TRUE;
}

gboolean
lb_history_get_can_undo (LbHistory *self)
{
  g_return_val_if_fail (LB_IS_HISTORY (self), FALSE);
  return self->position > 0;
}

gboolean
lb_history_get_can_redo (LbHistory *self)
{
  g_return_val_if_fail (LB_IS_HISTORY (self), FALSE);
  return self->position < self->changes->len;
}

const char *
lb_history_get_undo_label (LbHistory *self)
{
  if (!lb_history_get_can_undo (self))
    return NULL;
  return lb_change_get_label (g_ptr_array_index (self->changes, self->position - 1));
}

const char *
lb_history_get_redo_label (LbHistory *self)
{
  if (!lb_history_get_can_redo (self))
    return NULL;
  return lb_change_get_label (g_ptr_array_index (self->changes, self->position));
}

guint
lb_history_new_gesture (LbHistory *self)
{
  g_return_val_if_fail (LB_IS_HISTORY (self), 0);
  return ++self->last_gesture;
}

void
lb_history_mark_saved (LbHistory *self)
{
  g_return_if_fail (LB_IS_HISTORY (self));
  self->saved = (gint) self->position;
  tell (self);
}

gboolean
lb_history_save (LbHistory *self, GFile *file, GError **error)
{
  g_return_val_if_fail (LB_IS_HISTORY (self), FALSE);
  if (!lb_document_save (self->document, file, error))
    return FALSE;
  lb_history_mark_saved (self);
  return TRUE;
}

gboolean
lb_history_save_over (LbHistory *self, GFile *file, GError **error)
{
  g_return_val_if_fail (LB_IS_HISTORY (self), FALSE);
  if (!lb_document_save_over (self->document, file, error))
    return FALSE;
  lb_history_mark_saved (self);
  return TRUE;
}

LbDocument *
lb_history_get_document (LbHistory *self)
{
  g_return_val_if_fail (LB_IS_HISTORY (self), NULL);
  return self->document;
}
