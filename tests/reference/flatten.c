/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten.h"
#include "slabs.h"

#include <stdio.h>

/* Answers flatten.py. Standard input holds slabs: "n layup alignment work", then n lines
 * of "length thickness height crook cup twist taper start orientation"; for each slab a line with
 * the thickness and the slopes of the finished underside comes back. */

static gboolean
read_lamination (BsPlan *plan, guint place)
{
  BsLamination *lamination = slab_at (plan, place);
  BsPlacement *placement = &g_array_index (plan->order, BsPlacement, place);
  int orientation;

  if (scanf ("%lf %lf %lf %lf %lf %lf %lf %lf %d", &lamination->length, &lamination->thickness,
             &lamination->height, &lamination->crook, &lamination->cup, &lamination->twist,
             &lamination->taper, &placement->start, &orientation)
      != 9)
    return FALSE;
  placement->orientation = (BsOrientation)orientation;
  return TRUE;
}

int
main (void)
{
  guint n;
  int layup, alignment, work;

  while (scanf ("%u %d %d %d", &n, &layup, &alignment, &work) == 4)
    {
      g_autoptr (BsPlan) plan = slab_new (n, 1.0, 1.0, 1.0);
      BsFlattenResult result;

      plan->slab.layup = (BsLayup)layup;
      plan->slab.alignment = (BsAlignment)alignment;
      plan->slab.flatten_work = (BsFlattenWork)work;
      for (guint i = 0; i < n; i++)
        if (!read_lamination (plan, i))
          return 1;

      g_autoptr (BsStack) stack = bs_stack_new (plan);
      bs_flatten (stack, &result);
      printf ("%.9f %.15e %.15e\n", result.thickness, result.slope_x, result.slope_y);
    }
  return 0;
}
