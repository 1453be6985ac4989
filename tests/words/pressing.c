/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/pressing.h"

#include "shops.h"

#include <string.h>

#define THIN "\u202f" /* between a number and its unit */

/* Whole sentences: a capital or a number first, a full stop last, no placeholder left over. */
static void
assert_sentence (const char *text)
{
  g_assert_nonnull (text);
  g_assert_true (g_ascii_isupper (text[0]) || g_ascii_isdigit (text[0]));
  g_assert_true (g_str_has_suffix (text, "."));
  g_assert_null (strchr (text, '%'));
  g_assert_null (strstr (text, "(null)"));
  g_assert_null (strstr (text, "nan"));
}

static void
place (BsPlan *plan, guint n, double force_n)
{
  for (guint i = 0; i < n; i++)
    bs_plan_place_clamp (plan, "clamp", 1500.0 / n * (i + 0.5), force_n, i % 2 == 0);
}

static void
press_enough (BsPlan *plan)
{
  place (plan, 15, 4000.0);
}

static void
press_too_little (BsPlan *plan)
{
  place (plan, 6, 3000.0);
}

/* 20 clamps of 6 kN come to 1 MPa. */
static void
ask_too_much (BsPlan *plan)
{
  plan->adhesive.min_pressure_mpa = 1.2;
  plan->adhesive.max_pressure_mpa = 1.7;
  place (plan, 20, 6000.0);
}

static void
press_with_small_heads (BsPlan *plan)
{
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);

  kind->head_width = kind->head_height = 20.0;
  place (plan, 18, 6000.0);
}

static void
have_none (BsPlan *plan)
{
  g_ptr_array_set_size (plan->shop.clamps, 0);
}

static void
have_short_ones (BsPlan *plan)
{
  ((BsClampKind *)g_ptr_array_index (plan->shop.clamps, 0))->reach = 300.0;
}

/* Five clamps, where spaces by the 45 degree rule ask for more. */
static void
have_few (BsPlan *plan)
{
  ((BsClampKind *)g_ptr_array_index (plan->shop.clamps, 0))->count = 5;
}

static void
have_one_lamination (BsPlan *plan)
{
  g_array_set_size (plan->order, 1);
}

typedef struct
{
  const char *path;
  void (*make) (BsPlan *plan);
  const char *wanted[3];
} Row;

/* Both figures stand there: what is wanted and what is reached. */
static const Row rows[] = {
  { "enough", press_enough, { "Enough everywhere", "0.25" THIN "MPa", "7" THIN "MPa" } },
  { "short",
    press_too_little,
    { "Too little", "asks for 0.25" THIN "MPa", "the mean would be 1" } },
  { "out-of-reach",
    ask_too_much,
    { "Too little", "asks for 1.2" THIN "MPa", "the mean is 1" THIN "MPa: the 1.2" } },
  { "crushes", press_with_small_heads, { "Too hard", "15" THIN "MPa", "bears 7" THIN "MPa" } },
  { "no-clamps", have_none, { "no clamps yet" } },
  { "too-short", have_short_ones, { "400" THIN "mm across" } },
  { "few", have_few, { "and 5 of yours reach", "borrowed" } },
  { "one-lamination", have_one_lamination, { "two laminations" } },
};

static void
test_pressing (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsPressure) pressure = NULL;
  g_autofree char *text = NULL;

  row->make (plan);
  pressure = bs_pressure_new (plan, BS_PRESS_MODEL_SQUEEZE);
  text = bs_words_pressing (pressure);
  g_test_message ("%s", text);
  assert_sentence (text);
  for (guint i = 0; i < G_N_ELEMENTS (row->wanted) && row->wanted[i] != NULL; i++)
    g_assert_nonnull (strstr (text, row->wanted[i]));
}

static void
test_advice (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsClampAdvice) advice = NULL;
  g_autofree char *closing = NULL;

  press_too_little (plan);
  slab_at (plan, 3)->bow = 2.0;
  advice = bs_clamp_advice_new (plan, NULL);
  closing = bs_words_closing (advice);
  assert_sentence (closing);
  g_assert_nonnull (strstr (closing, "0.1" THIN "mm"));
  for (guint i = 0; i < advice->trials->len; i++)
    {
      const BsClampTrial *trial = &g_array_index (advice->trials, BsClampTrial, i);
      g_autofree char *words = bs_words_clamp_trial (advice, trial);
      g_autofree char *effect = bs_words_clamp_trial_effect (advice, trial);

      g_assert_true (g_ascii_isupper (words[0]));
      g_assert_null (strchr (words, '%'));
      g_assert_nonnull (strstr (effect, " to "));
    }
}

/* The number that was found, and the other rule beside it. */
static void
test_proposal (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsClampProposal) proposal = bs_clamp_proposal_new (plan, NULL);
  g_autofree char *words = bs_words_clamp_proposal (proposal);
  g_autofree char *difference = bs_words_clamp_difference (proposal);
  g_autofree char *count = g_strdup_printf ("%u clamps with ", proposal->found.n_clamps);

  assert_sentence (words);
  g_assert_true (g_str_has_prefix (words, count));
  g_assert_nonnull (strstr (difference, "45 degrees"));
  g_assert_true (g_str_has_suffix (difference, "."));
}

static void
test_clamp (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsResults) results = NULL;
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  place (plan, 3, 3000.0);
  results = bs_evaluate (plan);
  first = bs_words_clamp (results, 0);
  second = bs_words_clamp (results, 1);
  g_assert_cmpstr (first, ==, "Clamp 1 of 3: at 250" THIN "mm, 3" THIN "kN, above, turn 2");
  g_assert_cmpstr (second, ==, "Clamp 2 of 3: at 750" THIN "mm, 3" THIN "kN, below, turn 1");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/pressing/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_pressing);
    }
  g_test_add_func ("/pressing/advice", test_advice);
  g_test_add_func ("/pressing/proposal", test_proposal);
  g_test_add_func ("/pressing/clamp", test_clamp);
  return g_test_run ();
}
