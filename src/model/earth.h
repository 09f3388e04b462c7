/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways over the ground, on the ellipsoid of WGS 84: PROJ's geodesic routines (Karney 2013, J.
 * Geodesy 87, 43). Internal to the model.
 *
 * PROJ is opened when the first track is read: it needs thirty more libraries, which every start
 * would else have to map. */
#pragma once

#include <glib.h>

/* Makes the routines ready; once they are they stay. Any thread may call it. FALSE with an
 * LB_FILE_ERROR if the library is not there. */
gboolean lb_earth_open (GError **error);

/* The shortest way between two places, degrees: its length in m and the direction it sets out in,
 * degrees from north by east; `bearing` may be NULL. Only after lb_earth_open() has returned TRUE.
 */
double lb_earth_way (double from_latitude,
                     double from_longitude,
                     double latitude,
                     double longitude,
                     double *bearing);
