/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-bound.h"

#include "checks/cutting-file.h"

/* Bound of the linear programme in hundredths, rounded up. The values are of a two-level arc flow
 * model solved by HiGHS: 14.5, 68.41875, 54.3375, 40.310526, 45.416667. Its slices may hold more of
 * a part than is wanted, ours may not, so ours is at least as good; above the optimum it cannot be.
 */
static const struct
{
  const char *name;
  gint64 bound;
} rows[] = {
  { "cutting-c0.json", 1450 }, { "cutting-c1.json", 6842 }, { "cutting-c2.json", 5434 },
  { "cutting-c3.json", 4032 }, { "cutting-c4.json", 4542 },
};

typedef struct
{
  BsCutModel *model;
  BsCutOracle *oracle;
  BsCutMaster *master;
  int demand[20], supply[20];
} Programme;

static void
programme_init (Programme *self, const CuttingFile *file)
{
  self->model = bs_cut_model_new (&file->cutting, NULL);
  self->oracle = bs_cut_oracle_new (self->model);
  self->master = bs_cut_master_new (self->model, self->oracle);
  for (guint t = 0; t < self->model->n_types; t++)
    self->demand[t] = self->model->types[t].demand;
  for (guint i = 0; i < self->model->n_stock; i++)
    self->supply[i] = self->model->stock[i].supply;
  bs_cut_master_set (self->master, self->demand, self->supply);
  g_assert_true (bs_cut_master_solve (self->master, 1000, NULL));
}

static void
programme_clear (Programme *self)
{
  bs_cut_master_free (self->master);
  bs_cut_oracle_free (self->oracle);
  bs_cut_model_free (self->model);
}

static void
test_value (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (CuttingFile) file = cutting_file_read (rows[i].name);
  Programme programme = { 0 };

  programme_init (&programme, file);
  g_assert_cmpint (bs_cut_master_get_bound (programme.master), >=, rows[i].bound);
  g_assert_cmpint (bs_cut_master_get_bound (programme.master), <=, file->price_minor);
  programme_clear (&programme);
}

/* The duals hold for all patterns: no board is worth more than its price and rent, and they sum to
 * the bound. */
static void
test_duals_prove_it (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (CuttingFile) file = cutting_file_read (rows[i].name);
  const BsCutDuals *duals;
  Programme programme = { 0 };
  gint64 total = 0;

  programme_init (&programme, file);
  duals = bs_cut_master_get_duals (programme.master);
  bs_cut_oracle_set (programme.oracle, duals->values, programme.demand);
  for (guint k = 0; k < programme.model->n_sheets; k++)
    {
      guint stock = programme.model->sheets[k].stock;
      g_assert_cmpint (bs_cut_oracle_value (programme.oracle, k), <=,
                       programme.model->stock[stock].price * duals->scale + duals->rents[stock]);
    }
  for (guint t = 0; t < programme.model->n_types; t++)
    total += duals->values[t] * programme.demand[t];
  for (guint k = 0; k < programme.model->n_stock; k++)
    if (programme.supply[k] != BS_CUT_UNLIMITED)
      total -= duals->rents[k] * programme.supply[k];
  g_assert_cmpint (total, ==, duals->total);
  programme_clear (&programme);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *value = g_strdup_printf ("/cutting-bound/value/c%u", i);
      g_autofree char *proof = g_strdup_printf ("/cutting-bound/duals-prove-it/c%u", i);
      g_test_add_data_func (value, GUINT_TO_POINTER (i), test_value);
      g_test_add_data_func (proof, GUINT_TO_POINTER (i), test_duals_prove_it);
    }
  return g_test_run ();
}
