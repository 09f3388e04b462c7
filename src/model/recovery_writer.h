/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A thread that writes and removes copies one after the other, so that nobody waits for the disk.
 * Internal to model. */
#pragma once

#include <gio/gio.h>

typedef struct LbRecoveryWriter LbRecoveryWriter;

/* `done_cb` is called from the main loop after each write, with NULL or the fault in one line. */
LbRecoveryWriter *
lb_recovery_writer_new (void (*done_cb) (void *data, const char *path, const char *fault),
                        void *data);

/* Finishes what is waiting; no calls come any more. */
void lb_recovery_writer_free (LbRecoveryWriter *writer);

void lb_recovery_writer_write (LbRecoveryWriter *writer, const char *path, GBytes *bytes);
void lb_recovery_writer_remove (LbRecoveryWriter *writer, const char *path);

/* Waits until all of it is done. */
void lb_recovery_writer_wait (LbRecoveryWriter *writer);
