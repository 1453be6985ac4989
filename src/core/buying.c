/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/buying.h"

#include "core/board-measure.h"
#include "core/limits.h"

#include <math.h>
#include <glib/gi18n-lib.h>

/* Widths of one offer at most: finer steps only make the search longer. */
#define MAX_STEPS 40

gint64
bs_yard_price (const BsYardOffer *offer, double width, double length)
{
  BsTally tally = { 0 };
  double price = (double)offer->price_minor;

  switch (offer->unit)
    {
    case BS_PRICE_PIECE:
      break;
    case BS_PRICE_BOARD_FOOT:
      price *= bs_tally_add (&tally, offer->thickness, width, length).board_feet;
      break;
    case BS_PRICE_CUBIC_METRE:
      price *= bs_board_cubic_metres (offer->thickness, width, length);
      break;
    }
  return (gint64)llround (price);
}

static gboolean
check_offer (const BsYardOffer *offers, guint index, GError **error)
{
  const BsYardOffer *offer = &offers[index];
  gboolean is_good = bs_limit_contains (&bs_limits.board_thickness, offer->thickness)
                     && offer->usable_thickness > 0.0 && offer->usable_thickness <= offer->thickness
                     && bs_limit_contains (&bs_limits.board_width, offer->width_least)
                     && bs_limit_contains (&bs_limits.board_width, offer->width_most)
                     && offer->width_least <= offer->width_most && offer->price_minor >= 0
                     && (double)offer->price_minor <= bs_limits.price.most;

  for (guint i = 0; i < offer->n_lengths; i++)
    is_good = is_good && bs_limit_contains (&bs_limits.board_length, offer->lengths[i].length)
              && offer->lengths[i].supply >= BS_CUT_UNLIMITED;
  if (!is_good)
    g_set_error (error, BS_CUTTING_ERROR, BS_CUTTING_ERROR_INPUT,
                 _ ("Offer %u: a size, the price or a number of boards cannot be. Check them and "
                    "their units."),
                 index + 1);
  return is_good;
}

static void
add_width (BsYardStock *self, const BsYardOffer *offer, guint index, const BsYardLength *length,
           double width, double paid_width)
{
  BsCutStock stock = {
    .length = length->length,
    .width = width,
    .thickness = offer->usable_thickness,
    .price_minor = bs_yard_price (offer, paid_width, length->length),
    .supply = length->supply,
    .wood = offer->wood,
    .looks = offer->looks,
  };

  g_array_append_val (self->stock, stock);
  g_array_append_val (self->offers, index);
}

static void
add_length (BsYardStock *self, const BsYardOffer *offer, guint index, const BsYardLength *length,
            double width_step)
{
  double least = offer->width_least, most = offer->width_most;

  if (!offer->may_pick || length->supply != BS_CUT_UNLIMITED)
    {
      add_width (self, offer, index, length, least, (least + most) / 2.0);
      return;
    }
  width_step = MAX (width_step, (most - least) / MAX_STEPS);
  for (int i = 0; least + i * width_step <= most + 1e-6; i++)
    {
      double width = least + i * width_step;
      add_width (self, offer, index, length, width, width);
      if (width_step <= 0.0)
        break;
    }
}

BsYardStock *
bs_yard_stock_new (const BsYardOffer *offers, guint n_offers, double width_step, GError **error)
{
  g_autoptr (BsYardStock) self = g_new0 (BsYardStock, 1);

  self->stock = g_array_new (FALSE, FALSE, sizeof (BsCutStock));
  self->offers = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < n_offers; i++)
    {
      if (!check_offer (offers, i, error))
        return NULL;
      for (guint k = 0; k < offers[i].n_lengths; k++)
        add_length (self, &offers[i], i, &offers[i].lengths[k], width_step);
    }
  return g_steal_pointer (&self);
}

void
bs_yard_stock_free (BsYardStock *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->stock);
  g_array_unref (self->offers);
  g_free (self);
}

/* Chance that at least k of n succeed, each with chance p. */
static double
chance_of_at_least (int k, int n, double p)
{
  double sum = 0.0;

  if (p >= 1.0)
    return k <= n ? 1.0 : 0.0;
  for (int i = k; i <= n; i++)
    sum += exp (lgamma (n + 1.0) - lgamma (i + 1.0) - lgamma (n - i + 1.0) + i * log (p)
                + (n - i) * log1p (-p));
  return sum;
}

int
bs_yard_count_for_show (int n_wanted, int n_on_show, double share, double confidence)
{
  g_return_val_if_fail (n_wanted >= 0 && n_on_show >= 0, -1);
  g_return_val_if_fail (share > 0.0 && share <= 1.0, -1);
  g_return_val_if_fail (confidence > 0.0 && confidence < 1.0, -1);

  for (int n = MAX (n_wanted, n_on_show); n <= 10 * MAX (n_wanted, n_on_show); n++)
    if (chance_of_at_least (n_on_show, n, share) >= confidence)
      return n;
  return -1;
}
