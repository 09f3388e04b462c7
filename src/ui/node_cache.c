/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "node_cache.h"

#include <math.h>

#include "damage.h"

/* Side of a cell, drawing units. */
#define CELL 112
/* Cells of a block, to either side. */
#define BLOCK 4
#define HASH_FACTOR G_GUINT64_CONSTANT (0x100000001b3)

typedef struct
{
  guint64 key;         /* of what it shows */
  guint64 next_key;    /* of what it shall show */
  GskRenderNode *node; /* NULL: not painted yet */
} Cell;

struct LbNodeCache
{
  cairo_surface_t *background; /* NULL: not painted yet */
  guint64 background_key;
  int width, height, scale_factor;
  int columns, rows;
  gsize most_boxes;
  GArray *cells; /* row by row */
  LbNodeCounts counts;
};

static void
clear_cell (gpointer data)
{
  g_clear_pointer (&((Cell *) data)->node, gsk_render_node_unref);
}

LbNodeCache *
lb_node_cache_new (gsize most_boxes)
{
  LbNodeCache *self = g_new0 (LbNodeCache, 1);

  lb_node_cache_set_most_boxes (self, most_boxes);
  self->cells = g_array_new (FALSE, TRUE, sizeof (Cell));
  g_array_set_clear_func (self->cells, clear_cell);
  return self;
}

void
lb_node_cache_free (LbNodeCache *self)
{
  if (!self)
    return;
  lb_node_cache_clear (self);
  g_array_unref (self->cells);
  g_free (self);
}

void
lb_node_cache_set_most_boxes (LbNodeCache *self, gsize most_boxes)
{
  self->most_boxes = MAX (most_boxes, 1);
}

void
lb_node_cache_clear (LbNodeCache *self)
{
  g_clear_pointer (&self->background, cairo_surface_destroy);
  g_array_set_size (self->cells, 0);
  self->width = self->height = 0;
}

static void
resize (LbNodeCache *self, int width, int height, int scale_factor)
{
  lb_node_cache_clear (self);
  self->width = width;
  self->height = height;
  self->scale_factor = scale_factor;
  self->columns = 1 + (width - 1) / CELL;
  self->rows = 1 + (height - 1) / CELL;
  g_array_set_size (self->cells, (guint) (self->columns * self->rows));
}

static void
paint_background (LbNodeCache *self, const LbScene *scene)
{
  cairo_t *cr;

  g_clear_pointer (&self->background, cairo_surface_destroy);
  self->background = cairo_image_surface_create (
      CAIRO_FORMAT_RGB24, self->width * self->scale_factor, self->height * self->scale_factor);
  cairo_surface_set_device_scale (self->background, self->scale_factor, self->scale_factor);
  cr = cairo_create (self->background);
  lb_scene_paint (scene, cr, LB_LAYER_BACKGROUND);
  cairo_destroy (cr);
  self->background_key = lb_scene_background_key (scene);
  self->counts.backgrounds++;
}

/* ---- Which cells a tile lies in ---- */

typedef struct
{
  int column, last_column, row, last_row;
} Span;

static Span
span_of (LbNodeCache *self, const LbBox *box)
{
  return (Span){
    CLAMP ((int) floor (box->x / CELL), 0, self->columns - 1),
    CLAMP ((int) ceil ((box->x + box->width) / CELL) - 1, 0, self->columns - 1),
    CLAMP ((int) floor (box->y / CELL), 0, self->rows - 1),
    CLAMP ((int) ceil ((box->y + box->height) / CELL) - 1, 0, self->rows - 1),
  };
}

static guint64
mixed (guint64 key, guint64 more)
{
  return (key ^ more) * HASH_FACTOR;
}

/* Of a tile: what it shows, and where. */
static guint64
tile_key (const LbScene *scene, gsize tile, const LbBox *box)
{
  guint64 key = lb_scene_tile_key (scene, tile);

  key = mixed (key, (guint64) (gint64) box->x);
  key = mixed (key, (guint64) (gint64) box->y);
  key = mixed (key, (guint64) (gint64) box->width);
  return mixed (key, (guint64) (gint64) box->height);
}

static void
key_cells (LbNodeCache *self, const LbScene *scene)
{
  for (guint i = 0; i < self->cells->len; i++)
    g_array_index (self->cells, Cell, i).next_key = self->background_key;
  for (gsize t = 0; t < lb_scene_n_tiles (scene); t++)
    {
      LbBox box = lb_scene_tile_bounds (scene, t);
      Span span = span_of (self, &box);
      guint64 key = tile_key (scene, t, &box);

      for (int r = span.row; r <= span.last_row; r++)
        for (int c = span.column; c <= span.last_column; c++)
          {
            Cell *cell = &g_array_index (self->cells, Cell, r * self->columns + c);

            cell->next_key = mixed (cell->next_key, key);
          }
    }
}

