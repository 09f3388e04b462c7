/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "card_print.h"

#include <math.h>

#define SAME 0.5 /* points: no two papers differ by less */

/* Papers that printers know by name (PWG 5101.1 Media Standardized Names, as GTK has them). */
static const char *const known_papers[] = {
  "na_index-3x5", "na_index-4x6", "na_invoice", "na_letter", "iso_a4", "iso_a5", "iso_a6",
};

/* The paper of an upright sheet, points. (transfer full) */
static GtkPaperSize *
paper_for (double width, double height)
{
  for (gsize i = 0; i < G_N_ELEMENTS (known_papers); i++)
    {
      GtkPaperSize *paper = gtk_paper_size_new (known_papers[i]);

      if (fabs (gtk_paper_size_get_width (paper, GTK_UNIT_POINTS) - width) < SAME
          && fabs (gtk_paper_size_get_height (paper, GTK_UNIT_POINTS) - height) < SAME)
        return paper;
      gtk_paper_size_free (paper);
    }
  return gtk_paper_size_new_custom ("card", "Card", width, height, GTK_UNIT_POINTS);
}

/* Sets `setup` up for sheet `sheet`. */
static void
set_up (GtkPageSetup *setup, const LbCardDrawing *drawing, gsize sheet)
{
  double width, height;
  gboolean wide;
  GtkPaperSize *paper;

  lb_card_drawing_sheet_size (drawing, sheet, &width, &height);
  wide = width > height;
  paper = paper_for (MIN (width, height), MAX (width, height));
  gtk_page_setup_set_paper_size (setup, paper);
  gtk_paper_size_free (paper);
  gtk_page_setup_set_orientation (setup, wide ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                              : GTK_PAGE_ORIENTATION_PORTRAIT);
  /* The card keeps clear of the edges itself. */
  gtk_page_setup_set_top_margin (setup, 0, GTK_UNIT_POINTS);
  gtk_page_setup_set_bottom_margin (setup, 0, GTK_UNIT_POINTS);
  gtk_page_setup_set_left_margin (setup, 0, GTK_UNIT_POINTS);
  gtk_page_setup_set_right_margin (setup, 0, GTK_UNIT_POINTS);
}

static void
begin_cb (GtkPrintOperation *operation, GtkPrintContext *context, LbMadeCard *card)
{
  gtk_print_operation_set_n_pages (
      operation, (int) lb_card_drawing_n_sheets (lb_made_card_get_drawing (card)));
}

static void
set_up_cb (GtkPrintOperation *operation,
           GtkPrintContext *context,
           int page,
           GtkPageSetup *setup,
           LbMadeCard *card)
{
  set_up (setup, lb_made_card_get_drawing (card), (gsize) page);
}

static void
draw_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, LbMadeCard *card)
{
  lb_card_drawing_paint (lb_made_card_get_drawing (card), (gsize) page,
                         gtk_print_context_get_cairo_context (context));
}

GtkPrintOperation *
lb_card_print_new (LbMadeCard *card, GtkPrintSettings *settings)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();

  /* It outlives the window's card, which may change while the dialog is open. */
  g_object_set_data_full (G_OBJECT (operation), "lb-card", lb_made_card_ref (card),
                          (GDestroyNotify) lb_made_card_unref);
  set_up (setup, lb_made_card_get_drawing (card), 0);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_print_settings (operation, settings);
  gtk_print_operation_set_job_name (operation,
                                    lb_card_drawing_title (lb_made_card_get_drawing (card)));
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_cb), card);
  g_signal_connect (operation, "request-page-setup", G_CALLBACK (set_up_cb), card);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_cb), card);
  return operation;
}
