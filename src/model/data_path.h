/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where the program's own data files are. */
#pragma once

#include <glib.h>

/* The full name of a data file ("catalogue.json", "samples/spring-run.rig"): below the folder that
 * the environment variable LAYBACK_DATA_DIR names, else where the program is installed. Free with
 * g_free(). */
char *lb_data_path (const char *name);
