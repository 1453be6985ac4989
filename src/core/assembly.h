/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* Times of spreading, placing and tightening: docs/models.md, Assembly time. */

/* What the adhesive allows in the shop's climate, s. */
typedef struct
{
  double open_s;
  double total_s;
  double clamp_s;
  double temperature_factor; /* of all three */
  double humidity_factor;    /* of the open part; of the whole for a moisture-curing adhesive */
} BsAdhesiveTimes;

BsAdhesiveTimes bs_assembly_limits (const BsAdhesive *adhesive, const BsClimate *climate,
                                    double moisture_pct);

/* One joint: spreading on its area (mm2), as one or more people do it. */
double bs_assembly_joint_s (const BsShop *shop, double area);

/* Tightening so many clamps. */
double bs_assembly_tighten_s (const BsShop *shop, int n_clamps);

/* The longest press of the plan: the whole slab, or with packs the press that takes most time; each
 * closed with the clamps of the rule. */
void bs_assembly_times (const BsStack *stack, int n_clamps, BsAssembly *assembly);

G_END_DECLS
