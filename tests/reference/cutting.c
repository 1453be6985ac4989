/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/cut-plan.h"

#include <stdio.h>

/* Solves orders from standard input for cutting.py. An order: kerf, trim of ends, trim of edges,
 * order of cuts, n of stock, n of parts; stock: length, width, price, supply; parts: length, width,
 * quantity. All whole numbers. Prints price, bound, whether the price is proven, waste area,
 * missing parts. */

static gboolean
read_numbers (int *numbers, guint n)
{
  for (guint i = 0; i < n; i++)
    if (scanf ("%d", &numbers[i]) != 1) /* NOLINT(cert-err34-c): written by cutting.py */
      return FALSE;
  return TRUE;
}

int
main (void)
{
  int head[6];

  while (read_numbers (head, 6))
    {
      BsCutting cutting = bs_cutting_default ();
      g_autofree BsCutStock *stock = g_new0 (BsCutStock, (guint)head[4]);
      g_autofree BsCutPart *parts = g_new0 (BsCutPart, (guint)head[5]);
      g_autoptr (GError) error = NULL;
      g_autoptr (BsCutPlan) plan = NULL;
      int row[4];

      cutting.kerf = head[0];
      cutting.trim_end = head[1];
      cutting.trim_edge = head[2];
      cutting.order = (BsCutOrder)head[3];
      cutting.stock = stock;
      cutting.n_stock = (guint)head[4];
      cutting.parts = parts;
      cutting.n_parts = (guint)head[5];
      for (guint i = 0; i < cutting.n_stock && read_numbers (row, 4); i++)
        stock[i] = (BsCutStock){ row[0], row[1], 50.0, row[2], row[3], 0, 0, 0, NULL };
      for (guint i = 0; i < cutting.n_parts && read_numbers (row, 3); i++)
        parts[i] = (BsCutPart){ row[0], row[1], 50.0, row[2], 0, 2, 2, FALSE };
      plan = bs_cutting_solve (&cutting, NULL, &error);
      g_assert_no_error (error);
      cut_plan_assert_possible (&cutting, plan);
      printf ("%d %d %d %.0f %u\n", (int)plan->price_minor, (int)plan->bound_minor,
              plan->is_price_least, plan->waste_area, plan->n_missing);
    }
  return 0;
}
