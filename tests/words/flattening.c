/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/flattening.h"

#include <math.h>
#include <string.h>

#include "core/text.h"
#include "slabs.h"

#define THIN "\u202f"

typedef struct
{
  const char *path;
  double shimmed, show, under;
  const char *says;
} ChoiceRow;

static const ChoiceRow choice_rows[] = {
  { "alike", 80.0, 80.0, 79.98, "All three come out alike: no shims are needed." },
  { "show-face", 80.0, 80.0, 79.0, "No shims are needed when the show face is cut first." },
  { "underside", 80.0, 79.0, 80.0, "No shims are needed when the underside is cut first." },
  { "shims", 80.0, 78.5, 78.0,
    "Shims keep 1.5" THIN "mm more. Without them, cut the show face first." },
  { "shims-underside", 80.0, 78.0, 78.5,
    "Shims keep 1.5" THIN "mm more. Without them, cut the underside first." },
  { "unknown", NAN, NAN, NAN, "" },
};

static void
test_choice (gconstpointer data)
{
  const ChoiceRow *row = data;
  const BsFlattenResult by_work[BS_N_FLATTEN_WORKS] = {
    [BS_FLATTEN_SHIMMED].thickness = row->shimmed,
    [BS_FLATTEN_SHOW_FACE_FIRST].thickness = row->show,
    [BS_FLATTEN_UNDERSIDE_FIRST].thickness = row->under,
  };
  g_autofree char *text = bs_words_flatten_choice (by_work, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (text, ==, row->says);
}

typedef struct
{
  const char *path;
  guint n; /* laminations of 40 mm */
  double planer;
  const char *says;
} PlanerRow;

static const PlanerRow planer_rows[] = {
  { "empty", 0, 300.0, "nothing to plane" },
  { "none", 3, 0.0, "no planer in the shop" },
  { "too-narrow", 3, 30.0, "alone is wider than the planer, which takes 30" THIN "mm" },
  { "whole", 3, 300.0, "goes through whole" },
  { "packs", 10, 300.0, "planed in 2 packs" },
};

static void
test_planer (gconstpointer data)
{
  const PlanerRow *row = data;
  g_autoptr (BsPlan) plan = slab_new (row->n, 1000.0, 40.0, 60.0);
  plan->shop.planer_width = row->planer;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autofree char *text = bs_words_planer (stack);

  g_assert_nonnull (strstr (text, row->says));
}

static void
test_spot (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 1000.0, 40.0, 60.0);
  g_autoptr (BsStack) stack = NULL;
  const BsDeepSpot spot = { .place = 1, .x = 701.3, .y = 76.6, .depth = 2.14 };

  bs_text_set (&slab_at (plan, 1)->label, "B");
  stack = bs_stack_new (plan);
  g_autofree char *text = bs_words_deep_spot (&spot, stack);
  g_assert_cmpstr (
      text, ==, "B: 2.1" THIN "mm, 701" THIN "mm from the left end, 77" THIN "mm from the front");
}

static void
test_sure (void)
{
  const BsFlattenOdds odds = { .at_95_pct = 84.94, .wanted_pct = 98.0 };
  const BsFlattenOdds thin = { .at_95_pct = 84.94, .wanted_pct = 39.8 };
  g_autoptr (BsPlan) plan = bs_plan_new ();
  const BsFlattenResult result = { .top_most = 3.2, .underside_most = 2.1 };
  g_autofree char *known = bs_words_sure (&odds, plan);
  g_autofree char *unknown = bs_words_sure (NULL, plan);
  g_autofree char *unsure = NULL;
  g_autofree char *most = bs_words_flatten_most (&result, BS_UNIT_SYSTEM_METRIC);

  plan->slab.thickness = 86.0;
  unsure = bs_words_sure (&thin, plan);
  g_assert_cmpstr (unsure, ==, "39 of 100 reach 86" THIN "mm");
  g_assert_cmpstr (known, ==, "95 of 100 reach 84.9" THIN "mm");
  g_assert_cmpstr (unknown, ==, "95 of 100 reach \u2013");
  g_assert_cmpstr (most, ==, "most off: 3.2" THIN "mm above, 2.1" THIN "mm below");
}

/* Every way of working tells its own steps. */
static void
test_steps (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (int work = 0; work < BS_N_FLATTEN_WORKS; work++)
    for (int method = BS_FLATTEN_BY_HAND; method <= BS_FLATTEN_BY_PLANER; method++)
      {
        plan->slab.flatten_work = (BsFlattenWork)work;
        plan->slab.flatten_method = (BsFlattenMethod)method;
        g_autoptr (BsResults) results = bs_evaluate (plan);
        g_assert_true (g_hash_table_add (seen, bs_words_flatten_steps (results)));
      }
}

/* Lined up by their ends, tops level, the front lamination 1 mm lower at its underside: the best
 * tilt that is least leaves it level, so the back corners stand 1 mm over the bench. */
static void
test_shims (void)
{
  g_autoptr (BsPlan) plan = slab_new (5, 1000.0, 40.0, 60.0);

  plan->slab.alignment = BS_ALIGNMENT_SHOW_FACES_DOWN;
  slab_at (plan, 0)->height = 61.0;
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *text = bs_words_flatten_steps (results);
  g_assert_nonnull (strstr (text, "left front 0" THIN "mm, right front 0" THIN
                                  "mm, left back 1" THIN "mm, right back 1" THIN "mm."));
  plan->slab.flatten_work = BS_FLATTEN_SHOW_FACE_FIRST;
  g_autoptr (BsResults) at_rest = bs_evaluate (plan);
  g_autofree char *other = bs_words_flatten_steps (at_rest);
  g_assert_null (strstr (other, "Shims:"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (choice_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/flattening/choice/%s", choice_rows[i].path);
      g_test_add_data_func (path, &choice_rows[i], test_choice);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (planer_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/flattening/planer/%s", planer_rows[i].path);
      g_test_add_data_func (path, &planer_rows[i], test_planer);
    }
  g_test_add_func ("/flattening/spot", test_spot);
  g_test_add_func ("/flattening/sure", test_sure);
  g_test_add_func ("/flattening/steps", test_steps);
  g_test_add_func ("/flattening/shims", test_shims);
  return g_test_run ();
}
