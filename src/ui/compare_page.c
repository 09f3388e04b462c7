/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compare_page.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "comparer.h"
#include "dispose.h"
#include "main_page.h"
#include "page_parts.h"

#define COLUMN_WIDTH 330
#define TABLE_LEAST 120
#define DRAWINGS_PART 0.6

struct _LbComparePage
{
  GtkWidget parent;
  LbSession *session;
  LbComparer *comparer;
  gboolean outdated; /* the document changed while the page was not shown */
  GtkWidget *panes;
  GtkWidget *drawings;
  GtkWidget *table;
  GtkWidget *scroller; /* of the column */
  GtkWidget *column;   /* box */
  GtkWidget *cards[LB_MAX_VARIANTS];
  GtkWidget *add;
  GtkWidget *weights;
};

static void lb_compare_page_main_page_init (LbMainPageInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (LbComparePage,
                               lb_compare_page,
                               GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (LB_TYPE_MAIN_PAGE,
                                                      lb_compare_page_main_page_init))

static LbDocument *
document_of (LbComparePage *self)
{
  return lb_session_get_document (self->session);
}

static gsize
n_variants (LbComparePage *self)
{
  return lb_document_get_contents (document_of (self))->variants.n;
}

/* ---- Following the document ---- */

static void
compared_cb (LbComparePage *self, LbComparison *comparison)
{
  lb_compare_drawings_set (LB_COMPARE_DRAWINGS (self->drawings), comparison);
  lb_compare_table_set (LB_COMPARE_TABLE (self->table), comparison);
  for (gsize i = 0; i < lb_comparison_get_n (comparison); i++)
    {
      int place = lb_comparison_get_place (comparison, i);

      if (place >= 0)
        lb_variant_card_set_run (LB_VARIANT_CARD (self->cards[place]), i);
    }
}

static void
update (LbComparePage *self)
{
  self->outdated = FALSE;
  gtk_widget_set_sensitive (self->add, n_variants (self) < LB_MAX_VARIANTS);
  lb_comparer_request (self->comparer, lb_document_get_contents (document_of (self)));
}

static void
edited_cb (LbComparePage *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
  else
    self->outdated = TRUE;
}

static void
lb_compare_page_map (GtkWidget *widget)
{
  LbComparePage *self = LB_COMPARE_PAGE (widget);

  GTK_WIDGET_CLASS (lb_compare_page_parent_class)->map (widget);
  if (self->outdated)
    update (self);
}

/* ---- Buttons ---- */

static void
weights_changed_cb (LbComparePage *self)
{
  gsize n;

  lb_preferences_get_weights (lb_session_get_preferences (self->session), &n);
  gtk_widget_set_sensitive (self->weights, n > 0);
}

static void
focus_card (LbComparePage *self, gsize variant)
{
  GtkWidget *card = self->cards[variant];

  gtk_widget_grab_focus (lb_variant_card_get_name (LB_VARIANT_CARD (card)));
}

/* The first time the rig as it is and one to change, since one alone compares nothing. */
static void
add_cb (LbComparePage *self)
{
  int n = n_variants (self) == 0 ? 2 : 1;
  guint gesture = lb_session_new_gesture (self->session);

  for (int i = 0; i < n; i++)
    {
      LbChange *change = lb_change_new_add_variant (document_of (self), NULL);

      lb_change_set_gesture (change, gesture);
      lb_session_do (self->session, change);
    }
  if (n_variants (self) > 0)
    focus_card (self, n_variants (self) - 1);
}

static void
weights_cb (LbComparePage *self)
{
  LbWording wording = lb_session_get_wording (self->session);
  gsize n;
  const double *kg = lb_preferences_get_weights (lb_session_get_preferences (self->session), &n);

  lb_session_do (self->session,
                 lb_change_new_variants_of_weights (document_of (self), kg, n, &wording));
}

static void
picked_cb (LbComparePage *self, int run)
{
  LbComparison *comparison = lb_comparer_get_comparison (self->comparer);
  int place = comparison ? lb_comparison_get_place (comparison, (gsize) run) : -1;

  if (place < 0 || (gsize) place >= n_variants (self))
    return;
  focus_card (self, (gsize) place);
  lb_page_scroll_to (GTK_SCROLLED_WINDOW (self->scroller), self->column, self->cards[place]);
}

/* ---- How large ---- */

static LbViewport *
viewport_of (LbMainPage *page)
{
  LbComparePage *self = LB_COMPARE_PAGE (page);

  return lb_compare_drawings_get_viewport (LB_COMPARE_DRAWINGS (self->drawings));
}

static void
lb_compare_page_zoom (LbMainPage *page, double factor)
{
  lb_compare_drawings_zoom (LB_COMPARE_DRAWINGS (LB_COMPARE_PAGE (page)->drawings), factor);
}

static void
lb_compare_page_fit (LbMainPage *page)
{
  lb_viewport_fit (viewport_of (page));
}

static void
lb_compare_page_scale_true (LbMainPage *page)
{
  lb_viewport_set_stretched (viewport_of (page), FALSE);
}

static void
lb_compare_page_scale_stretched (LbMainPage *page)
{
  lb_viewport_set_stretched (viewport_of (page), TRUE);
}

static void
lb_compare_page_main_page_init (LbMainPageInterface *iface)
{
  iface->zoom = lb_compare_page_zoom;
  iface->fit = lb_compare_page_fit;
  iface->scale_true = lb_compare_page_scale_true;
  iface->scale_stretched = lb_compare_page_scale_stretched;
}

/* ---- Making ---- */

static GtkWidget *
make_button (LbComparePage *self,
             const char *label,
             const char *tooltip,
             void (*cb) (LbComparePage *))
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_margin_bottom (button, 8);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (cb), self);
  gtk_box_append (GTK_BOX (self->column), button);
  return button;
}

