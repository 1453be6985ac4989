/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-wishes.h"

/* By how much a wish multiplies the default weights of its terms. Chosen for this program, no
 * source: each step is felt, and none drowns the others. */
static const double factors[BS_N_ORDER_WISHES] = {
  [BS_ORDER_WISH_OFF] = 0.0,
  [BS_ORDER_WISH_LITTLE] = 0.5,
  [BS_ORDER_WISH_NORMAL] = 1.0,
  [BS_ORDER_WISH_MUCH] = 2.0,
};

BsOrderWishes
bs_order_wishes_default (void)
{
  return (BsOrderWishes){ .looks = BS_ORDER_WISH_NORMAL,
                          .easy_planing = BS_ORDER_WISH_NORMAL,
                          .stays_flat = BS_ORDER_WISH_NORMAL };
}

/* Which wish a term serves. Defects that meet in a joint serve none: nobody wishes for a weak
 * joint. */
static double
find_factor (const BsOrderWishes *self, BsOrderTerm term)
{
  switch (term)
    {
    case BS_ORDER_TERM_SHOW_FACE:
    case BS_ORDER_TERM_OTHER_FACES:
    case BS_ORDER_TERM_COLOUR:
      return factors[self->looks];
    case BS_ORDER_TERM_PLANING:
    case BS_ORDER_TERM_CROOK:
      return factors[self->easy_planing];
    case BS_ORDER_TERM_HEARTS:
    case BS_ORDER_TERM_BOW:
    case BS_ORDER_TERM_OPEN_ENDS:
    case BS_ORDER_TERM_MOISTURE:
      return factors[self->stays_flat];
    case BS_ORDER_TERM_MEETING:
    default:
      return 1.0;
    }
}

BsOrderWeights
bs_order_wishes_weigh (const BsOrderWishes *self)
{
  BsOrderWeights weights = bs_order_weights_default ();

  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    weights.points[i] *= find_factor (self, (BsOrderTerm)i);
  return weights;
}
