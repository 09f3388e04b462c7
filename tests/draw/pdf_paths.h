/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The straight lines and boxes of a page of a PDF, as poppler reads them, and the page as pixels.
 */
#pragma once

#include <glib.h>

#include "test.h"

typedef struct
{
  double x1, y1, x2, y2; /* points, from the page's top left corner */
  double width;          /* of the stroke, points */
  bool is_dashed;
} PdfLine;

typedef struct
{
  double x, y, width, height; /* points */
} PdfBox;

typedef struct
{
  GArray *lines; /* PdfLine: paths of two points */
  GArray *boxes; /* PdfBox: closed paths of four sides along the page's */
} PdfPaths;

/* Reads page `page` (from 1) by pdftocairo; skips the test where that is missing. */
PdfPaths pdf_paths_read (const char *pdf, int page);
void pdf_paths_clear (PdfPaths *paths);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PdfPaths, pdf_paths_clear)

typedef struct
{
  int width, height;
  unsigned char *grey; /* 0 is black */
  char *file;          /* what owns it */
} PdfPixels;

/* Page `page` by pdftoppm at `dpi`. */
PdfPixels pdf_pixels_read (const char *pdf, int page, int dpi);
void pdf_pixels_clear (PdfPixels *pixels);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PdfPixels, pdf_pixels_clear)

/* What a program prints on standard output; skips the test where it is missing. Free with
 * g_free(). */
char *pdf_ask (const char *const *arguments);
