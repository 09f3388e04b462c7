/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "change.h"

#include <glib/gi18n-lib.h>

#include "change_private.h"
#include "change_state.h"
#include "document_private.h"

static void
put_and_tell (const LbChange *change, LbDocument *document, const LbChangeState *state)
{
  lb_change_state_put (change, lb_document_edit (document), state);
  if (change->kind == LB_CHANGE_TITLE)
    lb_document_notify_title (document);
  lb_document_emit_changed (document);
}

/* ---- Making ---- */

static LbChange *
change_new (LbChangeKind kind, size_t leader, char *label)
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
change_new_text (
    LbChangeKind kind, size_t leader, const char *text, glong longest, const char *label)
{
  LbChange *change = change_new (kind, leader, g_strdup (label));

  change->after.text = lb_change_mend_text (text, kind != LB_CHANGE_NOTES, longest);
  return change;
}

LbChange *
lb_change_new_patch (size_t offset, size_t size, const void *bytes, char *label)
{
  LbChange *change = change_new (LB_CHANGE_PATCH, 0, label);

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
  /* Translators: a step that can be undone; %s is the name of a value as the window shows it */
  change = change_new (LB_CHANGE_VALUE, leader, g_strdup_printf (_ ("Change “%s”"), name));
  change->field = field;
  change->after.value = lb_field_clamp (field, value);
  return change;
}

LbChange *
lb_change_new_title (const char *title)
{
  return change_new_text (LB_CHANGE_TITLE, 0, title, LB_TITLE_LONGEST, _ ("Change the title"));
}

LbChange *
lb_change_new_notes (const char *notes)
{
  return change_new_text (LB_CHANGE_NOTES, 0, notes, LB_NOTES_LONGEST, _ ("Change the notes"));
}

LbChange *
lb_change_new_lure_name (size_t leader, const char *name)
{
  g_return_val_if_fail (leader < LB_MAX_LEADERS, NULL);
  return change_new_text (LB_CHANGE_LURE_NAME, leader, name, LB_NAME_LONGEST,
                          _ ("Change the name of a lure"));
}

LbChange *
lb_change_new_setup (const LbSetup *setup, const char *const *lure_names, const char *label)
{
  LbChange *change;

  if (!lb_setup_validate (setup, NULL))
    return NULL;
  change = change_new (LB_CHANGE_SETUP, 0, g_strdup (label));
  change->after.setup = lb_change_dup_setup (setup);
  change->after.lure_names = lure_names ? lb_change_dup_names (lure_names) : NULL;
  return change;
}

LbChange *
lb_change_new_variants (const LbVariants *variants, const char *label)
{
  LbChange *change = change_new (LB_CHANGE_VARIANTS, 0, g_strdup (label));

  change->after.variants = lb_change_dup_variants (variants);
  return change;
}

void
lb_change_add_variants (LbChange *change, const LbVariants *variants)
{
  if (change)
    change->after.variants = lb_change_dup_variants (variants);
}

LbChange *
lb_change_new_card (const LbCard *card, const char *label)
{
  LbChange *change =
      change_new (LB_CHANGE_CARD, 0, g_strdup (label ? label : _ ("Change the card")));

  change->after.card = g_memdup2 (card, sizeof *card);
  lb_card_mend (change->after.card);
  return change;
}

LbChange *
lb_change_new_pass (const LbPassScript *script, const char *label)
{
  LbChange *change =
      change_new (LB_CHANGE_PASS, 0, g_strdup (label ? label : _ ("Change the pass")));

  change->after.pass = g_memdup2 (script, sizeof *script);
  lb_pass_script_mend (change->after.pass);
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
  lb_change_state_clear (&change->before);
  lb_change_state_clear (&change->after);
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

  lb_change_state_put (change, trial, &change->after);
  if (lb_contents_equal (trial, contents) || !lb_setup_validate (&trial->setup, NULL))
    return FALSE;
  lb_change_state_take (change, contents, &change->before);
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

gboolean
lb_change_is_idle (const LbChange *change)
{
  return lb_change_state_same (change, &change->before, &change->after);
}

gboolean
lb_change_merge (LbChange *change, const LbChange *next)
{
  if (change->gesture == 0 || change->gesture != next->gesture || change->kind != next->kind
      || change->field != next->field || change->leader != next->leader
      || change->offset != next->offset || change->size != next->size
      || (change->after.text == NULL) != (next->after.text == NULL)
      || (change->after.lure_names == NULL) != (next->after.lure_names == NULL)
      || (change->after.variants == NULL) != (next->after.variants == NULL))
    return FALSE;
  lb_change_state_replace (change, &change->after, &next->after);
  return TRUE;
}
