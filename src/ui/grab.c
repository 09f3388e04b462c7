/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "grab.h"

#include <glib/gi18n.h>
#include <math.h>

#include "bed.h"
#include "words.h"

#define FINE 0.1
/* A line drawn shorter than this, in drawing units, has no direction to speak of. */
#define SHORTEST_LINE 6.0
/* m; more line than the least, so that holding the weight high never asks for less than that. */
#define LINE_LEFT 0.15
/* The edges of the band keep this distance, m. */
#define BAND_LEAST 0.01

/* ---- What belongs to a part ---- */

static const struct
{
  LbPickKind kind;
  const char *path;
  int right, up;
} parts[] = {
  { LB_PICK_REEL, "boat.reel_height_m", 0, 1 },
  { LB_PICK_MAINLINE, "mainline.line_out.given_m", 1, -1 },
  { LB_PICK_SHANK, "shank.length_m", 0, 1 },
  { LB_PICK_WEIGHT, "mainline.line_out.weight_above_bed_m", 0, 1 },
  { LB_PICK_ATTACHMENT, "leaders[].attach_above_weight_m", 0, 1 },
  { LB_PICK_LEADER, "leaders[].length_m", 1, 0 },
  { LB_PICK_LURE, "leaders[].length_m", 1, 0 },
  { LB_PICK_BAND_LOW, "band.low_m", 0, 1 },
  { LB_PICK_BAND_HIGH, "band.high_m", 0, 1 },
  { LB_PICK_CURRENT, "river.surface_current_m_s", 1, 0 },
  { LB_PICK_SURFACE, "river.surface_current_m_s", 1, 0 },
  { LB_PICK_BED, "river.depth_m", 0, -1 },
  { LB_PICK_BED_POINT, "river.depth_m", 1, -1 },
  { LB_PICK_BOAT, "boat.position_m", 1, 0 },
};

static const LbSetup *
setup_of (LbSession *session)
{
  return lb_document_get_setup (lb_session_get_document (session));
}

/* The latest answer, if it is a good one. */
static LbResult *
answer_of (LbSession *session)
{
  LbResult *result = lb_session_get_result (session);

  return result && !lb_status_is_failure (lb_result_get_status (result)) ? result : NULL;
}

static double
value_of (LbSession *session, const LbGrab *self)
{
  const LbSetup *setup = setup_of (session);
  LbResult *answer = answer_of (session);
  const LbReadings *readings = answer ? lb_result_get_readings (answer) : NULL;

  switch (self->kind)
    {
    case LB_PICK_WEIGHT:
      if (setup->rig.line_out.mode == LB_LINE_OUT_WEIGHT_ABOVE_BED)
        return setup->rig.line_out.value;
      return readings ? fmax (0, readings->weight.height) : LB_UNSET;
    case LB_PICK_MAINLINE:
      if (setup->rig.line_out.mode == LB_LINE_OUT_GIVEN)
        return setup->rig.line_out.value;
      return readings ? readings->line_out : LB_UNSET;
    case LB_PICK_BED_POINT:
      return setup->river.bed_depth[self->index];
    default:
      return lb_session_get_value (session, self->field, self->leader);
    }
}

/* ---- Limits ---- */

/* Higher up there would be no line left to hold it by. */
static double
highest_weight (LbSession *session)
{
  const LbSetup *setup = setup_of (session);
  LbResult *answer = answer_of (session);
  double x = answer ? lb_result_get_readings (answer)->weight.position.x : setup->boat.position;
  double deep;
  LbBed bed;

  lb_bed_init (&bed, &setup->river);
  deep = lb_bed_at (&bed, x).depth;
  return fmax (0, fmin (deep, deep + setup->boat.reel_height - setup->rig.shank_length
                                  - LB_STEADY_SHORTEST_LINE - LINE_LEFT));
}

static void
set_limits (LbGrab *self, LbSession *session)
{
  const LbSetup *setup = setup_of (session);

  self->lowest = self->field->minimum;
  self->highest = self->field->maximum;
  switch (self->kind)
    {
    case LB_PICK_WEIGHT:
      self->highest = highest_weight (session);
      break;
    case LB_PICK_SHANK:
      for (gsize i = 0; i < setup->rig.n_leaders; i++)
        self->lowest = fmax (self->lowest, setup->rig.leaders[i].attach_above_weight);
      break;
    case LB_PICK_ATTACHMENT:
      self->highest = setup->rig.shank_length;
      break;
    case LB_PICK_BAND_LOW:
      self->highest = fmax (0, setup->band.high - BAND_LEAST);
      break;
    case LB_PICK_BAND_HIGH:
      self->lowest = setup->band.low + BAND_LEAST;
      break;
    default:
      break;
    }
}

