/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "handles.h"

#include <math.h>

#include "scene_build.h"

#define HOVER_GLOW 5.0 /* style units, of both sides together */
#define SELECTED_GLOW 8.0
#define THINNER 0.65 /* of lines, which have two long sides to glow */
#define MARK 10.0
#define DOT 4.0
/* Points of the bed nearer than this to one another are not all shown. */
#define DOT_SPACING 14.0

/* ---- Parts in the scene ---- */

static bool
is_of (const LbItem *item, LbPickKind kind, int index)
{
  return item->n_ops > 0 && item->pick == kind && item->index == index;
}

/* What is drawn with a pen shows the outline of a part; fills without one are its particulars. */
static bool
is_outline (const LbItem *item)
{
  return item->look.stroke && item->look.width > 0;
}

static LbBox
united (LbBox a, LbBox b)
{
  double x = fmin (a.x, b.x), y = fmin (a.y, b.y);

  return (LbBox){ x, y, fmax (a.x + a.width, b.x + b.width) - x,
                  fmax (a.y + a.height, b.y + b.height) - y };
}

/* The box round the outlines of a part. */
static bool
part_box (const LbScene *scene, LbPickKind kind, int index, LbBox *box)
{
  bool any = false;

  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (!is_of (item, kind, index) || !(is_outline (item) || kind == LB_PICK_BED_POINT))
        continue;
      *box = any ? united (*box, item->bounds) : item->bounds;
      any = true;
    }
  return any;
}

/* The middle of a line, on the line. */
static bool
middle_of_line (const LbScene *scene, LbPickKind kind, int index, double *x, double *y)
{
  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);
      const LbOp *a, *b;

      if (!is_of (item, kind, index) || !is_outline (item) || item->look.fill || item->n_ops < 2)
        continue;
      a = &g_array_index (scene->ops, LbOp, item->first_op + (item->n_ops - 1) / 2);
      b = &g_array_index (scene->ops, LbOp, item->first_op + item->n_ops / 2);
      *x = (a->x[0] + b->x[0]) / 2;
      *y = (a->y[0] + b->y[0]) / 2;
      return true;
    }
  return false;
}

bool
lb_scene_part_place (const LbScene *scene, LbPickKind kind, int index, double *x, double *y)
{
  LbBox box;

  if (kind == LB_PICK_NOTHING)
    return false;
  if (middle_of_line (scene, kind, index, x, y))
    return true;
  if (!part_box (scene, kind, index, &box))
    return false;
  *x = box.x + box.width / 2;
  *y = box.y + box.height / 2;
  return true;
}

double
lb_scene_per_metre_up (const LbScene *scene)
{
  if (scene->kind == LB_SCENE_BED_STRIP)
    return (scene->strip_floor - scene->strip_top) / scene->strip_high;
  return scene->view.per_metre_z;
}

double
lb_scene_bed_line (const LbScene *scene, double x)
{
  return scene->kind == LB_SCENE_BED_STRIP ? scene->strip_floor : lb_scene_bed_y (scene, x);
}

/* ---- The glow ---- */

/* Where in the scene a glow belongs: right under the part, over the background. */
static guint
place_under (const LbScene *scene, LbPickKind kind, int index)
{
  guint front = scene->items->len;

  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (item->layer != LB_LAYER_FOREGROUND)
        continue;
      if (is_of (item, kind, index))
        return i;
      front = MIN (front, i);
    }
  return front;
}

/* The same path as `item`, wider and under it. */
static LbItem
glow_of (const LbScene *scene, const LbItem *item, double extra, double opacity)
{
  LbItem glow = *item;

  glow.layer = LB_LAYER_FOREGROUND;
  glow.pick = LB_PICK_NOTHING;
  glow.look = (LbLook){
    .stroke = LB_COLOUR_HANDLE,
    .width = item->look.width + (item->look.fill ? 1 : THINNER) * extra * scene->style.scale,
    .opacity = opacity,
  };
  glow.bounds = lb_box_grown (item->bounds, (glow.look.width - item->look.width) / 2 + 1);
  glow.key = item->key * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) + (guint64) (100 * opacity);
  return glow;
}

static void
add_glow (LbScene *scene, LbPickKind kind, int index, double extra, double opacity)
{
  GArray *glows = g_array_new (FALSE, FALSE, sizeof (LbItem));

  for (guint i = 0; i < scene->items->len; i++)
    {
      const LbItem *item = &g_array_index (scene->items, LbItem, i);

      if (is_of (item, kind, index) && is_outline (item))
        {
          LbItem glow = glow_of (scene, item, extra, opacity);

          g_array_append_val (glows, glow);
        }
    }
  if (glows->len > 0)
    g_array_insert_vals (scene->items, place_under (scene, kind, index), glows->data, glows->len);
  g_array_unref (glows);
}