/* ---- Painting ---- */

static void
paint_tiles (const LbScene *scene, cairo_t *cr, const LbBox *cell)
{
  for (gsize t = 0; t < lb_scene_n_tiles (scene); t++)
    {
      LbBox box = lb_scene_tile_bounds (scene, t);

      if (box.x < cell->x + cell->width && box.x + box.width > cell->x
          && box.y < cell->y + cell->height && box.y + box.height > cell->y)
        lb_scene_paint_tile (scene, cr, t);
    }
}

static void
paint_cell (LbNodeCache *self, const LbScene *scene, int column, int row)
{
  Cell *cell = &g_array_index (self->cells, Cell, row * self->columns + column);
  int x = column * CELL, y = row * CELL;
  LbBox box = { x, y, MIN (CELL, self->width - x), MIN (CELL, self->height - y) };
  cairo_t *cr;

  clear_cell (cell);
  cell->node = gsk_cairo_node_new (
      &GRAPHENE_RECT_INIT ((float) box.x, (float) box.y, (float) box.width, (float) box.height));
  cr = gsk_cairo_node_get_draw_context (cell->node);
  cairo_set_source_surface (cr, self->background, 0, 0);
  /* Pixel for pixel: no smoothing is wanted, and none is paid for. */
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  paint_tiles (scene, cr, &box);
  cairo_destroy (cr);
  cell->key = cell->next_key;
  self->counts.painted++;
  self->counts.painted_area += box.width * box.height;
}

static void
paint_changed_cells (LbNodeCache *self, const LbScene *scene)
{
  g_autofree gboolean *changed = g_new (gboolean, self->cells->len);
  g_autofree LbCellBox *boxes = g_new (LbCellBox, self->most_boxes);
  gsize n;

  for (guint i = 0; i < self->cells->len; i++)
    {
      const Cell *cell = &g_array_index (self->cells, Cell, i);

      changed[i] = !cell->node || cell->key != cell->next_key;
    }
  n = lb_damage_cover (changed, self->columns, self->rows, self->most_boxes, boxes);
  for (gsize i = 0; i < n; i++)
    for (int r = boxes[i].row; r < boxes[i].row + boxes[i].rows; r++)
      for (int c = boxes[i].column; c < boxes[i].column + boxes[i].columns; c++)
        paint_cell (self, scene, c, r);
}

/* The cells of one block in a clip of their own, in which cairo sees at once when nothing of them
 * is to be repainted. */
static void
append_block (LbNodeCache *self, GtkSnapshot *snapshot, int column, int row)
{
  int last_column = MIN (column + BLOCK, self->columns), last_row = MIN (row + BLOCK, self->rows);
  GskRenderNode *nodes[BLOCK * BLOCK], *container, *clip;
  guint n = 0;

  for (int r = row; r < last_row; r++)
    for (int c = column; c < last_column; c++)
      nodes[n++] = g_array_index (self->cells, Cell, r * self->columns + c).node;
  container = gsk_container_node_new (nodes, n);
  clip = gsk_clip_node_new (
      container, &GRAPHENE_RECT_INIT (column * CELL, row * CELL,
                                      MIN (last_column * CELL, self->width) - column * CELL,
                                      MIN (last_row * CELL, self->height) - row * CELL));
  gtk_snapshot_append_node (snapshot, clip);
  gsk_render_node_unref (clip);
  gsk_render_node_unref (container);
}

static void
append_cells (LbNodeCache *self, GtkSnapshot *snapshot)
{
  for (int r = 0; r < self->rows; r += BLOCK)
    for (int c = 0; c < self->columns; c += BLOCK)
      append_block (self, snapshot, c, r);
}

void
lb_node_cache_snapshot (LbNodeCache *self,
                        GtkSnapshot *snapshot,
                        const LbScene *scene,
                        int width,
                        int height,
                        int scale_factor)
{
  if (width < 1 || height < 1)
    return;
  if (width != self->width || height != self->height || scale_factor != self->scale_factor)
    resize (self, width, height, scale_factor);
  if (!self->background || self->background_key != lb_scene_background_key (scene))
    paint_background (self, scene);

  key_cells (self, scene);
  self->counts.cells = self->cells->len;
  self->counts.painted = 0;
  self->counts.painted_area = 0;
  paint_changed_cells (self, scene);
  append_cells (self, snapshot);
}

LbNodeCounts
lb_node_cache_get_counts (LbNodeCache *self)
{
  return self->counts;
}
