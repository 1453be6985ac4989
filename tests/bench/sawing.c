/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-job.h"
#include "core/sawing-move.h"
#include "core/sawing-rack.h"

#include "bench/median.h"
#include "racks.h"

/* What one step of a drag in the place Cutting takes: where the others can stay, where they have to
 * make room, and what is told of it; and the whole search, for racks of three sizes. */

#define RUNS 9

typedef struct
{
  BsPlan *plan;
  double x;
} Drag;

/* Boards of a wood with up to three defects each, half as many laminations as boards and more, and
 * as many parts. */
static BsPlan *
rack_new (guint n_boards, guint n_laminations)
{
  BsRandom random = bs_random_init (7);
  BsPlan *plan = rack_plan_new ();

  for (guint i = 0; i < n_boards; i++)
    {
      double length = 2100.0 + 100.0 * bs_random_below (&random, 20);
      double width = 120.0 + 5.0 * bs_random_below (&random, 25);
      BsBoard *board = rack_add_board (plan, length, width, 52.0, (gint64)(length * width / 100.0));

      board->crook = (double)bs_random_below (&random, 5);
      for (guint k = bs_random_below (&random, 4); k > 0; k--)
        {
          double x = bs_random_below (&random, 2000), y = bs_random_below (&random, 90);
          rack_add_defect (board, BS_DEFECT_KNOT, k == 1 ? BS_FACE_TOP : BS_FACE_UNDERSIDE, x,
                           x + 40.0, y, y + 25.0);
        }
    }
  for (guint i = 0; i < n_laminations; i++)
    rack_add_lamination (plan, 1890.0, 40.0, 66.0);
  rack_add_part (plan, (int)n_laminations / 2, 820.0, 80.0, 42.0);
  return plan;
}

static BsPlan *
cut (BsPlan *plan)
{
  const BsSawEffort effort = { .is_quick = TRUE };
  g_autoptr (BsSawPlan) found = bs_saw_solve (plan, &effort, NULL);

  for (guint i = 0; i < found->cuts->len; i++)
    bs_plan_add_cut (plan, &g_array_index (found->cuts, BsCut, i));
  return plan;
}

static void
stay (gpointer data)
{
  const Drag *drag = data;
  const char *board = g_array_index (drag->plan->cuts, BsCut, 0).board;
  g_autoptr (BsPlan) moved = bs_saw_move (drag->plan, 0, board, drag->x, 0.0, NULL);
}

static void
make_room (gpointer data)
{
  const Drag *drag = data;
  const char *board = g_array_index (drag->plan->cuts, BsCut, 0).board;
  g_autoptr (BsPlan) moved = bs_saw_move_and_plan (drag->plan, 0, board, drag->x, 0.0, NULL);
}

static void
tell (gpointer data)
{
  const Drag *drag = data;
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (drag->plan);
}

static void
search (gpointer data)
{
  const BsSawEffort effort = { 0 };
  g_autoptr (BsSawPlan) found = bs_saw_solve (((const Drag *)data)->plan, &effort, NULL);
}

int
main (void)
{
  const struct
  {
    guint n_boards, n_laminations;
    gboolean is_searched;
  } racks[] = { { 12, 15, TRUE }, { 40, 30, TRUE }, { 300, 60, FALSE } };

  g_print ("cutting the rack, %u processors\n", g_get_num_processors ());
  for (guint i = 0; i < G_N_ELEMENTS (racks); i++)
    {
      g_autoptr (BsPlan) whole = rack_new (racks[i].n_boards, racks[i].n_laminations);
      g_autoptr (BsPlan) plan = cut (rack_new (racks[i].n_boards, racks[i].n_laminations));
      Drag drag = { plan, 40.0 }, all = { whole, 0.0 };

      g_print ("%u boards, %u pieces: a step where the others stay %.3f ms, what is told %.3f ms, "
               "where they make room %.0f ms",
               racks[i].n_boards, plan->cuts->len, bench_median_ms (stay, &drag, RUNS),
               bench_median_ms (tell, &drag, RUNS), bench_median_ms (make_room, &drag, 3));
      if (racks[i].is_searched)
        g_print ("; the search %.0f ms", bench_median_ms (search, &all, 3));
      g_print ("\n");
    }
  return 0;
}
