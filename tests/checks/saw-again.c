/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/saw-again.h"

#include <math.h>

#define NEAR 1e-3   /* mm: binary fractions */
#define SLIVER 1.01 /* mm: stays on a piece, see src/core/sawing.c */

/* A part of the board that is still whole. */
typedef struct
{
  double x_from, x_to, y_from, y_to;
} Part;

static gboolean
is_near (double a, double b)
{
  return fabs (a - b) < NEAR;
}

/* The part that a pass runs through from edge to edge. */
static guint
find_part (const GArray *parts, const BsSawPass *pass)
{
  for (guint i = 0; i < parts->len; i++)
    {
      const Part *part = &g_array_index (parts, Part, i);
      double along_from = pass->is_rip ? part->x_from : part->y_from;
      double along_to = pass->is_rip ? part->x_to : part->y_to;
      double from = pass->is_rip ? part->y_from : part->x_from;
      double to = pass->is_rip ? part->y_to : part->x_to;

      if (pass->at >= from - NEAR && pass->at + pass->width <= to + NEAR
          && pass->from <= along_from + SLIVER && pass->to >= along_to - SLIVER
          && pass->from >= along_from - NEAR && pass->to <= along_to + NEAR)
        return i;
    }
  g_test_message ("pass at %g from %g to %g runs through no part", pass->at, pass->from, pass->to);
  g_assert_not_reached ();
}

static void
divide (GArray *parts, const BsSawPass *pass)
{
  guint index = find_part (parts, pass);
  Part near_part = g_array_index (parts, Part, index), far_part = near_part;

  if (pass->is_rip)
    {
      near_part.y_to = pass->at;
      far_part.y_from = pass->at + pass->width;
    }
  else
    {
      near_part.x_to = pass->at;
      far_part.x_from = pass->at + pass->width;
    }
  g_array_remove_index (parts, index);
  g_array_append_val (parts, near_part);
  g_array_append_val (parts, far_part);
}

static gboolean
is_piece (const Part *part, const BsCut *cut)
{
  return part->x_from <= cut->x + NEAR && part->x_from >= cut->x - SLIVER
         && part->x_to >= cut->x + cut->length - NEAR && part->x_to <= cut->x + cut->length + SLIVER
         && part->y_from <= cut->y + NEAR && part->y_from >= cut->y - SLIVER
         && part->y_to >= cut->y + cut->width - NEAR && part->y_to <= cut->y + cut->width + SLIVER;
}

void
saw_again (const BsPlan *plan, const BsSawnBoard *sawn)
{
  g_autoptr (GArray) parts = g_array_new (FALSE, FALSE, sizeof (Part));
  const BsSawing *sawing = sawn->sawing;
  Part board = { 0.0, sawing->length, 0.0, sawing->width };

  g_assert_cmpint (sawing->fault, ==, BS_SAW_FAULT_NONE);
  g_array_append_val (parts, board);
  for (guint i = 0; i < sawing->passes->len; i++)
    divide (parts, &g_array_index (sawing->passes, BsSawPass, i));
  for (guint i = 0; i < sawn->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, g_array_index (sawn->cuts, guint, i));
      guint n_found = 0;

      for (guint k = 0; k < parts->len; k++)
        n_found += is_piece (&g_array_index (parts, Part, k), cut);
      g_assert_cmpuint (n_found, ==, 1);
    }
  g_assert_true (
      is_near (sawing->piece_area + sawing->kerf_area + sawing->offcut_area + sawing->waste_area,
               sawing->length * sawing->width));
  g_assert_cmpfloat (sawing->waste_area, >=, -NEAR);
}

void
saw_rack_again (const BsPlan *plan)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);

  for (guint i = 0; i < rack->boards->len; i++)
    saw_again (plan, rack->boards->pdata[i]);
  for (guint i = 0; i < wishes->len; i++)
    {
      const BsSawWish *wish = &g_array_index (wishes, BsSawWish, i);
      int n = 0;

      for (guint k = 0; k < plan->cuts->len; k++)
        n += g_str_equal (g_array_index (plan->cuts, BsCut, k).piece, wish->id);
      g_assert_cmpint (n, <=, wish->count);
      g_assert_cmpint (n + bs_saw_count_missing (plan, wish), ==, wish->count);
    }
}
