/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/movement.h"

#include "core/moisture.h"
#include "shops.h"

#include <math.h>

/* Values against the handbook: tests/published/movement.c. Here what must hold without a table. */

/* A wood sold as a group, whose two figures disagree, is the hard case. */
static const BsSwelling red_oak = { 0.00369, 8.6 };

static void
test_antisymmetric (void)
{
  for (int a = 6; a <= 14; a++)
    for (int b = 6; b <= 14; b++)
      g_assert_cmpfloat_with_epsilon (bs_movement_ratio (&red_oak, a, b),
                                      -bs_movement_ratio (&red_oak, b, a), 1e-15);
}

/* There and back again. Equation 13-2 refers both ways to the size before, so that it is back but
 * for the square of what it moved. */
static void
test_there_and_back (void)
{
  for (int a = 0; a <= 34; a++)
    for (int b = 0; b <= 34; b++)
      {
        double there = bs_movement_ratio (&red_oak, a, b);
        double back = bs_movement_ratio (&red_oak, b, a);
        double inside = 8.0 * red_oak.coefficient; /* the whole of 6 to 14 % */

        g_assert_cmpfloat_with_epsilon ((1.0 + there) * (1.0 + back), 1.0, inside * inside + 1e-12);
      }
}

static void
test_monotone (void)
{
  for (int from = 0; from <= 30; from += 3)
    for (int to = 1; to <= 60; to++) /* halves of a per cent */
      g_assert_cmpfloat (bs_movement_ratio (&red_oak, from, to / 2.0), >,
                         bs_movement_ratio (&red_oak, from, (to - 1) / 2.0));
}

/* No jump where one equation hands over to the other. */
static void
test_no_jump (void)
{
  const double edges[] = { 6.0, 14.0, 30.0 };

  for (guint i = 0; i < G_N_ELEMENTS (edges); i++)
    g_assert_cmpfloat_with_epsilon (bs_movement_ratio (&red_oak, 9.0, edges[i] - 1e-9),
                                    bs_movement_ratio (&red_oak, 9.0, edges[i] + 1e-9), 1e-9);
}

static void
test_nothing_above_saturation (void)
{
  g_assert_cmpfloat_with_epsilon (bs_movement_ratio (&red_oak, 31.0, 90.0), 0.0, 1e-15);
}

static void
test_unknown (void)
{
  BsSwelling unknown = { NAN, NAN };

  g_assert_true (isnan (bs_movement_ratio (&unknown, 8.0, 10.0)));
  g_assert_true (isnan (bs_movement_ratio (&red_oak, NAN, 10.0)));
  g_assert_true (isnan (bs_movement_ratio (&red_oak, 10.0, NAN)));
}

/* A wood of round figures: 0.001 radially, 0.003 tangentially for each per cent. */
static BsPlan *
new_plan (void)
{
  BsPlan *plan = shop_new_perfect ();
  BsWood *wood = plan->woods->pdata[0];

  wood->coef_radial = 0.001;
  wood->coef_tangential = 0.003;
  return plan;
}

static void
set_pith (BsPlan *plan, double y, double z)
{
  for (guint i = 0; i < plan->laminations->len; i++)
    {
      slab_at (plan, i)->pith_y = y;
      slab_at (plan, i)->pith_z = z;
    }
}

/* By where the pith lies, far away: at 45 degrees half of each (0.002). */
typedef struct
{
  const char *path;
  double pith_y, pith_z;
  double wanted_y, wanted_z; /* coefficient */
} RingRow;

static const RingRow ring_rows[] = {
  { "below", 0.0, -1e6, 0.003, 0.001 },
  { "above", 0.0, 1e6, 0.003, 0.001 },
  { "beside", 1e6, 0.0, 0.001, 0.003 },
  { "askew", 1e6, 1e6, 0.002, 0.002 },
  { "at-30-degrees", 500000.0, 866025.4, 0.0025, 0.0015 },
  { "unknown", NAN, NAN, 0.002, 0.002 },
};

static void
test_rings (gconstpointer data)
{
  const RingRow *row = data;
  g_autoptr (BsPlan) plan = new_plan ();
  set_pith (plan, row->pith_y, row->pith_z);
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  /* 9 % at gluing (slabs.h), so that 3 % more is within the linear range. */
  g_assert_cmpfloat_with_epsilon (bs_movement_across (stack, 12.0), 3.0 * row->wanted_y, 1e-6);
  g_assert_cmpfloat_with_epsilon (bs_movement_through (stack, 12.0), 3.0 * row->wanted_z, 1e-6);
}

