/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits.h"

#include "core/text.h"
#include "plan/check.h"
#include "plan/document.h"

#include <math.h>
#include <string.h>

/* A plan with laminations a to h, of which a to f lie in the slab, and one pack of c and d. */
static BsPlan *
make_plan (void)
{
  BsPlan *plan = bs_plan_new ();
  const BsPack pack = { .first = 2, .count = 2 };
  BsWood *wood = bs_wood_new ("oak");

  bs_text_set (&wood->name, "Oak");
  g_ptr_array_add (plan->woods, wood);
  BsBoard *board = bs_board_new ("plank");
  bs_text_set (&board->wood, "oak");
  board->length = 2000.0;
  board->width = 200.0;
  board->thickness = 50.0;
  g_ptr_array_add (plan->boards, board);
  for (int id = 'a'; id <= 'h'; id++)
    {
      const char name[] = { (char)id, '\0' };
      BsLamination *lamination = bs_lamination_new (name);
      bs_text_set (&lamination->wood, "oak");
      bs_text_set (&lamination->board, "plank");
      lamination->length = 1000.0;
      lamination->thickness = 40.0;
      lamination->height = 60.0;
      g_ptr_array_add (plan->laminations, lamination);
      if (id <= 'f')
        bs_plan_insert_placement (plan, id - 'a', name, BS_ORIENTATION_AS_MARKED, 0.0);
    }
  g_array_append_val (plan->packs, pack);
  return plan;
}

/* "abcdef 2+2": the order and the packs. */
static char *
describe (const BsPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->order->len; i++)
    g_string_append (text, g_array_index (plan->order, BsPlacement, i).lamination);
  for (guint i = 0; i < plan->packs->len; i++)
    {
      const BsPack *pack = &g_array_index (plan->packs, BsPack, i);
      g_string_append_printf (text, " %d+%d", pack->first, pack->count);
    }
  return g_string_free (text, FALSE);
}

/* The edit left the plan given alone, and what it made can be saved and opened again. */
static void
check_edit (const BsPlan *plan, BsPlan *edited, const char *wanted)
{
  g_autofree char *before = describe (plan);
  g_autofree char *after = describe (edited);
  g_autofree char *text = bs_document_write (edited);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) opened = bs_document_parse (text, strlen (text), &error);

  g_assert_cmpstr (before, ==, "abcdef 2+2");
  g_assert_cmpstr (after, ==, wanted);
  g_assert_no_error (error);
  g_assert_nonnull (opened);
}

typedef struct
{
  int from, to;
  const char *wanted;
} MoveRow;

static const MoveRow move_rows[] = {
  { 0, 5, "bcdefa 1+2" }, { 5, 0, "fabcde 3+2" }, { 0, 1, "bacdef 2+2" },
  { 2, 3, "abdcef 2+2" }, { 3, 2, "abdcef 2+2" }, /* within the pack */
  { 0, 2, "bcadef 1+3" },                         /* between the two of the pack */
  { 5, 3, "abcfde 2+3" }, { 2, 5, "abdefc" },     /* one of two leaves */
  { 4, 4, "abcdef 2+2" },
};

static void
test_move (gconstpointer data)
{
  const MoveRow *row = data;
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) edited = bs_edit_move (plan, row->from, row->to);

  check_edit (plan, edited, row->wanted);
  g_assert_true ((plan == edited) == (row->from == row->to));
  g_assert_cmpstr (g_array_index (edited->order, BsPlacement, row->to).lamination, ==,
                   g_array_index (plan->order, BsPlacement, row->from).lamination);
}

