/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stage-times.h"

#include <math.h>

#define M2_PER_MM2 1e-6

/* Sums of times that are equal on paper may differ by rounding. */
#define ROUNDING_S 1e-6

int
bs_stages_clamps_by_spacing (const BsStagesInput *input, double outer_width)
{
  double spacing = fmin (input->max_spacing, 2.0 * (outer_width + input->caul));
  double inner = input->length - 2.0 * input->end;
  double n = 1.0 + ceil (inner / spacing - 1e-9);

  return (int)CLAMP (n, 2.0, BS_STAGES_MOST_CLAMPS + 1.0);
}

int
bs_stages_clamps_for (const BsStagesInput *input, int first, int count)
{
  double width = 0.0;

  if (input->clamps_for != NULL)
    return input->clamps_for (first, count, input->clamps_data);
  for (int i = first; i < first + count; i++)
    width += input->widths[i];
  return bs_stages_clamps_by_spacing (input, width);
}

int
bs_stages_clamps_for_whole (const BsStagesInput *input, int first, int count, int n_pieces)
{
  if (input->whole_for == NULL)
    return 0;
  return input->whole_for (first, count, n_pieces, input->clamps_data);
}

int
bs_stages_clamps_for_slab (const BsStagesInput *input, int outer, int n_pieces)
{
  if (input->slab_clamps > 0)
    return input->slab_clamps;
  return MAX (outer, bs_stages_clamps_for_whole (input, 0, input->n, n_pieces));
}

static double
joint_spread_s (const BsStagesInput *input)
{
  double area = input->length * input->height * M2_PER_MM2;
  return input->joint_s + input->spread_s_per_m2 * area / input->people;
}

static double
total_s (const BsStagesInput *input, int n_pieces, int n_clamps)
{
  double each = joint_spread_s (input) + input->place_s + input->align_s;
  return (n_pieces - 1) * each + n_clamps * input->tighten_s / input->people;
}

void
bs_stage_joint_times (const BsStagesInput *input, int n_pieces, int n_clamps, int joint,
                      double *open_s, double *closed_s)
{
  double spread = joint_spread_s (input);
  double begin, contact; /* of the joint, from the first glue on */

  if (input->spreading == BS_SPREADING_ALTERNATE)
    {
      begin = joint * (spread + input->place_s + input->align_s);
      contact = begin + spread + input->place_s;
    }
  else
    {
      begin = joint * spread;
      contact = (n_pieces - 1) * spread + (joint + 1) * input->place_s;
    }
  *open_s = contact - begin;
  *closed_s = total_s (input, n_pieces, n_clamps) - contact;
}

/* The first joint waits longest for pressure. When all is spread first, the first or the last one
 * is open longest, whichever of spreading and placing takes more time. */
BsStageTimes
bs_stage_times (const BsStagesInput *input, int n_pieces, int n_clamps)
{
  BsStageTimes times = { .total_s = total_s (input, n_pieces, n_clamps) };
  double last_open, last_closed;

  bs_stage_joint_times (input, n_pieces, n_clamps, 0, &times.open_s, &times.closed_s);
  bs_stage_joint_times (input, n_pieces, n_clamps, n_pieces - 2, &last_open, &last_closed);
  times.open_s = fmax (times.open_s, last_open);
  times.assembly_s = times.total_s + input->place_s;
  return times;
}

BsStageLimit
bs_stage_time_limit (const BsStagesInput *input, const BsStageTimes *times)
{
  if (times->open_s > input->open_s + ROUNDING_S)
    return BS_STAGE_LIMIT_OPEN;
  if (times->closed_s > input->closed_s + ROUNDING_S)
    return BS_STAGE_LIMIT_CLOSED;
  if (times->total_s > input->total_s + ROUNDING_S)
    return BS_STAGE_LIMIT_TOTAL;
  return BS_STAGE_LIMIT_NONE;
}

/* Times grow with every piece. */
int
bs_stage_most_pieces (const BsStagesInput *input, int n_clamps)
{
  int most = 1;

  while (most < input->n)
    {
      BsStageTimes times = bs_stage_times (input, most + 1, n_clamps);
      if (bs_stage_time_limit (input, &times) != BS_STAGE_LIMIT_NONE)
        break;
      most++;
    }
  return most;
}

BsStageLimit
bs_stage_pack_limit (const BsStagesInput *input, double width, double mass_kg)
{
  if (width + 2.0 * input->caul > input->max_opening + BS_STAGES_ROUNDING)
    return BS_STAGE_LIMIT_OPENING;
  if (input->planes_packs && width > input->planer_width + BS_STAGES_ROUNDING)
    return BS_STAGE_LIMIT_PLANER;
  if (mass_kg > input->max_pack_kg + BS_STAGES_ROUNDING)
    return BS_STAGE_LIMIT_WEIGHT;
  return BS_STAGE_LIMIT_NONE;
}
