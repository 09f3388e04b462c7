/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_camera.h"

#include <math.h>

/* Drawing units per metre at normal letters: the whole of a long reach, and a lure close by. */
#define LEAST_SCALE 0.5
#define MOST_SCALE 900.0

static bool
is_chosen (const LbPassCamera *self)
{
  return self->moved || self->follows;
}

/* Whether the view was made for this drawing. */
static bool
is_of (const LbPassCamera *self, const LbStyle *style, double width, double height)
{
  return self->view.per_metre_x > 0 && self->view.width == width && self->view.height == height
         && self->view.style_scale == style->scale;
}

static LbView
fitting (const LbPassCamera *self,
         const LbPassPicture *picture,
         const LbStyle *style,
         double width,
         double height)
{
  if (self->above)
    return lb_pass_above_fit (&self->view, picture, style, width, height);
  if (self->follows)
    return lb_pass_side_near (picture, style, width, height);
  return lb_pass_side_fit (&self->view, picture, style, width, height);
}

const LbView *
lb_pass_camera_look (LbPassCamera *self,
                     const LbPassPicture *picture,
                     const LbStyle *style,
                     double width,
                     double height)
{
  LbTrackMoment now;

  if (is_chosen (self) && is_of (self, style, width, height))
    self->view = lb_pass_view_along (&self->view, picture, self->above, self->follows, &self->reel);
  else
    {
      /* What was chosen for another size is no longer there. */
      self->moved = false;
      self->view = fitting (self, picture, style, width, height);
      if (lb_track_at (&picture->track, picture->time, &now))
        self->reel = now.reel;
    }
  return &self->view;
}

void
lb_pass_camera_zoom (LbPassCamera *self, double factor, double x, double y)
{
  double scale = self->view.style_scale, now = self->view.per_metre_x;

  if (!(now > 0))
    return;
  factor = fmin (fmax (factor, LEAST_SCALE * scale / now), MOST_SCALE * scale / now);
  self->view = lb_view_zoomed (&self->view, factor, x, y);
  self->moved = true;
}

void
lb_pass_camera_pan (LbPassCamera *self, double dx, double dy)
{
  if (!(self->view.per_metre_x > 0))
    return;
  self->view = lb_view_panned (&self->view, dx, dy);
  self->moved = true;
}

void
lb_pass_camera_fit (LbPassCamera *self)
{
  self->moved = self->follows = false;
  self->view = (LbView){ 0 };
}

void
lb_pass_camera_follow (LbPassCamera *self, bool follow)
{
  if (follow == self->follows)
    return;
  self->follows = follow;
  /* One that the user has chosen stays. */
  if (!self->moved)
    self->view = (LbView){ 0 };
}
