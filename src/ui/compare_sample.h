/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A short piece of the line that a run of a comparison is drawn with, for beside its name. */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

GtkWidget *lb_compare_sample_new (LbSession *session, gsize run);
