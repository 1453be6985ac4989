/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-press.h"

#include "core/press-plan.h"

#include <math.h>

/* Laminations that are one piece by now: side by side along the grain, one behind the other across
 * it. A pack that was planed is straight. */
static BsPressPiece
join_pieces (const BsPressPiece *pieces, int count)
{
  BsPressPiece joined = pieces[0];
  double along = 0.0, across = 0.0, shear = 0.0, height = 0.0, end = INFINITY;

  if (count == 1)
    return joined;
  joined.thickness = joined.bow = 0.0;
  for (int i = 0; i < count; i++)
    {
      double thickness = pieces[i].thickness;
      joined.thickness += thickness;
      joined.start = fmax (joined.start, pieces[i].start);
      end = fmin (end, pieces[i].start + pieces[i].length);
      along += thickness * pieces[i].e_along_mpa;
      across += thickness / pieces[i].e_across_mpa;
      shear += thickness / pieces[i].shear_mpa;
      height += thickness * pieces[i].height;
    }
  joined.length = end - joined.start;
  joined.height = height / joined.thickness;
  joined.e_along_mpa = along / joined.thickness;
  joined.e_across_mpa = joined.thickness / across;
  joined.shear_mpa = joined.thickness / shear;
  return joined;
}

static void
add_piece (GArray *pieces, BsPressPiece piece, guint course)
{
  piece.course = course;
  g_array_append_val (pieces, piece);
}

static gboolean
is_pressed (int piece, int n_pieces)
{
  int half = BS_STAGE_MOST_PRESSED / 2;

  return n_pieces <= BS_STAGE_MOST_PRESSED || piece < half || piece >= n_pieces - half;
}

/* What is between the clamps: cauls as the plan puts them, and the stage's own pieces. */
static GArray *
list_pieces (const BsPressPlan *plan, const BsStage *stage)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (BsPressPiece));
  const BsPressPiece *all = (const BsPressPiece *)(void *)plan->pieces->data;
  guint n_laminations = (guint)(stage->bounds[stage->n_pieces] - stage->bounds[0]);
  guint n_cauls = (plan->pieces->len - n_laminations) / 2;
  guint course = plan->first_course;

  for (guint i = 0; i < n_cauls; i++)
    add_piece (list, all[i], 0);
  for (int i = 0; i < stage->n_pieces; i++)
    {
      const BsPressPiece *first = &all[n_cauls + (guint)(stage->bounds[i] - stage->bounds[0])];

      if (is_pressed (i, stage->n_pieces))
        add_piece (list, join_pieces (first, stage->bounds[i + 1] - stage->bounds[i]), course++);
    }
  for (guint i = 0; i < n_cauls; i++)
    add_piece (list, all[n_cauls + n_laminations + i], course);
  return list;
}

gboolean
bs_stage_press (const BsStack *stack, const BsStage *stage, int at_least,
                const BsProgress *progress, BsStagePressing *pressing)
{
  guint first = (guint)stage->bounds[0];
  BsStack part = bs_stack_part (stack, first, (guint)stage->bounds[stage->n_pieces] - first);
  g_auto (BsPressPlan) plan = { 0 };
  g_auto (BsLayout) layout = { 0 };

  if (!bs_press_plan_init (&plan, &part, NULL))
    return FALSE;

  g_autoptr (GArray) pieces = list_pieces (&plan, stage);
  plan.problem.stack.pieces = (const BsPressPiece *)(void *)pieces->data;
  plan.problem.stack.n_pieces = pieces->len;
  plan.problem.at_least = (guint)at_least;
  if (!bs_layout_find (&plan.problem, progress, &layout, NULL)
      || layout.status == BS_LAYOUT_STOPPED)
    return FALSE;
  *pressing = (BsStagePressing){ .status = layout.status,
                                 .n_clamps = (int)layout.n_clamps,
                                 .least_mpa = layout.n_clamps > 0 ? layout.least_mpa : NAN };
  return TRUE;
}
