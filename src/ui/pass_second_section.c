/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A second rig on the other side of the boat. */
#include <glib/gi18n.h>

#include "page_parts.h"
#include "pass_section.h"
#include "quantity_entry.h"

#define LB_TYPE_PASS_SECOND_SECTION (lb_pass_second_section_get_type ())
G_DECLARE_FINAL_TYPE (
    LbPassSecondSection, lb_pass_second_section, LB, PASS_SECOND_SECTION, LbPassSection)

struct _LbPassSecondSection
{
  LbPassSection parent;
  GtkWidget *check;
  GtkWidget *details; /* box */
  GtkWidget *weight;
  GtkWidget *apart;
};

G_DEFINE_FINAL_TYPE (LbPassSecondSection, lb_pass_second_section, LB_TYPE_PASS_SECTION)

static void
lb_pass_second_section_show (LbPassSection *section, const LbPassScript *script)
{
  LbPassSecondSection *self = LB_PASS_SECOND_SECTION (section);
  gboolean two = lb_is_set (script->second_weight);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->check), two);
  gtk_widget_set_visible (self->details, two);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->weight), script->second_weight);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->apart), script->reels_apart);
}

/* At first both have the same weight. */
static void
toggled_cb (LbPassSecondSection *self)
{
  LbSession *session = lb_pass_section_get_session (LB_PASS_SECTION (self));
  gboolean two = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check));
  LbPassScript script;

  if (!session)
    return;
  script = lb_pass_section_get_script (LB_PASS_SECTION (self));
  if (two == lb_is_set (script.second_weight))
    return;
  script.second_weight =
      two ? lb_document_get_setup (lb_session_get_document (session))->rig.weight.mass : LB_UNSET;
  lb_pass_section_do (LB_PASS_SECTION (self), &script,
                      two ? _ ("Add a second rig") : _ ("Remove the second rig"), 0);
}

static void
entered_cb (LbPassSecondSection *self, double value, LbQuantityEntry *entry)
{
  LbPassScript script = lb_pass_section_get_script (LB_PASS_SECTION (self));

  if (GTK_WIDGET (entry) == self->weight)
    script.second_weight = value;
  else
    script.reels_apart = value;
  lb_pass_section_do (LB_PASS_SECTION (self), &script, _ ("Change the second rig"),
                      lb_quantity_entry_get_gesture (entry));
}

static void
lb_pass_second_section_class_init (LbPassSecondSectionClass *klass)
{
  LB_PASS_SECTION_CLASS (klass)->show = lb_pass_second_section_show;
}

static void
lb_pass_second_section_init (LbPassSecondSection *self)
{
}

static GtkWidget *
add_entry (LbPassSecondSection *self,
           LbSession *session,
           LbQuantity quantity,
           const char *label,
           const char *name,
           double least,
           double most)
{
  GtkWidget *entry = lb_quantity_entry_new (session, quantity, name);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), least, most);
  g_signal_connect_swapped (entry, "entered", G_CALLBACK (entered_cb), self);
  gtk_box_append (GTK_BOX (self->details), lb_page_row (label, entry));
  gtk_box_append (GTK_BOX (self->details), lb_page_fault_of (entry));
  return entry;
}

GtkWidget *
lb_pass_second_section_new (LbSession *session)
{
  LbPassSecondSection *self = g_object_new (LB_TYPE_PASS_SECOND_SECTION, NULL);
  GtkBox *box = GTK_BOX (self);

  gtk_box_append (box, lb_page_heading (_ ("Two rigs")));
  self->check = lb_page_check (_ ("A second rig on the left of the boat"));
  g_signal_connect_swapped (self->check, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_box_append (box, self->check);
  self->details = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (box, self->details);
  gtk_box_append (
      GTK_BOX (self->details),
      lb_page_note (
          _ ("Like the first, with a weight of its own: drawn with dashed lines and hollow "
             "bodies, and with squares on its lines in the chart.")));
  self->weight =
      add_entry (self, session, LB_QUANTITY_MASS, _ ("Its weight"), _ ("Weight of the second rig"),
                 LB_SECOND_LEAST_WEIGHT, LB_SECOND_MOST_WEIGHT);
  self->apart =
      add_entry (self, session, LB_QUANTITY_LENGTH, _ ("Reels apart"),
                 _ ("How far the reels are apart"), LB_REELS_LEAST_APART, LB_REELS_MOST_APART);
  lb_pass_section_start (LB_PASS_SECTION (self), session);
  return GTK_WIDGET (self);
}
