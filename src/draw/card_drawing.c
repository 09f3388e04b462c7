/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_drawing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "card_grid.h"
#include "card_sheets.h"
#include "card_template.h"

#define POINTS_PER_METRE (72 / 0.0254)
#define MOST_PAGES 400 /* a card that never ends has a fault */

struct LbCardDrawing
{
  LbDrawContext *context;
  LbPicture picture;
  LbCardPen pen;
  double width, height; /* points, of the card */
  GPtrArray *pages;     /* LbCardPage */
  GPtrArray *templates; /* LbCardPage: the shank at its true size */
  GPtrArray *sheets;    /* LbPressSheet */
  char *left_out;       /* NULL: nothing */
};

/* ---- The pieces ---- */

/* In the order of reading: what is needed at the bench, then on the water. */
static const struct
{
  const LbCardPieceClass *kind;
  LbCardRank rank;
} pieces_in_order[] = {
  { &lb_card_rig_piece, LB_CARD_RANK_FIRST },     { &lb_card_numbers_piece, LB_CARD_RANK_FIRST },
  { &lb_card_hardware_piece, LB_CARD_RANK_NEXT }, { &lb_card_cautions_piece, LB_CARD_RANK_ALWAYS },
  { &lb_card_table_piece, LB_CARD_RANK_NEXT },    { &lb_card_notes_piece, LB_CARD_RANK_LAST },
  { &lb_card_running_piece, LB_CARD_RANK_LAST },  { &lb_card_gauge_piece, LB_CARD_RANK_NEXT },
};

static GArray *
all_pieces (const LbCardPen *pen)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (LbCardPiece));

  for (size_t i = 0; i < G_N_ELEMENTS (pieces_in_order); i++)
    {
      LbCardPiece piece = { pieces_in_order[i].kind, pieces_in_order[i].rank };

      piece.n = piece.kind->count (pen);
      if (piece.n > 0)
        g_array_append_val (pieces, piece);
    }
  return pieces;
}

/* ---- Pages ---- */

/* The pages that `pieces` come to, LbCardArrangement. What fits nowhere goes to `dropped`. */
static GArray *
arrange_pages (const LbCardDrawing *drawing, const GArray *pieces, GArray *dropped)
{
  GArray *pages = g_array_new (FALSE, FALSE, sizeof (LbCardArrangement));
  g_autoptr (GArray) rest = g_array_copy ((GArray *) pieces);

  while (rest->len > 0 && pages->len < MOST_PAGES)
    {
      LbBox room =
          lb_card_page_room (&drawing->pen, drawing->width, drawing->height, pages->len == 0);
      LbCardArrangement page =
          lb_card_arrange (&drawing->pen, rest, room.width, room.height, dropped);

      if (page.n > 0)
        g_array_append_val (pages, page);
    }
  return pages;
}

/* The piece to be shortened next: of the lowest rank, the last one. NULL: none is left. */
static LbCardPiece *
next_to_shorten (GArray *pieces)
{
  LbCardPiece *found = NULL;

  for (guint i = 0; i < pieces->len; i++)
    {
      LbCardPiece *piece = &g_array_index (pieces, LbCardPiece, i);
      bool can = piece->variant + 1 < piece->kind->n_variants || piece->rank != LB_CARD_RANK_ALWAYS;

      if (can && (!found || piece->rank >= found->rank))
        found = piece;
    }
  return found;
}

static void
shorten (GArray *pieces, LbCardPiece *piece, GArray *dropped)
{
  if (++piece->variant < piece->kind->n_variants)
    return;
  g_array_append_vals (dropped, piece, 1);
  g_array_remove_index (pieces, (guint) (piece - (LbCardPiece *) pieces->data));
}

static bool
is_enough (const GArray *pages, int most, const GArray *dropped)
{
  return dropped->len == 0 && (most <= 0 || (int) pages->len <= most);
}

