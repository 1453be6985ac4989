/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/cost.h"

#include "core/mass.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* One price not known makes the sum not known. */
static void
add_price (BsCost *cost, double minor)
{
  cost->wood_minor += minor;
  cost->n_unpriced += isnan (minor) ? 1 : 0;
}

static void
add_volume (BsCost *cost, double volume, const BsWood *wood, gint64 price_minor)
{
  double rate = wood != NULL ? wood->price_minor_per_m3 : NAN;

  cost->gross += volume;
  add_price (cost, price_minor > 0 ? (double)price_minor : rate * volume * BS_M3_PER_MM3);
}

static void
add_wood (const BsStack *stack, BsCost *cost)
{
  g_autoptr (GHashTable) counted = g_hash_table_new (g_direct_hash, g_direct_equal);
  const BsPlan *plan = stack->plan;

  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      const BsBoard *board = bs_plan_find_board (plan, placed->lamination->board);

      if (board == NULL)
        add_volume (cost,
                    placed->length * placed->thickness
                        * fmax (placed->height_left, placed->height_right),
                    placed->wood, 0);
      else if (g_hash_table_add (counted, (gpointer)board))
        add_volume (cost, board->length * board->width * board->thickness,
                    bs_plan_find_wood (plan, board->wood), board->price_minor);
    }
}

void
bs_cost (const BsStack *stack, double thickness, double glue_kg, BsCost *cost)
{
  const BsSlab *slab = &stack->plan->slab;
  double rate = stack->plan->adhesive.price_minor_per_kg;

  *cost = (BsCost){ .glue_area = bs_mass_glue_area (stack), .glue_kg = glue_kg };
  add_wood (stack, cost);
  if (stack->n == 0)
    cost->wood_minor = NAN;
  cost->net = fmin (slab->length, stack->length) * fmin (slab->width, stack->width) * thickness;
  cost->waste_pct = 100.0 * (1.0 - cost->net / cost->gross);
  cost->glue_minor = glue_kg * rate;
  cost->total_minor = cost->wood_minor + cost->glue_minor;
}

void
bs_cost_explain (const BsCost *cost, const BsPlan *plan, BsWorking *why)
{
  const char *explanation
      = N_ ("The boards that the slab’s laminations are cut from, whole, and the glue on all glue "
            "lines. What is left of the boards for other work is not taken off.");

  if (isnan (cost->total_minor))
    explanation = N_ ("A price is not known: that of a board or its wood, or that of the glue.");
  bs_working_init (why, N_ ("Cost of wood and glue"), explanation, "K = W + m g", BS_QUANTITY_MONEY,
                   N_ ("It is as good as the prices. Glue that stays in the pot or is squeezed out "
                       "is not counted, nor are blades, finish and time."));
  why->currency = plan->currency;
  why->value = cost->total_minor;
  bs_working_add (why, N_ ("wood"), "W", cost->wood_minor, BS_QUANTITY_MONEY, N_ ("set by you"));
  bs_working_add (why, N_ ("mass of the glue"), "m", cost->glue_kg, BS_QUANTITY_MASS, NULL);
  bs_working_add (why, N_ ("price of a kilogram of glue"), "g", plan->adhesive.price_minor_per_kg,
                  BS_QUANTITY_MONEY, N_ ("set by you"));
  bs_working_add (why, N_ ("volume of the boards"), "", cost->gross, BS_QUANTITY_VOLUME, NULL);
  bs_working_add (why, N_ ("volume of the finished slab"), "", cost->net, BS_QUANTITY_VOLUME, NULL);
  bs_working_add (why, N_ ("waste, offcuts counted in"), "", cost->waste_pct, BS_QUANTITY_PERCENT,
                  NULL);
  bs_working_add (why, N_ ("boards and laminations without a price"), "", cost->n_unpriced,
                  BS_QUANTITY_COUNT, NULL);
}

void
bs_cost_explain_glue (const BsCost *cost, const BsPlan *plan, BsWorking *why)
{
  const BsAdhesive *adhesive = &plan->adhesive;

  bs_working_init (
      why, N_ ("Glue on all glue lines"),
      N_ ("What the glue lines take by the spread of the data sheet. What stays in the "
          "pot and on the brush comes on top."),
      "m = s A", BS_QUANTITY_MASS,
      N_ ("Hands spread a fifth more or less than the data sheet says: common "
          "practice, no source."));
  why->currency = plan->currency;
  why->value = cost->glue_kg;
  bs_working_add (why, N_ ("spread on one glue line"), "s", adhesive->spread_g_per_m2,
                  BS_QUANTITY_SPREAD,
                  adhesive->is_own_figures ? N_ ("set by you") : adhesive->source);
  bs_working_add (why, N_ ("area of all glue lines"), "A", cost->glue_area, BS_QUANTITY_AREA, NULL);
  bs_working_add (why, N_ ("price of a kilogram of glue"), "", adhesive->price_minor_per_kg,
                  BS_QUANTITY_MONEY, N_ ("set by you"));
  bs_working_add (why, N_ ("what that much glue costs"), "", cost->glue_minor, BS_QUANTITY_MONEY,
                  NULL);
}

void
bs_cost_explain_waste (const BsCost *cost, BsWorking *why)
{
  bs_working_init (why, N_ ("Waste"),
                   isnan (cost->waste_pct)
                       ? N_ ("There is no slab yet, or no size of it.")
                       : N_ ("What of the lumber does not end in the slab: chips, dust, kerfs, and "
                             "offcuts, even those that serve for something else."),
                   "w = 1 − V / G", BS_QUANTITY_PERCENT,
                   N_ ("It follows from the sizes of the boards, or of the laminations where they "
                       "are of no board."));
  why->value = cost->waste_pct;
  bs_working_add (why, N_ ("volume of the finished slab"), "V", cost->net, BS_QUANTITY_VOLUME,
                  NULL);
  bs_working_add (why, N_ ("volume of the boards"), "G", cost->gross, BS_QUANTITY_VOLUME, NULL);
}
