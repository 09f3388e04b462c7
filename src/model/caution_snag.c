/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "hang_up.h"
#include "readings_table.h"
#include "words.h"

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

static void
add_going_on (GString *text, LbSnagTimes times, const LbWording *wording)
{
  g_autofree char *limit = lb_words_quantity (LB_QUANTITY_FORCE, wording->units, LB_HAND_LIMIT, 0);
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
  LbHangUp going = lb_hang_up (result, 0, false);
  LbSnagTimes on = going.times, off = lb_hang_up (result, 0, true).times;
  GString *text;

  if (going.snag.pull_now >= LB_HAND_LIMIT || !(comes (on.until_hand) || comes (on.until_breaks)))
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
