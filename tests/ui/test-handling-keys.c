/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Handling the parts of the drawing from the keyboard alone. */
#include "hand.h"
#include "one_window.h"

#include <string.h>

static gboolean
key (guint key)
{
  return hand_key (side_view (), key, 0);
}

static void
get_selected (LbPickKind *kind, int *index)
{
  lb_session_get_selected (session (), kind, index);
}

static void
assert_selected (LbPickKind kind, int index)
{
  LbPickKind found;
  int found_index;

  get_selected (&found, &found_index);
  assert_int_equal (found, kind);
  assert_int_equal (found_index, index);
}

static gboolean
can_undo (void)
{
  gboolean can;

  g_object_get (session (), "can-undo", &can, NULL);
  return can;
}

/* ---- Tests ---- */

static void
both_drawings_take_the_focus (void **state)
{
  LbCanvas *strip = lb_drawings_get_bed_strip (lb_window_get_drawings (window));

  assert_true (gtk_widget_grab_focus (GTK_WIDGET (side_view ())));
  assert_true (gtk_widget_has_focus (GTK_WIDGET (side_view ())));
  /* Tab goes on, and Shift+Tab comes back. */
  assert_false (key (GDK_KEY_Tab));
  assert_true (gtk_widget_child_focus (GTK_WIDGET (window), GTK_DIR_TAB_FORWARD));
  assert_true (gtk_widget_has_focus (GTK_WIDGET (strip)));
  assert_true (gtk_widget_child_focus (GTK_WIDGET (window), GTK_DIR_TAB_FORWARD));
  assert_false (gtk_widget_has_focus (GTK_WIDGET (strip)));
  assert_true (gtk_widget_child_focus (GTK_WIDGET (window), GTK_DIR_TAB_BACKWARD));
  assert_true (gtk_widget_has_focus (GTK_WIDGET (strip)));
}

/* Round all parts and back to the first, each once; and the other way. */
static void
keys_go_round_all_parts (void **state)
{
  gboolean seen[64][64] = { { FALSE } };
  LbPickKind kind;
  int index, n = 0, n_back = 0;

  assert_true (key (GDK_KEY_Home));
  assert_selected (LB_PICK_REEL, 0);
  for (;;)
    {
      get_selected (&kind, &index);
      if (seen[kind][index])
        break;
      seen[kind][index] = TRUE;
      n++;
      assert_true (key (GDK_KEY_period));
    }
  assert_selected (LB_PICK_REEL, 0);
  /* Everything that can be picked, the surface aside, whose value is the current's. */
  for (int k = LB_PICK_BED; k < LB_PICK_BED_POINT; k++)
    assert_true (seen[k][0]);
  assert_true (seen[LB_PICK_LURE][1] && seen[LB_PICK_LEADER][1] && seen[LB_PICK_ATTACHMENT][1]);
  assert_int_equal (n, 9 + 3 * 2);
  do
    {
      assert_true (hand_key (side_view (), GDK_KEY_Left, GDK_CONTROL_MASK));
      n_back++;
      get_selected (&kind, &index);
    }
  while (kind != LB_PICK_REEL);
  assert_int_equal (n_back, n);
  assert_true (key (GDK_KEY_comma));
  assert_selected (LB_PICK_BED, 0);
  assert_true (key (GDK_KEY_End));
  assert_selected (LB_PICK_BED, 0);
  assert_false (can_undo ());
}

typedef struct
{
  LbPickKind kind;
  guint more, less; /* keys; 0: none */
  const char *path;
  double step; /* SI: an inch, half a foot, a tenth of a mile an hour */
} Mover;

static const Mover movers[] = {
  { LB_PICK_WEIGHT, GDK_KEY_Up, GDK_KEY_Down, "mainline.line_out.weight_above_bed_m", 0.0254 },
  { LB_PICK_REEL, GDK_KEY_Up, GDK_KEY_Down, "boat.reel_height_m", 0.0254 },
  { LB_PICK_MAINLINE, GDK_KEY_Down, GDK_KEY_Up, "mainline.line_out.given_m", 0.1524 },
  { LB_PICK_SHANK, GDK_KEY_Up, 0, "shank.length_m", 0.0254 },
  { LB_PICK_ATTACHMENT, GDK_KEY_Up, GDK_KEY_Down, "leaders[0].attach_above_weight_m", 0.0254 },
  { LB_PICK_LEADER, GDK_KEY_Right, GDK_KEY_Left, "leaders[0].length_m", 0.1524 },
  { LB_PICK_LURE, GDK_KEY_Right, GDK_KEY_Left, "leaders[0].length_m", 0.1524 },
  { LB_PICK_BAND_LOW, GDK_KEY_Up, GDK_KEY_Down, "band.low_m", 0.0254 },
  { LB_PICK_BAND_HIGH, GDK_KEY_Up, GDK_KEY_Down, "band.high_m", 0.0254 },
  { LB_PICK_BED, GDK_KEY_Down, GDK_KEY_Up, "river.depth_m", 0.1524 },
  { LB_PICK_CURRENT, GDK_KEY_Right, GDK_KEY_Left, "river.surface_current_m_s", 0.044704 },
};

