/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes of the rig's parts. */
#include <glib/gi18n-lib.h>

#include "change_private.h"

static char *
label_or (const char *label, const char *plain)
{
  return g_strdup (label ? label : plain);
}

/* ---- Line, weight, lure ---- */

LbChange *
lb_change_new_line_out (LbLineOutMode mode, double value)
{
  LbLineOut line_out = { .mode = mode };

  if (mode == LB_LINE_OUT_GIVEN)
    line_out.value = lb_field_clamp (lb_field ("mainline.line_out.given_m"), value);
  else if (mode == LB_LINE_OUT_WEIGHT_ABOVE_BED)
    line_out.value = lb_field_clamp (lb_field ("mainline.line_out.weight_above_bed_m"), value);
  return LB_CHANGE_NEW_MEMBER (rig.line_out, &line_out, g_strdup (_ ("Change the line out")));
}

LbChange *
lb_change_new_line (LbLineOf of, size_t leader, const LbLine *line, const char *label)
{
  g_return_val_if_fail (line != NULL && leader < LB_MAX_LEADERS, NULL);

  switch (of)
    {
    case LB_LINE_OF_MAINLINE:
      return LB_CHANGE_NEW_MEMBER (rig.mainline, line, label_or (label, _ ("Change the mainline")));
    case LB_LINE_OF_SHANK:
      return LB_CHANGE_NEW_MEMBER (rig.shank, line, label_or (label, _ ("Change the shank")));
    case LB_LINE_OF_LEADER:
      break;
    }
  return LB_CHANGE_NEW_MEMBER (rig.leaders[leader].line, line,
                               label_or (label, _ ("Change the line of a leader")));
}

LbChange *
lb_change_new_weight (const LbWeight *weight, const char *label)
{
  g_return_val_if_fail (weight != NULL, NULL);
  return LB_CHANGE_NEW_MEMBER (rig.weight, weight, label_or (label, _ ("Change the weight")));
}

LbChange *
lb_change_new_lure (size_t leader, const LbLure *lure, const char *name, const char *label)
{
  LbChange *change;

  g_return_val_if_fail (lure != NULL && leader < LB_MAX_LEADERS, NULL);
  change =
      LB_CHANGE_NEW_MEMBER (rig.leaders[leader].lure, lure, label_or (label, _ ("Change a lure")));
  if (name)
    lb_change_add_lure_name (change, leader, name);
  return change;
}

/* ---- Leaders ---- */

/* How much higher up the shank than the one before a leader starts that nothing else is known of.
 */
#define NEXT_ATTACHMENT 0.1524 /* m: 6 in */

/* The leaders of a document, to be put in another order. */
typedef struct
{
  LbSetup *setup;
  char **names; /* LB_MAX_LEADERS */
  LbVariants variants;
} Leaders;

static Leaders
leaders_of (LbDocument *document)
{
  const LbContents *contents = lb_document_get_contents (document);

  return (Leaders){ lb_change_dup_setup (&contents->setup),
                    lb_change_dup_names ((const char *const *) contents->lure_names),
                    contents->variants };
}

static LbChange *
change_of_leaders (Leaders *leaders, const char *label)
{
  LbChange *change =
      lb_change_new_setup (leaders->setup, (const char *const *) leaders->names, label);

  lb_change_add_variants (change, &leaders->variants);
  g_clear_pointer (&leaders->setup, g_free);
  g_clear_pointer (&leaders->names, g_strfreev);
  return change;
}

/* What variants replace of a leader goes where it goes. */
static void
move_in_variants (Leaders *leaders, size_t from, size_t to)
{
  size_t places[LB_MAX_LEADERS];

  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    if (i == from)
      places[i] = to;
    else if (i > from && i <= to)
      places[i] = i - 1;
    else if (i < from && i >= to)
      places[i] = i + 1;
    else
      places[i] = i;
  lb_variants_move_leaders (&leaders->variants, places);
}

/* Moves one of the first `to` or `from` leaders and shifts those between. */
static void
move (Leaders *leaders, size_t from, size_t to)
{
  LbLeader *list = leaders->setup->rig.leaders;
  LbLeader leader = list[from];
  char *name = leaders->names[from];

  for (size_t i = from; i != to; i += to > from ? 1 : -1)
    {
      size_t next = to > from ? i + 1 : i - 1;

      list[i] = list[next];
      leaders->names[i] = leaders->names[next];
    }
  list[to] = leader;
  leaders->names[to] = name;
  move_in_variants (leaders, from, to);
}

