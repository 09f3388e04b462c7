/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "viewport.h"

#include <math.h>
#include <string.h>

/* Further out or closer than this there is nothing to see; drawing units for a metre. */
#define LEAST_PER_METRE 1.0
#define MOST_PER_METRE 20000.0

struct _LbViewport
{
  GObject parent;
  LbSession *session;
  LbDocument *document; /* the view was made for; only compared, never read */
  double width, height, strip_height;
  LbStyle style;
  LbView view;
  gboolean moved;
  gboolean stretched;
  gboolean held;
  gboolean has_extents; /* else what is to be seen is the rig */
  LbExtents extents;
};

G_DEFINE_FINAL_TYPE (LbViewport, lb_viewport, G_TYPE_OBJECT)

static guint changed_signal;

static void
take_view (LbViewport *self, const LbView *view)
{
  if (memcmp (view, &self->view, sizeof *view) == 0)
    return;
  self->view = *view;
  g_signal_emit (self, changed_signal, 0);
}

/* Fits the view to the rig; with `afresh` not starting from the present one. */
static void
fit (LbViewport *self, gboolean afresh)
{
  LbExtents extents = self->extents;
  LbPicture picture;
  LbView view;

  if (self->width < 1 || self->height < 1)
    return;
  if (!self->has_extents)
    {
      lb_session_get_picture (self->session, &picture);
      extents = lb_picture_extents (&picture);
    }
  view = (self->stretched ? lb_view_fit_stretched
                          : lb_view_fit) (afresh || self->view.width == 0 ? NULL : &self->view,
                                          &extents, &self->style, self->width, self->height);
  take_view (self, &view);
}

static void
solved_cb (LbViewport *self)
{
  LbDocument *document = lb_session_get_document (self->session);
  gboolean another = document != self->document;

  self->document = document;
  if (another)
    self->moved = FALSE;
  if (!self->moved && !self->held)
    fit (self, another);
}

static void
restyle (LbViewport *self)
{
  LbAppearance *appearance = lb_session_get_appearance (self->session);
  gboolean dark = lb_appearance_get_dark (appearance);
  double scale = lb_style_scale_for (self->width, self->height + self->strip_height)
                 * lb_appearance_get_text_scale (appearance);

  self->style = lb_style_make (dark ? LB_THEME_DARK : LB_THEME_LIGHT, scale);
}

static void
dark_cb (LbViewport *self)
{
  restyle (self);
  g_signal_emit (self, changed_signal, 0);
}

/* Larger words take more of the margins. */
static void
text_scale_cb (LbViewport *self)
{
  restyle (self);
  if (!self->moved)
    fit (self, TRUE);
  g_signal_emit (self, changed_signal, 0);
}

static void
lb_viewport_dispose (GObject *object)
{
  LbViewport *self = LB_VIEWPORT (object);

  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_viewport_parent_class)->dispose (object);
}

