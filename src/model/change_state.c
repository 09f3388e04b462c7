/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "change_state.h"

#include <string.h>

#include "change_private.h"

void
lb_change_state_clear (LbChangeState *state)
{
  g_clear_pointer (&state->setup, g_free);
  g_clear_pointer (&state->bytes, g_free);
  g_clear_pointer (&state->text, g_free);
  g_clear_pointer (&state->lure_names, g_strfreev);
  g_clear_pointer (&state->variants, g_free);
  g_clear_pointer (&state->card, g_free);
  g_clear_pointer (&state->pass, g_free);
}

LbSetup *
lb_change_dup_setup (const LbSetup *setup)
{
  return g_memdup2 (setup, sizeof *setup);
}

LbVariants *
lb_change_dup_variants (const LbVariants *variants)
{
  return g_memdup2 (variants, sizeof *variants);
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
    case LB_CHANGE_TITLE:
      return &contents->title;
    case LB_CHANGE_NOTES:
      return &contents->notes;
    case LB_CHANGE_LURE_NAME:
      return &contents->lure_names[change->leader];
    case LB_CHANGE_PATCH:
      return change->after.text ? &contents->lure_names[change->leader] : NULL;
    default:
      return NULL;
    }
}

static guint8 *
bytes_in (const LbChange *change, LbContents *contents)
{
  return change->kind == LB_CHANGE_PATCH ? (guint8 *) &contents->setup + change->offset : NULL;
}

void
lb_change_state_take (const LbChange *change, LbContents *contents, LbChangeState *state)
{
  char **text = text_in (change, contents);
  guint8 *bytes = bytes_in (change, contents);

  lb_change_state_clear (state);
  if (text)
    state->text = g_strdup (*text);
  if (bytes)
    state->bytes = g_memdup2 (bytes, change->size);
  if (change->kind == LB_CHANGE_VALUE)
    state->value = lb_field_get (change->field, &contents->setup, change->leader);
  if (change->kind == LB_CHANGE_SETUP
      || (change->kind == LB_CHANGE_VALUE && brings_others_along (change->field)))
    state->setup = lb_change_dup_setup (&contents->setup);
  if (change->kind == LB_CHANGE_SETUP && change->after.lure_names)
    state->lure_names = lb_change_dup_names ((const char *const *) contents->lure_names);
  if (change->after.variants)
    state->variants = lb_change_dup_variants (&contents->variants);
  if (change->kind == LB_CHANGE_CARD)
    state->card = g_memdup2 (&contents->card, sizeof contents->card);
  if (change->kind == LB_CHANGE_PASS)
    state->pass = g_memdup2 (&contents->pass, sizeof contents->pass);
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

void
lb_change_state_put (const LbChange *change, LbContents *contents, const LbChangeState *state)
{
  char **text = text_in (change, contents);

  if (text)
    {
      g_free (*text);
      *text = g_strdup (state->text);
    }
  if (state->bytes)
    memcpy (bytes_in (change, contents), state->bytes, change->size);
  if (state->variants)
    contents->variants = *state->variants;
  if (state->card)
    contents->card = *state->card;
  if (state->pass)
    contents->pass = *state->pass;
  if (state->setup)
    {
      contents->setup = *state->setup;
      put_names (contents, state->lure_names);
    }
  else if (change->kind == LB_CHANGE_VALUE)
    {
      lb_field_set (change->field, &contents->setup, change->leader, state->value);
      lb_profile_complete (&contents->setup.river.profile);
    }
}

void
lb_change_state_replace (const LbChange *change, LbChangeState *to, const LbChangeState *from)
{
  LbChangeState old = *to;

  to->value = from->value;
  to->setup = from->setup ? lb_change_dup_setup (from->setup) : NULL;
  to->bytes = from->bytes ? g_memdup2 (from->bytes, change->size) : NULL;
  to->text = g_strdup (from->text);
  to->lure_names =
      from->lure_names ? lb_change_dup_names ((const char *const *) from->lure_names) : NULL;
  to->variants = from->variants ? lb_change_dup_variants (from->variants) : NULL;
  to->card = from->card ? g_memdup2 (from->card, sizeof *from->card) : NULL;
  to->pass = from->pass ? g_memdup2 (from->pass, sizeof *from->pass) : NULL;
  lb_change_state_clear (&old);
}

static bool
same_names (char **a, char **b)
{
  for (size_t i = 0; a && b && i < LB_MAX_LEADERS; i++)
    if (!g_str_equal (a[i], b[i]))
      return false;
  return true;
}

bool
lb_change_state_same (const LbChange *change, const LbChangeState *a, const LbChangeState *b)
{
  if (g_strcmp0 (a->text, b->text) != 0
      || (a->bytes && memcmp (a->bytes, b->bytes, change->size) != 0))
    return false;
  if (a->variants && !lb_variants_equal (a->variants, b->variants))
    return false;
  if (a->card)
    return lb_card_equal (a->card, b->card);
  if (a->pass)
    return lb_pass_script_equal (a->pass, b->pass);
  if (a->setup)
    return lb_setup_equal (a->setup, b->setup) && same_names (a->lure_names, b->lure_names);
  return memcmp (&a->value, &b->value, sizeof a->value) == 0
         || (isnan (a->value) && isnan (b->value));
}
