/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/check.h"
#include "plan/edits.h"

#include "slabs.h"

/* "123456 0+5 1+3": the order and the packs. */
static char *
describe (const BsPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->order->len; i++)
    g_string_append (text, g_array_index (plan->order, BsPlacement, i).lamination);
  for (guint i = 0; i < plan->packs->len; i++)
    {
      const BsPack *pack = &g_array_index (plan->packs, BsPack, i);
      g_string_append_printf (text, " %d+%d", pack->first, pack->count);
    }
  return g_string_free (text, FALSE);
}

#define ASIDE (-1)

/* Of packs that nest, what happens when one of six laminations goes elsewhere. */
typedef struct
{
  const char *path;
  BsPack packs[3];
  guint n_packs;
  int from, to;
  const char *wanted;
} Row;

static const Row rows[] = {
  { "within-both", { { 0, 5 }, { 1, 3 } }, 2, 1, 3, "134256 0+5 1+3" },
  { "out-of-the-inner", { { 0, 5 }, { 1, 3 } }, 2, 1, 4, "134526 0+5 1+2" },
  { "into-the-inner", { { 0, 5 }, { 1, 3 } }, 2, 0, 2, "231456 0+5 0+4" },
  { "out-of-both", { { 0, 5 }, { 1, 3 } }, 2, 2, 5, "124563 0+4 1+2" },
  { "into-both", { { 0, 5 }, { 1, 3 } }, 2, 5, 2, "126345 0+6 1+4" },
  { "inner-becomes-outer", { { 0, 3 }, { 1, 2 } }, 2, 0, 1, "213456 0+3" },
  { "outer-becomes-inner", { { 0, 3 }, { 1, 2 } }, 2, 0, 5, "234561 0+2" },
  { "pair-is-left", { { 0, 4 }, { 0, 2 }, { 2, 2 } }, 3, 0, ASIDE, "23456 0+3 1+2" },
  { "begins-alike", { { 0, 4 }, { 0, 3 }, { 0, 2 } }, 3, 3, ASIDE, "12356 0+3 0+2" },
};

static void
test_nest (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) plan = slab_new (6, 1000.0, 40.0, 60.0);
  g_autoptr (BsPlan) nested = bs_edit_set_packs (plan, row->packs, row->n_packs);
  g_autoptr (BsPlan) edited = row->to == ASIDE ? bs_edit_set_aside (nested, row->from)
                                               : bs_edit_move (nested, row->from, row->to);
  g_autofree char *text = describe (edited);

  g_assert_cmpstr (text, ==, row->wanted);
  bs_check_plan (edited, &error);
  g_assert_no_error (error);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/edits-packs/%s", rows[i].path);
      g_test_add_data_func (path, &rows[i], test_nest);
    }
  return g_test_run ();
}
