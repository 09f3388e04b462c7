/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawings.h"

Drawing *
drawing_new (const LbSetup *setup)
{
  Drawing *drawing = g_new0 (Drawing, 1);
  LbStatus status;

  drawing->setup = *setup;
  drawing->steady = lb_steady_new ();
  status = lb_steady_solve (drawing->steady, &drawing->setup, NULL);
  drawing->picture = (LbPicture){
    .setup = &drawing->setup,
    .status = status,
    .decimal = '.',
    .title = "Stony Bend, April",
  };
  if (!lb_status_is_failure (status))
    {
      drawing->picture.shape = lb_steady_shape (drawing->steady);
      lb_readings_compute (&drawing->readings, &drawing->setup, drawing->picture.shape);
      drawing->picture.readings = &drawing->readings;
    }
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    drawing->picture.lure_names[i] = i % 2 ? "slim minnow, 5 cm" : "floating minnow, 7 cm";
  return drawing;
}

void
drawing_free (Drawing *drawing)
{
  lb_steady_free (drawing->steady);
  g_free (drawing);
}

Scenes
scenes_new (const LbPicture *picture, LbTheme theme, double width, double height)
{
  LbExtents extents = lb_picture_extents (picture);
  Scenes scenes = {
    .context = lb_draw_context_new (),
    .style = lb_style_make (theme, lb_style_scale_for (width, height)),
    .width = width,
    .side_height = floor (0.7 * height),
    .strip_height = height - floor (0.7 * height),
  };

  scenes.view = lb_view_fit (NULL, &extents, &scenes.style, width, scenes.side_height);
  scenes.side = lb_side_view_new (scenes.context, picture, &scenes.style, &scenes.view, width,
                                  scenes.side_height);
  scenes.strip = lb_bed_strip_new (scenes.context, picture, &scenes.style, &scenes.view, width,
                                   scenes.strip_height);
  return scenes;
}

void
scenes_free (Scenes *scenes)
{
  lb_scene_free (scenes->side);
  lb_scene_free (scenes->strip);
  lb_draw_context_free (scenes->context);
}

LbSetup
setup_with_leaders (size_t n)
{
  LbSetup setup = lb_setup_default ();
  LbLeader leader = setup.rig.leaders[0];

  setup.rig.n_leaders = n;
  for (size_t i = 0; i < n; i++)
    {
      setup.rig.leaders[i] = leader;
      setup.rig.leaders[i].attach_above_weight =
          setup.rig.shank_length * (double) (i + 1) / (double) n;
      setup.rig.leaders[i].length = 2 + 1.2 * (double) i;
    }
  return setup;
}

void
make_bed_uneven (LbSetup *setup)
{
  static const double fractions[] = { 0.90, 1.05, 0.95, 1.00, 0.85, 1.10, 0.90, 1.00 };

  setup->river.n_bed_points = 8;
  for (int i = 0; i < 8; i++)
    {
      setup->river.bed_x[i] = -8 + 5 * i;
      setup->river.bed_depth[i] = setup->river.depth * fractions[i];
    }
}

static LbLineOut
random_line_out (TestRandom *random)
{
  double kind = test_random (random, 0, 1);

  if (kind < 0.3)
    return (LbLineOut){ LB_LINE_OUT_GIVEN, test_random_log (random, 1, 60) };
  if (kind < 0.45)
    return (LbLineOut){ LB_LINE_OUT_TOUCHING, 0 };
  return (LbLineOut){ LB_LINE_OUT_WEIGHT_ABOVE_BED, test_random (random, 0.02, 1) };
}

LbSetup
random_setup (TestRandom *random)
{
  LbSetup setup = setup_with_leaders ((size_t) test_random (random, 0, 8.999));

  setup.river.depth = test_random_log (random, 0.5, 12);
  setup.river.surface_current = test_random (random, 0, 2.2);
  setup.boat.speed_over_ground = test_random (random, 0, 1.2);
  setup.boat.reel_height = test_random (random, 0, 1) < 0.5 ? 0 : test_random (random, 0, 1.2);
  setup.rig.weight.mass = test_random_log (random, 0.2, 2.5);
  setup.rig.weight.shape = (LbWeightShape) test_random (random, 0, 3.999);
  setup.rig.line_out = random_line_out (random);
  setup.band.low = test_random (random, 0, 0.4);
  setup.band.high = setup.band.low + test_random (random, 0.05, 0.6);
  if (test_random (random, 0, 1) < 0.4)
    make_bed_uneven (&setup);
  return setup;
}
