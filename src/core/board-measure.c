/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/board-measure.h"

#include "core/lumber-sizes.h"
#include "core/units.h"

#include <math.h>

#define MM3_PER_M3 1e9
#define MM_PER_FOOT (12.0 * BS_MM_PER_INCH)

/* Sizes that were typed in inches come back from millimetres with an error of rounding only. */
#define ROUNDING_IN 1e-6

double
bs_board_feet (double thickness, double width, double length)
{
  return MAX (thickness, BS_MM_PER_INCH) * width * length / BS_MM3_PER_BOARD_FOOT;
}

double
bs_board_cubic_metres (double thickness, double width, double length)
{
  return thickness * width * length / MM3_PER_M3;
}

BsBoardsSum
bs_boards_sum (const GPtrArray *boards)
{
  BsBoardsSum sum = { .n = boards->len };

  for (guint i = 0; i < boards->len; i++)
    {
      const BsBoard *board = boards->pdata[i];

      sum.board_feet += bs_board_feet (board->thickness, board->width, board->length);
      sum.volume += board->thickness * board->width * board->length;
      sum.price_minor += board->price_minor;
      sum.n_priced += board->price_minor > 0;
    }
  return sum;
}

/* To the nearest whole number; exact halves up and down in turn. */
static int
round_in_turn (double value, gboolean *half_goes_down)
{
  double below = floor (value + ROUNDING_IN), rest = value - below;

  if (rest > 0.5 - ROUNDING_IN && rest < 0.5 + ROUNDING_IN)
    {
      *half_goes_down = !*half_goes_down;
      return (int)below + (*half_goes_down ? 1 : 0);
    }
  return (int)below + (rest > 0.5 ? 1 : 0);
}

BsTallied
bs_tally_add (BsTally *self, double thickness, double width, double length)
{
  BsTallied board;
  int quarters = MAX ((int)lround (4.0 * thickness / BS_MM_PER_INCH), 4);

  board.width_in = round_in_turn (width / BS_MM_PER_INCH, &self->width_half_goes_down);
  board.length_ft = (int)floor (length / MM_PER_FOOT + ROUNDING_IN);
  board.surface_ft2
      = round_in_turn (board.width_in * board.length_ft / 12.0, &self->surface_half_goes_down);
  board.board_feet = board.surface_ft2 * quarters / 4.0;
  self->n_boards++;
  self->quarter_feet += board.surface_ft2 * quarters;
  self->board_feet += self->quarter_feet / 4;
  self->quarter_feet %= 4;
  return board;
}

double
bs_board_surfaced_thickness (double rough)
{
  const BsLumberSeries *quarters = bs_lumber_series (BS_LUMBER_QUARTERS);

  for (guint i = 0; i < quarters->n_rows; i++)
    if (fabs (rough - quarters->rows[i].sold) < 0.1)
      return quarters->rows[i].surfaced;
  return NAN;
}

double
bs_board_rough_thickness (double finished)
{
  const BsLumberSeries *quarters = bs_lumber_series (BS_LUMBER_QUARTERS);

  for (guint i = 0; i < quarters->n_rows; i++)
    if (quarters->rows[i].surfaced >= finished - ROUNDING_IN)
      return quarters->rows[i].sold;
  return NAN;
}

int
bs_board_layers (double finished, double rough)
{
  double surfaced = bs_board_surfaced_thickness (rough);

  return isnan (surfaced) ? 0 : (int)ceil (finished / surfaced - ROUNDING_IN);
}
