/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-bound.h"

#include <glpk.h>
#include <math.h>
#include <string.h>

/* Patterns taken in at once, the most profitable ones first. More make each programme slower, fewer
 * make more rounds. */
#define PATTERNS_A_ROUND 12
#define PATTERNS_OF_A_ROW 8

/* Of more kinds of boards than this not all are asked each time, as long as nothing need be proven:
 * those that come next, until so many are worth more than they cost. */
#define MANY_SHEETS 100
#define OFFERS_A_ROUND (4 * PATTERNS_A_ROUND)

/* Sums of values stay below 2^VALUE_BITS. */
#define VALUE_BITS 60

struct _BsCutMaster
{
  const BsCutModel *model;
  BsCutOracle *oracle;
  glp_prob *lp;
  int *row_of_stock;   /* 0: not limited */
  GPtrArray *patterns; /* that of column n_types + 1 + index */
  GHashTable *known;   /* borrowed from patterns */
  int *demand, *supply;
  gboolean has_moved;          /* right-hand sides changed since the last solving */
  gint64 *values, *rents;      /* the programme's */
  gint64 *asked, *asked_rents; /* those that the oracle is asked with */
  BsCutDuals duals;            /* best of the rounds */
  gboolean asks_some;          /* of the sheets, as long as many are worth more than they cost */
  guint next_sheet;            /* of those, to be asked first */
};

static guint
hash_pattern (gconstpointer key)
{
  const BsCutPattern *pattern = key;
  guint hash = pattern->sheet;

  for (guint i = 0; i < pattern->strips->len; i++)
    hash += (g_array_index (pattern->strips, BsCutStrip, i).type + 7) * 2654435761U;
  return hash;
}

static gboolean
equal_patterns (gconstpointer a, gconstpointer b)
{
  const BsCutPattern *left = a, *right = b;

  if (left->sheet != right->sheet || left->strips->len != right->strips->len)
    return FALSE;
  for (guint i = 0; i < left->strips->len; i++)
    {
      guint type = g_array_index (left->strips, BsCutStrip, i).type;
      if (left->count[type] != right->count[type])
        return FALSE;
    }
  return TRUE;
}

/* Rows: each type, then each limited stock. Columns: first for each type one that leaves a part
 * without a place, at a price that no plan pays which can do without. */
static void
build_programme (BsCutMaster *self)
{
  const BsCutModel *model = self->model;
  int n_rows = (int)model->n_types;

  self->lp = glp_create_prob ();
  glp_set_obj_dir (self->lp, GLP_MIN);
  for (guint i = 0; i < model->n_stock; i++)
    if (model->stock[i].supply != BS_CUT_UNLIMITED)
      self->row_of_stock[i] = ++n_rows;
  glp_add_rows (self->lp, n_rows);
  glp_add_cols (self->lp, (int)model->n_types);
  for (int t = 1; t <= (int)model->n_types; t++)
    {
      double one[] = { 0.0, 1.0 };
      int row[] = { 0, t };

      glp_set_mat_col (self->lp, t, 1, row, one);
      glp_set_col_bnds (self->lp, t, GLP_LO, 0.0, 0.0);
      glp_set_obj_coef (self->lp, t, (double)model->unplaced_price);
      glp_set_col_stat (self->lp, t, GLP_BS);
      glp_set_row_stat (self->lp, t, GLP_NL);
    }
}

BsCutMaster *
bs_cut_master_new (const BsCutModel *model, BsCutOracle *oracle)
{
  BsCutMaster *self = g_new0 (BsCutMaster, 1);
  double most = 1.0;

  self->model = model;
  self->oracle = oracle;
  self->row_of_stock = g_new0 (int, model->n_stock + 1);
  self->patterns = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_cut_pattern_unref);
  self->known = g_hash_table_new (hash_pattern, equal_patterns);
  self->demand = g_new0 (int, model->n_types + 1);
  self->supply = g_new0 (int, model->n_stock + 1);
  self->values = g_new0 (gint64, model->n_types + 1);
  self->rents = g_new0 (gint64, model->n_stock + 1);
  self->asked = g_new0 (gint64, model->n_types + 1);
  self->asked_rents = g_new0 (gint64, model->n_stock + 1);
  self->duals.values = g_new0 (gint64, model->n_types + 1);
  self->duals.rents = g_new0 (gint64, model->n_stock + 1);
  for (guint t = 0; t < model->n_types; t++)
    most += (double)model->unplaced_price * model->types[t].demand;
  self->duals.scale = (gint64)1 << CLAMP (VALUE_BITS - ilogb (most) - 1, 0, 40);
  build_programme (self);
  return self;
}

