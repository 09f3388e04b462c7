/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Random rows of edits, drags, undo and redo, of saves and of drags broken off, beside a plain list
 * of the texts that the file would have had: after every step the document is, to the byte, what
 * the list says.
 *
 *   test-history-property [NUMBER]     runs that row alone */
#include "model-support.h"

#include <string.h>

#include "document-fixture.h"
#include "random-change.h"
#include "writer.h"

typedef struct
{
  size_t number, step;
  Fixture *f;
  TestRandom random;
  GPtrArray *texts; /* (element-type utf8): before the first step, after it, and so on */
  guint position;
  gint saved; /* position as saved; -1: gone */
} Row;

static size_t only; /* 0: all rows */

static char *
text_now (Row *row)
{
  return lb_writer_to_text (lb_document_get_contents (row->f->document), NULL);
}

static void
check (Row *row, bool fine, const char *what)
{
  if (!fine)
    fail_msg ("row %zu, step %zu: %s", row->number, row->step, what);
}

static void
check_as_listed (Row *row)
{
  g_autofree char *text = text_now (row);
  LbHistory *history = row->f->history;

  check (row, g_str_equal (text, g_ptr_array_index (row->texts, row->position)), "other bytes");
  check (row, lb_history_get_can_undo (history) == (row->position > 0), "can undo or not");
  check (row, lb_history_get_can_redo (history) == (row->position + 1 < row->texts->len),
         "can redo or not");
  check (row, lb_document_get_modified (row->f->document) == ((gint) row->position != row->saved),
         "modified or not");
}

/* What was undone is gone. */
static void
cut (Row *row)
{
  g_ptr_array_set_size (row->texts, (gint) row->position + 1);
  if (row->saved > (gint) row->position)
    row->saved = -1;
}

static void
list_step (Row *row)
{
  cut (row);
  g_ptr_array_add (row->texts, text_now (row));
  row->position++;
}

/* ---- Steps ---- */

static void
edit (Row *row)
{
  LbChange *change = random_change (&row->random, row->f->document);

  if (lb_history_do (row->f->history, change))
    {
      const LbSetup *setup = setup_of (row->f);

      check (row, lb_setup_validate (setup, NULL), "no rig");
      check (row, strlen (lb_history_get_undo_label (row->f->history)) > 2, "no label");
      list_step (row);
    }
}

/* One step however many changes it has; none when it ends where it began. */
static void
drag (Row *row)
{
  int kind = (int) test_random (&row->random, 0, N_DRAGS);
  guint gesture = lb_history_new_gesture (row->f->history);
  size_t n = (size_t) test_random (&row->random, 1, 8);
  gboolean any = FALSE;

  for (size_t i = 0; i < n; i++)
    {
      LbChange *change = random_drag (&row->random, row->f->document, kind);

      lb_change_set_gesture (change, gesture);
      any = lb_history_do (row->f->history, change) || any;
    }
  if (!any)
    return;
  list_step (row);
  if (test_random (&row->random, 0, 1) < 0.3)
    {
      lb_history_cancel_gesture (row->f->history, gesture);
      row->position--;
      cut (row);
    }
  else if (g_str_equal (g_ptr_array_index (row->texts, row->position),
                        g_ptr_array_index (row->texts, row->position - 1)))
    {
      row->position--;
      cut (row);
    }
}

static void
undo (Row *row)
{
  check (row, lb_history_undo (row->f->history) == (row->position > 0), "undone or not");
  row->position -= row->position > 0;
}

static void
redo (Row *row)
{
  gboolean can = row->position + 1 < row->texts->len;

  check (row, lb_history_redo (row->f->history) == can, "redone or not");
  row->position += can;
}

static void
save (Row *row)
{
  lb_history_mark_saved (row->f->history);
  row->saved = (gint) row->position;
}

/* ---- Rows ---- */

static void
run_row (size_t number)
{
  static void (*const steps[]) (Row *) = { edit, edit, edit, edit, drag, drag,
                                           undo, undo, redo, redo, save };
  void *state = NULL;
  Row row = { .number = number, .random = { number * 2654435761u + 1 }, .saved = 0 };
  size_t n;

  fixture_set_up (&state);
  row.f = state;
  row.texts = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (row.texts, text_now (&row));
  n = (size_t) test_random (&row.random, 1, 40);
  for (row.step = 0; row.step < n; row.step++)
    {
      steps[(size_t) test_random (&row.random, 0, G_N_ELEMENTS (steps))](&row);
      check_as_listed (&row);
    }
  while (row.position > 0)
    {
      undo (&row);
      check_as_listed (&row);
    }
  while (row.position + 1 < row.texts->len)
    {
      redo (&row);
      check_as_listed (&row);
    }
  g_ptr_array_unref (row.texts);
  fixture_tear_down (&state);
}

static void
random_rows_are_undone_and_redone_to_the_byte (void **state)
{
  size_t n = test_count (3000);

  for (size_t number = only ? only : 1; number <= (only ? only : n); number++)
    run_row (number);
}

int
main (int argc, char **argv)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (random_rows_are_undone_and_redone_to_the_byte),
  };

  only = argc > 1 ? strtoul (argv[1], NULL, 10) : 0;
  return cmocka_run_group_tests (tests, NULL, NULL);
}