/* ---- Directions ---- */

/* Lets the value follow the pointer along a line of the rig that is drawn from node `from` to node
 * `to` and is `length` (m) long. A line too short to be seen is pulled along (x, y). */
static void
follow_line (LbGrab *self,
             const LbShape *shape,
             size_t from,
             size_t to,
             double length,
             double per_metre_up,
             double x,
             double y)
{
  LbVec3 a = shape->nodes[from].position, b = shape->nodes[to].position;
  double dx = (b.x - a.x) * self->per_metre_x, dy = (a.z - b.z) * per_metre_up;
  double size2 = dx * dx + dy * dy;

  if (size2 < SHORTEST_LINE * SHORTEST_LINE || !(length > 0))
    {
      self->per_x = x / self->per_metre_x;
      self->per_y = y / per_metre_up;
      return;
    }
  self->per_x = length * dx / size2;
  self->per_y = length * dy / size2;
}

static gboolean
follow_rig (LbGrab *self, LbSession *session, double per_metre_up)
{
  const LbRig *rig = &setup_of (session)->rig;
  LbResult *answer = answer_of (session);
  const LbShape *shape = answer ? lb_result_get_shape (answer) : NULL;
  size_t i = self->leader;

  if (!shape || shape->n_nodes == 0 || shape->n_leaders != rig->n_leaders)
    return FALSE;
  if (self->kind == LB_PICK_MAINLINE)
    follow_line (self, shape, 0, shape->shank_top, shape->line_out, per_metre_up, 0, 1);
  else if (self->kind == LB_PICK_LEADER || self->kind == LB_PICK_LURE)
    follow_line (self, shape, shape->attachment[i], shape->lure[i], rig->leaders[i].length,
                 per_metre_up, 1, 0);
  else
    follow_line (self, shape, shape->weight, shape->shank_top, rig->shank_length, per_metre_up, 0,
                 -1);
  return TRUE;
}

/* FALSE when there must be an answer first. */
static gboolean
set_directions (LbGrab *self, LbSession *session, double per_metre_up)
{
  switch (self->kind)
    {
    case LB_PICK_MAINLINE:
    case LB_PICK_SHANK:
    case LB_PICK_ATTACHMENT:
    case LB_PICK_LEADER:
    case LB_PICK_LURE:
      return follow_rig (self, session, per_metre_up);
    case LB_PICK_BED:
    case LB_PICK_BED_POINT:
      self->per_y = 1 / per_metre_up;
      return TRUE;
    case LB_PICK_BOAT:
      self->per_x = 1 / self->per_metre_x;
      return TRUE;
    case LB_PICK_CURRENT:
    case LB_PICK_SURFACE:
      return TRUE;
    default:
      self->per_y = -1 / per_metre_up;
      return TRUE;
    }
}

/* Whether the part is there and has something to pull at. */
static gboolean
is_there (LbSession *session, LbPickKind kind, int index)
{
  const LbSetup *setup = setup_of (session);

  switch (kind)
    {
    case LB_PICK_ATTACHMENT:
    case LB_PICK_LEADER:
    case LB_PICK_LURE:
      return index >= 0 && (gsize) index < setup->rig.n_leaders;
    case LB_PICK_BED_POINT:
      return index >= 0 && (gsize) index < setup->river.n_bed_points;
    case LB_PICK_BED:
      return setup->river.n_bed_points == 0;
    case LB_PICK_BOAT: /* over a plane bed one place is like another */
      return setup->river.n_bed_points > 0;
    default:
      return TRUE;
    }
}

/* Fills in all but the directions. */
static gboolean
find_value (LbGrab *self, LbSession *session, LbPickKind kind, int index)
{
  *self = (LbGrab){ .kind = kind, .index = index };
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i].kind == kind && is_there (session, kind, index))
      {
        self->field = lb_field (parts[i].path);
        self->leader = self->field->stride > 0 ? (gsize) index : 0;
        self->right = parts[i].right;
        self->up = parts[i].up;
        self->value = value_of (session, self);
        if (kind == LB_PICK_BED_POINT)
          self->along = setup_of (session)->river.bed_x[index];
        set_limits (self, session);
        return lb_is_set (self->value);
      }
  return FALSE;
}

