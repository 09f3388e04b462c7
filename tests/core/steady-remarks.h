/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether a remark that no line out holds the weight at its height is true. */
#pragma once

#include "setup.h"

/* Solves `setup` with the line out given, for a hundred lengths from the shortest to the longest:
 * each from the one before, letting out; the same taking in; and each from nothing. Wherever the
 * weight is above its height at one and below it at the next, halves what is between, starting
 * every time from the last rig on the one side. True when the weight came within 1e-8 m of its
 * height, and then with `*line_out`, m; false when it leaps everywhere. Only solves on a mesh of
 * `segments`, which the remark was about, and with the status OK count. Also tells whether the
 * weight was ever above its height, and ever below. */
bool remark_held_after_all (
    const LbSetup *setup, size_t segments, double *line_out, bool *above, bool *below);
