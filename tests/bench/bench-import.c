/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long a log of a million lines takes to become a bed. Prints figures and asserts nothing. The
 * yardstick in the same run is going through the same bytes and taking the exclusive or of each
 * line, as a checksum does. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "import.h"

#define LINES 1000000
#define TRIALS 3

static void
add_sentence (GString *log, const char *body)
{
  guint sum = 0;

  for (const char *c = body; *c; c++)
    sum ^= (guchar) *c;
  g_string_append_printf (log, "$%s*%02X\r\n", body, sum);
}

/* A boat going north at 0.5 m/s, a fix a second and a depth after it. */
static GString *
make_log (void)
{
  GString *log = g_string_new (NULL);

  for (int k = 0; k < LINES / 2; k++)
    {
      char body[120];
      double minutes = k * 0.5 / 1843.0;

      g_snprintf (body, sizeof body,
                  "GPRMC,%02d%02d%02d.00,A,%02d%08.5f,N,01000.0000,E,1.0,0.0,230326,,,A",
                  k / 3600 % 24, k / 60 % 60, k % 60, (int) (minutes / 60), fmod (minutes, 60));
      add_sentence (log, body);
      g_snprintf (body, sizeof body, "SDDPT,%.2f,0.30", 5 + sin (k / 100.0));
      add_sentence (log, body);
    }
  return log;
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
yardstick (const GString *log)
{
  gint64 start = g_get_monotonic_time ();
  volatile guint sum = 0;
  guint line = 0;

  for (gsize i = 0; i < log->len; i++)
    if (log->str[i] == '\n')
      {
        sum += line;
        line = 0;
      }
    else
      line ^= (guchar) log->str[i];
  return (double) (g_get_monotonic_time () - start) / 1e6;
}

int
main (void)
{
  GString *log = make_log ();
  double reading[TRIALS], reducing[TRIALS], passing[TRIALS];
  LbImportOptions options = lb_import_options_default (LB_UNITS_METRIC);
  gsize soundings = 0, points = 0;

  /* The whole track is longer than a bed may be. */
  options.to = LB_IMPORT_LONGEST_BED;
  for (int i = 0; i < TRIALS; i++)
    {
      gint64 start = g_get_monotonic_time ();
      g_autoptr (LbImport) import =
          lb_import_parse (log->str, log->len, NULL, NULL, NULL, NULL, NULL);
      LbBedProfile profile;

      if (!import)
        return 1;
      reading[i] = (double) (g_get_monotonic_time () - start) / 1e6;
      start = g_get_monotonic_time ();
      if (!lb_import_profile (import, &options, &profile, NULL))
        return 1;
      reducing[i] = (double) (g_get_monotonic_time () - start) / 1e6;
      passing[i] = yardstick (log);
      soundings = import->soundings->len;
      points = profile.n;
    }
  qsort (reading, TRIALS, sizeof reading[0], compare_doubles);
  qsort (reducing, TRIALS, sizeof reducing[0], compare_doubles);
  qsort (passing, TRIALS, sizeof passing[0], compare_doubles);
  g_print ("%d lines, %.0f MB; medians of %d\n", LINES, (double) log->len / 1e6, TRIALS);
  g_print ("  reading %.2f s (%.1f times the yardstick of %.3f s): %" G_GSIZE_FORMAT " depths\n",
           reading[TRIALS / 2], reading[TRIALS / 2] / passing[TRIALS / 2], passing[TRIALS / 2],
           soundings);
  g_print ("  cleaning and reducing %.2f s: %" G_GSIZE_FORMAT " points over %.0f m\n",
           reducing[TRIALS / 2], points, options.to);
  g_string_free (log, TRUE);
  return 0;
}
