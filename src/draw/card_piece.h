/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The parts of a card as blocks that are put on pages; for the files of this folder only. */
#pragma once

#include "card_pen.h"

typedef struct LbCardPiece LbCardPiece;

typedef struct LbCardPieceClass LbCardPieceClass;

/* A block, or so much of it as stands on one page: `n` of its lines from `first`. */
struct LbCardPiece
{
  const LbCardPieceClass *kind;
  LbCardRank rank;
  int variant; /* 0: in full; each further one is shorter */
  size_t first, n;
};

struct LbCardPieceClass
{
  const char *title; /* English; translate with gettext */
  int n_variants;
  bool is_words;   /* lines of words, which should not be too long */
  bool is_picture; /* should have the whole width */

  /* How many lines it has that can go to different pages; 1: it stays in one. 0: nothing to say. */
  size_t (*count) (const LbCardPen *pen);

  /* Where the first `n` lines of `piece` are best broken off: at most `n`, or 0 for nowhere.
   * NULL: it is only broken where it is longer than a page, and then anywhere. */
  size_t (*good_break) (const LbCardPen *pen, const LbCardPiece *piece, size_t n);

  /* The least height it takes in `width`; INFINITY where it cannot be that narrow. */
  double (*height) (const LbCardPen *pen, const LbCardPiece *piece, double width);

  /* The height from which it gains nothing more; NULL: as the least. */
  double (*most_height) (const LbCardPen *pen, const LbCardPiece *piece, double width);

  /* Draws it into `box`, which is as high as asked for or higher. */
  void (*add) (const LbCardPen *pen, const LbCardPiece *piece, LbBox box);
};

extern const LbCardPieceClass lb_card_rig_piece;      /* card_rig.c: to be built from */
extern const LbCardPieceClass lb_card_numbers_piece;  /* card_lists.c: how it runs */
extern const LbCardPieceClass lb_card_hardware_piece; /* card_lists.c: terminations, hardware */
extern const LbCardPieceClass lb_card_cautions_piece; /* card_words.c */
extern const LbCardPieceClass lb_card_notes_piece;    /* card_words.c */
extern const LbCardPieceClass lb_card_running_piece;  /* card_running.c: side view, bed strip */
extern const LbCardPieceClass lb_card_table_piece;    /* card_table.c: settings */
extern const LbCardPieceClass lb_card_gauge_piece;    /* card_gauge.c: wire angle */
