/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "change.h"

#include <string.h>
#include <glib/gi18n-lib.h>

#include "change_private.h"
#include "current.h"
#include "document_private.h"

/* Of the power law over a rough bed; see DEVELOPERS.md, "Current". */
#define USUAL_EXPONENT 6

typedef enum
{
  KIND_VALUE,
  KIND_TITLE,
  KIND_NOTES,
  KIND_LURE_NAME,
  KIND_PATCH, /* some bytes of the setup */
  KIND_SETUP,
} Kind;

/* What a change puts into the document; only what its kind needs is set. */
typedef struct
{
  double value;      /* KIND_VALUE */
  LbSetup *setup;    /* KIND_SETUP; KIND_VALUE too, when other values follow the one set */
  guint8 *bytes;     /* KIND_PATCH */
  char *text;        /* the three kinds of text; KIND_PATCH: a lure's name, or NULL to leave it */
  char **lure_names; /* KIND_SETUP; LB_MAX_LEADERS names, or NULL to leave them */
} State;

struct LbChange
{
  Kind kind;
  const LbField *field; /* KIND_VALUE */
  size_t leader;
  size_t offset, size; /* KIND_PATCH: in LbSetup */
  guint gesture;
  char *label;
  State before; /* taken when the change is first applied */
  State after;
};

/* ---- States ---- */

static void
state_clear (State *state)
{
  g_clear_pointer (&state->setup, g_free);
  g_clear_pointer (&state->bytes, g_free);
  g_clear_pointer (&state->text, g_free);
  g_clear_pointer (&state->lure_names, g_strfreev);
}

LbSetup *
lb_change_dup_setup (const LbSetup *setup)
{
  return g_memdup2 (setup, sizeof *setup);
}

char **
lb_change_dup_names (const char *const *names)
{
  char **copy = g_new0 (char *, LB_MAX_LEADERS + 1);

  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    copy[i] = g_strdup (names[i]);
  return copy;
}

/* Values that bring others along (see lb_field_set()) are kept as a whole setup, so that taking
 * them back is exact. */
static bool
brings_others_along (const LbField *field)
{
  return field->kind == LB_FIELD_CHOICE || field->applies != NULL;
}

static char **
text_in (const LbChange *change, LbContents *contents)
{
  switch (change->kind)
    {
    case KIND_TITLE:
      return &contents->title;
    case KIND_NOTES:
      return &contents->notes;
    case KIND_LURE_NAME:
      return &contents->lure_names[change->leader];
    case KIND_PATCH:
      return change->after.text ? &contents->lure_names[change->leader] : NULL;
    default:
      return NULL;
    }
}

static guint8 *
bytes_in (const LbChange *change, LbContents *contents)
{
  return change->kind == KIND_PATCH ? (guint8 *) &contents->setup + change->offset : NULL;
}

static void
take_state (const LbChange *change, LbContents *contents, State *state)
{
  char **text = text_in (change, contents);
  guint8 *bytes = bytes_in (change, contents);

  state_clear (state);
  if (text)
    state->text = g_strdup (*text);
  if (bytes)
    state->bytes = g_memdup2 (bytes, change->size);
  if (change->kind == KIND_VALUE)
    state->value = lb_field_get (change->field, &contents->setup, change->leader);
  if (change->kind == KIND_SETUP
      || (change->kind == KIND_VALUE && brings_others_along (change->field)))
    state->setup = lb_change_dup_setup (&contents->setup);
  if (change->kind == KIND_SETUP && change->after.lure_names)
    state->lure_names = lb_change_dup_names ((const char *const *) contents->lure_names);
}

static void
put_names (LbContents *contents, char **names)
{
  for (size_t i = 0; names && i < LB_MAX_LEADERS; i++)
    {
      g_free (contents->lure_names[i]);
      contents->lure_names[i] = g_strdup (names[i]);
    }
}

/* A law that was never chosen before has nothing to go by yet: it begins with gravel, or with the
 * usual exponent. Both are estimates. */
static void
complete_profile (LbProfile *profile)
{
  if (profile->law == LB_PROFILE_LOG && !(profile->roughness > 0))
    {
      profile->material = LB_BED_MATERIAL_GRAVEL;
      profile->roughness = lb_bed_material_roughness (profile->material);
    }
  if (profile->law == LB_PROFILE_POWER && !(profile->exponent > 0))
    profile->exponent = USUAL_EXPONENT;
}

static void
put_state (const LbChange *change, LbContents *contents, const State *state)
{
  char **text = text_in (change, contents);

  if (text)
    {
      g_free (*text);
      *text = g_strdup (state->text);
    }
  if (state->bytes)
    memcpy (bytes_in (change, contents), state->bytes, change->size);
  if (state->setup)
    {
      contents->setup = *state->setup;
      put_names (contents, state->lure_names);
    }
  else if (change->kind == KIND_VALUE)
    {
      lb_field_set (change->field, &contents->setup, change->leader, state->value);
      complete_profile (&contents->setup.river.profile);
    }
}

static void
put_and_tell (const LbChange *change, LbDocument *document, const State *state)
{
  put_state (change, lb_document_edit (document), state);
  if (change->kind == KIND_TITLE)
    lb_document_notify_title (document);
  lb_document_emit_changed (document);
}

/* ---- Making ---- */

static LbChange *
change_new (Kind kind, size_t leader, char *label)
{
  LbChange *change = g_new0 (LbChange, 1);

  change->kind = kind;
  change->leader = leader;
  change->label = label;
  return change;
}