/* Puts a copy of leader `from` behind the last one. */
static void
append_copy (Leaders *leaders, size_t from)
{
  LbRig *rig = &leaders->setup->rig;
  LbLeader *added = &rig->leaders[rig->n_leaders];

  *added = rig->leaders[from];
  added->attach_above_weight =
      MIN (added->attach_above_weight + NEXT_ATTACHMENT, rig->shank_length);
  if (rig->n_leaders != from)
    {
      g_free (leaders->names[rig->n_leaders]);
      leaders->names[rig->n_leaders] = g_strdup (leaders->names[from]);
    }
  rig->n_leaders++;
}

/* The last leader goes on as those before it do: 10 and 20 ft are followed by 30, 22 and 30 in by
 * 38. The second of all is twice as long as the first. */
static void
carry_on (LbRig *rig)
{
  LbLeader *added = &rig->leaders[rig->n_leaders - 1];
  const LbLeader *last = added - 1;
  double longest = 0, gap = last->length, higher = NEXT_ATTACHMENT;

  for (size_t i = 0; i + 1 < rig->n_leaders; i++)
    longest = fmax (longest, rig->leaders[i].length);
  if (rig->n_leaders > 2)
    {
      gap = fabs (last->length - last[-1].length);
      if (last->attach_above_weight > last[-1].attach_above_weight)
        higher = last->attach_above_weight - last[-1].attach_above_weight;
    }
  added->length = lb_field_clamp (lb_field ("leaders[].length_m"), longest + gap);
  added->attach_above_weight = fmin (last->attach_above_weight + higher, rig->shank_length);
}

static size_t
count_leaders (LbDocument *document)
{
  return lb_document_get_setup (document)->rig.n_leaders;
}

LbChange *
lb_change_new_add_leader (LbDocument *document)
{
  size_t n = count_leaders (document);
  Leaders leaders;

  if (n >= LB_MAX_LEADERS)
    return NULL;
  leaders = leaders_of (document);
  if (n == 0)
    {
      leaders.setup->rig.leaders[0] = lb_setup_default ().rig.leaders[0];
      leaders.setup->rig.leaders[0].attach_above_weight =
          MIN (leaders.setup->rig.leaders[0].attach_above_weight, leaders.setup->rig.shank_length);
      leaders.setup->rig.n_leaders = 1;
    }
  else
    {
      append_copy (&leaders, n - 1);
      carry_on (&leaders.setup->rig);
    }
  return change_of_leaders (&leaders, _ ("Add a leader"));
}

LbChange *
lb_change_new_duplicate_leader (LbDocument *document, size_t leader)
{
  size_t n = count_leaders (document);
  Leaders leaders;

  if (n >= LB_MAX_LEADERS || leader >= n)
    return NULL;
  leaders = leaders_of (document);
  append_copy (&leaders, leader);
  move (&leaders, n, leader + 1);
  return change_of_leaders (&leaders, _ ("Duplicate a leader"));
}

static void
forget_in_variants (Leaders *leaders, size_t gone)
{
  size_t places[LB_MAX_LEADERS];

  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    places[i] = i == gone ? LB_MAX_LEADERS : i;
  lb_variants_move_leaders (&leaders->variants, places);
}

LbChange *
lb_change_new_remove_leader (LbDocument *document, size_t leader)
{
  size_t n = count_leaders (document);
  Leaders leaders;

  if (leader >= n)
    return NULL;
  leaders = leaders_of (document);
  move (&leaders, leader, n - 1);
  leaders.setup->rig.n_leaders--;
  forget_in_variants (&leaders, n - 1);
  return change_of_leaders (&leaders, _ ("Take a leader away"));
}

LbChange *
lb_change_new_move_leader (LbDocument *document, size_t from, size_t to)
{
  size_t n = count_leaders (document);
  Leaders leaders;

  if (from >= n || to >= n || from == to)
    return NULL;
  leaders = leaders_of (document);
  move (&leaders, from, to);
  return change_of_leaders (&leaders, _ ("Move a leader"));
}
