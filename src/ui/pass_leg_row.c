/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_leg_row.h"

#include <glib/gi18n.h>

#include "accessible.h"
#include "page_parts.h"
#include "quantity_entry.h"

#define DEGREE (G_PI / 180)
#define USUAL_TIME 30 /* s, of a leg by distance that is never over */

struct _LbPassLegRow
{
  GtkBox parent;
  LbSession *session;
  LbCourseLeg leg;
  LbLegTimes times; /* what it comes to */
  gboolean showing; /* what controls emit meanwhile changes nothing */
  GtkWidget *length;
  GtkWidget *turning;
  GtkWidget *entries[LB_N_LEG_ENTRIES];
};

G_DEFINE_FINAL_TYPE (LbPassLegRow, lb_pass_leg_row, GTK_TYPE_BOX)

enum
{
  CHANGED,
  REMOVED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

typedef struct
{
  LbQuantity quantity;
  const char *name; /* N_(), for a screen reader */
  double least, most;
} Kind;

/* Turns in rad, as entries have them. */
static const Kind kinds[LB_N_LEG_ENTRIES] = {
  [LB_LEG_SPEED] = { LB_QUANTITY_SPEED, N_ ("speed"), 0, LB_LEG_MOST_SPEED },
  [LB_LEG_TIME] = { LB_QUANTITY_TIME, N_ ("lasts"), LB_PASS_SHORTEST, LB_PASS_LONGEST },
  [LB_LEG_DISTANCE] = { LB_QUANTITY_LENGTH, N_ ("distance"), LB_LEG_LEAST_DISTANCE,
                        LB_LEG_MOST_DISTANCE },
  [LB_LEG_TURN] = { LB_QUANTITY_ANGLE, N_ ("turn to the right"), -LB_LEG_MOST_TURN *DEGREE,
                    LB_LEG_MOST_TURN *DEGREE },
  [LB_LEG_TURN_RATE] = { LB_QUANTITY_ANGLE, N_ ("turn to the right each second"),
                         -LB_LEG_MOST_TURN_RATE *DEGREE, LB_LEG_MOST_TURN_RATE *DEGREE },
  [LB_LEG_LINE] = { LB_QUANTITY_LENGTH, N_ ("line out each second"), -LB_LEG_MOST_LINE_RATE,
                    LB_LEG_MOST_LINE_RATE },
};

/* ---- How the leg is given ---- */

static gboolean
by_distance (const LbCourseLeg *leg)
{
  return !lb_is_set (leg->duration);
}

static gboolean
by_rate (const LbCourseLeg *leg)
{
  return lb_is_set (leg->turn_rate);
}

/* Where the leg keeps it, and how much in SI one of what it keeps is. */
static double *
place_of (LbCourseLeg *leg, LbLegEntry which, double *unit)
{
  double *const places[LB_N_LEG_ENTRIES] = { &leg->speed, &leg->duration,  &leg->distance,
                                             &leg->turn,  &leg->turn_rate, &leg->line_rate };

  *unit = which == LB_LEG_TURN || which == LB_LEG_TURN_RATE ? DEGREE : 1;
  return places[which];
}

/* ---- What the user does ---- */

static void
entered_cb (LbPassLegRow *self, double value, LbQuantityEntry *entry)
{
  if (self->showing)
    return;
  for (int i = 0; i < LB_N_LEG_ENTRIES; i++)
    if (self->entries[i] == GTK_WIDGET (entry))
      {
        double unit, *place = place_of (&self->leg, (LbLegEntry) i, &unit);

        *place = value / unit;
      }
  g_signal_emit (self, signals[CHANGED], 0, lb_quantity_entry_get_gesture (entry));
}

/* The other way to say the same: the boat goes on as it went. */
static void
length_cb (LbPassLegRow *self)
{
  gboolean distance = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->length)) == 1;
  double time = self->times.time > 0 ? self->times.time : USUAL_TIME;

  if (self->showing || distance == by_distance (&self->leg))
    return;
  self->leg.distance = CLAMP (self->times.way, LB_LEG_LEAST_DISTANCE, LB_LEG_MOST_DISTANCE);
  self->leg.duration = distance ? LB_UNSET : CLAMP (time, LB_PASS_SHORTEST, LB_PASS_LONGEST);
  g_signal_emit (self, signals[CHANGED], 0, 0);
}

