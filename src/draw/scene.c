/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scene_build.h"

#include <math.h>
#include <string.h>

static char *
copy_if_any (const char *text)
{
  return text && *text ? g_strdup (text) : NULL;
}

/* Keeps all of the picture but the shape, which is large and needed while building only. */
static void
keep_picture (LbScene *scene, const LbPicture *picture)
{
  scene->picture = *picture;
  scene->setup = *picture->setup;
  scene->picture.setup = &scene->setup;
  scene->solved = lb_picture_is_solved (picture);
  if (scene->solved)
    scene->readings = *picture->readings;
  scene->picture.readings = scene->solved ? &scene->readings : NULL;
  scene->shape = scene->solved ? picture->shape : NULL;
  scene->picture.shape = NULL;
  if (!scene->picture.decimal)
    scene->picture.decimal = '.';

  scene->picture.title = scene->title = copy_if_any (picture->title);
  scene->picture.remark = scene->remark = copy_if_any (picture->remark);
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    scene->picture.lure_names[i] = scene->names[i] =
        i < scene->setup.rig.n_leaders ? copy_if_any (picture->lure_names[i]) : NULL;
}

LbScene *
lb_scene_new (LbSceneKind kind,
              LbDrawContext *context,
              const LbPicture *picture,
              const LbStyle *style,
              const LbView *view,
              double width,
              double height)
{
  LbScene *scene = g_new0 (LbScene, 1);

  scene->kind = kind;
  scene->run = -1;
  scene->boat_layer = LB_LAYER_BACKGROUND;
  scene->context = context;
  scene->style = *style;
  scene->view = *view;
  scene->width = width;
  scene->height = height;
  keep_picture (scene, picture);
  lb_current_init (&scene->current, &scene->setup.river);
  scene->ops = g_array_sized_new (FALSE, FALSE, sizeof (LbOp), 4096);
  scene->items = g_array_sized_new (FALSE, FALSE, sizeof (LbItem), 512);
  scene->tiles = g_array_new (FALSE, FALSE, sizeof (LbTile));
  scene->texts = g_array_sized_new (FALSE, FALSE, sizeof (LbBox), 64);
  scene->lines = g_array_sized_new (FALSE, FALSE, sizeof (LbBox), 256);
  lb_draw_context_begin (context);
  return scene;
}

LbScene *
lb_side_view_new (LbDrawContext *context,
                  const LbPicture *picture,
                  const LbStyle *style,
                  const LbView *view,
                  double width,
                  double height)
{
  LbScene *scene = lb_scene_new (LB_SCENE_SIDE_VIEW, context, picture, style, view, width, height);

  lb_scene_add_water (scene);
  lb_scene_add_side_scales (scene);
  lb_scene_add_boat (scene);
  lb_scene_add_current (scene);
  lb_scene_add_boat_speed (scene);
  lb_scene_add_rig (scene);
  lb_scene_add_remark (scene);
  lb_scene_add_side_labels (scene);
  lb_scene_add_handles (scene);
  lb_scene_finish (scene);
  scene->shape = NULL;
  return scene;
}

LbScene *
lb_bed_strip_new (LbDrawContext *context,
                  const LbPicture *picture,
                  const LbStyle *style,
                  const LbView *view,
                  double width,
                  double height)
{
  LbScene *scene = lb_scene_new (LB_SCENE_BED_STRIP, context, picture, style, view, width, height);

  lb_scene_add_strip_water (scene);
  lb_scene_add_strip_scales (scene);
  lb_scene_add_strip_rig (scene);
  if (!scene->solved)
    lb_scene_add_remark (scene);
  lb_scene_add_strip_labels (scene);
  lb_scene_add_handles (scene);
  lb_scene_finish (scene);
  scene->shape = NULL;
  return scene;
}

LbScene *
lb_title_ground_new (LbDrawContext *context,
                     const LbPicture *picture,
                     const LbStyle *style,
                     double width,
                     double height,
                     double title_height)
{
  LbView none = { 0 };
  LbScene *scene =
      lb_scene_new (LB_SCENE_TITLE_GROUND, context, picture, style, &none, width, height);
  LbText text = lb_draw_context_text (context, style, LB_FONT_TITLE,
                                      scene->title ? scene->title : "", -(width - 3 * style->pad));

  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, 0, width, height, 0);
  lb_scene_end (scene, (LbLook){ .fill = LB_COLOUR_BED_LINE });
  lb_scene_begin (scene, LB_LAYER_BACKGROUND);
  lb_scene_add_box (scene, 0, 0, width, title_height + 1, 0);
  lb_scene_end (scene, (LbLook){ .fill = LB_COLOUR_SKY_TOP });
  if (scene->title)
    lb_scene_put_text (scene, LB_LAYER_BACKGROUND, text, 1.5 * style->pad,
                       (title_height - text.height) / 2, LB_COLOUR_TEXT);
  lb_scene_finish (scene);
  scene->shape = NULL;
  return scene;
}

void
lb_scene_free (LbScene *scene)
{
  if (!scene)
    return;
  for (guint i = 0; i < scene->items->len; i++)
    g_clear_object (&g_array_index (scene->items, LbItem, i).layout);
  g_array_unref (scene->ops);
  g_array_unref (scene->items);
  g_array_unref (scene->tiles);
  g_array_unref (scene->texts);
  g_array_unref (scene->lines);
  g_free (scene->title);
  g_free (scene->remark);
  g_free (scene->words);
  g_free (scene->moment);
  for (size_t i = 0; i < LB_MAX_LEADERS; i++)
    g_free (scene->names[i]);
  g_free (scene);
}

guint64
lb_scene_background_key (const LbScene *scene)
{
  return scene->background_key;
}

size_t
lb_scene_n_tiles (const LbScene *scene)
{
  return scene->tiles->len;
}

LbBox
lb_scene_tile_bounds (const LbScene *scene, size_t tile)
{
  return g_array_index (scene->tiles, LbTile, tile).bounds;
}

guint64
lb_scene_tile_key (const LbScene *scene, size_t tile)
{
  return g_array_index (scene->tiles, LbTile, tile).key;
}
