/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/timber.h"

#include "shops.h"

#include <math.h>
#include <string.h>

#define THIN "\u202f"

static BsPlan *
new_plan (void)
{
  BsPlan *plan = shop_new_perfect ();
  BsWood *wood = plan->woods->pdata[0];

  wood->coef_radial = 0.0015;
  wood->coef_tangential = 0.0035;
  for (guint i = 0; i < 8; i++)
    {
      slab_at (plan, i)->pith_y = 0.0;
      slab_at (plan, i)->pith_z = -60.0;
      bs_text_set (&slab_at (plan, i)->label, i == 3 ? "D" : "other");
    }
  return plan;
}

static char *
join (char **sentences)
{
  char *text = g_strjoinv ("\n", sentences);
  g_strfreev (sentences);
  return text;
}

/* Air of 20 C and 40 to 60 % humidity brings wood to 7.7 and 11.0 % (Wood handbook, table 4-2). */
static void
test_movement (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *text = join (bs_words_movement (results));

  g_assert_nonnull (strstr (text, "7.7" THIN "%"));
  g_assert_nonnull (strstr (text, "11" THIN "%"));
  g_assert_nonnull (strstr (text, "slotted holes"));
  g_assert_null (strstr (text, "hearts"));
  g_assert_null (strstr (text, "step"));
}

static void
test_movement_on_flat (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  plan->slab.layup = BS_LAYUP_ON_FLAT;
  slab_at (plan, 3)->pith_y = 500.0;
  slab_at (plan, 3)->pith_z = 0.0;
  slab_at (plan, 3)->moisture_pct = 18.0;
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *text = join (bs_words_movement (results));

  g_assert_nonnull (strstr (text, "hearts up and down by turns"));
  g_assert_nonnull (strstr (text, "Laminations"));
  g_assert_nonnull (strstr (text, " D "));
}

static void
test_movement_not_known (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_auto (GStrv) sentences = bs_words_movement (results);

  g_assert_cmpuint (g_strv_length (sentences), ==, 1);
  g_assert_nonnull (strstr (sentences[0], "cannot be told"));
}

/* A sentence for each flag, and no other. */
static void
test_milling (void)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsRough good = { 1000, 100, 30 };
  BsRough bad = { 250, 350, 14, .bow = 2.0, .crook = 2.0 };
  g_auto (GStrv) none = bs_words_milling (&good, &shop, BS_UNIT_SYSTEM_METRIC);
  g_auto (GStrv) all = bs_words_milling (&bad, &shop, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpuint (g_strv_length (none), ==, 0);
  g_assert_cmpuint (g_strv_length (all), ==, BS_N_MILLING_CAUTIONS);
  g_assert_nonnull (strstr (all[0], "350" THIN "mm wide, the jointer takes 150" THIN "mm"));
  g_assert_nonnull (strstr (all[3], "12" THIN "mm"));
}

static void
test_need (void)
{
  BsMillingWish wish = { 40, 60, 2000, 1, 1, 0.9 };
  BsMillingNeed need = { .thickness = 48.0, .width = 70.0, .length = 2050.0 };
  g_autofree char *sold = bs_words_need (&need, &wish, "8/4", BS_UNIT_SYSTEM_METRIC);
  g_autofree char *none = bs_words_need (&need, &wish, NULL, BS_UNIT_SYSTEM_METRIC);

  g_assert_nonnull (strstr (sold, "48" THIN "mm thick, 70" THIN "mm wide and 2050" THIN "mm long"));
  g_assert_nonnull (strstr (sold, "90" THIN "% sure of it: ask for 8/4."));
  g_assert_true (g_str_has_suffix (none, "sure of it."));
}

static void
test_layers (void)
{
  const BsLumberSeries *series = bs_lumber_series (BS_LUMBER_QUARTERS);
  BsLayerWay thick = { .layers = 1, .row = 10, .volume = 1e7 };
  BsLayerWay thin = { .layers = 2, .row = 8, .volume = 1.3e7 };
  g_autofree char *both
      = bs_words_layers (&thick, &thin, series, 5000.0, 4000.0, "EUR", BS_UNIT_SYSTEM_METRIC);
  thick.row = -1;
  g_autofree char *only
      = bs_words_layers (&thick, &thin, series, NAN, 4000.0, "EUR", BS_UNIT_SYSTEM_METRIC);

  g_assert_nonnull (strstr (both, "One layer of 12/4 takes 0.01" THIN "m³"));
  g_assert_nonnull (strstr (both, "50.00" THIN "EUR"));
  g_assert_nonnull (strstr (both, "2 layers of 8/4"));
  g_assert_nonnull (strstr (only, "No single board"));
}

