/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "status.h"

const char *
lb_status_name (LbStatus status)
{
  switch (status)
    {
    case LB_STATUS_NO_CONVERGENCE:
      return "no convergence";
    case LB_STATUS_BAD_SETUP:
      return "bad setup";
    case LB_STATUS_OUT_OF_MEMORY:
      return "out of memory";
    case LB_STATUS_CANCELLED:
      return "cancelled";
    case LB_STATUS_OK:
      return "ok";
    case LB_STATUS_LINE_AT_LONGEST:
      return "line at its longest";
    case LB_STATUS_HEIGHT_LEAPS:
      return "height leaps";
    case LB_STATUS_HELD_BY_FRICTION:
      return "held by friction";
    case LB_STATUS_LINE_AT_SHORTEST:
      return "line at its shortest";
    }
  return "unknown status";
}
