/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Which part of the catalogue a part of a rig is, judged by its values. */
#pragma once

#include "catalogue.h"

/* The first part of the catalogue whose values are those given, but for rounding; NULL when there
 * is none. A value that is unset on either side does not count, nor do a line's drag and strum,
 * which depend on how it is used. `uses` (LbLineUse): where the line must do. (transfer none) */
const LbCatalogueWeight *lb_catalogue_match_weight (const LbCatalogue *catalogue,
                                                    const LbWeight *weight);
const LbCatalogueLine *
lb_catalogue_match_line (const LbCatalogue *catalogue, const LbLine *line, guint uses);
const LbCatalogueLure *lb_catalogue_match_lure (const LbCatalogue *catalogue, const LbLure *lure);