/* ---- Marks ---- */

static void
add_mark (LbScene *scene, LbBox box, double angle)
{
  double s = scene->style.scale, c = cos (angle), d = sin (angle);
  double reach = fabs (c) * box.width / 2 + fabs (d) * box.height / 2 + (3 + MARK) * s;
  LbLook look = {
    .fill = LB_COLOUR_HANDLE,
    .stroke = LB_COLOUR_HANDLE_EDGE,
    .width = 1.2 * s,
  };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_arrow_head (scene, box.x + box.width / 2 + reach * c,
                           box.y + box.height / 2 + reach * d, angle, MARK * s);
  lb_scene_end (scene, look);
}

/* The direction from one node of the shape to another, on the drawing. */
static double
direction (const LbScene *scene, size_t from, size_t to)
{
  LbVec3 a = scene->shape->nodes[from].position, b = scene->shape->nodes[to].position;

  return atan2 ((a.z - b.z) * lb_scene_per_metre_up (scene), (b.x - a.x) * scene->view.per_metre_x);
}

/* Along which line the part can be pulled; unset: it has no marks. */
static double
pull_direction (const LbScene *scene, LbPickKind kind, int index)
{
  switch (kind)
    {
    case LB_PICK_WEIGHT:
    case LB_PICK_REEL:
      return -G_PI / 2;
    case LB_PICK_ATTACHMENT:
      if (!scene->shape || (size_t) index >= scene->shape->n_leaders)
        return LB_UNSET;
      return direction (scene, scene->shape->weight, scene->shape->shank_top);
    case LB_PICK_LURE:
      if (!scene->shape || (size_t) index >= scene->shape->n_leaders)
        return LB_UNSET;
      return direction (scene, scene->shape->attachment[index], scene->shape->lure[index]);
    case LB_PICK_BED_POINT:
      return -G_PI / 2;
    default:
      return LB_UNSET;
    }
}

static void
add_marks (LbScene *scene, LbPickKind kind, int index)
{
  double angle = pull_direction (scene, kind, index);
  LbBox box;

  if (!lb_is_set (angle) || !part_box (scene, kind, index, &box))
    return;
  if (kind == LB_PICK_BED_POINT)
    box = lb_box_grown (box, DOT * scene->style.scale);
  add_mark (scene, box, angle);
  add_mark (scene, box, angle + G_PI);
  if (kind != LB_PICK_BED_POINT)
    return;
  add_mark (scene, box, 0);
  add_mark (scene, box, G_PI);
}

/* ---- Points of the bed ---- */

static bool
bed_point_at (const LbScene *scene, size_t i, double *x, double *y)
{
  *x = lb_view_x (&scene->view, scene->setup.river.bed_x[i]);
  *y = lb_view_y (&scene->view, -scene->setup.river.bed_depth[i]);
  return *x >= 0 && *x <= scene->width;
}

void
lb_scene_add_bed_points (LbScene *scene)
{
  double x, y;

  for (size_t i = 0; i < scene->setup.river.n_bed_points; i++)
    if (bed_point_at (scene, i, &x, &y))
      {
        lb_scene_begin (scene, LB_LAYER_BACKGROUND);
        lb_scene_move_to (scene, x, y);
        lb_scene_line_to (scene, x, y);
        lb_scene_end_pickable (scene, (LbLook){ 0 }, LB_PICK_BED_POINT, (int) i);
      }
}

static void
add_dot (LbScene *scene, double x, double y, bool is_chosen)
{
  double s = scene->style.scale;
  LbLook look = {
    .fill = is_chosen ? LB_COLOUR_HANDLE : LB_COLOUR_HANDLE_EDGE,
    .stroke = is_chosen ? LB_COLOUR_HANDLE_EDGE : LB_COLOUR_HANDLE,
    .width = 1.6 * s,
  };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_ellipse (scene, x, y, (is_chosen ? 1.3 : 1) * DOT * s,
                        (is_chosen ? 1.3 : 1) * DOT * s);
  lb_scene_end (scene, look);
}

static bool
is_about_bed (LbPickKind kind)
{
  return kind == LB_PICK_BED || kind == LB_PICK_BED_POINT;
}

