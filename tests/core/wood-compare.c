/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/wood-compare.h"

#include "core/moisture.h"
#include "shops.h"

#include <math.h>
#include <string.h>

/* A slab 2000 x 600 x 60 mm that goes from 8 to 12 % over the year, of a wood of round figures. */
static BsWoodWish
usual_wish (void)
{
  return (BsWoodWish){
    .length = 2000.0,
    .width = 600.0,
    .thickness = 60.0,
    .gross = 0.15e9,
    .dry_pct = 8.0,
    .damp_pct = 12.0,
    .ring_cos2 = NAN,
    .hardness_low_n = BS_HARDNESS_LOW_N,
    .hardness_high_n = BS_HARDNESS_HIGH_N,
    .limits = { NAN, NAN, NAN, NAN, FALSE },
  };
}

static BsWood *
new_wood (void)
{
  BsWood *wood = bs_wood_new ("wood");

  bs_text_set (&wood->source, "made up");
  wood->is_hardwood = TRUE;
  wood->sg_12 = 0.60;
  wood->side_hardness_n = 4000.0;
  wood->moe_mpa = 12000.0;
  wood->coef_radial = 0.001;
  wood->coef_tangential = 0.003;
  wood->bond = BS_BOND_WELL;
  wood->price_minor_per_m3 = 200000.0;
  return wood;
}

/* Volume 0.072 m3. Inertia 600 x 60^3 / 12 = 1.08e7: 1000 x 2000^3 / (48 x 12000 x 1.08e7) = 1.286
 * mm. Movement 600 x 4 x 0.002 (0.001 to 0.003). Cost 0.15 x 200000. */
static void
test_figures (void)
{
  g_autoptr (BsWood) wood = new_wood ();
  BsWoodWish wish = usual_wish ();
  BsWoodCard card = bs_wood_compare (wood, &wish, NAN);

  g_assert_cmpfloat_with_epsilon (card.hardness_n, 4000.0, 1e-12);
  g_assert_false (card.is_hardness_estimated);
  g_assert_cmpfloat_with_epsilon (card.slab_kg, 0.072 * bs_moisture_density (0.60, 10.0), 1e-9);
  g_assert_cmpfloat_with_epsilon (card.sag_per_kn, 1.28601, 1e-5);
  g_assert_cmpfloat_with_epsilon (card.movement, 4.8, 1e-9);
  g_assert_cmpfloat_with_epsilon (card.movement_low, 2.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (card.movement_high, 7.2, 1e-9);
  g_assert_cmpfloat_with_epsilon (card.cost_minor, 30000.0, 1e-6);
  g_assert_cmpint (card.planing, ==, BS_PLANING_MODERATE);
  g_assert_cmpint (card.unfit, ==, 0);
}

/* Each wish alone, missed by a little; a wish that is met, or whose figure is not known, is no
 * reason. */
typedef struct
{
  const char *path;
  gsize offset; /* in the wish */
  double met, missed;
  BsUnfit wanted;
} WishRow;

#define WISH(member) G_STRUCT_OFFSET (BsWoodWish, member)

static const WishRow wish_rows[] = {
  { "soft", WISH (hardness_low_n), 4000.0, 4001.0, BS_UNFIT_SOFT },
  { "hard", WISH (hardness_high_n), 4000.0, 3999.0, BS_UNFIT_HARD },
  { "heavy", WISH (limits.max_kg), 49.0, 45.0, BS_UNFIT_HEAVY },
  { "moves", WISH (limits.max_movement), 4.9, 4.7, BS_UNFIT_MOVES },
  { "dear", WISH (limits.max_cost_minor), 30001.0, 29999.0, BS_UNFIT_DEAR },
  { "thin", WISH (limits.rough_thickness), 50.0, 51.0, BS_UNFIT_THIN },
};

static void
test_wish (gconstpointer data)
{
  const WishRow *row = data;
  g_autoptr (BsWood) wood = new_wood ();
  BsWoodWish wish = usual_wish ();

  G_STRUCT_MEMBER (double, &wish, row->offset) = row->met;
  g_assert_cmpint (bs_wood_compare (wood, &wish, 50.0).unfit, ==, 0);
  G_STRUCT_MEMBER (double, &wish, row->offset) = row->missed;
  g_assert_cmpint (bs_wood_compare (wood, &wish, 50.0).unfit, ==, row->wanted);
}

static void
test_not_known (void)
{
  g_autoptr (BsWood) wood = bs_wood_new ("nothing known");
  BsWoodWish wish = usual_wish ();
  wish.limits.max_kg = 1.0;
  wish.limits.max_movement = 0.0;
  wish.limits.max_cost_minor = 0.0;
  wish.limits.rough_thickness = 100.0;
  BsWoodCard card = bs_wood_compare (wood, &wish, NAN);
  BsWorking why;

  g_assert_cmpint (card.unfit, ==, BS_UNFIT_HARDNESS_UNKNOWN);
  g_assert_cmpint (card.planing, ==, BS_PLANING_UNKNOWN);
  bs_wood_explain_hardness (&card, &wish, &why);
  g_assert_true (isnan (why.value));
  bs_wood_explain_movement (&card, &wish, &why);
  g_assert_true (isnan (why.value));
}

static void
test_bond (void)
{
  g_autoptr (BsWood) wood = new_wood ();
  BsWoodWish wish = usual_wish ();

  wood->bond = BS_BOND_DIFFICULT;
  g_assert_cmpint (bs_wood_compare (wood, &wish, NAN).unfit, ==, BS_UNFIT_BOND);
  wish.limits.may_bond_difficult = TRUE;
  g_assert_cmpint (bs_wood_compare (wood, &wish, NAN).unfit, ==, 0);
}

static void
test_planing (void)
{
  static const struct
  {
    double hardness;
    BsPlaning wanted;
  } rows[] = { { 3000.0, BS_PLANING_LIGHT },
               { 3001.0, BS_PLANING_MODERATE },
               { 4201.0, BS_PLANING_HARD },
               { 6500.0, BS_PLANING_HARD },
               { 6501.0, BS_PLANING_VERY_HARD } };
  g_autoptr (BsWood) wood = new_wood ();
  BsWoodWish wish = usual_wish ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      wood->side_hardness_n = rows[i].hardness;
      g_assert_cmpint (bs_wood_compare (wood, &wish, NAN).planing, ==, rows[i].wanted);
    }
}

