/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The inside of the steady solver, shared by its ways to an answer. Internal to core. */
#pragma once

#include "mesh.h"
#include "steady.h"

#define LB_STEADY_SLIDERS 6

/* What the last answers were for, newest first, to foresee the next. */
typedef struct
{
  size_t answers; /* in a row on the same mesh, each from the one before */
  double value[LB_TREE_ANSWERS][LB_STEADY_SLIDERS]; /* what a slider changes */
  double line_out[LB_TREE_ANSWERS];                 /* m */
} LbSteadyForesight;

struct LbSteady
{
  LbTree tree;
  LbShape shape;
  bool thorough;            /* try everything before giving up */
  bool scans;               /* before a remark says that no line out holds the weight */
  bool warm_only;           /* gives up when the last answer leads nowhere */
  double graded_for;        /* m of line out that the last answer's mesh is graded for; unset: the
                               common one */
  bool solved;              /* tree holds an answer to start from */
  size_t iterations, limit; /* of this solve */
  LbSteadyCancel cancel;    /* or NULL */
  void *cancel_data;
  bool cancelled;
  LbSteadyForesight foresight;
  LbSteadyStatistics statistics;

  /* The last remark that a scan ended with, and what it was for: a second look would cost the same
   * and see the same. LB_STATUS_OK when there is none. */
  LbStatus remark;
  LbSetup remark_setup;
  size_t remark_segments;
};

#define LB_STEADY_DIRECT_ITERATIONS 20  /* before Newton from the present state is given up */
#define LB_STEADY_HEIGHT_TOLERANCE 1e-8 /* m, of the held weight */

/* Newton from the present state, of the line out too when the tree is holding: at most `iterations`
 * steps. True when it has arrived; the shape is then filled. */
bool lb_steady_newton (LbSteady *steady, size_t iterations);

/* Counts a Newton step; false when there are to be no more: too many, or cancelled. */
bool lb_steady_may_go_on (LbSteady *steady);

/* The farthest, m, that a node may go in one step. */
double lb_steady_largest_move (const LbTree *tree);

/* The share of a step that may be taken without moving a node or turning a segment too far. */
double lb_steady_take_factor (const LbTree *tree, const LbTreeStep *step);

/* Rough shape from nothing: loads give directions, directions give places, a few times over. */
void lb_steady_start_cold (LbTree *tree);

/* Solves for the line out as it is: from the present state if `warm`, then by other ways. True when
 * solved. */
bool lb_steady_solve_given (LbSteady *steady, bool warm);

/* Before `remark` says of the solved tree that no line out holds the weight at its height: looks
 * for one that does. Returns LB_STATUS_OK and the shape with it, cut up as for that line out given;
 * or the remark that is true, with its shape; or LB_STATUS_NO_CONVERGENCE when stopped. */
LbStatus
lb_steady_scan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, LbStatus remark);

/* Solves the tree as it is meshed, from its present state if `warm`, and fills the shape. A remark
 * other than friction's is that of this mesh alone: lb_steady_scan() has the last word. */
LbStatus lb_steady_solve_mesh (LbSteady *steady, const LbSetup *setup, bool warm);

/* Meshes by `plan` and solves. */
LbStatus
lb_steady_solve_plan (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, bool warm);

/* From the shape at hand, solved with `remark` on a coarse mesh: solves on the mesh of `plan`, on
 * the same branch. LB_STATUS_OK or what failed. */
LbStatus lb_steady_carry_over (LbSteady *steady,
                               const LbSetup *setup,
                               const LbMeshPlan *plan,
                               LbStatus remark);

/* How many segments the coarsest mesh of a fine solve has, where `segments` are asked for. */
size_t lb_steady_fine_segments (const LbSetup *setup, size_t segments);

/* From the solved mesh of `plan`, solved with `remark`: solves on two more, each cut in half from
 * the one before, and extrapolates. The shape has the nodes of the coarsest. Returns `remark` or
 * what failed. */
LbStatus
lb_steady_refine (LbSteady *steady, const LbSetup *setup, const LbMeshPlan *plan, LbStatus remark);

/* Moves a warm tree on along the way of the last answers, if just one slider goes on moving;
 * false, and nothing is done, otherwise. lb_tree_restore() from LB_TREE_MEMORY_ANSWER undoes it. */
bool lb_steady_foresee (LbSteady *steady, const LbSetup *setup);

/* Takes the tree as the answer for `setup` into memory, or forgets all that was remembered. */
void lb_steady_remember (LbSteady *steady, const LbSetup *setup);
void lb_steady_forget (LbSteady *steady);
