/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/purchase.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"

/* Without all prices nothing can be said: an offer without one counts as a gift. */
static double
get_bound (const BsPurchase *self)
{
  gboolean is_priced = self->cuts != NULL && !isnan (bs_purchase_get_price (self));
  return is_priced ? (double)self->cuts->bound_minor : NAN;
}

void
bs_purchase_explain_price (const BsPurchase *self, BsWorking *why)
{
  const char *explanation
      = N_ ("Whole boards, each at the price of its offer. A board foot is counted as the trade "
            "tallies it; where widths may not be picked, the mean width of the pile is paid.");

  if (isnan (bs_purchase_get_price (self)))
    explanation = N_ ("Nothing is to be bought, or the price of an offer is not known.");
  bs_working_init (
      why, N_ ("Price of the boards"), explanation, "K = n_1 k_1 + n_2 k_2 + …", BS_QUANTITY_MONEY,
      N_ ("It is as good as the yard’s prices. Carriage and planing are not counted."));
  why->currency = self->plan->currency;
  why->value = bs_purchase_get_price (self);
  for (guint i = 0; i < self->lines->len && i < BS_WORKING_MAX_TERMS / 2; i++)
    {
      const BsPurchaseLine *line = &g_array_index (self->lines, BsPurchaseLine, i);

      bs_working_add (why, N_ ("boards"), "n", line->count, BS_QUANTITY_COUNT, NULL);
      bs_working_add (why, N_ ("price of one of them"), "k",
                      (double)line->price_minor / line->count, BS_QUANTITY_MONEY,
                      N_ ("set by you"));
    }
}

void
bs_purchase_explain_bound (const BsPurchase *self, BsWorking *why)
{
  bs_working_init (
      why, N_ ("It cannot be done for less than"),
      N_ ("A proven bound: no way to cut these pieces from these boards costs less. It comes from "
          "a "
          "linear programme that may buy parts of boards, so the true least price can lie above "
          "it."),
      "K >= sum v d - sum r s, rounded up to a sum of prices", BS_QUANTITY_MONEY,
      N_ ("Proven, for two stages of cuts and for the widths and allowances counted on."));
  why->currency = self->plan->currency;
  why->value = get_bound (self);
  if (isnan (why->value))
    return;
  bs_working_add (why, N_ ("price of this purchase"), "", bs_purchase_get_price (self),
                  BS_QUANTITY_MONEY, NULL);
  bs_working_add (why, N_ ("it is dearer than need be by at most"), "",
                  100.0 * bs_cut_plan_gap (self->cuts), BS_QUANTITY_PERCENT, NULL);
}

void
bs_purchase_explain_waste (const BsPurchase *self, BsWorking *why)
{
  bs_working_init (why, N_ ("Waste of the boards sawn"),
                   N_ ("What ends up neither in a piece as sawn nor in an offcut worth keeping: "
                       "kerfs, trims, crook, and strips that are too narrow or too short."),
                   "w = 1 − U / V", BS_QUANTITY_PERCENT,
                   N_ ("Planing, which comes after the saw, is not counted."));
  why->value = bs_purchase_get_waste_pct (self);
  bs_working_add (why, N_ ("pieces and offcuts"), "U", self->used_volume, BS_QUANTITY_VOLUME, NULL);
  bs_working_add (why, N_ ("boards, as counted on"), "V", self->sawn_volume, BS_QUANTITY_VOLUME,
                  NULL);
  bs_working_add (why, N_ ("kerf"), "", self->cutting.kerf, BS_QUANTITY_LENGTH, N_ ("set by you"));
  bs_working_add (why, N_ ("off each end of a board"), "", self->cutting.trim_end,
                  BS_QUANTITY_LENGTH, N_ ("set by you"));
  bs_working_add (why, N_ ("off each edge of a board, with its crook"), "",
                  self->cutting.trim_edge + self->straighten / 2.0, BS_QUANTITY_LENGTH,
                  N_ ("figures of warp"));
  bs_working_add (why, N_ ("shortest offcut worth keeping"), "", self->cutting.min_offcut,
                  BS_QUANTITY_LENGTH, N_ ("set by you"));
}

