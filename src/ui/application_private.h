/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the files of the application share. */
#pragma once

#include "application.h"
#include "appearance.h"
#include "recovery.h"

#define N_SIGNALS_WATCHED 3

struct _LbApplication
{
  GtkApplication parent;
  LbPreferences *preferences;
  LbAppearance *appearance;
  LbRecovery *recovery;
  gboolean quitting;
  guint quit_id;
  gboolean offered; /* what was lost */
  guint offer_id;
  guint signal_ids[N_SIGNALS_WATCHED];
};

/* application_end.c */
void lb_application_quit (LbApplication *self);
void lb_application_go_on_quitting (LbApplication *self);
void lb_application_stay (LbApplication *self);
void lb_application_offer_lost (LbApplication *self);
void lb_application_watch_signals (LbApplication *self);
void lb_application_end_dispose (LbApplication *self);
