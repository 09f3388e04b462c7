/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "export.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "export_file.h"
#include "export_words.h"
#include "scene_build.h"

G_DEFINE_QUARK (lb - export - error - quark, lb_export_error)

#define TITLE_HEIGHT 34.0 /* style units */
#define STRIP_SHARE 0.30  /* of the height */
#define CHART_SHARE 0.42
#define GAP 3.0 /* style units, between side view and strip */

/* ---- The picture as a whole ---- */

typedef struct
{
  LbDrawContext *context;
  LbScene *ground; /* under all, with the title on it */
  LbScene *side;
  LbScene *strip;
  LbStyle style;
  double title_height, side_height, strip_height;
} Sheet;

/* `overlay` or `pass` or, where both are NULL, `picture`. */
typedef struct
{
  const LbPicture *picture;
  const LbOverlay *overlay;
  const LbPassPicture *pass;
  bool above;
} Subject;

static void
add_pass_scenes (Sheet *sheet, const Subject *subject, double width)
{
  const LbPassPicture *pass = subject->pass;
  const LbStyle *style = &sheet->style;
  double height = sheet->side_height;

  if (subject->above)
    {
      LbView view = lb_pass_above_fit (NULL, pass, style, width, height);
      sheet->side = lb_pass_above_new (sheet->context, pass, style, &view, width, height);
    }
  else
    {
      LbView view = lb_pass_side_fit (NULL, pass, style, width, height);
      sheet->side = lb_pass_side_view_new (sheet->context, pass, style, &view, width, height);
    }
  sheet->strip = lb_pass_chart_new (sheet->context, pass, style, width, sheet->strip_height);
}

static void
add_scenes (Sheet *sheet, const Subject *subject, double width)
{
  LbExtents extents = subject->overlay ? lb_overlay_extents (subject->overlay)
                                       : lb_picture_extents (subject->picture);
  LbView view = lb_view_fit (NULL, &extents, &sheet->style, width, sheet->side_height);

  if (subject->overlay)
    {
      sheet->side = lb_overlay_side_view_new (sheet->context, subject->overlay, &sheet->style,
                                              &view, width, sheet->side_height);
      sheet->strip = lb_overlay_strip_new (sheet->context, subject->overlay, &sheet->style, &view,
                                           width, sheet->strip_height);
      return;
    }
  sheet->side = lb_side_view_new (sheet->context, subject->picture, &sheet->style, &view, width,
                                  sheet->side_height);
  sheet->strip = lb_bed_strip_new (sheet->context, subject->picture, &sheet->style, &view, width,
                                   sheet->strip_height);
}

static Sheet
sheet_new (const Subject *subject, LbTheme theme, double width, double height)
{
  Sheet sheet = { .context = lb_draw_context_new () };
  const LbPicture *picture = subject->picture;
  double gap;

  sheet.style = lb_style_make (theme, lb_style_scale_for (width, height));
  gap = GAP * sheet.style.scale;
  if (picture->title && *picture->title)
    sheet.title_height = fmin (TITLE_HEIGHT * sheet.style.scale, 0.15 * height);
  sheet.strip_height =
      floor ((subject->pass ? CHART_SHARE : STRIP_SHARE) * (height - sheet.title_height));
  sheet.side_height = height - sheet.title_height - sheet.strip_height - gap;
  sheet.ground =
      lb_title_ground_new (sheet.context, picture, &sheet.style, width, height, sheet.title_height);
  if (subject->pass)
    add_pass_scenes (&sheet, subject, width);
  else
    add_scenes (&sheet, subject, width);
  return sheet;
}

static void
sheet_clear (Sheet *sheet)
{
  lb_scene_free (sheet->ground);
  lb_scene_free (sheet->side);
  lb_scene_free (sheet->strip);
  lb_draw_context_free (sheet->context);
}

static void
sheet_paint (const Sheet *sheet, cairo_t *cr, double height)
{
  cairo_save (cr);
  lb_scene_paint (sheet->ground, cr, LB_LAYER_ALL);
  cairo_translate (cr, 0, sheet->title_height);
  lb_scene_paint (sheet->side, cr, LB_LAYER_ALL);
  cairo_translate (cr, 0, height - sheet->title_height - sheet->strip_height);
  lb_scene_paint (sheet->strip, cr, LB_LAYER_ALL);
  cairo_restore (cr);
}

/* ---- Formats ---- */

