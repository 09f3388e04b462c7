/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the side view says in words beside its things. */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "labels.h"

#define PI 3.14159265358979323846

/* Places in the label memory. The strip's come after the side view's. */
enum
{
  MEMORY_ANGLE,
  MEMORY_LINE_OUT,
  MEMORY_WEIGHT,
  MEMORY_HAND,
  MEMORY_LURES,
};

typedef struct
{
  double x, y;
} Point;

static Point
at_metres (const LbScene *scene, LbVec3 at)
{
  return (Point){ lb_view_x (&scene->view, at.x), lb_view_y (&scene->view, at.z) };
}

/* The point of the mainline at `fraction` of its nodes' length on the drawing. */
static Point
along_wire (const LbScene *scene, double fraction)
{
  size_t nodes[2048];
  size_t n = MIN (lb_shape_line (scene->shape, LB_PART_MAINLINE, nodes, 2048), 2048);
  double length = 0, gone = 0;
  Point a = at_metres (scene, scene->shape->nodes[0].position), b = a;

  for (int pass = 0; pass < 2; pass++)
    for (size_t i = 1; i < n; i++)
      {
        double piece;

        a = at_metres (scene, scene->shape->nodes[nodes[i - 1]].position);
        b = at_metres (scene, scene->shape->nodes[nodes[i]].position);
        piece = hypot (b.x - a.x, b.y - a.y);
        if (pass == 0)
          length += piece;
        else if ((gone += piece) >= fraction * length && piece > 0)
          {
            double t = 1 - (gone - fraction * length) / piece;

            return (Point){ a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
          }
      }
  return b;
}

void
lb_scene_along_wire (const LbScene *scene, double fraction, double *x, double *y)
{
  Point at = along_wire (scene, fraction);

  *x = at.x;
  *y = at.y;
}

/* The wire's angle as it is seen: smaller than it is where heights are stretched. */
static double
drawn_angle (const LbScene *scene)
{
  double angle = scene->readings.wire_angle;

  return atan2 (sin (angle) * scene->view.per_metre_x, cos (angle) * scene->view.per_metre_z);
}

/* The arc between the upright and the wire at the reel; returns where its label belongs. */
static Point
add_angle_arc (LbScene *scene)
{
  double s = scene->style.scale, angle = drawn_angle (scene);
  Point reel = at_metres (scene, scene->shape->nodes[0].position);
  double radius = fmin (58 * s, 0.62 * (lb_scene_bed_y (scene, reel.x) - reel.y));
  LbLook upright = {
    .stroke = LB_COLOUR_ANGLE,
    .width = 1.2 * s,
    .pattern = LB_LINE_DASHED,
  };
  LbLook arc = { .stroke = LB_COLOUR_ANGLE, .width = 2 * s };
  LbLook wedge = { .fill = LB_COLOUR_ANGLE, .opacity = 0.13 };

  lb_scene_begin (scene, LB_LAYER_FOREGROUND);
  lb_scene_add_arc (scene, reel.x, reel.y, radius, PI / 2, PI / 2 - angle);
  lb_scene_line_to (scene, reel.x, reel.y);
  lb_scene_close (scene);
  lb_scene_end (scene, wedge);
  lb_scene_line (scene, LB_LAYER_FOREGROUND, reel.x, reel.y, reel.x, reel.y + 1.25 * radius,
                 upright);
  lb_scene_note_line (scene, reel.x, reel.y, reel.x, reel.y + 1.25 * radius);
  if (angle > 0.01)
    {
      lb_scene_begin (scene, LB_LAYER_FOREGROUND);
      lb_scene_add_arc (scene, reel.x, reel.y, radius, PI / 2, PI / 2 - angle);
      lb_scene_end (scene, arc);
    }
  return (Point){ reel.x + radius * sin (0.8 * angle), reel.y + radius * cos (0.8 * angle) };
}

static LbLabel
angle_label (LbScene *scene)
{
  const LbPicture *picture = &scene->picture;
  Point at = add_angle_arc (scene);
  LbPhrase angle = lb_phrase_quantity (picture, LB_QUANTITY_ANGLE, scene->readings.wire_angle);

  return (LbLabel){
    .memory = MEMORY_ANGLE,
    .x = at.x,
    .y = at.y,
    .clear = 4 * scene->style.scale,
    .toward = -0.15,
    .title_font = LB_FONT_BIG,
    .accent = LB_COLOUR_ANGLE,
    .wordings = {
      { angle, lb_phrase_format ("%s", _("wire angle, from vertical")) },
      { angle, lb_phrase_format ("%s", _("wire angle")) },
      { angle },
    },
  };
}

static LbLabel
line_out_label (LbScene *scene)
{
  Point at = along_wire (scene, 0.58);
  LbPhrase length =
      lb_phrase_quantity (&scene->picture, LB_QUANTITY_LENGTH, scene->readings.line_out);

  return (LbLabel){
    .memory = MEMORY_LINE_OUT,
    .x = at.x,
    .y = at.y,
    .clear = 3 * scene->style.scale,
    .toward = -0.2,
    .title_font = LB_FONT_BIG,
    .accent = LB_COLOUR_WIRE,
    .wordings = {
      { length, lb_phrase_format ("%s", _("line out")) },
      { lb_phrase_format (_("%s out"), length.text) },
    },
  };
}

static LbLabel
weight_label (LbScene *scene)
{
  const LbPicture *picture = &scene->picture;
  const LbPointReading *weight = &scene->readings.weight;
  Point at = at_metres (scene, weight->position);
  LbPhrase mass = lb_phrase_quantity (picture, LB_QUANTITY_MASS, scene->setup.rig.weight.mass);
  LbPhrase height = lb_phrase_height (picture, weight->height, weight->on_bed);
  LbPhrase back = lb_phrase_quantity (picture, LB_QUANTITY_LENGTH, weight->layback);

  return (LbLabel){
    .memory = MEMORY_WEIGHT,
    .x = at.x,
    .y = at.y,
    .clear = 1.5 * scene->style.weight_radius_least,
    .toward = PI,
    .title_font = LB_FONT_STRONG,
    .accent = LB_COLOUR_WEIGHT,
    .wordings = {
      { lb_phrase_format (_("Weight %s"), mass.text),
        lb_phrase_format (_("%s, %s back"), height.text, back.text) },
      { lb_phrase_format (_("Weight %s"), mass.text), height },
      { lb_phrase_height_value (picture, weight->height) },
    },
  };
}

static LbLabel
hand_label (LbScene *scene)
{
  Point reel = at_metres (scene, scene->shape->nodes[0].position);
  LbPhrase force =
      lb_phrase_quantity (&scene->picture, LB_QUANTITY_FORCE, scene->readings.hand_tension);

  return (LbLabel){
    .memory = MEMORY_HAND,
    .x = reel.x,
    .y = lb_view_y (&scene->view, 0) - 0.6 * scene->view.per_metre_x,
    .clear = 8 * scene->style.scale,
    .toward = -0.5,
    .title_font = LB_FONT_STRONG,
    .wordings = { { lb_phrase_format (_ ("%s in the hand"), force.text) } },
  };
}

/* The lure's name, without its particulars when they would make the card wider than `detail`. */
static LbPhrase
lure_name (LbScene *scene, size_t i, const char *detail)
{
  LbPhrase name = lb_phrase_lure (&scene->picture, i);
  double room = lb_scene_text (scene, LB_FONT_PLAIN, detail).width;

  if (lb_scene_text (scene, LB_FONT_STRONG, name.text).width
      > fmax (1.1 * room, 210 * scene->style.scale))
    return lb_phrase_lure_short (&scene->picture, i);
  return name;
}

static LbLabel
lure_label (LbScene *scene, size_t i)
{
  const LbPicture *picture = &scene->picture;
  const LbPointReading *lure = &scene->readings.lures[i].at;
  Point at = at_metres (scene, lure->position);
  double length = scene->style.lure_length_least;
  LbPhrase height = lb_phrase_height (picture, lure->height, lure->on_bed);
  LbPhrase value = lb_phrase_height_value (picture, lure->height);
  LbPhrase back = lb_phrase_quantity (picture, LB_QUANTITY_LENGTH, lure->layback);
  LbPhrase plain = lb_phrase_lure_place (picture, i), sign = lb_phrase_lure_sign (picture, i);
  LbPhrase detail = lb_phrase_format (_ ("%s, %s back"), height.text, back.text);
  LbWording full = { lure_name (scene, i, detail.text), detail };
  LbWording less = { plain, height };
  LbWording least = { *sign.text ? lb_phrase_format ("%s: %s", sign.text,
                                                     lure->on_bed ? _ ("on the bed") : value.text)
                                 : height };
  /* With many lures the names would fill the water; the numbers say which is which. */
  bool is_crowded = scene->shape->n_leaders > LB_PHRASE_MOST_PLACES;
  LbLabel label = {
    .memory = MEMORY_LURES + (int) i,
    .x = at.x + 0.4 * length,
    .y = fmin (at.y, lb_scene_bed_y (scene, at.x) - 0.2 * length),
    .clear = 0.3 * length,
    .toward = -PI / 2,
    .title_font = LB_FONT_STRONG,
    .accent = LB_COLOUR_LURE_BACK,
  };

  label.wordings[0] = is_crowded ? less : full;
  label.wordings[1] = is_crowded ? least : less;
  if (!is_crowded)
    label.wordings[2] = least;
  return label;
}

void
lb_labels_place_side (LbScene *scene, const LbLabel *more, size_t n_more)
{
  LbLabel labels[LB_LABELS_MOST];
  size_t n = 0;

  if (!scene->solved)
    return;
  labels[n++] = angle_label (scene);
  labels[n++] = weight_label (scene);
  labels[n++] = line_out_label (scene);
  for (size_t i = 0; i < scene->shape->n_leaders; i++)
    labels[n++] = lure_label (scene, i);
  labels[n++] = hand_label (scene);
  for (size_t i = 0; i < n_more && n < LB_LABELS_MOST; i++)
    labels[n++] = more[i];
  lb_labels_place (scene, labels, n);
}

void
lb_scene_add_side_labels (LbScene *scene)
{
  lb_labels_place_side (scene, NULL, 0);
}
