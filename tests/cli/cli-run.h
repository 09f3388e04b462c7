/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Runs layback-cli as a user does. */
#pragma once

#include <gio/gio.h>
#include <json-glib/json-glib.h>

#include "test.h"

typedef struct
{
  int status;
  char *out, *err;
} Run;

void run_clear (Run *run);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Run, run_clear)

/* Runs the program with these arguments; `locale` may be NULL for that of the test. */
Run run_in (const char *locale, const char *const *arguments);

/* Runs it and sends it `signal` once it works. It must take some seconds. */
Run run_interrupted (int signal, const char *const *arguments);

#define run(...) run_in (NULL, (const char *const[]){ __VA_ARGS__, NULL })

/* A sample, and the place for a file of the test's own. Free with g_free(). */
char *sample (const char *name);
char *output (const char *name);

void assert_contains (const char *text, const char *part);

/* One line on standard error, nothing on standard output. */
void assert_refused (const Run *run, int status, const char *message);

/* An object, or fails the test. Free with json_node_unref(). */
JsonNode *parse (const char *text);
double number (JsonObject *object, const char *key);
