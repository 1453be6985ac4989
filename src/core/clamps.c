/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamps.h"

#include "core/torque.h"

#include <math.h>

static GArray *
list_placed (const BsPlan *plan)
{
  GArray *clamps = g_array_new (FALSE, FALSE, sizeof (BsLayoutClamp));

  for (guint i = 0; i < plan->placed_clamps->len; i++)
    {
      const BsPlacedClamp *placed = &g_array_index (plan->placed_clamps, BsPlacedClamp, i);
      BsLayoutClamp clamp = { .kind = (guint)bs_plan_find_clamp_kind (plan, placed->kind),
                              .x = placed->x,
                              .force = placed->force_n,
                              .is_above = placed->is_above };

      g_array_append_val (clamps, clamp);
    }
  return clamps;
}

static double
get_most (const BsPlan *plan, guint kind)
{
  return ((const BsClampKind *)g_ptr_array_index (plan->shop.clamps, kind))->max_force_n;
}

/* One entry, its kind, for each clamp that a slab so wide can use, strongest first. */
static GArray *
list_reaching (const BsPlan *plan, double reach)
{
  GArray *kinds = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < plan->shop.clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, i);
      guint at = 0;

      if (kind->reach < reach)
        continue;
      while (at < kinds->len
             && get_most (plan, g_array_index (kinds, guint, at)) >= kind->max_force_n)
        at++;
      for (int j = 0; j < kind->count; j++)
        g_array_insert_val (kinds, at, i);
    }
  return kinds;
}

/* Number i from the left of n, strong and weak by turns: the strongest at places 0, 2, 4 and so on,
 * the rest between them. When more are needed than are owned, as if the last were owned again. */
static guint
pick_kind (const GArray *kinds, guint i, guint n)
{
  guint rank = i % 2 == 0 ? i / 2 : (n + 1) / 2 + i / 2;

  return g_array_index (kinds, guint, MIN (rank, kinds->len - 1));
}

static int
compare_forces (gconstpointer a, gconstpointer b)
{
  double x = (*(BsLayoutClamp *const *)a)->force, y = (*(BsLayoutClamp *const *)b)->force;

  return (x > y) - (x < y);
}

/* Equal shares of a force; each clamp's own force is the most that it may have, so far. */
static void
share_force (GArray *clamps, double force)
{
  g_autoptr (GPtrArray) weakest_first = g_ptr_array_new ();

  for (guint i = 0; i < clamps->len; i++)
    g_ptr_array_add (weakest_first, &g_array_index (clamps, BsLayoutClamp, i));
  g_ptr_array_sort (weakest_first, compare_forces);
  for (guint i = 0; i < clamps->len; i++)
    {
      BsLayoutClamp *clamp = g_ptr_array_index (weakest_first, i);

      clamp->force = fmin (clamp->force, force / (clamps->len - i));
      force -= clamp->force;
    }
}

static GArray *
list_by_rule (const BsStack *stack, const BsClampRule *rule)
{
  const BsPlan *plan = stack->plan;
  GArray *clamps = g_array_new (FALSE, FALSE, sizeof (BsLayoutClamp));
  g_autoptr (GArray) kinds = list_reaching (plan, rule->n_fitting > 0 ? rule->reach_needed : 0.0);
  guint n = rule->positions->len;

  for (guint i = 0; i < n && kinds->len > 0; i++)
    {
      guint kind = pick_kind (kinds, i, n);
      BsLayoutClamp clamp = { .kind = kind,
                              .x = g_array_index (rule->positions, double, i),
                              .force = get_most (plan, kind),
                              .is_above = i % 2 == 0 };

      g_array_append_val (clamps, clamp);
    }
  share_force (clamps, isnan (rule->force_n) ? plan->adhesive.min_pressure_mpa * rule->area
                                             : rule->force_n);
  return clamps;
}

GArray *
bs_clamps_new (const BsStack *stack, const BsClampRule *rule)
{
  GArray *clamps = stack->plan->placed_clamps->len > 0 ? list_placed (stack->plan)
                                                       : list_by_rule (stack, rule);

  bs_layout_order_turns ((BsLayoutClamp *)(void *)clamps->data, clamps->len);
  return clamps;
}

double
bs_clamps_torque (const BsClampKind *kind, double force_n)
{
  BsScrew screw;

  if (isnan (kind->screw_mean_diameter) || isnan (kind->screw_lead))
    return NAN;
  screw = bs_screw_default (kind->screw_mean_diameter, kind->screw_lead);
  return bs_screw_torque (&screw, force_n);
}
