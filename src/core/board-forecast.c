/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/board-forecast.h"

#include <math.h>

static double
or_none (double measured)
{
  return isnan (measured) ? 0.0 : measured;
}

BsRough
bs_board_rough (const BsBoard *board)
{
  return (BsRough){
    .length = board->length,
    .width = board->width,
    .thickness = board->thickness,
    .bow = or_none (board->bow),
    .crook = or_none (board->crook),
    .cup = or_none (board->cup),
    .twist = or_none (board->twist),
  };
}

BsBoardForecast
bs_board_forecast (const BsBoard *board, const BsPlan *plan)
{
  BsMillingShop shop = bs_milling_shop_of (plan);
  BsRough rough = bs_board_rough (board);
  BsBoardForecast self = {
    .crosscut = rough,
    .width = NAN,
    .is_measured = isfinite (board->bow) && isfinite (board->cup) && isfinite (board->twist),
  };
  double length = plan->slab.length;

  if (plan->slab.layup == BS_LAYUP_ON_EDGE)
    self.width = plan->slab.thickness + 2.0 * plan->slab.allowance;
  BsMillingYield yield
      = bs_milling_yield (&rough, length, isnan (self.width) ? rough.width : self.width, &shop);
  self.n_lengths = yield.n_lengths;
  if (self.n_lengths > 0)
    self.crosscut = bs_milling_piece (&rough, length, rough.width);

  self.piece = self.crosscut;
  if (isfinite (self.width))
    {
      double strip = bs_milling_strip (self.width, self.crosscut.length, &shop);
      self.n_strips = bs_milling_count (&self.crosscut, self.width, &shop);
      if (self.n_strips > 0)
        self.piece = bs_milling_piece (&rough, self.crosscut.length, strip);
    }
  self.thickness = bs_milling_thickness (&self.piece, shop.allowance);
  self.cautions = bs_milling_cautions (&self.crosscut, &shop);
  return self;
}

void
bs_board_forecast_explain (const BsBoardForecast *self, const BsPlan *plan, BsWorking *why)
{
  BsMillingShop shop = bs_milling_shop_of (plan);

  bs_milling_explain (&self->piece, shop.allowance, why);
}
