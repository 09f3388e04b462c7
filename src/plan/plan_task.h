/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A computation of many solves, as its caller sees it. */
#pragma once

#include "status.h"

/* Told after every solve, and within long ones, how much is done (0 to 1, never falling): true to
 * give up. Called on the thread that computes. */
typedef bool (*LbPlanProgress) (void *data, double done);

typedef struct
{
  LbPlanProgress progress; /* or NULL */
  void *data;
} LbPlanTask;
