/* SPDX-License-Identifier: GPL-3.0-or-later */
/* For test programs whose cases each have one window of their own: what opens and closes it, and
 * what they ask it for. Include it once, in the program's only file. */
#pragma once

#include "harness.h"

static LbWindow *window;

G_GNUC_UNUSED static int
set_up (void **state)
{
  window = harness_window (1280, 800);
  return 0;
}

/* The same with the smallest window that is meant to be comfortable. */
G_GNUC_UNUSED static int
set_up_small (void **state)
{
  window = harness_window (960, 600);
  return 0;
}

G_GNUC_UNUSED static int
tear_down (void **state)
{
  harness_close (window);
  return 0;
}

G_GNUC_UNUSED static LbSession *
session (void)
{
  return lb_window_get_session (window);
}

G_GNUC_UNUSED static const LbSetup *
setup (void)
{
  return lb_document_get_setup (lb_session_get_document (session ()));
}

G_GNUC_UNUSED static LbCanvas *
side_view (void)
{
  return lb_drawings_get_side_view (lb_window_get_drawings (window));
}

G_GNUC_UNUSED static LbCanvas *
bed_strip (void)
{
  return lb_drawings_get_bed_strip (lb_window_get_drawings (window));
}