/* Each turn undoes itself, and two of them make the third. */
static void
test_turn (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) once = bs_edit_turn (plan, 1, BS_ORIENTATION_OVER);
  g_autoptr (BsPlan) twice = bs_edit_turn (once, 1, BS_ORIENTATION_END_FOR_END);
  g_autoptr (BsPlan) back = bs_edit_turn (twice, 1, BS_ORIENTATION_OVER_AND_END);
  g_autoptr (BsPlan) same = bs_edit_turn (plan, 1, BS_ORIENTATION_AS_MARKED);

  g_assert_cmpint (g_array_index (plan->order, BsPlacement, 1).orientation, ==,
                   BS_ORIENTATION_AS_MARKED);
  g_assert_cmpint (g_array_index (once->order, BsPlacement, 1).orientation, ==,
                   BS_ORIENTATION_OVER);
  g_assert_cmpint (g_array_index (twice->order, BsPlacement, 1).orientation, ==,
                   BS_ORIENTATION_OVER_AND_END);
  g_assert_cmpint (g_array_index (back->order, BsPlacement, 1).orientation, ==,
                   BS_ORIENTATION_AS_MARKED);
  g_assert_true (same == plan);
}

static void
test_set_start (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) edited = bs_edit_set_start (plan, 3, 12.5);
  g_autoptr (BsPlan) same = bs_edit_set_start (edited, 3, 12.5);

  check_edit (plan, edited, "abcdef 2+2");
  g_assert_cmpfloat_with_epsilon (g_array_index (edited->order, BsPlacement, 3).start, 12.5, 1e-12);
  g_assert_true (same == edited);
}

typedef struct
{
  int place;
  const char *wanted;
} PlaceRow;

static const PlaceRow aside_rows[] = {
  { 0, "bcdef 1+2" },
  { 2, "abdef" },
  { 3, "abcef" },
  { 5, "abcde 2+2" },
};

static void
test_set_aside (gconstpointer data)
{
  const PlaceRow *row = data;
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) edited = bs_edit_set_aside (plan, row->place);

  check_edit (plan, edited, row->wanted);
  g_assert_cmpuint (edited->laminations->len, ==, 8);
}

static const PlaceRow back_rows[] = {
  { 0, "gabcdef 3+2" }, { 2, "abgcdef 3+2" }, { 3, "abcgdef 2+3" },
  { 4, "abcdgef 2+2" }, { 6, "abcdefg 2+2" },
};

static void
test_bring_back (gconstpointer data)
{
  const PlaceRow *row = data;
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) edited = bs_edit_bring_back (plan, "g", row->place);

  check_edit (plan, edited, row->wanted);
}

static void
test_set_order (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  const BsPlacement order[] = {
    { .lamination = (GRefString *)"h", .orientation = BS_ORIENTATION_OVER },
    { .lamination = (GRefString *)"b", .start = 3.0 },
  };
  g_autoptr (BsPlan) edited = bs_edit_set_order (plan, order, G_N_ELEMENTS (order));
  g_autoptr (BsPlan) same = bs_edit_set_order (edited, order, G_N_ELEMENTS (order));

  check_edit (plan, edited, "hb");
  g_assert_cmpint (g_array_index (edited->order, BsPlacement, 0).orientation, ==,
                   BS_ORIENTATION_OVER);
  g_assert_cmpfloat_with_epsilon (g_array_index (edited->order, BsPlacement, 1).start, 3.0, 1e-12);
  g_assert_true (same == edited);
}

static void
test_set_packs (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  const BsPack packs[] = { { .first = 0, .count = 3 }, { .first = 4, .count = 2 } };
  g_autoptr (BsPlan) edited = bs_edit_set_packs (plan, packs, G_N_ELEMENTS (packs));
  g_autoptr (BsPlan) same = bs_edit_set_packs (edited, packs, G_N_ELEMENTS (packs));
  g_autoptr (BsPlan) none = bs_edit_set_packs (edited, NULL, 0);

  check_edit (plan, edited, "abcdef 0+3 4+2");
  check_edit (plan, none, "abcdef");
  g_assert_true (same == edited);
}

static BsLamination *
copy_lamination (const BsPlan *plan, const char *id)
{
  return bs_lamination_copy (bs_plan_find_lamination (plan, id));
}