void
bs_cut_master_free (BsCutMaster *self)
{
  if (self == NULL)
    return;
  glp_delete_prob (self->lp);
  g_hash_table_unref (self->known);
  g_ptr_array_unref (self->patterns);
  g_free (self->row_of_stock);
  g_free (self->demand);
  g_free (self->supply);
  g_free (self->values);
  g_free (self->rents);
  g_free (self->asked);
  g_free (self->asked_rents);
  g_free (self->duals.values);
  g_free (self->duals.rents);
  g_free (self);
}

/* Whether the oracle could have found the pattern for this demand: it holds no slice with more of a
 * type than is wanted, or on boards with defects no type that is not wanted. Others would only make
 * the bound weaker. */
static gboolean
is_wanted (const BsCutMaster *self, const BsCutPattern *pattern)
{
  const BsCutModel *model = self->model;
  gboolean is_clear = bs_cut_model_is_clear (model, &model->sheets[pattern->sheet]);
  guint next = 0;

  for (guint i = 0; i < pattern->slices->len; i++)
    {
      guint end = next + g_array_index (pattern->slices, BsCutPatternSlice, i).n_strips;
      for (guint k = next; k < end; k++)
        {
          guint type = g_array_index (pattern->strips, BsCutStrip, k).type;
          int count = 1;
          for (guint j = next; j < k && is_clear; j++)
            count += g_array_index (pattern->strips, BsCutStrip, j).type == type;
          if (count > self->demand[type])
            return FALSE;
        }
      next = end;
    }
  return TRUE;
}

static void
set_bounds (BsCutMaster *self, guint index)
{
  int column = (int)(self->model->n_types + 1 + index);

  if (is_wanted (self, self->patterns->pdata[index]))
    glp_set_col_bnds (self->lp, column, GLP_LO, 0.0, 0.0);
  else
    glp_set_col_bnds (self->lp, column, GLP_FX, 0.0, 0.0);
}

gboolean
bs_cut_master_add (BsCutMaster *self, BsCutPattern *pattern)
{
  const BsCutModel *model = self->model;
  guint stock = model->sheets[pattern->sheet].stock;
  g_autofree int *rows = g_new (int, model->n_types + 2);
  g_autofree double *counts = g_new (double, model->n_types + 2);
  int n = 0, column;

  if (pattern->strips->len == 0 || g_hash_table_contains (self->known, pattern))
    return FALSE;
  g_hash_table_add (self->known, pattern);
  g_ptr_array_add (self->patterns, bs_cut_pattern_ref (pattern));
  column = glp_add_cols (self->lp, 1);
  for (guint t = 0; t < model->n_types; t++)
    if (pattern->count[t] > 0)
      {
        rows[++n] = (int)t + 1;
        counts[n] = pattern->count[t];
      }
  if (self->row_of_stock[stock] > 0)
    {
      rows[++n] = self->row_of_stock[stock];
      counts[n] = 1.0;
    }
  glp_set_mat_col (self->lp, column, n, rows, counts);
  glp_set_obj_coef (self->lp, column, (double)model->stock[stock].price);
  glp_set_col_stat (self->lp, column, GLP_NL);
  set_bounds (self, self->patterns->len - 1);
  return TRUE;
}

void
bs_cut_master_set (BsCutMaster *self, const int *demand, const int *supply)
{
  const BsCutModel *model = self->model;

  memcpy (self->demand, demand, model->n_types * sizeof (int));
  memcpy (self->supply, supply, model->n_stock * sizeof (int));
  for (guint t = 0; t < model->n_types; t++)
    glp_set_row_bnds (self->lp, (int)t + 1, GLP_LO, demand[t], 0.0);
  for (guint i = 0; i < model->n_stock; i++)
    if (self->row_of_stock[i] > 0)
      glp_set_row_bnds (self->lp, self->row_of_stock[i], GLP_UP, 0.0, supply[i]);
  for (guint index = 0; index < self->patterns->len; index++)
    set_bounds (self, index);
  self->has_moved = TRUE;
  self->duals.total = G_MININT64;
}

/* The programme's prices, cut down to whole units. */
static void
read_prices (BsCutMaster *self)
{
  double scale = (double)self->duals.scale;

  for (guint t = 0; t < self->model->n_types; t++)
    self->values[t] = (gint64)MAX (floor (glp_get_row_dual (self->lp, (int)t + 1) * scale), 0.0);
  for (guint i = 0; i < self->model->n_stock; i++)
    self->rents[i]
        = self->row_of_stock[i] == 0
              ? 0
              : (gint64)MAX (ceil (-glp_get_row_dual (self->lp, self->row_of_stock[i]) * scale),
                             0.0);
}

