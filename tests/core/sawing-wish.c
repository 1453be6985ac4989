/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-wish.h"

#include "racks.h"

/* 151.2 sixty-fourths of an inch are 60 mm: 152 x 25.4 / 64 = 60.325. */
static void
test_round_up (void)
{
  g_assert_cmpfloat_with_epsilon (bs_saw_round_up (BS_UNIT_SYSTEM_METRIC, 60.0), 60.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_saw_round_up (BS_UNIT_SYSTEM_METRIC, 60.1), 60.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_saw_round_up (BS_UNIT_SYSTEM_INCH, 60.0), 60.325, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_saw_round_up (BS_UNIT_SYSTEM_INCH, 2.5 * 25.4), 63.5, 1e-9);
}

static void
test_kerf (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();

  plan->shop.saw.kerf = 3.175; /* 1/8 in */
  g_assert_cmpfloat_with_epsilon (bs_saw_kerf (plan), 3.2, 1e-9);
  plan->units = BS_UNIT_SYSTEM_INCH;
  g_assert_cmpfloat_with_epsilon (bs_saw_kerf (plan), 3.175, 1e-9);
}

/* A strip 60 wide and 2 m long: 60 + 0.5 x 2^2 + 2 x 1 = 64. */
static void
test_rough_size (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (GArray) wishes = NULL;
  const BsSawWish *wish;

  plan->shop.saw.spring_per_m = 0.5;
  plan->shop.saw.edge_allowance = 1.0;
  rack_add_part (plan, 3, 2000.0, 60.0, 20.0);
  wishes = bs_saw_wishes_new (plan);
  wish = bs_saw_wishes_find (wishes, "part-1");
  g_assert_cmpint (wish->count, ==, 3);
  g_assert_cmpfloat_with_epsilon (wish->rough_length, 2000.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (wish->rough_width, 64.0, 1e-9);
  g_assert_null (bs_saw_wishes_find (wishes, "part-2"));
}

/* Which faces and edges of the board the slab shows. */
static void
test_demands (void)
{
  const struct
  {
    BsLayup layup;
    gboolean shows_front, shows_underside;
    int faces[2], edges[2]; /* of the first lamination and of the second of three */
  } rows[] = {
    { BS_LAYUP_ON_EDGE, FALSE, FALSE, { 0, 0 }, { 1, 1 } },
    { BS_LAYUP_ON_EDGE, TRUE, FALSE, { 1, 0 }, { 1, 1 } },
    { BS_LAYUP_ON_EDGE, TRUE, TRUE, { 1, 0 }, { 2, 2 } },
    { BS_LAYUP_ON_FLAT, FALSE, FALSE, { 1, 1 }, { 0, 0 } },
    { BS_LAYUP_ON_FLAT, TRUE, TRUE, { 2, 2 }, { 1, 0 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BsPlan) plan = rack_plan_new ();
      g_autoptr (GArray) wishes = NULL;

      plan->slab.layup = rows[i].layup;
      plan->slab.shows_front = rows[i].shows_front;
      plan->slab.shows_back = FALSE;
      plan->slab.shows_underside = rows[i].shows_underside;
      for (guint k = 0; k < 3; k++)
        rack_add_lamination (plan, 1000.0, 45.0, 60.0);
      wishes = bs_saw_wishes_new (plan);
      for (guint k = 0; k < 2; k++)
        {
          const BsSawWish *wish = &g_array_index (wishes, BsSawWish, k);
          g_assert_cmpint (wish->clear_faces, ==, rows[i].faces[k]);
          g_assert_cmpint (wish->clear_edges, ==, rows[i].edges[k]);
        }
    }
}

/* A bow of 8 over 2000 is 8 x 0.45^2 = 1.62 over 900. */
static void
test_reach (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 2000.0, 200.0, 52.0, 0);

  board->bow = 8.0;
  g_assert_cmpfloat_with_epsilon (bs_saw_reach (plan, board, 900.0, 60.0), 52.0 - 1.62 - 1.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_saw_reach (plan, board, 2001.0, 60.0), 0.0, 1e-9);
  board->crook = -6.0;
  g_assert_cmpfloat_with_epsilon (bs_saw_straighten (plan, board, 1000.0), 1.5, 1e-9);
  plan->shop.saw.first = BS_SAW_FIRST_RIP; /* before it is crosscut */
  g_assert_cmpfloat_with_epsilon (bs_saw_straighten (plan, board, 1000.0), 6.0, 1e-9);
}

/* One milled long ago, one laid out here, one that is still to be cut. */
static void
test_milled (void)
{
  const int counts[] = { 0, 1, 1 };
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (GArray) wishes = NULL;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 0);
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    rack_add_lamination (plan, 900.0, 45.0, 60.0);
  for (guint i = 0; i < 2; i++)
    bs_text_set (&((BsLamination *)plan->laminations->pdata[i])->board, "board-1");
  rack_add_cut (plan, "board-1", "lamination-2", 25.0, 0.0, 900.0, 60.0);
  wishes = bs_saw_wishes_new (plan);
  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    g_assert_cmpint (g_array_index (wishes, BsSawWish, i).count, ==, counts[i]);
}

