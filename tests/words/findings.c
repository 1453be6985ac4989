/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/words.h"

#include "shops.h"

#include <math.h>
#include <string.h>

#define THIN "\u202f"

/* Each kind of finding with values of its own, on the perfect plan, whose laminations are labelled
 * 1 to 8: what its sentences must name. */
typedef struct
{
  const char *path;
  BsFinding finding;
  const char *in_reason[3];
  const char *in_remedy;
} Row;

static const Row rows[] = {
  { "none",
    { BS_FINDING_TOO_FEW_LAMINATIONS, BS_SEVERITY_STOP, -1, -1, 0, { 0 } },
    { "no laminations" },
    "rack" },
  { "one",
    { BS_FINDING_TOO_FEW_LAMINATIONS, BS_SEVERITY_STOP, -1, -1, 0, { 1 } },
    { "only one" },
    "rack" },
  { "thin",
    { BS_FINDING_THIN, BS_SEVERITY_STOP, -1, -1, 0, { 43.2, 45 } },
    { "43.2" THIN "mm", "45" THIN "mm" },
    "taller" },
  { "narrow",
    { BS_FINDING_NARROW, BS_SEVERITY_STOP, -1, -1, 0, { 320, 330 } },
    { "320" THIN "mm", "330" THIN "mm" },
    "Add" },
  { "short",
    { BS_FINDING_SHORT, BS_SEVERITY_STOP, -1, -1, 0, { 1190, 1200 } },
    { "1190" THIN "mm", "1200" THIN "mm" },
    "ends" },
  { "run-out",
    { BS_FINDING_RUN_OUT, BS_SEVERITY_CAUTION, 5, -1, 0, { 0 } },
    { "lamination 6" },
    "lamination 6" },
  { "defect",
    { BS_FINDING_DEFECT_SHOWS, BS_SEVERITY_NOTE, 2, -1, BS_DEFECT_BARK_POCKET, { 1, 100, 140 } },
    { "bark pocket of lamination 3", "100" THIN "mm", "140" THIN "mm" },
    "lamination 3" },
  { "hearts",
    { BS_FINDING_HEARTS_ALIKE, BS_SEVERITY_CAUTION, 2, 3, 0, { 0 } },
    { "laminations 3 and 4" },
    "lamination 4 over or end" },
  { "moisture-apart",
    { BS_FINDING_MOISTURE_APART, BS_SEVERITY_CAUTION, 6, 7, 0, { 2.5, 2 } },
    { "laminations 7 and 8", "2.5" THIN "%", "2" THIN "%" },
    "7 and 8" },
  { "moisture-unfit",
    { BS_FINDING_MOISTURE_UNFIT, BS_SEVERITY_STOP, 0, -1, 0, { 16, 7.7, 11 } },
    { "Lamination 1 has 16" THIN "%", "7.7" THIN "%", "11" THIN "%" },
    "lamination 1" },
  { "clamps-missing",
    { BS_FINDING_CLAMPS_MISSING, BS_SEVERITY_STOP, -1, -1, 0, { 10, 9 } },
    { "10 clamps", "9 of those" },
    "cauls" },
  { "clamps-weak",
    { BS_FINDING_CLAMPS_WEAK, BS_SEVERITY_CAUTION, -1, -1, 0, { 54000, 48000 } },
    { "54" THIN "kN", "48" THIN "kN", "1" THIN "MPa" },
    "scrap" },
  { "clamp-reach",
    { BS_FINDING_CLAMP_REACH, BS_SEVERITY_STOP, -1, -1, 0, { 320, 300, 12 } },
    { "320" THIN "mm", "300" THIN "mm" },
    "320" THIN "mm" },
  { "clamp-reach-of-some",
    { BS_FINDING_CLAMP_REACH, BS_SEVERITY_CAUTION, -1, -1, 0, { 600, 900, 6 } },
    { "600" THIN "mm", "6 of the clamps" },
    "600" THIN "mm" },
  { "crushing",
    { BS_FINDING_CRUSHING, BS_SEVERITY_STOP, -1, -1, 0, { 11.25, 10 } },
    { "11.2" THIN "MPa", "10" THIN "MPa" },
    "pads" },
  { "clamps-placed",
    { BS_FINDING_CLAMPS_PLACED, BS_SEVERITY_STOP, -1, -1, 0, { 13, 12 } },
    { "places 13", "shop has 12" },
    "borrow" },
  { "clamp-forced",
    { BS_FINDING_CLAMP_FORCED, BS_SEVERITY_STOP, -1, -1, 0, { 6600, 6000 } },
    { "6.6" THIN "kN", "6" THIN "kN" },
    "Ease" },
  { "whole-time",
    { BS_FINDING_OPEN_TIME, BS_SEVERITY_STOP, -1, -1, 0, { 750, 600, 0 } },
    { "last clamp", "12" THIN "min 30" THIN "s", "10" THIN "min" },
    "packs" },
  { "open-part",
    { BS_FINDING_OPEN_TIME, BS_SEVERITY_STOP, -1, -1, 0, { 24, 20, 1 } },
    { "lies open", "24" THIN "s", "20" THIN "s" },
    "packs" },
  { "cold",
    { BS_FINDING_COLD, BS_SEVERITY_STOP, -1, -1, 0, { 9.5, 10 } },
    { "9.5" THIN "°C", "10" THIN "°C" },
    "Warm" },
  { "heavy",
    { BS_FINDING_HEAVY, BS_SEVERITY_CAUTION, -1, -1, 0, { 59.3, 23 } },
    { "59.3" THIN "kg", "23" THIN "kg" },
    "help" },
  { "planer",
    { BS_FINDING_PLANER_NARROW, BS_SEVERITY_STOP, -1, -1, 0, { 320, 300 } },
    { "320" THIN "mm", "300" THIN "mm" },
    "sled" },
  { "wood",
    { BS_FINDING_WOOD_UNKNOWN, BS_SEVERITY_CAUTION, 6, -1, 0, { 0 } },
    { "lamination 7" },
    "lamination 7" },
};