static void
add_dots (LbScene *scene, const LbHandles *handles)
{
  double last = -INFINITY, x, y;

  if (scene->kind != LB_SCENE_SIDE_VIEW
      || !(is_about_bed (handles->hover) || is_about_bed (handles->selected)))
    return;
  for (size_t i = 0; i < scene->setup.river.n_bed_points; i++)
    {
      bool is_chosen =
          (handles->hover == LB_PICK_BED_POINT && handles->hover_index == (int) i)
          || (handles->selected == LB_PICK_BED_POINT && handles->selected_index == (int) i);

      if (!bed_point_at (scene, i, &x, &y)
          || (!is_chosen && x - last < DOT_SPACING * scene->style.scale))
        continue;
      add_dot (scene, x, y, is_chosen);
      last = x;
    }
}

/* ---- The value being set ---- */

static double
covered (const LbScene *scene, LbBox box)
{
  double area = 0;

  for (guint i = 0; i < scene->texts->len; i++)
    {
      LbBox text = g_array_index (scene->texts, LbBox, i);
      double width = fmin (box.x + box.width, text.x + text.width) - fmax (box.x, text.x);
      double height = fmin (box.y + box.height, text.y + text.height) - fmax (box.y, text.y);

      if (width > 0 && height > 0)
        area += width * height;
    }
  return area;
}

/* Up to the right of (x, y), as long as it is in the picture; with `choose`, whichever corner
 * covers least. A card that follows the pointer must not leap about. */
static LbBox
card_box (const LbScene *scene, double x, double y, double width, double height, bool choose)
{
  double s = scene->style.scale, least = INFINITY;
  LbBox best = { 0 };

  for (int corner = 0; corner < 4; corner++)
    {
      double left = corner % 2 ? x - 18 * s - width : x + 18 * s;
      double top = corner / 2 ? y + 18 * s : y - height - 14 * s;
      LbBox box = { fmax (2, fmin (left, scene->width - 2 - width)),
                    fmax (2, fmin (top, scene->height - 2 - height)), width, height };
      double cost = 1e6 * (fabs (box.x - left) + fabs (box.y - top));

      if (choose)
        cost += covered (scene, box);
      if (cost >= least)
        continue;
      least = cost;
      best = box;
    }
  return best;
}

static void
add_words (LbScene *scene, const LbHandles *handles)
{
  double x = handles->x, y = handles->y, pad = scene->style.pad;
  bool at_part = !lb_is_set (x);
  LbText text = lb_scene_text (scene, LB_FONT_STRONG, handles->words);
  LbLook look = {
    .fill = LB_COLOUR_CARD,
    .stroke = LB_COLOUR_HANDLE,
    .width = 1.6 * scene->style.scale,
  };
  LbBox card;

  if (at_part && !lb_scene_part_place (scene, handles->selected, handles->selected_index, &x, &y))
    return;
  card = card_box (scene, x, y, text.width + 2 * pad, text.height + pad, at_part);
  for (int i = 0; i < 2; i++) /* twice: what is under it must not show through */
    {
      lb_scene_begin (scene, LB_LAYER_FOREGROUND);
      lb_scene_add_box (scene, card.x, card.y, card.width, card.height, 4 * scene->style.scale);
      lb_scene_end (scene, look);
    }
  lb_scene_put_text (scene, LB_LAYER_FOREGROUND, text, card.x + pad, card.y + pad / 2,
                     LB_COLOUR_TEXT);
}

void
lb_scene_add_handles (LbScene *scene)
{
  const LbHandles *handles = scene->picture.handles;
  bool is_selected = handles && handles->hover == handles->selected
                     && handles->hover_index == handles->selected_index;

  /* It need not live longer than the building of the scene. */
  scene->picture.handles = NULL;
  if (!handles)
    return;
  if (handles->selected != LB_PICK_NOTHING)
    add_glow (scene, handles->selected, handles->selected_index, SELECTED_GLOW, 0.75);
  /* The surface is everywhere: a glow at each passing of it would be restless. */
  if (handles->hover != LB_PICK_NOTHING && handles->hover != LB_PICK_SURFACE && !is_selected)
    add_glow (scene, handles->hover, handles->hover_index, HOVER_GLOW, 0.45);
  add_dots (scene, handles);
  if (handles->selected_pulls)
    add_marks (scene, handles->selected, handles->selected_index);
  if (handles->hover_pulls && !is_selected)
    add_marks (scene, handles->hover, handles->hover_index);
  if (handles->words && *handles->words)
    add_words (scene, handles);
}
