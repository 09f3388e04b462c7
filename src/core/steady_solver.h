/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The inside of the steady solver, shared by its two ways to an answer. Internal to core. */
#pragma once

#include "mesh.h"
#include "steady.h"

struct LbSteady
{
  LbTree tree;
  LbShape shape;
  bool thorough;            /* try everything before giving up */
  bool solved;              /* tree holds an answer to start from */
  size_t iterations, limit; /* of this solve */
  LbSteadyStatistics statistics;
};

/* Solves the tree as it is meshed, from its present state if `warm`, and fills the shape. */
LbStatus lb_steady_solve_mesh (LbSteady *steady, const LbSetup *setup, bool warm);

/* Meshes by `plan` and solves. */
LbStatus
lb_steady_solve_plan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, bool warm);

/* Solves on three meshes, each cut in half from the one before, and extrapolates. The shape has the
 * nodes of the coarsest. */
LbStatus lb_steady_solve_fine (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan);
