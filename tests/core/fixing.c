/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/fixing.h"

#include <math.h>

#include "core/units.h"
#include "shops.h"

/* A slab 320 mm wide, glued at 9 %, of a wood that moves 0.3 % for each % whichever way its rings
 * run. Air of 20 C and 40 to 60 % brings it to 7.7 and 11.0 % (Wood handbook, table 4-2). */
static BsPlan *
new_plan (BsFixedLine line)
{
  BsPlan *plan = shop_new_perfect ();
  BsWood *wood = plan->woods->pdata[0];

  wood->coef_radial = 0.003;
  wood->coef_tangential = 0.003;
  plan->slab.fixing = (BsFixing){ line, 6.0, 1.0 };
  return plan;
}

static GArray *
find_slots (const BsPlan *plan)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsMovement movement;

  bs_movement_slab (stack, 320.0, 45.0, &movement);
  return bs_fixing_slots (stack, &movement);
}

typedef struct
{
  const char *path;
  BsFixedLine line;
  BsUnitSystem units;
  guint n;
  double first, last; /* mm */
} StepRow;

/* 160 mm to either edge from the middle, 320 mm from one edge to the other; at most six. */
static const StepRow step_rows[] = {
  { "middle", BS_FIXED_MIDDLE, BS_UNIT_SYSTEM_METRIC, 3, 50.0, 150.0 },
  { "front", BS_FIXED_FRONT, BS_UNIT_SYSTEM_METRIC, 3, 100.0, 300.0 },
  { "back", BS_FIXED_BACK, BS_UNIT_SYSTEM_METRIC, 3, 100.0, 300.0 },
  { "middle-inch", BS_FIXED_MIDDLE, BS_UNIT_SYSTEM_INCH, 3, 2 * BS_MM_PER_INCH,
    6 * BS_MM_PER_INCH },
  { "front-inch", BS_FIXED_FRONT, BS_UNIT_SYSTEM_INCH, 4, 3 * BS_MM_PER_INCH, 12 * BS_MM_PER_INCH },
};

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;
  g_autoptr (BsPlan) plan = new_plan (row->line);
  plan->units = row->units;
  g_autoptr (GArray) slots = find_slots (plan);

  g_assert_cmpuint (slots->len, ==, row->n);
  g_assert_cmpfloat_with_epsilon (g_array_index (slots, BsSlot, 0).distance, row->first, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (slots, BsSlot, row->n - 1).distance, row->last,
                                  1e-9);
}

/* By hand: 100 x 0.003 x (9 - 7.7) = 0.39 towards the middle, 100 x 0.003 x (11 - 9) = 0.60 away
 * from it, and 6 + 2 x 1 for the screw: 8.99. The table's tenth of a per cent is 0.03 mm. */
static void
test_by_hand (void)
{
  g_autoptr (BsPlan) plan = new_plan (BS_FIXED_MIDDLE);
  g_autoptr (GArray) slots = find_slots (plan);
  const BsSlot *slot = &g_array_index (slots, BsSlot, 1);

  g_assert_cmpfloat_with_epsilon (slot->distance, 100.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (slot->towards, 0.39, 0.03);
  g_assert_cmpfloat_with_epsilon (slot->away, 0.60, 0.03);
  g_assert_cmpfloat_with_epsilon (slot->length, 8.99, 0.05);
}

/* A slab that is four times as wide has slots that reach farther, not more of them. */
static void
test_wide (void)
{
  g_autoptr (BsPlan) plan = new_plan (BS_FIXED_FRONT);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsMovement movement;

  for (guint i = 0; i < 22; i++)
    {
      double width = 20.0 * pow (1.3, i);

      bs_movement_slab (stack, width, 45.0, &movement);
      g_autoptr (GArray) slots = bs_fixing_slots (stack, &movement);
      g_assert_cmpuint (slots->len, <=, 6);
      g_assert_true (slots->len > 0 || width < 25.0);
    }
}

static void
test_not_known (void)
{
  g_autoptr (BsPlan) empty = bs_plan_new ();
  g_autoptr (BsPlan) plan = new_plan (BS_FIXED_MIDDLE);
  g_autoptr (GArray) none = find_slots (empty);

  bs_text_set (&slab_at (plan, 0)->wood, "nobody");
  g_autoptr (GArray) nobody = find_slots (plan);
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (nobody->len, ==, 0);
}

static void
test_reach (void)
{
  const BsFixing middle = { .line = BS_FIXED_MIDDLE }, back = { .line = BS_FIXED_BACK };

  g_assert_cmpfloat_with_epsilon (bs_fixing_reach (&middle, 620.0), 310.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_fixing_reach (&back, 620.0), 620.0, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (step_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/fixing/step/", step_rows[i].path, NULL);
      g_test_add_data_func (path, &step_rows[i], test_step);
    }
  g_test_add_func ("/fixing/by-hand", test_by_hand);
  g_test_add_func ("/fixing/wide", test_wide);
  g_test_add_func ("/fixing/not-known", test_not_known);
  g_test_add_func ("/fixing/reach", test_reach);
  return g_test_run ();
}
