/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a recorded pass consists of. Internal to plan. */
#pragma once

#include <stdatomic.h>

#include "pass_record.h"

/* Of the rig's tree, the same all through a pass. */
typedef struct
{
  size_t parent;
  int part;
} LbRecordedSegment;

/* A node at one moment, as in LbShapeNode. Single precision: x counts from where the boat starts,
 * and over the kilometres of an hour is still good to a fraction of a millimetre. */
typedef struct
{
  float x, y, z;
  float rest_length, tension, bed_force;
} LbRecordedNode;

struct LbPassRecord
{
  LbPassScript script;
  LbPassJob job;
  LbPassOptions options;
  LbPass *pass;
  LbPassRecord *second; /* or NULL */
  double interval;      /* s */
  LbStatus remark;      /* of the steady run at the start */
  const LbPlanTask *task;
  LbShape outline; /* without its nodes */
  size_t n_nodes;
  size_t capacity; /* samples */
  LbRecordedSegment *segments;
  LbPassSample *samples;
  LbRecordedNode *nodes;   /* n_nodes for each sample */
  double most_top_tension; /* N, of the steps since the last sample */
  bool touched[LB_PASS_MOST_BODIES];
  atomic_size_t count; /* samples that may be looked at */
};
