/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "core/working.h"

G_BEGIN_DECLS

/* The fibre saturation point of the handbook's formulas, %: above it wood no longer swells. */
#define BS_FIBRE_SATURATION_PCT 30.0

/* Equilibrium moisture content: what wood comes to, sooner or later, in air that stays as it is.
 *
 * Given:    temperature (degrees C, -40 to 60), relative humidity (%, 0 to 100)
 * Returned: moisture content (% of the oven-dry mass)
 * Model:    fit to one set of data; the wood and its past shift it by about 1 %
 * Source:   docs/models.md, Moisture, equation (1) */
double bs_moisture_emc (double temperature_c, double humidity_pct);

/* The driest and the dampest that a slab gets where it will live. */
void bs_moisture_seasons (const BsSlab *slab, double *low_pct, double *high_pct);

/* What wood comes to in the shop, and how that came about. */
void bs_moisture_explain_shop (const BsShop *shop, BsWorking *why);

/* Density (kg/m3) of a wood at a moisture content below fibre saturation (30 %); above that the
 * same volume holds more water. Source: docs/models.md, Mass, equations (1) to (3) */
double bs_moisture_density (double sg_12, double moisture_pct);

G_END_DECLS
