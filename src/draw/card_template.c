/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Each sheet shows a length of the shank between two rules, in inches and in centimetres, and goes
 * on a little past the line where the next is laid on it. Squares of known size tell whether the
 * printer kept to the scale. */
#include "card_template.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_spread.h"

#define PER_METRE (72 / 0.0254)
#define INCH 72.0
#define CM (72 / 2.54)
#define OVERLAP 36.0 /* points past the line where the next sheet begins */
#define MOST_SHEETS 200
#define BROAD 330.0 /* points of room across from which the squares stand beside the shank */
#define LEAST_ACROSS 150.0
#define LEAST_ALONG 100.0

typedef struct
{
  LbCardPen *pen;
  double width, height; /* of a sheet */
  LbBox room;           /* within its frame */
  double body;
  bool broad;
  double words;   /* height of the heading and the words under it */
  double squares; /* height of the squares with their words */
  double length;  /* points, of the shank */
} Plan;

/* One sheet: what it shows of the shank, in points from the weight. */
typedef struct
{
  const Plan *plan;
  LbScene *scene;
  int number, n;
  double from, joint, to; /* the next sheet starts at `joint` */
  double low;             /* y of `from` */
  double x;               /* of the shank */
  double room;            /* for the words beside it */
  size_t n_across;        /* lines across the rules, points from the weight */
  double across[LB_MAX_LEADERS + 4];
} Sheet;

/* ---- Planning ---- */

static const char *
instructions (void)
{
  return _ (
      "Print at 100 %, not fitted to the page. Measure the squares: if they are not as large as "
      "they say, this is not the true size. Lay each sheet on the last, line on line.");
}

static Plan
make_plan (LbCardPen *pen, double width, double height)
{
  Plan plan = { pen, fmin (width, height), fmax (width, height) };

  plan.room = lb_card_page_room (pen, plan.width, plan.height, false);
  plan.body = lb_card_pen_body (pen);
  plan.broad = plan.room.width >= BROAD;
  plan.words = lb_card_pen_heading_height (pen, _ ("Shank, true size"), plan.room.width)
               + lb_card_pen_text (pen, LB_FONT_SCALE, instructions (), plan.room.width).height
               + plan.body;
  plan.squares = INCH + 2 * plan.body;
  plan.length = pen->contents->rig.shank.length * PER_METRE;
  return plan;
}

/* The squares take room of the first sheet where they do not stand beside the shank. */
static double
room_along (const Plan *plan, int number)
{
  double room = plan->room.height - plan->words - 1.6 * plan->body;

  return room - (number == 0 && !plan->broad ? plan->squares : 0);
}

static int
count_sheets (const Plan *plan)
{
  double reached = 0;
  int n = 0;

  for (; n < MOST_SHEETS; n++)
    {
      double along = room_along (plan, n);

      if (reached + along >= plan->length)
        return n + 1;
      reached += along - OVERLAP;
    }
  return n;
}

/* ---- Drawing ---- */

static double
y_of (const Sheet *sheet, double along)
{
  return sheet->low - (along - sheet->from);
}

static void
write_at (const Sheet *sheet, LbFont font, const char *text, double x, double y, double align)
{
  LbText shaped = lb_card_pen_text (sheet->plan->pen, font, text, 1e4);

  lb_scene_put_text (sheet->scene, LB_LAYER_FOREGROUND, shaped, x - align * shaped.width,
                     y - shaped.height / 2, LB_COLOUR_TEXT);
}

/* Whether a number has its place to itself, clear of the ends and of what goes across. */
static bool
is_clear (const Sheet *sheet, double along)
{
  double clear = 0.85 * sheet->plan->body;

  for (size_t i = 0; i < sheet->n_across; i++)
    if (fabs (sheet->across[i] - along) < clear)
      return false;
  return along - sheet->from > clear && sheet->to - along > clear;
}

/* One rule beside the shank, `step` points between ticks, `major` of them to a number; to the left
 * for side -1. */
static void
add_rule (const Sheet *sheet, double step, int middle, int major, int per_number, int side)
{
  double b = sheet->plan->body;
  int first = (int) ceil (sheet->from / step - 1e-9);
  int last = (int) floor (fmin (sheet->to, sheet->plan->length) / step + 1e-9);

  for (int i = first; i <= last; i++)
    {
      double y = y_of (sheet, i * step);
      double length = i % major == 0 ? 1.1 : i % middle == 0 ? 0.75 : 0.4;
      double from = sheet->x + side * 3, to = from + side * length * b;

      lb_card_pen_rule (sheet->plan->pen, from, y, to, y, i % major == 0 ? 0.6 : 0.35);
      if (i % major == 0 && is_clear (sheet, i * step))
        {
          LbPhrase number = lb_phrase_format ("%d", i / major * per_number);

          write_at (sheet, LB_FONT_SCALE, number.text, to + side * 2, y, side < 0 ? 1 : 0);
        }
    }
}

