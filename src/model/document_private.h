/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How change objects and the history write to a document. Internal to model. */
#pragma once

#include "document.h"

/* The contents, to be changed in place; call lb_document_emit_changed() afterwards. */
LbContents *lb_document_edit (LbDocument *self);

void lb_document_emit_changed (LbDocument *self);
void lb_document_set_modified (LbDocument *self, gboolean modified);
void lb_document_notify_title (LbDocument *self);
