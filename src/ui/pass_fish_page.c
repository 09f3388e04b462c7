/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pass_fish_page.h"

#include <glib/gi18n.h>

#include "dispose.h"
#include "fish_words.h"
#include "lure_choice.h"
#include "page_parts.h"
#include "quantity_entry.h"

#define USUAL_LENGTH 0.762 /* m: 30 in */
#define FASTEST 5.0        /* m/s */

/* What is asked of the thread, and its answer. */
typedef struct
{
  LbResult *result; /* (owned) */
  size_t lure;
  double length;
  double reduced;
  LbFishOn on;
} Question;

struct _LbPassFishPage
{
  GtkBox parent;
  LbSession *session;
  GtkWidget *lure;
  GtkWidget *length;
  GtkWidget *speed;
  GtkWidget *sentence;
  GtkWidget *table; /* box */
  LbReadingsTable *shown;
  GCancellable *asked; /* the question that is being answered; NULL: none */
  gboolean outdated;   /* its answer is no longer wanted */
  gboolean chosen;     /* a lure, by the page or its user */
};

G_DEFINE_FINAL_TYPE (LbPassFishPage, lb_pass_fish_page, GTK_TYPE_BOX)

static void update (LbPassFishPage *self);

/* ---- The thread ---- */

static void
question_free (gpointer data)
{
  g_object_unref (((Question *) data)->result);
  g_free (data);
}

static void
answer_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Question *question = data;

  question->on = lb_fish_on (question->result, question->lure, question->length, question->reduced);
  g_task_return_boolean (task, TRUE);
}

static void
say (LbPassFishPage *self, const char *text, LbReadingsTable *table)
{
  gtk_label_set_text (GTK_LABEL (self->sentence), text);
  g_clear_pointer (&self->shown, lb_readings_table_free);
  self->shown = table;
  lb_page_show_table (self->table, table);
}

static void
answered_cb (GObject *source, GAsyncResult *answer, gpointer data)
{
  LbPassFishPage *self = LB_PASS_FISH_PAGE (source);
  Question *question = g_task_get_task_data (G_TASK (answer));
  gboolean gone = g_cancellable_is_cancelled (g_task_get_cancellable (G_TASK (answer)));

  g_clear_object (&self->asked);
  if (gone)
    return;
  if (self->outdated)
    update (self);
  else
    {
      LbWording wording = lb_session_get_wording (self->session);
      const LbSetup *setup = lb_result_get_setup (question->result);
      g_autofree char *sentence = lb_fish_words_sentence (setup, &question->on, &wording);

      say (self, sentence, lb_fish_words_table (setup, &question->on, &wording));
    }
}

static void
ask (LbPassFishPage *self, LbResult *result, size_t lure)
{
  Question *question;
  g_autoptr (GTask) task = NULL;
  double reduced = lb_quantity_entry_get_value (LB_QUANTITY_ENTRY (self->speed));

  if (self->asked)
    return;
  question = g_new0 (Question, 1);
  question->result = g_object_ref (result);
  question->lure = lure;
  question->length = lb_quantity_entry_get_value (LB_QUANTITY_ENTRY (self->length));
  question->reduced =
      lb_is_set (reduced) ? reduced : lb_result_get_setup (result)->boat.speed_over_ground / 2;
  self->asked = g_cancellable_new ();
  task = g_task_new (self, self->asked, answered_cb, NULL);
  g_task_set_return_on_cancel (task, FALSE);
  g_task_set_task_data (task, question, question_free);
  g_task_run_in_thread (task, answer_in_thread);
}

/* ---- Following the answers ---- */

static void
update (LbPassFishPage *self)
{
  LbResult *result = lb_session_get_result (self->session);
  int lure;

  /* Whatever is shown now, the answer that is still to come belongs to what was before. */
  self->outdated = self->asked != NULL;
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  if (!result || lb_result_get_failed (result))
    {
      say (self, _ ("The rig has no answer as it is."), NULL);
      return;
    }
  lb_lure_choice_update (self->lure, lb_result_get_setup (result));
  if (!self->chosen && lb_result_get_setup (result)->rig.n_leaders > 0)
    {
      self->chosen = TRUE;
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->lure), 1);
      return;
    }
  lure = lb_lure_choice_get (self->lure);
  if (lure >= 0)
    ask (self, result, (size_t) lure);
  else
    say (self, _ ("No fish is on."), NULL);
}

/* ---- The widget ---- */

static void
lb_pass_fish_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (lb_pass_fish_page_parent_class)->map (widget);
  update (LB_PASS_FISH_PAGE (widget));
}

