/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Keys on a drawing that has the focus:
 *
 *   . and Ctrl+Right, , and Ctrl+Left   the next part, the one before; Home, End: first and last
 *   arrows                              move the selected part by a step, with Shift a tenth of one
 *   Page Up, Page Down                  by ten steps
 *   Enter                               opens its field
 *   Escape                              takes a drag back, else selects nothing
 *   Insert, Delete                      adds a point to the bed, takes the selected one away
 *   arrows with Alt, or with nothing selected, move the drawing
 *   + and - zoom about the selected part, 0 shows the whole rig
 *
 * Tab and Shift+Tab go on to the next control, as everywhere. */
#include "handling_private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "part_order.h"

/* Key presses further apart than this are steps of their own in the history. */
#define GESTURE_PAUSE_MS 1000
/* How long the value stays beside the part. */
#define WORDS_MS 2500
#define PAGE 10
#define PAN 48
#define KEY_ZOOM 1.25

/* ---- One step of the history for keys in quick succession ---- */

static gboolean
pause_cb (gpointer user_data)
{
  LbHandling *self = user_data;

  self->pause_id = 0;
  self->key_gesture = 0;
  return G_SOURCE_REMOVE;
}

static guint
gesture_now (LbHandling *self)
{
  if (!self->key_gesture)
    self->key_gesture = lb_session_new_gesture (self->session);
  g_clear_handle_id (&self->pause_id, g_source_remove);
  self->pause_id = g_timeout_add (GESTURE_PAUSE_MS, pause_cb, self);
  return self->key_gesture;
}

static gboolean
words_cb (gpointer user_data)
{
  LbHandling *self = user_data;

  self->words_id = 0;
  lb_handling_show_words (self, NULL, 0, 0);
  return G_SOURCE_REMOVE;
}

void
lb_handling_end_keys (LbHandling *self)
{
  g_clear_handle_id (&self->pause_id, g_source_remove);
  self->key_gesture = 0;
  if (self->words_id)
    {
      g_clear_handle_id (&self->words_id, g_source_remove);
      lb_handling_show_words (self, NULL, 0, 0);
    }
}

/* Beside the selected part, wherever it is by then. */
static void
say (LbHandling *self, char *words)
{
  g_clear_handle_id (&self->words_id, g_source_remove);
  lb_handling_show_words (self, words, NAN, NAN);
  self->words_id = g_timeout_add (WORDS_MS, words_cb, self);
}

static void
say_value (LbHandling *self)
{
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  say (self, lb_grab_dup_words (self->session, kind, index));
}

/* ---- What keys do ---- */

static gboolean
choose (LbHandling *self, int direction)
{
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  lb_part_next (lb_handling_setup (self), kind, index, direction, &kind, &index);
  lb_handling_select (self, kind, index);
  say_value (self);
  return GDK_EVENT_STOP;
}

static gboolean
pan (LbHandling *self, int right, int up)
{
  double step = PAN * lb_viewport_get_style (self->viewport)->scale;

  lb_viewport_pan (self->viewport, -right * step, self->is_side_view ? up * step : 0);
  return GDK_EVENT_STOP;
}

/* Page Up and Page Down go along whichever way the part goes. */
static gboolean
move (LbHandling *self, int right, int up, gboolean page, gboolean fine)
{
  LbPickKind kind;
  LbGrab grab;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  if (kind == LB_PICK_NOTHING)
    return pan (self, page ? 0 : right, page ? PAGE * up : up);
  if (!lb_handling_grab (self, kind, index, &grab))
    {
      if (kind == LB_PICK_BED)
        say (self, g_strdup (_ ("This bed is moved point by point")));
      return GDK_EVENT_STOP;
    }
  if (page && grab.up == 0)
    lb_grab_step (&grab, self->session, PAGE * up, 0, fine, gesture_now (self));
  else
    lb_grab_step (&grab, self->session, right, (page ? PAGE : 1) * up, fine, gesture_now (self));
  say_value (self);
  return GDK_EVENT_STOP;
}

static gboolean
deselect (LbHandling *self)
{
  LbPickKind kind;
  int index;

  if (lb_handling_let_go (self))
    return GDK_EVENT_STOP;
  lb_session_get_selected (self->session, &kind, &index);
  if (kind == LB_PICK_NOTHING)
    return GDK_EVENT_PROPAGATE;
  lb_handling_select (self, LB_PICK_NOTHING, 0);
  return GDK_EVENT_STOP;
}

