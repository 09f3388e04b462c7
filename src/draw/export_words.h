/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Words that go into an exported file beside the picture; for the files of this folder only. */
#pragma once

#include "scene.h"

typedef struct
{
  char *title;
  char *description; /* the picture in words */
  char *software;
} LbExportWords;

LbExportWords lb_export_words (const LbPicture *picture, const LbScene *side, const LbScene *strip);
void lb_export_words_clear (LbExportWords *words);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbExportWords, lb_export_words_clear)

/* Text chunks of a PNG file (iTXt: W3C PNG specification, 11.3.4.5). */
void lb_export_words_into_png (const LbExportWords *words, GByteArray *png);

/* How many pixels an inch has (pHYs: 11.3.5.3), so that the picture has a size on paper. */
void lb_export_resolution_into_png (double per_inch, GByteArray *png);

/* Title, subject and dates. `date` as for lb_export_write(). */
void
lb_export_words_into_pdf (const LbExportWords *words, cairo_surface_t *surface, const char *date);

/* <title> and <desc>, which screen readers read. */
void lb_export_words_into_svg (const LbExportWords *words, GByteArray *svg);
