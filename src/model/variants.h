/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Variants of a rig, to be compared: each is the document with a few of its values replaced. They
 * follow the document: what a variant does not replace changes along.
 *
 * Plain values, copied with "=". What a variant replaces is kept in the order of the table of
 * fields, so that the same variant is the same bytes in a file, whatever order it was made in.
 *
 * Every single value is one that its field accepts. Whether all of them go together with the
 * document (a leader that is there, an attachment on the shank) is seen when they are applied, as
 * the document may change under them: lb_variant_apply(). */
#pragma once

#include "fields.h"
#include "words.h"

#define LB_MAX_VARIANTS 4
#define LB_MAX_OVERRIDES 16                                    /* of one variant */
#define LB_VARIANT_NAME_LONGEST 40                             /* characters */
#define LB_VARIANT_NAME_SIZE (4 * LB_VARIANT_NAME_LONGEST + 1) /* bytes, of UTF-8 */

/* One value replaced. Of the choice "mainline.line_out" only LB_LINE_OUT_TOUCHING stands here: the
 * two other ways come with a value and are fields of their own. */
typedef struct
{
  const LbField *field;
  size_t leader; /* 0 for what is no leader's */
  double value;  /* SI */
} LbOverride;

typedef struct
{
  char name[LB_VARIANT_NAME_SIZE]; /* UTF-8, one line, not blank, no other variant has it */
  size_t n_overrides;              /* 0: the document as it is */
  LbOverride overrides[LB_MAX_OVERRIDES];
} LbVariant;

typedef struct
{
  size_t n;
  LbVariant list[LB_MAX_VARIANTS];
} LbVariants;

/* ---- Names ---- */

/* Whether `name` may be the name of a variant: UTF-8, one line, not blank, not too long. */
bool lb_variant_name_is_fine (const char *name);

/* The variant of that name, or NULL. */
const LbVariant *lb_variants_find (const LbVariants *variants, const char *name);

/* Gives `variant` a name that none of `variants` has: `name`, mended and cut where it must be, or
 * with a number behind it. */
void lb_variant_set_new_name (LbVariant *variant, const LbVariants *variants, const char *name);

/* ---- What a variant replaces ---- */

/* The value at `path` as it stands in a file ("leaders[1].length_m",
 * "mainline.line_out.touching"); FALSE when nothing can be replaced there. */
bool lb_override_find (const char *path, const LbField **field, size_t *leader);

/* The path as above. Free with g_free(). */
char *lb_override_dup_path (const LbOverride *override);

/* "Weight: 2 lb", "Line out: Weight just touching". Free with g_free(). */
char *lb_override_dup_words (const LbOverride *override, const LbWording *wording);

/* Whether the two cannot stand in one variant: two ways of giving line out, a bed's material and
 * its roughness. */
bool lb_override_excludes (const LbField *a, const LbField *b);

const LbOverride *
lb_variant_get_override (const LbVariant *variant, const LbField *field, size_t leader);

/* Replaces a value, in place of what it excludes. FALSE, and nothing is done, when the field does
 * not accept the value or there is no room. */
bool lb_variant_set (LbVariant *variant, const LbField *field, size_t leader, double value);

/* FALSE when it was not replaced. */
bool lb_variant_unset (LbVariant *variant, const LbField *field, size_t leader);

/* What variants replace of leaders follows when those move: `to[i]` is the place that leader i
 * goes to, or LB_MAX_LEADERS when it is taken away, and then its values go, too. */
void lb_variants_move_leaders (LbVariants *variants, const size_t to[LB_MAX_LEADERS]);

/* ---- All of it ---- */

/* Whether both hold the same, numbers bit for bit. */
bool lb_variant_equal (const LbVariant *a, const LbVariant *b);
bool lb_variants_equal (const LbVariants *a, const LbVariants *b);

/* Makes `setup`, which is the document's, the variant's. Whether that makes a rig is what
 * lb_variant_explain() tells. */
void lb_variant_apply (const LbVariant *variant, LbSetup *setup);

/* Why the variant makes no rig out of `setup`, the document's: one or two sentences in the user's
 * language and units. NULL when it does make one. Free with g_free(). */
char *lb_variant_explain (const LbVariant *variant, const LbSetup *setup, const LbWording *wording);
