/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/explain.h"

#include "shops.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const char *path;
  gsize offset; /* of the working in the results */
} Row;

static const Row rows[] = {
  { "thickness", G_STRUCT_OFFSET (BsResults, why_thickness) },
  { "force", G_STRUCT_OFFSET (BsResults, why_force) },
  { "clamps", G_STRUCT_OFFSET (BsResults, why_clamps) },
  { "time", G_STRUCT_OFFSET (BsResults, why_time) },
  { "mass", G_STRUCT_OFFSET (BsResults, why_mass) },
};

/* Known of an empty plan too: the seasons have defaults. */
static const Row moisture = { "moisture", G_STRUCT_OFFSET (BsResults, why_moisture) };

static const BsWorking *
working_of (const BsResults *results, const Row *row)
{
  return G_STRUCT_MEMBER_P (results, row->offset);
}

static double
term (const BsWorking *working, const char *symbol)
{
  for (guint i = 0; i < working->n_terms; i++)
    if (strcmp (working->terms[i].symbol, symbol) == 0)
      return working->terms[i].value;
  g_assert_not_reached ();
}

/* All that a reader may ask for is there, and the value lies in its range. */
static void
test_complete (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  const BsWorking *working = working_of (results, row);

  g_assert_true (isfinite (working->value));
  g_assert_nonnull (working->title);
  g_assert_nonnull (working->explanation);
  g_assert_nonnull (working->certainty);
  g_assert_cmpstr (working->formula, !=, "");
  g_assert_cmpuint (working->n_terms, >, 2);
  for (guint i = 0; i < working->n_terms; i++)
    {
      g_assert_nonnull (working->terms[i].name);
      g_assert_nonnull (working->terms[i].symbol);
      g_assert_true (isfinite (working->terms[i].value));
    }
  if (!isnan (working->low))
    {
      g_assert_cmpfloat (working->low, <=, working->value);
      g_assert_cmpfloat (working->high, >=, working->value);
    }
}

/* Nothing is known of an empty plan, and every working says why. */
static void
test_unknown (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  const BsWorking *working = working_of (results, row);

  g_assert_true (isnan (working->value));
  g_assert_true (isnan (working->low));
  g_assert_true (isnan (working->high));
  g_assert_cmpstr (working->title, !=, "");
  g_assert_cmpstr (working->explanation, !=, "");
}

/* The terms put into the printed formula give the printed value. */
static void
test_formulas_hold (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  plan->slab.allowance = 0.7;
  slab_at (plan, 3)->crook = 1.5;
  plan->shop.people = 2;
  g_autoptr (BsResults) results = bs_evaluate (plan);
  const BsWorking *t = &results->why_thickness;
  const BsWorking *f = &results->why_force;
  const BsWorking *n = &results->why_clamps;
  const BsWorking *s = &results->why_time;
  const BsWorking *m = &results->why_mass;
  const BsWorking *w = &results->why_moisture;

  g_assert_cmpfloat_with_epsilon (w->value, (term (w, "M₁") + term (w, "M₂")) / 2.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (t->value, term (t, "h") - term (t, "v") - 2.0 * term (t, "a"),
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (f->value, term (f, "p") * term (f, "A"), 1e-6);
  g_assert_cmpfloat_with_epsilon (term (n, "s"),
                                  term (n, "b") + 2.0 * (term (n, "t") + term (n, "c")), 1e-9);
  g_assert_cmpfloat_with_epsilon (n->value, fmax (term (n, "F / F₁"), term (n, "L / s")), 1e-9);
  g_assert_cmpfloat_with_epsilon (
      s->value,
      term (s, "N") * (term (s, "j") + term (s, "p") + term (s, "q"))
          + (term (s, "r") * term (s, "A") * 1e-6 + term (s, "m") * term (s, "c")) / term (s, "w"),
      1e-9);
  g_assert_cmpfloat_with_epsilon (m->value, term (m, "ρ") * term (m, "V") * 1e-9, 1e-9);
}

/* The workings agree with the results that they explain. */
static void
test_same_values (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsResults) results = bs_evaluate (plan);

  g_assert_cmpfloat_with_epsilon (results->why_thickness.value, results->flatten.thickness, 1e-12);
  g_assert_cmpfloat_with_epsilon (results->why_force.value, results->clamps.force_n, 1e-12);
  g_assert_cmpfloat_with_epsilon (results->why_clamps.value, results->clamps.n, 1e-12);
  g_assert_cmpfloat_with_epsilon (results->why_time.value, results->assembly.total_s, 1e-12);
  g_assert_cmpfloat_with_epsilon (results->why_mass.value, results->mass_kg, 1e-12);
  g_assert_cmpfloat_with_epsilon (results->why_moisture.low, results->emc_low_pct, 1e-12);
  g_assert_cmpfloat_with_epsilon (results->why_moisture.high, results->emc_high_pct, 1e-12);
}

static void
test_adhesive_names_its_source (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  bs_text_set (&plan->adhesive.source, "data sheet of 2024");
  g_autoptr (BsResults) results = bs_evaluate (plan);
  gboolean is_named = FALSE;

  for (guint i = 0; i < results->why_force.n_terms; i++)
    is_named
        = is_named || g_strcmp0 (results->why_force.terms[i].source, "data sheet of 2024") == 0;
  g_assert_true (is_named);
}

/* Without clamps the force is known all the same, and the count asks for them. */
static void
test_no_clamps (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_ptr_array_set_size (plan->shop.clamps, 0);
  g_autoptr (BsResults) results = bs_evaluate (plan);

  g_assert_true (isfinite (results->why_force.value));
  g_assert_true (isnan (results->why_clamps.value));
  g_assert_nonnull (strstr (results->why_clamps.explanation, "clamps you own"));
}

/* A working holds no more terms than it has room for. */
static void
test_too_many_terms (void)
{
  BsWorking working;

  bs_working_init (&working, "t", "e", "f", BS_QUANTITY_RATIO, "c");
  for (int i = 0; i < BS_WORKING_MAX_TERMS; i++)
    bs_working_add (&working, "n", "s", i, BS_QUANTITY_RATIO, NULL);
  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*n_terms*");
  bs_working_add (&working, "n", "s", 0.0, BS_QUANTITY_RATIO, NULL);
  g_test_assert_expected_messages ();
  g_assert_cmpuint (working.n_terms, ==, BS_WORKING_MAX_TERMS);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/explain/complete/moisture", &moisture, test_complete);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *complete = g_strdup_printf ("/explain/complete/%s", rows[i].path);
      g_autofree char *unknown = g_strdup_printf ("/explain/unknown/%s", rows[i].path);
      g_test_add_data_func (complete, &rows[i], test_complete);
      g_test_add_data_func (unknown, &rows[i], test_unknown);
    }
  g_test_add_func ("/explain/formulas-hold", test_formulas_hold);
  g_test_add_func ("/explain/same-values", test_same_values);
  g_test_add_func ("/explain/adhesive-names-its-source", test_adhesive_names_its_source);
  g_test_add_func ("/explain/no-clamps", test_no_clamps);
  g_test_add_func ("/explain/too-many-terms", test_too_many_terms);
  return g_test_run ();
}
