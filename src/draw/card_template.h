/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The shank at its true size, to lay the line on and mark it; for the files of this folder only. */
#pragma once

#include "card_page.h"

/* Appends the pages (LbCardPage, owned by `pages`) on sheets of `width` x `height`, which stand
 * upright whichever way they are given. Nothing without a shank. FALSE when the sheets are too
 * small for it. */
bool lb_card_template_add (LbCardPen *pen, double width, double height, GPtrArray *pages);