char *
lb_change_mend_text (const char *text, gboolean one_line, glong longest)
{
  g_autofree char *utf8 = g_utf8_make_valid (text, -1);
  g_autofree char *valid = one_line ? lb_text_to_one_line (utf8) : g_steal_pointer (&utf8);

  return g_utf8_strlen (valid, -1) > longest ? g_utf8_substring (valid, 0, longest)
                                             : g_steal_pointer (&valid);
}

static LbChange *
change_new_text (Kind kind, size_t leader, const char *text, glong longest, const char *label)
{
  LbChange *change = change_new (kind, leader, g_strdup (label));

  change->after.text = lb_change_mend_text (text, kind != KIND_NOTES, longest);
  return change;
}

LbChange *
lb_change_new_patch (size_t offset, size_t size, const void *bytes, char *label)
{
  LbChange *change = change_new (KIND_PATCH, 0, label);

  change->offset = offset;
  change->size = size;
  change->after.bytes = g_memdup2 (bytes, size);
  return change;
}

void
lb_change_add_lure_name (LbChange *change, size_t leader, const char *name)
{
  change->leader = leader;
  change->after.text = lb_change_mend_text (name, TRUE, LB_NAME_LONGEST);
}

LbChange *
lb_change_new_value (const LbField *field, size_t leader, double value)
{
  g_autofree char *name = NULL;
  LbChange *change;

  g_return_val_if_fail (field != NULL && leader < LB_MAX_LEADERS, NULL);
  name = lb_field_full_label (field, leader);
  /* Translators: "Change Boat speed", a step that can be undone */
  change = change_new (KIND_VALUE, leader, g_strdup_printf (_ ("Change %s"), name));
  change->field = field;
  change->after.value = lb_field_clamp (field, value);
  return change;
}

LbChange *
lb_change_new_title (const char *title)
{
  return change_new_text (KIND_TITLE, 0, title, LB_TITLE_LONGEST, _ ("Change the title"));
}

LbChange *
lb_change_new_notes (const char *notes)
{
  return change_new_text (KIND_NOTES, 0, notes, LB_NOTES_LONGEST, _ ("Change the notes"));
}

LbChange *
lb_change_new_lure_name (size_t leader, const char *name)
{
  g_return_val_if_fail (leader < LB_MAX_LEADERS, NULL);
  return change_new_text (KIND_LURE_NAME, leader, name, LB_NAME_LONGEST,
                          _ ("Change the name of a lure"));
}

LbChange *
lb_change_new_setup (const LbSetup *setup, const char *const *lure_names, const char *label)
{
  LbChange *change;

  if (!lb_setup_validate (setup, NULL))
    return NULL;
  change = change_new (KIND_SETUP, 0, g_strdup (label));
  change->after.setup = lb_change_dup_setup (setup);
  change->after.lure_names = lure_names ? lb_change_dup_names (lure_names) : NULL;
  return change;
}

void
lb_change_set_gesture (LbChange *change, guint gesture)
{
  if (change)
    change->gesture = gesture;
}

void
lb_change_free (LbChange *change)
{
  if (change == NULL)
    return;
  state_clear (&change->before);
  state_clear (&change->after);
  g_free (change->label);
  g_free (change);
}

const char *
lb_change_get_label (const LbChange *change)
{
  return change->label;
}

/* ---- Doing ---- */

gboolean
lb_change_apply (LbChange *change, LbDocument *document)
{
  LbContents *contents = lb_document_edit (document);
  g_autoptr (LbContents) trial = lb_contents_dup (contents);

  put_state (change, trial, &change->after);
  if (lb_contents_equal (trial, contents) || !lb_setup_validate (&trial->setup, NULL))
    return FALSE;
  take_state (change, contents, &change->before);
  if (change->after.setup == NULL && change->before.setup != NULL)
    change->after.setup = lb_change_dup_setup (&trial->setup);
  put_and_tell (change, document, &change->after);
  return TRUE;
}

void
lb_change_revert (LbChange *change, LbDocument *document)
{
  put_and_tell (change, document, &change->before);
}

void
lb_change_repeat (LbChange *change, LbDocument *document)
{
  put_and_tell (change, document, &change->after);
}

guint
lb_change_get_gesture (const LbChange *change)
{
  return change->gesture;
}

static bool
same_names (char **a, char **b)
{
  for (size_t i = 0; a && b && i < LB_MAX_LEADERS; i++)
    if (!g_str_equal (a[i], b[i]))
      return false;
  return true;
}

gboolean
lb_change_is_idle (const LbChange *change)
{
  const State *a = &change->before, *b = &change->after;

  if (g_strcmp0 (a->text, b->text) != 0
      || (a->bytes && memcmp (a->bytes, b->bytes, change->size) != 0))
    return FALSE;
  if (a->setup)
    return lb_setup_equal (a->setup, b->setup) && same_names (a->lure_names, b->lure_names);
  return a->value == b->value || (isnan (a->value) && isnan (b->value));
}

static void
take_over (State *to, const State *from, size_t size)
{
  State old = *to;

  to->value = from->value;
  to->setup = from->setup ? lb_change_dup_setup (from->setup) : NULL;
  to->bytes = from->bytes ? g_memdup2 (from->bytes, size) : NULL;
  to->text = g_strdup (from->text);
  to->lure_names =
      from->lure_names ? lb_change_dup_names ((const char *const *) from->lure_names) : NULL;
  state_clear (&old);
}

gboolean
lb_change_merge (LbChange *change, const LbChange *next)
{
  if (change->gesture == 0 || change->gesture != next->gesture || change->kind != next->kind
      || change->field != next->field || change->leader != next->leader
      || change->offset != next->offset || change->size != next->size
      || (change->after.text == NULL) != (next->after.text == NULL)
      || (change->after.lure_names == NULL) != (next->after.lure_names == NULL))
    return FALSE;
  take_over (&change->after, &next->after, change->size);
  return TRUE;
}