static double
value (const char *path)
{
  gsize leader;
  const LbField *field = lb_field_find (path, &leader);

  return lb_session_get_value (session (), field, leader);
}

static void
arrows_move_by_a_step (void **state)
{
  for (gsize i = 0; i < G_N_ELEMENTS (movers); i++)
    {
      const Mover *m = &movers[i];
      LbSetup before = *setup ();
      double start;

      lb_session_select (session (), m->kind, 0);
      if (m->kind == LB_PICK_MAINLINE)
        start = lb_result_get_readings (lb_session_get_result (session ()))->line_out;
      else
        start = value (m->path);
      assert_true (key (m->more));
      assert_true (key (m->more));
      harness_solved (window);
      /* To the next steps up from wherever it was. */
      assert_near (value (m->path) / m->step, round (value (m->path) / m->step), 1e-9);
      assert_near (value (m->path), start + 2 * m->step, m->step / 2 + 1e-9);
      if (m->less)
        {
          assert_true (key (m->less));
          assert_near (value (m->path), start + m->step, m->step / 2 + 1e-9);
        }
      assert_true (key (GDK_KEY_Escape));
      assert_selected (LB_PICK_NOTHING, 0);
      lb_session_undo (session ());
      assert_memory_equal (setup (), &before, sizeof before);
      harness_solved (window);
    }
}

static void
pages_are_ten_steps_and_shift_a_tenth (void **state)
{
  double start = value ("leaders[0].length_m");

  lb_session_select (session (), LB_PICK_LURE, 0);
  assert_true (key (GDK_KEY_Page_Up));
  assert_near (value ("leaders[0].length_m"), start + 10 * 0.1524, 0.1524 / 2 + 1e-9);
  start = value ("leaders[0].length_m");
  assert_true (hand_key (side_view (), GDK_KEY_Left, GDK_SHIFT_MASK));
  assert_near (value ("leaders[0].length_m"), start - 0.01524, 1e-9);
}

/* Steps in quick succession are one of the history; of another part they are another. */
static void
a_row_of_keys_is_one_step (void **state)
{
  LbSetup before = *setup (), between;

  lb_session_select (session (), LB_PICK_WEIGHT, 0);
  for (int i = 0; i < 5; i++)
    assert_true (key (GDK_KEY_Up));
  between = *setup ();
  lb_session_select (session (), LB_PICK_REEL, 0);
  assert_true (key (GDK_KEY_Up));
  lb_session_undo (session ());
  assert_memory_equal (setup (), &between, sizeof between);
  lb_session_undo (session ());
  assert_memory_equal (setup (), &before, sizeof before);
  assert_false (can_undo ());
}

static void
enter_opens_the_field (void **state)
{
  GtkWidget *focus;

  gtk_widget_grab_focus (GTK_WIDGET (side_view ()));
  assert_false (key (GDK_KEY_Return)); /* nothing is selected */
  lb_session_select (session (), LB_PICK_LURE, 1);
  assert_true (key (GDK_KEY_Return));
  harness_frame (GTK_WIDGET (window));
  assert_string_equal (lb_window_get_page (window), "rig");
  focus = gtk_window_get_focus (GTK_WINDOW (window));
  assert_non_null (focus);
  assert_true (gtk_widget_is_ancestor (
      focus, lb_rig_page_get_group (lb_window_get_rig_page (window), LB_PICK_LURE, 1)));
}

static void
enter_opens_a_bed_point_on_the_river_page (void **state)
{
  LbPickKind kind;
  int index;

  assert_true (key (GDK_KEY_Insert));
  get_selected (&kind, &index);
  assert_int_equal (kind, LB_PICK_BED_POINT);
  assert_true (key (GDK_KEY_Return));
  harness_frame (GTK_WIDGET (window));
  assert_string_equal (lb_window_get_page (window), "river");
  assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (GTK_WINDOW (window)),
                                       GTK_WIDGET (lb_window_get_river_page (window))));
  assert_selected (kind, index);
}

