/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/lifting.h"

#include "core/mass.h"
#include "core/moisture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NIOSH "NIOSH 94-110 (1994), revised lifting equation"
#define LARGEST_TEAM 6

BsLift
bs_lift_default (void)
{
  return (BsLift){ .horizontal = 400.0, .vertical = 750.0, .travel = 250.0, .coupling = 0.95 };
}

/* The multipliers of the equation; its distances are in cm. */

static double
horizontal_multiplier (const BsLift *lift)
{
  if (lift->horizontal > 630.0)
    return 0.0;
  return lift->horizontal < 250.0 ? 1.0 : 250.0 / lift->horizontal;
}

static double
vertical_multiplier (const BsLift *lift)
{
  if (lift->vertical < 0.0 || lift->vertical > 1750.0)
    return 0.0;
  return 1.0 - 0.0003 * fabs (lift->vertical - 750.0);
}

static double
travel_multiplier (const BsLift *lift)
{
  if (lift->travel > 1750.0)
    return 0.0;
  return lift->travel < 250.0 ? 1.0 : 0.82 + 45.0 / lift->travel;
}

static double
asymmetry_multiplier (const BsLift *lift)
{
  double angle = fabs (lift->asymmetry_deg);

  return angle > 135.0 ? 0.0 : 1.0 - 0.0032 * angle;
}

double
bs_lift_limit (const BsLift *lift)
{
  return BS_LIFT_CONSTANT_KG * horizontal_multiplier (lift) * vertical_multiplier (lift)
         * travel_multiplier (lift) * asymmetry_multiplier (lift) * lift->coupling;
}

/* Two lift 2/3 of the sum of what each lifts alone, three and more half of it. */
static double
team_share (int people)
{
  static const double shares[] = { 1.0, 2.0 / 3.0, 0.5 };

  return shares[CLAMP (people, 1, 3) - 1];
}

double
bs_lift_team (double one_kg, int people)
{
  return one_kg * people * team_share (people);
}

int
bs_lift_people (double load_kg, double one_kg)
{
  for (int people = 1; people <= LARGEST_TEAM; people++)
    if (load_kg <= bs_lift_team (one_kg, people))
      return people;
  return 0;
}

static void
take_heavier (BsLoad *self, double kg, const char *label, int place)
{
  if (kg > self->kg || isnan (self->kg))
    {
      self->kg = kg;
      self->label = label;
      self->place = place;
    }
}

static void
find_heaviest_board (const BsPlan *plan, double moisture_pct, BsLoad *load)
{
  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsBoard *board = plan->boards->pdata[i];
      const BsWood *wood = bs_plan_find_wood (plan, board->wood);
      double moisture = isnan (board->moisture_pct) ? moisture_pct : board->moisture_pct;

      if (wood != NULL)
        take_heavier (load,
                      bs_moisture_density (wood->sg_12, moisture) * board->length * board->width
                          * board->thickness * BS_M3_PER_MM3,
                      board->label, -1);
    }
}

static double
weigh_placed (const BsPlaced *placed, double moisture_pct)
{
  return bs_mass_placed (placed, (placed->height_left + placed->height_right) / 2.0, moisture_pct);
}

static void
find_heaviest_pack (const BsStack *stack, double moisture_pct, BsLoad *load)
{
  const GArray *packs = stack->plan->packs;

  for (guint i = 0; i < packs->len; i++)
    {
      const BsPack *pack = &g_array_index (packs, BsPack, i);
      double kg = 0.0;

      for (int place = pack->first; place < pack->first + pack->count; place++)
        kg += weigh_placed (&stack->placed[place], moisture_pct);
      take_heavier (load, kg, NULL, pack->first);
    }
}

void
bs_lift_loads (const BsStack *stack, double slab_kg, double moisture_pct,
               BsLoad loads[BS_N_LOAD_KINDS])
{
  const BsLift lift = bs_lift_default ();
  const BsShop *shop = &stack->plan->shop;
  double one_kg = bs_lift_limit (&lift);

  for (guint i = 0; i < BS_N_LOAD_KINDS; i++)
    loads[i] = (BsLoad){ .kg = NAN, .place = -1 };
  find_heaviest_board (stack->plan, moisture_pct, &loads[BS_LOAD_BOARD]);
  for (guint i = 0; i < stack->n; i++)
    take_heavier (&loads[BS_LOAD_LAMINATION], weigh_placed (&stack->placed[i], moisture_pct),
                  stack->placed[i].lamination->label, (int)i);
  find_heaviest_pack (stack, moisture_pct, &loads[BS_LOAD_PACK]);
  loads[BS_LOAD_SLAB].kg = slab_kg;

  for (guint i = 0; i < BS_N_LOAD_KINDS; i++)
    {
      loads[i].people = bs_lift_people (loads[i].kg, one_kg);
      loads[i].index = loads[i].kg / bs_lift_team (one_kg, shop->people);
    }
}

void
bs_lift_explain (const BsLoad *load, const BsLift *lift, int people, BsWorking *why)
{
  bs_working_init (why, N_ ("Lifting index"),
                   isnan (load->kg)
                       ? N_ ("What it weighs is not known.")
                       : N_ ("The load over what the people in the shop may lift together, held "
                             "as wide pieces are. Above 1 the risk is raised, above 3 it is high: "
                             "call help or use a lifting aid."),
                   "i = m / (L H V D A C w k)", BS_QUANTITY_RATIO,
                   N_ ("For healthy adults, two hands, few lifts and a dry, even floor. Long "
                       "pieces also tip: support both ends."));
  if (isnan (load->kg))
    return;
  why->value = load->kg / bs_lift_team (bs_lift_limit (lift), people);
  bs_working_add (why, N_ ("load"), "m", load->kg, BS_QUANTITY_MASS, NULL);
  bs_working_add (why, N_ ("load constant"), "L", BS_LIFT_CONSTANT_KG, BS_QUANTITY_MASS, NIOSH);
  bs_working_add (why, N_ ("multiplier for the reach"), "H", horizontal_multiplier (lift),
                  BS_QUANTITY_RATIO, NIOSH);
  bs_working_add (why, N_ ("multiplier for the height"), "V", vertical_multiplier (lift),
                  BS_QUANTITY_RATIO, NIOSH);
  bs_working_add (why, N_ ("multiplier for the travel"), "D", travel_multiplier (lift),
                  BS_QUANTITY_RATIO, NIOSH);
  bs_working_add (why, N_ ("multiplier for the turn of the body"), "A", asymmetry_multiplier (lift),
                  BS_QUANTITY_RATIO, NIOSH);
  bs_working_add (why, N_ ("multiplier for the grip"), "C", lift->coupling, BS_QUANTITY_RATIO,
                  "NIOSH 94-110 (1994), coupling (from memory)");
  bs_working_add (why, N_ ("people"), "w", people, BS_QUANTITY_COUNT, N_ ("set by you"));
  bs_working_add (why, N_ ("part that a team lifts of the sum of what each lifts alone"), "k",
                  team_share (people), BS_QUANTITY_RATIO, "HSE L23, Manual handling (from memory)");
  bs_working_add (why, N_ ("reach from the ankles to the hands"), "", lift->horizontal,
                  BS_QUANTITY_LENGTH, N_ ("planning figure for wide pieces, no source"));
}
