/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_export.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "export_file.h"
#include "export_words.h"

/* ---- Names ---- */

char **
lb_card_export_paths (const LbCardDrawing *drawing, const char *path, LbExportFormat format)
{
  size_t n = format == LB_EXPORT_PDF ? 1 : lb_card_drawing_n_sheets (drawing);
  char **paths = g_new0 (char *, n + 1);
  const char *dot = strrchr (path, '.');

  if (!dot)
    dot = path + strlen (path);
  for (size_t i = 0; i < n; i++)
    paths[i] = n == 1 ? g_strdup (path)
                      : g_strdup_printf ("%.*s-%d%s", (int) (dot - path), path, (int) i + 1, dot);
  return paths;
}

/* What it is; and what could not be written in letters, so that it is not lost: it can be found and
 * copied, even where it cannot be read on paper. */
static char *
subject_of (const LbCardDrawing *drawing)
{
  g_autofree char *unlettered = lb_card_drawing_dup_unlettered (drawing);

  return g_strjoin ("\n", _ ("A card to rig and fish from"), unlettered, NULL);
}

/* A single sheet's description says all that is on it. */
static LbExportWords
words_of (const LbCardDrawing *drawing, LbExportFormat format, size_t sheet)
{
  return (LbExportWords){
    .title = g_strdup (lb_card_drawing_title (drawing)),
    .description =
        format == LB_EXPORT_PDF ? subject_of (drawing) : lb_card_drawing_describe (drawing, sheet),
    .software = g_strdup ("Layback " LB_VERSION),
  };
}

/* ---- Surfaces ---- */

/* Cairo tells of most troubles only once the surface is finished. */
static cairo_status_t
finish (cairo_surface_t *surface, cairo_t *cr)
{
  cairo_status_t status = cairo_status (cr);

  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

static cairo_status_t
render_pdf (const LbCardDrawing *drawing, const char *date, GByteArray *bytes)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (lb_export_append_cb, bytes, 1, 1);
  g_auto (LbExportWords) words = words_of (drawing, LB_EXPORT_PDF, 0);
  cairo_t *cr = cairo_create (surface);

  lb_export_words_into_pdf (&words, surface, date);
  for (size_t i = 0; i < lb_card_drawing_n_sheets (drawing); i++)
    {
      double width, height;

      lb_card_drawing_sheet_size (drawing, i, &width, &height);
      cairo_pdf_surface_set_size (surface, width, height);
      lb_card_drawing_paint (drawing, i, cr);
      cairo_show_page (cr);
    }
  return finish (surface, cr);
}

static cairo_status_t
render_svg (const LbCardDrawing *drawing, size_t sheet, GByteArray *bytes)
{
  g_auto (LbExportWords) words = words_of (drawing, LB_EXPORT_SVG, sheet);
  double width, height;
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;

  lb_card_drawing_sheet_size (drawing, sheet, &width, &height);
  surface = cairo_svg_surface_create_for_stream (lb_export_append_cb, bytes, width, height);
  cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_PT);
  cr = cairo_create (surface);
  lb_card_drawing_paint (drawing, sheet, cr);
  status = finish (surface, cr);
  if (status == CAIRO_STATUS_SUCCESS)
    lb_export_words_into_svg (&words, bytes);
  return status;
}

static cairo_status_t
render_png (const LbCardDrawing *drawing, size_t sheet, double resolution, GByteArray *bytes)
{
  g_auto (LbExportWords) words = words_of (drawing, LB_EXPORT_PNG, sheet);
  double width, height, per_point = resolution / 72;
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;

  lb_card_drawing_sheet_size (drawing, sheet, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (width * per_point - 1e-6),
                                        (int) ceil (height * per_point - 1e-6));
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, per_point, per_point);
  lb_card_drawing_paint (drawing, sheet, cr);
  status = cairo_status (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, lb_export_append_cb, bytes);
  if (status == CAIRO_STATUS_SUCCESS)
    status = finish (surface, cr);
  else
    finish (surface, cr);
  if (status == CAIRO_STATUS_SUCCESS)
    {
      lb_export_words_into_png (&words, bytes);
      lb_export_resolution_into_png (resolution, bytes);
    }
  return status;
}

/* ---- Files ---- */

static gboolean
resolution_is_right (const LbCardDrawing *drawing, double resolution, GError **error)
{
  if (!(resolution >= LB_CARD_LEAST_RESOLUTION && resolution <= LB_CARD_MOST_RESOLUTION))
    {
      g_set_error (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_SIZE,
                   _ ("A picture with %.0f pixels to the inch cannot be drawn; expected %d to %d"),
                   resolution, LB_CARD_LEAST_RESOLUTION, LB_CARD_MOST_RESOLUTION);
      return FALSE;
    }
  for (size_t i = 0; i < lb_card_drawing_n_sheets (drawing); i++)
    {
      double width, height, most;

      lb_card_drawing_sheet_size (drawing, i, &width, &height);
      most = LB_EXPORT_LARGEST / fmax (width, height) * 72;
      if (resolution > most)
        {
          g_set_error (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_SIZE,
                       _ ("A sheet of this size can have at most %.0f pixels to the inch"),
                       floor (most));
          return FALSE;
        }
    }
  return TRUE;
}

static gboolean
succeeded (cairo_status_t status, const char *path, GError **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, LB_EXPORT_ERROR, LB_EXPORT_ERROR_WRITE, _ ("%s: cannot be drawn: %s"), path,
               cairo_status_to_string (status));
  return FALSE;
}

static cairo_status_t
render (const LbCardDrawing *drawing,
        LbExportFormat format,
        size_t sheet,
        double resolution,
        const char *date,
        GByteArray *bytes)
{
  switch (format)
    {
    case LB_EXPORT_PDF:
      return render_pdf (drawing, date, bytes);
    case LB_EXPORT_SVG:
      return render_svg (drawing, sheet, bytes);
    case LB_EXPORT_PNG:
      break;
    }
  return render_png (drawing, sheet, resolution, bytes);
}

gboolean
lb_card_export_write (const LbCardDrawing *drawing,
                      const char *path,
                      LbExportFormat format,
                      double resolution,
                      const char *date,
                      GError **error)
{
  g_auto (GStrv) paths = lb_card_export_paths (drawing, path, format);
  g_autoptr (GPtrArray) files =
      g_ptr_array_new_with_free_func ((GDestroyNotify) g_byte_array_unref);

  if (format == LB_EXPORT_PNG && !resolution_is_right (drawing, resolution, error))
    return FALSE;
  for (size_t i = 0; paths[i]; i++)
    {
      GByteArray *bytes = g_byte_array_new ();

      g_ptr_array_add (files, bytes);
      if (!succeeded (render (drawing, format, i, resolution, date, bytes), paths[i], error))
        return FALSE;
    }
  for (size_t i = 0; paths[i]; i++)
    if (!lb_export_write_bytes (paths[i], g_ptr_array_index (files, i), error))
      return FALSE;
  return TRUE;
}

GBytes *
lb_card_export_png (const LbCardDrawing *drawing, size_t sheet, double resolution, GError **error)
{
  GByteArray *bytes;

  if (!resolution_is_right (drawing, resolution, error))
    return NULL;
  bytes = g_byte_array_new ();
  if (succeeded (render_png (drawing, sheet, resolution, bytes), "PNG", error))
    return g_byte_array_free_to_bytes (bytes);
  g_byte_array_unref (bytes);
  return NULL;
}
