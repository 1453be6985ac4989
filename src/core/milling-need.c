/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/milling-need.h"

#include "core/normal.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What the figures of a habit refer to, mm. */
#define HABIT_LENGTH 2000.0
#define HABIT_WIDTH 200.0

/* Measured boards that tell more than the planning figures do. */
#define ENOUGH_BOARDS 5

#define MM3_PER_M3 1e9
#define MM2_PER_M2 1e6

/* Sizes of a lamination that may fail: thickness and width. The length is sawn as asked. */
#define N_CHANCES 2.0

BsWarpHabit
bs_warp_habit_default (void)
{
  return (BsWarpHabit){
    .bow = { 4.0, 2.0 },
    .crook = { 3.0, 1.5 },
    .cup = { 1.0, 0.5 },
    .twist = { 3.0, 1.5 },
    .thickness = { 0.0, 0.5 },
  };
}

static double
square (double value)
{
  return value * value;
}

/* Mean and sum of squares about it, one value after the other. Source: Welford, Technometrics 4
 * (1962), 419-420; from memory. */
static void
add_sample (BsScatter *self, double value, guint n)
{
  double off = value - self->mean;

  self->mean += off / n;
  self->deviation += off * (value - self->mean);
}

gboolean
bs_warp_habit_measure (BsWarpHabit *habit, const BsRough *boards, guint n)
{
  BsWarpHabit found = { .thickness = habit->thickness };
  BsScatter *all[] = { &found.bow, &found.crook, &found.cup, &found.twist };

  if (n < 2)
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      double along = HABIT_LENGTH / boards[i].length, across = HABIT_WIDTH / boards[i].width;

      add_sample (&found.bow, fabs (boards[i].bow) * square (along), i + 1);
      add_sample (&found.crook, fabs (boards[i].crook) * square (along), i + 1);
      add_sample (&found.cup, fabs (boards[i].cup) * square (across), i + 1);
      add_sample (&found.twist, fabs (boards[i].twist) * along * across, i + 1);
    }
  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    all[i]->deviation = sqrt (all[i]->deviation / (n - 1));
  *habit = found;
  return TRUE;
}

BsWarpHabit
bs_warp_habit_of (const BsPlan *plan)
{
  BsWarpHabit self = bs_warp_habit_default ();
  g_autoptr (GArray) measured = g_array_new (FALSE, FALSE, sizeof (BsRough));

  for (guint i = 0; i < plan->boards->len; i++)
    {
      BsRough rough = bs_rough_of (g_ptr_array_index (plan->boards, i));
      if (bs_rough_is_measured (&rough))
        g_array_append_val (measured, rough);
    }
  if (measured->len >= ENOUGH_BOARDS)
    bs_warp_habit_measure (&self, (const BsRough *)measured->data, measured->len);
  return self;
}

static BsScatter
scale (const BsScatter *self, double factor)
{
  return (BsScatter){ factor * self->mean, factor * self->deviation };
}

void
bs_milling_need (const BsMillingWish *wish, const BsWarpHabit *habit, const BsMillingShop *shop,
                 BsMillingNeed *need)
{
  g_return_if_fail (wish->count > 0 && wish->strips > 0);
  g_return_if_fail (wish->confidence >= 0.5 && wish->confidence < 1.0);

  double sawn = bs_milling_strip (wish->width, wish->length, shop);
  double along = wish->length / HABIT_LENGTH, across = sawn / HABIT_WIDTH;
  BsScatter bow = scale (&habit->bow, square (along));
  BsScatter crook = scale (&habit->crook, square (along));
  BsScatter cup = scale (&habit->cup, square (across));
  BsScatter twist = scale (&habit->twist, along * across / 2.0); /* half of it counts */

  /* When each of n chances fails no oftener than 1 / n of the times that one may, all succeed at
   * least as often as asked, whatever they have to do with one another: Boole's inequality. */
  need->deviations
      = bs_normal_quantile (1.0 - (1.0 - wish->confidence) / (N_CHANCES * wish->count));

  need->loss = bow.mean + cup.mean + twist.mean + habit->thickness.mean;
  need->loss_deviation = sqrt (square (bow.deviation) + square (cup.deviation)
                               + square (twist.deviation) + square (habit->thickness.deviation));
  need->thickness = wish->thickness + 2.0 * shop->allowance + need->loss
                    + need->deviations * need->loss_deviation;

  need->crook = crook.mean;
  need->crook_deviation = crook.deviation;
  need->width = wish->strips * sawn + (wish->strips - 1) * shop->kerf + shop->edge_allowance
                + need->crook + need->deviations * need->crook_deviation;

  need->length = wish->length + 2.0 * shop->end_trim;
}

