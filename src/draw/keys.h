/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Keys: numbers that stay the same as long as what is painted does. For the files of this folder
 * only. */
#pragma once

#include <glib.h>
#include <string.h>

#include "scene_build.h"

static inline guint64
lb_key_mix (guint64 key, guint64 value)
{
  key ^= value + G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) + (key << 6) + (key >> 2);
  return key * G_GUINT64_CONSTANT (0xff51afd7ed558ccd);
}

static inline guint64
lb_key_mix_number (guint64 key, double number)
{
  guint64 bits;

  memcpy (&bits, &number, sizeof bits);
  return lb_key_mix (key, bits);
}

/* Mixes in how a path looks, wherever it is. */
static inline guint64
lb_key_mix_look (guint64 key, const LbLook *look)
{
  key = lb_key_mix (key, look->fill | look->fill_low << 8 | look->stroke << 16
                             | (guint64) look->pattern << 24);
  return lb_key_mix_number (lb_key_mix_number (key, look->width), look->opacity);
}

static inline guint64
lb_key_mix_box (guint64 key, LbBox box)
{
  key = lb_key_mix_number (lb_key_mix_number (key, box.x), box.y);
  return lb_key_mix_number (lb_key_mix_number (key, box.width), box.height);
}
