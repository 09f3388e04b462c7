/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A section of the choices for the pass: what all of them have in common. A section shows what the
 * document's pass says and changes it in steps of the history. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

#define LB_TYPE_PASS_SECTION (lb_pass_section_get_type ())
G_DECLARE_DERIVABLE_TYPE (LbPassSection, lb_pass_section, LB, PASS_SECTION, GtkBox)

struct _LbPassSectionClass
{
  GtkBoxClass parent_class;

  /* Shows `script`; what its controls emit meanwhile changes nothing. */
  void (*show) (LbPassSection *self, const LbPassScript *script);
};

/* Call when all controls are made: shows the pass, and again whenever it or the units change. */
void lb_pass_section_start (LbPassSection *self, LbSession *session);

LbSession *lb_pass_section_get_session (LbPassSection *self); /* (transfer none) */

/* The document's, to be changed and handed to lb_pass_section_do(). */
LbPassScript lb_pass_section_get_script (LbPassSection *self);

/* Makes `script` the document's, as a step called `label` (translated) in `gesture` (0: of none).
 */
void lb_pass_section_do (LbPassSection *self,
                         const LbPassScript *script,
                         const char *label,
                         guint gesture);

/* ---- The sections ---- */

/* The course's legs, and how long the pass lasts. */
GtkWidget *lb_pass_course_section_new (LbSession *session);

/* What the hand does, and how near lines may come to one another. */
GtkWidget *lb_pass_hand_section_new (LbSession *session);

/* A second rig on the other side of the boat. */
GtkWidget *lb_pass_second_section_new (LbSession *session);

G_END_DECLS