static void
lb_pass_fish_page_dispose (GObject *object)
{
  LbPassFishPage *self = LB_PASS_FISH_PAGE (object);

  lb_dispose_session (&self->session, self);
  if (self->asked)
    g_cancellable_cancel (self->asked);
  g_clear_object (&self->asked);
  g_clear_pointer (&self->shown, lb_readings_table_free);
  G_OBJECT_CLASS (lb_pass_fish_page_parent_class)->dispose (object);
}

static void
lb_pass_fish_page_class_init (LbPassFishPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lb_pass_fish_page_dispose;
  widget_class->map = lb_pass_fish_page_map;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lb_pass_fish_page_init (LbPassFishPage *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card-section");
}

static GtkWidget *
add_entry (LbPassFishPage *self, LbQuantity quantity, const char *label, double least, double most)
{
  GtkWidget *entry = lb_quantity_entry_new (self->session, quantity, label);

  lb_quantity_entry_set_range (LB_QUANTITY_ENTRY (entry), least, most);
  g_signal_connect_swapped (entry, "entered", G_CALLBACK (update), self);
  gtk_box_append (GTK_BOX (self), lb_page_row (label, entry));
  gtk_box_append (GTK_BOX (self), lb_page_fault_of (entry));
  return entry;
}

static void
add_choices (LbPassFishPage *self)
{
  self->lure = lb_lure_choice_new (_ ("none"), _ ("The lure it took"));
  g_signal_connect_swapped (self->lure, "notify::selected", G_CALLBACK (update), self);
  gtk_box_append (GTK_BOX (self), lb_page_row (_ ("It took the"), self->lure));
  self->length = add_entry (self, LB_QUANTITY_LENGTH, _ ("Length of the fish"), LB_FISH_SHORTEST,
                            LB_FISH_LONGEST);
  lb_quantity_entry_set_value (LB_QUANTITY_ENTRY (self->length), USUAL_LENGTH);
  self->speed = add_entry (self, LB_QUANTITY_SPEED, _ ("Reduced speed"), 0, FASTEST);
  lb_quantity_entry_set_optional (LB_QUANTITY_ENTRY (self->speed), TRUE);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->speed), _ ("half"));
  gtk_widget_set_tooltip_text (self->speed,
                               _ ("Boat speed over the ground; empty: half of what it is"));
}

GtkWidget *
lb_pass_fish_page_new (LbSession *session)
{
  LbPassFishPage *self = g_object_new (LB_TYPE_PASS_FISH_PAGE, NULL);
  GtkBox *box = GTK_BOX (self);

  self->session = g_object_ref (session);
  gtk_box_append (box, lb_page_heading (_ ("With a fish on")));
  add_choices (self);
  self->sentence = lb_page_label (NULL, NULL);
  gtk_box_append (box, self->sentence);
  self->table = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_add_css_class (self->table, "card-section");
  gtk_box_append (box, self->table);
  gtk_box_append (box, lb_page_caution (lb_fish_words_note ()));
  gtk_box_append (
      box, lb_page_caution (_ ("Mind the hooks: those of the other lures come in with the fish.")));
  gtk_box_append (
      box,
      lb_page_note (_ ("An estimate: a limp fish in tow, as drag alone. Closed mouth: skin and "
                       "form drag on a wetted area of 0.4 length², coefficient 0.015 (Webb 1975); "
                       "open: besides, a cup a tenth of its length wide, coefficient 1.4 (Hoerner "
                       "1965). All from memory; the shares of the length are estimates.")));
  g_signal_connect_swapped (session, "solved", G_CALLBACK (update), self);
  g_signal_connect_swapped (session, "reworded", G_CALLBACK (update), self);
  return GTK_WIDGET (self);
}

gboolean
lb_pass_fish_page_get_settled (LbPassFishPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_FISH_PAGE (self), FALSE);
  return self->asked == NULL;
}

GtkWidget *
lb_pass_fish_page_get_lure (LbPassFishPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_FISH_PAGE (self), NULL);
  return self->lure;
}

GtkWidget *
lb_pass_fish_page_get_length (LbPassFishPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_FISH_PAGE (self), NULL);
  return self->length;
}

GtkWidget *
lb_pass_fish_page_get_speed (LbPassFishPage *self)
{
  g_return_val_if_fail (LB_IS_PASS_FISH_PAGE (self), NULL);
  return self->speed;
}

char *
lb_pass_fish_page_dup_text (LbPassFishPage *self)
{
  GString *text;

  g_return_val_if_fail (LB_IS_PASS_FISH_PAGE (self), NULL);
  text = g_string_new (gtk_label_get_text (GTK_LABEL (self->sentence)));
  lb_page_table_text (text, self->shown);
  return g_string_free (text, FALSE);
}
