/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table behind fields.h. Internal to model. */
#pragma once

#include "fields.h"

extern const LbField lb_field_table[];
extern const size_t lb_field_table_length;