static void
fill_column (LbComparePage *self)
{
  gtk_box_append (GTK_BOX (self->column), lb_page_heading (_ ("Variants of this rig")));
  gtk_box_append (
      GTK_BOX (self->column),
      lb_page_note (_ ("Each is the rig with some values changed; what it does not "
                       "change follows the rig. Differences are told from the first.")));
  self->weights = make_button (self, _ ("Compare the weights owned"),
                               _ ("Puts a variant for each weight of the preferences in their "
                                  "place, four at most"),
                               weights_cb);
  for (gsize i = 0; i < LB_MAX_VARIANTS; i++)
    {
      self->cards[i] = lb_variant_card_new (self->session, i);
      gtk_box_append (GTK_BOX (self->column), self->cards[i]);
    }
  self->add = make_button (self, _ ("Add a variant"), _ ("Four at most"), add_cb);
}

static GtkWidget *
make_panes (LbComparePage *self)
{
  GtkWidget *panes = g_object_new (GTK_TYPE_PANED, "orientation", GTK_ORIENTATION_VERTICAL, NULL);
  GtkWidget *sections = NULL;
  GtkWidget *scroller = lb_page_scroller (_ ("Differences"), &sections);

  self->drawings = lb_compare_drawings_new (self->session);
  self->table = lb_compare_table_new (self->session);
  g_signal_connect_swapped (self->drawings, "picked", G_CALLBACK (picked_cb), self);
  gtk_box_append (GTK_BOX (sections), self->table);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), TABLE_LEAST);
  gtk_paned_set_start_child (GTK_PANED (panes), self->drawings);
  gtk_paned_set_end_child (GTK_PANED (panes), scroller);
  gtk_paned_set_shrink_start_child (GTK_PANED (panes), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (panes), FALSE);
  lb_accessible_name (panes, _ ("Drawings and differences"));
  return panes;
}

