/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "node_cache.h"

/* A place in the list of tile nodes. GTK compares the lists of two frames place by place, so a tile
 * that stays must stay at its place, whatever comes and goes before it. */
typedef struct
{
  LbBox bounds;
  guint64 key;
  GskRenderNode *node; /* NULL: a free place */
  gboolean kept;       /* used by the scene at hand */
} Slot;

struct LbNodeCache
{
  GskRenderNode *background;
  guint64 background_key;
  int width, height, scale_factor;
  GArray *slots;
  GskRenderNode *nothing; /* fills free places */
  gsize n_painted, n_tiles;
  guint n_backgrounds;
};

static void
clear_slot (gpointer data)
{
  Slot *slot = data;

  g_clear_pointer (&slot->node, gsk_render_node_unref);
}

LbNodeCache *
lb_node_cache_new (void)
{
  LbNodeCache *self = g_new0 (LbNodeCache, 1);

  self->slots = g_array_new (FALSE, TRUE, sizeof (Slot));
  g_array_set_clear_func (self->slots, clear_slot);
  self->nothing = gsk_cairo_node_new (graphene_rect_zero ());
  return self;
}

void
lb_node_cache_free (LbNodeCache *self)
{
  if (!self)
    return;
  lb_node_cache_clear (self);
  g_array_unref (self->slots);
  gsk_render_node_unref (self->nothing);
  g_free (self);
}

void
lb_node_cache_clear (LbNodeCache *self)
{
  g_clear_pointer (&self->background, gsk_render_node_unref);
  g_array_set_size (self->slots, 0);
}

static GskRenderNode *
paint_background (const LbScene *scene, int width, int height, int scale_factor)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width * scale_factor, height * scale_factor);
  GskRenderNode *node;
  cairo_t *cr;

  cairo_surface_set_device_scale (surface, scale_factor, scale_factor);
  cr = cairo_create (surface);
  lb_scene_paint (scene, cr, LB_LAYER_BACKGROUND);
  cairo_destroy (cr);

  node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (0, 0, width, height));
  cr = gsk_cairo_node_get_draw_context (node);
  cairo_set_source_surface (cr, surface, 0, 0);
  /* Pixel for pixel: no smoothing is wanted, and none is paid for. */
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return node;
}

static GskRenderNode *
paint_tile (const LbScene *scene, gsize tile, const LbBox *bounds)
{
  GskRenderNode *node = gsk_cairo_node_new (
      &GRAPHENE_RECT_INIT (bounds->x, bounds->y, bounds->width, bounds->height));
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);

  lb_scene_paint_tile (scene, cr, tile);
  cairo_destroy (cr);
  return node;
}

static gboolean
same_box (const LbBox *a, const LbBox *b)
{
  return a->x == b->x && a->y == b->y && a->width == b->width && a->height == b->height;
}

/* Marks the place that already shows the tile. */
static gboolean
keep_slot (LbNodeCache *self, const LbBox *bounds, guint64 key)
{
  for (guint i = 0; i < self->slots->len; i++)
    {
      Slot *slot = &g_array_index (self->slots, Slot, i);

      if (slot->node && !slot->kept && slot->key == key && same_box (&slot->bounds, bounds))
        {
          slot->kept = TRUE;
          return TRUE;
        }
    }
  return FALSE;
}

static Slot *
free_slot (LbNodeCache *self)
{
  for (guint i = 0; i < self->slots->len; i++)
    {
      Slot *slot = &g_array_index (self->slots, Slot, i);

      if (!slot->node)
        return slot;
    }
  g_array_set_size (self->slots, self->slots->len + 1);
  return &g_array_index (self->slots, Slot, self->slots->len - 1);
}

/* Brings the places in line with the tiles of `scene`. */
static void
update_slots (LbNodeCache *self, const LbScene *scene)
{
  gsize n = lb_scene_n_tiles (scene);
  g_autofree gboolean *shown = g_new0 (gboolean, n);

  for (guint i = 0; i < self->slots->len; i++)
    g_array_index (self->slots, Slot, i).kept = FALSE;
  for (gsize t = 0; t < n; t++)
    {
      LbBox bounds = lb_scene_tile_bounds (scene, t);

      shown[t] = keep_slot (self, &bounds, lb_scene_tile_key (scene, t));
    }
  for (guint i = 0; i < self->slots->len; i++)
    if (!g_array_index (self->slots, Slot, i).kept)
      clear_slot (&g_array_index (self->slots, Slot, i));

  self->n_tiles = n;
  self->n_painted = 0;
  for (gsize t = 0; t < n; t++)
    if (!shown[t])
      {
        LbBox bounds = lb_scene_tile_bounds (scene, t);

        *free_slot (self) =
            (Slot){ bounds, lb_scene_tile_key (scene, t), paint_tile (scene, t, &bounds), TRUE };
        self->n_painted++;
      }
}

static void
append_slots (LbNodeCache *self, GtkSnapshot *snapshot)
{
  guint n = self->slots->len;
  g_autofree GskRenderNode **nodes = g_new (GskRenderNode *, n);
  GskRenderNode *container;

  if (n == 0)
    return;
  for (guint i = 0; i < n; i++)
    {
      Slot *slot = &g_array_index (self->slots, Slot, i);

      nodes[i] = slot->node ? slot->node : self->nothing;
    }
  container = gsk_container_node_new (nodes, n);
  gtk_snapshot_append_node (snapshot, container);
  gsk_render_node_unref (container);
}

void
lb_node_cache_snapshot (LbNodeCache *self,
                        GtkSnapshot *snapshot,
                        const LbScene *scene,
                        int width,
                        int height,
                        int scale_factor)
{
  guint64 key = lb_scene_background_key (scene);

  if (!self->background || key != self->background_key || width != self->width
      || height != self->height || scale_factor != self->scale_factor)
    {
      g_clear_pointer (&self->background, gsk_render_node_unref);
      self->background = paint_background (scene, width, height, scale_factor);
      self->background_key = key;
      self->width = width;
      self->height = height;
      self->scale_factor = scale_factor;
      self->n_backgrounds++;
    }
  gtk_snapshot_append_node (snapshot, self->background);
  update_slots (self, scene);
  append_slots (self, snapshot);
}

void
lb_node_cache_get_counts (LbNodeCache *self, gsize *painted, gsize *tiles)
{
  *painted = self->n_painted;
  *tiles = self->n_tiles;
}

guint
lb_node_cache_get_n_backgrounds (LbNodeCache *self)
{
  return self->n_backgrounds;
}