/* All of it, and into at most `most` pages: with smaller letters, then with less. */
static GArray *
arrange_within (LbCardDrawing *drawing, GArray *pieces, int most, GArray *dropped)
{
  double best = lb_card_body_best (drawing->width, drawing->height);
  GArray *pages = arrange_pages (drawing, pieces, dropped);
  LbCardPiece *piece;

  for (double body = best - 0.5; !is_enough (pages, most, dropped) && body >= LB_CARD_BODY_LEAST;
       body -= 0.5)
    {
      g_array_unref (pages);
      g_array_set_size (dropped, 0);
      drawing->pen.style = lb_card_style (body);
      pages = arrange_pages (drawing, pieces, dropped);
    }
  while (most > 0 && (int) pages->len > most && (piece = next_to_shorten (pieces)))
    {
      g_array_unref (pages);
      shorten (pieces, piece, dropped);
      pages = arrange_pages (drawing, pieces, dropped);
    }
  return pages;
}

static char *
names_of (const GArray *dropped)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < dropped->len; i++)
    {
      const char *title = _ (g_array_index (dropped, LbCardPiece, i).kind->title);

      g_string_append_printf (names, "%s%s", i ? ", " : "", title);
    }
  return g_string_free (names, dropped->len == 0);
}

static void
draw_page (LbCardDrawing *drawing, const LbCardArrangement *arrangement, int number, int n)
{
  LbBox room = lb_card_page_room (&drawing->pen, drawing->width, drawing->height, number == 0);

  drawing->pen.page = lb_card_page_new (&drawing->pen, drawing->width, drawing->height);
  lb_card_page_add_frame (&drawing->pen, number, n, number == 0);
  for (size_t i = 0; i < arrangement->n; i++)
    {
      const LbCardPlace *place = &arrangement->places[i];
      LbBox box = { place->box.x + room.x, place->box.y + room.y, place->box.width,
                    place->box.height };

      place->piece.kind->add (&drawing->pen, &place->piece, box);
    }
  lb_card_page_finish (drawing->pen.page);
  g_ptr_array_add (drawing->pages, drawing->pen.page);
  drawing->pen.page = NULL;
}

static void
draw_pages (LbCardDrawing *drawing, int most)
{
  g_autoptr (GArray) pieces = all_pieces (&drawing->pen);
  g_autoptr (GArray) dropped = g_array_new (FALSE, FALSE, sizeof (LbCardPiece));
  g_autoptr (GArray) pages = arrange_within (drawing, pieces, most, dropped);

  for (guint i = 0; i < pages->len; i++)
    draw_page (drawing, &g_array_index (pages, LbCardArrangement, i), (int) i, (int) pages->len);
  drawing->left_out = names_of (dropped);
}

/* The template's sheets come after those of the card. */
static void
draw_template (LbCardDrawing *drawing, double width, double height)
{
  const LbCard *card = &drawing->pen.contents->card;
  char *others = drawing->left_out;

  if (!card->prints[LB_CARD_PART_TEMPLATE])
    return;
  drawing->pen.style = lb_card_style (lb_card_body_best (width, height));
  if (lb_card_template_add (&drawing->pen, width, height, drawing->templates))
    for (guint i = 0; i < drawing->templates->len; i++)
      lb_press_lay_alone (drawing->sheets, g_ptr_array_index (drawing->templates, i));
  else
    {
      drawing->left_out = g_strjoin (", ", _ ("Shank, true size"), others, NULL);
      g_free (others);
    }
}

/* ---- Making and reading ---- */

static LbPicture
picture_of (const LbCardContents *contents, const LbCardDrawingOptions *options)
{
  bool solved = !lb_status_is_failure (contents->running.status);
  LbPicture picture = {
    .setup = &contents->setup,
    .shape = solved ? &contents->running.shape : NULL,
    .readings = solved ? &contents->running.readings : NULL,
    .status = contents->running.status,
    .units = contents->units,
    .decimal = options ? options->decimal : 0,
    .decimals_plus_1 = options ? options->decimals_plus_1 : 0,
  };

  for (size_t i = 0; i < contents->rig.n_leaders; i++)
    picture.lure_names[contents->rig.leaders[i].leader] = contents->rig.leaders[i].lure;
  return picture;
}

