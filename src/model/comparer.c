/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comparer.h"

#include "solver.h"

struct _LbComparer
{
  GObject parent_instance;

  LbSolver *solver;
  LbComparison *comparison; /* the last one that was answered */

  LbContents *wanted; /* of the request that is not yet answered, or NULL */
  LbSetup setups[LB_MAX_VARIANTS];
  bool is_rig[LB_MAX_VARIANTS];
  LbResult *results[LB_MAX_VARIANTS];
};

G_DEFINE_FINAL_TYPE (LbComparer, lb_comparer, G_TYPE_OBJECT)

enum
{
  COMPARED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
clear_results (LbComparer *self)
{
  for (size_t i = 0; i < LB_MAX_VARIANTS; i++)
    g_clear_object (&self->results[i]);
}

/* ---- Going through the variants ---- */

static void
answer (LbComparer *self)
{
  g_autoptr (LbComparison) comparison = lb_comparison_new (self->wanted, self->results);

  g_clear_pointer (&self->wanted, lb_contents_free);
  clear_results (self);
  g_set_object (&self->comparison, comparison);
  g_signal_emit (self, signals[COMPARED], 0, comparison);
}

/* Asks for the next one that has no result, or answers when there is none. */
static void
go_on (LbComparer *self)
{
  for (size_t i = 0; i < LB_MAX_VARIANTS; i++)
    if (self->is_rig[i] && self->results[i] == NULL)
      {
        lb_solver_request (self->solver, &self->setups[i]);
        return;
      }
  answer (self);
}

/* A result for every variant that is this very rig: one asked for before may come late, and two
 * variants may be the same. */
static bool
take (LbComparer *self, LbResult *result)
{
  bool taken = false;

  for (size_t i = 0; i < LB_MAX_VARIANTS; i++)
    if (self->is_rig[i] && self->results[i] == NULL
        && lb_setup_equal (&self->setups[i], lb_result_get_setup (result)))
      taken |= g_set_object (&self->results[i], result);
  return taken;
}

static void
solved_cb (LbSolver *solver, LbResult *result, LbComparer *self)
{
  if (self->wanted && take (self, result))
    go_on (self);
}

static void
take_what_is_known (LbComparer *self)
{
  size_t n = self->comparison ? lb_comparison_get_n (self->comparison) : 0;

  for (size_t i = 0; i < n; i++)
    {
      LbResult *result = lb_comparison_get_result (self->comparison, i);

      if (result)
        take (self, result);
    }
}

void
lb_comparer_request (LbComparer *self, const LbContents *contents)
{
  LbVariants list = lb_comparison_list (&contents->variants);

  g_return_if_fail (LB_IS_COMPARER (self));
  clear_results (self);
  g_clear_pointer (&self->wanted, lb_contents_free);
  self->wanted = lb_contents_dup (contents);
  for (size_t i = 0; i < LB_MAX_VARIANTS; i++)
    self->is_rig[i] =
        i < list.n && lb_comparison_makes_rig (&list.list[i], &contents->setup, &self->setups[i]);
  take_what_is_known (self);
  go_on (self);
}

/* ---- The object ---- */

static void
lb_comparer_dispose (GObject *object)
{
  LbComparer *self = LB_COMPARER (object);

  g_clear_object (&self->solver);
  g_clear_object (&self->comparison);
  g_clear_pointer (&self->wanted, lb_contents_free);
  clear_results (self);
  G_OBJECT_CLASS (lb_comparer_parent_class)->dispose (object);
}

static void
lb_comparer_class_init (LbComparerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_comparer_dispose;
  signals[COMPARED] = g_signal_new ("compared", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                    NULL, NULL, NULL, G_TYPE_NONE, 1, LB_TYPE_COMPARISON);
}

static void
lb_comparer_init (LbComparer *self)
{
  self->solver = lb_solver_new ();
  g_signal_connect_object (self->solver, "solved", G_CALLBACK (solved_cb), self, 0);
}

LbComparer *
lb_comparer_new (void)
{
  return g_object_new (LB_TYPE_COMPARER, NULL);
}

gboolean
lb_comparer_get_busy (LbComparer *self)
{
  g_return_val_if_fail (LB_IS_COMPARER (self), FALSE);
  return self->wanted != NULL;
}

LbComparison *
lb_comparer_get_comparison (LbComparer *self)
{
  g_return_val_if_fail (LB_IS_COMPARER (self), NULL);
  return self->comparison;
}
