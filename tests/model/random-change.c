/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "random-change.h"

#include "model-support.h"
#include "river_presets.h"

static size_t
below (TestRandom *random, size_t n)
{
  return (size_t) test_random (random, 0, (double) n);
}

static const char *
some_text (TestRandom *random)
{
  static const char *const texts[] = { "", "one", "two", "a\nb", "\xff", "ø 川", "\"" };

  return texts[below (random, G_N_ELEMENTS (texts))];
}

/* ---- Values and words ---- */

static LbChange *
value (TestRandom *random, LbDocument *document)
{
  size_t n_fields, n_leaders = lb_document_get_setup (document)->rig.n_leaders;
  const LbField *fields = lb_fields (&n_fields);
  const LbField *field = &fields[below (random, n_fields)];

  if (field->stride && n_leaders == 0)
    return NULL;
  return lb_change_new_value (field, field->stride ? below (random, n_leaders) : 0,
                              random_value (random, field));
}

static LbChange *
words (TestRandom *random, LbDocument *document)
{
  switch (below (random, 3))
    {
    case 0:
      return lb_change_new_title (some_text (random));
    case 1:
      return lb_change_new_notes (some_text (random));
    default:
      return lb_change_new_lure_name (below (random, LB_MAX_LEADERS), some_text (random));
    }
}

static LbChange *
line_out (TestRandom *random, LbDocument *document)
{
  return lb_change_new_line_out ((LbLineOutMode) below (random, 3), test_random (random, -1, 20));
}

/* ---- Parts ---- */

static LbContents *
some_rig (TestRandom *random)
{
  LbContents *contents = lb_contents_new ();

  random_contents (random, contents);
  return contents;
}

static LbChange *
whole_setup (TestRandom *random, LbDocument *document)
{
  g_autoptr (LbContents) other = some_rig (random);
  bool with_names = test_random (random, 0, 1) < 0.5;

  return lb_change_new_setup (&other->setup,
                              with_names ? (const char *const *) other->lure_names : NULL, "All");
}

static LbChange *
leaders (TestRandom *random, LbDocument *document)
{
  switch (below (random, 5))
    {
    case 0:
    case 1:
      return lb_change_new_add_leader (document);
    case 2:
      return lb_change_new_duplicate_leader (document, below (random, LB_MAX_LEADERS));
    case 3:
      return lb_change_new_remove_leader (document, below (random, LB_MAX_LEADERS));
    default:
      return lb_change_new_move_leader (document, below (random, LB_MAX_LEADERS),
                                        below (random, LB_MAX_LEADERS));
    }
}

static LbChange *
part (TestRandom *random, LbDocument *document)
{
  g_autoptr (LbContents) other = some_rig (random);
  LbRig *rig = &other->setup.rig;
  size_t leader = below (random, LB_MAX_LEADERS);

  switch (below (random, 3))
    {
    case 0:
      return lb_change_new_line ((LbLineOf) below (random, 3), leader, &rig->mainline, NULL);
    case 1:
      return lb_change_new_weight (&rig->weight, "Weight");
    default:
      return lb_change_new_lure (leader, &rig->leaders[0].lure,
                                 test_random (random, 0, 1) < 0.5 ? some_text (random) : NULL,
                                 NULL);
    }
}

/* ---- Variants ---- */

static LbChange *
list_of_variants (TestRandom *random, LbDocument *document)
{
  const double kg[] = { 0.5, 0.7, 0.7, 0.9, 1.1, 1.4 };
  LbWording wording = lb_wording_default (LB_UNITS_US);

  switch (below (random, 7))
    {
    case 0:
    case 1:
      return lb_change_new_add_variant (
          document, test_random (random, 0, 1) < 0.5 ? some_text (random) : NULL);
    case 2:
      return lb_change_new_duplicate_variant (document, below (random, LB_MAX_VARIANTS));
    case 3:
      return lb_change_new_remove_variant (document, below (random, LB_MAX_VARIANTS));
    case 4:
      return lb_change_new_rename_variant (document, below (random, LB_MAX_VARIANTS),
                                           some_text (random));
    case 5:
      return lb_change_new_variants_of_weights (document, kg, below (random, 7), &wording);
    default:
      return lb_change_new_move_variant (document, below (random, LB_MAX_VARIANTS),
                                         below (random, LB_MAX_VARIANTS));
    }
}

static LbChange *
override (TestRandom *random, LbDocument *document)
{
  size_t n_fields;
  const LbField *fields = lb_fields (&n_fields);
  const LbField *field = &fields[below (random, n_fields)];
  size_t leader = field->stride ? below (random, LB_MAX_LEADERS) : 0;
  size_t variant = below (random, LB_MAX_VARIANTS);

  if (test_random (random, 0, 1) < 0.2)
    return lb_change_new_unset_override (document, variant, field, leader);
  return lb_change_new_set_override (document, variant, field, leader,
                                     random_value (random, field));
}

/* ---- The river ---- */

