/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "writer.h"

#include <string.h>

#include "card_file.h"
#include "fields.h"
#include "json_text.h"
#include "migrate.h"
#include "pass_file.h"
#include "save_file.h"

typedef struct
{
  LbJsonText json;
  const LbContents *contents;
} Writer;

static void
add_points (Writer *w, const char *key, const double *a, const double *b, size_t n)
{
  lb_json_text_key (&w->json, key);
  g_string_append_c (w->json.text, '[');
  for (size_t i = 0; i < n; i++)
    {
      g_string_append (w->json.text, i == 0 ? "[" : ", [");
      lb_json_text_add_number (&w->json, a[i]);
      g_string_append (w->json.text, ", ");
      lb_json_text_add_number (&w->json, b[i]);
      g_string_append_c (w->json.text, ']');
    }
  g_string_append_c (w->json.text, ']');
}

/* ---- Groups of fields ---- */

static void
add_field (Writer *w, const LbField *field, size_t leader, const char *key)
{
  double value = lb_field_get (field, &w->contents->setup, leader);

  if (!lb_field_applies (field, &w->contents->setup))
    return;
  if (field->kind == LB_FIELD_CHOICE)
    {
      const LbFieldChoice *choice = lb_field_choice (field, (int) value);
      if (choice == NULL || choice->name == NULL)
        return;
      lb_json_text_key (&w->json, key);
      lb_json_text_add_string (&w->json, choice->name);
      return;
    }
  lb_json_text_key (&w->json, key);
  lb_json_text_add_number (&w->json, value);
}

static void
add_line_out (Writer *w)
{
  const LbLineOut *line_out = &w->contents->setup.rig.line_out;
  const LbFieldChoice *choice = lb_field_choice (lb_field ("mainline.line_out"), line_out->mode);

  lb_json_text_key (&w->json, "line_out");
  g_string_append_printf (w->json.text, "{ \"%s\": ", choice->name);
  if (line_out->mode == LB_LINE_OUT_TOUCHING)
    g_string_append (w->json.text, "true");
  else
    lb_json_text_add_number (&w->json, line_out->value);
  g_string_append (w->json.text, " }");
}

/* What stands in a group beside its fields. */
static void
add_before_group (Writer *w, const char *prefix, size_t leader)
{
  if (g_str_equal (prefix, "leaders[].lure."))
    {
      lb_json_text_key (&w->json, "name");
      lb_json_text_add_string (&w->json, w->contents->lure_names[leader]);
    }
}

static void
add_after_field (Writer *w, const LbField *field)
{
  const LbRiver *river = &w->contents->setup.river;

  if (g_str_equal (field->path, "river.depth_m") && river->n_bed_points > 0)
    add_points (w, "bed", river->bed_x, river->bed_depth, river->n_bed_points);
  if (g_str_equal (field->path, "river.profile.law") && river->profile.law == LB_PROFILE_POINTS)
    add_points (w, "points", river->profile.height_fraction, river->profile.speed_fraction,
                river->profile.n_points);
}

/* Writes the object of all fields whose path starts with `prefix`, and the objects within it. */
static void
add_group (Writer *w, const char *prefix, size_t leader)
{
  size_t n_fields, prefix_length = strlen (prefix);
  const LbField *fields = lb_fields (&n_fields);
  g_autofree char *last_inner = NULL;

  lb_json_text_open (&w->json, '{');
  add_before_group (w, prefix, leader);
  for (size_t i = 0; i < n_fields; i++)
    {
      const char *key = fields[i].path + prefix_length;
      const char *dot;

      if (!g_str_has_prefix (fields[i].path, prefix)
          || g_str_has_prefix (fields[i].path, "mainline.line_out."))
        continue;
      dot = strchr (key, '.');
      if (dot != NULL)
        {
          g_autofree char *inner =
              g_strndup (fields[i].path, prefix_length + (gsize) (dot - key) + 1);
          g_autofree char *name = g_strndup (key, (gsize) (dot - key));

          if (g_strcmp0 (inner, last_inner) == 0)
            continue;
          lb_json_text_key (&w->json, name);
          add_group (w, inner, leader);
          g_free (last_inner);
          last_inner = g_steal_pointer (&inner);
        }
      else if (g_str_equal (fields[i].path, "mainline.line_out"))
        add_line_out (w);
      else
        add_field (w, &fields[i], leader, key);
      if (dot == NULL)
        add_after_field (w, &fields[i]);
    }
  lb_json_text_close (&w->json, '}');
}