gboolean
lb_grab_begin (LbGrab *self,
               LbSession *session,
               LbPickKind kind,
               int index,
               double per_metre_x,
               double per_metre_up)
{
  g_return_val_if_fail (LB_IS_SESSION (session), FALSE);
  g_return_val_if_fail (per_metre_x > 0 && per_metre_up > 0, FALSE);
  if (!find_value (self, session, kind, index))
    return FALSE;
  self->per_metre_x = per_metre_x;
  return set_directions (self, session, per_metre_up);
}

gboolean
lb_grab_can_drag (const LbGrab *self)
{
  return self->per_x != 0 || self->per_y != 0;
}

/* ---- Setting ---- */

static double
snapped (LbSession *session, const LbField *field, double value, gboolean fine)
{
  LbUnits units = lb_session_get_units (session);
  double size = lb_units_size (field->quantity, units);
  double grid = lb_field_step (field, units) / size * (fine ? FINE : 1);

  value = lb_units_from_si (field->quantity, units, value);
  return lb_units_to_si (field->quantity, units, grid * round (value / grid));
}

/* `along` counts for a point of the bed only. */
static gboolean
set (const LbGrab *self,
     LbSession *session,
     double value,
     double along,
     gboolean fine,
     guint gesture)
{
  LbChange *change;

  if (!is_there (session, self->kind, self->index))
    return FALSE;
  value = snapped (session, self->field, value, fine);
  value = fmax (self->lowest, fmin (value, self->highest));
  if (self->kind == LB_PICK_BED_POINT)
    change = lb_change_new_move_bed_point (lb_session_get_document (session), (gsize) self->index,
                                           along, value);
  else
    change = lb_change_new_value (self->field, self->leader, value);
  lb_change_set_gesture (change, gesture);
  return lb_session_do (session, change);
}

gboolean
lb_grab_drag (
    const LbGrab *self, LbSession *session, double dx, double dy, gboolean fine, guint gesture)
{
  double value = self->value + self->per_x * dx + self->per_y * dy;
  double along = self->along + dx / self->per_metre_x;

  g_return_val_if_fail (LB_IS_SESSION (session), FALSE);
  if (!isfinite (dx) || !isfinite (dy))
    return FALSE;
  along = snapped (session, lb_field ("boat.position_m"), along, fine);
  return set (self, session, value, along, fine, gesture);
}

gboolean
lb_grab_step (
    const LbGrab *self, LbSession *session, int right, int up, gboolean fine, guint gesture)
{
  LbUnits units = lb_session_get_units (session);
  double step = lb_field_step (self->field, units) * (fine ? FINE : 1);
  double step_along = lb_field_step (lb_field ("boat.position_m"), units) * (fine ? FINE : 1);
  gboolean is_point = self->kind == LB_PICK_BED_POINT;
  int steps = up * self->up + (is_point ? 0 : right * self->right);
  double along = self->along + right * step_along;

  g_return_val_if_fail (LB_IS_SESSION (session), FALSE);
  if (steps == 0 && !(is_point && right != 0))
    return FALSE;
  /* What is not moved stays as it is, between the steps. */
  if (right != 0)
    along = snapped (session, lb_field ("boat.position_m"), along, fine);
  if (steps == 0)
    {
      LbChange *change = lb_change_new_move_bed_point (lb_session_get_document (session),
                                                       (gsize) self->index, along, self->value);

      lb_change_set_gesture (change, gesture);
      return lb_session_do (session, change);
    }
  return set (self, session, self->value + steps * step, along, fine, gesture);
}

/* ---- Words ---- */

char *
lb_grab_dup_words (LbSession *session, LbPickKind kind, int index)
{
  g_autofree char *label = NULL;
  g_autofree char *value = NULL;
  g_autofree char *along = NULL;
  LbGrab grab;

  g_return_val_if_fail (LB_IS_SESSION (session), NULL);
  if (!find_value (&grab, session, kind, index))
    return NULL;
  if (grab.field->quantity == LB_QUANTITY_HEIGHT)
    value = lb_words_height (lb_session_get_units (session), grab.value,
                             lb_session_get_wording (session).decimals);
  else
    value = lb_session_dup_words (session, grab.field->quantity, grab.value);
  if (kind == LB_PICK_BED_POINT)
    {
      along = lb_session_dup_words (session, LB_QUANTITY_LENGTH, grab.along);
      /* Translators: a number, a depth, and a distance along the river. */
      return g_strdup_printf (_ ("Bed point %d: %s deep, %s along"), index + 1, value, along);
    }
  label = lb_field_full_label (grab.field, grab.leader);
  /* Translators: what a value is called, and the value, as in "Reel height 3 ft". */
  return g_strdup_printf (_ ("%s %s"), label, value);
}