static void
test_put_lamination (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsLamination) changed = copy_lamination (plan, "b");
  g_autoptr (BsLamination) unchanged = copy_lamination (plan, "b");
  g_autoptr (BsLamination) added = bs_lamination_new ("i");
  changed->crook = 2.0;
  added->length = 900.0;
  added->thickness = 40.0;
  added->height = 60.0;

  g_autoptr (BsPlan) edited = bs_edit_put_lamination (plan, changed);
  g_autoptr (BsPlan) same = bs_edit_put_lamination (plan, unchanged);
  g_autoptr (BsPlan) longer = bs_edit_put_lamination (plan, added);

  check_edit (plan, edited, "abcdef 2+2");
  check_edit (plan, longer, "abcdef 2+2");
  g_assert_cmpfloat_with_epsilon (bs_plan_find_lamination (edited, "b")->crook, 2.0, 1e-12);
  g_assert_cmpuint (edited->laminations->len, ==, 8);
  g_assert_cmpuint (longer->laminations->len, ==, 9);
  g_assert_true (same == plan);
}

/* A lamination that becomes smaller loses what of its defects it no longer has. */
static void
test_put_lamination_fits_defects (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsLamination) changed = copy_lamination (plan, "b");
  const BsDefect partly = { BS_DEFECT_KNOT, BS_FACE_TOP, 480.0, 520.0, 10.0, 60.0, 1.0, NULL };
  const BsDefect beyond = { BS_DEFECT_KNOT, BS_FACE_LEFT, 510.0, 520.0, 10.0, 20.0, 1.0, NULL };
  g_array_append_val (changed->defects, partly);
  g_array_append_val (changed->defects, beyond);
  changed->length = 500.0;
  changed->height = 30.0;
  changed->taper = -40.0;

  g_autoptr (BsPlan) edited = bs_edit_put_lamination (plan, changed);
  const BsLamination *fitted = bs_plan_find_lamination (edited, "b");
  check_edit (plan, edited, "abcdef 2+2");
  g_assert_cmpuint (fitted->defects->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (fitted->defects, BsDefect, 0).x_to, 500.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (g_array_index (fitted->defects, BsDefect, 0).across_to, 40.0,
                                  1e-12);
  g_assert_cmpfloat (fitted->height + fitted->taper, >, 0.0);
  g_assert_cmpuint (changed->defects->len, ==, 2);
}

/* What a window does that sets one field after the other. */
static void
test_fit (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) fitted = bs_edit_fit (plan);
  g_assert_true (fitted == plan);

  g_autoptr (BsPlan) set = bs_plan_copy (plan);
  BsLamination *changed = copy_lamination (plan, "c");
  const BsDefect backwards = { BS_DEFECT_KNOT, BS_FACE_TOP, 520.0, 480.0, 30.0, 10.0, 1.0, NULL };
  g_array_append_val (changed->defects, backwards);
  bs_lamination_unref (set->laminations->pdata[2]);
  set->laminations->pdata[2] = changed;
  set->adhesive.open_s = 1200.0;

  g_autoptr (BsPlan) whole = bs_edit_fit (set);
  const BsDefect *defect
      = &g_array_index (bs_plan_find_lamination (whole, "c")->defects, BsDefect, 0);
  check_edit (set, whole, "abcdef 2+2");
  g_assert_cmpfloat_with_epsilon (defect->x_from, 480.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (defect->x_to, 520.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (defect->across_to, 30.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (whole->adhesive.total_s, 1200.0, 1e-12);
}

static void
test_remove_lamination (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) placed = bs_edit_remove_lamination (plan, "a");
  g_autoptr (BsPlan) in_rack = bs_edit_remove_lamination (plan, "h");

  check_edit (plan, placed, "bcdef 1+2");
  check_edit (plan, in_rack, "abcdef 2+2");
  g_assert_null (bs_plan_find_lamination (placed, "a"));
  g_assert_null (bs_plan_find_lamination (in_rack, "h"));
}

static void
test_texts (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) named = bs_edit_set_name (plan, "Counter");
  g_autoptr (BsPlan) noted = bs_edit_set_note (named, "By the door");
  g_autoptr (BsPlan) priced = bs_edit_set_currency (noted, "NOK");
  g_autoptr (BsPlan) edited = bs_edit_set_units (priced, BS_UNIT_SYSTEM_INCH);
  g_autoptr (BsPlan) same = bs_edit_set_name (named, "Counter");

  check_edit (plan, edited, "abcdef 2+2");
  g_assert_cmpstr (edited->name, ==, "Counter");
  g_assert_cmpstr (edited->note, ==, "By the door");
  g_assert_cmpstr (edited->currency, ==, "NOK");
  g_assert_cmpint (edited->units, ==, BS_UNIT_SYSTEM_INCH);
  g_assert_cmpstr (plan->name, ==, "");
  g_assert_true (same == named);
}

