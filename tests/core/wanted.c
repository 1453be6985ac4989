/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/wanted.h"

#include "yards.h"

static const BsWant *
get_want (const GArray *wanted, guint i)
{
  return &g_array_index (wanted, BsWant, i);
}

static void
add_cut (BsPlan *plan, const char *piece)
{
  g_autoptr (GRefString) board = g_ref_string_new ("plank"), name = g_ref_string_new (piece);
  BsCut cut = { .board = board, .piece = name, .length = 1000.0, .width = 70.0 };

  bs_plan_add_cut (plan, &cut);
}

/* Of four alike, one names its board and one has its cut; the rest are one want. */
static void
test_laminations (void)
{
  g_autoptr (BsPlan) plan = yard_plan (4, 1000.0, 40.0, 65.0);

  yard_rack (plan, "plank", 2000.0, 200.0, 50.0);
  bs_text_set (&slab_at (plan, 1)->board, "plank");
  add_cut (plan, "3");
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_assert_cmpuint (wanted->len, ==, 1);
  g_assert_cmpuint (get_want (wanted, 0)->pieces->len, ==, 2);
  g_assert_cmpstr (g_ptr_array_index (get_want (wanted, 0)->pieces, 0), ==, "1");
  g_assert_cmpstr (g_ptr_array_index (get_want (wanted, 0)->pieces, 1), ==, "4");
}

static void
test_sizes_apart (void)
{
  g_autoptr (BsPlan) plan = yard_plan (3, 1000.0, 40.0, 65.0);

  slab_at (plan, 1)->height = 68.0;
  slab_at (plan, 2)->height = 66.0; /* near enough to the first */
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_assert_cmpuint (wanted->len, ==, 2);
  g_assert_cmpint (get_want (wanted, 0)->needed, ==, 2);
  g_assert_cmpfloat_with_epsilon (get_want (wanted, 0)->width, 66.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (get_want (wanted, 1)->width, 68.0, 1e-9);
}

/* On edge the board stands, on flat it lies. */
static void
test_layup (void)
{
  g_autoptr (BsPlan) plan = yard_plan (1, 1000.0, 40.0, 65.0);
  g_autoptr (GArray) on_edge = bs_wanted_new (plan);
  plan->slab.layup = BS_LAYUP_ON_FLAT;
  g_autoptr (GArray) on_flat = bs_wanted_new (plan);

  g_assert_cmpfloat_with_epsilon (get_want (on_edge, 0)->thickness, 40.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (get_want (on_edge, 0)->width, 65.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (get_want (on_flat, 0)->thickness, 65.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (get_want (on_flat, 0)->width, 40.0, 1e-9);
}

/* 10 % of 15 are 1.5: two. */
static void
test_spare (void)
{
  g_autoptr (BsPlan) plan = yard_plan (15, 1000.0, 40.0, 65.0);

  plan->buying.spare_pct = 10.0;
  yard_part (plan, "leg", 4, 700.0, 90.0, 40.0);
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_assert_cmpint (get_want (wanted, 0)->count, ==, 17);
  g_assert_cmpint (get_want (wanted, 1)->count, ==, 4);
}

static void
test_parts (void)
{
  g_autoptr (BsPlan) plan = yard_plan (1, 1000.0, 40.0, 65.0);

  yard_part (plan, "leg", 4, 700.0, 90.0, 40.0);
  yard_part (plan, "rail", 1, 700.0, 90.0, 40.0);
  add_cut (plan, "leg");
  add_cut (plan, "rail");
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_assert_cmpuint (wanted->len, ==, 2);
  g_assert_cmpstr (get_want (wanted, 1)->name, ==, "leg");
  g_assert_cmpint (get_want (wanted, 1)->needed, ==, 3);
}

/* Nothing but a slab: 600 mm in laminations of 40 mm. */
static void
test_slab_alone (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();

  plan->slab.width = 600.0;
  plan->buying.lamination_size = 40.0;
  plan->buying.spare_pct = 0.0;
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_assert_cmpuint (wanted->len, ==, 1);
  g_assert_cmpint (get_want (wanted, 0)->needed, ==, 15);
  g_assert_cmpuint (get_want (wanted, 0)->pieces->len, ==, 0);
}

/* Boards of a rack that were measured take the place of the planning figures, from five on. */
static void
test_measured_rack (void)
{
  g_autoptr (BsPlan) plan = yard_plan (1, 2000.0, 40.0, 65.0);
  double before = 0.0;

  for (guint n = 0; n < 5; n++)
    {
      g_autofree char *id = g_strdup_printf ("plank-%u", n);
      BsBoard *board = yard_rack (plan, id, 2000.0, 200.0, 50.0);
      g_autoptr (GArray) wanted = bs_wanted_new (plan);

      before = get_want (wanted, 0)->need.loss;
      board->bow = 1.0;
      board->crook = 1.0;
      board->cup = 0.0;
      board->twist = 0.0;
    }
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_assert_cmpfloat (before, >, 4.0);
  /* bow 1 mm over 2 m, nothing else */
  g_assert_cmpfloat_with_epsilon (get_want (wanted, 0)->need.loss, 1.0, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wanted/laminations", test_laminations);
  g_test_add_func ("/wanted/sizes-apart", test_sizes_apart);
  g_test_add_func ("/wanted/layup", test_layup);
  g_test_add_func ("/wanted/spare", test_spare);
  g_test_add_func ("/wanted/parts", test_parts);
  g_test_add_func ("/wanted/slab-alone", test_slab_alone);
  g_test_add_func ("/wanted/measured-rack", test_measured_rack);
  return g_test_run ();
}
