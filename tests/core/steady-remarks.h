/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether a remark that no line out holds the weight at its height is true. */
#pragma once

#include "setup.h"

/* What a search through all lines out came upon. */
typedef struct
{
  bool held;         /* the weight passes its height without a leap */
  double line_out;   /* m, where */
  bool above, below; /* the weight was ever above its height, ever below */
} RemarkSearch;

/* Solves `setup` with the line out given, for so many `lengths` from the shortest to the longest:
 * each from the one before, letting out; the same taking in; and each from nothing. Wherever the
 * weight is above its height at one and below it at the next, halves what is between, starting
 * every time from the last rig on the one side, until both sides are within 1 mm of the height (it
 * is held) or the way between them is too short for that (it leaps). Only solves on a mesh of
 * `segments`, which the remark was about, and with the status OK count. */
RemarkSearch remark_search (const LbSetup *setup, size_t segments, int lengths);
