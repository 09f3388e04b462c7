/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The side view above the bed strip, as a file. Needs no display. */
#pragma once

#include <glib.h>

#include "overlay.h"
#include "pass_drawing.h"
#include "style.h"

typedef enum
{
  LB_EXPORT_PNG,
  LB_EXPORT_SVG,
  LB_EXPORT_PDF,
} LbExportFormat;

#define LB_EXPORT_ERROR (lb_export_error_quark ())
GQuark lb_export_error_quark (void);

typedef enum
{
  LB_EXPORT_ERROR_FORMAT, /* the file's ending names no format we write */
  LB_EXPORT_ERROR_SIZE,   /* width or height out of range */
  LB_EXPORT_ERROR_WRITE,  /* the file cannot be written */
} LbExportError;

#define LB_EXPORT_SMALLEST 120 /* drawing units, either way */
#define LB_EXPORT_LARGEST 16384

/* The format that the ending of `path` names (.png, .svg, .pdf, any case), or FALSE with an error
 * that says which there are. */
gboolean lb_export_format_for_path (const char *path, LbExportFormat *format, GError **error);

/* Draws the title (if any), the side view and the bed strip of `picture` in `theme` and writes them
 * to `path`, replacing what is there only when all went well. `width` x `height`: pixels for PNG,
 * points (1/72 in) for PDF, user units for SVG. `date` (ISO 8601, "2026-01-02T03:04:05Z") goes into
 * the PDF; NULL takes SOURCE_DATE_EPOCH or the time of day. Returns FALSE and sets `error` when it
 * could not be done. */
gboolean lb_export_write (const char *path,
                          LbExportFormat format,
                          const LbPicture *picture,
                          LbTheme theme,
                          double width,
                          double height,
                          const char *date,
                          GError **error);

/* The same for a moment of a pass: the side view with the trails so far or, when `above`, the view
 * from above; and the time chart under it. */
gboolean lb_export_write_pass (const char *path,
                               LbExportFormat format,
                               const LbPassPicture *pass,
                               bool above,
                               LbTheme theme,
                               double width,
                               double height,
                               const char *date,
                               GError **error);

/* The same for runs laid over one another. */
gboolean lb_export_write_overlay (const char *path,
                                  LbExportFormat format,
                                  const LbOverlay *overlay,
                                  LbTheme theme,
                                  double width,
                                  double height,
                                  const char *date,
                                  GError **error);
