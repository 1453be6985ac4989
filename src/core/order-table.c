/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-table.h"

static BsOrderPlace
node (guint candidate, guint orientation)
{
  return (BsOrderPlace){ candidate, (BsOrientation)orientation };
}

/* What each node costs inside the slab; NEVER for an orientation that is pinned away. */
static void
price_nodes (const BsOrderProblem *problem, const BsOrderRules *rules, int plane,
             BsOrderFour *inside)
{
  for (guint i = 0; i < rules->n_candidates; i++)
    for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
      {
        BsOrderTerms terms = { 0 };
        bs_order_cost_inside (problem, node (i, o), plane, terms);
        inside[i][o] = rules->ways[i] & (1u << o) ? bs_order_terms_sum (terms) : BS_ORDER_NEVER;
      }
}

static void
price_ends (BsOrderTable *self, const BsOrderProblem *problem, const BsOrderFour *inside)
{
  for (guint i = 0; i < self->n_candidates; i++)
    for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
      {
        BsOrderTerms front = { 0 }, back = { 0 };
        bs_order_cost_front (problem, node (i, o), front);
        bs_order_cost_back (problem, node (i, o), back);
        self->first[i][o] = inside[i][o] + bs_order_terms_sum (front);
        self->last[i][o] = bs_order_terms_sum (back);
      }
}

static void
price_arcs (BsOrderTable *self, const BsOrderProblem *problem, const BsOrderFour *inside)
{
  for (guint i = 0; i < self->n_candidates; i++)
    for (guint j = 0; j < self->n_candidates; j++)
      for (guint a = 0; a < BS_N_ORIENTATIONS && i != j; a++)
        {
          BsOrderFour *arcs = &self->arcs[((gsize)i * self->n_candidates + j) * 4 + a];
          for (guint b = 0; b < BS_N_ORIENTATIONS; b++)
            {
              BsOrderTerms terms = { 0 };
              bs_order_cost_joint (problem, node (i, a), node (j, b), terms);
              (*arcs)[b] = bs_order_terms_sum (terms) + inside[j][b];
            }
        }
}

/* Turned end for end as a whole, the slab shows the same top, its order is reversed, and the
 * planing direction is the other one. No cost changes when the joint of (i, a) and (j, b) costs
 * what that of (j, b turned) and (i, a turned) costs, and likewise at the two outer faces. Then the
 * better of the two planing directions is as good as the other, and need not be looked for. */
static gboolean
find_mirrored (const BsOrderTable *self, const BsOrderFour *inside)
{
  const guint turn = BS_ORIENTATION_END_FOR_END;

  for (guint i = 0; i < self->n_candidates; i++)
    for (guint a = 0; a < BS_N_ORIENTATIONS; a++)
      {
        if (self->first[i][a] - inside[i][a] != self->last[i][a ^ turn])
          return FALSE;
        for (guint j = 0; j < i; j++)
          for (guint b = 0; b < BS_N_ORIENTATIONS; b++)
            if (bs_order_table_arcs (self, i, j)[a][b] - inside[j][b]
                != bs_order_table_arcs (self, j, i)[b ^ turn][a ^ turn] - inside[i][a ^ turn])
              return FALSE;
      }
  return TRUE;
}

BsOrderTable *
bs_order_table_new (const BsOrderProblem *problem, const BsOrderRules *rules, int plane)
{
  BsOrderTable *self = g_new0 (BsOrderTable, 1);
  guint n = rules->n_candidates;
  BsOrderFour *inside = g_new0 (BsOrderFour, n);

  self->rules = rules;
  self->n_candidates = n;
  self->n_places = rules->n_places;
  self->plane = plane;
  self->first = g_new0 (BsOrderFour, n);
  self->last = g_new0 (BsOrderFour, n);
  self->arcs = g_new0 (BsOrderFour, (gsize)n * n * 4);
  price_nodes (problem, rules, plane, inside);
  price_ends (self, problem, inside);
  price_arcs (self, problem, inside);
  self->is_mirrored = !rules->has_places && find_mirrored (self, inside);
  g_free (inside);
  return self;
}

void
bs_order_table_free (BsOrderTable *self)
{
  g_free (self->first);
  g_free (self->last);
  g_free (self->arcs);
  g_free (self);
}

gint32
bs_order_table_orient (const BsOrderTable *self, const guint *order, BsOrientation *orientations)
{
  guint n = self->n_places;
  g_autofree BsOrderFour *value = g_new (BsOrderFour, n);
  BsOrderFour end;
  guint best = 0;

  value[0] = self->first[order[0]];
  for (guint k = 1; k < n; k++)
    value[k]
        = bs_order_four_step (value[k - 1], bs_order_table_arcs (self, order[k - 1], order[k]));
  end = value[n - 1] + self->last[order[n - 1]];
  for (guint o = 1; o < BS_N_ORIENTATIONS; o++)
    if (end[o] < end[best])
      best = o;
  for (guint k = n; orientations != NULL && k-- > 0;)
    {
      const BsOrderFour *arcs;
      guint o = best;

      orientations[k] = (BsOrientation)o;
      if (k == 0)
        break;
      arcs = bs_order_table_arcs (self, order[k - 1], order[k]);
      for (guint a = 0; a < BS_N_ORIENTATIONS; a++)
        if (value[k - 1][a] + arcs[a][o] == value[k][o])
          {
            best = a;
            break;
          }
    }
  return bs_order_four_least (end);
}