static void
points_of_the_bed_by_keys (void **state)
{
  LbSetup before = *setup ();
  LbPickKind kind;
  int index;
  size_t n;
  double x, depth;

  assert_true (key (GDK_KEY_Insert));
  n = setup ()->river.n_bed_points;
  assert_true (n > LB_BED_FIRST_POINTS);
  get_selected (&kind, &index);
  assert_int_equal (kind, LB_PICK_BED_POINT);
  x = setup ()->river.bed_x[index];
  depth = setup ()->river.bed_depth[index];
  assert_true (key (GDK_KEY_Up));
  assert_near (setup ()->river.bed_depth[index], depth - 0.1524, 0.1524 / 2 + 1e-9);
  assert_near (setup ()->river.bed_x[index], x, 0);
  depth = setup ()->river.bed_depth[index];
  assert_true (key (GDK_KEY_Right));
  assert_near (setup ()->river.bed_x[index], x + 0.1524, 0.1524 / 2 + 1e-9);
  assert_near (setup ()->river.bed_depth[index], depth, 0);
  /* Another one, halfway to the next. */
  assert_true (key (GDK_KEY_Insert));
  assert_int_equal (setup ()->river.n_bed_points, n + 1);
  assert_selected (LB_PICK_BED_POINT, index + 1);
  assert_true (key (GDK_KEY_Delete));
  assert_int_equal (setup ()->river.n_bed_points, n);
  assert_selected (LB_PICK_BED_POINT, index);
  for (int i = 0; i < 20; i++)
    {
      key (GDK_KEY_End);
      key (GDK_KEY_Delete);
    }
  assert_int_equal (setup ()->river.n_bed_points, 2);
  while (can_undo ())
    lb_session_undo (session ());
  assert_memory_equal (setup (), &before, sizeof before);
}

static void
the_drawing_is_moved_by_keys (void **state)
{
  LbViewport *viewport = lb_drawings_get_viewport (lb_window_get_drawings (window));
  double x = lb_viewport_get_view (viewport)->x_left, z = lb_viewport_get_view (viewport)->z_top;
  double scale = lb_viewport_get_view (viewport)->per_metre_x;

  assert_true (key (GDK_KEY_Right));
  assert_less (x, lb_viewport_get_view (viewport)->x_left);
  assert_true (key (GDK_KEY_Down));
  assert_less (lb_viewport_get_view (viewport)->z_top, z);
  lb_session_select (session (), LB_PICK_WEIGHT, 0);
  assert_true (hand_key (side_view (), GDK_KEY_Left, GDK_ALT_MASK));
  assert_true (hand_key (side_view (), GDK_KEY_Up, GDK_ALT_MASK));
  assert_near (lb_viewport_get_view (viewport)->x_left, x, 1e-9);
  assert_near (lb_viewport_get_view (viewport)->z_top, z, 1e-9);
  {
    LbVec3 at = lb_result_get_readings (lb_session_get_result (session ()))->weight.position;
    double left = lb_view_x (lb_viewport_get_view (viewport), at.x);
    double top = lb_view_y (lb_viewport_get_view (viewport), at.z);

    /* The weight, which is selected, stays where it is. */
    assert_true (key (GDK_KEY_plus));
    assert_near (lb_view_x (lb_viewport_get_view (viewport), at.x), left, 1e-6);
    assert_near (lb_view_y (lb_viewport_get_view (viewport), at.z), top, 1e-6);
  }
  assert_less (scale, lb_viewport_get_view (viewport)->per_metre_x);
  assert_true (key (GDK_KEY_0));
  assert_false (lb_viewport_get_moved (viewport));
  assert_false (can_undo ());
}

/* Name and value, while the drawing has the focus. */
static void
a_screen_reader_is_told (void **state)
{
  g_autofree char *words = NULL;

  gtk_widget_grab_focus (GTK_WIDGET (side_view ()));
  assert_true (gtk_widget_has_focus (GTK_WIDGET (side_view ())));
  lb_session_select (session (), LB_PICK_REEL, 0);
  lb_session_set_value (session (), lb_field ("boat.reel_height_m"), 0, 0.6096, 0);
  harness_solved (window);
  assert_null (gtk_test_accessible_check_property (GTK_ACCESSIBLE (side_view ()),
                                                   GTK_ACCESSIBLE_PROPERTY_LABEL,
                                                   "Reel height 24 in. Selected in the drawing"));
  assert_true (key (GDK_KEY_Up));
  harness_solved (window);
  assert_null (gtk_test_accessible_check_property (GTK_ACCESSIBLE (side_view ()),
                                                   GTK_ACCESSIBLE_PROPERTY_LABEL,
                                                   "Reel height 25 in. Selected in the drawing"));
  assert_true (key (GDK_KEY_Escape));
  assert_null (gtk_test_accessible_check_property (GTK_ACCESSIBLE (side_view ()),
                                                   GTK_ACCESSIBLE_PROPERTY_LABEL,
                                                   "Side view of the rig in the river"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
#define TEST(f) cmocka_unit_test_setup_teardown (f, set_up, tear_down)
    TEST (both_drawings_take_the_focus),
    TEST (keys_go_round_all_parts),
    TEST (arrows_move_by_a_step),
    TEST (pages_are_ten_steps_and_shift_a_tenth),
    TEST (a_row_of_keys_is_one_step),
    TEST (enter_opens_the_field),
    TEST (enter_opens_a_bed_point_on_the_river_page),
    TEST (points_of_the_bed_by_keys),
    TEST (the_drawing_is_moved_by_keys),
    TEST (a_screen_reader_is_told),
#undef TEST
  };

  harness_start ();
  g_application_hold (G_APPLICATION (harness_application ()));
  return cmocka_run_group_tests (tests, NULL, NULL);
}