static void
test_unfit (void)
{
  g_autoptr (BsWood) wood = bs_wood_new ("wood");
  BsWoodWish wish = { .hardness_low_n = 3000.0,
                      .hardness_high_n = 4200.0,
                      .limits.max_kg = 50.0,
                      .limits.max_movement = 3.0,
                      .limits.max_cost_minor = 30000.0,
                      .limits.rough_thickness = 60.0 };
  BsWoodCard card = { .wood = wood,
                      .hardness_n = 2000.0,
                      .slab_kg = 60.0,
                      .movement = 4.0,
                      .cost_minor = 45000.0,
                      .thickest = 50.0 };
  g_auto (GStrv) none = bs_words_unfit (&card, &wish, "EUR", BS_UNIT_SYSTEM_METRIC);
  card.unfit = (1 << BS_N_UNFITS) - 1;
  g_auto (GStrv) all = bs_words_unfit (&card, &wish, "EUR", BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpuint (g_strv_length (none), ==, 0);
  g_assert_cmpuint (g_strv_length (all), ==, BS_N_UNFITS);
  g_assert_nonnull (strstr (all[0], "2" THIN "kN"));
  g_assert_nonnull (strstr (all[0], "from 3" THIN "kN"));
  g_assert_nonnull (strstr (all[1], "up to 4.2" THIN "kN"));
  g_assert_nonnull (strstr (all[3], "60" THIN "kg; 50" THIN "kg"));
  g_assert_nonnull (strstr (all[4], "4" THIN "mm over the year; 3" THIN "mm"));
  g_assert_nonnull (strstr (all[5], "450.00" THIN "EUR; 300.00" THIN "EUR"));
  g_assert_nonnull (strstr (all[7], "50" THIN "mm thick; 60" THIN "mm"));
}

/* Each step of a scale has its own word. */
static void
test_scales (void)
{
  g_autoptr (GHashTable) words = g_hash_table_new (g_str_hash, g_str_equal);

  for (int i = BS_PLANING_UNKNOWN; i <= BS_PLANING_VERY_HARD; i++)
    g_assert_true (g_hash_table_add (words, (char *)bs_words_planing ((BsPlaning)i)));
  g_hash_table_remove_all (words);
  for (int i = BS_BOND_UNKNOWN; i <= BS_BOND_DIFFICULT; i++)
    g_assert_true (g_hash_table_add (words, (char *)bs_words_bond ((BsBond)i)));
}

typedef struct
{
  const char *path;
  BsLoad load;
  BsLoadKind kind;
  const char *wanted;
} LoadRow;

static const LoadRow load_rows[] = {
  { "one",
    { 9.0, "A", 0, 1, 0.6 },
    BS_LOAD_LAMINATION,
    "Heaviest lamination (A): 9" THIN "kg. One person lifts it with care." },
  { "three",
    { 20.0, "7", -1, 3, 1.4 },
    BS_LOAD_BOARD,
    "Heaviest board (7): 20" THIN "kg. It takes 3 people, or a lifting aid." },
  { "aid", { 90.0, NULL, -1, 0, 6.0 }, BS_LOAD_SLAB, "The slab: 90" THIN "kg. Use a lifting aid." },
  { "not-known",
    { NAN, NULL, -1, 0, NAN },
    BS_LOAD_PACK,
    "Heaviest pack: what it weighs is not known." },
};

static void
test_load (gconstpointer data)
{
  const LoadRow *row = data;
  g_autofree char *text = bs_words_load (&row->load, row->kind, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (text, ==, row->wanted);
}

typedef struct
{
  const char *path;
  BsCost cost;
  const char *wanted;
} CostRow;

static const CostRow cost_rows[] = {
  { "known",
    { 0.05e9, 0.03e9, 40.0, 0.1, 9000.0, 150.0, 9150.0, 0 },
    "Of 0.05" THIN "m³ of lumber 0.03" THIN "m³ end in the slab; 40" THIN
    "% are offcuts, chips and dust.\nWood and glue cost 91.50" THIN "EUR: 90.00" THIN
    "EUR for the wood, 1.50" THIN "EUR for the glue." },
  { "one-unpriced",
    { 0.05e9, 0.03e9, NAN, 0.1, NAN, 150.0, NAN, 1 },
    "What it costs is not known: one board or lamination has no price." },
  { "many-unpriced",
    { 0.05e9, 0.03e9, NAN, 0.1, NAN, 150.0, NAN, 4 },
    "What it costs is not known: 4 boards or laminations have no price." },
  { "no-glue-price",
    { 0.05e9, 0.03e9, NAN, 0.1, 9000.0, NAN, NAN, 0 },
    "The wood costs 90.00" THIN "EUR; what the glue costs is not known." },
  { "no-wood",
    { 0.0, NAN, NAN, 0.0, NAN, NAN, NAN, 0 },
    "What it costs is not known: there is no wood yet." },
};

static void
test_cost (gconstpointer data)
{
  const CostRow *row = data;
  g_autofree char *text = join (bs_words_cost (&row->cost, "EUR", BS_UNIT_SYSTEM_METRIC));

  g_assert_cmpstr (text, ==, row->wanted);
}

static void
test_fit (void)
{
  g_autofree char *fits = bs_words_fit (0);
  g_autofree char *two = bs_words_fit (BS_UNFIT_SOFT | BS_UNFIT_DEAR);

  g_assert_cmpstr (fits, ==, "fits");
  g_assert_cmpstr (two, ==, "too soft, too dear");
  for (guint i = 0; i < BS_N_UNFITS; i++)
    {
      g_autofree char *one = bs_words_fit ((BsUnfit)(1U << i));
      g_assert_cmpstr (one, !=, "");
      g_assert_cmpstr (one, !=, fits);
    }
}

/* What is read, what is from memory, what is estimated and what is missing. */
static void
test_figures (void)
{
  g_autoptr (BsWood) wood = bs_wood_new ("wood");
  BsWoodCard card = { .wood = wood, .is_hardness_estimated = TRUE, .movement = NAN };

  bs_text_set (&wood->source, "a table");
  wood->is_from_memory = TRUE;
  g_autofree char *all = join (bs_words_wood_figures (&card));
  g_assert_nonnull (strstr (all, "Source: a table."));
  g_assert_nonnull (strstr (all, "from memory"));
  g_assert_nonnull (strstr (all, "estimated"));
  g_assert_nonnull (strstr (all, "in no source"));

  wood->is_from_memory = FALSE;
  wood->moe_mpa = 12000.0;
  wood->comp_perp_mpa = 6.0;
  card.is_hardness_estimated = FALSE;
  card.movement = 3.0;
  g_autofree char *few = join (bs_words_wood_figures (&card));
  g_assert_cmpstr (few, ==, "Source: a table.");
}

/* From 7.7 to 11 % the linear formula holds; from green wood on it does not. */
static void
test_formula_and_fixing (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  plan->slab.fixing = (BsFixing){ BS_FIXED_BACK, 8.0, 1.5 };
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *linear = bs_words_movement_formula (&results->movement, BS_UNIT_SYSTEM_METRIC);
  g_autofree char *fixing = bs_words_fixing (results);
  BsMovement green = results->movement;

  green.glued_pct = 28.0;
  g_autofree char *other = bs_words_movement_formula (&green, BS_UNIT_SYSTEM_METRIC);
  g_assert_nonnull (strstr (linear, "one coefficient holds, as it does"));
  g_assert_nonnull (strstr (other, "leaves the range"));
  g_assert_nonnull (strstr (fixing, "along its back"));
  g_assert_nonnull (strstr (fixing, "8" THIN "mm"));
  g_assert_nonnull (strstr (fixing, "1.5" THIN "mm"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/timber/movement", test_movement);
  g_test_add_func ("/words/timber/movement-on-flat", test_movement_on_flat);
  g_test_add_func ("/words/timber/movement-not-known", test_movement_not_known);
  g_test_add_func ("/words/timber/milling", test_milling);
  g_test_add_func ("/words/timber/need", test_need);
  g_test_add_func ("/words/timber/layers", test_layers);
  g_test_add_func ("/words/timber/unfit", test_unfit);
  g_test_add_func ("/words/timber/scales", test_scales);
  for (gsize i = 0; i < G_N_ELEMENTS (load_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/words/timber/load/", load_rows[i].path, NULL);
      g_test_add_data_func (path, &load_rows[i], test_load);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (cost_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/words/timber/cost/", cost_rows[i].path, NULL);
      g_test_add_data_func (path, &cost_rows[i], test_cost);
    }
  g_test_add_func ("/words/timber/fit", test_fit);
  g_test_add_func ("/words/timber/figures", test_figures);
  g_test_add_func ("/words/timber/formula-and-fixing", test_formula_and_fixing);
  return g_test_run ();
}
