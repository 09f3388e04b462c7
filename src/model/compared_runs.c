/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compared_runs.h"

#include "comparison_words.h"

G_STATIC_ASSERT (LB_COMPARED_RUNS_MOST == LB_MAX_VARIANTS);

/* The runs, with what they point to. */
typedef struct
{
  LbComparedRuns plain; /* first: what callers hold */
  LbComparison *comparison;
  char *words[LB_MAX_VARIANTS];
  char *remark;
} Runs;

static void
add_remark (Runs *self, const char *name, const char *remark)
{
  g_autofree char *before = g_steal_pointer (&self->remark);

  self->remark =
      g_strdup_printf ("%s%s%s: %s", before ? before : "", before ? " " : "", name, remark);
}

static void
add_run (Runs *self, size_t i, const LbWording *wording)
{
  LbResult *result = lb_comparison_get_result (self->comparison, i);
  const LbReadings *readings = lb_comparison_get_readings (self->comparison, i);
  g_autofree char *remark = lb_comparison_dup_remark (self->comparison, i, wording);
  const char *name = lb_comparison_get_variant (self->comparison, i)->name;

  self->words[i] = lb_comparison_dup_sentence (self->comparison, i, wording);
  self->plain.runs[self->plain.n++] = (LbComparedRun){
    .name = name,
    .words = self->words[i],
    .setup = result ? lb_result_get_setup (result) : lb_comparison_get_setup (self->comparison),
    .shape = result ? lb_result_get_shape (result) : NULL,
    .readings = readings,
    .status = result ? lb_result_get_status (result) : LB_STATUS_BAD_SETUP,
  };
  if (readings && self->plain.ground == NULL)
    self->plain.ground = lb_result_get_setup (result);
  if (remark)
    add_remark (self, name, remark);
}

LbComparedRuns *
lb_compared_runs_new (LbComparison *comparison, const LbWording *wording)
{
  Runs *self = g_new0 (Runs, 1);

  self->comparison = g_object_ref (comparison);
  for (size_t i = 0; i < lb_comparison_get_n (comparison); i++)
    add_run (self, i, wording);
  if (self->plain.ground == NULL)
    self->plain.ground = lb_comparison_get_setup (comparison);
  self->plain.remark = self->remark;
  return &self->plain;
}

void
lb_compared_runs_free (LbComparedRuns *runs)
{
  Runs *self = (Runs *) runs;

  if (self == NULL)
    return;
  for (size_t i = 0; i < LB_MAX_VARIANTS; i++)
    g_free (self->words[i]);
  g_free (self->remark);
  g_object_unref (self->comparison);
  g_free (self);
}
