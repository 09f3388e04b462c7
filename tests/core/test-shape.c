/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The memory of a shape and the lines in it. */
#include "shape.h"

#include "test.h"

/* A small rig: reel 0, mainline 1 to 2, shank 3 to 4 (weight), two leaders at 3. The second
 * leader's nodes lie before the first's, as a tree may. */
static void
make_rig (LbShape *shape)
{
  static const struct
  {
    size_t parent;
    int part;
  } nodes[] = {
    { 0, 0 },
    { 0, LB_PART_MAINLINE },
    { 1, LB_PART_MAINLINE },
    { 2, LB_PART_SHANK },
    { 3, LB_PART_SHANK },
    { 3, LB_PART_LEADER_0 + 1 },
    { 5, LB_PART_LEADER_0 + 1 },
    { 3, LB_PART_LEADER_0 },
    { 7, LB_PART_LEADER_0 },
    { 8, LB_PART_LEADER_0 },
  };

  assert_int_equal (lb_shape_resize (shape, 10), LB_STATUS_OK);
  for (size_t i = 0; i < 10; i++)
    {
      shape->nodes[i].parent = nodes[i].parent;
      shape->nodes[i].part = nodes[i].part;
      shape->nodes[i].position = lb_vec3 ((double) i, 0, -(double) i);
    }
  shape->shank_top = 2;
  shape->weight = 4;
  shape->n_leaders = 2;
  shape->line_out = 5;
}

static void
assert_line (const LbShape *shape, int part, const size_t *expected, size_t n)
{
  size_t out[16];

  assert_int_equal (lb_shape_line (shape, part, out, 16), n);
  for (size_t i = 0; i < n; i++)
    assert_int_equal (out[i], expected[i]);
}

static void
lines_run_from_the_upper_end (void **state)
{
  LbShape shape;

  lb_shape_init (&shape);
  make_rig (&shape);
  assert_line (&shape, LB_PART_MAINLINE, (size_t[]){ 0, 1, 2 }, 3);
  assert_line (&shape, LB_PART_SHANK, (size_t[]){ 2, 3, 4 }, 3);
  assert_line (&shape, LB_PART_LEADER_0, (size_t[]){ 3, 7, 8, 9 }, 4);
  assert_line (&shape, LB_PART_LEADER_0 + 1, (size_t[]){ 3, 5, 6 }, 3);
  assert_line (&shape, LB_PART_LEADER_0 + 2, NULL, 0);
  lb_shape_clear (&shape);
}

static void
a_line_keeps_to_the_room (void **state)
{
  size_t out[3] = { 77, 77, 77 };
  LbShape shape;

  lb_shape_init (&shape);
  make_rig (&shape);
  assert_int_equal (lb_shape_line (&shape, LB_PART_LEADER_0, out, 2), 4);
  assert_int_equal (out[0], 3);
  assert_int_equal (out[1], 7);
  assert_int_equal (out[2], 77);
  assert_int_equal (lb_shape_line (&shape, LB_PART_LEADER_0, NULL, 0), 4);
  lb_shape_clear (&shape);
}

static void
an_empty_shape_has_no_lines (void **state)
{
  LbShape shape, other;

  lb_shape_init (&shape);
  lb_shape_init (&other);
  assert_line (&shape, LB_PART_MAINLINE, NULL, 0);
  assert_int_equal (lb_shape_copy (&other, &shape), LB_STATUS_OK);
  assert_int_equal (other.n_nodes, 0);
  lb_shape_clear (&shape);
  lb_shape_clear (&shape);
}

static void
growing_keeps_the_nodes (void **state)
{
  LbShape shape;

  lb_shape_init (&shape);
  make_rig (&shape);
  assert_int_equal (lb_shape_resize (&shape, 5000), LB_STATUS_OK);
  assert_int_equal (shape.n_nodes, 5000);
  for (size_t i = 0; i < 10; i++)
    assert_near (shape.nodes[i].position.x, (double) i, 0);
  for (size_t i = 10; i < 5000; i++)
    {
      assert_near (shape.nodes[i].position.x, 0, 0);
      assert_int_equal (shape.nodes[i].parent, 0);
    }
  assert_int_equal (lb_shape_resize (&shape, 3), LB_STATUS_OK);
  assert_int_equal (shape.n_nodes, 3);
  assert_true (shape.capacity >= 5000);
  assert_near (shape.nodes[2].position.x, 2, 0);
  lb_shape_clear (&shape);
}

static void
a_copy_stands_alone (void **state)
{
  LbShape from, to;

  lb_shape_init (&from);
  lb_shape_init (&to);
  make_rig (&from);
  assert_int_equal (lb_shape_copy (&to, &from), LB_STATUS_OK);
  from.nodes[4].position.x = 99;
  assert_int_equal (to.n_nodes, 10);
  assert_int_equal (to.weight, 4);
  assert_near (to.line_out, 5, 0);
  assert_near (to.nodes[4].position.x, 4, 0);

  /* Into one that has room already: the room stays. */
  LbShapeNode *nodes = to.nodes;
  from.n_nodes = 6;
  assert_int_equal (lb_shape_copy (&to, &from), LB_STATUS_OK);
  assert_ptr_equal (to.nodes, nodes);
  assert_int_equal (to.n_nodes, 6);
  assert_near (to.nodes[4].position.x, 99, 0);
  assert_int_equal (lb_shape_copy (&to, &to), LB_STATUS_OK);
  assert_int_equal (to.n_nodes, 6);
  lb_shape_clear (&from);
  lb_shape_clear (&to);
}

static void
too_much_is_refused (void **state)
{
  LbShape shape;

  lb_shape_init (&shape);
  make_rig (&shape);
  assert_int_equal (lb_shape_resize (&shape, SIZE_MAX / 2), LB_STATUS_OUT_OF_MEMORY);
  assert_int_equal (shape.n_nodes, 10);
  assert_near (shape.nodes[9].position.x, 9, 0);
  lb_shape_clear (&shape);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (lines_run_from_the_upper_end), cmocka_unit_test (a_line_keeps_to_the_room),
    cmocka_unit_test (an_empty_shape_has_no_lines),  cmocka_unit_test (growing_keeps_the_nodes),
    cmocka_unit_test (a_copy_stands_alone),          cmocka_unit_test (too_much_is_refused),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