/* Known rings leave no range. */
static void
test_rings (void)
{
  g_autoptr (BsWood) wood = new_wood ();
  BsWoodWish wish = usual_wish ();
  wish.ring_cos2 = 1.0;
  BsWoodCard card = bs_wood_compare (wood, &wish, NAN);
  BsWorking why;

  g_assert_cmpfloat_with_epsilon (card.movement, 2.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (card.movement_high, 2.4, 1e-9);
  bs_wood_explain_movement (&card, &wish, &why);
  g_assert_cmpfloat_with_epsilon (
      why.value,
      why.terms[0].value * why.terms[1].value * (why.terms[2].value - why.terms[3].value), 1e-9);
}

/* Each working gives its number again from its own terms: m = rho L W T; s = F L3 / 4 E W T3 (the
 * beam of /wood-compare/figures, 1.286 mm by hand); K = G k, 0.15 m3 at 2000.00. */
static void
test_explained (void)
{
  g_autoptr (BsWood) wood = new_wood ();
  BsWoodWish wish = usual_wish ();
  BsWoodCard card = bs_wood_compare (wood, &wish, NAN);
  BsWorking why;

  bs_wood_explain_mass (&card, &wish, &why);
  const BsTerm *m = why.terms;
  g_assert_cmpfloat_with_epsilon (why.value,
                                  m[3].value * m[0].value * m[1].value * m[2].value * 1e-9, 1e-9);
  bs_wood_explain_sag (&card, &wish, &why);
  const BsTerm *s = why.terms;
  g_assert_cmpfloat_with_epsilon (why.value, 1.286, 0.0005);
  g_assert_cmpfloat_with_epsilon (why.value,
                                  s[0].value * pow (s[1].value, 3.0)
                                      / (4.0 * s[4].value * s[2].value * pow (s[3].value, 3.0)),
                                  1e-9);
  bs_wood_explain_cost (&card, &wish, "EUR", &why);
  g_assert_cmpfloat_with_epsilon (why.value, 30000.0, 1e-9);
  g_assert_cmpstr (why.currency, ==, "EUR");
}

static void
test_hardness_estimated (void)
{
  g_autoptr (BsWood) wood = new_wood ();
  BsWoodWish wish = usual_wish ();
  BsWorking why;

  wood->side_hardness_n = NAN;
  BsWoodCard card = bs_wood_compare (wood, &wish, NAN);
  g_assert_true (card.is_hardness_estimated);
  g_assert_cmpfloat_with_epsilon (card.hardness_n, bs_wood_hardness_estimate (0.60, TRUE), 1e-9);
  bs_wood_explain_hardness (&card, &wish, &why);
  g_assert_nonnull (strstr (why.terms[0].source, "estimated"));
}

/* What a plan asks: its own sizes and climate; its own range where it says one; the lumber of its
 * laminations. */
static void
test_wish_of_a_plan (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  plan->slab.hardness_high_n = 6000.0;
  for (guint i = 0; i < 8; i++)
    {
      slab_at (plan, i)->pith_y = i < 4 ? 1e6 : 0.0;
      slab_at (plan, i)->pith_z = i < 4 ? 0.0 : 1e6;
    }
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsWoodWish wish = bs_wood_wish_of (stack);

  g_assert_cmpfloat_with_epsilon (wish.width, 320.0, 1e-12);
  g_assert_true (isnan (wish.hardness_low_n)); /* open at the end that is left out */
  g_assert_cmpfloat_with_epsilon (wish.hardness_high_n, 6000.0, 1e-12);
  g_assert_false (wish.is_hardness_usual);
  g_assert_cmpfloat_with_epsilon (wish.ring_cos2, 0.5, 1e-6);
  g_assert_cmpfloat_with_epsilon (wish.gross, 8.0 * 1200 * 40 * 45, 1e-3);
  g_assert_cmpfloat_with_epsilon (wish.dry_pct, bs_moisture_emc (20.0, 40.0), 1e-12);
}

static void
test_wish_of_an_empty_plan (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsWoodWish wish = bs_wood_wish_of (stack);

  g_assert_true (isnan (wish.ring_cos2));
  g_assert_true (wish.is_hardness_usual);
  g_assert_cmpfloat_with_epsilon (wish.hardness_low_n, 3000.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (wish.hardness_high_n, 4200.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (
      wish.gross, 2.0 * plan->slab.length * plan->slab.width * plan->slab.thickness, 1e-3);
}

static void
test_thickest_lumber (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();

  g_assert_true (isnan (bs_wood_thickest_lumber (plan, "ash")));
  for (guint i = 0; i < 3; i++)
    {
      BsBoard *board = bs_board_new ("board");
      board->thickness = 30.0 + 10.0 * i;
      bs_text_set (&board->wood, i < 2 ? "ash" : "oak");
      g_ptr_array_add (plan->boards, board);
    }
  g_assert_cmpfloat_with_epsilon (bs_wood_thickest_lumber (plan, "ash"), 40.0, 1e-12);

  BsOffer *offer = bs_offer_new ("offer");
  offer->thickness = 52.0;
  bs_text_set (&offer->wood, "ash");
  g_ptr_array_add (plan->offers, offer);
  g_assert_cmpfloat_with_epsilon (bs_wood_thickest_lumber (plan, "ash"), 52.0, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wood-compare/figures", test_figures);
  for (gsize i = 0; i < G_N_ELEMENTS (wish_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/wood-compare/wish/", wish_rows[i].path, NULL);
      g_test_add_data_func (path, &wish_rows[i], test_wish);
    }
  g_test_add_func ("/wood-compare/not-known", test_not_known);
  g_test_add_func ("/wood-compare/bond", test_bond);
  g_test_add_func ("/wood-compare/planing", test_planing);
  g_test_add_func ("/wood-compare/rings", test_rings);
  g_test_add_func ("/wood-compare/explained", test_explained);
  g_test_add_func ("/wood-compare/hardness-estimated", test_hardness_estimated);
  g_test_add_func ("/wood-compare/wish-of-a-plan", test_wish_of_a_plan);
  g_test_add_func ("/wood-compare/wish-of-an-empty-plan", test_wish_of_an_empty_plan);
  g_test_add_func ("/wood-compare/thickest-lumber", test_thickest_lumber);
  return g_test_run ();
}
