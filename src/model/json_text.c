/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "json_text.h"

#include <math.h>

void
lb_json_text_number (double value, char text[LB_JSON_NUMBER_SIZE])
{
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };

  for (size_t i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (text, LB_JSON_NUMBER_SIZE, formats[i], value);
      if (g_ascii_strtod (text, NULL) == value)
        return;
    }
}

void
lb_json_text_init (LbJsonText *json)
{
  *json = (LbJsonText){ .text = g_string_new (NULL) };
}

char *
lb_json_text_end (LbJsonText *json, gsize *length)
{
  g_string_append_c (json->text, '\n');
  if (length)
    *length = json->text->len;
  return g_string_free (g_steal_pointer (&json->text), FALSE);
}

void
lb_json_text_start_line (LbJsonText *json)
{
  g_string_append (json->text, json->first ? "\n" : ",\n");
  json->first = FALSE;
  for (guint i = 0; i < json->indent; i++)
    g_string_append (json->text, "  ");
}

void
lb_json_text_key (LbJsonText *json, const char *key)
{
  lb_json_text_start_line (json);
  g_string_append_printf (json->text, "\"%s\": ", key);
}

void
lb_json_text_open (LbJsonText *json, char bracket)
{
  g_string_append_c (json->text, bracket);
  json->indent++;
  json->first = TRUE;
}

void
lb_json_text_close (LbJsonText *json, char bracket)
{
  gboolean empty = json->first;

  json->indent--;
  if (!empty)
    {
      json->first = TRUE;
      lb_json_text_start_line (json);
    }
  json->first = FALSE;
  g_string_append_c (json->text, bracket);
}

void
lb_json_text_add_number (LbJsonText *json, double value)
{
  char number[LB_JSON_NUMBER_SIZE];

  if (!isfinite (value))
    {
      g_string_append (json->text, "null");
      return;
    }
  lb_json_text_number (value, number);
  g_string_append (json->text, number);
}

void
lb_json_text_add_string (LbJsonText *json, const char *string)
{
  GString *text = json->text;

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
        g_string_append_printf (text, "\\u%04x", (guint) (guchar) *p);
      else
        g_string_append_c (text, *p);
    }
  g_string_append_c (text, '"');
}

void
lb_json_text_add_boolean (LbJsonText *json, gboolean value)
{
  g_string_append (json->text, value ? "true" : "false");
}

/* ---- Members and items ---- */

void
lb_json_text_open_member (LbJsonText *json, const char *key, char bracket)
{
  lb_json_text_key (json, key);
  lb_json_text_open (json, bracket);
}

void
lb_json_text_open_item (LbJsonText *json, char bracket)
{
  lb_json_text_start_line (json);
  lb_json_text_open (json, bracket);
}

void
lb_json_text_put_number (LbJsonText *json, const char *key, double value)
{
  lb_json_text_key (json, key);
  lb_json_text_add_number (json, value);
}

void
lb_json_text_put_string (LbJsonText *json, const char *key, const char *string)
{
  lb_json_text_key (json, key);
  if (string)
    lb_json_text_add_string (json, string);
  else
    g_string_append (json->text, "null");
}

void
lb_json_text_put_boolean (LbJsonText *json, const char *key, gboolean value)
{
  lb_json_text_key (json, key);
  lb_json_text_add_boolean (json, value);
}
