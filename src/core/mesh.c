/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mesh.h"

#include <string.h>

#define PI 3.14159265358979323846

/* The bed carries the weight, or this many N if that is more, at a sinking of one softness. */
#define BED_GRIP 10

/* What the grading of the mesh takes a line's drag coefficient and the flow, m/s, to be: it must
 * not follow the sliders, or the mesh would slide along under the answer. */
#define COMMON_DRAG 1.1
#define COMMON_SPEED 1.4

/* The last segments of a line are not graded finer than this asks for. */
#define MOST_BENDS 400

/* Heights on the shank nearer than this, m, are one place. */
#define SAME_PLACE 1e-6

/* ---- How many segments each part gets ---- */

/* The places along the shank where something is joined, from the top down to the weight. */
static size_t
shank_places (const LbRig *rig, double *height)
{
  size_t n = 0;

  height[n++] = rig->shank_length;
  for (;;)
    {
      double next = -1;
      for (size_t i = 0; i < rig->n_leaders; i++)
        {
          double h = rig->leaders[i].attach_above_weight;
          if (h < height[n - 1] - SAME_PLACE && h > next)
            next = h;
        }
      if (next <= SAME_PLACE)
        break;
      height[n++] = next;
    }
  if (rig->shank_length > SAME_PLACE)
    height[n++] = 0;
  return n;
}

static size_t
at_least (double n, size_t least)
{
  return n > (double) least ? (size_t) (n + 0.5) : least;
}

static void
count_segments (
    LbMeshKey *key, const LbRig *rig, const LbMeshPlan *plan, size_t n_places, const double *height)
{
  double total = (double) plan->segments;
  double roots = 0;

  memset (key, 0, sizeof *key);
  key->refine = plan->refine;
  key->n_leaders = rig->n_leaders;
  key->n_pieces = n_places - 1;
  key->dry = lb_is_set (plan->waterline) ? plan->dry : 0;
  key->mainline = at_least ((rig->n_leaders > 0 ? 0.30 : 0.85) * total, 4);
  for (size_t i = 0; i + 1 < n_places; i++)
    key->piece[i] =
        at_least (0.12 * total * (height[i] - height[i + 1]) / fmax (rig->shank_length, 1e-9), 1);
  for (size_t i = 0; i < rig->n_leaders; i++)
    roots += sqrt (rig->leaders[i].length);
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      key->leader[i] = at_least (0.58 * total * sqrt (rig->leaders[i].length) / roots, 8);
      for (size_t k = 0; k < n_places; k++)
        if (fabs (height[k] - rig->leaders[i].attach_above_weight) <= SAME_PLACE)
          key->place[i] = k;
    }
}

static size_t
count_nodes (const LbMeshKey *key)
{
  size_t n = key->mainline + key->dry;

  for (size_t i = 0; i < key->n_pieces; i++)
    n += key->piece[i];
  for (size_t i = 0; i < key->n_leaders; i++)
    n += key->leader[i];
  return 1 + n * key->refine;
}

/* ---- Laying the nodes ---- */

/* Where the cut `k` of `n` lies along a piece, 0 at its top to 1. Segments grow geometrically from
 * the lower end, where the tension is least and the line bends most: it bends within a length of
 * tension / drag per length, of which the piece is `bends` times as long. */
static double
graded (size_t k, size_t n, double bends)
{
  double from_below = 1 - (double) k / (double) n;

  if (bends < 1e-3)
    return 1 - from_below;
  return 1 - expm1 (from_below * log1p (bends)) / bends;
}

/* Length, m, within which a line bends that pulls `tension` (N) at its lower end, at a common
 * speed. */
static double
bend_length (const LbLine *line, double tension)
{
  double cn = lb_is_set (line->normal_drag) ? line->normal_drag : COMMON_DRAG;
  double drag = 500 * line->diameter * line->strum * cn * COMMON_SPEED * COMMON_SPEED;

  return tension / fmax (drag, 1e-9);
}

static double
leader_bends (const LbLeader *leader)
{
  double drag = 500 * leader->lure.drag_area * COMMON_SPEED * COMMON_SPEED;
  double tension = hypot (drag, leader->lure.down_force_ratio * drag - leader->lure.buoyancy);

  return fmin (leader->length / bend_length (&leader->line, tension), MOST_BENDS);
}

/* Of the mainline, with the line out that is planned for, or given or, when it follows, a common
 * one. */
static double
mainline_bends (const LbSetup *setup, double graded_for)
{
  const LbRig *rig = &setup->rig;
  double length = lb_is_set (graded_for) ? graded_for
                  : rig->line_out.mode == LB_LINE_OUT_GIVEN
                      ? rig->line_out.value
                      : 1.5 * (setup->river.depth + setup->boat.reel_height);
  double tension = lb_weight_in_water (&rig->weight, 1000, setup->river.gravity);

  return fmin (length / bend_length (&rig->mainline, fmax (tension, 0.01)), MOST_BENDS);
}