/* Radial and tangential shares of both directions add to one, wherever the pith lies. */
static void
test_shares (void)
{
  for (int y = -100; y <= 100; y += 20)
    for (int z = -100; z <= 100; z += 20)
      {
        g_autoptr (BsPlan) plan = new_plan ();
        set_pith (plan, y, z);
        g_autoptr (BsStack) stack = bs_stack_new (plan);
        double both = bs_movement_lamination_y (&stack->placed[0], 9.0, 10.0)
                      + bs_movement_lamination_z (&stack->placed[0], 9.0, 10.0);

        g_assert_cmpfloat (bs_movement_ring_cos2_y (&stack->placed[0]), >=, 0.0);
        g_assert_cmpfloat (bs_movement_ring_cos2_y (&stack->placed[0]), <=, 1.0);
        g_assert_cmpfloat_with_epsilon (both, 0.004, 1e-12);
      }
}

/* A turned lamination moves as it did. */
static void
test_turned (void)
{
  for (guint turn = 0; turn < BS_N_ORIENTATIONS; turn++)
    {
      g_autoptr (BsPlan) plan = new_plan ();
      set_pith (plan, 30.0, -70.0);
      g_autoptr (BsStack) upright = bs_stack_new (plan);
      for (guint i = 0; i < plan->order->len; i++)
        g_array_index (plan->order, BsPlacement, i).orientation = (BsOrientation)turn;
      g_autoptr (BsStack) turned = bs_stack_new (plan);

      g_assert_cmpfloat_with_epsilon (bs_movement_across (upright, 6.0),
                                      bs_movement_across (turned, 6.0), 1e-12);
    }
}

