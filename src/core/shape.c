/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shape.h"

#include <stdlib.h>
#include <string.h>

void
lb_shape_init (LbShape *shape)
{
  memset (shape, 0, sizeof *shape);
}

void
lb_shape_clear (LbShape *shape)
{
  free (shape->nodes);
  lb_shape_init (shape);
}

/* Makes room without changing the number of nodes. */
static LbStatus
reserve (LbShape *shape, size_t n_nodes)
{
  if (n_nodes <= shape->capacity)
    return LB_STATUS_OK;

  size_t capacity = shape->capacity + shape->capacity / 2;
  if (capacity < n_nodes)
    capacity = n_nodes;
  if (capacity > (size_t) -1 / sizeof *shape->nodes)
    return LB_STATUS_OUT_OF_MEMORY;

  LbShapeNode *nodes = realloc (shape->nodes, capacity * sizeof *nodes);
  if (nodes == NULL)
    return LB_STATUS_OUT_OF_MEMORY;
  shape->nodes = nodes;
  shape->capacity = capacity;
  return LB_STATUS_OK;
}

LbStatus
lb_shape_resize (LbShape *shape, size_t n_nodes)
{
  LbStatus status = reserve (shape, n_nodes);

  if (status != LB_STATUS_OK)
    return status;
  if (n_nodes > shape->n_nodes)
    memset (shape->nodes + shape->n_nodes, 0, (n_nodes - shape->n_nodes) * sizeof *shape->nodes);
  shape->n_nodes = n_nodes;
  return LB_STATUS_OK;
}

LbStatus
lb_shape_copy (LbShape *to, const LbShape *from)
{
  if (to == from)
    return LB_STATUS_OK;

  LbStatus status = reserve (to, from->n_nodes);
  if (status != LB_STATUS_OK)
    return status;

  LbShapeNode *nodes = to->nodes;
  size_t capacity = to->capacity;
  *to = *from;
  to->nodes = nodes;
  to->capacity = capacity;
  if (from->n_nodes > 0)
    memcpy (to->nodes, from->nodes, from->n_nodes * sizeof *to->nodes);
  return LB_STATUS_OK;
}

size_t
lb_shape_line (const LbShape *shape, int part, size_t *out, size_t capacity)
{
  size_t n = 0;

  /* A parent lies below its children in the array, so the order of the array is the order from the
   * upper end down. Node 0 has no segment, so its part says nothing. */
  for (size_t i = 1; i < shape->n_nodes; i++)
    {
      if (shape->nodes[i].part != part)
        continue;
      if (n == 0)
        {
          if (capacity > 0)
            out[0] = shape->nodes[i].parent;
          n = 1;
        }
      if (n < capacity)
        out[n] = i;
      n++;
    }
  return n;
}
