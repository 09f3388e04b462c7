/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rig_sections.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "field_row.h"
#include "material_row.h"
#include "part_button.h"
#include "rules_label.h"

static const char *const mainline_paths[] = {
  "mainline.diameter_m",    "mainline.breaking_load_n",
  "mainline.density_kg_m3", "mainline.axial_stiffness_n",
  "mainline.normal_drag",   "mainline.tangential_drag",
  "mainline.strum",         NULL,
};

static const char *const shank_paths[] = {
  "shank.diameter_m",
  "shank.density_kg_m3",
  "shank.axial_stiffness_n",
  "shank.normal_drag",
  "shank.tangential_drag",
  "shank.strum",
  NULL,
};

static const char *const weight_paths[] = {
  "weight.density_kg_m3",
  "weight.drag_coefficient",
  NULL,
};

GtkWidget *
lb_rig_section_new_reel (LbSession *session)
{
  GtkWidget *group = lb_rig_group_new (session, LB_PICK_REEL, 0);

  lb_rig_group_append_field (LB_RIG_GROUP (group), "boat.reel_height_m", 0, NULL);
  return group;
}

GtkWidget *
lb_rig_section_new_mainline (LbSession *session, LbCatalogueStore *store)
{
  GtkWidget *group = lb_rig_group_new (session, LB_PICK_MAINLINE, 0);
  LbRigPlace place = { LB_PLACE_MAINLINE, 0 };

  lb_rig_group_append (LB_RIG_GROUP (group), lb_part_button_new (session, store, place));
  lb_rig_group_append_seldom (LB_RIG_GROUP (group), _ ("More numbers"),
                              _ ("More numbers of the mainline"), mainline_paths, 0);
  return group;
}

GtkWidget *
lb_rig_section_new_shank (LbSession *session, LbCatalogueStore *store)
{
  GtkWidget *group = lb_rig_group_new (session, LB_PICK_SHANK, 0);
  LbRigPlace place = { LB_PLACE_SHANK, 0 };

  lb_rig_group_append_field (LB_RIG_GROUP (group), "shank.length_m", 0, _ ("Length"));
  lb_rig_group_append (LB_RIG_GROUP (group), lb_part_button_new (session, store, place));
  lb_rig_group_append_seldom (LB_RIG_GROUP (group), _ ("More numbers"),
                              _ ("More numbers of the shank"), shank_paths, 0);
  return group;
}

static void
other_material_cb (LbRigGroup *group)
{
  lb_rig_group_open_seldom (group, "weight.density_kg_m3");
}

GtkWidget *
lb_rig_section_new_weight (LbSession *session, LbCatalogueStore *store)
{
  GtkWidget *group = lb_rig_group_new (session, LB_PICK_WEIGHT, 0);
  GtkWidget *material = lb_material_row_new (session);
  GtkWidget *mass;
  LbRigPlace place = { LB_PLACE_WEIGHT, 0 };

  mass = lb_rig_group_append_field (LB_RIG_GROUP (group), "weight.mass_kg", 0, _ ("Weight in air"));
  /* The slider under the drawings is "Weight". */
  lb_accessible_name (lb_field_row_get_control (LB_FIELD_ROW (mass)), _ ("Weight in air"));
  lb_rig_group_append (LB_RIG_GROUP (group), lb_part_button_new (session, store, place));
  lb_rig_group_append_field (LB_RIG_GROUP (group), "weight.shape", 0, _ ("Shape"));
  lb_rig_group_append (LB_RIG_GROUP (group), material);
  lb_rig_group_append_seldom (LB_RIG_GROUP (group), _ ("More numbers"),
                              _ ("More numbers of the weight"), weight_paths, 0);
  g_signal_connect_swapped (material, "other-chosen", G_CALLBACK (other_material_cb), group);
  return group;
}

GtkWidget *
lb_rig_section_new_band_edge (LbSession *session, LbPickKind edge)
{
  GtkWidget *group = lb_rig_group_new (session, edge, 0);
  gboolean low = edge == LB_PICK_BAND_LOW;

  lb_rig_group_append_field (LB_RIG_GROUP (group), low ? "band.low_m" : "band.high_m", 0,
                             low ? _ ("From") : _ ("To"));
  return group;
}

GtkWidget *
lb_rig_section_new_rules (LbSession *session)
{
  GtkWidget *group = lb_rig_group_new (session, LB_PICK_NOTHING, 0);

  lb_rig_group_append_field (LB_RIG_GROUP (group), "rules.lures_per_line", 0, _ ("Lures allowed"));
  lb_rig_group_append_field (LB_RIG_GROUP (group), "rules.hooks_per_line", 0, _ ("Hooks allowed"));
  lb_rig_group_append (LB_RIG_GROUP (group), lb_rules_label_new (session));
  return group;
}
