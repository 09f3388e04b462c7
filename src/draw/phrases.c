/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "phrases.h"

#include <glib/gi18n-lib.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

/* From here up a height is told in feet or metres, m: 5 ft, as in the readings. */
#define HIGH 1.524

LbPhrase
lb_phrase_quantity (const LbPicture *picture, LbQuantity quantity, double value)
{
  LbPhrase words;

  lb_units_format (
      quantity, picture->units, value,
      lb_units_fit_decimals (quantity, picture->units, value, picture->decimals_plus_1 - 1),
      picture->decimal, words.text, sizeof words.text);
  return words;
}

LbPhrase
lb_phrase_number (const LbPicture *picture, double value, int decimals)
{
  LbPhrase words;

  lb_units_format (LB_QUANTITY_NUMBER, picture->units, value, decimals, picture->decimal,
                   words.text, sizeof words.text);
  return words;
}

LbPhrase
lb_phrase_format (const char *format, ...)
{
  LbPhrase words;
  const char *end;
  va_list arguments;

  va_start (arguments, format);
  vsnprintf (words.text, sizeof words.text, format, arguments);
  va_end (arguments);
  if (!g_utf8_validate (words.text, -1, &end))
    words.text[end - words.text] = '\0';
  return words;
}

LbPhrase
lb_phrase_height_value (const LbPicture *picture, double height)
{
  return lb_phrase_quantity (picture, height < HIGH ? LB_QUANTITY_HEIGHT : LB_QUANTITY_LENGTH,
                             height);
}

LbPhrase
lb_phrase_height (const LbPicture *picture, double height, bool on_bed)
{
  if (on_bed)
    return lb_phrase_format ("%s", _ ("on the bed"));
  return lb_phrase_format (_ ("%s off the bed"), lb_phrase_height_value (picture, height).text);
}

double
lb_phrase_near_bed (const LbPicture *picture)
{
  return picture->units == LB_UNITS_US ? 0.1524 : 0.15;
}

const char *
lb_phrase_band (LbBandState state)
{
  switch (state)
    {
    case LB_BAND_BELOW:
      return _ ("below the band");
    case LB_BAND_INSIDE:
      return _ ("in the band");
    case LB_BAND_ABOVE:
      return _ ("above the band");
    case LB_BAND_ON_BED:
      break;
    }
  return _ ("on the bed");
}

const char *
lb_phrase_band_short (LbBandState state)
{
  switch (state)
    {
    case LB_BAND_BELOW:
      return _ ("below band");
    case LB_BAND_INSIDE:
      return _ ("in band");
    case LB_BAND_ABOVE:
      return _ ("above band");
    case LB_BAND_ON_BED:
      break;
    }
  return _ ("on bed");
}

/* How many leaders are attached lower; of two at one height the first counts as the lower. */
static size_t
count_lower (const LbRig *rig, size_t leader)
{
  double own = rig->leaders[leader].attach_above_weight;
  size_t n = 0;

  for (size_t i = 0; i < rig->n_leaders; i++)
    n += rig->leaders[i].attach_above_weight < own
         || (i < leader && rig->leaders[i].attach_above_weight <= own);
  return n;
}

LbPhrase
lb_phrase_lure_place (const LbPicture *picture, size_t leader)
{
  const LbRig *rig = &picture->setup->rig;
  size_t lower = count_lower (rig, leader);

  if (rig->n_leaders > LB_PHRASE_MOST_PLACES)
    return lb_phrase_format (_ ("Lure %d"), (int) leader + 1);
  if (rig->n_leaders == 1)
    return lb_phrase_format ("%s", _ ("Lure"));
  if (lower == 0)
    return lb_phrase_format ("%s", _ ("Lower lure"));
  return lb_phrase_format ("%s", lower + 1 < rig->n_leaders ? _ ("Middle lure") : _ ("Upper lure"));
}

LbPhrase
lb_phrase_leader_place (const LbPicture *picture, size_t leader)
{
  const LbRig *rig = &picture->setup->rig;
  size_t lower = count_lower (rig, leader);

  if (rig->n_leaders > LB_PHRASE_MOST_PLACES)
    return lb_phrase_format (_ ("Leader %d"), (int) leader + 1);
  if (rig->n_leaders == 1)
    return lb_phrase_format ("%s", _ ("Leader"));
  if (lower == 0)
    return lb_phrase_format ("%s", _ ("Lower leader"));
  return lb_phrase_format ("%s",
                           lower + 1 < rig->n_leaders ? _ ("Middle leader") : _ ("Upper leader"));
}

LbPhrase
lb_phrase_lure_sign (const LbPicture *picture, size_t leader)
{
  if (picture->setup->rig.n_leaders > LB_PHRASE_MOST_PLACES)
    return lb_phrase_format ("%d", (int) leader + 1);
  return (LbPhrase){ "" };
}

LbPhrase
lb_phrase_lure (const LbPicture *picture, size_t leader)
{
  LbPhrase place = lb_phrase_lure_place (picture, leader);
  const char *name = picture->lure_names[leader];

  if (!name || !*name)
    return place;
  /* Translators: "Upper lure: floating minnow, 7 cm" */
  return lb_phrase_format (_ ("%s: %s"), place.text, name);
}

LbPhrase
lb_phrase_lure_short (const LbPicture *picture, size_t leader)
{
  LbPicture cut = *picture;
  const char *name = picture->lure_names[leader];
  char first[sizeof (LbPhrase)];

  g_strlcpy (first, name ? name : "", sizeof first);
  first[strcspn (first, ",")] = '\0';
  cut.lure_names[leader] = first;
  return lb_phrase_lure (&cut, leader);
}

static const char *
failure_words (LbStatus status)
{
  switch (status)
    {
    case LB_STATUS_NO_CONVERGENCE:
      return _ ("Not solved, so the rig is not drawn: the computation did not settle. Try a value "
                "a little different.");
    case LB_STATUS_BAD_SETUP:
      return _ ("Not solved, so the rig is not drawn: a value in the rig or the river cannot be.");
    case LB_STATUS_OUT_OF_MEMORY:
      return _ ("Not solved, so the rig is not drawn: the computer is out of memory.");
    default:
      return _ ("Not solved yet, so the rig is not drawn.");
    }
}

const char *
lb_phrase_status (const LbScene *scene)
{
  if (!scene->solved)
    return failure_words (scene->picture.status);
  if (scene->picture.status == LB_STATUS_LINE_AT_LONGEST)
    return _ ("The weight does not get down to the height asked for: this is the longest line.");
  if (scene->picture.status == LB_STATUS_LINE_AT_SHORTEST)
    return _ ("The weight does not come up to the height asked for: the line is all in.");
  if (scene->picture.status == LB_STATUS_HEIGHT_LEAPS)
    return _ (
        "No line out was found that holds the weight at the height asked for: it leaps past it.");
  if (scene->picture.status == LB_STATUS_HELD_BY_FRICTION)
    return _ ("At rest over the ground: shown as friction on the bed holds it.");
  return NULL;
}
