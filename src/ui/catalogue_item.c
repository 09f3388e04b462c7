/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_item.h"

#include <glib/gi18n.h>
#include <math.h>

static void
add_weight (GPtrArray *items, const LbCatalogueWeight *part)
{
  LbCatalogueItem *item = g_new0 (LbCatalogueItem, 1);

  item->id = part->id;
  item->name = part->name;
  item->source = part->source;
  item->is_own = part->is_own;
  item->tackle = (LbTackle){ .kind = LB_TACKLE_WEIGHT, .weight = part->weight };
  g_ptr_array_add (items, item);
}

static void
add_line (GPtrArray *items, const LbCatalogueLine *part, LbUnits units)
{
  LbCatalogueItem *item = g_new0 (LbCatalogueItem, 1);

  item->id = part->id;
  item->name = lb_catalogue_line_name (part, units);
  item->source = part->source;
  item->is_own = part->is_own;
  item->tackle = (LbTackle){ .kind = LB_TACKLE_LINE, .line = part->line };
  item->line = part;
  g_ptr_array_add (items, item);
}

static void
add_lure (GPtrArray *items, const LbCatalogueLure *part)
{
  LbCatalogueItem *item = g_new0 (LbCatalogueItem, 1);

  item->id = part->id;
  item->name = part->name;
  item->source = part->source;
  item->is_own = part->is_own;
  item->tackle = (LbTackle){ .kind = LB_TACKLE_LURE, .lure = part->lure };
  item->lure = part;
  g_ptr_array_add (items, item);
}

GPtrArray *
lb_catalogue_items_for (LbCatalogueStore *store, LbRigPlace place, LbUnits units)
{
  const LbCatalogue *catalogue = lb_catalogue_store_get (store);
  LbTackleKind kind = lb_rig_place_tackle_kind (place);
  guint uses = lb_rig_place_uses (place);
  GPtrArray *items = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; kind == LB_TACKLE_WEIGHT && i < catalogue->weights->len; i++)
    add_weight (items, g_ptr_array_index (catalogue->weights, i));
  for (guint i = 0; kind == LB_TACKLE_LURE && i < catalogue->lures->len; i++)
    add_lure (items, g_ptr_array_index (catalogue->lures, i));
  for (guint i = 0; kind == LB_TACKLE_LINE && i < catalogue->lines->len; i++)
    {
      const LbCatalogueLine *line = g_ptr_array_index (catalogue->lines, i);

      if (line->uses & uses)
        add_line (items, line, units);
    }
  return items;
}

/* ---- The most alike ---- */

/* How far apart two values are that may differ by powers of ten. */
static double
apart (double a, double b)
{
  return a > 0 && b > 0 ? fabs (log (a / b)) : fabs (a - b);
}

/* What a person looks at first counts most: the size, and the material that the density stands
 * for. */
static double
unlikeness (const LbTackle *a, const LbTackle *b)
{
  switch (a->kind)
    {
    case LB_TACKLE_WEIGHT:
      return apart (a->weight.mass, b->weight.mass) + apart (a->weight.density, b->weight.density)
             + (a->weight.shape == b->weight.shape ? 0 : 0.5);
    case LB_TACKLE_LINE:
      return apart (a->line.diameter, b->line.diameter)
             + 2 * apart (a->line.density, b->line.density)
             + 0.2 * apart (a->line.axial_stiffness, b->line.axial_stiffness);
    default:
      return 2 * apart (a->lure.length, b->lure.length)
             + 0.2 * apart (a->lure.drag_area, b->lure.drag_area)
             + fabs (a->lure.down_force_ratio - b->lure.down_force_ratio);
    }
}

int
lb_catalogue_items_nearest (GPtrArray *items, const LbTackle *tackle)
{
  double least = INFINITY;
  int nearest = -1;

  for (guint i = 0; i < items->len; i++)
    {
      const LbCatalogueItem *item = g_ptr_array_index (items, i);
      double unlike = unlikeness (&item->tackle, tackle);

      if (unlike < least)
        {
          least = unlike;
          nearest = (int) i;
        }
    }
  return nearest;
}

/* ---- In words ---- */

static char *
line_summary (const LbCatalogueLine *part, LbSession *session)
{
  g_autofree char *diameter =
      lb_session_dup_words (session, LB_QUANTITY_DIAMETER, part->line.diameter);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (!lb_is_set (part->line.breaking_load))
    return g_steal_pointer (&diameter);
  low = lb_session_dup_words (session, LB_QUANTITY_FORCE, part->line.breaking_load);
  if (!lb_is_set (part->breaking_load_high) || part->breaking_load_high <= part->line.breaking_load)
    /* Translators: thickness and strength of a line: "0.7 mm · breaks at 48 N" */
    return g_strdup_printf (_ ("%s · breaks at %s"), diameter, low);
  high = lb_session_dup_words (session, LB_QUANTITY_FORCE, part->breaking_load_high);
  return g_strdup_printf (_ ("%s · breaks at %s to %s"), diameter, low, high);
}

char *
lb_catalogue_item_dup_summary (const LbCatalogueItem *item, LbSession *session)
{
  g_autofree char *size = NULL;
  g_autofree char *more = NULL;

  if (item->line)
    return line_summary (item->line, session);
  if (item->lure)
    {
      size = lb_session_dup_words (session, LB_QUANTITY_HEIGHT, item->tackle.lure.length);
      more = lb_session_dup_words (session, LB_QUANTITY_SMALL_MASS, item->tackle.lure.mass);
      /* Translators: length and mass of a lure */
      return g_strdup_printf (_ ("%s long · %s"), size, more);
    }
  size = lb_session_dup_words (session, LB_QUANTITY_MASS, item->tackle.weight.mass);
  more = lb_session_dup_words (session, LB_QUANTITY_DENSITY, item->tackle.weight.density);
  return g_strdup_printf ("%s · %s", size, more);
}

/* Whether a word or number may begin at `at` in `text`. */
static gboolean
is_start (const char *text, const char *at)
{
  gunichar before = at > text ? g_utf8_get_char (g_utf8_prev_char (at)) : ' ';

  return !g_unichar_isalnum (before) && !strchr ("./,", (int) MIN (before, 127));
}

/* Whether a word of `text` begins with `start`: "2" is in "2 lb", not in "0.29 oz" or "1 1/2 lb".
 */
static gboolean
has_word (const char *text, const char *start)
{
  for (const char *at = strstr (text, start); at && *start; at = strstr (at + 1, start))
    if (is_start (text, at))
      return TRUE;
  return *start == '\0';
}

gboolean
lb_catalogue_item_matches (const LbCatalogueItem *item, const char *summary, const char *search)
{
  g_autofree char *text = g_strconcat (item->name, " ", summary, NULL);
  g_autofree char *folded = g_utf8_casefold (text, -1);
  g_autofree char *wanted = g_utf8_casefold (search, -1);
  g_auto (GStrv) words = g_strsplit_set (wanted, " \t", -1);

  for (gsize i = 0; words[i]; i++)
    if (!has_word (folded, words[i]))
      return FALSE;
  return TRUE;
}