static void
test_set_slab (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  bs_text_set (&plan->slab.unknown, "{\"later\": 1}");
  BsSlab slab = plan->slab;
  slab.length = 950.0;
  slab.unknown = NULL;

  g_autoptr (BsPlan) edited = bs_edit_set_slab (plan, &slab);
  g_autoptr (BsPlan) same = bs_edit_set_slab (edited, &slab);
  check_edit (plan, edited, "abcdef 2+2");
  g_assert_cmpfloat_with_epsilon (edited->slab.length, 950.0, 1e-12);
  g_assert_cmpstr (edited->slab.unknown, ==, "{\"later\": 1}");
  g_assert_true (same == edited);
}

/* The range of hardness is never upside down; an end that is not said stays so. */
static void
test_set_hardness (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  BsSlab slab = plan->slab;

  slab.hardness_low_n = 5000.0;
  g_autoptr (BsPlan) open = bs_edit_set_slab (plan, &slab);
  g_assert_true (isnan (open->slab.hardness_high_n));
  slab.hardness_high_n = 4000.0;
  g_autoptr (BsPlan) edited = bs_edit_set_slab (plan, &slab);
  g_assert_cmpfloat_with_epsilon (edited->slab.hardness_high_n, 5000.0, 1e-12);
}

static void
test_set_shop (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsClampKind) clamp = bs_clamp_kind_new ("bar");
  *clamp = (BsClampKind){ clamp->id, NULL, 4, 5000.0, 700.0, 30.0, 30.0, 12.0, 3.0, NULL };
  g_autoptr (BsPlan) clamped = bs_edit_put_clamp (plan, clamp);
  BsShop shop = plan->shop;
  shop.people = 3;

  g_autoptr (BsPlan) edited = bs_edit_set_shop (clamped, &shop);
  g_autoptr (BsPlan) same = bs_edit_set_shop (edited, &shop);
  check_edit (plan, edited, "abcdef 2+2");
  g_assert_cmpint (edited->shop.people, ==, 3);
  g_assert_cmpuint (edited->shop.clamps->len, ==, 1);
  g_assert_true (same == edited);
}

/* Typing an open time above the total one must not leave a plan that cannot be opened. */
static void
test_set_adhesive (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  BsAdhesive adhesive = plan->adhesive;
  adhesive.open_s = 900.0;
  adhesive.min_pressure_mpa = 2.0;

  g_autoptr (BsPlan) edited = bs_edit_set_adhesive (plan, &adhesive);
  g_autoptr (BsPlan) same = bs_edit_set_adhesive (edited, &edited->adhesive);
  check_edit (plan, edited, "abcdef 2+2");
  g_assert_cmpfloat_with_epsilon (edited->adhesive.total_s, 900.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (edited->adhesive.max_pressure_mpa, 2.0, 1e-12);
  g_assert_true (same == edited);
}

static void
test_clamps (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsClampKind) bar = bs_clamp_kind_new ("bar");
  g_autoptr (BsClampKind) pipe = bs_clamp_kind_new ("pipe");
  *bar = (BsClampKind){ bar->id, NULL, 4, 5000.0, 700.0, 30.0, 30.0, 12.0, 3.0, NULL };
  *pipe = (BsClampKind){ pipe->id, NULL, 2, 4000.0, 700.0, 30.0, 30.0, 12.0, 3.0, NULL };

  g_autoptr (BsPlan) one = bs_edit_put_clamp (plan, bar);
  g_autoptr (BsPlan) two = bs_edit_put_clamp (one, pipe);
  g_autoptr (BsPlan) same = bs_edit_put_clamp (two, bar);
  g_autoptr (BsPlan) left = bs_edit_remove_clamp (two, "bar");
  check_edit (plan, two, "abcdef 2+2");
  g_assert_cmpuint (two->shop.clamps->len, ==, 2);
  g_assert_true (same == two);
  g_assert_cmpuint (left->shop.clamps->len, ==, 1);
  g_assert_cmpstr (((BsClampKind *)left->shop.clamps->pdata[0])->id, ==, "pipe");
}

