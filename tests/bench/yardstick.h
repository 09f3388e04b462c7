/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The discrete steady problem of a mesh handed to a general nonlinear solver, GSL's hybrid method
 * with a dense numerical Jacobian: what one would do without the tree. */
#pragma once

#include "shape.h"

/* Moves the nodes and tensions of `shape`, which holds the answer of a neighbouring setup, to the
 * answer of `setup`, line out given. Every node must be clear of bed and surface. Returns the
 * number of iterations, 0 when it did not get there. */
size_t yardstick_solve (const LbSetup *setup, LbShape *shape);
