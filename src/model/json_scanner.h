/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Goes through a JSON text: small pieces, strings, and what to say where it is at fault. Internal
 * to model; strict_json.h reads whole texts. */
#pragma once

#include <glib.h>

#include "file_error.h"

typedef struct
{
  const char *start, *at, *end;
  guint depth, deepest;
  GString *path; /* of the value being read: "river.bed[2]" */
  GError **error;
} LbJsonScanner;

/* Sets the error: `message` for where the scanner stands, in the path. Returns NULL. */
void *lb_json_scanner_fail (LbJsonScanner *s, LbFileError code, const char *message);

/* "found X, expected `expected`" for what stands here. Returns NULL. */
void *lb_json_scanner_fail_expected (LbJsonScanner *s, const char *expected);

void lb_json_scanner_skip_blanks (LbJsonScanner *s);

/* Whether that was next, and is gone past: a character, at least one digit. */
gboolean lb_json_scanner_take (LbJsonScanner *s, char c);
gboolean lb_json_scanner_take_digits (LbJsonScanner *s);

/* At the opening quote; NULL with the error. Free with g_free(). */
char *lb_json_scanner_string (LbJsonScanner *s);
