/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/results.h"

#include "shops.h"

#include <stdio.h>
#include <stdlib.h>

/* Answers clamping.py: for a thickness of the laminations and a width of the clamp heads (mm), the
 * spacing by the hand rule and the least and most that its working owns up to for the least
 * pressure, as parts of the mean. */

static double
find_term (const BsWorking *working, const char *name)
{
  for (guint i = 0; i < working->n_terms; i++)
    if (g_str_has_suffix (working->terms[i].name, name))
      return working->terms[i].value;
  g_assert_not_reached ();
}

int
main (int argc, char *argv[])
{
  g_assert (argc == 3);
  g_autoptr (BsPlan) plan = slab_new (12, 2400.0, g_ascii_strtod (argv[1], NULL), 60.0);
  shop_set_wood (plan, 0.64, 7.0);
  shop_add_clamps (plan, 30, 6000.0, 3000.0, g_ascii_strtod (argv[2], NULL));
  g_autoptr (BsResults) results = bs_evaluate (plan);

  printf ("%.6f %.6f %.6f\n", results->clamps.spacing,
          find_term (&results->why_clamps, "spacing, from"),
          find_term (&results->why_clamps, "spacing, to"));
  return 0;
}
