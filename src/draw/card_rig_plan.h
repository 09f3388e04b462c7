/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words and measures of the rig diagram; for the files of this folder only. */
#pragma once

#include "card_piece.h"
#include "card_spread.h"

/* One leader's line and words; those from the highest attachment come first. */
typedef struct
{
  const LbCardLeader *leader;
  LbText head, foot; /* over and under the line; a foot without layout: none */
} LbRigRow;

typedef struct
{
  const LbCardPen *pen;
  const LbCardRig *rig;
  double body;
  bool narrow;
  double total_x, heights_x, shank_x, text_x, right; /* from the box's left edge */
  LbText mainline, shank, weight;
  LbFont plain, strong;
  bool short_ends; /* of the leaders, with the words at their ends */
  size_t n_rows;
  LbRigRow rows[LB_MAX_LEADERS];
  LbCardSpan spans[LB_MAX_LEADERS];
} LbRigPlan;

/* All that depends on the width and the variant alone. */
LbRigPlan lb_rig_plan (const LbCardPen *pen, double width, int variant);

double lb_rig_weight_radius (const LbRigPlan *plan);

/* Over the shank: the words of the mainline and of the shank. */
double lb_rig_top_height (const LbRigPlan *plan);

/* Under it: the weight, with its words beside it. */
double lb_rig_bottom_height (const LbRigPlan *plan);

/* The pieces' height, and the height from which it gains nothing more. */
double lb_rig_height (const LbCardPen *pen, const LbCardPiece *piece, double width);
double lb_rig_most_height (const LbCardPen *pen, const LbCardPiece *piece, double width);
