/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_runs.h"

PassRun *
pass_run_new (const LbSetup *setup, const LbPassScript *script, double duration)
{
  LbPassScript own = script ? *script : lb_pass_script_default ();
  PassRun *run = g_new0 (PassRun, 1);

  own.duration = duration;
  own.start = setup->boat.position;
  assert_int_equal (lb_pass_record_new (&run->record, setup, &own, NULL, NULL), LB_STATUS_OK);
  lb_pass_record_run (run->record, INFINITY, NULL);
  run->moments = g_array_new (FALSE, TRUE, sizeof (LbTrackMoment));
  lb_track_add (run->moments, run->record);
  run->second_moments = g_array_new (FALSE, TRUE, sizeof (LbTrackMoment));
  if (lb_pass_record_second (run->record))
    lb_track_add (run->second_moments, lb_pass_record_second (run->record));
  lb_shape_init (&run->shape);
  lb_shape_init (&run->second_shape);
  run->picture = (LbPassPicture){
    .now = { .setup = lb_pass_record_setup (run->record), .decimal = '.' },
    .track = { .moments = (const LbTrackMoment *) run->moments->data,
               .n = run->moments->len,
               .n_lures = setup->rig.n_leaders,
               .duration = duration },
    .second = { .moments = (const LbTrackMoment *) run->second_moments->data,
                .n = run->second_moments->len,
                .n_lures = setup->rig.n_leaders,
                .duration = duration },
    .second_setup = run->second_moments->len
                        ? lb_pass_record_setup (lb_pass_record_second (run->record))
                        : NULL,
    .tangle = own.tangle_distance,
    .reach_start = setup->boat.position,
  };
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    run->picture.now.lure_names[i] = i % 2 ? "slim minnow, 5 cm" : "floating minnow, 7 cm";
  pass_run_go_to (run, 0);
  return run;
}

void
pass_run_free (PassRun *run)
{
  lb_pass_record_free (run->record);
  lb_shape_clear (&run->shape);
  lb_shape_clear (&run->second_shape);
  g_array_unref (run->moments);
  g_array_unref (run->second_moments);
  g_free (run);
}

void
pass_run_go_to (PassRun *run, double time)
{
  run->picture.time = time;
  run->picture.now.status = LB_STATUS_NO_CONVERGENCE;
  if (!lb_pass_record_at (run->record, time, &run->sample)
      || lb_pass_record_shape_at (run->record, time, &run->shape) != LB_STATUS_OK)
    return;
  run->picture.now.status = LB_STATUS_OK;
  run->picture.second_shape = NULL;
  if (run->second_moments->len > 0
      && lb_pass_record_shape_at (lb_pass_record_second (run->record), time, &run->second_shape)
             == LB_STATUS_OK)
    run->picture.second_shape = &run->second_shape;
  run->picture.now.shape = &run->shape;
  run->picture.now.readings = &run->sample.readings;
}

LbSetup
pass_setup (void)
{
  LbSetup setup = lb_setup_default ();

  make_bed_uneven (&setup);
  for (size_t i = 0; i < setup.river.n_bed_points; i++)
    setup.river.bed_x[i] -= 20;
  return setup;
}

LbPassScript
pass_lift_and_drop (void)
{
  LbPassScript script = lb_pass_script_default ();

  script.hand = (LbHand){ LB_HAND_LIFT_AND_DROP, 0.4, 4 };
  return script;
}

LbPassScript
pass_turn (void)
{
  LbPassScript script = lb_pass_script_default ();

  script.n_legs = 2;
  script.legs[0] = script.legs[1] = lb_course_leg_default ();
  script.legs[0].duration = 5;
  script.legs[1].duration = 20;
  script.legs[1].speed = 0.6;
  script.legs[1].turn = 40; /* degrees */
  return script;
}