void
bs_purchase_explain_extra (const BsPurchase *self, BsWorking *why)
{
  bs_working_init (
      why, N_ ("Bought beyond the bare need"),
      N_ ("What is bought over what the milled pieces hold, spare ones left out, in the thickness "
          "of their boards. It pays for waste, for milling, and for a choice of what shows."),
      "e = B / N − 1", BS_QUANTITY_PERCENT,
      N_ ("For a slab with its base of the size of a large work table a careful purchase is about "
          "a third above the bare need: common practice, no source."));
  why->value = bs_purchase_get_extra_pct (self);
  bs_working_add (why, N_ ("volume bought"), "B", self->bought_volume, BS_QUANTITY_VOLUME, NULL);
  bs_working_add (why, N_ ("bare need"), "N", self->bare_volume, BS_QUANTITY_VOLUME, NULL);
  bs_working_add (why, N_ ("laminations beyond those needed"), "", self->plan->buying.spare_pct,
                  BS_QUANTITY_PERCENT, N_ ("set by you"));
}

void
bs_purchase_explain_measure (const BsPurchase *self, BsWorking *why)
{
  bs_working_init (
      why, N_ ("Lumber to buy"),
      N_ ("The sum of length, width and thickness of all boards. The tally in board feet takes "
          "the width to the nearest inch, the length down to the foot and the surface measure to "
          "the nearest square foot, exact halves up and down in turn."),
      "B = n_1 l_1 w_1 t_1 + …", BS_QUANTITY_VOLUME,
      N_ ("Exact for the widths counted on; boards of a pile differ."));
  why->value = self->bought_volume;
  bs_working_add (why, N_ ("boards"), "", self->n_boards, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("board feet, as tallied"), "", self->board_feet, BS_QUANTITY_RATIO,
                  "American Hardwood Export Council, Grading sawn lumber: measurement");
  bs_working_add (why, N_ ("board feet, nothing rounded"), "",
                  self->bought_volume / BS_MM3_PER_BOARD_FOOT, BS_QUANTITY_RATIO, NULL);
}

void
bs_purchase_explain_thickness (const BsPurchase *self, guint want, BsWorking *why)
{
  const BsWant *wanted = &g_array_index (self->wanted, BsWant, want);
  BsMillingWish wish = bs_want_get_wish (wanted, self->wanted, self->plan);
  BsMillingShop shop = bs_milling_shop_of (self->plan);

  bs_milling_need_explain (&wanted->need, &wish, &shop, why);
}

void
bs_purchase_explain_width (const BsPurchase *self, guint want, BsWorking *why)
{
  const BsWant *wanted = &g_array_index (self->wanted, BsWant, want);
  BsMillingWish wish = bs_want_get_wish (wanted, self->wanted, self->plan);
  BsMillingShop shop = bs_milling_shop_of (self->plan);

  bs_milling_need_explain_width (&wanted->need, &wish, &shop, why);
}

/* The least share of boards that look well, in per cent, with which `count` are enough for `needed`
 * good ones. */
static double
find_share_needed (int needed, int count, double confidence)
{
  for (int pct = 1; pct < 100; pct++)
    {
      int n = bs_yard_count_for_show (needed, needed, pct / 100.0, confidence);
      if (n >= 0 && n <= count)
        return pct;
    }
  return 100.0;
}

void
bs_purchase_explain_count (const BsPurchase *self, BsWorking *why)
{
  const BsBuying *buying = &self->plan->buying;
  int needed = 0, count = 0;

  for (guint i = 0; i < self->wanted->len; i++)
    {
      const BsWant *want = &g_array_index (self->wanted, BsWant, i);
      needed += want->is_lamination ? want->needed : 0;
      count += want->is_lamination ? want->count : 0;
    }
  bs_working_init (why, N_ ("Laminations to saw"),
                   N_ ("Those that the slab needs and spare ones, so that the best can go where "
                       "they show and one may fail."),
                   "n = N + s N, rounded up", BS_QUANTITY_COUNT,
                   N_ ("The share counts boards as independent; boards of one log are not."));
  why->value = count;
  bs_working_add (why, N_ ("laminations needed"), "N", needed, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("spare ones, of those needed"), "s", buying->spare_pct,
                  BS_QUANTITY_PERCENT, N_ ("set by you"));
  bs_working_add (why, N_ ("of the boards must look well, so that enough do"), "",
                  find_share_needed (needed, count, buying->confidence_pct / 100.0),
                  BS_QUANTITY_PERCENT, N_ ("binomial distribution, at the confidence asked for"));
  bs_working_add (why, N_ ("confidence asked for"), "", buying->confidence_pct, BS_QUANTITY_PERCENT,
                  N_ ("set by you"));
}