typedef struct
{
  LbTree *tree;
  size_t refine;
  size_t next; /* node to be laid */
  int piece;
} Layer;

/* Lays a chain of n (times refine) segments below node `from` and returns its last node. */
static size_t
lay_piece (Layer *layer, size_t from, int part, size_t n)
{
  for (size_t k = 0; k < n * layer->refine; k++)
    {
      LbTreeNode *node = &layer->tree->nodes[layer->next];

      node->parent = (int) from;
      node->part = part;
      node->piece = layer->piece;
      node->body = -1;
      from = layer->next++;
    }
  layer->piece++;
  return from;
}

static void
lay_nodes (LbTree *tree)
{
  const LbMeshKey *key = &tree->key;
  Layer layer = { tree, key->refine, 1, 0 };
  size_t place[LB_MAX_LEADERS + 2] = { 0 };

  tree->nodes[0].body = -1;
  if (key->dry > 0)
    place[0] = lay_piece (&layer, 0, LB_PART_MAINLINE, key->dry);
  place[0] = lay_piece (&layer, place[0], LB_PART_MAINLINE, key->mainline);
  for (size_t i = 0; i < key->n_pieces; i++)
    place[i + 1] = lay_piece (&layer, place[i], LB_PART_SHANK, key->piece[i]);
  tree->shank_top = place[0];
  tree->weight = place[key->n_pieces];
  tree->nodes[tree->weight].body = 0;
  tree->n_leaders = key->n_leaders;
  for (size_t i = 0; i < key->n_leaders; i++)
    {
      tree->attachment[i] = place[key->place[i]];
      tree->lure[i] =
          lay_piece (&layer, tree->attachment[i], LB_PART_LEADER_0 + (int) i, key->leader[i]);
      tree->nodes[tree->lure[i]].body = 1 + (int) i;
    }
}

/* Cuts the piece whose nodes start at `first` into `n` (times refine) segments. */
static void
grade_piece (LbTree *tree, int piece, size_t first, size_t n, double bends)
{
  size_t refine = tree->key.refine;

  if (tree->bends[piece] == bends)
    return;
  tree->bends[piece] = bends;
  for (size_t cell = 0; cell < n; cell++)
    for (size_t k = 0; k < refine; k++)
      tree->nodes[first + cell * refine + k].share =
          (graded (cell + 1, n, bends) - graded (cell, n, bends)) / (double) refine;
}

static void
grade_pieces (LbTree *tree, const LbSetup *setup, double graded_for)
{
  const LbMeshKey *key = &tree->key;
  size_t first = 1;
  int piece = 0;

  if (key->dry > 0)
    {
      grade_piece (tree, piece++, first, key->dry, 0);
      first += key->dry * key->refine;
    }
  grade_piece (tree, piece++, first, key->mainline, mainline_bends (setup, graded_for));
  first += key->mainline * key->refine;
  for (size_t i = 0; i < key->n_pieces; i++)
    {
      grade_piece (tree, piece++, first, key->piece[i], 0);
      first += key->piece[i] * key->refine;
    }
  for (size_t i = 0; i < key->n_leaders; i++)
    {
      grade_piece (tree, piece++, first, key->leader[i], leader_bends (&setup->rig.leaders[i]));
      first += key->leader[i] * key->refine;
    }
}

/* Gives every segment its share of its piece's length, in the order in which the pieces are laid.
 */
static void
cut_lengths (LbTree *tree, const LbRig *rig, const LbMeshPlan *plan, const double *height)
{
  const LbMeshKey *key = &tree->key;
  double length[LB_MAX_PIECES], rate[LB_MAX_PIECES] = { 0 };
  size_t n = 0;

  if (key->dry > 0)
    length[n++] = plan->waterline;
  rate[n] = 1;
  length[n++] = key->dry > 0 ? -plan->waterline : 0;
  for (size_t i = 0; i < key->n_pieces; i++)
    length[n++] = height[i] - height[i + 1];
  for (size_t i = 0; i < key->n_leaders; i++)
    length[n++] = rig->leaders[i].length;
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      LbTreeNode *node = &tree->nodes[i];

      node->rest = node->share * length[node->piece];
      node->rest_rate = node->share * rate[node->piece];
    }
}

/* ---- Values ---- */

