/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flatten.h"

#define PIECES_OF_A_CURVE 8

static void
flatten_curve (double x0, double y0, const LbOp *op, LbPieceFunc piece, void *data)
{
  double px = x0, py = y0;

  for (int i = 1; i <= PIECES_OF_A_CURVE; i++)
    {
      double t = (double) i / PIECES_OF_A_CURVE, u = 1 - t;
      double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
      double x = a * x0 + b * op->x[0] + c * op->x[1] + d * op->x[2];
      double y = a * y0 + b * op->y[0] + c * op->y[1] + d * op->y[2];

      piece (px, py, x, y, data);
      px = x;
      py = y;
    }
}

void
lb_item_flatten (const LbScene *scene, const LbItem *item, LbPieceFunc piece, void *data)
{
  double x = 0, y = 0, x_first = 0, y_first = 0;

  for (size_t i = item->first_op; i < item->first_op + item->n_ops; i++)
    {
      const LbOp *op = &g_array_index (scene->ops, LbOp, i);
      int last = op->kind == LB_OP_CURVE ? 2 : 0;

      if (op->kind == LB_OP_CURVE)
        flatten_curve (x, y, op, piece, data);
      else if (op->kind == LB_OP_LINE)
        piece (x, y, op->x[0], op->y[0], data);
      else if (op->kind == LB_OP_CLOSE)
        piece (x, y, x_first, y_first, data);

      x = op->kind == LB_OP_CLOSE ? x_first : op->x[last];
      y = op->kind == LB_OP_CLOSE ? y_first : op->y[last];
      if (op->kind == LB_OP_MOVE)
        {
          x_first = x;
          y_first = y;
        }
    }
}