static void
lb_compare_page_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  LbComparePage *self = LB_COMPARE_PAGE (widget);
  int column = 0;

  gtk_widget_measure (self->scroller, GTK_ORIENTATION_HORIZONTAL, -1, &column, NULL, NULL, NULL);
  column = MAX (column, COLUMN_WIDTH);
  /* Until somebody moves it. */
  if (!g_object_get_data (G_OBJECT (self->panes), "placed") && height > 1)
    {
      gtk_paned_set_position (GTK_PANED (self->panes), (int) (DRAWINGS_PART * height));
      g_object_set_data (G_OBJECT (self->panes), "placed", self);
    }
  gtk_widget_size_allocate (self->panes, &(GtkAllocation){ 0, 0, width - column, height }, -1);
  gtk_widget_size_allocate (self->scroller, &(GtkAllocation){ width - column, 0, column, height },
                            -1);
}

static void
lb_compare_page_measure (GtkWidget *widget,
                         GtkOrientation orientation,
                         int for_size,
                         int *minimum,
                         int *natural,
                         int *minimum_baseline,
                         int *natural_baseline)
{
  LbComparePage *self = LB_COMPARE_PAGE (widget);
  int panes, column;

  gtk_widget_measure (self->panes, orientation, -1, &panes, NULL, NULL, NULL);
  gtk_widget_measure (self->scroller, orientation, -1, &column, NULL, NULL, NULL);
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL
                            ? panes + MAX (column, COLUMN_WIDTH)
                            : MAX (panes, column);
}

static void
lb_compare_page_dispose (GObject *object)
{
  LbComparePage *self = LB_COMPARE_PAGE (object);

  if (self->comparer)
    g_signal_handlers_disconnect_by_data (self->comparer, self);
  if (self->session)
    g_signal_handlers_disconnect_by_data (self->session, self);
  lb_dispose_children (GTK_WIDGET (self));
  g_clear_object (&self->comparer);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (lb_compare_page_parent_class)->dispose (object);
}

static void
lb_compare_page_class_init (LbComparePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_compare_page_dispose;
  widget_class->map = lb_compare_page_map;
  widget_class->measure = lb_compare_page_measure;
  widget_class->size_allocate = lb_compare_page_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "lbcomparepage");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_compare_page_init (LbComparePage *self)
{
  self->outdated = TRUE;
}

GtkWidget *
lb_compare_page_new (LbSession *session)
{
  LbComparePage *self = g_object_new (LB_TYPE_COMPARE_PAGE, NULL);

  self->session = g_object_ref (session);
  self->comparer = lb_comparer_new ();
  self->panes = make_panes (self);
  self->scroller = lb_page_scroller (_ ("Variants"), &self->column);
  fill_column (self);
  gtk_widget_set_parent (self->panes, GTK_WIDGET (self));
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
  g_signal_connect_swapped (self->comparer, "compared", G_CALLBACK (compared_cb), self);
  g_signal_connect_swapped (session, "edited", G_CALLBACK (edited_cb), self);
  g_signal_connect_object (lb_session_get_preferences (session), "weights-changed",
                           G_CALLBACK (weights_changed_cb), self, G_CONNECT_SWAPPED);
  weights_changed_cb (self);
  return GTK_WIDGET (self);
}

/* ---- Parts ---- */

LbCompareDrawings *
lb_compare_page_get_drawings (LbComparePage *self)
{
  return LB_COMPARE_DRAWINGS (self->drawings);
}

LbCompareTable *
lb_compare_page_get_table (LbComparePage *self)
{
  return LB_COMPARE_TABLE (self->table);
}

LbVariantCard *
lb_compare_page_get_card (LbComparePage *self, gsize variant)
{
  g_return_val_if_fail (variant < LB_MAX_VARIANTS, NULL);
  return LB_VARIANT_CARD (self->cards[variant]);
}

GtkWidget *
lb_compare_page_get_add_button (LbComparePage *self)
{
  return self->add;
}

GtkWidget *
lb_compare_page_get_weights_button (LbComparePage *self)
{
  return self->weights;
}

gboolean
lb_compare_page_get_busy (LbComparePage *self)
{
  return self->outdated || lb_comparer_get_busy (self->comparer);
}
