/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is drawn can be picked, where it is drawn. */
#include "drawings.h"
#include "scene_build.h"

static LbPick
pick_at (const Scenes *scenes, LbVec3 at)
{
  return lb_scene_pick (scenes->side, lb_view_x (&scenes->view, at.x),
                        lb_view_y (&scenes->view, at.z), 4);
}

static void
test_every_part_of_the_side_view (void **state)
{
  LbSetup setup = setup_with_leaders (3);
  Drawing *drawing = drawing_new (&setup);
  const LbShape *shape = drawing->picture.shape;
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
  LbPick pick;
  size_t nodes[512], n;

  pick = pick_at (&scenes, shape->nodes[shape->weight].position);
  assert_int_equal (pick.kind, LB_PICK_WEIGHT);
  for (int i = 0; i < 3; i++)
    {
      pick = pick_at (&scenes, shape->nodes[shape->lure[i]].position);
      assert_int_equal (pick.kind, LB_PICK_LURE);
      assert_int_equal (pick.index, i);
      pick = pick_at (&scenes, shape->nodes[shape->attachment[i]].position);
      assert_true (pick.kind == LB_PICK_ATTACHMENT || pick.kind == LB_PICK_WEIGHT);

      n = lb_shape_line (shape, LB_PART_LEADER_0 + i, nodes, 512);
      pick = pick_at (&scenes, shape->nodes[nodes[n / 2]].position);
      assert_int_equal (pick.kind, LB_PICK_LEADER);
      assert_int_equal (pick.index, i);
    }
  n = lb_shape_line (shape, LB_PART_MAINLINE, nodes, 512);
  pick = pick_at (&scenes, shape->nodes[nodes[n / 2]].position);
  assert_int_equal (pick.kind, LB_PICK_MAINLINE);
  assert_near (pick.x, shape->nodes[nodes[n / 2]].position.x, 1e-9);
  assert_near (pick.z, shape->nodes[nodes[n / 2]].position.z, 1e-9);

  pick = pick_at (&scenes, lb_vec3 (-2, 0, 0.3));
  assert_int_equal (pick.kind, LB_PICK_BOAT);
  pick = pick_at (&scenes, lb_vec3 (6, 0, 0));
  assert_int_equal (pick.kind, LB_PICK_SURFACE);
  pick = pick_at (&scenes, lb_vec3 (5, 0, -setup.river.depth - 0.3));
  assert_int_equal (pick.kind, LB_PICK_BED);
  pick = pick_at (&scenes, lb_vec3 (6, 0, -2));
  assert_int_equal (pick.kind, LB_PICK_NOTHING);
  scenes_free (&scenes);
  drawing_free (drawing);
}

static void
test_every_part_of_the_bed_strip (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  Scenes scenes = scenes_new (&drawing->picture, LB_THEME_DARK, 1280, 800);
  double far = scenes.width - 80;
  LbPick pick;

  for (int i = 0; i < 2; i++)
    {
      const LbPointReading *lure = &drawing->readings.lures[i].at;

      pick = lb_scene_pick (scenes.strip, lb_view_x (&scenes.view, lure->position.x),
                            lb_scene_strip_y (scenes.strip, lure->height), 3);
      assert_int_equal (pick.kind, LB_PICK_LURE);
      assert_int_equal (pick.index, i);
      assert_near (pick.z, lure->height, 1e-9);
      assert_near (pick.x, lure->position.x, 1e-9);
    }
  pick = lb_scene_pick (scenes.strip, lb_view_x (&scenes.view, drawing->readings.weight.position.x),
                        lb_scene_strip_y (scenes.strip, drawing->readings.weight.height), 3);
  assert_int_equal (pick.kind, LB_PICK_WEIGHT);
  pick = lb_scene_pick (scenes.strip, far, lb_scene_strip_y (scenes.strip, setup.band.high), 3);
  assert_int_equal (pick.kind, LB_PICK_BAND_HIGH);
  pick = lb_scene_pick (scenes.strip, far, lb_scene_strip_y (scenes.strip, setup.band.low), 3);
  assert_int_equal (pick.kind, LB_PICK_BAND_LOW);
  scenes_free (&scenes);
  drawing_free (drawing);
}

static void
test_an_unsolved_rig_cannot_be_picked (void **state)
{
  LbSetup setup = lb_setup_default ();
  Drawing *drawing = drawing_new (&setup);
  LbVec3 weight = drawing->readings.weight.position;
  Scenes scenes;

  drawing->picture.status = LB_STATUS_NO_CONVERGENCE;
  scenes = scenes_new (&drawing->picture, LB_THEME_LIGHT, 1280, 800);
  assert_int_not_equal (pick_at (&scenes, weight).kind, LB_PICK_WEIGHT);
  scenes_free (&scenes);
  drawing_free (drawing);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_part_of_the_side_view),
    cmocka_unit_test (test_every_part_of_the_bed_strip),
    cmocka_unit_test (test_an_unsolved_rig_cannot_be_picked),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