static LbTreeLine
load_line (const LbLine *line, const LbWater *water, double gravity)
{
  double area = PI / 4 * line->diameter * line->diameter;

  return (LbTreeLine){
    .weight_in_air = line->density * gravity * area,
    .buoyancy = water->density * gravity * area,
    .stiffness = line->axial_stiffness,
    .normal_scale = 0.5 * water->density * line->diameter * line->strum,
    .normal_drag = line->normal_drag,
    .tangential = 0.5 * water->density * PI * line->diameter * line->tangential_drag,
    .reynolds_per_speed = line->diameter / water->kinematic_viscosity,
  };
}

static LbTreeBody
load_weight (const LbWeight *weight, const LbWater *water, double gravity)
{
  double area = lb_weight_frontal_area (weight);
  double diameter = sqrt (4 / PI * area);

  return (LbTreeBody){
    .kind = LB_BODY_WEIGHT,
    .weight_in_air = weight->mass * gravity,
    .buoyancy = weight->mass / weight->density * water->density * gravity,
    .half_height = 0.5 * diameter,
    .drag_scale = 0.5 * water->density * area,
    .drag_coefficient = weight->drag_coefficient,
    .reynolds_per_speed = diameter / water->kinematic_viscosity,
    .shape = weight->shape,
  };
}

static LbTreeBody
load_lure (const LbLure *lure, const LbWater *water, double gravity)
{
  return (LbTreeBody){
    .kind = LB_BODY_LURE,
    .weight_in_air = lure->mass * gravity,
    .buoyancy = lure->mass * gravity + lure->buoyancy,
    .half_height = fmax (0.2 * lure->length, 0.01),
    .drag_scale = 0.5 * water->density * lure->drag_area,
    .drag_coefficient = 1,
    .down_force_ratio = lure->down_force_ratio,
  };
}

static void
load_values (LbTree *tree, const LbSetup *setup)
{
  const LbRig *rig = &setup->rig;
  const LbRiver *river = &setup->river;
  LbWater water = lb_water_at (river->temperature, river->density, river->kinematic_viscosity);

  lb_current_init (&tree->current, river);
  tree->highest_bed = -lb_bed_shallowest (&tree->current.bed);
  tree->boat_speed = setup->boat.speed_over_ground;
  tree->bed_friction = river->bed_friction;
  tree->bed_softness = LB_TREE_BED_SOFTNESS;
  tree->bed_grip = fmax (BED_GRIP, rig->weight.mass * river->gravity);
  tree->n_lines = rig->n_leaders + 2;
  tree->lines[LB_PART_MAINLINE] = load_line (&rig->mainline, &water, river->gravity);
  tree->lines[LB_PART_SHANK] = load_line (&rig->shank, &water, river->gravity);
  tree->n_bodies = rig->n_leaders + 1;
  tree->bodies[0] = load_weight (&rig->weight, &water, river->gravity);
  for (size_t i = 0; i < rig->n_leaders; i++)
    {
      tree->lines[LB_PART_LEADER_0 + i] = load_line (&rig->leaders[i].line, &water, river->gravity);
      tree->bodies[1 + i] = load_lure (&rig->leaders[i].lure, &water, river->gravity);
    }
  tree->nodes[0].position = lb_vec3 (setup->boat.position, 0, setup->boat.reel_height);
}

/* What each node weighs against in pseudo-time. */
static void
load_nodes (LbTree *tree)
{
  for (size_t i = 0; i < tree->n_nodes; i++)
    tree->nodes[i].settling = tree->nodes[i].body == 0 ? 1 : 0.05;
  for (size_t i = 1; i < tree->n_nodes; i++)
    {
      double half = 0.5 * fmin (lb_tree_rest (tree, i), 1);
      tree->nodes[i].settling += half;
      tree->nodes[tree->nodes[i].parent].settling += half;
    }
}

LbStatus
lb_mesh_build (LbTree *tree, const LbSetup *setup, const LbMeshPlan *plan, bool *kept)
{
  double height[LB_MAX_LEADERS + 2];
  size_t n_places = shank_places (&setup->rig, height);
  LbMeshKey key;

  count_segments (&key, &setup->rig, plan, n_places, height);
  *kept = tree->n_nodes > 0 && memcmp (&key, &tree->key, sizeof key) == 0;
  if (!*kept)
    {
      LbStatus status = lb_tree_resize (tree, count_nodes (&key));
      if (status != LB_STATUS_OK)
        return status;
      tree->key = key;
      lay_nodes (tree);
      for (size_t i = 0; i < LB_MAX_PIECES; i++)
        tree->bends[i] = -1;
    }
  grade_pieces (tree, setup, plan->graded_for);
  cut_lengths (tree, &setup->rig, plan, height);
  load_values (tree, setup);
  load_nodes (tree);
  return LB_STATUS_OK;
}
