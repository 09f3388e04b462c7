/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "earth.h"

#include <geodesic.h>
#include <glib/gi18n-lib.h>
#include <gmodule.h>

#include "file_error.h"

#define WGS84_RADIUS 6378137.0
#define WGS84_FLATTENING (1 / 298.257223563)

static GMutex mutex;
static struct geod_geodesic ellipsoid;
static __typeof__ (&geod_init) init;
static __typeof__ (&geod_inverse) inverse;

static gboolean
open_routines (void)
{
  GModule *library = g_module_open (LB_PROJ_LIBRARY, G_MODULE_BIND_LAZY);

  if (!library || !g_module_symbol (library, "geod_init", (gpointer *) &init)
      || !g_module_symbol (library, "geod_inverse", (gpointer *) &inverse))
    return FALSE;
  g_module_make_resident (library);
  init (&ellipsoid, WGS84_RADIUS, WGS84_FLATTENING);
  return TRUE;
}

gboolean
lb_earth_open (GError **error)
{
  g_autoptr (GMutexLocker) locker = g_mutex_locker_new (&mutex);

  if (inverse || open_routines ())
    return TRUE;
  g_set_error (error, LB_FILE_ERROR, LB_FILE_ERROR_READ,
               _ ("distances on the ground cannot be worked out: %s"), g_module_error ());
  return FALSE;
}

double
lb_earth_way (
    double from_latitude, double from_longitude, double latitude, double longitude, double *bearing)
{
  double metres;

  inverse (&ellipsoid, from_latitude, from_longitude, latitude, longitude, &metres, bearing, NULL);
  return metres;
}
