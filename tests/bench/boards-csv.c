/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/median.h"
#include "plan/boards-csv.h"
#include "plan/edits.h"

#include <string.h>

/* Reading a table of 10,000 boards, every tenth of which is broken, and writing as many. */

#define N_ROWS 10000

#define RUNS 21

typedef struct
{
  BsPlan *plan; /* empty */
  BsPlan *full; /* with the boards that were read */
  char *text;
} Bench;

static char *
write_table (void)
{
  GString *text = g_string_new ("label,wood,thickness,width,length,moisture,price,bow,cup,twist\n");

  for (int i = 0; i < N_ROWS; i++)
    g_string_append_printf (text, "%d,Oak European,8/4,%s,%d'%s,8.%d,42.50,%d,1,0\n", i + 1,
                            i % 10 == 3 ? "wide" : "7 1/2\"", 7 + i % 4, i % 2 == 0 ? " 6\"" : "",
                            i % 10, i % 5);
  return g_string_free (text, FALSE);
}

static void
read_it (gpointer data)
{
  const Bench *bench = data;
  bs_boards_table_free (bs_boards_csv_read (bench->text, strlen (bench->text), bench->plan, NULL));
}

static void
write_it (gpointer data)
{
  const Bench *bench = data;
  g_free (bs_boards_csv_write (bench->full));
}

int
main (void)
{
  g_autofree char *text = write_table ();
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsBoardsTable) table = bs_boards_csv_read (text, strlen (text), plan, NULL);
  g_autoptr (BsPlan) full = bs_edit_put_boards (plan, table->boards, table->woods, G_MAXUINT);
  Bench bench = { plan, full, text };

  g_print ("%d rows, %u boards, %u broken rows, medians of %d runs, %u processors\n", N_ROWS,
           table->boards->len, table->n_broken, RUNS, g_get_num_processors ());
  g_print ("read %.1f ms, write %.1f ms\n", bench_median_ms (read_it, &bench, RUNS),
           bench_median_ms (write_it, &bench, RUNS));
  return 0;
}
