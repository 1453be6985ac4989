/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages.h"

#include <stdio.h>

#define MAX_LAMINATIONS 100

/* Answers stages.py. Standard input holds jobs, each a line of numbers in the order of read_job ();
 * for each comes back "0" or "1 rounds elapsed imbalance proved", then "elapsed imbalance" of the
 * balanced plan (or of the shortest again), then the shortest plan's stages as "round bounds...;".
 */

static gboolean
read_number (double *number)
{
  return scanf ("%lf", number) == 1;
}

static gboolean
read_count (int *number)
{
  return scanf ("%d", number) == 1;
}

static gboolean
read_job (BsStagesInput *input, double *widths)
{
  int spreading, planes;

  if (!read_count (&input->n))
    return FALSE;
  g_assert_cmpint (input->n, <=, MAX_LAMINATIONS);
  for (int i = 0; i < input->n; i++)
    g_assert_true (read_number (&widths[i]));
  input->widths = widths;
  g_assert_true (read_number (&input->length) && read_number (&input->height)
                 && read_count (&input->people) && read_number (&input->spread_s_per_m2)
                 && read_number (&input->joint_s) && read_number (&input->open_s)
                 && read_number (&input->closed_s) && read_number (&input->total_s)
                 && read_number (&input->press_s) && read_number (&input->place_s)
                 && read_number (&input->align_s) && read_number (&input->tighten_s)
                 && read_count (&input->clamps) && read_number (&input->max_spacing)
                 && read_number (&input->end) && read_number (&input->caul)
                 && read_number (&input->max_opening) && read_count (&planes)
                 && read_number (&input->planer_width) && read_number (&input->plane_s)
                 && read_count (&spreading) && read_count (&input->max_rounds));
  input->pack_clamps = input->clamps;
  input->planes_packs = planes;
  input->spreading = (BsSpreading)spreading;
  return TRUE;
}

static void
print_stages (const BsStagesPlan *plan)
{
  for (guint i = 0; i < plan->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (plan->stages, BsStage, i);
      printf (" %d", stage->round);
      for (int k = 0; k <= stage->n_pieces; k++)
        printf (" %d", stage->bounds[k]);
      printf (" ;");
    }
}

int
main (void)
{
  double widths[MAX_LAMINATIONS];
  BsStagesInput input = bs_stages_input_default ();

  while (read_job (&input, widths))
    {
      g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
      if (stages->shortest == NULL)
        printf ("0\n");
      else
        {
          const BsStagesPlan *balanced = stages->balanced ? stages->balanced : stages->shortest;
          printf ("1 %d %.6f %.6f %d %.6f %.6f", stages->shortest->n_rounds,
                  stages->shortest->elapsed_s, stages->shortest->imbalance, stages->is_proved,
                  balanced->elapsed_s, balanced->imbalance);
          print_stages (stages->shortest);
          printf ("\n");
        }
    }
  return 0;
}
