/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the tests of model share: files, and rigs drawn at random from the whole table of fields. */
#pragma once

#include <gio/gio.h>

#include "contents.h"
#include "fields.h"
#include "test.h"

/* A file below tests/, and the place for one of the test's own. Free with g_free(). */
char *source_path (const char *name);
char *output_path (const char *name);

/* The names of the files in `folder` with that ending, sorted. Free with g_strfreev(). */
char **files_in (const char *folder, const char *ending);

/* Reads a whole file, or fails the test. Free with g_free(). */
char *read_whole (const char *path, gsize *length);

/* Reads a sample, or fails the test. */
LbContents *read_sample (const char *name);

/* A random value of a field, within its limits, ends and "unset" included. */
double random_value (TestRandom *random, const LbField *field);

/* Any card that a file may hold. */
void random_card (TestRandom *random, LbCard *card);

/* Any rig that a file may hold. */
void random_contents (TestRandom *random, LbContents *contents);

/* Fails unless both hold the same, and says which field differs. */
void assert_same_contents (const LbContents *found, const LbContents *expected);
