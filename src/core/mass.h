/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"

G_BEGIN_DECLS

#define BS_M3_PER_MM3 1e-9

/* Mass (kg) of the slab flattened to a thickness (mm) and not yet trimmed; NAN when a wood is
 * unknown or there is no slab. A lamination of unknown moisture counts as at moisture_pct. Source:
 * docs/models.md, Mass */
double bs_mass_slab (const BsStack *stack, double thickness, double moisture_pct);

/* The same of one lamination, of a height (mm). */
double bs_mass_placed (const BsPlaced *placed, double height, double moisture_pct);

/* All glue lines together, mm2. */
double bs_mass_glue_area (const BsStack *stack);

/* Adhesive (kg) on all glue lines, nothing added for what is wasted. */
double bs_mass_glue (const BsStack *stack);

/* What may be lifted (kg): what the person said, or the figure of core/lifting.h for that many
 * people under the best conditions. */
double bs_mass_most_lifted (const BsShop *shop);

G_END_DECLS
