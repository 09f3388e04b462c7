/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the hand does on a pass. */
#include <glib/gi18n.h>

#include "page_parts.h"
#include "pass_section.h"
#include "quantity_entry.h"

#define LB_TYPE_PASS_HAND_SECTION (lb_pass_hand_section_get_type ())
G_DECLARE_FINAL_TYPE (LbPassHandSection, lb_pass_hand_section, LB, PASS_HAND_SECTION, LbPassSection)

struct _LbPassHandSection
{
  LbPassSection parent;
  GtkWidget *motion;
  GtkWidget *details; /* box: stroke and period */
  GtkWidget *note;
  GtkWidget *stroke;
  GtkWidget *period;
  GtkWidget *tangle;
};

G_DEFINE_FINAL_TYPE (LbPassHandSection, lb_pass_hand_section, LB_TYPE_PASS_SECTION)

static const char *
note_of (LbHandMotion motion)
{
  if (motion == LB_HAND_LIFT_AND_DROP)
    return _ ("The line is taken in by the stroke and let out again, over and over.");
  if (motion == LB_HAND_FOLLOW_BED)
    return _ ("Line is let out until the weight touches, taken in by the stroke, and held for the "
              "period, over and over.");
  return _ ("The line is held.");
}

static void
lb_pass_hand_section_show (LbPassSection *section, const LbPassScript *script)
{
  LbPassHandSection *self = LB_PASS_HAND_SECTION (section);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->motion), script->hand.motion);
  gtk_label_set_text (GTK_LABEL (self->note), note_of (script->hand.motion));
  gtk_widget_set_visible (self->details, script->hand.motion != LB_HAND_HOLD);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->stroke), script->hand.stroke);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->period), script->hand.period);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->tangle), script->tangle_distance);
}

static void
motion_cb (LbPassHandSection *self)
{
  LbPassScript script;
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->motion));

  if (!lb_pass_section_get_session (LB_PASS_SECTION (self)) || chosen > LB_HAND_FOLLOW_BED)
    return;
  script = lb_pass_section_get_script (LB_PASS_SECTION (self));
  script.hand.motion = (LbHandMotion) chosen;
  lb_pass_section_do (LB_PASS_SECTION (self), &script, _ ("Change the hand’s motion"), 0);
}

static void
entered_cb (LbPassHandSection *self, double value, LbQuantityEntry *entry)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));
  gboolean is_tangle = GTK_WIDGET (entry) == self->tangle;

  if (is_tangle)
    script.tangle_distance = value;
  else if (GTK_WIDGET (entry) == self->stroke)
    script.hand.stroke = value;
  else
    script.hand.period = value;
  lb_pass_section_do (LB_PASS_SECTION (self), &script,
                      is_tangle ? _ ("Change how near lines may come")
                                : _ ("Change the hand’s motion"),
                      lb_quantity_entry_get_gesture (entry));
}

static void
lb_pass_hand_section_class_init (LbPassHandSectionClass *klass)
{
  LB_PASS_SECTION_CLASS (klass)->show = lb_pass_hand_section_show;
}

static void
lb_pass_hand_section_init (LbPassHandSection *self)
{
}

static GtkWidget *
add_entry (LbPassHandSection *self,
           LbSession *session,
           GtkWidget *box,
           LbQuantity quantity,
           const char *label,
           const char *name,
           double least,
           double most)
{
  GtkWidget *entry = lb_quantity_entry_new (session, quantity, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), least, most);
  g_signal_connect_swapped (entry, "entered", G_CALLBACK (entered_cb), self);
  gtk_box_append (GTK_BOX (box), lb_page_row (label, entry));
  gtk_box_append (GTK_BOX (box), lb_page_fault_of (entry));
  return entry;
}

GtkWidget *
lb_pass_hand_section_new (LbSession *session)
{
  LbPassHandSection *self = g_object_new (LB_TYPE_PASS_HAND_SECTION, NULL);
  const char *const motions[] = { _ ("holds the line"), _ ("lifts and drops"),
                                  _ ("follows the bed") };
  GtkBox *box = GTK_BOX (self);

  gtk_box_append (box, lb_page_heading (_ ("Hand")));
  self->motion = lb_page_choice (motions, G_N_ELEMENTS (motions), _ ("What the hand does"));
  g_signal_connect_swapped (self->motion, "notify::selected", G_CALLBACK (motion_cb), self);
  gtk_box_append (box, lb_page_row (_ ("The hand"), self->motion));
  self->note = lb_page_note (NULL);
  gtk_box_append (box, self->note);
  self->details = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (box, self->details);
  self->stroke = add_entry (self, session, self->details, LB_QUANTITY_HEIGHT, _ ("Stroke"),
                            _ ("Stroke of the hand"), LB_HAND_LEAST_STROKE, LB_HAND_MOST_STROKE);
  self->period = add_entry (self, session, self->details, LB_QUANTITY_TIME, _ ("Period"),
                            _ ("Period of the hand"), LB_HAND_LEAST_PERIOD, LB_HAND_MOST_PERIOD);
  gtk_box_append (box, lb_page_heading (_ ("Tangles")));
  self->tangle =
      add_entry (self, session, GTK_WIDGET (self), LB_QUANTITY_HEIGHT, _ ("Mark lines nearer than"),
                 _ ("Mark lines nearer than"), 0, LB_PASS_MOST_TANGLE);
  lb_pass_section_start (LB_PASS_SECTION (self), session);
  return GTK_WIDGET (self);
}
