/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "data_path.h"

static char *
path_below (const char *variable, const char *installed, const char *name)
{
  const char *folder = g_getenv (variable);
  return g_build_filename (folder && *folder ? folder : installed, name, NULL);
}

char *
lb_data_path (const char *name)
{
  return path_below ("LAYBACK_DATA_DIR", LB_DATA_DIR, name);
}

char *
lb_sample_path (const char *name)
{
  return path_below ("LAYBACK_SAMPLES_DIR", LB_SAMPLES_DIR, name);
}
