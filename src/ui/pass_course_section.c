/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The boat's course on a pass, leg by leg. */
#include <glib/gi18n.h>

#include "page_parts.h"
#include "pass_leg_row.h"
#include "pass_section.h"
#include "quantity_entry.h"

#define START_CHARS 12 /* "-328 ft 10 in" */

#define LB_TYPE_PASS_COURSE_SECTION (lb_pass_course_section_get_type ())
G_DECLARE_FINAL_TYPE (
    LbPassCourseSection, lb_pass_course_section, LB, PASS_COURSE_SECTION, LbPassSection)

struct _LbPassCourseSection
{
  LbPassSection parent;
  LbSession *session;
  GtkWidget *plain;                    /* what goes without legs */
  GtkWidget *legs;                     /* box */
  GtkWidget *rows[LB_MAX_COURSE_LEGS]; /* LbPassLegRow */
  size_t n_rows;                       /* made so far */
  GtkWidget *add;
  GtkWidget *lasts;
  GtkWidget *starts;
};

G_DEFINE_FINAL_TYPE (LbPassCourseSection, lb_pass_course_section, LB_TYPE_PASS_SECTION)

/* ---- Changing ---- */

static void
do_it (LbPassCourseSection *self, const LbPassScript *script, guint gesture)
{
  lb_pass_section_do (LB_PASS_SECTION (self), script, _ ("Change the course"), gesture);
}

static void
lasts_cb (LbPassCourseSection *self, double value, LbQuantityEntry *entry)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));

  script.duration = value;
  do_it (self, &script, lb_quantity_entry_get_gesture (entry));
}

static void
starts_cb (LbPassCourseSection *self, double value, LbQuantityEntry *entry)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));

  script.start = value;
  do_it (self, &script, lb_quantity_entry_get_gesture (entry));
}

/* Which leg of the script a row shows; n_legs: none. */
static size_t
leg_of (LbPassCourseSection *self, const LbPassScript *script, LbPassLegRow *row)
{
  size_t i = 0;

  while (i < MIN (self->n_rows, script->n_legs) && self->rows[i] != GTK_WIDGET (row))
    i++;
  return MIN (i, script->n_legs);
}

static void
changed_cb (LbPassCourseSection *self, guint gesture, LbPassLegRow *row)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));
  size_t i = leg_of (self, &script, row);

  if (i >= script.n_legs)
    return;
  script.legs[i] = lb_pass_leg_row_get_leg (row);
  do_it (self, &script, gesture);
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
  gtk_widget_grab_focus (
      lb_pass_leg_row_get_entry (LB_PASS_LEG_ROW (self->rows[script.n_legs - 1]), LB_LEG_SPEED));
}

static void
removed_cb (LbPassCourseSection *self, LbPassLegRow *row)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));
  size_t i = leg_of (self, &script, row);

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

static void
make_leg (LbPassCourseSection *self)
{
  GtkWidget *row = lb_pass_leg_row_new (self->session, (int) self->n_rows + 1);

  g_signal_connect_swapped (row, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (row, "removed", G_CALLBACK (removed_cb), self);
  gtk_box_append (GTK_BOX (self->legs), row);
  self->rows[self->n_rows++] = row;
}

/* What an empty entry stands for; unset: nothing. */
static void
show_own (LbPassCourseSection *self, GtkWidget *entry, LbQuantity quantity, double value)
{
  g_autofree char *words =
      lb_is_set (value) ? lb_session_dup_words (self->session, quantity, value) : NULL;

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), words);
}

/* How long it lasts and where it starts: as said, or as it comes to without. */
static void
show_ends (LbPassCourseSection *self, const LbPassScript *script, const LbSetup *setup)
{
  LbPassScript unsaid = *script;
  LbPassJob *job = g_new (LbPassJob, 1);

  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->lasts), script->duration);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->starts), script->start);
  unsaid.duration = LB_UNSET;
  lb_pass_script_plan (&unsaid, setup, job, NULL);
  show_own (self, self->lasts, LB_QUANTITY_TIME, job->duration > 0 ? job->duration : LB_UNSET);
  unsaid.start = LB_UNSET;
  lb_pass_script_plan (&unsaid, setup, job, NULL);
  show_own (self, self->starts, LB_QUANTITY_LENGTH, job->setup.boat.position);
  g_free (job);
}

static void
lb_pass_course_section_show (LbPassSection *section, const LbPassScript *script)
{
  LbPassCourseSection *self = LB_PASS_COURSE_SECTION (section);
  const LbSetup *setup = lb_document_get_setup (lb_session_get_document (self->session));
  LbLegTimes times[LB_MAX_COURSE_LEGS];

  lb_leg_times_find (script, setup, times);
  while (self->n_rows < script->n_legs)
    make_leg (self);
  for (size_t i = 0; i < self->n_rows; i++)
    {
      gtk_widget_set_visible (self->rows[i], i < script->n_legs);
      if (i < script->n_legs)
        lb_pass_leg_row_show (LB_PASS_LEG_ROW (self->rows[i]), &script->legs[i], &times[i],
                              setup->boat.speed_over_ground);
    }
  gtk_widget_set_visible (self->plain, script->n_legs == 0);
  gtk_widget_set_sensitive (self->add, script->n_legs < LB_MAX_COURSE_LEGS);
  show_ends (self, script, setup);
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

/* An entry that may be empty. */
static GtkWidget *
add_entry (LbPassCourseSection *self,
           LbQuantity quantity,
           const char *label,
           const char *name,
           const char *tooltip,
           GCallback entered_cb)
{
  GtkWidget *entry = lb_quantity_entry_new (self->session, quantity, name);

  lb_quantity_entry_set_optional (LB_QUANTITY_ENTRY (entry), TRUE);
  gtk_widget_set_tooltip_text (entry, tooltip);
  g_signal_connect_swapped (entry, "entered", entered_cb, self);
  gtk_box_append (GTK_BOX (self), lb_page_row (label, entry));
  gtk_box_append (GTK_BOX (self), lb_page_fault_of (entry));
  return entry;
}

static void
add_ends (LbPassCourseSection *self)
{
  self->lasts =
      add_entry (self, LB_QUANTITY_TIME, _ ("The pass lasts"), _ ("How long the pass lasts"),
                 _ ("Empty: as long as its course"), G_CALLBACK (lasts_cb));
  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (self->lasts), LB_PASS_SHORTEST, LB_PASS_LONGEST);
  self->starts =
      add_entry (self, LB_QUANTITY_LENGTH, _ ("Starts at"), _ ("Where the pass starts"),
                 _ ("Where the reel is at first, downstream on the scale of the bed points; empty: "
                    "where the boat is, or without a leg at the lower end of an uneven bed"),
                 G_CALLBACK (starts_cb));
  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (self->starts), -LB_PASS_FARTHEST_START,
                               LB_PASS_FARTHEST_START);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->starts), START_CHARS);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->starts), START_CHARS);
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
  add_ends (self);
  lb_pass_section_start (LB_PASS_SECTION (self), session);
  return GTK_WIDGET (self);
}
