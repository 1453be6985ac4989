/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/sawing-rack.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
add_areas (const BsSawRack *self, BsWorking *why)
{
  bs_working_add (why, N_ ("area of the boards taken"), "A", self->area, BS_QUANTITY_AREA, NULL);
  bs_working_add (why, N_ ("pieces as they leave the saw"), "P", self->piece_area, BS_QUANTITY_AREA,
                  NULL);
  bs_working_add (why, N_ ("saw kerfs"), "K", self->kerf_area, BS_QUANTITY_AREA, NULL);
  bs_working_add (why, N_ ("offcuts worth keeping"), "O", self->offcut_area, BS_QUANTITY_AREA,
                  NULL);
  bs_working_add (why, N_ ("all other waste"), "W", self->waste_area, BS_QUANTITY_AREA, NULL);
}

static double
get_share_pct (const BsSawRack *self, double area)
{
  return self->area > 0.0 ? 100.0 * area / self->area : NAN;
}

void
bs_saw_explain_waste (const BsSawRack *self, BsWorking *why)
{
  bs_working_init (why, N_ ("Waste of the boards taken"),
                   N_ ("What is neither a piece as it leaves the saw nor an offcut worth keeping: "
                       "trims, kerfs, defects and narrow rests. Pieces, kerfs, offcuts and other "
                       "waste are the whole of the boards."),
                   "w = (K + W) / A,  A = P + K + O + W", BS_QUANTITY_PERCENT,
                   N_ ("Measured on the wide face. What planing takes off is not counted."));
  why->value = get_share_pct (self, self->kerf_area + self->waste_area);
  add_areas (self, why);
}

void
bs_saw_explain_kerf (const BsSawRack *self, const BsPlan *plan, BsWorking *why)
{
  bs_working_init (why, N_ ("Sawdust"),
                   N_ ("The width of each pass of the saw times its length, over the area of the "
                       "boards taken."),
                   "k = K / A", BS_QUANTITY_PERCENT,
                   N_ ("As sure as the width of the kerf: saw a scrap and measure it."));
  why->value = get_share_pct (self, self->kerf_area);
  add_areas (self, why);
  bs_working_add (why, N_ ("width of a kerf"), "", plan->shop.saw.kerf, BS_QUANTITY_LENGTH,
                  N_ ("set by you"));
}

void
bs_saw_explain_price (const BsSawRack *self, const BsPlan *plan, BsWorking *why)
{
  bs_working_init (why, N_ ("Price of the boards taken"),
                   N_ ("Each board that something is cut from, whole. Offcuts are not taken off."),
                   "B = b₁ + b₂ + …", BS_QUANTITY_MONEY,
                   self->n_unpriced > 0 ? N_ ("Boards without a price count as paid.")
                                        : N_ ("It is as good as the prices."));
  why->currency = plan->currency;
  why->value = (double)self->price_minor;
  bs_working_add (why, N_ ("boards taken"), "", self->n_taken, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("boards without a price"), "", self->n_unpriced, BS_QUANTITY_COUNT,
                  NULL);
}

static const char *
explain_proof (const BsSawPlan *found)
{
  if (found == NULL)
    return N_ ("It is found when the cuts are planned, and holds for the cuts found then.");
  if (!found->is_bound)
    return N_ ("Something finds no place, so nothing is proven.");
  if (found->is_price_least)
    return N_ ("Proven: no way to cut all of it out of these boards costs less.");
  return N_ ("Proven: no way to cut all of it out of these boards costs less than this. The plan "
             "may still be dearer than it has to be.");
}

void
bs_saw_explain_bound (const BsSawPlan *found, const BsPlan *plan, BsWorking *why)
{
  gboolean is_known = found != NULL && found->is_bound;

  bs_working_init (why, N_ ("Least price that is possible"), explain_proof (found),
                   "B ≥ Σ v d − Σ r s", BS_QUANTITY_MONEY,
                   N_ ("A bound, proven with whole numbers: docs/cutting-model.md, The bound."));
  why->currency = plan->currency;
  why->value = is_known ? (double)found->bound_minor : NAN;
  bs_working_add (why, N_ ("price of the boards that the plan takes"), "B",
                  is_known ? (double)found->price_minor : NAN, BS_QUANTITY_MONEY, NULL);
}
