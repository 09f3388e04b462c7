/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The options of commands that draw into a file. */
#pragma once

#include "contents.h"
#include "export.h"

typedef struct
{
  char *output;  /* owned; NULL: not given */
  char *size;    /* owned; as given */
  gboolean dark; /* as given */

  /* Set by lb_draw_options_check(). */
  LbExportFormat format;
  LbTheme theme;
  double width, height;
} LbDrawOptions;

#define LB_DRAW_ENTRIES(options)                                                                   \
  { "output",                                                                                      \
    'o',                                                                                           \
    0,                                                                                             \
    G_OPTION_ARG_FILENAME,                                                                         \
    &(options).output,                                                                             \
    N_ ("The file to write; its ending says what kind"),                                           \
    "OUT.png|svg|pdf" },                                                                           \
      { "size",                                                                                    \
        0,                                                                                         \
        0,                                                                                         \
        G_OPTION_ARG_STRING,                                                                       \
        &(options).size,                                                                           \
        N_ ("Pixels, or points for PDF"),                                                          \
        N_ ("WIDTHxHEIGHT") },                                                                     \
  {                                                                                                \
    "dark", 0, 0, G_OPTION_ARG_NONE, &(options).dark, N_ ("Draw on a dark ground"), NULL           \
  }

/* Makes sense of what was given, with an output. FALSE after a message. */
gboolean lb_draw_options_check (LbDrawOptions *options);

/* The picture of `contents`, not solved, which must live as long as it is used. */
LbPicture lb_draw_picture (const LbContents *contents, LbUnits units);

void lb_draw_options_clear (LbDrawOptions *options);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbDrawOptions, lb_draw_options_clear)
