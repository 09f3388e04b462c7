/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pick_words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "current.h"
#include "words.h"

/* As the beginning of a tooltip, which other parts begin with a capital. */
static void
add_title (GString *text, const char *name)
{
  gunichar first = g_unichar_toupper (g_utf8_get_char (name));

  if (!*name)
    return;
  g_string_append_unichar (text, first);
  g_string_append (text, g_utf8_next_char (name));
}

/* Adds "label: value", on a line of its own. */
static void
add_value (GString *text, LbSession *session, const char *label, LbQuantity quantity, double value)
{
  g_autofree char *words = NULL;

  if (!lb_is_set (value))
    return;
  words = lb_session_dup_words (session, quantity, value);
  /* Translators: a reading and its value, as in "Height above the bed: 9 in". */
  g_string_append_printf (text, _ ("\n%s: %s"), label, words);
}

static void
add_place (GString *text, LbSession *session, const LbPointReading *at)
{
  if (at->on_bed)
    g_string_append_printf (text, "\n%s", _ ("On the bed"));
  else
    add_value (text, session, _ ("Height above the bed"), LB_QUANTITY_HEIGHT, at->height);
  add_value (text, session, _ ("Behind the reel"), LB_QUANTITY_LENGTH, at->layback);
  add_value (text, session, _ ("Water past it"), LB_QUANTITY_SPEED, at->water_speed);
}

static void
add_lure (
    GString *text, LbSession *session, const LbSetup *setup, const LbReadings *readings, int i)
{
  const char *name = lb_document_get_lure_name (lb_session_get_document (session), i);
  g_autofree char *which = lb_words_lure (setup, i);

  add_title (text, which);
  if (name && *name)
    g_string_append_printf (text, "\n%s", name);
  add_place (text, session, &readings->lures[i].at);
  add_value (text, session, _ ("Pull on the leader"), LB_QUANTITY_FORCE,
             readings->lures[i].leader_tension);
}

static void
add_leader (
    GString *text, LbSession *session, const LbSetup *setup, const LbReadings *readings, int i)
{
  g_autofree char *which = lb_words_leader (setup, i);

  add_title (text, which);
  add_value (text, session, _ ("Length"), LB_QUANTITY_LENGTH, setup->rig.leaders[i].length);
  add_value (text, session, _ ("Attached above the weight"), LB_QUANTITY_HEIGHT,
             setup->rig.leaders[i].attach_above_weight);
  add_value (text, session, _ ("Largest pull"), LB_QUANTITY_FORCE,
             readings->lures[i].largest_tension);
}

static void
add_mainline (GString *text, LbSession *session, const LbReadings *readings)
{
  g_string_append (text, _ ("Mainline"));
  add_value (text, session, _ ("Line out"), LB_QUANTITY_LENGTH, readings->line_out);
  add_value (text, session, _ ("Angle from vertical"), LB_QUANTITY_ANGLE, readings->wire_angle);
  add_value (text, session, _ ("Pull in the hand"), LB_QUANTITY_FORCE, readings->hand_tension);
}

/* Parts of the rig; only asked when there is an answer. */
static void
add_part (GString *text,
          LbSession *session,
          const LbPick *pick,
          const LbSetup *setup,
          const LbReadings *readings)
{
  switch (pick->kind)
    {
    case LB_PICK_REEL:
      g_string_append (text, _ ("Reel"));
      add_value (text, session, _ ("Height above the water"), LB_QUANTITY_HEIGHT,
                 setup->boat.reel_height);
      add_value (text, session, _ ("Pull in the hand"), LB_QUANTITY_FORCE, readings->hand_tension);
      break;
    case LB_PICK_MAINLINE:
      add_mainline (text, session, readings);
      break;
    case LB_PICK_SHANK:
      g_string_append (text, _ ("Shank"));
      add_value (text, session, _ ("Length"), LB_QUANTITY_LENGTH, setup->rig.shank_length);
      break;
    case LB_PICK_WEIGHT:
      g_string_append (text, _ ("Weight"));
      add_value (text, session, _ ("Mass"), LB_QUANTITY_MASS, setup->rig.weight.mass);
      add_place (text, session, &readings->weight);
      break;
    case LB_PICK_ATTACHMENT:
      g_string_append (text, _ ("Attachment"));
      add_place (text, session, &readings->attachments[pick->index]);
      break;
    case LB_PICK_LEADER:
      add_leader (text, session, setup, readings, pick->index);
      break;
    case LB_PICK_LURE:
      add_lure (text, session, setup, readings, pick->index);
      break;
    default:
      break;
    }
}

static void
add_water (GString *text, LbSession *session, const LbPick *pick, const LbSetup *setup)
{
  LbCurrent current;
  LbBed bed;

  switch (pick->kind)
    {
    case LB_PICK_SURFACE:
    case LB_PICK_CURRENT:
      lb_current_init (&current, &setup->river);
      g_string_append (text, _ ("Current"));
      add_value (text, session, _ ("At the surface"), LB_QUANTITY_SPEED,
                 lb_current_at (&current, pick->x, 0).speed);
      if (pick->z < 0)
        add_value (text, session, _ ("At this depth"), LB_QUANTITY_SPEED,
                   lb_current_at (&current, pick->x, pick->z).speed);
      break;
    case LB_PICK_BED:
      g_string_append (text, _ ("Bed"));
      lb_bed_init (&bed, &setup->river);
      add_value (text, session, _ ("Depth here"), LB_QUANTITY_LENGTH,
                 lb_bed_at (&bed, pick->x).depth);
      break;
    case LB_PICK_BED_POINT:
      if ((gsize) pick->index >= setup->river.n_bed_points)
        break;
      g_string_append_printf (text, _ ("Bed point %d"), pick->index + 1);
      add_value (text, session, _ ("Depth"), LB_QUANTITY_LENGTH,
                 setup->river.bed_depth[pick->index]);
      add_value (text, session, _ ("Along the reach"), LB_QUANTITY_LENGTH,
                 setup->river.bed_x[pick->index]);
      break;
    case LB_PICK_BOAT:
      g_string_append (text, _ ("Boat"));
      add_value (text, session, _ ("Speed over the ground"), LB_QUANTITY_SPEED,
                 setup->boat.speed_over_ground);
      break;
    case LB_PICK_BAND_LOW:
    case LB_PICK_BAND_HIGH:
      g_string_append (text, _ ("Band the lures should run in"));
      add_value (text, session, _ ("From"), LB_QUANTITY_HEIGHT, setup->band.low);
      add_value (text, session, _ ("To"), LB_QUANTITY_HEIGHT, setup->band.high);
      break;
    default:
      break;
    }
}

char *
lb_pick_words (LbSession *session, const LbPick *pick)
{
  LbResult *result = lb_session_get_result (session);
  const LbReadings *readings = result ? lb_result_get_readings (result) : NULL;
  const LbSetup *setup = result ? lb_result_get_setup (result)
                                : lb_document_get_setup (lb_session_get_document (session));
  GString *text = g_string_new (NULL);

  add_water (text, session, pick, setup);
  if (readings && pick->index >= 0 && (gsize) pick->index < LB_MAX_LEADERS)
    add_part (text, session, pick, setup, readings);
  if (text->len == 0)
    {
      g_string_free (text, TRUE);
      return NULL;
    }
  return g_string_free (text, FALSE);
}
