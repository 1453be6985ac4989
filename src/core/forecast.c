/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/forecast.h"

#include <glib/gi18n-lib.h>
#include <math.h>

BsForecast *
bs_forecast_new (const BsPlan *plan, const BsProgress *progress)
{
  g_autoptr (BsForecast) self = g_new0 (BsForecast, 1);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);

  self->stack = bs_stack_new (plan);
  self->odds = bs_flatten_odds (self->stack, &spread);
  self->height_needed = bs_flatten_height_needed (self->stack, &spread, plan->slab.thickness);
  return bs_progress_report (progress, 1.0) ? g_steal_pointer (&self) : NULL;
}

void
bs_forecast_free (BsForecast *self)
{
  bs_stack_free (self->stack);
  g_free (self);
}

void
bs_forecast_add_odds (const BsForecast *self, BsWorking *thickness)
{
  const char *source = self != NULL ? N_ ("2,000 drawn slabs") : N_ ("working…");

  bs_working_add (thickness, N_ ("thickness reached in 50 of 100 slabs"), "",
                  self != NULL ? self->odds.at_50_pct : NAN, BS_QUANTITY_LENGTH, source);
  bs_working_add (thickness, N_ ("thickness reached in 90 of 100 slabs"), "",
                  self != NULL ? self->odds.at_90_pct : NAN, BS_QUANTITY_LENGTH, source);
  bs_working_add (thickness, N_ ("thickness reached in 95 of 100 slabs"), "",
                  self != NULL ? self->odds.at_95_pct : NAN, BS_QUANTITY_LENGTH, source);
  bs_working_add (thickness,
                  N_ ("height to mill all laminations to, for the wished thickness in 95 of 100"),
                  "", self != NULL ? self->height_needed : NAN, BS_QUANTITY_LENGTH, source);
}
