/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/cut-plan.h"
#include "checks/cutting-file.h"
#include "core/cutting-oracle.h"

/* Open instances of cutting problems, from the data sets of the ESICUP working group (EURO), which
 * are read from the folder that BROADSTAVE_BENCHMARKS names. */

/* Boards needed. Instances: falk: E. Falkenauer, J. Heuristics 2 (1996). Scholl: A. Scholl, R.
 * Klein, C. Juergens, Computers & OR 24 (1997). Schwerin: P. Schwerin, G. Waescher, ITOR 4 (1997).
 * Waescher: G. Waescher, T. Gau, OR Spektrum 18 (1996). Hard28: J. Schoenfield (2002), in G. Belov,
 * G. Scheithauer, EJOR 171 (2006). The optima are those published for these sets. */
typedef struct
{
  const char *name;
  gint64 n_boards;
  gboolean bound_is_tight; /* the linear programme rounded up is the optimum */
} Row;

static const Row rows[] = {
  { "falk_t60_00", 20, TRUE },       { "falk_t60_01", 20, TRUE },
  { "falk_t120_00", 40, TRUE },      { "falk_u250_00", 99, TRUE },
  { "falk_u250_01", 100, TRUE },     { "falk_u500_01", 201, TRUE },
  { "Schwerin1_BPP1", 18, TRUE },    { "Schwerin2_BPP2", 22, TRUE },
  { "Waescher_TEST0044", 14, TRUE }, { "Waescher_TEST0049", 11, TRUE },
  { "Scholl1_N1C1W1_A", 25, TRUE },  { "Scholl1_N2C2W2_B", 56, TRUE },
  { "Scholl2_N1W1B1R0", 18, TRUE },  { "Scholl2_N2W2B2R3", 22, TRUE },
  { "Hard28_BPP14", 62, FALSE },     { "Scholl3_HARD0", 56, TRUE },
};

static void
better_cb (const BsCutPlan *plan, gpointer data)
{
  *(gboolean *)data = plan->is_price_least;
}

static gboolean
stop_when_proven (double done, gpointer data)
{
  return !*(gboolean *)data;
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  const char *folder = cutting_find_benchmarks ();
  g_autofree char *name = g_strconcat (row->name, ".txt", NULL);
  gboolean is_proven = FALSE;
  BsCutEffort effort = {
    .seed = 1, .better = better_cb, .data = &is_proven, .progress = { stop_when_proven, &is_proven }
  };
  g_autoptr (CuttingFile) file = NULL;
  g_autoptr (BsCutPlan) plan = NULL;

  if (folder == NULL)
    return;
  file = cutting_row_read (folder, name);
  plan = bs_cutting_solve (&file->cutting, &effort, NULL);
  cut_plan_assert_possible (&file->cutting, plan);
  g_assert_cmpuint (plan->n_missing, ==, 0);
  g_assert_cmpint (plan->price_minor, ==, row->n_boards);
  g_assert_cmpint (plan->bound_minor, ==, row->bound_is_tight ? row->n_boards : row->n_boards - 1);
  g_assert_true (plan->is_price_least == row->bound_is_tight);
}

/* Greatest value of one sheet with any number of each piece, in two stages. Instances and the
 * values without a limit of stages: J. E. Beasley, JORS 36 (1985); the values of two stages were
 * computed by other programs and proven. */
typedef struct
{
  const char *name;
  gint64 crosscut_first, rip_first;
} Sheet;

static const Sheet sheets[] = {
  { "gcut1", 53808, 56460 },   { "gcut2", 60071, 60076 },   { "gcut3", 60078, 60133 },
  { "gcut5", 246000, 246000 }, { "gcut6", 238998, 235058 }, { "gcut9", 971100, 971100 },
};

