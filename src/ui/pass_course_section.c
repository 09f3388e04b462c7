/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The boat's course on a pass, leg by leg. */
#include <glib/gi18n.h>
#include <math.h>

#include "accessible.h"
#include "page_parts.h"
#include "pass_section.h"
#include "quantity_entry.h"

#define DEGREE (G_PI / 180)

typedef enum
{
  LEG_SPEED,
  LEG_TIME,
  LEG_TURN,
  N_LEG_ENTRIES
} LegEntry;

typedef struct
{
  GtkWidget *box;
  GtkWidget *entries[N_LEG_ENTRIES];
  GtkWidget *remove;
} Leg;

#define LB_TYPE_PASS_COURSE_SECTION (lb_pass_course_section_get_type ())
G_DECLARE_FINAL_TYPE (
    LbPassCourseSection, lb_pass_course_section, LB, PASS_COURSE_SECTION, LbPassSection)

struct _LbPassCourseSection
{
  LbPassSection parent;
  LbSession *session;
  GtkWidget *plain; /* what goes without legs */
  GtkWidget *legs;  /* box */
  Leg rows[LB_MAX_COURSE_LEGS];
  size_t n_rows; /* made so far */
  GtkWidget *add;
  GtkWidget *lasts;
};

G_DEFINE_FINAL_TYPE (LbPassCourseSection, lb_pass_course_section, LB_TYPE_PASS_SECTION)

/* ---- What legs come to ---- */

static double
speed_of (LbPassCourseSection *self, const LbCourseLeg *leg)
{
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));

  return lb_is_set (leg->speed) ? leg->speed : setup->boat.speed_over_ground;
}

static double
time_of (LbPassCourseSection *self, const LbCourseLeg *leg)
{
  double speed = speed_of (self, leg);

  if (lb_is_set (leg->duration))
    return leg->duration;
  return speed > 0 ? leg->distance / speed : LB_UNSET;
}

/* Degrees. */
static double
turn_of (LbPassCourseSection *self, const LbCourseLeg *leg)
{
  return lb_is_set (leg->turn_rate) ? leg->turn_rate * time_of (self, leg) : leg->turn;
}

/* ---- Changing ---- */

static void
do_it (LbPassCourseSection *self, const LbPassScript *script, guint gesture)
{
  lb_pass_section_do (LB_PASS_SECTION (self), script, _ ("Change the course"), gesture);
}

static void
set_leg (LbCourseLeg *leg, LegEntry which, double value)
{
  switch (which)
    {
    case LEG_SPEED:
      leg->speed = value;
      break;
    case LEG_TIME:
      leg->duration = value;
      break;
    case LEG_TURN:
      leg->turn = value / DEGREE;
      leg->turn_rate = LB_UNSET;
      break;
    case N_LEG_ENTRIES:
      break;
    }
}

static void
entered_cb (LbPassCourseSection *self, double value, LbQuantityEntry *entry)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));

  if (GTK_WIDGET (entry) == self->lasts)
    script.duration = value;
  for (size_t i = 0; i < MIN (self->n_rows, script.n_legs); i++)
    for (int k = 0; k < N_LEG_ENTRIES; k++)
      if (self->rows[i].entries[k] == GTK_WIDGET (entry))
        set_leg (&script.legs[i], (LegEntry) k, value);
  do_it (self, &script, lb_quantity_entry_get_gesture (entry));
}

static void
add_cb (LbPassCourseSection *self)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));

  if (script.n_legs >= LB_MAX_COURSE_LEGS)
    return;
  script.legs[script.n_legs++] = lb_course_leg_default ();
  /* The legs tell how long it lasts, unless that is typed anew. */
  script.duration = LB_UNSET;
  do_it (self, &script, 0);
  gtk_widget_grab_focus (self->rows[script.n_legs - 1].entries[LEG_SPEED]);
}

static void
remove_cb (LbPassCourseSection *self, GtkWidget *button)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));
  size_t i = 0;

  while (i < self->n_rows && self->rows[i].remove != button)
    i++;
  if (i >= script.n_legs)
    return;
  for (; i + 1 < script.n_legs; i++)
    script.legs[i] = script.legs[i + 1];
  script.n_legs--;
  script.duration = LB_UNSET;
  do_it (self, &script, 0);
  gtk_widget_grab_focus (self->add);
}

/* ---- Showing ---- */

static GtkWidget *
add_entry (LbPassCourseSection *self,
           GtkWidget *box,
           LbQuantity quantity,
           const char *label,
           const char *name,
           double least,
           double most)
{
  GtkWidget *entry = lb_quantity_entry_new (self->session, quantity, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), least, most);
  g_signal_connect_swapped (entry, "entered", G_CALLBACK (entered_cb), self);
  gtk_box_append (GTK_BOX (box), lb_page_row (label, entry));
  gtk_box_append (GTK_BOX (box), lb_page_fault_of (entry));
  return entry;
}

