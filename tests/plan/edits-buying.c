/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits.h"

#include <math.h>
#include <string.h>

#include "plan/document.h"
#include "yards.h"

/* What is left behind can be saved and opened again. */
static void
check_opens (BsPlan *plan)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bs_document_write (plan);
  g_autoptr (BsPlan) again = bs_document_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_cmpuint (again->cuts->len, ==, plan->cuts->len);
}

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
  g_autoptr (BsPlan) made = bs_edit_make_laminations (plan);

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
  g_autoptr (BsPlan) made = bs_edit_make_laminations (halved);

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
  g_autoptr (BsPlan) made = bs_edit_make_laminations (wish);
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
  g_autoptr (BsPlan) put = bs_edit_put_purchase (plan, purchase);

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
  g_autoptr (BsPlan) put = bs_edit_put_purchase (plan, purchase);
  guint n = 0;

  g_assert_cmpuint (put->boards->len, ==, 1 + (guint)purchase->n_boards);
  for (guint i = 0; i < put->cuts->len; i++)
    n += g_str_equal (g_array_index (put->cuts, BsCut, i).board, "plank");
  g_assert_cmpuint (n, >, 0);
  check_opens (put);
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
  g_autoptr (BsPlan) put = bs_edit_put_purchase (plan, purchase);
  g_assert_cmpuint (put->boards->len, >, 26);
  for (guint i = 0; i < put->boards->len; i++)
    g_assert_true (g_hash_table_add (labels, ((BsBoard *)put->boards->pdata[i])->label));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/edits-buying/halve-part", test_halve_part);
  g_test_add_func ("/edits-buying/halve-wish", test_halve_wish);
  g_test_add_func ("/edits-buying/halve-laminations", test_halve_laminations);
  g_test_add_func ("/edits-buying/halve-not", test_halve_not);
  g_test_add_func ("/edits-buying/make-laminations", test_make_laminations);
  g_test_add_func ("/edits-buying/put-purchase", test_put_purchase);
  g_test_add_func ("/edits-buying/put-purchase/rack", test_put_rack);
  g_test_add_func ("/edits-buying/put-purchase/labels", test_labels);
  return g_test_run ();
}