static void
lb_viewport_class_init (LbViewportClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_viewport_dispose;
  changed_signal = g_signal_new ("changed", LB_TYPE_VIEWPORT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
lb_viewport_init (LbViewport *self)
{
}

LbViewport *
lb_viewport_new (LbSession *session)
{
  LbViewport *self = g_object_new (LB_TYPE_VIEWPORT, NULL);

  self->session = g_object_ref (session);
  self->document = lb_session_get_document (session);
  restyle (self);
  g_signal_connect_object (session, "solved", G_CALLBACK (solved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::dark",
                           G_CALLBACK (dark_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (lb_session_get_appearance (session), "notify::text-scale",
                           G_CALLBACK (text_scale_cb), self, G_CONNECT_SWAPPED);
  return self;
}

void
lb_viewport_set_extents (LbViewport *self, const LbExtents *extents)
{
  g_return_if_fail (LB_IS_VIEWPORT (self));
  self->extents = *extents;
  self->has_extents = TRUE;
  if (!self->moved)
    fit (self, FALSE);
}

void
lb_viewport_set_size (LbViewport *self, double width, double height, double strip_height)
{
  g_return_if_fail (LB_IS_VIEWPORT (self));
  if (width == self->width && height == self->height && strip_height == self->strip_height)
    return;
  self->width = width;
  self->height = height;
  self->strip_height = strip_height;
  self->moved = FALSE;
  restyle (self);
  fit (self, TRUE);
}

const LbView *
lb_viewport_get_view (LbViewport *self)
{
  g_return_val_if_fail (LB_IS_VIEWPORT (self), NULL);
  return &self->view;
}

const LbStyle *
lb_viewport_get_style (LbViewport *self)
{
  g_return_val_if_fail (LB_IS_VIEWPORT (self), NULL);
  return &self->style;
}

void
lb_viewport_zoom (LbViewport *self, double factor, double x, double y)
{
  double per_metre;
  LbView view;

  g_return_if_fail (LB_IS_VIEWPORT (self));
  if (self->view.width == 0 || !isfinite (x) || !isfinite (y) || !(factor > 0))
    return;
  per_metre = self->view.per_metre_x * factor;
  if (per_metre < LEAST_PER_METRE || per_metre > MOST_PER_METRE)
    return;
  view = lb_view_zoomed (&self->view, factor, x, y);
  self->moved = TRUE;
  take_view (self, &view);
}

/* Of the selected part, in the world; FALSE when it has none. */
static gboolean
find_selected (LbViewport *self, double *x, double *z)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  LbResult *result = lb_session_get_result (self->session);
  const LbReadings *readings = result && !lb_status_is_failure (lb_result_get_status (result))
                                   ? lb_result_get_readings (result)
                                   : NULL;
  const LbVec3 *at = NULL;
  LbPickKind kind;
  int index;

  lb_session_get_selected (self->session, &kind, &index);
  if (kind == LB_PICK_BED_POINT && (gsize) index < setup->river.n_bed_points)
    {
      *x = setup->river.bed_x[index];
      *z = -setup->river.bed_depth[index];
      return TRUE;
    }
  if (!readings)
    return FALSE;
  if (kind == LB_PICK_WEIGHT || kind == LB_PICK_SHANK)
    at = &readings->weight.position;
  else if (kind == LB_PICK_ATTACHMENT && (gsize) index < readings->n_leaders)
    at = &readings->attachments[index].position;
  else if ((kind == LB_PICK_LURE || kind == LB_PICK_LEADER) && (gsize) index < readings->n_leaders)
    at = &readings->lures[index].at.position;
  if (!at)
    return FALSE;
  *x = at->x;
  *z = at->z;
  return TRUE;
}

void
lb_viewport_zoom_selected (LbViewport *self, double factor)
{
  double x, y, world_x, world_z;

  g_return_if_fail (LB_IS_VIEWPORT (self));
  x = self->view.width / 2;
  y = self->view.height / 2;
  if (find_selected (self, &world_x, &world_z))
    {
      /* What lies outside the drawing comes in from its edge. */
      x = CLAMP (lb_view_x (&self->view, world_x), 0, self->view.width);
      y = CLAMP (lb_view_y (&self->view, world_z), 0, self->view.height);
    }
  lb_viewport_zoom (self, factor, x, y);
}

void
lb_viewport_pan (LbViewport *self, double dx, double dy)
{
  LbView view;

  g_return_if_fail (LB_IS_VIEWPORT (self));
  if (self->view.width == 0)
    return;
  view = lb_view_panned (&self->view, dx, dy);
  self->moved = TRUE;
  take_view (self, &view);
}

void
lb_viewport_fit (LbViewport *self)
{
  g_return_if_fail (LB_IS_VIEWPORT (self));
  self->moved = FALSE;
  fit (self, TRUE);
}

void
lb_viewport_set_stretched (LbViewport *self, gboolean stretched)
{
  g_return_if_fail (LB_IS_VIEWPORT (self));
  self->stretched = stretched;
  lb_viewport_fit (self);
}

gboolean
lb_viewport_get_stretched (LbViewport *self)
{
  g_return_val_if_fail (LB_IS_VIEWPORT (self), FALSE);
  return self->stretched;
}

void
lb_viewport_hold (LbViewport *self, gboolean hold)
{
  g_return_if_fail (LB_IS_VIEWPORT (self));
  self->held = hold;
  if (!hold && !self->moved)
    fit (self, FALSE);
}

gboolean
lb_viewport_get_moved (LbViewport *self)
{
  g_return_val_if_fail (LB_IS_VIEWPORT (self), FALSE);
  return self->moved;
}
