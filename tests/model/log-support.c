/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "log-support.h"

#include <math.h>

void
log_add_sentence (GString *log, const char *body)
{
  guint sum = 0;

  for (const char *c = body; *c; c++)
    sum ^= (guchar) *c;
  g_string_append_printf (log, "$%s*%02X\r\n", body, sum);
}

void
log_add_fix (GString *log, double metres, double seconds)
{
  char body[120];
  double minutes = metres / 110574.3 * 60;
  int s = 43200 + (int) seconds;

  g_snprintf (body, sizeof body, "GPRMC,%02d%02d%02d,A,%02d%08.5f,N,01000.0000,E,0.8,0.0,230326,,",
              s / 3600 % 24, s / 60 % 60, s % 60, (int) (minutes / 60), fmod (minutes, 60));
  log_add_sentence (log, body);
}

void
log_add_depth (GString *log, double depth)
{
  char body[60];

  g_snprintf (body, sizeof body, "SDDPT,%.2f,0.0", depth);
  log_add_sentence (log, body);
}