static gboolean
open_field (LbHandling *self)
{
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  if (kind == LB_PICK_NOTHING)
    return GDK_EVENT_PROPAGATE;
  lb_handling_open (self);
  return GDK_EVENT_STOP;
}

/* ---- Points of the bed ---- */

/* Halfway from a point to the next; behind the last one as far as it is from the one before. */
static double
after_point (const LbRiver *river, size_t i)
{
  if (i + 1 < river->n_bed_points)
    return (river->bed_x[i] + river->bed_x[i + 1]) / 2;
  return i > 0 ? 2 * river->bed_x[i] - river->bed_x[i - 1] : river->bed_x[i] + 1;
}

/* Where a new point is most likely wanted while none is selected: under the weight. */
static double
under_weight (LbHandling *self)
{
  LbResult *result = lb_session_get_result (self->session);
  const LbReadings *readings = result ? lb_result_get_readings (result) : NULL;

  return readings && !lb_status_is_failure (lb_result_get_status (result))
             ? readings->weight.position.x
             : lb_handling_setup (self)->boat.position;
}

static gboolean
insert (LbHandling *self)
{
  const LbRiver *river = &lb_handling_setup (self)->river;
  LbPickKind kind;
  int index;
  double x;

  lb_session_get_selected (self->session, &kind, &index);
  x = kind == LB_PICK_BED_POINT ? after_point (river, (size_t) index) : under_weight (self);
  if (lb_handling_add_bed_point (self, x))
    say_value (self);
  else if (river->n_bed_points >= LB_MAX_BED_POINTS)
    say (self, g_strdup (_ ("The bed has as many points as it can")));
  else
    say (self, g_strdup (_ ("There is a bed point already")));
  return GDK_EVENT_STOP;
}

static gboolean
remove_point (LbHandling *self)
{
  LbDocument *document = lb_session_get_document (self->session);
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  if (kind != LB_PICK_BED_POINT)
    return GDK_EVENT_PROPAGATE;
  if (!lb_session_do (self->session, lb_change_new_remove_bed_point (document, (size_t) index)))
    say (self, g_strdup (_ ("A bed of points has two at least")));
  else if (index > 0)
    lb_handling_select (self, LB_PICK_BED_POINT, index - 1);
  return GDK_EVENT_STOP;
}

/* ---- Which key ---- */

static gboolean
zoom (LbHandling *self, double factor)
{
  lb_viewport_zoom_selected (self->viewport, factor);
  return GDK_EVENT_STOP;
}

static gboolean
arrow (LbHandling *self, int right, int up, GdkModifierType state)
{
  if (state & GDK_CONTROL_MASK)
    return right ? choose (self, right) : GDK_EVENT_PROPAGATE;
  if (state & GDK_ALT_MASK)
    return pan (self, right, up);
  return move (self, right, up, FALSE, (state & GDK_SHIFT_MASK) != 0);
}

static gboolean
plain_key (LbHandling *self, guint key, gboolean fine)
{
  switch (key)
    {
    case GDK_KEY_period:
      return choose (self, 1);
    case GDK_KEY_comma:
      return choose (self, -1);
    case GDK_KEY_Home:
      return choose (self, 2);
    case GDK_KEY_End:
      return choose (self, -2);
    case GDK_KEY_Page_Up:
      return move (self, 0, 1, TRUE, fine);
    case GDK_KEY_Page_Down:
      return move (self, 0, -1, TRUE, fine);
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
      return open_field (self);
    case GDK_KEY_Escape:
      return deselect (self);
    case GDK_KEY_Insert:
      return insert (self);
    case GDK_KEY_Delete:
      return remove_point (self);
    case GDK_KEY_plus:
    case GDK_KEY_KP_Add:
      return zoom (self, KEY_ZOOM);
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      return zoom (self, 1 / KEY_ZOOM);
    case GDK_KEY_0:
      lb_viewport_fit (self->viewport);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static gboolean
key_pressed_cb (LbHandling *self, guint key, guint code, GdkModifierType state)
{
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return arrow (self, -1, 0, state);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return arrow (self, 1, 0, state);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return arrow (self, 0, 1, state);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return arrow (self, 0, -1, state);
    default:
      break;
    }
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return GDK_EVENT_PROPAGATE;
  return plain_key (self, key, (state & GDK_SHIFT_MASK) != 0);
}

void
lb_handling_add_keys (LbHandling *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->canvas, keys);
}
