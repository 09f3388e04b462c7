/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A card as files. Needs no display. */
#pragma once

#include "card_drawing.h"
#include "export.h"

/* Pixels in an inch of a PNG. */
#define LB_CARD_RESOLUTION 300
#define LB_CARD_LEAST_RESOLUTION 36
#define LB_CARD_MOST_RESOLUTION 1200

/* The files that lb_card_export_write() writes: `path` alone for a PDF or a single sheet; otherwise
 * one for each sheet, "card.svg" giving "card-1.svg", "card-2.svg" and so on. Free with
 * g_strfreev(). */
char **lb_card_export_paths (const LbCardDrawing *drawing, const char *path, LbExportFormat format);

/* Writes the sheets of `drawing`. A PDF holds all of them, with its fonts and the card's title;
 * others take a file each, with title and description. `resolution`: of a PNG, pixels to the inch;
 * no meaning for others. `date` (ISO 8601) as for lb_export_write(). All is drawn before the first
 * file is replaced. FALSE with an LB_EXPORT_ERROR. */
gboolean lb_card_export_write (const LbCardDrawing *drawing,
                               const char *path,
                               LbExportFormat format,
                               double resolution,
                               const char *date,
                               GError **error);

/* One sheet as the bytes of a PNG, for a clipboard; NULL with an LB_EXPORT_ERROR. */
GBytes *
lb_card_export_png (const LbCardDrawing *drawing, size_t sheet, double resolution, GError **error);
