/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/document.h"

#include "core/results.h"
#include "bench/median.h"
#include "plan/report.h"

#include <glib/gstdio.h>
#include <string.h>

/* Opening, saving and reporting the library's counter, a plan of 60 laminations. */

#define RUNS 101

typedef struct
{
  const char *path; /* of the example */
  char *copy;       /* where it is saved to */
  char *text;
  BsPlan *plan;
  BsResults *results;
} Bench;

static void
load (gpointer data)
{
  const Bench *bench = data;
  bs_plan_unref (bs_document_load (bench->path, NULL));
}

static void
parse (gpointer data)
{
  const Bench *bench = data;
  bs_plan_unref (bs_document_parse (bench->text, strlen (bench->text), NULL));
}

static void
save (gpointer data)
{
  const Bench *bench = data;
  bs_document_save (bench->plan, bench->copy, NULL);
}

static void
write_text (gpointer data)
{
  const Bench *bench = data;
  g_free (bs_document_write (bench->plan));
}

static void
report (gpointer data)
{
  const Bench *bench = data;
  g_free (bs_report_write (bench->results, NULL));
}

int
main (int argc, char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("broadstave-XXXXXX", NULL);
  g_autofree char *copy = g_build_filename (folder, "copy.broadstave", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  if (argc != 2 || folder == NULL || !g_file_get_contents (argv[1], &text, NULL, &error))
    g_error ("%s", error != NULL ? error->message : "usage: bench-document PLAN");
  g_autoptr (BsPlan) plan = bs_document_parse (text, strlen (text), &error);
  if (plan == NULL)
    g_error ("%s", error->message);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  Bench bench = { argv[1], copy, text, plan, results };

  g_print ("a plan of %u laminations, %" G_GSIZE_FORMAT
           " bytes, medians of %d runs, %u processors\n",
           plan->order->len, strlen (text), RUNS, g_get_num_processors ());
  g_print ("open %.2f ms (of which reading the text %.2f ms)\n",
           bench_median_ms (load, &bench, RUNS), bench_median_ms (parse, &bench, RUNS));
  g_print ("save to disk %.2f ms (of which writing the text %.2f ms)\n",
           bench_median_ms (save, &bench, RUNS), bench_median_ms (write_text, &bench, RUNS));
  g_print ("report %.2f ms\n", bench_median_ms (report, &bench, RUNS));

  (void)g_remove (copy);
  (void)g_rmdir (folder);
  return 0;
}
