/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "catalogue_private.h"
#include "fields.h"
#include "json_text.h"

static void
start_part (LbJsonText *json, const char *id, const char *name)
{
  lb_json_text_open_item (json, '{');
  lb_json_text_put_string (json, "id", id);
  lb_json_text_put_string (json, "name", name);
}

static void
add_element (LbJsonText *json, double value)
{
  lb_json_text_start_line (json);
  lb_json_text_add_number (json, value);
}

static void
write_weight (LbJsonText *json, const LbCatalogueWeight *part)
{
  start_part (json, part->id, part->name);
  lb_json_text_put_number (json, "mass_kg", part->weight.mass);
  lb_json_text_put_number (json, "density_kg_m3", part->weight.density);
  lb_json_text_put_string (json, "shape",
                           lb_field_choice (lb_field ("weight.shape"), part->weight.shape)->name);
  lb_json_text_put_number (json, "drag_coefficient", part->weight.drag_coefficient);
  lb_json_text_close (json, '}');
}

static void
write_line (LbJsonText *json, const LbCatalogueLine *part)
{
  static const char *const uses[] = { "mainline", "shank", "leader" };

  start_part (json, part->id, part->name);
  lb_json_text_open_member (json, "uses", '[');
  for (guint i = 0; i < G_N_ELEMENTS (uses); i++)
    if (part->uses & (1u << i))
      {
        lb_json_text_start_line (json);
        lb_json_text_add_string (json, uses[i]);
      }
  lb_json_text_close (json, ']');
  lb_json_text_put_number (json, "diameter_m", part->line.diameter);
  lb_json_text_put_number (json, "density_kg_m3", part->line.density);
  lb_json_text_put_number (json, "axial_stiffness_n", part->line.axial_stiffness);
  lb_json_text_key (json, "breaking_load_n");
  if (lb_is_set (part->line.breaking_load))
    {
      lb_json_text_open (json, '[');
      add_element (json, part->line.breaking_load);
      add_element (json, part->breaking_load_high);
      lb_json_text_close (json, ']');
    }
  else
    lb_json_text_add_number (json, LB_UNSET);
  lb_json_text_close (json, '}');
}

static void
add_range (LbJsonText *json, const char *key, LbCatalogueRange range)
{
  lb_json_text_open_member (json, key, '[');
  add_element (json, range.low);
  add_element (json, range.value);
  add_element (json, range.high);
  lb_json_text_close (json, ']');
}

static void
write_lure (LbJsonText *json, const LbCatalogueLure *part)
{
  start_part (json, part->id, part->name);
  lb_json_text_put_number (json, "length_m", part->lure.length);
  add_range (json, "drag_area_m2", part->drag_area);
  add_range (json, "down_force_ratio", part->down_force_ratio);
  add_range (json, "buoyancy_n", part->buoyancy);
  add_range (json, "mass_kg", part->mass);
  lb_json_text_put_number (json, "hooks", part->lure.hooks);
  lb_json_text_close (json, '}');
}

typedef void (*WritePart) (LbJsonText *json, const void *part);

static void
write_list (LbJsonText *json, const char *key, GPtrArray *parts, WritePart write_part)
{
  lb_json_text_open_member (json, key, '[');
  for (guint i = 0; i < parts->len; i++)
    write_part (json, g_ptr_array_index (parts, i));
  lb_json_text_close (json, ']');
}

char *
lb_catalogue_write_own (const LbCatalogue *own, gsize *length)
{
  LbJsonText json;

  lb_json_text_init (&json);
  lb_json_text_open (&json, '{');
  lb_json_text_put_string (&json, "format", LB_CATALOGUE_FORMAT);
  lb_json_text_put_number (&json, "version", LB_CATALOGUE_VERSION);
  write_list (&json, "weights", own->weights, (WritePart) write_weight);
  write_list (&json, "lines", own->lines, (WritePart) write_line);
  write_list (&json, "lures", own->lures, (WritePart) write_lure);
  lb_json_text_close (&json, '}');
  return lb_json_text_end (&json, length);
}
