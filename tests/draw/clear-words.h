/* SPDX-License-Identifier: GPL-3.0-or-later */
/* That words in a scene can be read. */
#pragma once

#include "scene.h"

/* No words over other words, none outside the picture. */
void assert_words_are_clear (const LbScene *scene, const char *what);

/* A filled card that is painted after words must not cover them. */
void assert_nothing_covers_words (const LbScene *scene, const char *what);
