/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A new document with its history, for one test case. */
#pragma once

#include "history.h"

typedef struct
{
  LbDocument *document;
  LbHistory *history;
  int n_changed;  /* "changed" signals */
  int n_modified; /* notifications of "modified" */
} Fixture;

int fixture_set_up (void **state);
int fixture_tear_down (void **state);

const LbSetup *setup_of (Fixture *f);

/* Fails unless undoing everything leads back to a new document. */
void undo_all (Fixture *f);
