/* SPDX-License-Identifier: GPL-3.0-or-later */
/* All that can be chosen for the card, in a column that scrolls. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

GtkWidget *lb_card_choices_new (LbSession *session);
