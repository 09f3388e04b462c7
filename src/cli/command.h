/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The commands of layback-cli and what they share. */
#pragma once

#include "contents.h"
#include "result.h"
#include "units.h"

/* Exit statuses. */
enum
{
  LB_EXIT_DONE = 0,
  LB_EXIT_REFUSED = 1, /* a file or value was refused, or there is no answer */
  LB_EXIT_USAGE = 2,
};

/* Each takes its own arguments, argv[0] being the command's name, and returns an exit status. */
int lb_command_run (int argc, char **argv);
int lb_command_compare (int argc, char **argv);
int lb_command_draw (int argc, char **argv);
int lb_command_pass (int argc, char **argv);
int lb_command_card (int argc, char **argv);
int lb_command_import (int argc, char **argv);

/* What every command takes. */
typedef struct
{
  char *file;     /* owned */
  char **changes; /* "key=value", owned, may be NULL */
  char *units;    /* owned, may be NULL */
} LbCommandInput;

void lb_command_input_clear (LbCommandInput *input);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbCommandInput, lb_command_input_clear)

/* Parses the command line: `entries` beside --set and --units, and one FILE. FALSE after a message
 * and with `status` set: a wrong use, or --help. */
gboolean lb_command_parse (LbCommandInput *input,
                           int argc,
                           char **argv,
                           const GOptionEntry *entries,
                           const char *summary,
                           int *status);

/* Reads the file and makes the changes. FALSE after a message. */
gboolean lb_command_read (const LbCommandInput *input, LbContents *contents);

/* The units of --units, else those of the settings, else US. FALSE after a message. */
gboolean lb_command_units (const LbCommandInput *input, LbUnits *units);

/* One line on standard error, "layback-cli: ...". */
void lb_command_complain (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* The same, why a solve failed. */
void lb_command_complain_of_result (const LbResult *result);

/* The same with a hint at --help; returns LB_EXIT_USAGE. */
int lb_command_complain_usage (const char *format, ...) G_GNUC_PRINTF (1, 2);