static void
turning_cb (LbPassLegRow *self)
{
  gboolean rate = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->turning)) == 1;
  double time = self->times.turning > 0 ? self->times.turning : USUAL_TIME;

  if (self->showing || rate == by_rate (&self->leg))
    return;
  if (rate)
    self->leg.turn_rate =
        CLAMP (self->leg.turn / time, -LB_LEG_MOST_TURN_RATE, LB_LEG_MOST_TURN_RATE);
  else
    {
      self->leg.turn = CLAMP (self->leg.turn_rate * time, -LB_LEG_MOST_TURN, LB_LEG_MOST_TURN);
      self->leg.turn_rate = LB_UNSET;
    }
  g_signal_emit (self, signals[CHANGED], 0, 0);
}

static void
remove_cb (LbPassLegRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

/* ---- Showing ---- */

void
lb_pass_leg_row_show (LbPassLegRow *self,
                      const LbCourseLeg *leg,
                      const LbLegTimes *times,
                      double own_speed)
{
  g_autofree char *own = NULL;

  g_return_if_fail (LB_IS_PASS_LEG_ROW (self));
  self->showing = TRUE;
  self->leg = *leg;
  self->times = *times;
  for (int i = 0; i < LB_N_LEG_ENTRIES; i++)
    {
      double unit, value = *place_of (&self->leg, (LbLegEntry) i, &unit);

      lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->entries[i]), value * unit);
    }
  own = lb_session_dup_words (self->session, LB_QUANTITY_SPEED, own_speed);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entries[LB_LEG_SPEED]), own);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->length), by_distance (leg));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->turning), by_rate (leg));
  gtk_widget_set_visible (self->entries[LB_LEG_TIME], !by_distance (leg));
  gtk_widget_set_visible (self->entries[LB_LEG_DISTANCE], by_distance (leg));
  gtk_widget_set_visible (self->entries[LB_LEG_TURN], !by_rate (leg));
  gtk_widget_set_visible (self->entries[LB_LEG_TURN_RATE], by_rate (leg));
  self->showing = FALSE;
}

/* ---- Making ---- */

static void
lb_pass_leg_row_dispose (GObject *object)
{
  /* Entries that lose the focus on the way out have nothing to change any more. */
  LB_PASS_LEG_ROW (object)->showing = TRUE;
  g_clear_object (&LB_PASS_LEG_ROW (object)->session);
  G_OBJECT_CLASS (lb_pass_leg_row_parent_class)->dispose (object);
}

