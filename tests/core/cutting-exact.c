/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-exact.h"

#include "checks/cutting-file.h"
#include "core/cutting-fill.h"

#include <math.h>

static const char *const names[] = { "cutting-c0.json", "cutting-c1.json", "cutting-c2.json",
                                     "cutting-c3.json", "cutting-c4.json" };

static const BsCutExactLimits plenty = { 1000000, 100000000, 100000000 };

typedef struct
{
  CuttingFile *file;
  BsCutModel *model;
  BsCutOracle *oracle;
  BsCutMaster *master;
  int demand[20], supply[20];
  BsCutSolution *best;
} Proof;

/* Starts from whatever the filler finds first. */
static void
proof_init (Proof *self, const char *name)
{
  g_autoptr (BsCutFiller) filler = NULL;
  int demand[20] = { 0 }, supply[20] = { 0 };

  *self = (Proof){ .file = cutting_file_read (name) };
  self->model = bs_cut_model_new (&self->file->cutting, NULL);
  self->oracle = bs_cut_oracle_new (self->model);
  self->master = bs_cut_master_new (self->model, self->oracle);
  for (guint t = 0; t < self->model->n_types; t++)
    demand[t] = self->demand[t] = self->model->types[t].demand;
  for (guint i = 0; i < self->model->n_stock; i++)
    supply[i] = self->supply[i] = self->model->stock[i].supply;
  filler = bs_cut_filler_new (self->model, self->oracle);
  self->best = bs_cut_solution_new ();
  bs_cut_filler_run (filler, demand, supply, 0.75, self->best);
  bs_cut_master_set (self->master, self->demand, self->supply);
  bs_cut_master_solve (self->master, 1000, NULL);
}

static void
proof_clear (Proof *self)
{
  bs_cut_solution_free (self->best);
  bs_cut_master_free (self->master);
  bs_cut_oracle_free (self->oracle);
  bs_cut_model_free (self->model);
  cutting_file_free (self->file);
}

static gboolean
proof_run (Proof *self, BsCutGoal goal, BsCutExactLimits limits)
{
  return bs_cut_exact_solve (self->model, self->oracle, self->demand, self->supply,
                             bs_cut_master_get_duals (self->master), goal, limits, NULL,
                             &self->best);
}

static void
assert_optimum (const Proof *self)
{
  double parts = 0.0;

  for (guint i = 0; i < self->file->cutting.n_parts; i++)
    parts
        += self->file->parts[i].length * self->file->parts[i].width * self->file->parts[i].quantity;
  g_assert_cmpint (self->best->price, ==, self->file->price_minor);
  g_assert_cmpfloat_with_epsilon ((double)self->best->net_area / 100.0 - parts,
                                  self->file->waste_area, 0.1);
  g_assert_cmpfloat_with_epsilon ((double)self->best->score / 100.0, self->file->score, 0.1);
}

static void
test_in_one_step (gconstpointer data)
{
  Proof proof;

  proof_init (&proof, data);
  g_assert_true (proof_run (&proof, BS_CUT_BEST, plenty));
  assert_optimum (&proof);
  proof_clear (&proof);
}

static void
test_price_first (gconstpointer data)
{
  Proof proof;

  proof_init (&proof, data);
  g_assert_true (proof_run (&proof, BS_CUT_CHEAPER, plenty));
  g_assert_cmpint (proof.best->price, ==, proof.file->price_minor);
  g_assert_true (proof_run (&proof, BS_CUT_BEST_OF_PRICE, plenty));
  assert_optimum (&proof);
  proof_clear (&proof);
}

/* Given up: what it has is no worse than what it was given, and nothing is claimed. */
static void
test_limits_are_told (void)
{
  const BsCutExactLimits limits[]
      = { { 3, 100000000, 100000000 }, { 1000000, 10, 100000000 }, { 1000000, 100000000, 2 } };

  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      Proof proof;
      gint64 before;

      proof_init (&proof, "cutting-c1.json");
      before = proof.best->price;
      g_assert_false (proof_run (&proof, BS_CUT_BEST, limits[i]));
      g_assert_cmpint (proof.best->price, <=, before);
      proof_clear (&proof);
    }
}

/* What a person orders for one piece of furniture, up to 8 kinds of parts and 30 of them, is proven
 * to the end: no price is less, and at that price no waste. */
static void
test_small_orders (void)
{
  for (guint64 seed = 1; seed <= 24; seed++)
    {
      g_autoptr (CuttingFile) file = cutting_draw (seed, 8, 30, 9, FALSE);
      const BsCutEffort effort = { .seed = 1 };
      g_autoptr (BsCutPlan) plan = bs_cutting_solve (&file->cutting, &effort, NULL);

      g_assert_true (plan->is_price_least);
      g_assert_true (plan->is_best);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *one = g_strdup_printf ("/cutting-exact/in-one-step/c%u", i);
      g_autofree char *two = g_strdup_printf ("/cutting-exact/price-first/c%u", i);
      g_test_add_data_func (one, names[i], test_in_one_step);
      g_test_add_data_func (two, names[i], test_price_first);
    }
  g_test_add_func ("/cutting-exact/limits-are-told", test_limits_are_told);
  g_test_add_func ("/cutting-exact/small-orders", test_small_orders);
  return g_test_run ();
}
