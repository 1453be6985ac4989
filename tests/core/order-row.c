/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-row.h"

#include "checks/order-random.h"
#include "core/order-search.h"

#define N_CANDIDATES 14
#define N_PLACES 11

typedef struct
{
  BsOrderProblem *problem;
  BsOrderRules *rules;
  BsOrderTable *table;
  BsOrderRow *row;
  BsRandom random;
} Fixture;

static void
set_up (Fixture *self, guint64 seed, guint n_pins)
{
  self->random = bs_random_init (seed);
  self->problem = order_random_problem (&self->random, N_CANDIDATES, N_PLACES);
  do /* until the pins can be kept */
    {
      g_array_set_size (self->problem->pins, 0);
      order_random_pins (&self->random, self->problem, n_pins);
      self->rules = bs_order_rules_new (self->problem, NULL);
    }
  while (self->rules == NULL);
  self->table = bs_order_table_new (self->problem, self->rules, 1);
  guint order[N_PLACES];
  bs_order_search_start (self->table, order);
  self->row = bs_order_row_new (self->table, order);
}

static void
tear_down (Fixture *self)
{
  bs_order_row_free (self->row);
  bs_order_table_free (self->table);
  bs_order_rules_free (self->rules);
  bs_order_problem_free (self->problem);
}

static void
propose_any (Fixture *self)
{
  BsOrderRow *row = self->row;
  guint a = bs_random_below (&self->random, row->n), b = bs_random_below (&self->random, row->n);
  guint size = 1 + bs_random_below (&self->random, 3);

  switch (bs_random_below (&self->random, 4))
    {
    case 0:
      bs_order_row_propose_shift (row, MIN (a, row->n - size), size, MIN (b, row->n - size), a & 1);
      break;
    case 1:
      bs_order_row_propose_reverse (row, MIN (a, b), MAX (a, b));
      break;
    case 2:
      bs_order_row_propose_swap (row, a, b);
      break;
    default:
      bs_order_row_propose_exchange (row, a, b, bs_random_below (&self->random, row->n_idle));
    }
}

static gboolean
keeps_pins (const Fixture *self)
{
  BsOrderPlace places[N_PLACES];
  BsOrientation orientations[N_PLACES];

  bs_order_table_orient (self->table, self->row->order, orientations);
  for (guint k = 0; k < N_PLACES; k++)
    places[k] = (BsOrderPlace){ self->row->order[k], orientations[k] };
  return order_keeps_pins (self->problem, places);
}

/* The price of each proposal is what the whole row costs once it is taken, and all is still there.
 */
static void
test_price (void)
{
  Fixture self;

  set_up (&self, 31, 0);
  for (guint i = 0; i < 3000; i++)
    {
      gint32 price;
      propose_any (&self);
      price = bs_order_row_price (self.row);
      bs_order_row_take (self.row, price);
      g_assert_cmpint (bs_order_table_orient (self.table, self.row->order, NULL), ==, price);
      g_assert_true (keeps_pins (&self));
    }
  tear_down (&self);
}

/* Where each candidate is stays known. */
static void
test_places (void)
{
  Fixture self;

  set_up (&self, 32, 0);
  for (guint i = 0; i < 500; i++)
    {
      propose_any (&self);
      bs_order_row_take (self.row, bs_order_row_price (self.row));
    }
  for (guint i = 0; i < N_CANDIDATES; i++)
    {
      int place = self.row->place_of[i];
      g_assert_cmpuint (place >= 0 ? self.row->order[place] : self.row->idle[-1 - place], ==, i);
    }
  tear_down (&self);
}

/* is_allowed says just what an outside look at the pins says, once the proposal is taken. */
static void
test_allowed (void)
{
  guint n_allowed = 0;

  for (guint64 seed = 0; seed < 100; seed++)
    {
      Fixture self;
      set_up (&self, 3300 + seed, 1 + (guint)(seed % 4));
      for (guint i = 0; i < 40; i++)
        {
          gboolean is_allowed;
          g_autofree guint *before = g_memdup2 (self.row->order, N_PLACES * sizeof (guint));
          propose_any (&self);
          is_allowed = bs_order_row_is_allowed (self.row);
          n_allowed += is_allowed ? 1 : 0;
          bs_order_row_take (self.row, bs_order_row_price (self.row));
          g_assert_cmpint (keeps_pins (&self), ==, is_allowed);
          if (!is_allowed)
            bs_order_row_set (self.row, before);
        }
      tear_down (&self);
    }
  g_assert_cmpuint (n_allowed, >, 500);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-row/price", test_price);
  g_test_add_func ("/order-row/places", test_places);
  g_test_add_func ("/order-row/allowed", test_allowed);
  return g_test_run ();
}
