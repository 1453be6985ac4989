/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-proof.h"

#include "checks/order-random.h"
#include "core/order-bound.h"
#include "core/order-exact.h"
#include "core/order-search.h"

/* Of order-layers, order-bound and order-proof together: each begins where the one before ends. */

#define MOST 13

/* One random problem with pins in one planing direction, its best cost by sets, and a poor order to
 * begin with. */
typedef struct
{
  BsOrderProblem *problem;
  BsOrderRules *rules;
  BsOrderTable *table;
  BsOrderLayers *layers;
  guint order[MOST];
  gint32 cost, least;
} Case;

/* FALSE when the pins that were drawn cannot be kept. */
static gboolean
draw_case (Case *self, BsRandom *random, guint i)
{
  guint m = 2 + bs_random_below (random, MOST - 1), n = 1 + bs_random_below (random, m);
  guint best[MOST];

  self->problem = order_random_problem (random, m, n);
  order_random_pins (random, self->problem, i % 4);
  self->rules = bs_order_rules_new (self->problem, NULL);
  if (self->rules == NULL)
    {
      bs_order_problem_free (self->problem);
      return FALSE;
    }
  self->table = bs_order_table_new (self->problem, self->rules, 1);
  self->layers = bs_order_layers_new (self->table);
  bs_order_exact (self->table, best, NULL);
  self->least = bs_order_table_orient (self->table, best, NULL);
  self->cost = bs_order_search_start (self->table, self->order);
  return TRUE;
}

static void
clear_case (Case *self)
{
  bs_order_layers_free (self->layers);
  bs_order_table_free (self->table);
  bs_order_rules_free (self->rules);
  bs_order_problem_free (self->problem);
}

/* All levels; the bound that they end at. */
static gint32
prove (Case *self, gint32 bound, guint most_rows)
{
  g_autoptr (BsOrderProof) proof = bs_order_proof_new (self->layers, self->cost, bound, most_rows);

  while (bs_order_proof_raise (proof, self->order, &self->cost, &bound, NULL))
    continue;
  return bound;
}

/* However few steps, the bound is never above the least cost. */
static void
test_bound_holds (void)
{
  BsRandom random = bs_random_init (61);
  Case self;

  for (guint i = 0; i < 400; i++)
    if (draw_case (&self, &random, i))
      {
        gint32 bound = bs_order_bound (self.layers, self.cost, i % 150, NULL);
        g_assert_cmpint (bound, <=, self.least);
        clear_case (&self);
      }
}

/* With the prices that it ends at, the cheapest row costs the bound at least: some arcs may be
 * gone. */
static void
test_prices_give_the_bound (void)
{
  BsRandom random = bs_random_init (62);
  Case self;

  for (guint i = 0; i < 100; i++)
    if (draw_case (&self, &random, 0))
      {
        gint32 bound = bs_order_bound (self.layers, self.cost, 100, NULL);
        gint32 value = bs_order_layers_forward (self.layers);
        g_assert_cmpint (MIN (value, self.cost), >=, bound);
        clear_case (&self);
      }
}

/* Forwards and backwards give the same: an arc of a cheapest row survives the pruning at one more
 * than its cost, and none does at that cost. */
static void
test_pruning_is_sharp (void)
{
  BsRandom random = bs_random_init (63);
  Case self;

  for (guint i = 0; i < 200; i++)
    if (draw_case (&self, &random, i))
      {
        gint32 value = bs_order_layers_forward (self.layers);
        gboolean has_arcs = self.table->n_places > 1;
        bs_order_layers_backward (self.layers);
        g_assert_cmpint (bs_order_layers_prune (self.layers, value + 1) > 0, ==, has_arcs);
        g_assert_cmpuint (bs_order_layers_prune (self.layers, value), ==, 0);
        clear_case (&self);
      }
}

/* From a poor order and few steps of the bound, the proof finds the best order and its cost. */
static void
test_proves (void)
{
  BsRandom random = bs_random_init (64);
  guint n_proved = 0;
  Case self;

  for (guint i = 0; i < 600; i++)
    if (draw_case (&self, &random, i))
      {
        gint32 bound = bs_order_bound (self.layers, self.cost, 20 + i % 100, NULL);
        bound = prove (&self, bound, 1000000);
        g_assert_cmpint (bound, ==, self.least);
        g_assert_cmpint (self.cost, ==, self.least);
        g_assert_cmpint (bs_order_table_orient (self.table, self.order, NULL), ==, self.least);
        n_proved++;
        clear_case (&self);
      }
  g_assert_cmpuint (n_proved, >, 300);
}

/* When rows run out, what it says still holds. */
static void
test_gives_up (void)
{
  BsRandom random = bs_random_init (65);
  Case self;

  for (guint i = 0; i < 200; i++)
    if (draw_case (&self, &random, i))
      {
        gint32 bound = bs_order_bound (self.layers, self.cost, 10, NULL), raised;
        raised = prove (&self, bound, 50);
        g_assert_cmpint (raised, >=, bound);
        g_assert_cmpint (raised, <=, self.least);
        g_assert_cmpint (self.cost, ==, bs_order_table_orient (self.table, self.order, NULL));
        clear_case (&self);
      }
}

static void
test_refuses_too_many (void)
{
  BsRandom random = bs_random_init (66);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, 129, 3);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
  g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
  g_autoptr (BsOrderLayers) layers = bs_order_layers_new (table);
  guint order[3];
  gint32 cost = bs_order_search_start (table, order);

  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*BS_ORDER_PROOF_MOST*");
  g_assert_null (bs_order_proof_new (layers, cost, 0, 1000));
  g_test_assert_expected_messages ();
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-proof/bound-holds", test_bound_holds);
  g_test_add_func ("/order-proof/prices-give-the-bound", test_prices_give_the_bound);
  g_test_add_func ("/order-proof/pruning-is-sharp", test_pruning_is_sharp);
  g_test_add_func ("/order-proof/proves", test_proves);
  g_test_add_func ("/order-proof/gives-up", test_gives_up);
  g_test_add_func ("/order-proof/refuses-too-many", test_refuses_too_many);
  return g_test_run ();
}
