/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/own-tables.h"

#include "plan/document.h"
#include "core/text.h"
#include "plan/tables.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define HEAD "{\"format\": \"broadstave-woods\", \"version\": 1, \"woods\": ["

static GPtrArray *
load (const char *text, GError **error)
{
  g_autofree char *folder = g_dir_make_tmp ("own-tables-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "woods.json", NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  GPtrArray *woods = bs_own_tables_load_woods (path, error);
  g_assert_cmpint (g_remove (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  return woods;
}

static const BsWood *
find (const GPtrArray *woods, const char *id)
{
  for (guint i = 0; i < woods->len; i++)
    if (g_str_equal (((const BsWood *)woods->pdata[i])->id, id))
      return woods->pdata[i];
  g_assert_not_reached ();
}

/* The person's figures over the program's, which stay where the person says nothing; the program's
 * own table does not change. */
static void
test_override (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) woods
      = load (HEAD "{\"id\": \"american-beech\", \"side_hardness_N\": 6100, "
                   "\"price_minor_per_m3\": 150000}]}",
              &error);
  g_assert_no_error (error);
  const BsWood *beech = find (woods, "american-beech");
  const BsWood *table = bs_tables_find_wood ("american-beech");

  g_assert_cmpuint (woods->len, ==, bs_tables_get_woods ()->len);
  g_assert_cmpstr (beech->name, ==, table->name);
  g_assert_cmpfloat_with_epsilon (beech->side_hardness_n, 6100.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (beech->price_minor_per_m3, 150000.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (beech->coef_tangential, table->coef_tangential, 1e-15);
  g_assert_nonnull (strstr (beech->source, "FPL-GTR-190"));
  g_assert_nonnull (strstr (beech->source, "set by you: side_hardness_N, price_minor_per_m3"));
  g_assert_cmpfloat_with_epsilon (table->side_hardness_n, 5800.0, 1e-12);
}

/* A wood of the person's own, by its density, in its place by name. */
static void
test_own_wood (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) woods
      = load (HEAD "{\"id\": \"plum\", \"name\": \"Plum\", \"kind\": \"hardwood\", "
                   "\"density_12_kg_per_m3\": 784, \"bond_class\": \"well\"}]}",
              &error);
  g_assert_no_error (error);
  const BsWood *plum = find (woods, "plum");

  g_assert_cmpuint (woods->len, ==, bs_tables_get_woods ()->len + 1);
  g_assert_cmpfloat_with_epsilon (plum->sg_12, 0.7, 1e-12); /* 784 / 1120 */
  g_assert_true (isnan (plum->side_hardness_n));
  g_assert_cmpint (plum->bond, ==, BS_BOND_WELL);
  g_assert_cmpstr (plum->source, ==, "set by you");
  for (guint i = 1; i < woods->len; i++)
    g_assert_cmpint (
        strcmp (((BsWood *)woods->pdata[i - 1])->name, ((BsWood *)woods->pdata[i])->name), <, 0);
}

static void
test_own_source (void)
{
  g_autoptr (GPtrArray) woods = load (
      HEAD "{\"id\": \"teak\", \"sg_12\": 0.6, \"source\": \"weighed in the shop\"}]}", NULL);

  g_assert_cmpstr (find (woods, "teak")->source, ==, "weighed in the shop");
}

static void
test_no_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) woods = bs_own_tables_load_woods ("/nowhere/woods.json", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (woods->len, ==, bs_tables_get_woods ()->len);
}

static void
test_not_a_file (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (bs_own_tables_load_woods ("/", &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ);
}

static void
test_path (void)
{
  g_autofree char *path = bs_own_tables_get_path ();

  g_assert_true (g_str_has_prefix (path, g_get_user_data_dir ()));
  g_assert_true (g_str_has_suffix (path, "/broadstave/woods.json"));
}

/* A folder that is not there yet, below one of its own for each test. */
static char *
new_path (char **folder)
{
  *folder = g_dir_make_tmp ("own-tables-XXXXXX", NULL);
  return g_build_filename (*folder, "broadstave", "woods.json", NULL);
}

static void
remove_path (const char *path, const char *folder)
{
  g_autofree char *below = g_path_get_dirname (path);

  (void)g_remove (path);
  (void)g_rmdir (below);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* What is kept is there when it is read again; of a wood of the program's only what differs is
 * written, and its source says so; what other rows say stays, and a row goes when it is forgotten.
 */
static void
test_keep (void)
{
  g_autofree char *folder = NULL;
  g_autofree char *path = new_path (&folder);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsWood) beech = bs_wood_copy (bs_tables_find_wood ("american-beech"));
  g_autoptr (BsWood) plum = bs_wood_new ("plum");
  g_autofree char *text = NULL;

  beech->price_minor_per_m3 = 190000.0;
  bs_text_set (&plum->name, "Plum");
  plum->sg_12 = 0.7;
  g_assert_true (bs_own_tables_keep_wood (path, beech, &error));
  g_assert_true (bs_own_tables_keep_wood (path, plum, &error));
  plum->sg_12 = 0.71;
  g_assert_true (bs_own_tables_keep_wood (path, plum, &error));
  g_assert_no_error (error);

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_nonnull (
      strstr (text, "{ \"id\": \"american-beech\", \"price_minor_per_m3\": 190000 }"));
  g_autoptr (GPtrArray) woods = bs_own_tables_load_woods (path, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (woods->len, ==, bs_tables_get_woods ()->len + 1);
  g_assert_cmpfloat_with_epsilon (find (woods, "plum")->sg_12, 0.71, 1e-12);
  g_assert_nonnull (
      strstr (find (woods, "american-beech")->source, "set by you: price_minor_per_m3"));

  g_assert_true (bs_own_tables_forget_wood (path, "american-beech", &error));
  g_assert_true (bs_own_tables_forget_wood (path, "american-beech", &error));
  g_autoptr (GPtrArray) fewer = bs_own_tables_load_woods (path, &error);
  g_assert_no_error (error);
  g_assert_true (isnan (find (fewer, "american-beech")->price_minor_per_m3));
  g_assert_cmpfloat_with_epsilon (find (fewer, "plum")->sg_12, 0.71, 1e-12);
  remove_path (path, folder);
}

static void
test_keep_source (void)
{
  g_autofree char *folder = NULL;
  g_autofree char *path = new_path (&folder);
  g_autofree char *below = g_path_get_dirname (path);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_mkdir (below, 0700), ==, 0);
  g_assert_true (g_file_set_contents (
      path, HEAD "{\"id\": \"teak\", \"sg_12\": 0.6, \"source\": \"weighed in the shop\"}]}", -1,
      NULL));
  g_autoptr (GPtrArray) before = bs_own_tables_load_woods (path, &error);
  g_autoptr (BsWood) teak = bs_wood_copy (find (before, "teak"));
  teak->side_hardness_n = 4500.0;
  g_assert_true (bs_own_tables_keep_wood (path, teak, &error));
  g_assert_no_error (error);
  g_autoptr (GPtrArray) after = bs_own_tables_load_woods (path, &error);
  g_assert_cmpstr (find (after, "teak")->source, ==, "weighed in the shop");
  g_assert_cmpfloat_with_epsilon (find (after, "teak")->side_hardness_n, 4500.0, 1e-12);
  remove_path (path, folder);
}

/* A file that is wrong somewhere is the person's work: it is not written over. */
static void
test_keep_in_a_broken_file (void)
{
  g_autofree char *folder = NULL;
  g_autofree char *path = new_path (&folder);
  g_autofree char *below = g_path_get_dirname (path);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_mkdir (below, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, HEAD "{\"id\": 7}]}", -1, NULL));
  g_assert_false (bs_own_tables_keep_wood (path, bs_tables_find_wood ("teak"), &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, HEAD "{\"id\": 7}]}");
  remove_path (path, folder);
}

static void
test_keep_nowhere (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (
      bs_own_tables_keep_wood ("/proc/nowhere/woods.json", bs_tables_find_wood ("teak"), &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ);
}

/* Refused whole, with a sentence; nothing ends the program. */
typedef struct
{
  const char *path;
  const char *text;
  const char *wanted; /* in the sentence */
} BadRow;

static const BadRow bad_rows[] = {
  { "empty", "", "line 1" },
  { "not-json", "woods", "line 1" },
  { "list", "[]", "broadstave-woods" },
  { "other-format", "{\"format\": \"broadstave-plan\", \"version\": 1}", "broadstave-woods" },
  { "format-as-number", "{\"format\": 1, \"version\": 1, \"woods\": []}", "broadstave-woods" },
  { "later", "{\"format\": \"broadstave-woods\", \"version\": 2, \"woods\": []}", "1" },
  { "no-woods", "{\"format\": \"broadstave-woods\", \"version\": 1}", "“woods”" },
  { "woods-as-text", "{\"format\": \"broadstave-woods\", \"version\": 1, \"woods\": \"teak\"}",
    "“woods”" },
  { "row-as-text", HEAD "\"teak\"]}", "woods[0] is not an object" },
  { "no-id", HEAD "{\"name\": \"Plum\"}]}", "woods[0].id is missing" },
  { "id-as-number", HEAD "{\"id\": 7, \"name\": \"Plum\"}]}", "woods[0].id is 7" },
  { "no-name", HEAD "{\"id\": \"plum\"}]}", "woods[0].name is missing" },
  { "twice", HEAD "{\"id\": \"teak\"}, {\"id\": \"teak\"}]}", "woods[1] has an id" },
  { "too-hard", HEAD "{\"id\": \"teak\"}, {\"id\": \"sapele\", \"side_hardness_N\": 99999}]}",
    "woods[1].side_hardness_N is 99999 where a number from 100 to 30000" },
  { "hard-as-text", HEAD "{\"id\": \"teak\", \"side_hardness_N\": \"very\"}]}",
    "woods[0].side_hardness_N is the text “very”" },
};

static void
test_bad (gconstpointer data)
{
  const BadRow *row = data;
  g_autoptr (GError) error = NULL;

  g_assert_null (load (row->text, &error));
  g_assert_nonnull (error);
  g_assert_true (error->domain == BS_DOCUMENT_ERROR);
  g_assert_nonnull (strstr (error->message, row->wanted));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/own-tables/override", test_override);
  g_test_add_func ("/own-tables/own-wood", test_own_wood);
  g_test_add_func ("/own-tables/own-source", test_own_source);
  g_test_add_func ("/own-tables/no-file", test_no_file);
  g_test_add_func ("/own-tables/not-a-file", test_not_a_file);
  g_test_add_func ("/own-tables/path", test_path);
  g_test_add_func ("/own-tables/keep", test_keep);
  g_test_add_func ("/own-tables/keep/source", test_keep_source);
  g_test_add_func ("/own-tables/keep/broken-file", test_keep_in_a_broken_file);
  g_test_add_func ("/own-tables/keep/nowhere", test_keep_nowhere);
  for (gsize i = 0; i < G_N_ELEMENTS (bad_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/own-tables/bad/", bad_rows[i].path, NULL);
      g_test_add_data_func (path, &bad_rows[i], test_bad);
    }
  return g_test_run ();
}