static void
make_leg (LbPassCourseSection *self)
{
  Leg *leg = &self->rows[self->n_rows++];
  int number = (int) self->n_rows;
  g_autofree char *title = g_strdup_printf (_ ("Leg %d"), number);
  g_autofree char *speed = g_strdup_printf (_ ("Leg %d: speed"), number);
  g_autofree char *time = g_strdup_printf (_ ("Leg %d: lasts"), number);
  g_autofree char *turn = g_strdup_printf (_ ("Leg %d: turn to the right"), number);
  g_autofree char *gone = g_strdup_printf (_ ("Remove leg %d"), number);

  leg->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  leg->remove = lb_page_icon_button ("user-trash-symbolic", gone);
  g_signal_connect_swapped (leg->remove, "clicked", G_CALLBACK (remove_cb), self);
  gtk_box_append (GTK_BOX (leg->box), lb_page_row (title, leg->remove));
  leg->entries[LEG_SPEED] =
      add_entry (self, leg->box, LB_QUANTITY_SPEED, _ ("Speed"), speed, 0, LB_LEG_MOST_SPEED);
  leg->entries[LEG_TIME] = add_entry (self, leg->box, LB_QUANTITY_TIME, _ ("Lasts"), time,
                                      LB_PASS_SHORTEST, LB_PASS_LONGEST);
  leg->entries[LEG_TURN] = add_entry (self, leg->box, LB_QUANTITY_ANGLE, _ ("Turn to the right"),
                                      turn, -LB_LEG_MOST_TURN * DEGREE, LB_LEG_MOST_TURN * DEGREE);
  gtk_box_append (GTK_BOX (self->legs), leg->box);
}

static void
show_leg (LbPassCourseSection *self, size_t i, const LbCourseLeg *leg)
{
  const double values[N_LEG_ENTRIES] = { speed_of (self, leg), time_of (self, leg),
                                         turn_of (self, leg) * DEGREE };

  for (int k = 0; k < N_LEG_ENTRIES; k++)
    lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->rows[i].entries[k]), values[k]);
}

static void
lb_pass_course_section_show (LbPassSection *section, const LbPassScript *script)
{
  LbPassCourseSection *self = LB_PASS_COURSE_SECTION (section);
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  LbPassJob *job = g_new (LbPassJob, 1);

  while (self->n_rows < script->n_legs)
    make_leg (self);
  for (size_t i = 0; i < self->n_rows; i++)
    {
      gtk_widget_set_visible (self->rows[i].box, i < script->n_legs);
      if (i < script->n_legs)
        show_leg (self, i, &script->legs[i]);
    }
  gtk_widget_set_visible (self->plain, script->n_legs == 0);
  gtk_widget_set_sensitive (self->add, script->n_legs < LB_MAX_COURSE_LEGS);
  if (!lb_status_is_failure (lb_pass_script_plan (script, setup, job, NULL)))
    lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->lasts), job->duration);
  else
    lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->lasts), script->duration);
  g_free (job);
}

/* ---- Making ---- */

static void
lb_pass_course_section_class_init (LbPassCourseSectionClass *klass)
{
  LB_PASS_SECTION_CLASS (klass)->show = lb_pass_course_section_show;
}

static void
lb_pass_course_section_init (LbPassCourseSection *self)
{
}

GtkWidget *
lb_pass_course_section_new (LbSession *session)
{
  LbPassCourseSection *self = g_object_new (LB_TYPE_PASS_COURSE_SECTION, NULL);
  GtkBox *box = GTK_BOX (self);

  /* Held by the parent class as long. */
  self->session = session;
  gtk_box_append (box, lb_page_heading (_ ("Course")));
  self->plain = lb_page_note (_ ("Straight upstream with the rig’s boat speed."));
  gtk_box_append (box, self->plain);
  self->legs = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (box, self->legs);
  self->add = gtk_button_new_with_label (_ ("Add a leg"));
  gtk_widget_set_tooltip_text (self->add, _ ("A stretch of the course with a speed, a time and a "
                                             "turn of its own"));
  gtk_widget_set_margin_bottom (self->add, 6);
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (add_cb), self);
  gtk_box_append (box, self->add);
  self->lasts = add_entry (self, GTK_WIDGET (self), LB_QUANTITY_TIME, _ ("The pass lasts"),
                           _ ("How long the pass lasts"), LB_PASS_SHORTEST, LB_PASS_LONGEST);
  lb_pass_section_start (LB_PASS_SECTION (self), session);
  return GTK_WIDGET (self);
}