static void
add_leaders (Writer *w)
{
  lb_json_text_key (&w->json, "leaders");
  lb_json_text_open (&w->json, '[');
  for (size_t i = 0; i < w->contents->setup.rig.n_leaders; i++)
    {
      lb_json_text_start_line (&w->json);
      add_group (w, "leaders[].", i);
    }
  lb_json_text_close (&w->json, ']');
}

static void
add_override (LbJsonText *json, const LbOverride *override)
{
  g_autofree char *path = lb_override_dup_path (override);

  lb_json_text_key (json, path);
  if (g_str_equal (override->field->path, "mainline.line_out"))
    lb_json_text_add_boolean (json, TRUE);
  else if (override->field->kind == LB_FIELD_CHOICE)
    lb_json_text_add_string (json, lb_field_choice (override->field, (int) override->value)->name);
  else
    lb_json_text_add_number (json, override->value);
}

void
lb_writer_add_variant_set (LbJsonText *json, const LbVariant *variant)
{
  lb_json_text_open (json, '{');
  for (size_t i = 0; i < variant->n_overrides; i++)
    add_override (json, &variant->overrides[i]);
  lb_json_text_close (json, '}');
}

static void
add_variants (Writer *w, const LbVariants *variants)
{
  if (variants->n == 0)
    return;
  lb_json_text_key (&w->json, "variants");
  lb_json_text_open (&w->json, '[');
  for (size_t i = 0; i < variants->n; i++)
    {
      const LbVariant *variant = &variants->list[i];

      lb_json_text_start_line (&w->json);
      lb_json_text_open (&w->json, '{');
      lb_json_text_key (&w->json, "name");
      lb_json_text_add_string (&w->json, variant->name);
      lb_json_text_key (&w->json, "set");
      lb_writer_add_variant_set (&w->json, variant);
      lb_json_text_close (&w->json, '}');
    }
  lb_json_text_close (&w->json, ']');
}

static void
add_text_member (Writer *w, const char *key, const char *text)
{
  lb_json_text_key (&w->json, key);
  lb_json_text_add_string (&w->json, text);
}

static void
add_card (Writer *w)
{
  lb_json_text_key (&w->json, LB_CARD_KEY);
  lb_card_write (&w->json, &w->contents->card);
}

static void
add_pass (Writer *w)
{
  lb_json_text_key (&w->json, LB_PASS_KEY);
  lb_pass_write (&w->json, &w->contents->pass);
}

static char *
to_text (const LbContents *contents, bool all, gsize *length)
{
  static const char *const groups[] = { "river", "boat", "mainline", "shank", "weight" };
  const LbCard usual = lb_card_default ();
  const LbPassScript usual_pass = lb_pass_script_default ();
  Writer w = { .contents = contents };

  lb_json_text_init (&w.json);
  lb_json_text_open (&w.json, '{');
  add_text_member (&w, "format", LB_RIG_FORMAT);
  lb_json_text_key (&w.json, "version");
  lb_json_text_add_number (&w.json, LB_RIG_VERSION);
  add_text_member (&w, "title", contents->title);
  add_text_member (&w, "notes", contents->notes);
  for (size_t i = 0; i < G_N_ELEMENTS (groups); i++)
    {
      g_autofree char *prefix = g_strconcat (groups[i], ".", NULL);
      lb_json_text_key (&w.json, groups[i]);
      add_group (&w, prefix, 0);
    }
  add_leaders (&w);
  lb_json_text_key (&w.json, "band");
  add_group (&w, "band.", 0);
  lb_json_text_key (&w.json, "rules");
  add_group (&w, "rules.", 0);
  add_variants (&w, &contents->variants);
  if (all || !lb_card_equal (&contents->card, &usual))
    add_card (&w);
  if (all || !lb_pass_script_equal (&contents->pass, &usual_pass))
    add_pass (&w);
  lb_json_text_close (&w.json, '}');
  return lb_json_text_end (&w.json, length);
}

char *
lb_writer_to_text (const LbContents *contents, gsize *length)
{
  return to_text (contents, false, length);
}

char *
lb_writer_to_full_text (const LbContents *contents, gsize *length)
{
  return to_text (contents, true, length);
}

gboolean
lb_writer_save (const LbContents *contents, GFile *file, GError **error)
{
  gsize length;
  g_autofree char *text = lb_writer_to_text (contents, &length);

  return lb_save_file (file, text, length, error);
}
