/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "difference.h"

#include <glib/gi18n-lib.h>

char *
lb_difference_angle (double angle, const LbWording *wording)
{
  return lb_words_quantity (LB_QUANTITY_ANGLE, wording->units, angle, MAX (wording->decimals, 0));
}

static char *
size_in_words (LbDifferenceKind kind, double size, const LbWording *wording)
{
  switch (kind)
    {
    case LB_DIFFERENCE_ANGLE:
      return lb_difference_angle (size, wording);
    case LB_DIFFERENCE_PULL:
      return lb_words_quantity (LB_QUANTITY_FORCE, wording->units, size, wording->decimals);
    case LB_DIFFERENCE_HEIGHT:
    case LB_DIFFERENCE_LEVEL:
      return lb_words_height (wording->units, size, wording->decimals);
    default:
      return lb_words_quantity (LB_QUANTITY_LENGTH, wording->units, size, wording->decimals);
    }
}

/* Below this no difference is told: what can be read off a gauge or a rule. Estimates. */
static double
least_told (LbDifferenceKind kind)
{
  switch (kind)
    {
    case LB_DIFFERENCE_ANGLE:
      return 0.5 * G_PI / 180;
    case LB_DIFFERENCE_PULL:
      return 0.1;
    case LB_DIFFERENCE_HEIGHT:
    case LB_DIFFERENCE_LEVEL:
      return 0.00635; /* a quarter of an inch */
    default:
      return 0.0127;
    }
}

static char *
told (LbDifferenceKind kind, bool less, const char *size)
{
  switch (kind)
    {
    case LB_DIFFERENCE_ANGLE:
      return g_strdup_printf (less ? _ ("%s steeper") : _ ("%s flatter"), size);
    case LB_DIFFERENCE_HEIGHT:
      return g_strdup_printf (less ? _ ("%s lower") : _ ("%s higher"), size);
    case LB_DIFFERENCE_BACK:
      return g_strdup_printf (less ? _ ("%s nearer") : _ ("%s further back"), size);
    default:
      return g_strdup_printf (less ? _ ("%s less") : _ ("%s more"), size);
    }
}

char *
lb_difference_words (LbDifferenceKind kind, double first, double own, const LbWording *wording)
{
  g_autofree char *size = NULL;
  double difference = own - first;

  if (!lb_is_set (difference) || fabs (difference) < least_told (kind))
    return NULL;
  size = size_in_words (kind, fabs (difference), wording);
  return told (kind, difference < 0, size);
}

const char *
lb_difference_band (LbBandState band)
{
  switch (band)
    {
    case LB_BAND_INSIDE:
      return _ ("in the band");
    case LB_BAND_ABOVE:
      return _ ("above the band");
    case LB_BAND_BELOW:
      return _ ("below the band");
    default:
      return _ ("on the bed");
    }
}
