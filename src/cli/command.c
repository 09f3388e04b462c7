/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command.h"

#include <stdio.h>
#include <string.h>
#include <gio/gio.h>
#include <glib/gi18n.h>

#include "reader.h"
#include "sentence.h"

/* ---- Messages ---- */

static void
complain (const char *format, va_list arguments)
{
  g_autofree char *message = g_strdup_vprintf (format, arguments);

  /* One line, whatever a file's name holds. */
  g_strdelimit (message, "\n\r", ' ');
  fprintf (stderr, "layback-cli: %s\n", message);
}

void
lb_command_complain (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  complain (format, arguments);
  va_end (arguments);
}

void
lb_command_complain_of_result (const LbResult *result)
{
  LbWording wording = lb_wording_default (LB_UNITS_US);
  g_autofree char *sentence = lb_sentence_of_result (result, &wording);

  lb_command_complain ("%s", sentence);
}

int
lb_command_complain_usage (const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  complain (format, arguments);
  va_end (arguments);
  fprintf (stderr, "%s\n", _ ("Try \"layback-cli --help\"."));
  return LB_EXIT_USAGE;
}

/* ---- The command line ---- */

void
lb_command_input_clear (LbCommandInput *input)
{
  g_clear_pointer (&input->file, g_free);
  g_clear_pointer (&input->changes, g_strfreev);
  g_clear_pointer (&input->units, g_free);
}

/* GLib's own --help ends the program before what was allocated is freed. */
static gboolean
help_is_asked_for (GStrv argv)
{
  for (char **argument = argv + 1; *argument && !g_str_equal (*argument, "--"); argument++)
    if (g_str_equal (*argument, "--help") || g_str_equal (*argument, "-h"))
      return TRUE;
  return FALSE;
}

static gboolean
check_changes (const LbCommandInput *input)
{
  for (char **change = input->changes; change && *change; change++)
    if (strchr (*change, '=') == NULL || **change == '=')
      {
        lb_command_complain_usage (_ ("--set: found \"%s\", expected KEY=VALUE"), *change);
        return FALSE;
      }
  return TRUE;
}

gboolean
lb_command_parse (LbCommandInput *input,
                  int argc,
                  char **argv,
                  const GOptionEntry *entries,
                  const char *summary,
                  int *status)
{
  g_auto (GStrv) files = NULL;
  const GOptionEntry shared[] = {
    { "set", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &input->changes,
      N_ ("Change a value for this run alone, as river.surface_current_m_s=1.5"),
      N_ ("KEY=VALUE") },
    { "units", 0, 0, G_OPTION_ARG_STRING, &input->units, N_ ("Units to show"), "us|metric" },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &files, NULL, "FILE" },
    G_OPTION_ENTRY_NULL,
  };
  g_autoptr (GOptionContext) context = g_option_context_new (NULL);
  g_auto (GStrv) copy = g_strdupv (argv);
  g_autofree char *name = g_strconcat ("layback-cli ", argv[0], NULL);
  g_autoptr (GError) error = NULL;

  g_set_prgname (name);
  g_option_context_set_summary (context, summary);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, shared, GETTEXT_PACKAGE);
  g_option_context_set_help_enabled (context, FALSE);

  if (help_is_asked_for (copy))
    {
      g_autofree char *help = g_option_context_get_help (context, TRUE, NULL);
      fputs (help, stdout);
      *status = LB_EXIT_DONE;
      return FALSE;
    }
  *status = LB_EXIT_USAGE;
  if (!g_option_context_parse_strv (context, &copy, &error))
    lb_command_complain_usage ("%s", error->message);
  else if (files == NULL)
    lb_command_complain_usage (_ ("%s: no FILE given"), argv[0]);
  else if (files[1] != NULL)
    lb_command_complain_usage (_ ("%s: more than one FILE given: \"%s\""), argv[0], files[1]);
  else if (check_changes (input))
    {
      input->file = g_strdup (files[0]);
      return TRUE;
    }
  return FALSE;
}

/* ---- What it says ---- */

gboolean
lb_command_read (const LbCommandInput *input, LbContents *contents)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (input->file);
  g_autoptr (GError) error = NULL;

  if (!lb_reader_load (file, contents, &error))
    {
      lb_command_complain ("%s", error->message);
      return FALSE;
    }
  if (input->changes && !lb_reader_set_all (contents, (const char *const *) input->changes, &error))
    {
      lb_command_complain ("--set: %s", error->message);
      return FALSE;
    }
  return TRUE;
}

/* The window's setting, where it is installed. */
static LbUnits
units_of_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema =
      source ? g_settings_schema_source_lookup (source, LB_APPLICATION_ID, TRUE) : NULL;
  g_autoptr (GSettings) settings = NULL;

  if (schema == NULL || !g_settings_schema_has_key (schema, "units"))
    return LB_UNITS_US;
  settings = g_settings_new_full (schema, NULL, NULL);
  return (LbUnits) g_settings_get_enum (settings, "units");
}

gboolean
lb_command_units (const LbCommandInput *input, LbUnits *units)
{
  if (input->units == NULL)
    *units = units_of_settings ();
  else if (g_str_equal (input->units, "us"))
    *units = LB_UNITS_US;
  else if (g_str_equal (input->units, "metric"))
    *units = LB_UNITS_METRIC;
  else
    {
      lb_command_complain_usage (_ ("--units: found \"%s\", expected \"us\" or \"metric\""),
                                 input->units);
      return FALSE;
    }
  return TRUE;
}
