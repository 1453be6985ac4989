/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack.h"

#include "core/text.h"
#include "plan/edits.h"

/* A session with boards a to e. */
static BsSession *
new_session (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();

  for (int id = 'a'; id <= 'e'; id++)
    {
      const char name[] = { (char)id, '\0' };
      BsBoard *board = bs_board_new (name);
      board->length = 1000.0;
      board->width = 100.0;
      board->thickness = 50.0;
      g_ptr_array_add (plan->boards, board);
    }
  return bs_session_new (plan);
}

/* "abcde.": the rows, the empty one as a full stop. */
static char *
describe (BsRack *rack)
{
  GString *text = g_string_new (NULL);
  guint n = g_list_model_get_n_items (G_LIST_MODEL (rack));

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (BsRackRow) row = g_list_model_get_item (G_LIST_MODEL (rack), i);
      const BsBoard *board = bs_rack_row_get_board (row);
      g_string_append (text, board != NULL ? board->id : ".");
    }
  return g_string_free (text, FALSE);
}

typedef struct
{
  guint position, removed, added, n_calls;
} Change;

static void
items_changed_cb (GListModel *list, guint position, guint removed, guint added, Change *change)
{
  *change = (Change){ position, removed, added, change->n_calls + 1 };
}

static void
row_changed_cb (BsRackRow *row, guint *n)
{
  (*n)++;
}

static void
push (BsSession *session, BsPlan *plan)
{
  bs_session_push (session, plan, "test", NULL);
  bs_plan_unref (plan);
}

static void
test_follows (void)
{
  g_autoptr (BsSession) session = new_session ();
  g_autoptr (BsRack) rack = bs_rack_new (session);
  Change change = { 0 };
  g_autofree char *before = describe (rack);

  g_assert_cmpstr (before, ==, "abcde.");
  g_signal_connect (rack, "items-changed", G_CALLBACK (items_changed_cb), &change);

  const char *const gone[] = { "b", "d", NULL };
  push (session, bs_edit_remove_boards (bs_session_get_plan (session), gone));
  g_autofree char *without = describe (rack);
  g_assert_cmpstr (without, ==, "ace.");
  g_assert_cmpuint (change.position, ==, 1);
  g_assert_cmpuint (change.removed, ==, 3);
  g_assert_cmpuint (change.added, ==, 1);

  bs_history_undo (bs_session_get_history (session));
  g_autofree char *again = describe (rack);
  g_assert_cmpstr (again, ==, "abcde.");

  g_autoptr (GPtrArray) fresh = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);
  g_ptr_array_add (fresh, bs_edit_next_board (bs_session_get_plan (session)));
  push (session, bs_edit_put_boards (bs_session_get_plan (session), fresh, NULL, G_MAXUINT));
  g_autofree char *more = describe (rack);
  g_assert_cmpstr (more, ==, "abcdeboard-6.");
  g_assert_cmpuint (change.position, ==, 5);
  g_assert_cmpuint (change.removed, ==, 0);
  g_assert_cmpuint (change.added, ==, 1);
  g_assert_cmpuint (change.n_calls, ==, 3);
}

/* A board that changes is the same row, and none but it is told. */
static void
test_changes (void)
{
  g_autoptr (BsSession) session = new_session ();
  g_autoptr (BsRack) rack = bs_rack_new (session);
  Change change = { 0 };
  guint n_third = 0, n_others = 0;

  g_signal_connect (rack, "items-changed", G_CALLBACK (items_changed_cb), &change);
  for (guint i = 0; i < 5; i++)
    {
      g_autoptr (BsRackRow) row = g_list_model_get_item (G_LIST_MODEL (rack), i);
      g_signal_connect (row, "changed", G_CALLBACK (row_changed_cb), i == 2 ? &n_third : &n_others);
    }
  g_autoptr (BsBoard) board = bs_board_copy (bs_session_get_plan (session)->boards->pdata[2]);
  board->width = 123.0;
  push (session, bs_edit_put_board (bs_session_get_plan (session), board));
  g_assert_cmpuint (n_third, ==, 1);
  g_assert_cmpuint (n_others, ==, 0);
  g_assert_cmpuint (change.n_calls, ==, 0);

  /* In other units all look other. */
  push (session, bs_edit_set_units (bs_session_get_plan (session), BS_UNIT_SYSTEM_INCH));
  g_assert_cmpuint (n_third, ==, 2);
  g_assert_cmpuint (n_others, ==, 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rack/follows", test_follows);
  g_test_add_func ("/rack/changes", test_changes);
  return g_test_run ();
}