typedef struct
{
  const char *name;
  const char *wood;
  double length, width, thickness;
  BsSawLackKind kind;
  double needed, most;
} Lack;

/* A board of 2000 x 200 x 52: 1950 between the trims, 200 across, 51 planed. */
static const Lack lacks[] = {
  { "none", "beech", 1950.0, 200.0, 51.0, BS_SAW_LACK_NONE, 0.0, 0.0 },
  { "wood", "ash", 900.0, 60.0, 45.0, BS_SAW_LACK_WOOD, 0.0, 0.0 },
  { "length", "beech", 1951.0, 60.0, 45.0, BS_SAW_LACK_LENGTH, 1951.0, 1950.0 },
  { "width", "beech", 900.0, 201.0, 45.0, BS_SAW_LACK_WIDTH, 201.0, 200.0 },
  { "thickness", "beech", 900.0, 60.0, 51.5, BS_SAW_LACK_THICKNESS, 51.5, 51.0 },
};

static void
test_lack (gconstpointer data)
{
  const Lack *row = data;
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (GArray) wishes = NULL;
  BsPart *part = rack_add_part (plan, 1, row->length, row->width, row->thickness);
  BsSawLack lack;

  rack_add_board (plan, 800.0, 70.0, 27.0, 0); /* never the better one */
  rack_add_board (plan, 2000.0, 200.0, 52.0, 0);
  bs_text_set (&part->wood, row->wood);
  wishes = bs_saw_wishes_new (plan);
  lack = bs_saw_lack (plan, &g_array_index (wishes, BsSawWish, 0));
  g_assert_cmpint (lack.kind, ==, row->kind);
  if (row->kind == BS_SAW_LACK_NONE || row->kind == BS_SAW_LACK_WOOD)
    return;
  g_assert_cmpfloat_with_epsilon (lack.needed, row->needed, 1e-9);
  g_assert_cmpfloat_with_epsilon (lack.most, row->most, 1e-9);
}

/* A board that a lamination without a cut names was milled before; one with a cut of its own can
 * still be sawn, and so can the board once the lamination names another. */
static void
test_used_up (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 2000.0, 200.0, 52.0, 0);
  BsLamination *lamination = bs_lamination_new ("milled");
  BsCut cut = { .length = 500.0, .width = 60.0 };

  bs_text_set (&lamination->board, board->id);
  g_ptr_array_add (plan->laminations, lamination);
  rack_add_part (plan, 1, 900.0, 60.0, 45.0);
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);
  const BsSawWish *part = &g_array_index (wishes, BsSawWish, wishes->len - 1);

  g_assert_true (bs_saw_is_used_up (plan, board));
  g_assert_cmpint (bs_saw_board_lack (plan, board, part).kind, ==, BS_SAW_LACK_USED);
  g_assert_cmpint (bs_saw_lack (plan, part).kind, ==, BS_SAW_LACK_WOOD);

  bs_text_set (&cut.board, board->id);
  bs_text_set (&cut.piece, "milled");
  bs_plan_add_cut (plan, &cut);
  g_assert_false (bs_saw_is_used_up (plan, board));
  g_array_set_size (plan->cuts, 0);
  bs_text_set (&lamination->board, "another");
  g_assert_false (bs_saw_is_used_up (plan, board));
  g_assert_cmpint (bs_saw_lack (plan, part).kind, ==, BS_SAW_LACK_NONE);
  bs_text_clear (&cut.board);
  bs_text_clear (&cut.piece);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sawing-wish/round-up", test_round_up);
  g_test_add_func ("/sawing-wish/used-up", test_used_up);
  g_test_add_func ("/sawing-wish/kerf", test_kerf);
  g_test_add_func ("/sawing-wish/rough-size", test_rough_size);
  g_test_add_func ("/sawing-wish/demands", test_demands);
  g_test_add_func ("/sawing-wish/reach", test_reach);
  g_test_add_func ("/sawing-wish/milled", test_milled);
  for (guint i = 0; i < G_N_ELEMENTS (lacks); i++)
    {
      g_autofree char *path = g_strdup_printf ("/sawing-wish/lack/%s", lacks[i].name);
      g_test_add_data_func (path, &lacks[i], test_lack);
    }
  return g_test_run ();
}