static LbChange *
bed (TestRandom *random, LbDocument *document)
{
  const double x[] = { -5, 0, test_random (random, -2, 8), 10 }, depth[] = { 3, 4, 200, 6 };
  size_t n = lb_document_get_setup (document)->river.n_bed_points;

  switch (below (random, 6))
    {
    case 0:
      return lb_change_new_bed (x, depth, below (random, 3), NULL);
    case 1:
      return lb_change_new_bed_from_plane (document);
    case 2:
      return lb_change_new_remove_bed_point (document, below (random, n + 1));
    case 3:
      return lb_change_new_move_bed_point (document, below (random, n + 1),
                                           test_random (random, -30, 60),
                                           test_random (random, -1, 120));
    default:
      return lb_change_new_add_bed_point (
          document, test_random (random, -60, 80),
          test_random (random, 0, 1) < 0.3 ? LB_UNSET : test_random (random, 0, 20), NULL);
    }
}

static LbChange *
river (TestRandom *random, LbDocument *document)
{
  g_autoptr (LbContents) other = some_rig (random);
  const double heights[] = { 0.1, test_random (random, 0, 1), 1 }, speeds[] = { 0.5, 0.8, 1 };
  size_t n_presets;
  const LbRiverPreset *presets = lb_river_presets (&n_presets);

  switch (below (random, 3))
    {
    case 0:
      lb_river_preset_apply (&presets[below (random, n_presets)], &other->setup.river);
      return lb_change_new_river (&other->setup.river, "Preset");
    case 1:
      return lb_change_new_measured_current (
          document, test_random (random, 0, 1) < 0.5 ? LB_UNSET : test_random (random, -1, 7),
          heights, speeds, 3);
    default:
      return lb_change_new_river (&other->setup.river, NULL);
    }
}

static LbChange *
card (TestRandom *random, LbDocument *document)
{
  LbCard other = *lb_document_get_card (document);

  if (below (random, 2) == 0)
    random_card (random, &other);
  else
    other.size = (LbCardSize) below (random, LB_N_CARD_SIZES);
  return lb_change_new_card (&other, NULL);
}

static LbChange *
card_allowance (LbDocument *document, double allowance)
{
  LbCard other = *lb_document_get_card (document);

  other.terminations[LB_CARD_LEADER_TO_LURE].allowance = allowance;
  return lb_change_new_card (&other, "Allowance");
}

/* Anything at all, to be mended. */
static LbChange *
pass (TestRandom *random, LbDocument *document)
{
  LbPassScript other = *lb_document_get_pass (document);
  LbCourseLeg *leg;

  other.n_legs = below (random, LB_MAX_COURSE_LEGS + 2);
  for (size_t i = 0; i < LB_MAX_COURSE_LEGS; i++)
    {
      leg = &other.legs[i];
      *leg = lb_course_leg_default ();
      leg->duration = below (random, 2) ? LB_UNSET : test_random (random, -1, 4000);
      leg->distance = test_random (random, -1, 100);
      leg->speed = below (random, 2) ? LB_UNSET : test_random (random, -1, 6);
      leg->turn = test_random (random, -800, 800);
      leg->turn_rate = below (random, 2) ? LB_UNSET : test_random (random, -50, 50);
      leg->line_rate = test_random (random, -3, 3);
    }
  other.hand = (LbHand){ (LbHandMotion) below (random, LB_N_HAND_MOTIONS),
                         test_random (random, 0, 6), test_random (random, 0, 700) };
  other.duration = below (random, 2) ? LB_UNSET : test_random (random, 0, 4000);
  other.start = below (random, 2) ? LB_UNSET : test_random (random, -2e4, 2e4);
  other.tangle_distance = test_random (random, -1, 11);
  other.second_weight = below (random, 2) ? LB_UNSET : test_random (random, -1, 25);
  other.reels_apart = test_random (random, 0, 12);
  return lb_change_new_pass (&other, NULL);
}

LbChange *
random_change (TestRandom *random, LbDocument *document)
{
  /* How often each comes, of 29. */
  static const struct
  {
    size_t share;
    LbChange *(*make) (TestRandom *, LbDocument *);
  } kinds[] = {
    { 6, value }, { 2, words }, { 2, line_out }, { 2, whole_setup },      { 4, leaders },
    { 2, part },  { 4, bed },   { 2, river },    { 1, list_of_variants }, { 2, override },
    { 1, card },  { 1, pass },
  };
  size_t at = below (random, 29), i = 0;

  while (at >= kinds[i].share)
    at -= kinds[i++].share;
  return kinds[i].make (random, document);
}

LbChange *
random_drag (TestRandom *random, LbDocument *document, int kind)
{
  const LbRiver *now = &lb_document_get_setup (document)->river;

  switch (kind)
    {
    case 0:
      return lb_change_new_value (lb_field ("river.surface_current_m_s"), 0,
                                  test_random (random, 0, 2));
    case 1: /* brings others along */
      return lb_change_new_value (lb_field ("mainline.line_out.weight_above_bed_m"), 0,
                                  floor (test_random (random, 0, 3)));
    case 2:
      return lb_change_new_line_out (LB_LINE_OUT_GIVEN, floor (test_random (random, 1, 4)));
    case 3: /* a point in the middle, there and back again */
      return now->n_bed_points < 3
                 ? NULL
                 : lb_change_new_move_bed_point (document, 1, now->bed_x[1],
                                                 floor (test_random (random, 1, 4)));
    case 4: /* an allowance */
      return card_allowance (document, floor (test_random (random, 0, 3)) / 10);
    default:
      return lb_change_new_lure_name (0, some_text (random));
    }
}
