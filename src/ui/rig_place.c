/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rig_place.h"

#include <glib/gi18n.h>

#include "catalogue_match.h"

#define METAL_FROM 4000 /* kg/m3 */

LbTackleKind
lb_rig_place_tackle_kind (LbRigPlace place)
{
  switch (place.kind)
    {
    case LB_PLACE_WEIGHT:
      return LB_TACKLE_WEIGHT;
    case LB_PLACE_LURE:
      return LB_TACKLE_LURE;
    default:
      return LB_TACKLE_LINE;
    }
}

guint
lb_rig_place_uses (LbRigPlace place)
{
  switch (place.kind)
    {
    case LB_PLACE_MAINLINE:
      return LB_LINE_USE_MAINLINE;
    case LB_PLACE_SHANK:
      return LB_LINE_USE_SHANK;
    case LB_PLACE_LEADER_LINE:
      return LB_LINE_USE_LEADER;
    default:
      return 0;
    }
}

gboolean
lb_rig_place_exists (LbRigPlace place, const LbSetup *setup)
{
  gboolean of_leader = place.kind == LB_PLACE_LEADER_LINE || place.kind == LB_PLACE_LURE;

  return !of_leader || place.leader < setup->rig.n_leaders;
}

static LbLine *
line_at (LbRigPlace place, LbSetup *setup)
{
  switch (place.kind)
    {
    case LB_PLACE_MAINLINE:
      return &setup->rig.mainline;
    case LB_PLACE_SHANK:
      return &setup->rig.shank;
    default:
      return &setup->rig.leaders[place.leader].line;
    }
}

LbTackle
lb_rig_place_get (LbRigPlace place, const LbSetup *setup)
{
  LbTackle tackle = { .kind = lb_rig_place_tackle_kind (place) };

  if (tackle.kind == LB_TACKLE_WEIGHT)
    tackle.weight = setup->rig.weight;
  else if (tackle.kind == LB_TACKLE_LURE)
    tackle.lure = setup->rig.leaders[place.leader].lure;
  else
    tackle.line = *line_at (place, (LbSetup *) setup);
  return tackle;
}

char *
lb_rig_place_dup_name (LbRigPlace place)
{
  switch (place.kind)
    {
    case LB_PLACE_MAINLINE:
      return g_strdup (_ ("Mainline"));
    case LB_PLACE_SHANK:
      return g_strdup (_ ("Shank"));
    case LB_PLACE_WEIGHT:
      return g_strdup (_ ("Weight"));
    case LB_PLACE_LEADER_LINE:
      return g_strdup_printf (_ ("Leader %zu: line"), place.leader + 1);
    case LB_PLACE_LURE:
      return g_strdup_printf (_ ("Leader %zu: lure"), place.leader + 1);
    }
  return NULL;
}

static void
put_line (LbLine *line, const LbLine *from)
{
  line->diameter = from->diameter;
  line->density = from->density;
  line->axial_stiffness = from->axial_stiffness;
  line->breaking_load = from->breaking_load;
}

LbChange *
lb_rig_place_change (LbRigPlace place,
                     LbDocument *document,
                     const LbTackle *tackle,
                     const char *name)
{
  const LbContents *contents = lb_document_get_contents (document);
  g_autofree LbSetup *setup = g_memdup2 (&contents->setup, sizeof *setup);
  const char *names[LB_MAX_LEADERS];
  g_autofree char *part = lb_rig_place_dup_name (place);
  /* Translators: a step that can be undone: "Choose another part (Leader 2: lure)" */
  g_autofree char *label = g_strdup_printf (_ ("Choose another part (%s)"), part);

  for (gsize i = 0; i < LB_MAX_LEADERS; i++)
    names[i] = contents->lure_names[i];
  if (tackle->kind == LB_TACKLE_WEIGHT)
    setup->rig.weight = tackle->weight;
  else if (tackle->kind == LB_TACKLE_LURE)
    {
      setup->rig.leaders[place.leader].lure = tackle->lure;
      if (name)
        names[place.leader] = name;
    }
  else
    {
      put_line (line_at (place, setup), &tackle->line);
      if (place.kind == LB_PLACE_SHANK)
        setup->rig.shank.breaking_load = LB_UNSET;
    }
  return lb_change_new_setup (setup, names, label);
}

const char *
lb_rig_place_catalogue_name (LbRigPlace place,
                             const LbCatalogue *catalogue,
                             const LbSetup *setup,
                             LbUnits units)
{
  LbTackle tackle = lb_rig_place_get (place, setup);

  if (tackle.kind == LB_TACKLE_WEIGHT)
    {
      const LbCatalogueWeight *part = lb_catalogue_match_weight (catalogue, &tackle.weight);
      return part ? part->name : NULL;
    }
  if (tackle.kind == LB_TACKLE_LURE)
    {
      const LbCatalogueLure *part = lb_catalogue_match_lure (catalogue, &tackle.lure);
      return part ? part->name : NULL;
    }
  {
    const LbCatalogueLine *part =
        lb_catalogue_match_line (catalogue, &tackle.line, lb_rig_place_uses (place));
    return part ? lb_catalogue_line_name (part, units) : NULL;
  }
}

char *
lb_tackle_dup_words (const LbTackle *tackle, LbSession *session)
{
  g_autofree char *size = NULL;

  switch (tackle->kind)
    {
    case LB_TACKLE_WEIGHT:
      {
        const LbFieldChoice *shape =
            lb_field_choice (lb_field ("weight.shape"), tackle->weight.shape);
        g_autofree char *small = g_utf8_strdown (_ (shape->label), -1);

        size = lb_session_dup_words (session, LB_QUANTITY_MASS, tackle->weight.mass);
        /* Translators: a weight by mass and shape: "1¾ lb ball" */
        return g_strdup_printf (_ ("%s %s"), size, small);
      }
    case LB_TACKLE_LURE:
      size = lb_session_dup_words (session, LB_QUANTITY_HEIGHT, tackle->lure.length);
      /* Translators: a lure by its length: "2.8 in lure" */
      return g_strdup_printf (_ ("%s lure"), size);
    case LB_TACKLE_LINE:
      size = lb_session_dup_words (session, LB_QUANTITY_DIAMETER, tackle->line.diameter);
      if (tackle->line.density >= METAL_FROM)
        /* Translators: a wire by its thickness: "0.7 mm wire" */
        return g_strdup_printf (_ ("%s wire"), size);
      /* Translators: a line by its thickness: "0.35 mm line" */
      return g_strdup_printf (_ ("%s line"), size);
    }
  return NULL;
}
