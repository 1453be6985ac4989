/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/milling.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Crook or unevenness below which a board lies still on fence or table, mm: common practice, no
 * source. */
#define LIES_STILL 1.0

BsRough
bs_rough_of (const BsBoard *board)
{
  return (BsRough){
    .length = board->length,
    .width = board->width,
    .thickness = board->thickness,
    .bow = board->bow,
    .crook = board->crook,
    .cup = board->cup,
    .twist = board->twist,
  };
}

gboolean
bs_rough_is_measured (const BsRough *self)
{
  return !isnan (self->bow + self->crook + self->cup + self->twist);
}

BsMillingShop
bs_milling_shop_default (void)
{
  const BsSaw saw = bs_saw_default ();

  return (BsMillingShop){
    .allowance = 0.5,
    .edge_allowance = saw.edge_allowance,
    .end_trim = saw.end_trim,
    .kerf = saw.kerf,
    .spring_per_m = saw.spring_per_m,
    .jointer_width = 150.0,
    .planer_width = 300.0,
    .shortest = 300.0,
    .thinnest = 12.0,
  };
}

BsMillingShop
bs_milling_shop_of (const BsPlan *plan)
{
  BsMillingShop self = bs_milling_shop_default ();

  const BsSaw *saw = &plan->shop.saw;

  self.allowance = plan->slab.allowance;
  self.edge_allowance = saw->edge_allowance;
  self.end_trim = saw->end_trim;
  self.kerf = saw->kerf;
  self.spring_per_m = saw->spring_per_m;
  self.jointer_width = plan->shop.jointer_width;
  self.planer_width = plan->shop.planer_width;
  return self;
}

static double
square (double value)
{
  return value * value;
}

double
bs_milling_spring_of (const BsRough *board)
{
  return fabs (board->crook) / square (board->length / 1000.0);
}

/* What twist adds to an arc across one direction. Source: docs/timber-model.md, Milling, m(u). */
static double
add_twist (double arc, double twist)
{
  return twist < 8.0 * arc ? square (twist) / (64.0 * arc) : twist / 4.0 - arc;
}

/* The middle surface b (1 - 4 x^2) + c (1 - 4 y^2) + d x y over a unit square centred on 0:
 * greatest less least height. By symmetry no tilt makes that less. */
double
bs_milling_loss (double bow, double cup, double twist)
{
  double b = fabs (bow), c = fabs (cup), d = fabs (twist);

  if (bow * cup < 0.0)
    return b + add_twist (b, d) + c + add_twist (c, d);
  if (square (d) <= 64.0 * b * c)
    return d / 4.0 + b + c;
  return d / 4.0 + fmax (d / 4.0, fmax (b + add_twist (b, d), c + add_twist (c, d)));
}

BsRough
bs_milling_piece (const BsRough *board, double length, double width)
{
  g_return_val_if_fail (length <= board->length && width <= board->width, *board);

  double along = length / board->length, across = width / board->width;
  BsRough piece = *board;

  piece.length = length;
  piece.width = width;
  piece.bow *= square (along);
  piece.crook *= square (along);
  piece.cup *= square (across);
  piece.twist *= along * across;
  return piece;
}

double
bs_milling_thickness (const BsRough *piece, double allowance)
{
  double left
      = piece->thickness - bs_milling_loss (piece->bow, piece->cup, piece->twist) - 2.0 * allowance;

  return left < 0.0 ? 0.0 : left;
}

double
bs_milling_strip (double width, double length, const BsMillingShop *shop)
{
  return width + shop->spring_per_m * square (length / 1000.0) + 2.0 * shop->edge_allowance;
}

int
bs_milling_count (const BsRough *piece, double width, const BsMillingShop *shop)
{
  double strip = bs_milling_strip (width, piece->length, shop);
  double straight = piece->width - fabs (piece->crook) - shop->edge_allowance;

  return MAX (0, (int)floor ((straight + shop->kerf) / (strip + shop->kerf)));
}

BsMillingYield
bs_milling_yield (const BsRough *board, double length, double width, const BsMillingShop *shop)
{
  double sound = board->length - 2.0 * shop->end_trim;
  BsMillingYield self = {
    .n_lengths = MAX (0, (int)floor ((sound + shop->kerf) / (length + shop->kerf))),
    .thickness_whole = bs_milling_thickness (board, shop->allowance),
  };

  if (self.n_lengths == 0)
    return self;
  BsRough piece = bs_milling_piece (board, length, board->width);
  self.thickness_crosscut = bs_milling_thickness (&piece, shop->allowance);
  self.n_strips = bs_milling_count (&piece, width, shop);
  if (self.n_strips == 0)
    return self;
  BsRough strip = bs_milling_piece (board, length, bs_milling_strip (width, length, shop));
  self.thickness = bs_milling_thickness (&strip, shop->allowance);
  self.yield = self.n_lengths * self.n_strips * self.thickness * width * length
               / (board->thickness * board->width * board->length);
  return self;
}

BsMillingCautions
bs_milling_cautions (const BsRough *piece, const BsMillingShop *shop)
{
  BsMillingCautions cautions = 0;

  if (piece->width > shop->jointer_width)
    cautions |= BS_MILLING_WIDE_FOR_JOINTER;
  if (piece->width > shop->planer_width)
    cautions |= BS_MILLING_WIDE_FOR_PLANER;
  if (piece->length < shop->shortest)
    cautions |= BS_MILLING_SHORT;
  if (bs_milling_thickness (piece, shop->allowance) < shop->thinnest)
    cautions |= BS_MILLING_THIN;
  if (fabs (piece->crook) > LIES_STILL)
    cautions |= BS_MILLING_CROOKED;
  if (bs_milling_loss (piece->bow, piece->cup, piece->twist) > LIES_STILL)
    cautions |= BS_MILLING_ROCKS;
  return cautions;
}

void
bs_milling_explain (const BsRough *piece, double allowance, BsWorking *why)
{
  bs_working_init (why, N_ ("Thickness of the piece once planed"),
                   N_ ("Both faces flat and parallel. What the first face loses in the middle the "
                       "second loses at the ends, so warp is lost once and not on each face."),
                   "t = T − v − 2 a", BS_QUANTITY_LENGTH,
                   N_ ("For boards that bend evenly; a kink or a bend near one end loses more. "
                       "Warp measured to 1 mm (1/32 in) leaves that much open."));
  why->value = bs_milling_thickness (piece, allowance);
  bs_working_add (why, N_ ("rough thickness"), "T", piece->thickness, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("lost to bow, cup and twist together"), "v",
                  bs_milling_loss (piece->bow, piece->cup, piece->twist), BS_QUANTITY_LENGTH,
                  N_ ("closed form in docs/timber-model.md, computed"));
  bs_working_add (why, N_ ("allowance for tool marks on each face"), "a", allowance,
                  BS_QUANTITY_LENGTH, N_ ("set by you"));
  bs_working_add (why, N_ ("bow along the piece"), "", piece->bow, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("cup across it"), "", piece->cup, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("twist of it"), "", piece->twist, BS_QUANTITY_LENGTH, NULL);
}
