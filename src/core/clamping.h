/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* Clamps by the rules that are worked by hand: docs/models.md, Hand rules for clamps. */

/* Pressure (MPa) recommended for the woods and the adhesive of a stack; NAN: no wood is known. */
typedef struct
{
  double low, high;
} BsPressureRange;

BsPressureRange bs_clamping_pressure (const BsStack *stack);

/* The thickest cauls that line both outer faces and make no clamp too short; NULL when there are
 * none. Borrowed from the plan. */
const BsCaulKind *bs_clamping_caul (const BsStack *stack);

/* What the weaker of the two outer laminations bears across the grain, MPa; NAN: unknown. */
double bs_clamping_outer_strength (const BsStack *stack);

/* Fills a rule whose positions are an empty array. */
void bs_clamping_rule (const BsStack *stack, BsClampRule *rule);

G_END_DECLS