void
bs_milling_need_explain (const BsMillingNeed *need, const BsMillingWish *wish,
                         const BsMillingShop *shop, BsWorking *why)
{
  bs_working_init (
      why, N_ ("Rough thickness to buy"),
      N_ ("What a board must have so that the lamination comes out of it with the confidence "
          "asked for, when it is cut to length and width first and planed then."),
      "T = t + 2 a + v + z s", BS_QUANTITY_LENGTH,
      N_ ("It is as good as the figures of warp: planning figures of this program, no source, "
          "until you measure boards of your own yard. The lower end is what a board of mean warp "
          "needs."));
  why->value = need->thickness;
  why->low = wish->thickness + 2.0 * shop->allowance + need->loss;
  why->high = need->thickness;
  bs_working_add (why, N_ ("thickness wanted"), "t", wish->thickness, BS_QUANTITY_LENGTH,
                  N_ ("set by you"));
  bs_working_add (why, N_ ("allowance for tool marks on each face"), "a", shop->allowance,
                  BS_QUANTITY_LENGTH, N_ ("set by you"));
  bs_working_add (why, N_ ("mean loss to bow, cup and half the twist of such a piece"), "v",
                  need->loss, BS_QUANTITY_LENGTH, N_ ("figures of warp"));
  bs_working_add (why, N_ ("standard deviation of that"), "s", need->loss_deviation,
                  BS_QUANTITY_LENGTH, N_ ("figures of warp"));
  bs_working_add (why, N_ ("standard deviations to provide for"), "z", need->deviations,
                  BS_QUANTITY_RATIO, N_ ("normal distribution, for all laminations together"));
  bs_working_add (why, N_ ("confidence asked for"), "", 100.0 * wish->confidence,
                  BS_QUANTITY_PERCENT, N_ ("set by you"));
  bs_working_add (why, N_ ("laminations"), "", wish->count, BS_QUANTITY_COUNT, NULL);
}

void
bs_milling_need_explain_width (const BsMillingNeed *need, const BsMillingWish *wish,
                               const BsMillingShop *shop, BsWorking *why)
{
  double sawn = bs_milling_strip (wish->width, wish->length, shop);

  bs_working_init (
      why, N_ ("Rough width to buy"),
      N_ ("What a board must have so that its strips come out of it with the confidence asked for: "
          "one edge is made straight first, and every strip straight again once it is ripped."),
      "W = n s + (n - 1) k + e + c + z d", BS_QUANTITY_LENGTH,
      N_ ("It is as good as the figures of warp: planning figures of this program, no source, "
          "until you measure boards of your own yard. The lower end is what a board of mean warp "
          "needs."));
  why->value = need->width;
  why->low = need->width - need->deviations * need->crook_deviation;
  why->high = need->width;
  bs_working_add (why, N_ ("strips side by side"), "n", wish->strips, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("width wanted"), "", wish->width, BS_QUANTITY_LENGTH, N_ ("set by you"));
  bs_working_add (why, N_ ("strip as sawn, with what makes its edges straight again"), "s", sawn,
                  BS_QUANTITY_LENGTH, N_ ("spring and edge allowance, set by you"));
  bs_working_add (why, N_ ("kerf"), "k", shop->kerf, BS_QUANTITY_LENGTH, N_ ("set by you"));
  bs_working_add (why, N_ ("edge allowance"), "e", shop->edge_allowance, BS_QUANTITY_LENGTH,
                  N_ ("set by you"));
  bs_working_add (why, N_ ("mean crook of such a board"), "c", need->crook, BS_QUANTITY_LENGTH,
                  N_ ("figures of warp"));
  bs_working_add (why, N_ ("standard deviation of that"), "d", need->crook_deviation,
                  BS_QUANTITY_LENGTH, N_ ("figures of warp"));
  bs_working_add (why, N_ ("standard deviations to provide for"), "z", need->deviations,
                  BS_QUANTITY_RATIO, N_ ("normal distribution, for all laminations together"));
}

BsLayerWay
bs_milling_layers (int layers, const BsMillingWish *wish, const BsWarpHabit *habit,
                   const BsMillingShop *shop, const BsLumberSeries *series, double ratio)
{
  BsMillingWish layer = *wish;
  BsLayerWay self = { .layers = layers, .row = -1, .volume = NAN };

  g_return_val_if_fail (layers > 0, self);

  layer.thickness /= layers;
  layer.count *= layers;
  bs_milling_need (&layer, habit, shop, &self.need);
  self.glue_area = (layers - 1) * wish->width * wish->length;
  self.row = bs_lumber_least (series, self.need.thickness, ratio);
  if (self.row >= 0)
    self.volume
        = layers * series->rows[self.row].sold * self.need.width * self.need.length / wish->strips;
  return self;
}

double
bs_milling_layers_cost (const BsLayerWay *way, double wood_minor_per_m3, double glue_minor_per_m2)
{
  double glue = way->layers > 1 ? way->glue_area / MM2_PER_M2 * glue_minor_per_m2 : 0.0;

  return way->volume / MM3_PER_M3 * wood_minor_per_m3 + glue;
}
