/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/tables.h"

#include "core/limits.h"
#include "core/wood-compare.h"
#include "plan/document.h"
#include "plan/edits.h"
#include "words/table-names.h"

#include <math.h>
#include <string.h>

/* Rows of the Wood Handbook, FPL-GTR-190 (2010), tables 5-3b, 4-3 and 13-5, typed again from the
 * source; of table 13-5 the coefficients of commercial white oak and beech. Specific gravities and
 * strengths of beech were read, the hardness is from memory. */
static void
test_wood_handbook (void)
{
  const BsWood *beech = bs_tables_find_wood ("american-beech");

  g_assert_nonnull (beech);
  g_assert_cmpstr (beech->name, ==, "Beech, American");
  g_assert_cmpstr (beech->botanical, ==, "Fagus grandifolia");
  g_assert_true (beech->is_hardwood);
  g_assert_cmpfloat_with_epsilon (beech->sg_12, 0.64, 1e-9);
  g_assert_cmpfloat_with_epsilon (beech->moe_mpa, 11900.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (beech->comp_perp_mpa, 7.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (beech->shrink_radial_pct, 5.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (beech->shrink_tangential_pct, 11.9, 1e-9);
  g_assert_cmpfloat_with_epsilon (beech->coef_radial, 0.00190, 1e-9);
  g_assert_cmpfloat_with_epsilon (beech->coef_tangential, 0.00431, 1e-9);
  g_assert_cmpint (beech->bond, ==, BS_BOND_SATISFACTORY);
  g_assert_true (isnan (beech->price_minor_per_m3));
  g_assert_true (beech->is_from_memory); /* its hardness */
}

/* Density 710 kg/m3 at 12 % (EN 350, from memory) is a specific gravity of 710 / 1120. Stiffness as
 * in DIN 68364, side hardness 1450 lbf as usually published; both from memory. */
static void
test_wood_by_density (void)
{
  const BsWood *beech = bs_tables_find_wood ("european-beech");

  g_assert_cmpfloat_with_epsilon (beech->sg_12, 0.633929, 1e-6);
  g_assert_cmpfloat_with_epsilon (beech->moe_mpa, 14000.0, 1e-9);
  g_assert_true (isnan (beech->comp_perp_mpa));
  g_assert_cmpint (beech->bond, ==, BS_BOND_UNKNOWN);
  g_assert_cmpfloat_with_epsilon (beech->side_hardness_n, 1450.0 * 4.4482, 12.0);
  g_assert_true (beech->is_from_memory);
  g_assert_nonnull (strstr (beech->source, "EN 350"));
}

/* Hardness by the specific gravity (FPL-GTR-190, table 5-11a, from memory) against the hardness of
 * every wood that has both. Woods of one density differ by a third and more; in the middle the
 * regression must be right: the median ratio within 10 %, nine woods of ten within 40 %. */
static int
compare_numbers (gconstpointer a, gconstpointer b)
{
  const double *first = a, *second = b;

  return *first < *second ? -1 : *first > *second;
}

static void
test_hardness_estimate (void)
{
  const GPtrArray *woods = bs_tables_get_woods ();
  g_autoptr (GArray) ratios = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < woods->len; i++)
    {
      const BsWood *wood = woods->pdata[i];
      double ratio
          = bs_wood_hardness_estimate (wood->sg_12, wood->is_hardwood) / wood->side_hardness_n;
      if (!isnan (ratio))
        g_array_append_val (ratios, ratio);
    }
  g_array_sort (ratios, compare_numbers);
  g_assert_cmpuint (ratios->len, >, 40);
  g_assert_cmpfloat_with_epsilon (g_array_index (ratios, double, ratios->len / 2), 1.0, 0.1);
  g_assert_cmpfloat (g_array_index (ratios, double, ratios->len / 20), >, 0.6);
  g_assert_cmpfloat (g_array_index (ratios, double, ratios->len - 1 - ratios->len / 20), <, 1.4);
}

static void
test_wood_verified (void)
{
  g_assert_false (bs_tables_find_wood ("dark-red-meranti")->is_from_memory);
  g_assert_true (bs_tables_find_wood ("teak")->is_from_memory);
}

static gboolean
is_within (const BsLimit *limit, double value)
{
  return isnan (value) || bs_limit_contains (limit, value);
}

/* Each row can be put in a plan, saved and opened; tangential movement is the larger. */
static void
test_every_wood (void)
{
  const GPtrArray *woods = bs_tables_get_woods ();
  g_autoptr (BsPlan) plan = bs_plan_new ();

  g_assert_cmpuint (woods->len, ==, 75);
  for (guint i = 0; i < woods->len; i++)
    {
      BsWood *wood = woods->pdata[i];
      const BsWood *before = i > 0 ? woods->pdata[i - 1] : NULL;
      BsPlan *edited = bs_edit_put_wood (plan, wood);

      g_assert_true (is_within (&bs_limits.sg, wood->sg_12));
      g_assert_true (before == NULL || strcmp (before->name, wood->name) < 0);
      g_assert_false (wood->coef_tangential <= wood->coef_radial);
      g_assert_false (wood->shrink_tangential_pct <= wood->shrink_radial_pct);
      g_assert_cmpstr (wood->source, !=, "");
      g_assert_true (bs_tables_find_wood (wood->id) == wood);
      bs_plan_unref (plan);
      plan = edited;
    }

  g_autofree char *text = bs_document_write (plan);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) opened = bs_document_parse (text, strlen (text), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (opened->woods->len, ==, 75);
}

/* The end of each range that is safe to plan with. Ranges of D3 are from memory (EN 204 fixes
 * strengths, makers the times). */
static void
test_adhesive (void)
{
  const BsAdhesive *d3 = bs_tables_find_adhesive ("pva-d3");

  g_assert_nonnull (d3);
  g_assert_cmpfloat_with_epsilon (d3->open_s, 5.0 * 60.0, 1e-9);      /* 5 to 10 min */
  g_assert_cmpfloat_with_epsilon (d3->total_s, 10.0 * 60.0, 1e-9);    /* 10 to 15 min */
  g_assert_cmpfloat_with_epsilon (d3->clamp_s, 1.5 * 3600.0, 1e-9);   /* 0.5 to 1.5 h */
  g_assert_cmpfloat_with_epsilon (d3->min_temperature_c, 10.0, 1e-9); /* 8 to 10 C */
  g_assert_cmpfloat_with_epsilon (d3->spread_g_per_m2, 200.0, 1e-9);  /* 150 to 200 g/m2 */
  g_assert_cmpfloat_with_epsilon (d3->min_pressure_mpa, 0.7, 1e-9);
  g_assert_cmpfloat_with_epsilon (d3->max_pressure_mpa, 1.7, 1e-9);
  g_assert_true (d3->is_waterborne);
  g_assert_false (d3->is_moisture_curing);
  g_assert_nonnull (strstr (d3->source, "from memory"));
  g_assert_true (bs_tables_find_adhesive ("polyurethane")->is_moisture_curing);
}

static void
test_every_adhesive (void)
{
  const GPtrArray *adhesives = bs_tables_get_adhesives ();

  g_assert_cmpuint (adhesives->len, ==, 12);
  for (guint i = 0; i < adhesives->len; i++)
    {
      g_autoptr (BsPlan) plan = bs_plan_new ();
      g_autoptr (BsPlan) edited = bs_edit_set_adhesive (plan, adhesives->pdata[i]);
      g_autofree char *text = bs_document_write (edited);
      g_autoptr (GError) error = NULL;
      g_autoptr (BsPlan) opened = bs_document_parse (text, strlen (text), &error);

      g_assert_no_error (error);
      g_assert_nonnull (opened);
    }
}

/* Every name of the tables can be translated, and there are no other messages. */
static void
test_names (void)
{
  const GPtrArray *woods = bs_tables_get_woods (), *adhesives = bs_tables_get_adhesives ();

  for (guint i = 0; i < woods->len; i++)
    g_assert_true (g_strv_contains (bs_words_woods, ((BsWood *)woods->pdata[i])->name));
  for (guint i = 0; i < adhesives->len; i++)
    g_assert_true (g_strv_contains (bs_words_adhesives, ((BsAdhesive *)adhesives->pdata[i])->name));
  g_assert_cmpuint (g_strv_length ((char **)bs_words_woods), ==, woods->len);
  g_assert_cmpuint (g_strv_length ((char **)bs_words_adhesives), ==, adhesives->len);
}

static void
test_no_such_row (void)
{
  g_assert_null (bs_tables_find_wood ("cheese"));
  g_assert_null (bs_tables_find_wood (NULL));
  g_assert_null (bs_tables_find_adhesive ("flour"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/tables/wood/handbook", test_wood_handbook);
  g_test_add_func ("/tables/wood/by-density", test_wood_by_density);
  g_test_add_func ("/tables/wood/hardness-estimate", test_hardness_estimate);
  g_test_add_func ("/tables/wood/verified", test_wood_verified);
  g_test_add_func ("/tables/wood/every", test_every_wood);
  g_test_add_func ("/tables/adhesive/d3", test_adhesive);
  g_test_add_func ("/tables/adhesive/every", test_every_adhesive);
  g_test_add_func ("/tables/names", test_names);
  g_test_add_func ("/tables/no-such-row", test_no_such_row);
  return g_test_run ();
}
