/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/words.h"

#include "shops.h"

#include <string.h>

/* What an adhesive can do to people, by what the authorities say of its class: diisocyanates,
 * Regulation (EU) 2020/1149; epoxies, HSE guidance, from memory; formaldehyde, Directive (EU)
 * 2019/983, from memory. */
typedef struct
{
  const char *adhesive;
  const char *wanted;
} Row;

static const Row rows[] = {
  { "polyurethane", "isocyanates" },
  { "pva-d4", "isocyanates" },
  { "epoxy", "nitrile" },
  { "urea", "formaldehyde" },
  { "melamine-urea", "formaldehyde" },
  { "resorcinol", "formaldehyde" },
  { "pva-d3", "skin and eyes" },
  { "casein", "skin and eyes" },
  { "my-own", "does not know" },
};

static char *
join_cautions (const BsPlan *plan)
{
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_auto (GStrv) cautions = bs_words_cautions (plan, results);

  return g_strjoinv ("\n", cautions);
}

static void
test_adhesive (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  bs_text_set (&plan->adhesive.id, row->adhesive);
  g_autofree char *text = join_cautions (plan);

  g_assert_nonnull (strstr (text, row->wanted));
}

static void
test_always_there (void)
{
  static const char *const wanted[]
      = { "Dust: ", "Machines: ", "Noise: ", "Clamps: ", "Lifting: ", "data sheets" };
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autofree char *text = join_cautions (plan);

  for (gsize i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_nonnull (strstr (text, wanted[i]));
}

/* Twelve clamps of 6 kN are tightened to the 54 kN needed. */
static void
test_values (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autofree char *text = join_cautions (plan);

  g_assert_nonnull (strstr (text, "hold 54\u202fkN"));
  g_assert_nonnull (strstr (text, "300\u202fmm"));
  g_assert_nonnull (strstr (text, "23\u202fkg"));
}

static void
test_inches (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  plan->units = BS_UNIT_SYSTEM_INCH;
  g_autofree char *text = join_cautions (plan);

  g_assert_null (strstr (text, "mm"));
  g_assert_null (strstr (text, "kg"));
  g_assert_null (strstr (text, "kN"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/words/cautions/%s", rows[i].adhesive);
      g_test_add_data_func (path, &rows[i], test_adhesive);
    }
  g_test_add_func ("/words/cautions/always-there", test_always_there);
  g_test_add_func ("/words/cautions/values", test_values);
  g_test_add_func ("/words/cautions/inches", test_inches);
  return g_test_run ();
}
