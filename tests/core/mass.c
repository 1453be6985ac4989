/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/mass.h"

#include "shops.h"

#include <math.h>

/* At 12 % the density is 1120 times the specific gravity: eight laminations 1200 x 40 mm, planed to
 * 40 mm, are 0.01536 m3 of 560 kg/m3. */
static void
test_slab (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  for (guint i = 0; i < 8; i++)
    slab_at (plan, i)->moisture_pct = 12.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  g_assert_cmpfloat_with_epsilon (bs_mass_slab (stack, 40.0, 99.0), 0.01536 * 560.0, 1e-9);
}

/* Where no moisture is known the one given counts, for those laminations only. */
static void
test_unknown_moisture (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  for (guint i = 0; i < 8; i++)
    slab_at (plan, i)->moisture_pct = i == 0 ? 9.0 : NAN;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsPlan) known = shop_new_perfect ();
  g_autoptr (BsStack) known_stack = bs_stack_new (known);

  g_assert_cmpfloat_with_epsilon (bs_mass_slab (stack, 40.0, 9.0),
                                  bs_mass_slab (known_stack, 40.0, 99.0), 1e-12);
  g_assert_cmpfloat (bs_mass_slab (stack, 40.0, 12.0), >, bs_mass_slab (stack, 40.0, 9.0));
}

static void
test_unknown_wood (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  bs_text_set (&slab_at (plan, 5)->wood, "nobody");
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  g_assert_true (isnan (bs_mass_slab (stack, 40.0, 9.0)));
}

static void
test_no_slab (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  g_assert_true (isnan (bs_mass_slab (stack, 40.0, 9.0)));
  g_assert_cmpfloat_with_epsilon (bs_mass_glue (stack), 0.0, 1e-12);
}

/* Seven lines of 0.054 m2 at 180 g/m2. */
static void
test_glue (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  g_assert_cmpfloat_with_epsilon (bs_mass_glue (stack), 7.0 * 0.054 * 0.180, 1e-12);
}

/* One person 23 kg (NIOSH 94-110, load constant); two lift 2/3, three and more half of the sum of
 * their single limits (HSE L23, from memory); unless the person said what they lift. */
typedef struct
{
  const char *path;
  int people;
  double said_kg;
  double wanted_kg;
} LiftRow;

static const LiftRow lift_rows[] = {
  { "one", 1, NAN, 23.0 },   { "two", 2, NAN, 23.0 * 2.0 * 2.0 / 3.0 },
  { "three", 3, NAN, 34.5 }, { "six", 6, NAN, 69.0 },
  { "said", 2, 40.0, 40.0 },
};

static void
test_most_lifted (gconstpointer data)
{
  const LiftRow *row = data;
  BsShop shop = { .people = row->people, .max_lift_kg = row->said_kg };

  g_assert_cmpfloat_with_epsilon (bs_mass_most_lifted (&shop), row->wanted_kg, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mass/slab", test_slab);
  g_test_add_func ("/mass/unknown-moisture", test_unknown_moisture);
  g_test_add_func ("/mass/unknown-wood", test_unknown_wood);
  g_test_add_func ("/mass/no-slab", test_no_slab);
  g_test_add_func ("/mass/glue", test_glue);
  for (gsize i = 0; i < G_N_ELEMENTS (lift_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/mass/most-lifted/%s", lift_rows[i].path);
      g_test_add_data_func (path, &lift_rows[i], test_most_lifted);
    }
  return g_test_run ();
}