static void
test_cauls (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsCaulKind) caul = bs_caul_kind_new ("oak");
  *caul = (BsCaulKind){ caul->id, NULL, 2, 1000.0, 50.0, 60.0, 12000.0, NULL };

  g_autoptr (BsPlan) with = bs_edit_put_caul (plan, caul);
  g_autoptr (BsPlan) without = bs_edit_remove_caul (with, "oak");
  check_edit (plan, with, "abcdef 2+2");
  g_assert_cmpuint (with->shop.cauls->len, ==, 1);
  g_assert_cmpuint (without->shop.cauls->len, ==, 0);
}

static void
test_woods (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsWood) ash = bs_wood_new ("ash");
  bs_text_set (&ash->name, "Ash");

  g_autoptr (BsPlan) with = bs_edit_put_wood (plan, ash);
  g_autoptr (BsPlan) without = bs_edit_remove_wood (with, "oak");
  check_edit (plan, with, "abcdef 2+2");
  check_edit (plan, without, "abcdef 2+2");
  g_assert_cmpuint (with->woods->len, ==, 2);
  g_assert_null (bs_plan_find_lamination (without, "a")->wood);
  g_assert_null (((BsBoard *)without->boards->pdata[0])->wood);
  g_assert_cmpstr (bs_plan_find_lamination (plan, "a")->wood, ==, "oak");
}

static void
test_boards (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsBoard) board = bs_board_new ("offcut");
  board->length = 400.0;
  board->width = 100.0;
  board->thickness = 27.0;

  g_autoptr (BsPlan) with = bs_edit_put_board (plan, board);
  g_autoptr (BsPlan) without = bs_edit_remove_board (with, "plank");
  check_edit (plan, with, "abcdef 2+2");
  check_edit (plan, without, "abcdef 2+2");
  g_assert_cmpuint (with->boards->len, ==, 2);
  g_assert_null (bs_plan_find_lamination (without, "a")->board);
}

/* What was of a removed wood is of none; defects stay on their board; widths in order. */
static void
test_offers_and_parts (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsOffer) offer = bs_offer_new ("rough");
  g_autoptr (BsPart) part = bs_part_new ("leg");

  bs_text_set (&offer->wood, "oak");
  offer->thickness = 52.0;
  offer->width_least = 200.0;
  offer->width_most = 150.0;
  bs_text_set (&part->wood, "oak");
  part->count = 4;
  part->length = 700.0;
  part->width = 90.0;
  part->thickness = 45.0;

  g_autoptr (BsPlan) offered = bs_edit_put_offer (plan, offer);
  g_autoptr (BsPlan) wanted = bs_edit_put_part (offered, part);
  g_autoptr (BsPlan) same = bs_edit_put_part (wanted, part);
  g_autoptr (BsPlan) felled = bs_edit_remove_wood (wanted, "oak");
  g_autoptr (BsPlan) without = bs_edit_remove_offer (wanted, "rough");
  check_edit (plan, wanted, "abcdef 2+2");
  check_edit (plan, felled, "abcdef 2+2");
  check_edit (plan, without, "abcdef 2+2");
  g_assert_cmpfloat (((BsOffer *)wanted->offers->pdata[0])->width_most, >=, 200.0);
  g_assert_true (same == wanted);
  g_assert_null (((BsOffer *)felled->offers->pdata[0])->wood);
  g_assert_null (bs_plan_find_part (felled, "leg")->wood);
  g_assert_cmpuint (without->offers->len, ==, 0);
}

