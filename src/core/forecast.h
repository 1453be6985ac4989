/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/flatten-spread.h"
#include "core/progress.h"
#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* How sure the thickness is: what takes too long for every step of a drag. Owns its parts. */
typedef struct
{
  BsStack *stack; /* holds a reference to the plan */
  BsFlattenOdds odds;
  double height_needed; /* mm, for the wished thickness in 95 of a hundred slabs */
} BsForecast;

/* Pure; NULL when progress asked it to stop. */
BsForecast *bs_forecast_new (const BsPlan *plan, const BsProgress *progress);
void bs_forecast_free (BsForecast *self);

/* Appends how sure the thickness is to its working; NULL: not known yet. */
void bs_forecast_add_odds (const BsForecast *self, BsWorking *thickness);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsForecast, bs_forecast_free)

G_END_DECLS
