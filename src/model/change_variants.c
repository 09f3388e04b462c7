/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Changes of the variants. */
#include <glib/gi18n-lib.h>

#include "change_private.h"
#include "variants_weights.h"

static LbVariants
variants_of (LbDocument *document)
{
  return lb_document_get_contents (document)->variants;
}

/* ---- The list ---- */

LbChange *
lb_change_new_add_variant (LbDocument *document, const char *name)
{
  LbVariants variants = variants_of (document);
  LbVariant added = { 0 };
  g_autofree char *plain = NULL;

  if (variants.n == LB_MAX_VARIANTS)
    return NULL;
  if (variants.n == 0)
    plain = g_strdup (_ ("As it is"));
  else
    /* Translators: the name of a new variant, by its number */
    plain = g_strdup_printf (_ ("Variant %zu"), variants.n + 1);
  lb_variant_set_new_name (&added, &variants, name ? name : plain);
  variants.list[variants.n++] = added;
  return lb_change_new_variants (&variants, _ ("Add a variant"));
}

LbChange *
lb_change_new_duplicate_variant (LbDocument *document, size_t variant)
{
  LbVariants variants = variants_of (document);
  LbVariant added;

  if (variants.n == LB_MAX_VARIANTS || variant >= variants.n)
    return NULL;
  added = variants.list[variant];
  lb_variant_set_new_name (&added, &variants, variants.list[variant].name);
  variants.list[variants.n++] = added;
  return lb_change_new_variants (&variants, _ ("Duplicate a variant"));
}

static void
move (LbVariants *variants, size_t from, size_t to)
{
  LbVariant moved = variants->list[from];

  for (size_t i = from; i != to; i += to > from ? 1 : -1)
    variants->list[i] = variants->list[to > from ? i + 1 : i - 1];
  variants->list[to] = moved;
}

LbChange *
lb_change_new_remove_variant (LbDocument *document, size_t variant)
{
  LbVariants variants = variants_of (document);

  if (variant >= variants.n)
    return NULL;
  move (&variants, variant, variants.n - 1);
  variants.n--;
  return lb_change_new_variants (&variants, _ ("Remove a variant"));
}

LbChange *
lb_change_new_move_variant (LbDocument *document, size_t from, size_t to)
{
  LbVariants variants = variants_of (document);

  if (from >= variants.n || to >= variants.n || from == to)
    return NULL;
  move (&variants, from, to);
  return lb_change_new_variants (&variants, _ ("Move a variant"));
}

LbChange *
lb_change_new_rename_variant (LbDocument *document, size_t variant, const char *name)
{
  LbVariants variants = variants_of (document);

  if (variant >= variants.n || !lb_variant_name_is_fine (name)
      || lb_variants_find (&variants, name))
    return NULL;
  g_strlcpy (variants.list[variant].name, name, LB_VARIANT_NAME_SIZE);
  return lb_change_new_variants (&variants, _ ("Rename a variant"));
}

/* ---- What one replaces ---- */

LbChange *
lb_change_new_set_override (
    LbDocument *document, size_t variant, const LbField *field, size_t leader, double value)
{
  LbVariants variants = variants_of (document);

  if (variant >= variants.n
      || !lb_variant_set (&variants.list[variant], field, leader, lb_field_clamp (field, value)))
    return NULL;
  return lb_change_new_variants (&variants, _ ("Change a variant"));
}

LbChange *
lb_change_new_unset_override (LbDocument *document,
                              size_t variant,
                              const LbField *field,
                              size_t leader)
{
  LbVariants variants = variants_of (document);

  if (variant >= variants.n || !lb_variant_unset (&variants.list[variant], field, leader))
    return NULL;
  return lb_change_new_variants (&variants, _ ("Change a variant"));
}

LbChange *
lb_change_new_variants_of_weights (LbDocument *document,
                                   const double *kg,
                                   size_t n,
                                   const LbWording *wording)
{
  LbVariants variants =
      lb_variants_of_weights (kg, n, lb_document_get_setup (document)->rig.weight.mass, wording);

  return variants.n > 0 ? lb_change_new_variants (&variants, _ ("Compare the weights owned"))
                        : NULL;
}