static CuttingFile *
read_sheet (const char *folder, const char *name, gint64 *values)
{
  g_autofree char *file_name = g_strconcat (name, ".txt", NULL);
  g_autoptr (GArray) numbers = cutting_read_numbers (folder, "2d", file_name);
  const double *number = (const double *)numbers->data;
  guint n = (guint)number[0];
  CuttingFile *self = g_new0 (CuttingFile, 1);

  self->stock = g_new0 (BsCutStock, 1);
  self->parts = g_new0 (BsCutPart, n);
  self->cutting = (BsCutting){
    .order = BS_CUT_EITHER, .stock = self->stock, .n_stock = 1, .parts = self->parts, .n_parts = n
  };
  self->stock[0] = (BsCutStock){ number[1], number[2], 50.0, 1, BS_CUT_UNLIMITED, 0, 0, 0, NULL };
  for (guint i = 0; i < n; i++)
    {
      self->parts[i]
          = (BsCutPart){ number[3 + 3 * i], number[4 + 3 * i], 50.0, 1000, 0, 2, 2, FALSE };
      values[i] = (gint64)number[5 + 3 * i];
    }
  return self;
}

static void
test_sheet (gconstpointer data)
{
  const Sheet *sheet = data;
  const char *folder = cutting_find_benchmarks ();
  gint64 values[200] = { 0 }, of_type[200] = { 0 };
  int limits[200];
  g_autoptr (CuttingFile) file = NULL;
  g_autoptr (BsCutModel) model = NULL;
  g_autoptr (BsCutOracle) oracle = NULL;

  if (folder == NULL)
    return;
  file = read_sheet (folder, sheet->name, values);
  model = bs_cut_model_new (&file->cutting, NULL);
  oracle = bs_cut_oracle_new (model);
  for (guint i = 0; i < file->cutting.n_parts; i++)
    {
      of_type[model->type_of_part[i]] = values[i];
      limits[model->type_of_part[i]] = 1000;
    }
  bs_cut_oracle_set (oracle, of_type, limits);
  g_assert_cmpuint (model->n_sheets, ==, 2);
  for (guint k = 0; k < 2; k++)
    {
      g_autoptr (BsCutPattern) pattern = bs_cut_oracle_pattern (oracle, k);
      gint64 wanted = model->sheets[k].order == BS_CUT_CROSSCUT_FIRST ? sheet->crosscut_first
                                                                      : sheet->rip_first;
      gint64 value = 0;

      for (guint t = 0; t < model->n_types; t++)
        value += pattern->count[t] * of_type[t];
      g_assert_cmpint (bs_cut_oracle_value (oracle, k), ==, wanted);
      g_assert_cmpint (value, ==, wanted);
    }
}

/* Sheets needed, crosscut first in two stages. Instances: H. Yanasse, R. Morabito, IJPR 44 (2006);
 * the counts were computed by other programs and proven. */
static const Row orders[] = {
  { "ym_10_01", 7, TRUE },
  { "ym_10_02", 5, TRUE },
};

static void
test_order (gconstpointer data)
{
  const Row *row = data;
  const char *folder = cutting_find_benchmarks ();
  g_autofree char *name = g_strconcat (row->name, ".txt", NULL);
  gboolean is_proven = FALSE;
  BsCutEffort effort = {
    .seed = 1, .better = better_cb, .data = &is_proven, .progress = { stop_when_proven, &is_proven }
  };
  g_autoptr (CuttingFile) file = NULL;
  g_autoptr (BsCutPlan) plan = NULL;

  if (folder == NULL)
    return;
  file = cutting_sheet_read (folder, name);
  plan = bs_cutting_solve (&file->cutting, &effort, NULL);
  cut_plan_assert_possible (&file->cutting, plan);
  g_assert_cmpint (plan->price_minor, ==, row->n_boards);
  g_assert_true (plan->is_price_least);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/cutting/one-dimension/", rows[i].name, NULL);
      g_test_add_data_func (path, &rows[i], test_row);
    }
  for (guint i = 0; i < G_N_ELEMENTS (sheets); i++)
    {
      g_autofree char *path = g_strconcat ("/cutting/value-of-a-sheet/", sheets[i].name, NULL);
      g_test_add_data_func (path, &sheets[i], test_sheet);
    }
  for (guint i = 0; i < G_N_ELEMENTS (orders); i++)
    {
      g_autofree char *path = g_strconcat ("/cutting/sheets/", orders[i].name, NULL);
      g_test_add_data_func (path, &orders[i], test_order);
    }
  return g_test_run ();
}
