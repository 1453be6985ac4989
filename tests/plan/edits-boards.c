/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits.h"

#include "core/text.h"
#include "plan/document.h"

#include <string.h>

/* Boards a to d; a lamination was cut from b. */
static BsPlan *
new_plan (void)
{
  BsPlan *plan = bs_plan_new ();
  BsLamination *lamination = bs_lamination_new ("strip");

  for (int id = 'a'; id <= 'd'; id++)
    {
      const char name[] = { (char)id, '\0' };
      BsBoard *board = bs_board_new (name);
      bs_text_set (&board->label, name);
      board->length = 1000.0;
      board->width = 100.0;
      board->thickness = 50.0;
      g_ptr_array_add (plan->boards, board);
    }
  bs_text_set (&lamination->board, "b");
  lamination->length = 900.0;
  lamination->thickness = 40.0;
  lamination->height = 60.0;
  g_ptr_array_add (plan->laminations, lamination);
  return plan;
}

/* "a b c d": labels in their order. */
static char *
describe (const BsPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->boards->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "",
                            ((BsBoard *)plan->boards->pdata[i])->label);
  return g_string_free (text, FALSE);
}

static void
check (const BsPlan *before, const BsPlan *after, const char *wanted)
{
  g_autofree char *was = describe (before);
  g_autofree char *is = describe (after);
  g_autofree char *text = bs_document_write (after);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) opened = bs_document_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_cmpstr (was, ==, "a b c d");
  g_assert_cmpstr (is, ==, wanted);
}

static BsBoard *
new_board (const char *id, const char *label)
{
  BsBoard *board = bs_board_new (id);

  bs_text_set (&board->label, label);
  board->length = 800.0;
  board->width = 90.0;
  board->thickness = 30.0;
  return board;
}

typedef struct
{
  const char *path;
  const char *ids[3]; /* "" for new ones */
  const char *labels[3];
  guint at;
  const char *wanted;
} Row;

static const Row rows[] = {
  { "nothing", { NULL }, { NULL }, G_MAXUINT, "a b c d" },
  { "at-the-end", { "", "" }, { "x", "y" }, G_MAXUINT, "a b c d x y" },
  { "in-front", { "", "" }, { "x", "y" }, 0, "x y a b c d" },
  { "between", { "" }, { "x" }, 2, "a b x c d" },
  { "replaced", { "c" }, { "x" }, G_MAXUINT, "a b x d" },
  { "both", { "", "a", "" }, { "x", "y", "z" }, 1, "y x z b c d" },
  { "numbered", { "", "" }, { NULL, "x" }, G_MAXUINT, "a b c d 5 x" },
};

static void
test_put (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (GPtrArray) boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);

  for (guint i = 0; i < G_N_ELEMENTS (row->ids) && row->ids[i] != NULL; i++)
    g_ptr_array_add (boards, new_board (row->ids[i], row->labels[i]));
  g_autoptr (BsPlan) edited = bs_edit_put_boards (plan, boards, NULL, row->at);
  check (plan, edited, row->wanted);
}

/* A defect beyond a board that became shorter is gone. */
static void
test_fits (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (GPtrArray) boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);
  BsDefect knot = { .face = BS_FACE_TOP, .x_from = 900.0, .x_to = 950.0, .across_to = 10.0 };
  BsBoard *board = new_board ("a", "a");

  g_array_append_val (board->defects, knot);
  g_ptr_array_add (boards, board);
  g_autoptr (BsPlan) edited = bs_edit_put_boards (plan, boards, NULL, 0);
  g_assert_cmpuint (((BsBoard *)edited->boards->pdata[0])->defects->len, ==, 0);
  check (plan, edited, "a b c d");
}

/* What was cut from a board that is gone is of no known board. */
static void
test_remove (void)
{
  static const char *const gone[] = { "b", "d", NULL };
  static const char *const none[] = { NULL };
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsPlan) edited = bs_edit_remove_boards (plan, gone);
  g_autoptr (BsPlan) same = bs_edit_remove_boards (plan, none);

  check (plan, edited, "a c");
  check (plan, same, "a b c d");
  g_assert_null (bs_plan_find_lamination (edited, "strip")->board);
  g_assert_cmpstr (bs_plan_find_lamination (same, "strip")->board, ==, "b");
}

/* As the last one; in an empty rack a size that can be kept. */
static void
test_next (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsPlan) empty = bs_plan_new ();
  g_autoptr (BsBoard) next = bs_edit_next_board (plan);
  g_autoptr (BsBoard) first = bs_edit_next_board (empty);
  g_autoptr (GPtrArray) boards = g_ptr_array_new ();

  g_assert_cmpstr (next->id, ==, "");
  g_assert_null (next->label);
  g_assert_cmpfloat_with_epsilon (next->width, 100.0, 1e-12);
  g_ptr_array_add (boards, first);
  g_autoptr (BsPlan) edited = bs_edit_put_boards (empty, boards, NULL, G_MAXUINT);
  g_autofree char *text = bs_document_write (edited);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) opened = bs_document_parse (text, strlen (text), &error);
  g_assert_no_error (error);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/edits-boards/put/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_put);
    }
  g_test_add_func ("/edits-boards/fits", test_fits);
  g_test_add_func ("/edits-boards/remove", test_remove);
  g_test_add_func ("/edits-boards/next", test_next);
  return g_test_run ();
}
