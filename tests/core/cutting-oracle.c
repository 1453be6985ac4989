/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-oracle.h"

#include "checks/cutting-file.h"
#include "core/random.h"

/* A second, slow way to the same values: all choices of strips, all choices of slices. */
typedef struct
{
  const BsCutModel *model;
  const BsCutSheet *sheet;
  const gint64 *values;
  const int *limits;
} Slow;

static gint32
size_of (const Slow *self, guint type, gboolean is_first)
{
  guint first = bs_cut_first_axis (self->sheet->order);

  return self->model->types[type].size[is_first ? first : 1 - first];
}

static gint64
best_strips (const Slow *self, gint32 first, guint type, gint32 room)
{
  gint64 best = 0;

  if (type == self->model->n_types)
    return 0;
  for (int count = 0; count <= self->limits[type]; count++)
    {
      gint32 taken = count * size_of (self, type, FALSE);
      if (count > 0 && (taken > room || size_of (self, type, TRUE) > first))
        break;
      best = MAX (best,
                  count * self->values[type] + best_strips (self, first, type + 1, room - taken));
    }
  return best;
}

static gint64
best_slices (const Slow *self, gint32 room)
{
  gint64 best = 0;

  for (guint t = 0; t < self->model->n_types; t++)
    {
      gint32 first = size_of (self, t, TRUE);
      if (first <= room)
        best = MAX (best, best_strips (self, first, 0, self->sheet->room[1])
                              + best_slices (self, room - first));
    }
  return best;
}

static gint64
worth (const BsCutModel *model, const BsCutPattern *pattern, const gint64 *values)
{
  gint64 value = 0;

  for (guint t = 0; t < model->n_types; t++)
    value += pattern->count[t] * values[t];
  return value;
}

#define MAX_TYPES 8

static void
draw_values (BsRandom *random, const BsCutModel *model, gint64 *values, int *limits)
{
  for (guint t = 0; t < model->n_types; t++)
    {
      values[t] = bs_random_below (random, 1000);
      limits[t] = (int)bs_random_below (random, 4);
    }
}

static void
test_value_of_clear_boards (void)
{
  BsRandom random = bs_random_init (8);

  for (guint i = 0; i < 25; i++)
    {
      g_autoptr (CuttingFile) file = cutting_draw (i + 50, 2 + i % 4, 6, 3, FALSE);
      g_autoptr (BsCutModel) model = bs_cut_model_new (&file->cutting, NULL);
      g_autoptr (BsCutOracle) oracle = bs_cut_oracle_new (model);
      gint64 values[MAX_TYPES];
      int limits[MAX_TYPES];

      draw_values (&random, model, values, limits);
      bs_cut_oracle_set (oracle, values, limits);
      for (guint k = 0; k < model->n_sheets; k++)
        {
          const BsCutSheet *sheet = &model->sheets[k];
          Slow slow = { model, sheet, values, limits };
          gint64 wanted = sheet->is_row ? best_strips (&slow, sheet->room[0], 0, sheet->room[1])
                                        : best_slices (&slow, sheet->room[0]);
          g_autoptr (BsCutPattern) pattern = bs_cut_oracle_pattern (oracle, k);

          g_assert_cmpint (bs_cut_oracle_value (oracle, k), ==, wanted);
          g_assert_cmpint (worth (model, pattern, values), ==, wanted);
        }
    }
}

/* What is filled within the limits is worth no more than the oracle says, and something when
 * anything that has a value fits. */
static void
test_fill_keeps_limits (gconstpointer data)
{
  gboolean has_defects = GPOINTER_TO_INT (data);
  BsRandom random = bs_random_init (9);

  for (guint i = 0; i < 40; i++)
    {
      g_autoptr (CuttingFile) file = cutting_draw (i + 90, 2 + i % 5, 8, 4, has_defects);
      g_autoptr (BsCutModel) model = bs_cut_model_new (&file->cutting, NULL);
      g_autoptr (BsCutOracle) oracle = bs_cut_oracle_new (model);
      gint64 values[MAX_TYPES];
      int limits[MAX_TYPES];

      draw_values (&random, model, values, limits);
      for (guint k = 0; k < model->n_sheets; k++)
        {
          g_autoptr (BsCutPattern) pattern = bs_cut_oracle_fill (oracle, k, values, limits);
          gint64 most;

          bs_cut_oracle_set (oracle, values, limits);
          most = bs_cut_oracle_value (oracle, k);
          for (guint t = 0; t < model->n_types; t++)
            g_assert_cmpint (pattern->count[t], <=, limits[t]);
          g_assert_cmpint (worth (model, pattern, values), <=, most);
          g_assert_true ((worth (model, pattern, values) > 0) == (most > 0));
        }
    }
}

/* A board with defects is worth no more than the same board without. Only where parts are wanted in
 * plenty: with defects, limits are not counted. */
static void
test_defects_never_help (void)
{
  BsRandom random = bs_random_init (10);

  for (guint i = 0; i < 40; i++)
    {
      g_autoptr (CuttingFile) file = cutting_draw (i + 30, 2 + i % 5, 8, 4, TRUE);
      g_autofree gint64 *with = NULL;

      gint64 values[MAX_TYPES];
      int limits[MAX_TYPES];
      for (guint pass = 0; pass < 2; pass++)
        {
          g_autoptr (BsCutModel) model = bs_cut_model_new (&file->cutting, NULL);
          g_autoptr (BsCutOracle) oracle = bs_cut_oracle_new (model);

          if (pass == 0)
            {
              with = g_new0 (gint64, 8);
              draw_values (&random, model, values, limits);
            }
          for (guint t = 0; t < model->n_types; t++)
            limits[t] = 100;
          bs_cut_oracle_set (oracle, values, limits);
          for (guint k = 0; k < model->n_sheets; k++)
            {
              guint at = 2 * model->stock[model->sheets[k].stock].index
                         + (model->sheets[k].order == BS_CUT_RIP_FIRST);
              gint64 value = bs_cut_oracle_value (oracle, k);
              if (pass == 0)
                with[at] = value;
              else if (!model->sheets[k].is_row)
                g_assert_cmpint (with[at], <=, value);
            }
          for (guint k = 0; k < file->cutting.n_stock; k++)
            file->stock[k].n_defects = 0;
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cutting-oracle/value-of-clear-boards", test_value_of_clear_boards);
  g_test_add_data_func ("/cutting-oracle/fill-keeps-limits/clear", GINT_TO_POINTER (FALSE),
                        test_fill_keeps_limits);
  g_test_add_data_func ("/cutting-oracle/fill-keeps-limits/defects", GINT_TO_POINTER (TRUE),
                        test_fill_keeps_limits);
  g_test_add_func ("/cutting-oracle/defects-never-help", test_defects_never_help);
  return g_test_run ();
}
