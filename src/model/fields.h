/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one table of every number and every choice of a setup. Reader, writer, schema test, command
 * line and entry fields all run off it, so that a limit or a label is written once. */
#pragma once

#include <glib.h>

#include "setup.h"
#include "units.h"

typedef enum
{
  LB_FIELD_NUMBER, /* a double, in SI */
  LB_FIELD_CHOICE, /* one of a few words; the value is the enum's number */
} LbFieldKind;

/* One word of a choice. */
typedef struct
{
  const char *name;  /* as in the file: "same-discharge" */
  const char *label; /* translatable, marked with N_(); show it with _() */
  int value;
} LbFieldChoice;

typedef struct
{
  const char *path;  /* the key path: "river.depth_m", "leaders[].lure.buoyancy_n" */
  const char *label; /* translatable, marked with N_(): "Surface current" */
  const char *hint;  /* translatable, marked with N_(): one sentence for a tooltip; may be NULL */
  LbFieldKind kind;
  LbQuantity quantity;
  double minimum;   /* SI, inclusive */
  double maximum;   /* SI, inclusive */
  double usual_low; /* SI: what a slider spans, inside the range; both 0: the whole range */
  double usual_high;
  double step;   /* SI, of a slider or spin button; 0: lb_units_step() */
  bool whole;    /* a whole number; 0 or more of something that is counted */
  bool required; /* must stand in a file (of the group that applies) */
  bool nullable; /* may be null in a file and unset here */
  const char
      *unset_label; /* translatable, marked with N_(): what unset means; NULL if not nullable */
  size_t offset;    /* bytes, in LbSetup, of leader 0 for the fields of leaders */
  size_t stride;    /* sizeof (LbLeader) for the fields of leaders, else 0 */
  const LbFieldChoice *choices; /* of a choice */
  size_t n_choices;
  bool (*applies) (const LbSetup *setup); /* NULL: always. False: the value has no effect now and
                                             is not written to a file */
} LbField;

/* All fields, in the order of the file. */
const LbField *lb_fields (size_t *n_fields);

/* The field at `path`; a leader's index may stand in it ("leaders[1].length_m", also
 * "leaders.1.length_m") or be left open ("leaders[].length_m"). `leader` (may be NULL) gets the
 * index, 0 when there is none. NULL for an unknown path or an index of LB_MAX_LEADERS or more. */
const LbField *lb_field_find (const char *path, size_t *leader);

/* As lb_field_find() for a path that the program itself wrote: aborts when there is none. */
const LbField *lb_field (const char *path);

/* The value as a number, a choice as its enum's number. `leader` counts for leader fields only. */
double lb_field_get (const LbField *field, const LbSetup *setup, size_t leader);

/* Sets the value, unchecked. Keeps together what belongs together: a bed material sets its
 * roughness, a roughness clears the material; setting "mainline.line_out.given_m" or
 * "mainline.line_out.weight_above_bed_m" also switches to that way of giving line. */
void lb_field_set (const LbField *field, LbSetup *setup, size_t leader, double value);

/* A law that was never chosen before has nothing to go by yet: gives it gravel, or the usual
 * exponent. Both are estimates. */
void lb_profile_complete (LbProfile *profile);

/* Whether `value` may stand in the field: in range and finite, or unset where that is allowed, or
 * one of the choices. */
bool lb_field_accepts (const LbField *field, double value);

/* `value` moved into the field's range. Unset stays unset where allowed, else becomes the minimum.
 */
double lb_field_clamp (const LbField *field, double value);

/* Whether the value counts in this setup (see LbField.applies). */
bool lb_field_applies (const LbField *field, const LbSetup *setup);

/* The step of a slider or spin button, SI. */
double lb_field_step (const LbField *field, LbUnits units);

/* The choice of that value, or NULL; the choice of that file name, or NULL. */
const LbFieldChoice *lb_field_choice (const LbField *field, int value);
const LbFieldChoice *lb_field_choice_named (const LbField *field, const char *name);

/* The path with the leader's index put in: "leaders[1].length_m". Free with g_free(). */
char *lb_field_full_path (const LbField *field, size_t leader);

/* The label in the user's language, with the leader's number in front for a leader's field
 * ("Leader 2: length"). Free with g_free(). */
char *lb_field_full_label (const LbField *field, size_t leader);
