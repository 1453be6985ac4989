/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/purchase-put.h"

#include <math.h>

#include "checks/saw-again.h"
#include "core/random.h"
#include "core/sawing-job.h"
#include "core/slab-wish.h"
#include "opens.h"
#include "yards.h"

static BsPlan *
wished_plan (void)
{
  BsPlan *plan = bs_plan_new ();

  yard_wood (plan);
  plan->slab.width = 310.0;
  plan->buying.lamination_size = 40.0;
  plan->buying.spare_pct = 20.0;
  BsOffer *offer = yard_offer (plan, 2500.0, 230.0, 52.0, 7700);
  g_array_index (offer->lengths, BsOfferLength, 0).supply = 5;
  yard_part (plan, "leg", 2, 800.0, 90.0, 30.0);
  return plan;
}

/* 310 / 40 are 7.75: eight laminations of 38.75, in the slab, in order. */
static void
test_make_laminations (void)
{
  g_autoptr (BsPlan) plan = wished_plan ();
  g_autoptr (BsPlan) made = bs_slab_wish_make_laminations (plan);

  g_assert_cmpuint (plan->laminations->len, ==, 0);
  g_assert_cmpuint (made->laminations->len, ==, 8);
  g_assert_cmpuint (made->order->len, ==, 8);
  for (guint i = 0; i < 8; i++)
    {
      const BsLamination *lamination = slab_at (made, i);
      g_assert_cmpfloat_with_epsilon (lamination->thickness, 38.75, 1e-9);
      g_assert_cmpstr (lamination->wood, ==, "maple");
      g_assert_true (isnan (lamination->moisture_pct));
      g_assert_cmpint (bs_plan_find_place (made, lamination->id), ==, (int)i);
    }
  check_opens (made);
}

static guint
count_cuts_of (const BsPlan *plan, const char *piece)
{
  guint n = 0;

  for (guint i = 0; i < plan->cuts->len; i++)
    n += g_str_equal (g_array_index (plan->cuts, BsCut, i).piece, piece);
  return n;
}

/* A wish, bought: every lamination and part has a cut on a board of the rack, the spare ones stand
 * in the rack, and then nothing is wanted any more. */
static void
test_put_purchase (void)
{
  g_autoptr (BsPlan) plan = wished_plan ();
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_autoptr (BsPlan) put = bs_purchase_put (purchase);

  g_assert_cmpuint (put->boards->len, ==, (guint)purchase->n_boards);
  g_assert_cmpuint (put->laminations->len, ==, 10); /* 8 and a fifth of them */
  g_assert_cmpuint (put->order->len, ==, 8);
  g_assert_cmpuint (put->cuts->len, ==, 12);
  g_assert_cmpuint (count_cuts_of (put, "leg"), ==, 2);
  for (guint i = 0; i < put->laminations->len; i++)
    g_assert_cmpuint (count_cuts_of (put, slab_at (put, i)->id), ==, 1);
  for (guint i = 0; i < put->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (put->cuts, BsCut, i);
      const BsBoard *board = bs_plan_find_board (put, cut->board);
      g_assert_false (cut->is_pinned || cut->is_cut);
      g_assert_cmpfloat (cut->x + cut->length, <=, board->length + 1e-6);
      g_assert_cmpfloat (cut->y + cut->width, <=, board->width + 1e-6);
      g_assert_cmpint (board->price_minor, ==, 7700);
      g_assert_cmpfloat_with_epsilon (board->thickness, 52.0, 1e-9);
    }
  check_opens (put);

  g_autoptr (BsPurchase) after = bs_purchase_new (put, 0, NULL);
  g_assert_cmpuint (after->wanted->len, ==, 0);
}

/* What fits a free board of the rack is cut from it. */
static void
test_put_rack (void)
{
  g_autoptr (BsPlan) plan = wished_plan ();

  yard_rack (plan, "plank", 2600.0, 300.0, 52.0);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_autoptr (BsPlan) put = bs_purchase_put (purchase);
  guint n = 0;

  g_assert_cmpuint (put->boards->len, ==, 1 + (guint)purchase->n_boards);
  for (guint i = 0; i < put->cuts->len; i++)
    n += g_str_equal (g_array_index (put->cuts, BsCut, i).board, "plank");
  g_assert_cmpuint (n, >, 0);
  check_opens (put);
}

