/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "made_card.h"

#include "words.h"

struct LbComputedCard
{
  LbCardContents *contents;
};

struct LbMadeCard
{
  LbComputedCard *computed; /* owns all that `contents` points to */
  LbCardContents contents;
  LbCardDrawingOptions options;
  LbCardDrawing *drawing;
};

static void
computed_clear (gpointer computed)
{
  lb_card_contents_free (((LbComputedCard *) computed)->contents);
}

LbComputedCard *
lb_computed_card_new (LbCardContents *contents)
{
  LbComputedCard *self = g_atomic_rc_box_new0 (LbComputedCard);

  self->contents = contents;
  return self;
}

void
lb_computed_card_unref (LbComputedCard *self)
{
  if (self)
    g_atomic_rc_box_release_full (self, computed_clear);
}

static void
made_card_clear (gpointer data)
{
  LbMadeCard *self = data;

  lb_card_drawing_free (self->drawing);
  lb_computed_card_unref (self->computed);
}

LbMadeCard *
lb_made_card_new (LbComputedCard *computed, const LbCard *card, int decimals)
{
  LbMadeCard *self = g_atomic_rc_box_new0 (LbMadeCard);

  self->computed = g_atomic_rc_box_acquire (computed);
  self->contents = *computed->contents;
  self->contents.card = *card;
  self->options = (LbCardDrawingOptions){
    .decimal = lb_words_decimal (),
    .decimals_plus_1 = decimals + 1,
  };
  self->drawing = lb_made_card_draw (self);
  return self;
}

LbMadeCard *
lb_made_card_ref (LbMadeCard *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
lb_made_card_unref (LbMadeCard *self)
{
  if (self)
    g_atomic_rc_box_release_full (self, made_card_clear);
}

const LbCardContents *
lb_made_card_get_contents (const LbMadeCard *self)
{
  return &self->contents;
}

const LbCardDrawing *
lb_made_card_get_drawing (const LbMadeCard *self)
{
  return self->drawing;
}

LbCardDrawing *
lb_made_card_draw (const LbMadeCard *self)
{
  return lb_card_drawing_new (&self->contents, &self->options);
}
