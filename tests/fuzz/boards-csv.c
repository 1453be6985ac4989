/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* Whatever bytes a table holds: it is refused with a sentence, or each of its rows is read into a
 * board that a plan can hold, or told with the line that it is on; and what can be read can be
 * written and read again. An ordinary test calls this with the mutations of driver.c; for libFuzzer
 * see document.c. */

#include "fuzz.h"

#include "plan/boards-csv.h"
#include "plan/document.h"
#include "plan/edits.h"

#include <string.h>

static void
check_sentence (const char *sentence)
{
  g_assert_true (g_utf8_validate (sentence, -1, NULL));
  g_assert_cmpstr (sentence, !=, "");
}

static guint
count_lines (const guint8 *data, gsize size)
{
  guint n = 1;

  for (gsize i = 0; i < size; i++)
    n += data[i] == '\n' || data[i] == '\r';
  return n;
}

static void
check_table (const BsBoardsTable *table, BsPlan *plan, guint n_lines)
{
  g_autoptr (BsPlan) edited = bs_edit_put_boards (plan, table->boards, table->woods, G_MAXUINT);
  g_autofree char *saved = bs_document_write (edited);
  g_autoptr (GError) error = NULL;
  guint last = 0;

  for (guint i = 0; i < table->problems->len; i++)
    {
      const BsBoardsProblem *problem = table->problems->pdata[i];
      check_sentence (problem->sentence);
      g_assert_cmpuint (problem->line, >=, MAX (last, 1));
      g_assert_cmpuint (problem->line, <=, n_lines);
      last = problem->line;
    }
  g_assert_cmpuint (table->n_broken, <=, n_lines);

  g_autoptr (BsPlan) opened = bs_document_parse (saved, strlen (saved), &error);
  g_assert_no_error (error);
  g_autofree char *written = bs_boards_csv_write (opened);
  g_autoptr (BsBoardsTable) again = bs_boards_csv_read (written, strlen (written), plan, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (again->boards->len + again->n_broken, ==, table->boards->len);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BsBoardsTable) table = bs_boards_csv_read ((const char *)data, size, plan, &error);
  g_autofree char *text = g_utf8_make_valid ((const char *)data, (gssize)size);
  g_autoptr (BsBoardsTable) pasted = bs_boards_paste (text, plan, 0, BS_BOARD_LABEL, NULL);

  if (table == NULL)
    check_sentence (error->message);
  else
    check_table (table, plan, count_lines (data, size));
  g_assert_true (pasted == NULL || pasted->n_broken == 0 || pasted->problems->len > 0);
  return 0;
}
