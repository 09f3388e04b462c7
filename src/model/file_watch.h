/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a document's file held when it was last read or written, and whether it still does. Internal
 * to model. */
#pragma once

#include "document.h"

typedef struct LbFileWatch LbFileWatch;

/* `changed_cb` is called, from the main loop, when the file on the disk is another than the last
 * time it was looked at. */
LbFileWatch *lb_file_watch_new (void (*changed_cb) (void *data), void *data);
void lb_file_watch_free (LbFileWatch *watch);

/* From now on it is `file` (NULL: none), which holds what has the mark `mark`. */
void lb_file_watch_set (LbFileWatch *watch, GFile *file, const char *mark);

/* Lets the system tell when the file changes; without it, only lb_file_watch_look() does. */
void lb_file_watch_start (LbFileWatch *watch);

/* Reads the file anew; calls back like the system's notice would. */
LbFileState lb_file_watch_look (LbFileWatch *watch);

/* As of the last look. */
LbFileState lb_file_watch_get_state (const LbFileWatch *watch);
const char *lb_file_watch_get_mark (const LbFileWatch *watch); /* (nullable) */

/* A mark that differs when the bytes do (SHA-256). Free with g_free(). */
char *lb_file_mark (const char *bytes, gsize length);