static void
test_board_fits_defects (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsBoard) board = bs_board_copy (bs_plan_find_board (plan, "plank"));
  const BsDefect knot = { .face = BS_FACE_TOP, .x_from = 30, .x_to = 60, .across_to = 250 };
  const BsDefect wane = { .face = BS_FACE_LEFT, .x_from = 2100, .x_to = 2200, .across_to = 9 };

  g_array_append_val (board->defects, knot);
  g_array_append_val (board->defects, wane);
  g_autoptr (BsPlan) edited = bs_edit_put_board (plan, board);
  check_edit (plan, edited, "abcdef 2+2");

  const GArray *defects = bs_plan_find_board (edited, "plank")->defects;
  g_assert_cmpuint (defects->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (defects, BsDefect, 0).across_to, 200.0, 1e-9);
}

/* Cuts go with what they belong to, and there are never more than pieces are wanted. */
static void
test_cuts (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPart) part = bs_part_new ("leg");
  g_autoptr (BsPart) fewer = bs_part_new ("leg");
  const BsCut cuts[] = {
    { .board = g_ref_string_new_intern ("plank"),
      .piece = g_ref_string_new_intern ("a"),
      .length = 1010,
      .width = 70 },
    { .board = g_ref_string_new_intern ("plank"),
      .piece = g_ref_string_new_intern ("a"),
      .x = 1013,
      .length = 1010 },
    { .board = g_ref_string_new_intern ("plank"),
      .piece = g_ref_string_new_intern ("leg"),
      .y = 73,
      .length = 700 },
    { .board = g_ref_string_new_intern ("plank"),
      .piece = g_ref_string_new_intern ("leg"),
      .y = 103,
      .length = 700 },
    { .board = g_ref_string_new_intern ("plank"),
      .piece = g_ref_string_new_intern ("nobody"),
      .length = 700 },
  };

  part->count = 2;
  fewer->count = 1;
  g_autoptr (BsPlan) wanted = bs_edit_put_part (plan, part);
  g_autoptr (BsPlan) cut = bs_edit_set_cuts (wanted, cuts, G_N_ELEMENTS (cuts));
  g_autoptr (BsPlan) again = bs_edit_set_cuts (cut, cuts, G_N_ELEMENTS (cuts));
  g_autoptr (BsPlan) one_leg = bs_edit_put_part (cut, fewer);
  g_autoptr (BsPlan) without_a = bs_edit_remove_lamination (cut, "a");
  g_autoptr (BsPlan) without_leg = bs_edit_remove_part (cut, "leg");
  g_autoptr (BsPlan) without_plank = bs_edit_remove_board (cut, "plank");
  g_assert_cmpuint (cut->cuts->len, ==, 3);
  g_assert_true (again == cut);
  g_assert_cmpuint (one_leg->cuts->len, ==, 2);
  g_assert_cmpuint (without_a->cuts->len, ==, 2);
  g_assert_cmpuint (without_leg->cuts->len, ==, 1);
  g_assert_cmpuint (without_plank->cuts->len, ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (cuts); i++)
    {
      g_ref_string_release (cuts[i].board);
      g_ref_string_release (cuts[i].piece);
    }
}

/* Long chains of edits never leave what cannot be opened. */
static void
test_random_chain (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);
  g_autoptr (BsPlan) plan = make_plan ();

  for (guint i = 0; i < 3000; i++)
    {
      const int n = (int)plan->order->len;
      BsPlan *edited = NULL;
      const char id[] = { (char)g_rand_int_range (random, 'a', 'i'), '\0' };

      if (g_rand_boolean (random) && n > 1)
        edited
            = bs_edit_move (plan, g_rand_int_range (random, 0, n), g_rand_int_range (random, 0, n));
      else if (g_rand_boolean (random) && n > 1)
        edited = bs_edit_set_aside (plan, g_rand_int_range (random, 0, n));
      else if (bs_plan_find_place (plan, id) < 0)
        edited = bs_edit_bring_back (plan, id, g_rand_int_range (random, 0, n + 1));
      else if (n >= 4)
        {
          const BsPack packs[] = { { 0, 2 }, { 2, n - 2 }, { n - 2, 2 } };
          edited = bs_edit_set_packs (plan, packs, n > 4 ? 3 : 2);
        }
      else
        continue;

      g_autoptr (GError) error = NULL;
      g_assert_true (bs_check_plan (edited, &error));
      g_assert_no_error (error);
      bs_plan_unref (plan);
      plan = edited;
    }
}