/* Turns the prices of this round into ones that hold for every pattern, and keeps them when they
 * prove more. worth: the best value of each kind of board under the values asked with. Where the
 * supply is not limited, all values are reduced to what the board costs; where it is, its rent
 * takes the rest. */
static void
keep_proof (BsCutMaster *self, const gint64 *worth)
{
  const BsCutModel *model = self->model;
  gint64 scale = self->duals.scale, total = 0;
  double ratio = 1.0;

  for (guint i = 0; i < model->n_stock; i++)
    if (self->row_of_stock[i] == 0 && worth[i] > model->stock[i].price * scale)
      ratio = MIN (ratio, (double)model->stock[i].price * (double)scale / (double)worth[i]);
  if (ratio < 1.0)
    ratio *= 1.0 - 0x1p-40; /* more than rounding takes back */
  for (guint t = 0; t < model->n_types; t++)
    total += (gint64)((double)self->asked[t] * ratio) * self->demand[t];
  for (guint i = 0; i < model->n_stock; i++)
    if (self->row_of_stock[i] > 0)
      {
        gint64 most = (gint64)ceil ((double)worth[i] * ratio);
        total -= MAX (most - model->stock[i].price * scale, 0) * self->supply[i];
      }
  if (total <= self->duals.total)
    return;
  self->duals.total = total;
  for (guint t = 0; t < model->n_types; t++)
    self->duals.values[t] = (gint64)((double)self->asked[t] * ratio);
  for (guint i = 0; i < model->n_stock; i++)
    {
      gint64 most = (gint64)ceil ((double)worth[i] * ratio);
      self->duals.rents[i]
          = self->row_of_stock[i] == 0 ? 0 : MAX (most - model->stock[i].price * scale, 0);
    }
}

typedef struct
{
  guint sheet;
  gint64 profit;
} Offer;

static int
compare_offers (gconstpointer a, gconstpointer b)
{
  const Offer *left = a, *right = b;

  if (left->profit != right->profit)
    return left->profit > right->profit ? -1 : 1;
  return left->sheet < right->sheet ? -1 : 1;
}

static gint64
cost_of (const BsCutMaster *self, guint stock, const gint64 *rents)
{
  return self->model->stock[stock].price * self->duals.scale + rents[stock];
}

/* Only patterns worth more than their board are of interest. */
static void
set_floors (BsCutMaster *self)
{
  const BsCutModel *model = self->model;
  g_autofree gint64 *floors = g_new (gint64, model->n_groups + 1);

  for (guint g = 0; g < model->n_groups; g++)
    floors[g] = G_MAXINT64;
  for (guint k = 0; k < model->n_sheets; k++)
    {
      guint group = model->sheets[k].group;
      floors[group]
          = MIN (floors[group], cost_of (self, model->sheets[k].stock, self->asked_rents));
    }
  bs_cut_oracle_set_floors (self->oracle, floors);
}

/* How sure the prices asked with are to be. */
typedef enum
{
  ASK_QUICKLY, /* the programme's prices; long rows are not searched to the end, nor many sheets
                * asked; proves nothing */
  ASK_MIXED,   /* near the prices of the best proof, which swing less than the programme's */
  ASK_EXACTLY,
} Ask;

static void
set_asked (BsCutMaster *self, Ask ask)
{
  for (guint t = 0; t < self->model->n_types; t++)
    self->asked[t] = ask == ASK_MIXED
                         ? self->duals.values[t] + (self->values[t] - self->duals.values[t]) / 4
                         : self->values[t];
  for (guint i = 0; i < self->model->n_stock; i++)
    self->asked_rents[i] = ask == ASK_MIXED
                               ? self->duals.rents[i] + (self->rents[i] - self->duals.rents[i]) / 4
                               : self->rents[i];
}

static gboolean
is_profitable (const BsCutMaster *self, const BsCutPattern *pattern)
{
  gint64 profit = -cost_of (self, self->model->sheets[pattern->sheet].stock, self->rents);

  for (guint t = 0; t < self->model->n_types; t++)
    profit += pattern->count[t] * self->values[t];
  return profit > self->duals.scale >> 30;
}

static guint
add_patterns_of (BsCutMaster *self, guint sheet)
{
  g_autoptr (GPtrArray) patterns = NULL;
  guint n_added = 0;

  if (self->model->sheets[sheet].is_row)
    patterns = bs_cut_oracle_row_patterns (self->oracle, sheet, PATTERNS_OF_A_ROW);
  else
    {
      patterns = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_cut_pattern_unref);
      g_ptr_array_add (patterns, bs_cut_oracle_pattern (self->oracle, sheet));
    }
  for (guint i = 0; i < patterns->len; i++)
    n_added
        += is_profitable (self, patterns->pdata[i]) && bs_cut_master_add (self, patterns->pdata[i])
               ? 1
               : 0;
  return n_added;
}

