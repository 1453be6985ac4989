/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "core/plan.h"
#include "core/random.h"
#include "core/text.h"

/* Plans with boards to be cut, for the tests of more than one layer. */

/* A plan of beech on edge with nothing in it. Saw: 3 mm, ends 25 mm, no more. */
static inline BsPlan *
rack_plan_new (void)
{
  BsPlan *plan = bs_plan_new ();
  BsWood *wood = bs_wood_new ("beech");

  g_ptr_array_add (plan->woods, wood);
  plan->slab.allowance = 0.5;
  plan->shop.saw = (BsSaw){ .kerf = 3.0, .end_trim = 25.0, .min_offcut = 300.0 };
  return plan;
}

static inline BsBoard *
rack_add_board (BsPlan *plan, double length, double width, double thickness, gint64 price_minor)
{
  g_autofree char *id = g_strdup_printf ("board-%u", plan->boards->len + 1);
  BsBoard *board = bs_board_new (id);

  bs_text_set (&board->wood, "beech");
  board->length = length;
  board->width = width;
  board->thickness = thickness;
  board->price_minor = price_minor;
  g_ptr_array_add (plan->boards, board);
  return board;
}

/* In the slab, as marked, behind those that are there. */
static inline BsLamination *
rack_add_lamination (BsPlan *plan, double length, double thickness, double height)
{
  g_autofree char *id = g_strdup_printf ("lamination-%u", plan->laminations->len + 1);
  BsLamination *lamination = bs_lamination_new (id);

  bs_text_set (&lamination->wood, "beech");
  lamination->length = length;
  lamination->thickness = thickness;
  lamination->height = height;
  g_ptr_array_add (plan->laminations, lamination);
  bs_plan_insert_placement (plan, (int)plan->order->len, id, BS_ORIENTATION_AS_MARKED, 0.0);
  return lamination;
}

static inline BsPart *
rack_add_part (BsPlan *plan, int count, double length, double width, double thickness)
{
  g_autofree char *id = g_strdup_printf ("part-%u", plan->parts->len + 1);
  BsPart *part = bs_part_new (id);

  bs_text_set (&part->wood, "beech");
  part->count = count;
  part->length = length;
  part->width = width;
  part->thickness = thickness;
  g_ptr_array_add (plan->parts, part);
  return part;
}

static inline void
rack_add_defect (BsBoard *board, BsDefectKind kind, BsFace face, double x_from, double x_to,
                 double across_from, double across_to)
{
  const BsDefect defect = { .kind = kind,
                            .face = face,
                            .x_from = x_from,
                            .x_to = x_to,
                            .across_from = across_from,
                            .across_to = across_to,
                            .severity = 1.0 };

  g_array_append_val (board->defects, defect);
}

static inline void
rack_add_cut (BsPlan *plan, const char *board, const char *piece, double x, double y, double length,
              double width)
{
  g_autofree char *board_id = g_strdup (board);
  g_autofree char *piece_id = g_strdup (piece);
  BsCut cut = { .x = x, .y = y, .length = length, .width = width };

  bs_text_set (&cut.board, board_id);
  bs_text_set (&cut.piece, piece_id);
  bs_plan_add_cut (plan, &cut);
  bs_text_clear (&cut.board);
  bs_text_clear (&cut.piece);
}

/* Up to 8 boards with warp and defects, 6 laminations, 3 kinds of parts; of any size that goes. */
static inline BsPlan *
rack_draw (guint64 seed)
{
  BsRandom random = bs_random_init (seed);
  BsPlan *plan = rack_plan_new ();
  guint n_boards = 1 + bs_random_below (&random, 8), n_laminations = bs_random_below (&random, 7);
  guint n_parts = bs_random_below (&random, 4);

  plan->units = bs_random_below (&random, 2) ? BS_UNIT_SYSTEM_INCH : BS_UNIT_SYSTEM_METRIC;
  plan->slab.layup = bs_random_below (&random, 2) ? BS_LAYUP_ON_EDGE : BS_LAYUP_ON_FLAT;
  plan->shop.saw.kerf = 2.0 + bs_random_below (&random, 20) / 8.0;
  plan->shop.saw.edge_trim = bs_random_below (&random, 6);
  plan->shop.saw.edge_allowance = bs_random_below (&random, 3) / 2.0;
  plan->shop.saw.spring_per_m = bs_random_below (&random, 3) / 2.0;
  plan->shop.saw.first = (BsSawFirst)bs_random_below (&random, 3);
  for (guint i = 0; i < n_boards; i++)
    {
      double length = 400.0 + bs_random_below (&random, 1200);
      double width = 80.0 + bs_random_below (&random, 200);
      BsBoard *board
          = rack_add_board (plan, length, width, 27.0 + bs_random_below (&random, 2) * 25.0,
                            bs_random_below (&random, 60) * 100);

      board->bow = (double)bs_random_below (&random, 9) - 4.0;
      board->crook = (double)bs_random_below (&random, 9) - 4.0;
      for (guint k = bs_random_below (&random, 4); k > 0; k--)
        {
          double x = bs_random_below (&random, (guint)length - 100);
          double y = bs_random_below (&random, (guint)width - 40);
          rack_add_defect (board, (BsDefectKind)bs_random_below (&random, BS_N_DEFECT_KINDS),
                           bs_random_below (&random, 2) ? BS_FACE_TOP : BS_FACE_UNDERSIDE, x,
                           x + 10.0 + bs_random_below (&random, 90), y,
                           y + 5.0 + bs_random_below (&random, 35));
        }
    }
  for (guint i = 0; i < n_laminations; i++)
    rack_add_lamination (plan, 200.0 + bs_random_below (&random, 700), 20.0,
                         40.0 + bs_random_below (&random, 40));
  for (guint i = 0; i < n_parts; i++)
    rack_add_part (plan, 1 + (int)bs_random_below (&random, 4),
                   100.0 + bs_random_below (&random, 500), 30.0 + bs_random_below (&random, 80),
                   15.0 + bs_random_below (&random, 10));
  return plan;
}
