/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document.h"

#include <glib/gi18n-lib.h>

#include "document_private.h"
#include "file_watch.h"

struct _LbDocument
{
  GObject parent_instance;

  LbContents contents;
  GFile *file;
  LbFileWatch *watch; /* of that file */
  gboolean modified;
};

G_DEFINE_FINAL_TYPE (LbDocument, lb_document, G_TYPE_OBJECT)

enum
{
  PROP_FILE = 1,
  PROP_MODIFIED,
  PROP_TITLE,
  PROP_FILE_CHANGED,
  N_PROPS
};

enum
{
  CHANGED,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

static void
lb_document_finalize (GObject *object)
{
  LbDocument *self = LB_DOCUMENT (object);

  lb_contents_clear (&self->contents);
  g_clear_object (&self->file);
  lb_file_watch_free (self->watch);
  G_OBJECT_CLASS (lb_document_parent_class)->finalize (object);
}

static void
lb_document_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  LbDocument *self = LB_DOCUMENT (object);

  switch (prop_id)
    {
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    case PROP_MODIFIED:
      g_value_set_boolean (value, self->modified);
      break;
    case PROP_TITLE:
      g_value_set_string (value, self->contents.title);
      break;
    case PROP_FILE_CHANGED:
      g_value_set_boolean (value, lb_document_get_file_changed (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
lb_document_class_init (LbDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->finalize = lb_document_finalize;
  object_class->get_property = lb_document_get_property;

  props[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, "", flags);
  props[PROP_FILE_CHANGED] = g_param_spec_boolean ("file-changed", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
file_changed_cb (void *data)
{
  g_object_notify_by_pspec (G_OBJECT (data), props[PROP_FILE_CHANGED]);
}

static void
lb_document_init (LbDocument *self)
{
  self->watch = lb_file_watch_new (file_changed_cb, self);
  lb_contents_init (&self->contents);
}

LbDocument *
lb_document_new (void)
{
  return g_object_new (LB_TYPE_DOCUMENT, NULL);
}

LbDocument *
lb_document_new_with (const LbContents *contents)
{
  LbDocument *self = lb_document_new ();

  lb_contents_copy (&self->contents, contents);
  return self;
}

/* ---- The file on the disk ---- */

void
lb_document_set_file (LbDocument *self, GFile *file, const char *mark)
{
  gboolean was_changed = lb_document_get_file_changed (self);

  lb_file_watch_set (self->watch, file, mark);
  if (g_set_object (&self->file, file))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FILE]);
  if (was_changed)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FILE_CHANGED]);
}

LbFileState
lb_document_get_file_state (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), LB_FILE_SAME);
  return lb_file_watch_get_state (self->watch);
}

gboolean
lb_document_get_file_changed (LbDocument *self)
{
  return lb_document_get_file_state (self) != LB_FILE_SAME;
}

LbFileState
lb_document_check_file (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), LB_FILE_SAME);
  return lb_file_watch_look (self->watch);
}

void
lb_document_watch_file (LbDocument *self)
{
  g_return_if_fail (LB_IS_DOCUMENT (self));
  lb_file_watch_start (self->watch);
}

const char *
lb_document_get_file_mark (LbDocument *self)
{
  return lb_file_watch_get_mark (self->watch);
}

/* ---- Getters ---- */

const LbContents *
lb_document_get_contents (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  return &self->contents;
}

const LbSetup *
lb_document_get_setup (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  return &self->contents.setup;
}

const char *
lb_document_get_title (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  return self->contents.title;
}

const char *
lb_document_get_notes (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  return self->contents.notes;
}

const char *
lb_document_get_lure_name (LbDocument *self, size_t leader)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  g_return_val_if_fail (leader < LB_MAX_LEADERS, NULL);
  return self->contents.lure_names[leader];
}

const LbCard *
lb_document_get_card (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  return &self->contents.card;
}

const LbPassScript *
lb_document_get_pass (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  return &self->contents.pass;
}

double
lb_document_get_value (LbDocument *self, const LbField *field, size_t leader)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), LB_UNSET);
  return lb_field_get (field, &self->contents.setup, leader);
}

GFile *
lb_document_get_file (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  return self->file;
}

gboolean
lb_document_get_modified (LbDocument *self)
{
  g_return_val_if_fail (LB_IS_DOCUMENT (self), FALSE);
  return self->modified;
}

char *
lb_document_dup_display_name (LbDocument *self)
{
  g_autofree char *name = NULL;

  g_return_val_if_fail (LB_IS_DOCUMENT (self), NULL);
  if (*self->contents.title)
    return g_strdup (self->contents.title);
  if (self->file == NULL)
    return g_strdup (_ ("Untitled rig"));
  name = g_file_get_basename (self->file);
  return g_filename_display_name (name);
}

/* ---- For change objects and the history (document_private.h) ---- */

LbContents *
lb_document_edit (LbDocument *self)
{
  return &self->contents;
}

void
lb_document_emit_changed (LbDocument *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

void
lb_document_notify_title (LbDocument *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TITLE]);
}

void
lb_document_set_modified (LbDocument *self, gboolean modified)
{
  if (self->modified == modified)
    return;
  self->modified = modified;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_MODIFIED]);
}