/* 320 mm of flatsawn wood: 0.96 mm for each per cent. The sizes at 9 % are those at gluing. */
static void
test_slab (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  set_pith (plan, 0.0, -1e6);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsMovement movement;

  bs_movement_slab (stack, 320.0, 45.0, &movement);
  double dry = bs_moisture_emc (20.0, 40.0), damp = bs_moisture_emc (20.0, 60.0);
  g_assert_cmpfloat_with_epsilon (movement.glued_pct, 9.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (movement.width.at_gluing, 320.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (movement.width.dry, 320.0 + 0.96 * (dry - 9.0), 1e-6);
  g_assert_cmpfloat_with_epsilon (movement.width.damp, 320.0 + 0.96 * (damp - 9.0), 1e-6);
  g_assert_cmpfloat_with_epsilon (movement.width.year, 0.96 * (damp - dry), 1e-6);
  g_assert_cmpfloat_with_epsilon (movement.width.least, movement.width.most, 1e-12);
  g_assert_cmpfloat_with_epsilon (movement.thickness.year, 45.0 * 0.001 * (damp - dry), 1e-6);
  g_assert_cmpint (movement.step_place, ==, -1);
  g_assert_cmpuint (movement.n_no_rings, ==, 0);
}

/* Rings that are not known leave the range from quartersawn to flatsawn. */
static void
test_slab_without_rings (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsMovement movement;

  bs_movement_slab (stack, 320.0, 45.0, &movement);
  double year = movement.damp_pct - movement.dry_pct;
  g_assert_cmpuint (movement.n_no_rings, ==, 8);
  g_assert_cmpfloat_with_epsilon (movement.width.least, 320.0 * 0.001 * year, 1e-6);
  g_assert_cmpfloat_with_epsilon (movement.width.year, 320.0 * 0.002 * year, 1e-6);
  g_assert_cmpfloat_with_epsilon (movement.width.most, 320.0 * 0.003 * year, 1e-6);
}

/* A quartersawn lamination between flatsawn ones: 45 mm x 0.002 for each per cent. */
static void
test_step (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  set_pith (plan, 0.0, -1e6);
  slab_at (plan, 5)->pith_y = 1e6;
  slab_at (plan, 5)->pith_z = 0.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsMovement movement;

  bs_movement_slab (stack, 320.0, 45.0, &movement);
  double farthest = fmax (9.0 - movement.dry_pct, movement.damp_pct - 9.0);
  g_assert_cmpint (movement.step_place, ==, 4);
  g_assert_cmpfloat_with_epsilon (movement.step, 45.0 * 0.002 * farthest, 1e-6);
}

static void
test_unknown_wood (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  bs_text_set (&slab_at (plan, 5)->wood, "nobody");
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsMovement movement;
  BsWorking why;

  bs_movement_slab (stack, 320.0, 45.0, &movement);
  g_assert_true (isnan (movement.width.year));
  bs_movement_explain_width (&movement, stack, &why);
  g_assert_true (isnan (why.value));
  bs_movement_explain_thickness (&movement, &why);
  g_assert_true (isnan (why.value));
}

/* 300 mm from the fixed spot, 0.003 for each per cent, driven at 9 %: the screw travels
 * 0.9 mm for each per cent either way. */
static void
test_slot (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  set_pith (plan, 0.0, -1e6);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  double dry = bs_moisture_emc (20.0, 40.0), damp = bs_moisture_emc (20.0, 60.0);
  BsSlot slot = bs_movement_slot (stack, 300.0, 5.0, 1.0, 9.0);

  g_assert_cmpfloat_with_epsilon (slot.towards, 0.9 * (9.0 - dry), 1e-6);
  g_assert_cmpfloat_with_epsilon (slot.away, 0.9 * (damp - 9.0), 1e-6);
  g_assert_cmpfloat_with_epsilon (slot.length, 5.0 + slot.towards + slot.away + 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (slot.middle, 300.0 + (slot.away - slot.towards) / 2.0, 1e-12);
}

/* Driven into a slab wetter than it will ever be again, the screw travels one way only; twice as
 * far away it travels twice as far; at the fixed spot not at all. */
static void
test_slot_relations (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsSlot near = bs_movement_slot (stack, 150.0, 5.0, 1.0, 20.0);
  BsSlot far = bs_movement_slot (stack, 300.0, 5.0, 1.0, 20.0);
  BsSlot fixed = bs_movement_slot (stack, 0.0, 5.0, 1.0, 20.0);

  g_assert_cmpfloat_with_epsilon (near.away, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (far.towards, 2.0 * near.towards, 1e-9);
  g_assert_cmpfloat_with_epsilon (fixed.length, 7.0, 1e-12);
}

static double
term (const BsWorking *working, const char *symbol)
{
  for (guint i = 0; i < working->n_terms; i++)
    if (g_str_equal (working->terms[i].symbol, symbol))
      return working->terms[i].value;
  g_assert_not_reached ();
}

/* The terms put into the printed formulas give the printed values. */
static void
test_formulas_hold (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  set_pith (plan, 20.0, -60.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsSlot slot = bs_movement_slot (stack, 250.0, 5.0, 1.5, 10.0);
  BsMovement movement;
  BsWorking width, thickness, length;

  bs_movement_slab (stack, 320.0, 45.0, &movement);
  bs_movement_explain_width (&movement, stack, &width);
  bs_movement_explain_thickness (&movement, &thickness);
  bs_movement_explain_slot (&slot, 5.0, 1.5, &length);
  g_assert_cmpfloat_with_epsilon (
      width.value,
      term (&width, "W") * term (&width, "C") * (term (&width, "M₂") - term (&width, "M₁")), 1e-9);
  g_assert_cmpfloat_with_epsilon (thickness.value,
                                  term (&thickness, "T") * term (&thickness, "C")
                                      * (term (&thickness, "M₂") - term (&thickness, "M₁")),
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (length.value,
                                  term (&length, "s") + term (&length, "i") + term (&length, "o")
                                      + 2.0 * term (&length, "c"),
                                  1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/movement/antisymmetric", test_antisymmetric);
  g_test_add_func ("/movement/there-and-back", test_there_and_back);
  g_test_add_func ("/movement/monotone", test_monotone);
  g_test_add_func ("/movement/no-jump", test_no_jump);
  g_test_add_func ("/movement/nothing-above-saturation", test_nothing_above_saturation);
  g_test_add_func ("/movement/unknown", test_unknown);
  for (gsize i = 0; i < G_N_ELEMENTS (ring_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/movement/rings/", ring_rows[i].path, NULL);
      g_test_add_data_func (path, &ring_rows[i], test_rings);
    }
  g_test_add_func ("/movement/shares", test_shares);
  g_test_add_func ("/movement/turned", test_turned);
  g_test_add_func ("/movement/slab", test_slab);
  g_test_add_func ("/movement/slab-without-rings", test_slab_without_rings);
  g_test_add_func ("/movement/step", test_step);
  g_test_add_func ("/movement/unknown-wood", test_unknown_wood);
  g_test_add_func ("/movement/slot", test_slot);
  g_test_add_func ("/movement/slot-relations", test_slot_relations);
  g_test_add_func ("/movement/formulas-hold", test_formulas_hold);
  return g_test_run ();
}