static void
lb_pass_leg_row_class_init (LbPassLegRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lb_pass_leg_row_dispose;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
  signals[CHANGED] = g_signal_new ("changed", LB_TYPE_PASS_LEG_ROW, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[REMOVED] = g_signal_new ("removed", LB_TYPE_PASS_LEG_ROW, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
lb_pass_leg_row_init (LbPassLegRow *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
}

static GtkWidget *
make_entry (LbPassLegRow *self, LbLegEntry which, int number)
{
  const Kind *kind = &kinds[which];
  /* Translators: a leg of the course by its number, and what of it: "Leg 2: speed" */
  g_autofree char *name = g_strdup_printf (_ ("Leg %d: %s"), number, _ (kind->name));
  GtkWidget *entry = lb_quantity_entry_new (self->session, kind->quantity, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), kind->least, kind->most);
  g_signal_connect_swapped (entry, "entered", G_CALLBACK (entered_cb), self);
  self->entries[which] = entry;
  return entry;
}

/* A row whose words are a choice between two entries. */
static GtkWidget *
add_choice (LbPassLegRow *self,
            const char *const names[2],
            const char *name,
            GtkWidget *first,
            GtkWidget *second,
            GCallback chosen_cb)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *choice = lb_page_choice (names, 2, name);
  GtkWidget *entries = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_halign (choice, GTK_ALIGN_START);
  gtk_widget_set_hexpand (choice, TRUE);
  gtk_widget_set_valign (entries, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (row, "page-row");
  g_signal_connect_swapped (choice, "notify::selected", chosen_cb, self);
  gtk_box_append (GTK_BOX (entries), first);
  gtk_box_append (GTK_BOX (entries), second);
  gtk_box_append (GTK_BOX (row), choice);
  gtk_box_append (GTK_BOX (row), entries);
  gtk_box_append (GTK_BOX (self), row);
  gtk_box_append (GTK_BOX (self), lb_page_fault_of (first));
  gtk_box_append (GTK_BOX (self), lb_page_fault_of (second));
  return choice;
}

static void
add_row (LbPassLegRow *self, const char *label, LbLegEntry which, const char *tooltip)
{
  gtk_widget_set_tooltip_text (self->entries[which], tooltip);
  gtk_box_append (GTK_BOX (self), lb_page_row (label, self->entries[which]));
  gtk_box_append (GTK_BOX (self), lb_page_fault_of (self->entries[which]));
}

GtkWidget *
lb_pass_leg_row_new (LbSession *session, int number)
{
  LbPassLegRow *self = g_object_new (LB_TYPE_PASS_LEG_ROW, NULL);
  const char *const lengths[2] = { _ ("Lasts"), _ ("Distance") };
  const char *const turns[2] = { _ ("Turn right"), _ ("Turn right each s") };
  g_autofree char *title = g_strdup_printf (_ ("Leg %d"), number);
  g_autofree char *gone = g_strdup_printf (_ ("Remove leg %d"), number);
  g_autofree char *length = g_strdup_printf (_ ("Leg %d is given by"), number);
  g_autofree char *turn = g_strdup_printf (_ ("The turn of leg %d is given by"), number);
  GtkWidget *remove = lb_page_icon_button ("user-trash-symbolic", gone);

  self->session = g_object_ref (session);
  lb_accessible_name (GTK_WIDGET (self), title);
  for (int i = 0; i < LB_N_LEG_ENTRIES; i++)
    make_entry (self, (LbLegEntry) i, number);
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (remove_cb), self);
  gtk_box_append (GTK_BOX (self), lb_page_row (title, remove));
  lb_quantity_entry_set_optional (LB_QUANTITY_ENTRY (self->entries[LB_LEG_SPEED]), TRUE);
  add_row (self, _ ("Speed"), LB_LEG_SPEED, _ ("Over the ground; empty: the rig’s boat speed"));
  self->length = add_choice (self, lengths, length, self->entries[LB_LEG_TIME],
                             self->entries[LB_LEG_DISTANCE], G_CALLBACK (length_cb));
  self->turning = add_choice (self, turns, turn, self->entries[LB_LEG_TURN],
                              self->entries[LB_LEG_TURN_RATE], G_CALLBACK (turning_cb));
  add_row (self, _ ("Line out each s"), LB_LEG_LINE,
           _ ("How much line the hand lets out each second; below zero it takes line in"));
  return GTK_WIDGET (self);
}

LbCourseLeg
lb_pass_leg_row_get_leg (LbPassLegRow *self)
{
  g_return_val_if_fail (LB_IS_PASS_LEG_ROW (self), lb_course_leg_default ());
  return self->leg;
}

GtkWidget *
lb_pass_leg_row_get_entry (LbPassLegRow *self, LbLegEntry which)
{
  g_return_val_if_fail (LB_IS_PASS_LEG_ROW (self), NULL);
  return self->entries[which];
}

GtkWidget *
lb_pass_leg_row_get_length (LbPassLegRow *self)
{
  g_return_val_if_fail (LB_IS_PASS_LEG_ROW (self), NULL);
  return self->length;
}

GtkWidget *
lb_pass_leg_row_get_turning (LbPassLegRow *self)
{
  g_return_val_if_fail (LB_IS_PASS_LEG_ROW (self), NULL);
  return self->turning;
}
