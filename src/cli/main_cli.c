/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <stdio.h>
#include <string.h>
#include <glib/gi18n.h>

#include "command.h"

static const struct
{
  const char *name;
  int (*command) (int argc, char **argv);
  const char *help;
} commands[] = {
  { "run", lb_command_run, N_ ("Solve a rig and print the readings") },
  { "draw", lb_command_draw, N_ ("Solve a rig and draw it into a file") },
  { "pass", lb_command_pass, N_ ("Troll a rig through its pass and print what comes of it") },
  { "compare", lb_command_compare, N_ ("Solve variants of a rig and print how they differ") },
  { "card", lb_command_card, N_ ("Draw the card of a rig, to be printed") },
  { "import", lb_command_import, N_ ("Make a sounder's log the bed of a rig") },
};

static void
set_up_language (void)
{
  const char *folder = g_getenv ("LAYBACK_LOCALE_DIR");

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, folder && *folder ? folder : LB_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

static int
print_help (void)
{
  printf ("%s\n\n", _ ("Usage: layback-cli COMMAND FILE [OPTION…]"));
  for (size_t i = 0; i < G_N_ELEMENTS (commands); i++)
    printf ("  %-8s%s\n", commands[i].name, _ (commands[i].help));
  printf ("\n%s\n", _ ("\"layback-cli COMMAND --help\" lists the options of a command.\n"
                       "Exit status: 0 solved, 1 refused or no answer, 2 wrong use."));
  return LB_EXIT_DONE;
}

static int
run_command (int argc, char **argv)
{
  if (argc < 2)
    return lb_command_complain_usage (_ ("no command given"));
  if (g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h"))
    return print_help ();
  if (g_str_equal (argv[1], "--version"))
    {
      printf ("layback-cli %s\n", LB_VERSION);
      return LB_EXIT_DONE;
    }
  for (size_t i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (argv[1], commands[i].name))
      return commands[i].command (argc - 1, argv + 1);
  return lb_command_complain_usage (_ ("unknown command \"%s\""), argv[1]);
}

/* What goes to standard output must get there: a full disk is no answer. */
int
main (int argc, char **argv)
{
  int status;

  set_up_language ();
  status = run_command (argc, argv);
  if (fflush (stdout) == 0 && !ferror (stdout))
    return status;
  lb_command_complain (_ ("the answer could not be written"));
  return status == LB_EXIT_DONE ? LB_EXIT_REFUSED : status;
}
