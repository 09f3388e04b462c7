/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the program's own files are. All strings are freed with g_free(). */
#pragma once

#include <glib.h>

/* The full name of a data file ("catalogue.json"): below the folder that the environment variable
 * LAYBACK_DATA_DIR names, else where the program is installed. */
char *lb_data_path (const char *name);

/* The same for a sample ("spring-run.rig"), with LAYBACK_SAMPLES_DIR. */
char *lb_sample_path (const char *name);
