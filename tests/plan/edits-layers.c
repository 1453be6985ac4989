/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits.h"

#include "core/slab-wish.h"
#include "core/stack.h"
#include "opens.h"
#include "yards.h"

static BsPlan *
wished_plan (void)
{
  BsPlan *plan = bs_plan_new ();

  yard_wood (plan);
  plan->slab.width = 310.0;
  plan->buying.lamination_size = 40.0;
  yard_part (plan, "leg", 2, 800.0, 90.0, 30.0);
  return plan;
}

static const BsWant *
find_want (const GArray *wanted, const char *name)
{
  for (guint i = 0; i < wanted->len; i++)
    if (g_strcmp0 (g_array_index (wanted, BsWant, i).name, name) == 0)
      return &g_array_index (wanted, BsWant, i);
  g_assert_not_reached ();
}

/* Two legs 90 x 30 become four layers of 15. */
static void
test_halve_part (void)
{
  g_autoptr (BsPlan) plan = wished_plan ();
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_autoptr (BsPlan) halved = bs_edit_halve_want (plan, find_want (wanted, "leg"));
  const BsPart *part = bs_plan_find_part (halved, "leg");

  g_assert_cmpint (part->count, ==, 4);
  g_assert_cmpfloat_with_epsilon (part->thickness, 15.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (part->width, 90.0, 1e-9);
  g_assert_cmpstr (part->name, ==, "leg, layer");
  g_assert_cmpint (bs_plan_find_part (plan, "leg")->count, ==, 2);
  check_opens (halved);
}

/* A wish for 8 laminations of 38.75 becomes one for 16 of 19.375. */
static void
test_halve_wish (void)
{
  g_autoptr (BsPlan) plan = wished_plan ();
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_autoptr (BsPlan) halved = bs_edit_halve_want (plan, find_want (wanted, NULL));
  g_autoptr (BsPlan) made = bs_slab_wish_make_laminations (halved);

  g_assert_cmpuint (made->laminations->len, ==, 16);
  g_assert_cmpfloat_with_epsilon (slab_at (made, 15)->thickness, 19.375, 1e-9);
  check_opens (halved);
}

/* Laminations that are there: two in the place of each, the slab as wide and in one pack as before;
 * one in the rack stays there, and one that has its board is left whole. */
static void
test_halve_laminations (void)
{
  g_autoptr (BsPlan) wish = wished_plan ();
  g_autoptr (BsPlan) made = bs_slab_wish_make_laminations (wish);
  g_autoptr (BsPlan) plan = bs_edit_set_aside (made, 7);
  const BsPack pack = { .first = 2, .count = 3 };

  yard_rack (plan, "A", 2000.0, 100.0, 50.0);
  bs_text_set (&slab_at (plan, 0)->board, "A");
  g_array_append_val (plan->packs, pack);
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_autoptr (BsPlan) halved = bs_edit_halve_want (plan, find_want (wanted, "2"));
  g_autoptr (BsStack) before = bs_stack_new (plan);
  g_autoptr (BsStack) after = bs_stack_new (halved);

  g_assert_cmpuint (halved->laminations->len, ==, 15);
  g_assert_cmpuint (after->n, ==, 13);
  g_assert_cmpfloat_with_epsilon (after->width, before->width, 1e-9);
  g_assert_cmpstr (after->placed[0].lamination->label, ==, "1");
  g_assert_cmpstr (after->placed[1].lamination->label, ==, "2a");
  g_assert_cmpstr (after->placed[2].lamination->label, ==, "2b");
  g_assert_cmpint (g_array_index (halved->packs, BsPack, 0).first, ==, 3);
  g_assert_cmpint (g_array_index (halved->packs, BsPack, 0).count, ==, 6);
  check_opens (halved);
}

/* Nothing is halved that was begun, that lies, or that would be too thin or too many. */
static void
test_halve_not (void)
{
  g_autoptr (BsPlan) plan = wished_plan ();
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  BsPart *leg = plan->parts->pdata[0];
  const BsWant *part = find_want (wanted, "leg"), *slab = find_want (wanted, NULL);
  BsCut cut = { 0 };

  g_assert_true (bs_want_can_be_layers (part, plan) && bs_want_can_be_layers (slab, plan));
  plan->slab.layup = BS_LAYUP_ON_FLAT;
  g_assert_false (bs_want_can_be_layers (slab, plan));
  bs_text_set (&cut.piece, "leg");
  g_array_append_val (plan->cuts, cut);
  g_assert_false (bs_want_can_be_layers (part, plan));
  g_array_set_size (plan->cuts, 0);
  leg->thickness = 3.0;
  leg->count = 600;
  g_autoptr (GArray) thin = bs_wanted_new (plan);
  g_assert_false (bs_want_can_be_layers (find_want (thin, "leg"), plan));
  leg->thickness = 30.0;
  g_autoptr (GArray) many = bs_wanted_new (plan);
  g_assert_false (bs_want_can_be_layers (find_want (many, "leg"), plan));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/edits-layers/part", test_halve_part);
  g_test_add_func ("/edits-layers/wish", test_halve_wish);
  g_test_add_func ("/edits-layers/laminations", test_halve_laminations);
  g_test_add_func ("/edits-layers/not", test_halve_not);
  return g_test_run ();
}