/* The line where two sheets meet; both have it, and the same letter. */
static void
add_joint (const Sheet *sheet, double along, int joint, bool at_top)
{
  const Plan *plan = sheet->plan;
  double y = y_of (sheet, along), left = plan->room.x, right = left + plan->room.width;
  LbLook look = { .stroke = LB_COLOUR_TEXT, .width = 0.6, .pattern = LB_LINE_DASHED };
  LbPhrase name = at_top ? lb_phrase_format (_ ("Lay sheet %d on here"), joint + 2)
                         : lb_phrase_format (_ ("Onto sheet %d"), joint + 1);
  LbText text = lb_card_pen_text (plan->pen, LB_FONT_SCALE, name.text, 1e4);

  lb_scene_line (sheet->scene, LB_LAYER_FOREGROUND, left, y, right, y, look);
  for (int side = 0; side < 2; side++)
    {
      double x = side ? right - 4 : left + 4;

      lb_scene_begin (sheet->scene, LB_LAYER_FOREGROUND);
      lb_scene_move_to (sheet->scene, x - 4, y);
      lb_scene_line_to (sheet->scene, x, y - 4);
      lb_scene_line_to (sheet->scene, x + 4, y);
      lb_scene_line_to (sheet->scene, x, y + 4);
      lb_scene_close (sheet->scene);
      lb_scene_end (sheet->scene, (LbLook){ .fill = LB_COLOUR_TEXT });
    }
  lb_scene_put_text (sheet->scene, LB_LAYER_FOREGROUND, text, right - 10 - text.width,
                     at_top ? y - 2 - text.height : y + 2, LB_COLOUR_TEXT);
}

static void
note_across (Sheet *sheet)
{
  const LbCardRig *rig = &sheet->plan->pen->contents->rig;

  sheet->across[sheet->n_across++] = 0;
  sheet->across[sheet->n_across++] = sheet->plan->length;
  sheet->across[sheet->n_across++] = sheet->joint;
  for (size_t i = 0; i < rig->n_leaders; i++)
    sheet->across[sheet->n_across++] = rig->leaders[i].attachment * PER_METRE;
}

static void
add_shank (const Sheet *sheet)
{
  const Plan *plan = sheet->plan;
  double to = fmin (sheet->to, plan->length);

  lb_scene_line (sheet->scene, LB_LAYER_FOREGROUND, sheet->x, y_of (sheet, sheet->from), sheet->x,
                 y_of (sheet, to), (LbLook){ .stroke = LB_COLOUR_SHANK, .width = 1.2 });
  add_rule (sheet, INCH / 8, 4, 8, 1, -1);
  add_rule (sheet, CM / 10, 5, 10, 1, 1);
  if (sheet->number > 0)
    add_joint (sheet, sheet->from, sheet->number - 1, false);
  if (sheet->number + 1 < sheet->n)
    add_joint (sheet, sheet->joint, sheet->number, true);
}

/* What is to be marked on the shank: its ends and the attachments. */
typedef struct
{
  size_t n;
  double along[LB_MAX_LEADERS + 2];
  LbText words[LB_MAX_LEADERS + 2];
  LbCardSpan spans[LB_MAX_LEADERS + 2];
} Marks;

static void
note_mark (const Sheet *sheet, Marks *marks, double along, const char *words)
{
  LbText text;

  if (along < sheet->from - 1e-6 || along > sheet->to + 1e-6)
    return;
  text = lb_card_pen_text (sheet->plan->pen, LB_FONT_STRONG, words, sheet->room);
  marks->along[marks->n] = along;
  marks->words[marks->n] = text;
  marks->spans[marks->n++] = (LbCardSpan){ .wanted = y_of (sheet, along),
                                           .above = 0.5 * text.height,
                                           .below = 0.5 * text.height };
}

/* From the top down, as they are spread. */
static Marks
collect_marks (const Sheet *sheet)
{
  const LbCardRig *rig = &sheet->plan->pen->contents->rig;
  Marks marks = { 0 };

  note_mark (sheet, &marks, sheet->plan->length, _ ("Top of the shank"));
  for (size_t i = rig->n_leaders; i-- > 0;)
    {
      const LbCardLeader *leader = &rig->leaders[i];
      g_autofree char *words =
          g_strdup_printf ("%s: %s", leader->line.name, leader->attachment_words);

      note_mark (sheet, &marks, leader->attachment * PER_METRE, words);
    }
  note_mark (sheet, &marks, 0, _ ("Weight"));
  return marks;
}

