/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Writes JSON for people to read: keys in the order they come, numbers in their shortest form, the
 * same bytes in every locale. */
#pragma once

#include <glib.h>

typedef struct
{
  GString *text;
  guint indent;
  gboolean first; /* nothing stands in the present object or list yet */
} LbJsonText;

/* The shortest decimal form of a finite `value` that reads back bit-equal. */
#define LB_JSON_NUMBER_SIZE 40
void lb_json_text_number (double value, char text[LB_JSON_NUMBER_SIZE]);

void lb_json_text_init (LbJsonText *json);

/* The text, ending with a newline; free with g_free(). The writer is then empty. */
char *lb_json_text_end (LbJsonText *json, gsize *length);

/* A new line, and a key, for what is written next. */
void lb_json_text_start_line (LbJsonText *json);
void lb_json_text_key (LbJsonText *json, const char *key);

/* '{' or '[', and '}' or ']'. */
void lb_json_text_open (LbJsonText *json, char bracket);
void lb_json_text_close (LbJsonText *json, char bracket);

/* Both for what is written next: a member of the open object, an item on a line of its own. */
void lb_json_text_open_member (LbJsonText *json, const char *key, char bracket);
void lb_json_text_open_item (LbJsonText *json, char bracket);

/* Values; a number that is not finite becomes null. */
void lb_json_text_add_number (LbJsonText *json, double value);
void lb_json_text_add_string (LbJsonText *json, const char *string);
void lb_json_text_add_boolean (LbJsonText *json, gboolean value);

/* Members of the open object; a text that is NULL becomes null. */
void lb_json_text_put_number (LbJsonText *json, const char *key, double value);
void lb_json_text_put_string (LbJsonText *json, const char *key, const char *string);
void lb_json_text_put_boolean (LbJsonText *json, const char *key, gboolean value);
