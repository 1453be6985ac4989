/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-table.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "core/text.h"
#include "desk.h"
#include "plan/own-tables.h"
#include "plan/tables.h"

/* The screen of the tests has a home of its own, so that nobody's file is touched. The order of the
 * tests matters: the table is read when it is first asked for. */

static void
write_own_file (const char *text)
{
  g_autofree char *path = bs_own_tables_get_path ();
  g_autofree char *folder = g_path_get_dirname (path);

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

/* A file that cannot be used is told in a sentence, and the program's table stands in. */
static void
test_broken_file (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();

  write_own_file ("{\"format\": \"broadstave-woods\", \"version\": 1, \"woods\": [{\"id\": 7}]}");
  BsWoodTable *table = bs_wood_table_get ();
  g_autoptr (GPtrArray) woods = bs_wood_table_list (table, plan);

  g_assert_nonnull (strstr (bs_wood_table_get_problem (table), "woods[0].id is 7"));
  g_assert_cmpuint (woods->len, ==, bs_tables_get_woods ()->len);
  g_assert_false (bs_wood_table_keep (table, bs_tables_find_wood ("teak"), NULL));
}

static void
count_cb (BsWoodTable *table, guint *count)
{
  (*count)++;
}

static void
test_keep_and_forget (void)
{
  BsWoodTable *table = bs_wood_table_get ();
  g_autoptr (BsWood) teak = bs_wood_copy (bs_tables_find_wood ("teak"));
  g_autoptr (GError) error = NULL;
  guint count = 0;
  gulong handler = g_signal_connect (table, "changed", G_CALLBACK (count_cb), &count);

  write_own_file ("{\"format\": \"broadstave-woods\", \"version\": 1, \"woods\": []}");
  teak->price_minor_per_m3 = 500000.0;
  g_assert_true (bs_wood_table_keep (table, teak, &error));
  g_assert_no_error (error);
  g_assert_null (bs_wood_table_get_problem (table));
  g_assert_true (bs_wood_table_is_kept (table, "teak"));
  g_assert_false (bs_wood_table_is_kept (table, "sapele"));
  g_assert_cmpfloat_with_epsilon (bs_wood_table_find (table, "teak")->price_minor_per_m3, 500000.0,
                                  1e-9);

  g_assert_true (bs_wood_table_forget (table, "teak", &error));
  g_assert_false (bs_wood_table_is_kept (table, "teak"));
  g_assert_true (isnan (bs_wood_table_find (table, "teak")->price_minor_per_m3));
  g_assert_cmpuint (count, ==, 2);
  g_signal_handler_disconnect (table, handler);
}

/* A plan's own wood is among them, by its name; of a wood that it shares, its figures count. */
static void
test_list_of_a_plan (void)
{
  BsWoodTable *table = bs_wood_table_get ();
  g_autoptr (BsPlan) plan = bs_plan_new ();
  BsWood *plum = bs_wood_new ("plum");
  BsWood *teak = bs_wood_copy (bs_tables_find_wood ("teak"));

  bs_text_set (&plum->name, "Plum");
  teak->side_hardness_n = 4321.0;
  g_ptr_array_add (plan->woods, plum);
  g_ptr_array_add (plan->woods, teak);
  g_autoptr (GPtrArray) woods = bs_wood_table_list (table, plan);
  guint found = 0;

  g_assert_cmpuint (woods->len, ==, bs_tables_get_woods ()->len + 1);
  for (guint i = 0; i < woods->len; i++)
    {
      const BsWood *wood = woods->pdata[i];
      found += wood == plum || wood == teak ? 1 : 0;
      if (i > 0)
        g_assert_cmpint (g_utf8_collate (((BsWood *)woods->pdata[i - 1])->name, wood->name), <, 0);
    }
  g_assert_cmpuint (found, ==, 2);
  g_assert_null (bs_wood_table_find (table, "plum"));
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/wood-table/broken-file", test_broken_file);
  g_test_add_func ("/wood-table/keep-and-forget", test_keep_and_forget);
  g_test_add_func ("/wood-table/list-of-a-plan", test_list_of_a_plan);
  return g_test_run ();
}
