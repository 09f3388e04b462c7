/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "caution_pieces.h"
#include "words.h"

/* Time left, s, below which a snag is a matter of now: long enough to find a cutter. An estimate.
 */
#define QUICK 5

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

/* "now", or "now and the motor stopped" */
static void
add_first (GString *text, LbSnagTimes times, const char *when, const LbWording *wording)
{
  g_autofree char *limit = lb_words_quantity (LB_QUANTITY_FORCE, wording->units, LB_HAND_LIMIT, 0);
  bool breaks = lb_hang_up_comes (times.until_breaks);
  bool breaks_first = breaks && !(times.until_hand < times.until_breaks);
  g_autofree char *hand = about (times.until_hand, wording);
  g_autofree char *breaking = about (times.until_breaks, wording);
  bool shank = times.breaks == LB_PART_SHANK;

  if (breaks_first)
    g_string_append_printf (
        text,
        /* Translators: "now", "at 41 s" or "now and the motor stopped", then a time */
        shank ? _ ("If the weight hung up %s, the shank would part within about %s.")
              : _ ("If the weight hung up %s, the mainline would part within about %s."),
        when, breaking);
  else
    g_string_append_printf (text,
                            /* Translators: "now", "at 41 s" or "now and the motor stopped", a
                               pull, a time */
                            _ ("If the weight hung up %s, the line would pull harder than most "
                               "people can hold (%s) within about %s."),
                            when, limit, hand);
  if (!breaks_first && breaks)
    g_string_append_printf (text,
                            shank ? _ (" The shank would part within about %s.")
                                  : _ (" The mainline would part within about %s."),
                            breaking);
}

static void
add_drift (GString *text, LbSnagTimes times, const LbWording *wording)
{
  g_autofree char *then = about (times.until_hand, wording);

  if (lb_hang_up_comes (times.until_hand))
    g_string_append_printf (text,
                            _ (" With the motor stopped, the drifting boat would pull as hard "
                               "within about %s."),
                            then);
}

/* NULL when nothing comes of it, or the line pulls too hard already. Of a boat that is held on the
 * spot only the motor has to fail. */
static char *
tell (const LbHangUp *going,
      const LbHangUp *stopped,
      const char *when,
      const LbWording *wording,
      LbCautionKind *kind)
{
  /* Translators: "now" or "at 41 s" */
  g_autofree char *adrift = g_strdup_printf (_ ("%s and the motor stopped"), when);
  bool goes = lb_hang_up_comes (lb_hang_up_until (going));
  const LbHangUp *first = goes ? going : stopped;
  GString *text;

  if (going->snag.pull_now >= LB_HAND_LIMIT || !lb_hang_up_comes (lb_hang_up_until (first)))
    return NULL;
  *kind = lb_hang_up_until (first) < QUICK ? LB_CAUTION_NOW : LB_CAUTION_ADVICE;
  text = g_string_new (NULL);
  add_first (text, first->times, goes ? when : adrift, wording);
  if (goes)
    add_drift (text, stopped->times, wording);
  return g_string_free (text, FALSE);
}

void
lb_caution_add_hang_up (GPtrArray *list,
                        const LbHangUp *going,
                        const LbHangUp *stopped,
                        const char *when,
                        const LbWording *wording)
{
  LbCautionKind kind;
  char *text = tell (going, stopped, when, wording, &kind);

  if (text)
    lb_caution_add (list, kind, text);
}
