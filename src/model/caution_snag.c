/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "current.h"
#include "readings_table.h"
#include "snag.h"
#include "words.h"

/* N; two hands for a moment: 44 lbf, the initial limit of an industry guide on pulling. */
#define HAND_LIMIT 196

/* Time left, s, below which a snag is a matter of now: long enough to find a cutter. An estimate.
 */
#define QUICK 5

/* Further off than this, s, nothing is said. */
#define FAR_OFF 600

/* Half seconds, then seconds, then tens: what is left out of the sum is worth no more, and the
 * words stay as they are while a slider moves a little. Rounded down. */
static char *
about (double time, const LbWording *wording)
{
  double step = time < 5 ? 0.5 : time < 20 ? 1 : 10;
  double shown = fmax (floor (time / step) * step, 0.5);

  return lb_words_quantity (LB_QUANTITY_TIME, wording->units, shown,
                            shown == floor (shown) ? 0 : 1);
}

static bool
comes (double time)
{
  return lb_is_set (time) && time < FAR_OFF;
}

/* The boat as the current at the reel takes it along at once. */
static double
drift (const LbSetup *setup)
{
  LbCurrent current;

  lb_current_init (&current, &setup->river);
  return lb_current_at (&current, setup->boat.position, 0).speed;
}

static void
add_going_on (GString *text, LbSnagTimes times, const LbWording *wording)
{
  g_autofree char *limit =
      lb_words_quantity (LB_QUANTITY_FORCE, wording->units, HAND_LIMIT, wording->decimals);
  bool breaks_first = comes (times.until_breaks) && !(times.until_hand < times.until_breaks);
  g_autofree char *hand = about (times.until_hand, wording);
  g_autofree char *breaks = about (times.until_breaks, wording);
  bool shank = times.breaks == LB_PART_SHANK;

  if (breaks_first)
    g_string_append_printf (
        text,
        shank ? _ ("If the weight hung up now, the shank would part within about %s.")
              : _ ("If the weight hung up now, the mainline would part within about %s."),
        breaks);
  else
    g_string_append_printf (text,
                            _ ("If the weight hung up now, the line would pull harder than most "
                               "people can hold (%s) within about %s."),
                            limit, hand);
  if (!breaks_first && comes (times.until_breaks))
    g_string_append_printf (text,
                            shank ? _ (" The shank would part within about %s.")
                                  : _ (" The mainline would part within about %s."),
                            breaks);
}

char *
lb_caution_snag (const LbResult *result, const LbWording *wording, LbCautionKind *kind)
{
  const LbSetup *setup = lb_result_get_setup (result);
  const LbShape *shape = lb_result_get_shape (result);
  LbSnag snag = lb_snag_hold (setup, shape, shape->weight);
  double speed = setup->boat.speed_over_ground;
  LbSnagTimes on = lb_snag_times (&snag, &setup->rig, speed, HAND_LIMIT);
  LbSnagTimes off = lb_snag_times (&snag, &setup->rig, -drift (setup), HAND_LIMIT);
  GString *text;

  if (snag.pull_now >= HAND_LIMIT || !(comes (on.until_hand) || comes (on.until_breaks)))
    return NULL;
  *kind = fmin (on.until_hand, on.until_breaks) < QUICK ? LB_CAUTION_NOW : LB_CAUTION_ADVICE;
  text = g_string_new (NULL);
  add_going_on (text, on, wording);
  if (comes (off.until_hand))
    {
      g_autofree char *then = about (off.until_hand, wording);
      g_string_append_printf (text,
                              _ (" With the motor stopped, the drifting boat would pull as hard "
                                 "within about %s."),
                              then);
    }
  return g_string_free (text, FALSE);
}