/* Whole sentences: a capital first, a full stop last, no placeholder left over. */
static void
assert_sentence (const char *text)
{
  g_assert_nonnull (text);
  g_assert_true (g_ascii_isupper (text[0]));
  g_assert_true (g_str_has_suffix (text, "."));
  g_assert_null (strchr (text, '{'));
  g_assert_null (strstr (text, "(null)"));
  g_assert_null (strstr (text, "nan"));
}

static void
test_sentences (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *reason = bs_words_finding_reason (&row->finding, results);
  g_autofree char *remedy = bs_words_finding_remedy (&row->finding, results);
  const char *title = bs_words_finding_title (&row->finding);

  assert_sentence (reason);
  assert_sentence (remedy);
  g_assert_cmpstr (title, !=, "");
  g_assert_false (g_str_has_suffix (title, "."));
  for (int i = 0; i < 3 && row->in_reason[i] != NULL; i++)
    g_assert_nonnull (strstr (reason, row->in_reason[i]));
  g_assert_nonnull (strstr (remedy, row->in_remedy));
}

static void
test_all_kinds_have_a_row (void)
{
  for (int kind = 0; kind < BS_N_FINDING_KINDS; kind++)
    {
      gboolean has_row = FALSE;
      for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
        has_row = has_row || (int)rows[i].finding.kind == kind;
      g_assert_true (has_row);
    }
}

/* In inches: 43.2 mm is 1 45/64 in, which is nearest to 1 11/16 in. */
static void
test_inches (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  plan->units = BS_UNIT_SYSTEM_INCH;
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *reason = bs_words_finding_reason (&rows[2].finding, results);

  g_assert_nonnull (strstr (reason, "1\u00a011/16" THIN "in"));
  g_assert_null (strstr (reason, "mm"));
}

/* The remedy for a slab too thin names the laminations that decide it, each once. */
static void
test_touching_laminations (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  slab_at (plan, 2)->height = 44.0;
  g_autoptr (BsResults) results = bs_evaluate (plan);
  BsFinding thin = { BS_FINDING_THIN, BS_SEVERITY_STOP, -1, -1, 0, { 44.0, 45.0 } };
  g_autofree char *remedy = bs_words_finding_remedy (&thin, results);

  g_assert_cmpuint (results->flatten.n_touches, >, 0);
  g_assert_nonnull (strstr (remedy, "on these laminations: "));
  const char *list = strstr (remedy, ": ") + 2;
  g_autofree char *names = g_strndup (list, strcspn (list, "."));
  g_auto (GStrv) labels = g_strsplit (names, ", ", -1);
  g_assert_true (g_strv_contains ((const char *const *)labels, "3"));
  for (guint i = 0; labels[i] != NULL; i++)
    for (guint k = 0; k < i; k++)
      g_assert_cmpstr (labels[i], !=, labels[k]);
}

/* Where there are no laminations at all none can be brought from the rack. */
static void
test_no_laminations_anywhere (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *remedy = bs_words_finding_remedy (&rows[0].finding, results);

  g_assert_nonnull (strstr (remedy, "Buying"));
  g_assert_null (strstr (remedy, "rack"));
}

/* A shop without clamps is told so, not that it owns none of some number that nothing was known
 * for. */
static void
test_no_clamps_named (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_ptr_array_set_size (plan->shop.clamps, 0);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *reason
      = bs_words_finding_reason (&g_array_index (results->findings, BsFinding, 0), results);

  g_assert_nonnull (strstr (reason, "names no clamps"));
}

/* On flat only turning over changes the heart side. */
static void
test_hearts_on_flat (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  plan->slab.layup = BS_LAYUP_ON_FLAT;
  g_autoptr (BsResults) results = bs_evaluate (plan);
  BsFinding alike = { BS_FINDING_HEARTS_ALIKE, BS_SEVERITY_CAUTION, 2, 3, 0, { 0 } };
  g_autofree char *remedy = bs_words_finding_remedy (&alike, results);

  g_assert_cmpstr (remedy, ==, "Turn lamination 4 over.");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/words/findings/%s", rows[i].path);
      g_test_add_data_func (path, &rows[i], test_sentences);
    }
  g_test_add_func ("/words/findings/all-kinds", test_all_kinds_have_a_row);
  g_test_add_func ("/words/findings/inches", test_inches);
  g_test_add_func ("/words/findings/touching-laminations", test_touching_laminations);
  g_test_add_func ("/findings/no-laminations-anywhere", test_no_laminations_anywhere);
  g_test_add_func ("/words/findings/no-clamps-named", test_no_clamps_named);
  g_test_add_func ("/words/findings/hearts-on-flat", test_hearts_on_flat);
  return g_test_run ();
}
