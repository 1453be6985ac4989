/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/purchase-layers.h"

#include <math.h>

#include "core/lumber-sizes.h"

#define MM3_PER_M3 1e9
#define G_PER_KG 1000.0

/* Classes that differ by less are one, mm. */
#define SAME_CLASS 0.1

char *
bs_lumber_name_class (double thickness)
{
  const BsLumberSeries *quarters = bs_lumber_series (BS_LUMBER_QUARTERS);

  for (guint i = 0; i < quarters->n_rows; i++)
    if (fabs (quarters->rows[i].sold - thickness) < SAME_CLASS)
      return g_strdup (quarters->rows[i].name);
  return g_strdup_printf ("%g", thickness);
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  const BsLumberThickness *x = a, *y = b;

  return (x->sold > y->sold) - (x->sold < y->sold);
}

static gboolean
has_class (const BsPurchaseLayers *self, double thickness)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (fabs (g_array_index (self->rows, BsLumberThickness, i).sold - thickness) < SAME_CLASS)
      return TRUE;
  return FALSE;
}

static void
list_classes (BsPurchaseLayers *self, const BsPlan *plan, const char *wood)
{
  for (guint i = 0; i < plan->offers->len; i++)
    {
      const BsOffer *offer = g_ptr_array_index (plan->offers, i);
      g_autofree char *name = bs_lumber_name_class (offer->thickness);

      if (g_strcmp0 (offer->wood, wood) != 0 || has_class (self, offer->thickness))
        continue;
      BsLumberThickness row = { g_string_chunk_insert (self->names, name), offer->thickness, NAN };
      g_array_append_val (self->rows, row);
    }
  g_array_sort (self->rows, compare_rows);
  self->classes = (BsLumberSeries){
    .moisture_pct = NAN,
    .rows = (const BsLumberThickness *)self->rows->data,
    .n_rows = self->rows->len,
  };
}

/* Minor units for a m3 of an offer's first length in its mean width; NAN: no price is known. */
static double
find_rate (const BsOffer *offer)
{
  BsYardOffer yard = {
    .thickness = offer->thickness,
    .unit = offer->price_unit,
    .price_minor = offer->price_minor,
  };
  double width = (offer->width_least + offer->width_most) / 2.0;

  if (offer->price_minor == 0 || offer->lengths->len == 0)
    return NAN;
  double length = g_array_index (offer->lengths, BsOfferLength, 0).length;
  return (double)bs_yard_price (&yard, width, length) * MM3_PER_M3
         / (width * length * offer->thickness);
}

static double
find_cheapest (const BsPlan *plan, const char *wood, double thickness)
{
  double least = NAN;

  for (guint i = 0; i < plan->offers->len; i++)
    {
      const BsOffer *offer = g_ptr_array_index (plan->offers, i);
      if (g_strcmp0 (offer->wood, wood) == 0 && fabs (offer->thickness - thickness) < SAME_CLASS)
        least = fmin (least, find_rate (offer)); /* which leaves NAN out */
    }
  return least;
}

static double
find_cost (const BsPurchaseLayers *self, const BsLayerWay *way, const BsPlan *plan,
           const char *wood)
{
  double glue = self->is_glue_counted
                    ? plan->adhesive.spread_g_per_m2 / G_PER_KG * plan->adhesive.price_minor_per_kg
                    : 0.0;

  if (way->row < 0)
    return NAN;
  return bs_milling_layers_cost (way, find_cheapest (plan, wood, self->classes.rows[way->row].sold),
                                 glue);
}

BsPurchaseLayers *
bs_purchase_layers_new (const BsPurchase *purchase, guint index)
{
  const BsPlan *plan = purchase->plan;
  const BsWant *want = &g_array_index (purchase->wanted, BsWant, index);
  g_autoptr (BsPurchaseLayers) self = g_new0 (BsPurchaseLayers, 1);
  BsMillingWish wish = bs_want_get_wish (want, purchase->wanted, plan);
  BsWarpHabit habit = bs_warp_habit_of (plan);
  BsMillingShop shop = bs_milling_shop_of (plan);

  self->rows = g_array_new (FALSE, FALSE, sizeof (BsLumberThickness));
  self->names = g_string_chunk_new (64);
  list_classes (self, plan, want->wood);
  if (self->rows->len == 0)
    return NULL;
  self->one = bs_milling_layers (1, &wish, &habit, &shop, &self->classes, 0.0);
  self->two = bs_milling_layers (2, &wish, &habit, &shop, &self->classes, 0.0);
  self->is_glue_counted = !isnan (plan->adhesive.price_minor_per_kg);
  self->one_minor = find_cost (self, &self->one, plan, want->wood);
  self->two_minor = find_cost (self, &self->two, plan, want->wood);
  return g_steal_pointer (&self);
}

/* Less than a tenth of the price is not worth a glue line (common practice, no source). */
#define WORTH_IT 0.9

gboolean
bs_purchase_layers_gain (const BsPurchaseLayers *self)
{
  return self->two.row >= 0 && (self->one.row < 0 || self->two_minor < WORTH_IT * self->one_minor);
}

void
bs_purchase_layers_free (BsPurchaseLayers *self)
{
  g_array_unref (self->rows);
  g_string_chunk_free (self->names);
  g_free (self);
}