LbCardDrawing *
lb_card_drawing_new (const LbCardContents *contents, const LbCardDrawingOptions *options)
{
  LbCardDrawing *drawing = g_new0 (LbCardDrawing, 1);
  double sheet_width, sheet_height;

  lb_card_get_measures (&contents->card, &drawing->width, &drawing->height);
  lb_card_get_sheet_measures (&contents->card, &sheet_width, &sheet_height);
  drawing->width *= POINTS_PER_METRE;
  drawing->height *= POINTS_PER_METRE;
  drawing->context = lb_draw_context_new ();
  drawing->picture = picture_of (contents, options);
  drawing->pen = (LbCardPen){
    .context = drawing->context,
    .grids = lb_grid_cache_new (),
    .heights = lb_card_heights_new (),
    .style = lb_card_style (lb_card_body_best (drawing->width, drawing->height)),
    .contents = contents,
    .picture = &drawing->picture,
  };
  drawing->pages = g_ptr_array_new_with_free_func (lb_card_page_free);
  drawing->templates = g_ptr_array_new_with_free_func (lb_card_page_free);
  drawing->sheets = g_ptr_array_new_with_free_func (lb_press_sheet_free);
  draw_pages (drawing, options ? options->most_pages : 0);
  lb_press_lay (drawing->sheets, &drawing->pen, (LbCardPage *const *) drawing->pages->pdata,
                drawing->pages->len, sheet_width * POINTS_PER_METRE,
                sheet_height * POINTS_PER_METRE, contents->card.several);
  draw_template (drawing, sheet_width * POINTS_PER_METRE, sheet_height * POINTS_PER_METRE);
  return drawing;
}

void
lb_card_drawing_free (LbCardDrawing *drawing)
{
  if (!drawing)
    return;
  g_ptr_array_unref (drawing->sheets);
  g_ptr_array_unref (drawing->pages);
  g_ptr_array_unref (drawing->templates);
  lb_grid_cache_free (drawing->pen.grids);
  g_hash_table_unref (drawing->pen.heights);
  lb_draw_context_free (drawing->context);
  g_free (drawing->left_out);
  g_free (drawing);
}

const LbCardPage *
lb_card_drawing_page (const LbCardDrawing *drawing, size_t page)
{
  return g_ptr_array_index (drawing->pages, page);
}

const LbPressSheet *
lb_card_drawing_sheet (const LbCardDrawing *drawing, size_t sheet)
{
  return g_ptr_array_index (drawing->sheets, sheet);
}

size_t
lb_card_drawing_n_sheets (const LbCardDrawing *drawing)
{
  return drawing->sheets->len;
}

size_t
lb_card_drawing_n_pages (const LbCardDrawing *drawing)
{
  return drawing->pages->len;
}

void
lb_card_drawing_sheet_size (const LbCardDrawing *drawing,
                            size_t sheet,
                            double *width,
                            double *height)
{
  *width = lb_card_drawing_sheet (drawing, sheet)->width;
  *height = lb_card_drawing_sheet (drawing, sheet)->height;
}

void
lb_card_drawing_paint (const LbCardDrawing *drawing, size_t index, cairo_t *cr)
{
  const LbPressSheet *sheet = lb_card_drawing_sheet (drawing, index);

  for (size_t i = 0; i < sheet->n_spots; i++)
    {
      cairo_save (cr);
      cairo_translate (cr, sheet->spots[i].x, sheet->spots[i].y);
      lb_card_page_paint (sheet->spots[i].page, cr);
      cairo_restore (cr);
    }
  if (sheet->marks)
    lb_scene_paint (sheet->marks, cr, LB_LAYER_ALL);
}

const char *
lb_card_drawing_title (const LbCardDrawing *drawing)
{
  return drawing->pen.contents->title;
}

const char *
lb_card_drawing_left_out (const LbCardDrawing *drawing)
{
  return drawing->left_out;
}