static void
add_marks (const Sheet *sheet)
{
  const Plan *plan = sheet->plan;
  Marks marks = collect_marks (sheet);
  double b = plan->body, out = sheet->x + 4.2 * b, words = out + 1.6 * b;
  double top = y_of (sheet, sheet->to), low = sheet->low;

  /* Clear of the words at the joints. */
  top = sheet->number + 1 < sheet->n ? y_of (sheet, sheet->joint) + 2 : top - 0.7 * b;
  low -= sheet->number > 0 ? 2 : -0.7 * b;
  lb_card_spans_spread (marks.spans, marks.n, top, low);
  for (size_t i = 0; i < marks.n; i++)
    {
      double y = y_of (sheet, marks.along[i]);

      lb_card_pen_rule (plan->pen, sheet->x - 1.6 * b, y, out, y, 1.0);
      lb_card_pen_rule (plan->pen, out, y, words - 2, marks.spans[i].y, 0.5);
      lb_scene_put_text (sheet->scene, LB_LAYER_FOREGROUND, marks.words[i], words,
                         marks.spans[i].y - marks.words[i].height / 2, LB_COLOUR_TEXT);
    }
}

/* A square of `side` points with its lower right corner at (right, low), its size under it. */
static void
add_square (const Sheet *sheet, double side, const char *words, double right, double low)
{
  lb_scene_begin (sheet->scene, LB_LAYER_FOREGROUND);
  lb_scene_add_box (sheet->scene, right - side, low - side, side, side, 0);
  lb_scene_end (sheet->scene, (LbLook){ .stroke = LB_COLOUR_TEXT, .width = 0.5 });
  write_at (sheet, LB_FONT_SCALE, words, right - side / 2, low + 0.8 * sheet->plan->body, 0.5);
}

static void
add_squares (const Sheet *sheet, double top)
{
  const Plan *plan = sheet->plan;
  double right = plan->room.x + plan->room.width - 2, low = top + INCH + 1;

  if (!plan->broad && sheet->number > 0)
    return;
  if (plan->broad) /* over one another at the edge, so that the shank has its words beside it */
    {
      add_square (sheet, INCH, _ ("1 in"), right, low);
      add_square (sheet, 2 * CM, _ ("2 cm"), right, low + 2 * CM + 2.4 * plan->body);
      return;
    }
  add_square (sheet, INCH, _ ("1 in"), plan->room.x + 2 + INCH, low);
  add_square (sheet, 2 * CM, _ ("2 cm"), plan->room.x + 2 + INCH + 2 * plan->body + 2 * CM, low);
}

static void
draw_sheet (const Plan *plan, int number, int n, double from)
{
  LbCardPen *pen = plan->pen;
  double along = room_along (plan, number), top;
  Sheet sheet = { plan, pen->page->scene, number, n, from, from + along - OVERLAP, from + along };
  LbBox room = plan->room;

  lb_card_page_add_frame (pen, number, n, false);
  top = room.y + lb_card_pen_put_heading (pen, _ ("Shank, true size"), room);
  lb_card_pen_put (pen, LB_FONT_SCALE, instructions (), room.x, top, room.width, LB_COLOUR_TEXT);
  sheet.low = room.y + room.height - 0.8 * plan->body;
  sheet.x = room.x + (plan->broad ? 0.22 * room.width : 4.5 * plan->body);
  sheet.room =
      room.x + room.width - sheet.x - 5.8 * plan->body - (plan->broad ? INCH + plan->body : 0);
  note_across (&sheet);
  add_squares (&sheet,
               plan->broad ? y_of (&sheet, sheet.joint) + 2 * plan->body : room.y + plan->words);
  add_shank (&sheet);
  add_marks (&sheet);
}

bool
lb_card_template_add (LbCardPen *pen, double width, double height, GPtrArray *pages)
{
  Plan plan = make_plan (pen, width, height);
  double from = 0;
  int n;

  if (plan.length <= 0)
    return true;
  if (plan.room.width < LEAST_ACROSS || room_along (&plan, 0) < LEAST_ALONG)
    return false;
  n = count_sheets (&plan);
  for (int i = 0; i < n; i++)
    {
      pen->page = lb_card_page_new (pen, plan.width, plan.height);
      draw_sheet (&plan, i, n, from);
      lb_card_page_finish (pen->page);
      g_ptr_array_add (pages, pen->page);
      pen->page = NULL;
      from += room_along (&plan, i) - OVERLAP;
    }
  return true;
}