static void
add_rows (const char *name, const PlaceRow *rows, guint n, GTestDataFunc test)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *path = g_strdup_printf ("/edits/%s/%d", name, rows[i].place);
      g_test_add_data_func (path, &rows[i], test);
    }
}

/* One step for any number of laminations; a wood that the plan has keeps its figures there. */
static void
test_use_wood (void)
{
  static const char *const some[] = { "a", "c", NULL };
  static const char *const nobody[] = { NULL };
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsWood) ash = bs_wood_new ("ash");

  bs_text_set (&ash->name, "Ash");
  for (const char *id = "abc"; *id != '\0'; id++)
    {
      const char text[] = { *id, '\0' };
      g_ptr_array_add (plan->laminations, bs_lamination_new (text));
    }
  g_autoptr (BsPlan) used = bs_edit_use_wood (plan, ash, some);
  g_assert_cmpstr (bs_plan_find_lamination (used, "a")->wood, ==, "ash");
  g_assert_null (bs_plan_find_lamination (used, "b")->wood);
  g_assert_cmpstr (bs_plan_find_lamination (used, "c")->wood, ==, "ash");
  g_assert_null (bs_plan_find_lamination (plan, "a")->wood);
  g_assert_cmpuint (used->woods->len, ==, 1);

  g_autoptr (BsWood) other = bs_wood_copy (ash);
  other->side_hardness_n = 5000.0;
  g_autoptr (BsPlan) again = bs_edit_use_wood (used, other, some);
  g_assert_true (again == used);
  g_autoptr (BsPlan) taken = bs_edit_use_wood (plan, ash, nobody);
  g_assert_cmpuint (taken->woods->len, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (move_rows); i++)
    {
      g_autofree char *path
          = g_strdup_printf ("/edits/move/%d-to-%d", move_rows[i].from, move_rows[i].to);
      g_test_add_data_func (path, &move_rows[i], test_move);
    }
  add_rows ("set-aside", aside_rows, G_N_ELEMENTS (aside_rows), test_set_aside);
  add_rows ("bring-back", back_rows, G_N_ELEMENTS (back_rows), test_bring_back);
  g_test_add_func ("/edits/turn", test_turn);
  g_test_add_func ("/edits/set-start", test_set_start);
  g_test_add_func ("/edits/set-order", test_set_order);
  g_test_add_func ("/edits/set-packs", test_set_packs);
  g_test_add_func ("/edits/put-lamination", test_put_lamination);
  g_test_add_func ("/edits/put-lamination/fits-defects", test_put_lamination_fits_defects);
  g_test_add_func ("/edits/fit", test_fit);
  g_test_add_func ("/edits/remove-lamination", test_remove_lamination);
  g_test_add_func ("/edits/texts", test_texts);
  g_test_add_func ("/edits/set-slab", test_set_slab);
  g_test_add_func ("/edits/set-hardness", test_set_hardness);
  g_test_add_func ("/edits/set-shop", test_set_shop);
  g_test_add_func ("/edits/set-adhesive", test_set_adhesive);
  g_test_add_func ("/edits/clamps", test_clamps);
  g_test_add_func ("/edits/cauls", test_cauls);
  g_test_add_func ("/edits/woods", test_woods);
  g_test_add_func ("/edits/boards", test_boards);
  g_test_add_func ("/edits/boards/fits-defects", test_board_fits_defects);
  g_test_add_func ("/edits/offers-and-parts", test_offers_and_parts);
  g_test_add_func ("/edits/cuts", test_cuts);
  g_test_add_func ("/edits/random-chain", test_random_chain);
  g_test_add_func ("/edits/use-wood", test_use_wood);
  return g_test_run ();
}
