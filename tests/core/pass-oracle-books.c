/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a pass comes to in momentum and energy, by the oracle's formulas. */
#include "pass-oracle-private.h"

#include <string.h>

#include <gsl/gsl_math.h>

void
pass_oracle_take (PassOracle *o, LbPass *pass)
{
  const LbShape *shape = lb_pass_shape (pass);

  pass_oracle_set_state (o, shape);
  double *y = N_VGetArrayPointer (o->y);
  for (size_t i = 1; i < o->n; i++)
    {
      LbVec3 v = lb_pass_velocity (pass, i);
      double state[3] = { v.x, v.y, v.z };
      memcpy (y + 2 + 6 * o->nodes[i].place + 3, state, sizeof state);
    }
  o->time = lb_pass_time (pass);
  o->taken_line = shape->line_out;
}

/* One end of a segment: `share` m of it, of which `per_line` m come with a metre of line. */
static void
book_end (const PassOracle *o,
          const LbLine *line,
          double share,
          double per_line,
          LbVec3 u,
          LbVec3 at,
          LbVec3 v,
          PassBooks *books)
{
  const LbRiver *river = &o->setup.river;
  double area = M_PI_4 * line->diameter * line->diameter;
  double dry = area * line->density, wet = area * river->density, along = lb_vec3_dot (v, u);
  LbVec3 momentum = lb_vec3_add_scaled (lb_vec3_scale (v, dry + wet), -wet * along, u);
  double moving = 0.5 * lb_vec3_dot (momentum, v), height = (dry - wet) * river->gravity * at.z;

  books->momentum = lb_vec3_add_scaled (books->momentum, share, momentum);
  books->energy += share * (moving + height);
  books->momentum_per_line = lb_vec3_add_scaled (books->momentum_per_line, per_line, momentum);
  books->energy_per_line += per_line * (moving + height);
}

static void
book_segment (const PassOracle *o, const double *y, size_t i, PassBooks *books)
{
  const PassOracleNode *node = &o->nodes[i];
  double rest = node->rest + node->per_line * pass_oracle_line_out (o, o->time);
  LbVec3 below = pass_oracle_place (o, y, i), above = pass_oracle_place (o, y, node->parent);
  LbVec3 span = lb_vec3_sub (above, below);
  double length = lb_vec3_norm (span), stretch = fmax (length / rest - 1, 0);
  LbVec3 u = lb_vec3_scale (span, 1 / length);

  book_end (o, node->line, 0.5 * rest, 0.5 * node->per_line, u, below,
            pass_oracle_velocity (o, y, o->time, i), books);
  book_end (o, node->line, 0.5 * rest, 0.5 * node->per_line, u, above,
            pass_oracle_velocity (o, y, o->time, node->parent), books);
  /* 1/2 EA (length - rest)^2 / rest, and how it changes with the rest. */
  books->energy += 0.5 * node->line->axial_stiffness * rest * stretch * stretch;
  books->energy_per_line -=
      node->per_line * node->line->axial_stiffness * stretch * (1 + 0.5 * stretch);
}

PassBooks
pass_oracle_books (PassOracle *o)
{
  const double *y = N_VGetArrayPointer (o->y);
  PassBooks books = { 0 };

  for (size_t i = 1; i < o->n; i++)
    {
      const PassOracleNode *node = &o->nodes[i];
      LbVec3 v = pass_oracle_velocity (o, y, o->time, i);
      double mass = node->dry + node->added;
      book_segment (o, y, i, &books);
      books.momentum = lb_vec3_add_scaled (books.momentum, mass, v);
      books.energy += 0.5 * mass * lb_vec3_dot (v, v);
      books.energy -= node->net_up * pass_oracle_place (o, y, i).z;
    }
  pass_oracle_load (o, y, o->time);
  books.outside = o->outside;
  books.turned = o->turned;
  books.power = o->damped;
  return books;
}
