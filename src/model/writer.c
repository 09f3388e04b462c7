/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "writer.h"

#include <stdlib.h>
#include <string.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "fields.h"
#include "migrate.h"

typedef struct
{
  const LbContents *contents;
  GString *text;
  guint indent;
  gboolean first; /* nothing stands in the present object yet */
} Writer;

/* ---- Small pieces ---- */

void
lb_writer_number (double value, char text[LB_WRITER_NUMBER_SIZE])
{
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };

  for (size_t i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (text, LB_WRITER_NUMBER_SIZE, formats[i], value);
      if (g_ascii_strtod (text, NULL) == value)
        return;
    }
}

static void
add_string (GString *text, const char *string)
{
  g_string_append_c (text, '"');
  for (const char *p = string; *p; p++)
    {
      if (*p == '"' || *p == '\\')
        g_string_append_printf (text, "\\%c", *p);
      else if (*p == '\n')
        g_string_append (text, "\\n");
      else if (*p == '\t')
        g_string_append (text, "\\t");
      else if ((guchar) *p < 0x20 || *p == 0x7f)
        g_string_append_printf (text, "\\u%04x", (guchar) *p);
      else
        g_string_append_c (text, *p);
    }
  g_string_append_c (text, '"');
}

static void
add_number (GString *text, double value)
{
  char number[LB_WRITER_NUMBER_SIZE];

  lb_writer_number (value, number);
  g_string_append (text, number);
}

static void
start_line (Writer *w)
{
  g_string_append (w->text, w->first ? "\n" : ",\n");
  w->first = FALSE;
  for (guint i = 0; i < w->indent; i++)
    g_string_append (w->text, "  ");
}

static void
add_key (Writer *w, const char *key)
{
  start_line (w);
  g_string_append_printf (w->text, "\"%s\": ", key);
}

static void
open_nested (Writer *w, char bracket)
{
  g_string_append_c (w->text, bracket);
  w->indent++;
  w->first = TRUE;
}

static void
close_nested (Writer *w, char bracket)
{
  gboolean empty = w->first;

  w->indent--;
  if (!empty)
    {
      w->first = TRUE;
      start_line (w);
    }
  w->first = FALSE;
  g_string_append_c (w->text, bracket);
}

static void
add_points (Writer *w, const char *key, const double *a, const double *b, size_t n)
{
  add_key (w, key);
  g_string_append_c (w->text, '[');
  for (size_t i = 0; i < n; i++)
    {
      g_string_append (w->text, i == 0 ? "[" : ", [");
      add_number (w->text, a[i]);
      g_string_append (w->text, ", ");
      add_number (w->text, b[i]);
      g_string_append_c (w->text, ']');
    }
  g_string_append_c (w->text, ']');
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
      add_key (w, key);
      add_string (w->text, choice->name);
      return;
    }
  add_key (w, key);
  if (lb_is_set (value))
    add_number (w->text, value);
  else
    g_string_append (w->text, "null");
}

static void
add_line_out (Writer *w)
{
  const LbLineOut *line_out = &w->contents->setup.rig.line_out;
  const LbFieldChoice *choice = lb_field_choice (lb_field ("mainline.line_out"), line_out->mode);

  add_key (w, "line_out");
  g_string_append_printf (w->text, "{ \"%s\": ", choice->name);
  if (line_out->mode == LB_LINE_OUT_TOUCHING)
    g_string_append (w->text, "true");
  else
    add_number (w->text, line_out->value);
  g_string_append (w->text, " }");
}

/* What stands in a group beside its fields. */
static void
add_before_group (Writer *w, const char *prefix, size_t leader)
{
  if (g_str_equal (prefix, "leaders[].lure."))
    {
      add_key (w, "name");
      add_string (w->text, w->contents->lure_names[leader]);
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

  open_nested (w, '{');
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
          add_key (w, name);
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
  close_nested (w, '}');
}

static void
add_leaders (Writer *w)
{
  add_key (w, "leaders");
  open_nested (w, '[');
  for (size_t i = 0; i < w->contents->setup.rig.n_leaders; i++)
    {
      start_line (w);
      add_group (w, "leaders[].", i);
    }
  close_nested (w, ']');
}

static void
add_text_member (Writer *w, const char *key, const char *text)
{
  add_key (w, key);
  add_string (w->text, text);
}

char *
lb_writer_to_text (const LbContents *contents, gsize *length)
{
  static const char *const groups[] = { "river", "boat", "mainline", "shank", "weight" };
  Writer w = { .contents = contents, .text = g_string_new (NULL) };

  open_nested (&w, '{');
  add_text_member (&w, "format", LB_RIG_FORMAT);
  add_key (&w, "version");
  g_string_append_printf (w.text, "%d", LB_RIG_VERSION);
  add_text_member (&w, "title", contents->title);
  add_text_member (&w, "notes", contents->notes);
  for (size_t i = 0; i < G_N_ELEMENTS (groups); i++)
    {
      g_autofree char *prefix = g_strconcat (groups[i], ".", NULL);
      add_key (&w, groups[i]);
      add_group (&w, prefix, 0);
    }
  add_leaders (&w);
  add_key (&w, "band");
  add_group (&w, "band.", 0);
  close_nested (&w, '}');
  g_string_append_c (w.text, '\n');
  if (length)
    *length = w.text->len;
  return g_string_free (w.text, FALSE);
}

/* ---- To the disk ---- */

/* The file at the end of any symbolic links, so that it is replaced and not the link. */
static char *
resolve (const char *path)
{
  char *real = realpath (path, NULL);
  char *copy = g_strdup (real ? real : path);

  free (real);
  return copy;
}

static int
mode_of (const char *path)
{
  GStatBuf status;
  return g_stat (path, &status) == 0 ? (int) (status.st_mode & 0777) : 0666;
}

gboolean
lb_writer_save (const LbContents *contents, GFile *file, GError **error)
{
  gsize length;
  g_autofree char *text = lb_writer_to_text (contents, &length);
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *name = g_file_get_parse_name (file);
  g_autofree char *real = NULL;
  g_autoptr (GError) fault = NULL;

  if (path == NULL)
    {
      g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_WRITE,
                   _ ("%s: not written: this is no file on this computer"), name);
      return FALSE;
    }
  real = resolve (path);
  if (g_file_set_contents_full (real, text, (gssize) length,
                                G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                mode_of (real), &fault))
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_WRITE, _ ("%s: not written: %s"), name,
               fault->message);
  return FALSE;
}
