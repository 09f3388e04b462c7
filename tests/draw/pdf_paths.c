/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pdf_paths.h"

#include <stdio.h>
#include <string.h>

char *
pdf_ask (const char *const *arguments)
{
  g_autofree char *found = g_find_program_in_path (arguments[0]);
  char *output = NULL;
  int status = 0;

  if (!found)
    skip ();
  assert_true (g_spawn_sync (NULL, (char **) arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL,
                             &output, NULL, &status, NULL));
  assert_int_equal (status, 0);
  return output;
}

/* ---- Paths ---- */

#define MOST_POINTS 8

typedef struct
{
  size_t n;
  double x[MOST_POINTS], y[MOST_POINTS];
  bool is_straight, is_closed;
} Outline;

/* "M 1 2 L 3 4 Z M 1 2"; what follows a closed path is only where the pen went back to. */
static Outline
parse_outline (const char *d)
{
  Outline outline = { .is_straight = true };

  while (*d && !outline.is_closed)
    {
      char op = *d++;
      char *end;

      if (op == 'Z')
        outline.is_closed = true;
      if (op == 'C' || outline.n == MOST_POINTS)
        outline.is_straight = false;
      if ((op != 'M' && op != 'L') || outline.n == MOST_POINTS)
        continue;
      outline.x[outline.n] = g_ascii_strtod (d, &end);
      outline.y[outline.n++] = g_ascii_strtod (end, &end);
      d = end;
    }
  return outline;
}

static void
transform (Outline *outline, const char *matrix)
{
  double m[6];
  char *end = matrix ? strchr (matrix, '(') : NULL;

  if (!end)
    return;
  for (int i = 0; i < 6; i++)
    m[i] = g_ascii_strtod (end + 1, &end);
  for (size_t i = 0; i < outline->n; i++)
    {
      double x = outline->x[i], y = outline->y[i];

      outline->x[i] = m[0] * x + m[2] * y + m[4];
      outline->y[i] = m[1] * x + m[3] * y + m[5];
    }
}

static bool
is_upright (const Outline *o)
{
  for (size_t i = 0; i < 4; i++)
    if (fabs (o->x[i] - o->x[(i + 1) % 4]) > 0.01 && fabs (o->y[i] - o->y[(i + 1) % 4]) > 0.01)
      return false;
  return true;
}

static void
keep_outline (PdfPaths *paths, const Outline *o, const char *style)
{
  const char *width = strstr (style, "stroke-width:");

  if (!o->is_straight || !width)
    return;
  if (o->n == 2)
    {
      PdfLine line = { o->x[0],
                       o->y[0],
                       o->x[1],
                       o->y[1],
                       g_ascii_strtod (width + 13, NULL),
                       strstr (style, "stroke-dasharray") != NULL };

      g_array_append_val (paths->lines, line);
    }
  if (o->n >= 4 && o->is_closed && is_upright (o))
    {
      PdfBox box = { fmin (o->x[0], o->x[2]), fmin (o->y[0], o->y[2]), fabs (o->x[2] - o->x[0]),
                     fabs (o->y[2] - o->y[0]) };

      g_array_append_val (paths->boxes, box);
    }
}

static void
element_cb (GMarkupParseContext *context,
            const char *element,
            const char **names,
            const char **values,
            gpointer data,
            GError **error)
{
  const char *d = NULL, *matrix = NULL, *style = "";
  Outline outline;

  for (int i = 0; names[i]; i++)
    {
      d = strcmp (names[i], "d") ? d : values[i];
      matrix = strcmp (names[i], "transform") ? matrix : values[i];
      style = strcmp (names[i], "style") ? style : values[i];
    }
  if (strcmp (element, "path") || !d)
    return;
  outline = parse_outline (d);
  transform (&outline, matrix);
  keep_outline (data, &outline, style);
}

PdfPaths
pdf_paths_read (const char *pdf, int page)
{
  g_autofree char *number = g_strdup_printf ("%d", page);
  g_autofree char *svg =
      pdf_ask ((const char *const[]){ "pdftocairo", "-svg", "-origpagesizes", "-noshrink", "-f",
                                      number, "-l", number, pdf, "-", NULL });
  const GMarkupParser parser = { .start_element = element_cb };
  PdfPaths paths = { g_array_new (FALSE, FALSE, sizeof (PdfLine)),
                     g_array_new (FALSE, FALSE, sizeof (PdfBox)) };
  GMarkupParseContext *context =
      g_markup_parse_context_new (&parser, (GMarkupParseFlags) 0, &paths, NULL);

  assert_true (g_markup_parse_context_parse (context, svg, (gssize) strlen (svg), NULL));
  g_markup_parse_context_free (context);
  return paths;
}

void
pdf_paths_clear (PdfPaths *paths)
{
  g_clear_pointer (&paths->lines, g_array_unref);
  g_clear_pointer (&paths->boxes, g_array_unref);
}

/* ---- Pixels ---- */

PdfPixels
pdf_pixels_read (const char *pdf, int page, int dpi)
{
  g_autofree char *number = g_strdup_printf ("%d", page);
  g_autofree char *resolution = g_strdup_printf ("%d", dpi);
  g_autofree char *stem = g_strdup_printf ("%s-%d", pdf, page);
  g_autofree char *path = g_strconcat (stem, ".pgm", NULL);
  g_autofree char *nothing =
      pdf_ask ((const char *const[]){ "pdftoppm", "-gray", "-singlefile", "-r", resolution, "-f",
                                      number, "-l", number, pdf, stem, NULL });
  PdfPixels pixels = { 0 };
  gsize length;
  int depth, read = 0;

  assert_true (g_file_get_contents (path, &pixels.file, &length, NULL));
  assert_int_equal (
      sscanf (pixels.file, "P5 %d %d %d%n", &pixels.width, &pixels.height, &depth, &read), 3);
  assert_int_equal (length, read + 1 + pixels.width * pixels.height);
  pixels.grey = (unsigned char *) pixels.file + read + 1;
  return pixels;
}

void
pdf_pixels_clear (PdfPixels *pixels)
{
  g_clear_pointer (&pixels->file, g_free);
}
