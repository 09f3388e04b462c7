/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was read of a log, in words. */
#include <glib/gi18n-lib.h>

#include "import.h"

static void add_line (GString *text, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_line (GString *text, const char *format, ...)
{
  va_list args;

  if (text->len > 0)
    g_string_append_c (text, '\n');
  va_start (args, format);
  g_string_append_vprintf (text, format, args);
  va_end (args);
}

static const char *
format_name (LbImportFormat format)
{
  switch (format)
    {
    case LB_IMPORT_NMEA:
      return _ ("NMEA 0183 sentences");
    case LB_IMPORT_GPX:
      return _ ("GPX track");
    case LB_IMPORT_CSV:
    default:
      return _ ("Table");
    }
}

static void
add_count (GString *text, gsize n, const char *words)
{
  if (n > 0)
    add_line (text, words, n);
}

char *
lb_import_dup_summary (const LbImport *import)
{
  GString *text = g_string_new (NULL);

  add_line (text, "%s%s%s", format_name (import->format), import->detail ? ": " : "",
            import->detail ? import->detail : "");
  if (import->format == LB_IMPORT_GPX)
    add_count (text, import->lines,
               g_dngettext (GETTEXT_PACKAGE, "%zu track point", "%zu track points", import->lines));
  else
    add_count (text, import->lines,
               g_dngettext (GETTEXT_PACKAGE, "%zu line", "%zu lines", import->lines));
  add_count (text, import->soundings->len,
             g_dngettext (GETTEXT_PACKAGE, "%zu depth with its place",
                          "%zu depths with their place", import->soundings->len));
  add_count (text, import->unplaced,
             g_dngettext (GETTEXT_PACKAGE, "%zu depth without a place, not used",
                          "%zu depths without a place, not used", import->unplaced));
  add_count (text, import->other_passes,
             g_dngettext (GETTEXT_PACKAGE, "%zu depth of another pass, not used",
                          "%zu depths of other passes, not used", import->other_passes));
  add_count (text, import->no_bottom,
             g_dngettext (GETTEXT_PACKAGE, "%zu time the sounder found no bottom",
                          "%zu times the sounder found no bottom", import->no_bottom));
  add_count (text, import->no_fix,
             g_dngettext (GETTEXT_PACKAGE, "%zu time the receiver had no position",
                          "%zu times the receiver had no position", import->no_fix));
  add_count (text, import->unused_depths,
             g_dngettext (GETTEXT_PACKAGE,
                          "%zu depth told twice, in another kind of sentence, not used",
                          "%zu depths told twice, in another kind of sentence, not used",
                          import->unused_depths));
  add_count (text, import->gaps,
             g_dngettext (GETTEXT_PACKAGE, "%zu gap between positions",
                          "%zu gaps between positions", import->gaps));
  add_count (text, import->bad[LB_BAD_LINE_CHECKSUM],
             g_dngettext (GETTEXT_PACKAGE, "%zu line with a wrong or missing checksum, not used",
                          "%zu lines with a wrong or missing checksum, not used",
                          import->bad[LB_BAD_LINE_CHECKSUM]));
  add_count (text, import->bad[LB_BAD_LINE_FORM],
             g_dngettext (GETTEXT_PACKAGE, "%zu line that is cut off or garbled, not used",
                          "%zu lines that are cut off or garbled, not used",
                          import->bad[LB_BAD_LINE_FORM]));
  add_count (text, import->bad[LB_BAD_LINE_RANGE],
             g_dngettext (GETTEXT_PACKAGE, "%zu line with an impossible value, not used",
                          "%zu lines with an impossible value, not used",
                          import->bad[LB_BAD_LINE_RANGE]));
  for (guint i = 0; i < import->warnings->len; i++)
    add_line (text, "%s", (const char *) g_ptr_array_index (import->warnings, i));
  return g_string_free (text, FALSE);
}