/* New patterns that would lower the price; how many were found. */
static guint
add_profitable (BsCutMaster *self, Ask ask)
{
  const BsCutModel *model = self->model;
  g_autofree gint64 *worth = g_new0 (gint64, model->n_stock + 1);
  g_autofree Offer *offers = g_new (Offer, model->n_sheets + 1);
  guint n_offers = 0, n_added = 0;
  gboolean asks_some = ask == ASK_QUICKLY && self->asks_some;
  guint most = asks_some ? OFFERS_A_ROUND : model->n_sheets;
  guint first = asks_some ? self->next_sheet : 0;

  set_asked (self, ask);
  bs_cut_oracle_set_quick (self->oracle, ask == ASK_QUICKLY);
  bs_cut_oracle_set (self->oracle, self->asked, self->demand);
  set_floors (self);
  for (guint i = 0; i < model->n_sheets && n_offers < most; i++)
    {
      guint k = (first + i) % model->n_sheets, stock = model->sheets[k].stock;
      gint64 value, profit;

      self->next_sheet = k + 1;
      if (self->supply[stock] == 0)
        continue;
      value = bs_cut_oracle_most (self->oracle, k);
      if (value > model->stock[stock].price * self->duals.scale) /* else it proves nothing */
        value = bs_cut_oracle_value (self->oracle, k);
      profit = value - cost_of (self, stock, self->asked_rents);
      worth[stock] = MAX (worth[stock], value);
      if (profit > self->duals.scale >> 30)
        offers[n_offers++] = (Offer){ k, profit };
    }
  self->asks_some = asks_some && n_offers == most;
  if (ask != ASK_QUICKLY)
    keep_proof (self, worth);
  qsort (offers, n_offers, sizeof (Offer), compare_offers);
  for (guint i = 0; i < n_offers && n_added < PATTERNS_A_ROUND; i++)
    {
      n_added += add_patterns_of (self, offers[i].sheet);
    }
  return n_added;
}

static gboolean
solve_programme (BsCutMaster *self)
{
  glp_smcp settings;

  glp_init_smcp (&settings);
  settings.msg_lev = GLP_MSG_OFF;
  settings.meth = self->has_moved ? GLP_DUALP : GLP_PRIMAL;
  self->has_moved = FALSE;
  if (glp_simplex (self->lp, &settings) == 0 && glp_get_status (self->lp) == GLP_OPT)
    return TRUE;
  /* A basis that became singular: from the start. */
  glp_std_basis (self->lp);
  settings.meth = GLP_PRIMAL;
  return glp_simplex (self->lp, &settings) == 0 && glp_get_status (self->lp) == GLP_OPT;
}

/* Whether the bound, in whole units of the price, can still rise. */
static gboolean
is_settled (const BsCutMaster *self)
{
  double value = glp_get_obj_val (self->lp);

  return (double)bs_cut_master_get_bound (self) >= ceil (value - 1e-7 * (1.0 + fabs (value)));
}

gboolean
bs_cut_master_solve (BsCutMaster *self, guint max_rounds, const BsProgress *progress)
{
  gboolean has_long_rows = bs_cut_oracle_has_long_rows (self->oracle);

  self->asks_some = self->model->n_sheets > MANY_SHEETS;

  for (guint round = 0; round < max_rounds; round++)
    {
      if (!solve_programme (self) || !bs_progress_report (progress, 0.0))
        return FALSE;
      read_prices (self);
      if ((has_long_rows || self->asks_some) && add_profitable (self, ASK_QUICKLY) > 0)
        continue;
      if (self->duals.total > 0 && add_profitable (self, ASK_MIXED) > 0)
        {
          if (is_settled (self))
            return TRUE;
          continue;
        }
      if (add_profitable (self, ASK_EXACTLY) == 0 || is_settled (self))
        return TRUE;
    }
  return FALSE;
}

const BsCutDuals *
bs_cut_master_get_duals (const BsCutMaster *self)
{
  return &self->duals;
}

gint64
bs_cut_master_get_bound (const BsCutMaster *self)
{
  gint64 scale = self->duals.scale;

  return self->duals.total <= 0 ? 0 : (self->duals.total + scale - 1) / scale;
}

guint
bs_cut_master_get_n_patterns (const BsCutMaster *self)
{
  return self->patterns->len;
}

BsCutPattern *
bs_cut_master_get_pattern (const BsCutMaster *self, guint index)
{
  return self->patterns->pdata[index];
}

double
bs_cut_master_get_use (const BsCutMaster *self, guint index)
{
  return glp_get_col_prim (self->lp, (int)(self->model->n_types + 1 + index));
}

void
bs_cut_master_leave_thread (void)
{
  glp_free_env ();
}
