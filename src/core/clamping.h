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

/* Fills a rule whose positions are an empty array. */
void bs_clamping_rule (const BsStack *stack, BsClampRule *rule);

G_END_DECLS
