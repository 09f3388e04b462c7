/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "file_error.h"

G_DEFINE_QUARK (lb - file - error - quark, lb_file_error)
