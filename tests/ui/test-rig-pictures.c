/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Pictures of the rig page and of the catalogue's window for people to look at, in the output
 * folder of the tests, and the few things about them that a program can tell. */
#include "rig-page-support.h"

/* No label below `widget` is cut off, or reaches out of `frame` at a side. */
static guint
check_labels (GtkWidget *widget, GtkWidget *frame)
{
  graphene_rect_t bounds;
  guint n = 0;

  if (!gtk_widget_get_mapped (widget))
    return 0;
  if (GTK_IS_LABEL (widget))
    {
      const char *text = gtk_label_get_text (GTK_LABEL (widget));

      if (pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (widget))))
        fail_msg ("cut off: %s", text);
      assert_true (gtk_widget_compute_bounds (widget, frame, &bounds));
      if (bounds.origin.x < 0
          || bounds.origin.x + bounds.size.width > (float) gtk_widget_get_width (frame))
        fail_msg ("out of sight: %s", text);
      return 1;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    n += check_labels (child, frame);
  return n;
}

static void
take_picture (const char *name)
{
  int width, height;

  harness_solved (rig_window);
  harness_pause (250);
  assert_true (check_labels (GTK_WIDGET (rig_page ()), GTK_WIDGET (rig_page ())) > 25);
  g_free (harness_picture (rig_window, name, 1, &width, &height));
}

static void
scroll_to_end (void)
{
  GtkAdjustment *adjustment = lb_rig_page_get_adjustment (rig_page ());

  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_upper (adjustment));
}

static void
take_catalogue_picture (LbPickKind kind, int index, const char *search, const char *name)
{
  LbCatalogueWindow *catalogue = rig_catalogue_for (kind, index);
  int width, height;

  lb_catalogue_window_search (catalogue, search);
  harness_pause (200);
  assert_true (check_labels (GTK_WIDGET (catalogue), GTK_WIDGET (catalogue)) > 10);
  g_free (harness_picture ((LbWindow *) catalogue, name, 1, &width, &height));
  gtk_window_destroy (GTK_WINDOW (catalogue));
}

static void
pictures (void **state)
{
  rig_forget_own_parts ();
  rig_show (1280, 800);
  take_picture ("rig-page");
  scroll_to_end ();
  take_picture ("rig-page-end");
  harness_close (rig_window);

  rig_show (960, 600);
  take_picture ("rig-page-960x600");
  rig_open_all (GTK_WIDGET (rig_page ()));
  rig_type ("shank.length_m", GTK_WIDGET (rig_page ()), "10 in");
  rig_type ("weight.density_kg_m3", GTK_WIDGET (rig_page ()), "3 ft");
  take_picture ("rig-page-faults");
  g_object_set (lb_session_get_preferences (rig_session ()), "text-size", "largest", "units",
                "metric", NULL);
  lb_session_select (rig_session (), LB_PICK_LURE, 0);
  take_picture ("rig-page-largest");
  harness_close (rig_window);

  rig_show (1280, 800);
  g_object_set (lb_session_get_preferences (rig_session ()), "theme", "dark", NULL);
  lb_session_select (rig_session (), LB_PICK_LURE, 1);
  take_picture ("rig-page-dark");
  harness_close (rig_window);

  rig_show (1280, 800);
  take_catalogue_picture (LB_PICK_WEIGHT, 0, "", "catalogue-weights");
  take_catalogue_picture (LB_PICK_LEADER, 0, "", "catalogue-lines");
  {
    LbCatalogueWindow *catalogue = rig_catalogue_for (LB_PICK_LURE, 0);
    int width, height;

    lb_keep_row_keep (lb_catalogue_window_get_keep_row (catalogue), "the red one from the shed");
    harness_pause (200);
    g_free (harness_picture ((LbWindow *) catalogue, "catalogue-own", 1, &width, &height));
    gtk_window_destroy (GTK_WINDOW (catalogue));
  }
  take_catalogue_picture (LB_PICK_LURE, 1, "deep", "catalogue-lures");
  g_object_set (lb_session_get_preferences (rig_session ()), "theme", "dark", "units", "metric",
                NULL);
  take_catalogue_picture (LB_PICK_MAINLINE, 0, "", "catalogue-lines-dark");
  harness_close (rig_window);

  rig_show (3840, 2160);
  take_picture ("rig-page-4k");
  harness_close (rig_window);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (pictures),
  };

  return rig_run (tests, G_N_ELEMENTS (tests), "rig-pictures");
}