/* Wood for a part of any size, and a lamination or two more. */
static void
want_more (BsPlan *plan, BsRandom *random, guint round)
{
  g_autofree char *name = g_strdup_printf ("part-%u", round);

  yard_part (plan, name, 1 + (int)bs_random_below (random, 4),
             200.0 + 50.0 * bs_random_below (random, 20), 40.0 + 10.0 * bs_random_below (random, 8),
             20.0 + 10.0 * bs_random_below (random, 2));
}

/* Each cut that was there before is there still, where it was. */
static void
check_keeps_cuts (const BsPlan *before, const BsPlan *after)
{
  for (guint i = 0; i < before->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (before->cuts, BsCut, i);
      const BsCut *kept = &g_array_index (after->cuts, BsCut, i);

      g_assert_cmpstr (cut->board, ==, kept->board);
      g_assert_cmpstr (cut->piece, ==, kept->piece);
      g_assert_cmpfloat_with_epsilon (cut->x, kept->x, 1e-9);
      g_assert_cmpfloat_with_epsilon (cut->y, kept->y, 1e-9);
    }
}

/* Boards whose cuts are older than the purchase and that get more by it. */
static guint
count_rests_used (const BsPlan *before, const BsPlan *after)
{
  g_autoptr (GHashTable) had = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) used = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < after->cuts->len; i++)
    {
      char *board = g_array_index (after->cuts, BsCut, i).board;

      if (i < before->cuts->len)
        g_hash_table_add (had, board);
      else if (g_hash_table_contains (had, board))
        g_hash_table_add (used, board);
    }
  return g_hash_table_size (used);
}

/* Purchase after purchase out of the same rack, whatever is wanted: no wood is given out twice, for
 * every board can be sawn into its pieces and is the sum of pieces, kerfs, rest and waste
 * (saw_again ()); no piece is cut twice; and where cuts are planned they can all stay. */
static void
test_rests (void)
{
  BsRandom random = bs_random_init (7);
  guint n_used = 0;

  for (guint run = 0; run < 12; run++)
    {
      g_autoptr (BsPlan) plan
          = yard_plan (1 + bs_random_below (&random, 4), 1200.0, 30.0, 40.0 + 10.0 * (run % 3));

      plan->shop.saw.edge_trim = run % 2 == 0 ? 0.0 : 4.0;
      plan->shop.saw.first = (BsSawFirst)(run % 3);
      yard_offer (plan, 2500.0, 180.0 + 30.0 * (run % 4), 52.0, 2000);
      yard_rack (plan, "plank", 1300.0 + 400.0 * (run % 3), 230.0, 52.0);
      for (guint round = 0; round < 3; round++)
        {
          g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 2, NULL);
          g_autoptr (BsPlan) put = bs_purchase_put (purchase);
          const BsSawEffort effort = { .keeps_all = TRUE, .is_quick = TRUE };
          g_autoptr (GError) error = NULL;
          g_autoptr (BsSawPlan) kept = bs_saw_solve (put, &effort, &error);

          g_assert_no_error (error);
          g_assert_cmpuint (kept->cuts->len, ==, put->cuts->len);
          g_assert_cmpuint (put->cuts->len, ==, plan->cuts->len + purchase->n_pieces);
          saw_rack_again (put);
          check_keeps_cuts (plan, put);
          n_used += count_rests_used (plan, put);
          bs_plan_unref (plan);
          plan = bs_plan_copy (put);
          want_more (plan, &random, round);
        }
    }
  g_assert_cmpuint (n_used, >=, 6);
}

/* Boards get labels of their own, past Z too. */
static void
test_labels (void)
{
  g_autoptr (BsPlan) plan = wished_plan ();
  g_autoptr (GHashTable) labels = g_hash_table_new (g_str_hash, g_str_equal);

  yard_offer (plan, 2500.0, 230.0, 65.0, 9900);
  plan->slab.width = 3000.0;
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_autoptr (BsPlan) put = bs_purchase_put (purchase);
  g_assert_cmpuint (put->boards->len, >, 26);
  for (guint i = 0; i < put->boards->len; i++)
    g_assert_true (g_hash_table_add (labels, ((BsBoard *)put->boards->pdata[i])->label));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/purchase-put/make-laminations", test_make_laminations);
  g_test_add_func ("/purchase-put", test_put_purchase);
  g_test_add_func ("/purchase-put/rack", test_put_rack);
  g_test_add_func ("/purchase-put/rests", test_rests);
  g_test_add_func ("/purchase-put/labels", test_labels);
  return g_test_run ();
}
