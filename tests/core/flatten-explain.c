/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-explain.h"

#include "core/flatten.h"
#include "slabs.h"

#include <math.h>
#include <string.h>

/* Five laminations, one of them crooked, an allowance, a planer of two and a half laminations. */
static BsPlan *
crooked_slab (BsFlattenWork work)
{
  BsPlan *plan = slab_new (5, 1500.0, 40.0, 80.0);

  slab_at (plan, 1)->crook = 2.0;
  slab_at (plan, 4)->height = 81.0;
  plan->slab.allowance = 0.5;
  plan->slab.thickness = 76.0;
  plan->slab.flatten_work = work;
  plan->shop.planer_width = 100.0;
  return plan;
}

static double
term (const BsWorking *working, const char *symbol)
{
  for (guint i = 0; i < working->n_terms; i++)
    if (strcmp (working->terms[i].symbol, symbol) == 0)
      return working->terms[i].value;
  g_assert_not_reached ();
}

static double
named_term (const BsWorking *working, const char *part)
{
  for (guint i = 0; i < working->n_terms; i++)
    if (strstr (working->terms[i].name, part) != NULL)
      return working->terms[i].value;
  g_assert_not_reached ();
}

/* The terms put into the printed formula give the printed value, by every order of work. */
static void
test_thickness (gconstpointer data)
{
  BsFlattenWork work = (BsFlattenWork)GPOINTER_TO_INT (data);
  g_autoptr (BsPlan) plan = crooked_slab (work);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenResult result, best;
  BsWorking why;

  bs_flatten (stack, &result);
  bs_flatten_by (stack, BS_FLATTEN_SHIMMED, &best);
  bs_flatten_explain (&result, work, stack, &why);
  g_assert_cmpfloat_with_epsilon (why.value, result.thickness, 1e-12);
  g_assert_cmpfloat_with_epsilon (
      why.value, term (&why, "h") - term (&why, "v") - 2.0 * term (&why, "a"), 1e-9);
  if (work != BS_FLATTEN_SHIMMED)
    g_assert_cmpfloat_with_epsilon (named_term (&why, "what shims"),
                                    best.thickness - result.thickness, 1e-9);
}

/* By hand: the bench holds every underside, so the crooked lamination's middle stands 2 mm over its
 * ends: 2 mm and the allowance come off either face, and 80 - 2 - 2 x 0.5 are left. */
static void
test_removal (void)
{
  g_autoptr (BsPlan) plan = crooked_slab (BS_FLATTEN_SHIMMED);
  slab_at (plan, 4)->height = 80.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenResult result;
  BsWorking why;

  bs_flatten (stack, &result);
  bs_flatten_explain (&result, BS_FLATTEN_SHIMMED, stack, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 77.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (named_term (&why, "off the show face"), 2.5, 1e-6);
  g_assert_cmpfloat_with_epsilon (named_term (&why, "off the underside"), 2.5, 1e-6);
}

static void
test_odds (void)
{
  g_autoptr (BsPlan) plan = crooked_slab (BS_FLATTEN_SHIMMED);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);
  BsFlattenOdds odds = bs_flatten_odds (stack, &spread);
  double height = bs_flatten_height_needed (stack, &spread, plan->slab.thickness);
  BsWorking why;

  for (int i = 0; i < BS_N_SURE; i++)
    {
      bs_flatten_explain_odds (&odds, (BsSure)i, stack, &why);
      g_assert_cmpfloat_with_epsilon (why.value, bs_flatten_odds_get (&odds, (BsSure)i), 1e-12);
      g_assert_cmpfloat (named_term (&why, "thinnest"), <=, why.value);
      g_assert_cmpfloat (named_term (&why, "thickest"), >=, why.value);
      g_assert_cmpfloat_with_epsilon (named_term (&why, "measured warp"), 0.3, 1e-12);
    }
  bs_flatten_explain_wanted (&odds, stack, &why);
  g_assert_cmpfloat_with_epsilon (why.value, odds.wanted_pct, 1e-12);
  bs_flatten_explain_height (&height, stack, &why);
  g_assert_cmpfloat_with_epsilon (why.value, term (&why, "t") + term (&why, "e"), 1e-9);
}

/* Five of 40 mm through 100 mm: two, two and one. */
static void
test_packs (void)
{
  g_autoptr (BsPlan) plan = crooked_slab (BS_FLATTEN_SHIMMED);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsWorking why;

  bs_flatten_explain_packs (stack, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 3.0, 1e-12);
  plan->shop.planer_width = 30.0;
  bs_flatten_explain_packs (stack, &why);
  g_assert_true (isnan (why.value));
  g_assert_nonnull (strstr (why.explanation, "wider than the planer"));
  plan->shop.planer_width = 0.0;
  bs_flatten_explain_packs (stack, &why);
  g_assert_nonnull (strstr (why.explanation, "no planer"));
}

/* What is not known says why: nothing to flatten, or not worked out yet. */
static void
test_unknown (void)
{
  g_autoptr (BsPlan) empty = bs_plan_new (), plan = crooked_slab (BS_FLATTEN_SHIMMED);
  g_autoptr (BsStack) nothing = bs_stack_new (empty), stack = bs_stack_new (plan);
  BsFlattenSpread spread = bs_flatten_spread_of (empty);
  BsFlattenOdds odds = bs_flatten_odds (nothing, &spread);
  BsFlattenResult result;
  BsWorking why;

  bs_flatten (nothing, &result);
  bs_flatten_explain (&result, BS_FLATTEN_SHIMMED, nothing, &why);
  g_assert_true (isnan (why.value));
  bs_flatten_explain_odds (&odds, BS_SURE_95_PCT, nothing, &why);
  g_assert_nonnull (strstr (why.explanation, "no laminations"));
  bs_flatten_explain_odds (NULL, BS_SURE_95_PCT, stack, &why);
  g_assert_nonnull (strstr (why.explanation, "worked out"));
  bs_flatten_explain_wanted (NULL, stack, &why);
  g_assert_true (isnan (why.value));
  bs_flatten_explain_height (NULL, stack, &why);
  g_assert_true (isnan (why.value));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/flatten-explain/thickness/shimmed", GINT_TO_POINTER (BS_FLATTEN_SHIMMED),
                        test_thickness);
  g_test_add_data_func ("/flatten-explain/thickness/show-face-first",
                        GINT_TO_POINTER (BS_FLATTEN_SHOW_FACE_FIRST), test_thickness);
  g_test_add_data_func ("/flatten-explain/thickness/underside-first",
                        GINT_TO_POINTER (BS_FLATTEN_UNDERSIDE_FIRST), test_thickness);
  g_test_add_func ("/flatten-explain/removal", test_removal);
  g_test_add_func ("/flatten-explain/odds", test_odds);
  g_test_add_func ("/flatten-explain/packs", test_packs);
  g_test_add_func ("/flatten-explain/unknown", test_unknown);
  return g_test_run ();
}