gboolean
lb_export_format_for_path (const char *path, LbExportFormat *format, GError **error)
{
  static const char *const endings[] = { ".png", ".svg", ".pdf" };
  g_autofree char *lower = g_ascii_strdown (path, -1);

  for (int i = 0; i < 3; i++)
    if (g_str_has_suffix (lower, endings[i]))
      {
        *format = (LbExportFormat) i;
        return TRUE;
      }
  g_set_error (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_FORMAT,
               _ ("%s: the ending names no kind of picture; expected .png, .svg or .pdf"), path);
  return FALSE;
}

static cairo_surface_t *
make_surface (LbExportFormat format, double width, double height, GByteArray *bytes)
{
  switch (format)
    {
    case LB_EXPORT_SVG:
      return cairo_svg_surface_create_for_stream (lb_export_append_cb, bytes, width, height);
    case LB_EXPORT_PDF:
      return cairo_pdf_surface_create_for_stream (lb_export_append_cb, bytes, width, height);
    case LB_EXPORT_PNG:
      break;
    }
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (width), (int) ceil (height));
}

/* Cairo tells of most troubles only once the surface is finished. */
static cairo_status_t
render (const LbPicture *picture,
        const Sheet *sheet,
        LbExportFormat format,
        double width,
        double height,
        const char *date,
        GByteArray *bytes)
{
  cairo_surface_t *surface = make_surface (format, width, height, bytes);
  g_auto (LbExportWords) words = lb_export_words (picture, sheet->side, sheet->strip);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  if (format == LB_EXPORT_PDF)
    lb_export_words_into_pdf (&words, surface, date);
  sheet_paint (sheet, cr, height);
  status = cairo_status (cr);
  cairo_destroy (cr);
  if (format == LB_EXPORT_PNG && status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, lb_export_append_cb, bytes);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);

  if (status == CAIRO_STATUS_SUCCESS && format == LB_EXPORT_PNG)
    lb_export_words_into_png (&words, bytes);
  if (status == CAIRO_STATUS_SUCCESS && format == LB_EXPORT_SVG)
    lb_export_words_into_svg (&words, bytes);
  return status;
}

/* ---- Writing ---- */

static gboolean
size_is_right (double width, double height, GError **error)
{
  if (width >= LB_EXPORT_SMALLEST && width <= LB_EXPORT_LARGEST && height >= LB_EXPORT_SMALLEST
      && height <= LB_EXPORT_LARGEST)
    return TRUE;
  g_set_error (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_SIZE,
               _ ("A picture of %.0f by %.0f cannot be drawn; expected each from %d to %d"), width,
               height, LB_EXPORT_SMALLEST, LB_EXPORT_LARGEST);
  return FALSE;
}

static gboolean
write_subject (const char *path,
               LbExportFormat format,
               const Subject *subject,
               LbTheme theme,
               double width,
               double height,
               const char *date,
               GError **error)
{
  g_autoptr (GByteArray) bytes = NULL;
  cairo_status_t status;
  Sheet sheet;

  if (!size_is_right (width, height, error))
    return FALSE;
  bytes = g_byte_array_new ();
  sheet = sheet_new (subject, theme, width, height);
  status = render (subject->picture, &sheet, format, width, height, date, bytes);
  sheet_clear (&sheet);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_WRITE, _ ("%s: cannot be drawn: %s"),
                   path, cairo_status_to_string (status));
      return FALSE;
    }
  return lb_export_write_bytes (path, bytes, error);
}

gboolean
lb_export_write (const char *path,
                 LbExportFormat format,
                 const LbPicture *picture,
                 LbTheme theme,
                 double width,
                 double height,
                 const char *date,
                 GError **error)
{
  Subject subject = { .picture = picture };

  return write_subject (path, format, &subject, theme, width, height, date, error);
}

gboolean
lb_export_write_pass (const char *path,
                      LbExportFormat format,
                      const LbPassPicture *pass,
                      bool above,
                      LbTheme theme,
                      double width,
                      double height,
                      const char *date,
                      GError **error)
{
  Subject subject = { .picture = &pass->now, .pass = pass, .above = above };

  return write_subject (path, format, &subject, theme, width, height, date, error);
}

gboolean
lb_export_write_overlay (const char *path,
                         LbExportFormat format,
                         const LbOverlay *overlay,
                         LbTheme theme,
                         double width,
                         double height,
                         const char *date,
                         GError **error)
{
  Subject subject = { .picture = &overlay->ground, .overlay = overlay };

  return write_subject (path, format, &subject, theme, width, height, date, error);
}
