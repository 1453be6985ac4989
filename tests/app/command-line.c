/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/command-line.h"

#include <glib/gstdio.h>

/* Arguments and what they come to. PLAN stands for an example plan, NONE for a file that is not
 * there, BAD for one that is no plan, OUT for a file to be written. */
typedef struct
{
  const char *path;
  const char *arguments;
  gboolean is_done; /* else a window is wanted */
  int status;
  const char *out; /* pattern of what is written to stdout */
  const char *err;
} Row;

static const Row rows[] = {
  { "/command-line/no-arguments", "", FALSE, 0, "", "" },
  { "/command-line/plan-for-a-window", "PLAN", FALSE, 0, "", "" },
  { "/command-line/version", "--version", TRUE, 0, "Broadstave *GTK 4.*GLib 2.*Cairo 1.*", "" },
  { "/command-line/report/fine", "--report PLAN", TRUE, 0, "{*\"final_thickness_mm\"*}\n", "" },
  { "/command-line/report/stop", "--report STOP", TRUE, 1, "{*\"final_thickness_mm\"*}\n", "" },
  { "/command-line/report/plan-first", "PLAN --report", TRUE, 0, "{*}\n", "" },
  { "/command-line/report/no-plan", "--report", TRUE, 2, "", "broadstave: One plan is needed*" },
  { "/command-line/report/two-plans", "--report PLAN PLAN", TRUE, 2, "", "broadstave: One plan*" },
  { "/command-line/report/no-file", "--report NONE", TRUE, 2, "", "broadstave: *no-such-plan*" },
  { "/command-line/report/no-plan-file", "--report BAD", TRUE, 2, "", "broadstave: *" },
  { "/command-line/export/pdf", "--export OUT.pdf PLAN", TRUE, 0, "", "" },
  { "/command-line/export/svg", "--export OUT.svg PLAN", TRUE, 0, "", "" },
  { "/command-line/export/png", "--export OUT.png PLAN", TRUE, 0, "", "" },
  { "/command-line/export/stop", "--export OUT.pdf STOP", TRUE, 1, "", "" },
  { "/command-line/export/and-report", "--export OUT.pdf --report PLAN", TRUE, 0, "{*}\n", "" },
  { "/command-line/export/other-ending", "--export OUT.doc PLAN", TRUE, 2, "", "broadstave: *" },
  { "/command-line/export/no-folder", "--export /no/such/folder/x.pdf PLAN", TRUE, 2, "",
    "broadstave: *" },
  { "/command-line/export/no-file-name", "--export", TRUE, 2, "", "broadstave: *" },
  { "/command-line/unknown-option", "--no-such-option", TRUE, 2, "", "broadstave: *" },
};

static char *folder;

static char *
expand (const char *word)
{
  const char *source = g_getenv ("BROADSTAVE_SOURCE");

  if (g_str_equal (word, "PLAN"))
    return g_build_filename (source, "data/examples/bakery-counter.broadstave", NULL);
  if (g_str_equal (word, "STOP"))
    return g_build_filename (source, "data/examples/wedging-table.broadstave", NULL);
  if (g_str_equal (word, "NONE"))
    return g_build_filename (folder, "no-such-plan.broadstave", NULL);
  if (g_str_equal (word, "BAD"))
    return g_build_filename (source, "LICENSE", NULL);
  if (g_str_has_prefix (word, "OUT"))
    return g_build_filename (folder, word, NULL);
  return g_strdup (word);
}

static GStrv
expand_all (const char *arguments)
{
  g_auto (GStrv) words = g_strsplit (arguments, " ", -1);
  GStrvBuilder *builder = g_strv_builder_new ();

  g_strv_builder_add (builder, "broadstave");
  for (char **word = words; *word != NULL && **word != '\0'; word++)
    {
      g_autofree char *expanded = expand (*word);

      g_strv_builder_add (builder, expanded);
    }
  GStrv all = g_strv_builder_end (builder);
  g_strv_builder_unref (builder);
  return all;
}

static void
check_written (GStrv arguments, int status)
{
  for (guint i = 0; arguments[i] != NULL; i++)
    if (g_str_has_prefix (arguments[i], folder)
        && !g_str_has_suffix (arguments[i], "plan.broadstave"))
      g_assert_true (g_file_test (arguments[i], G_FILE_TEST_EXISTS)
                     == (status != BS_EXIT_UNUSABLE));
}

/* Runs in a process of its own, whose output and status are then checked. */
static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_auto (GStrv) arguments = expand_all (row->arguments);

  if (g_test_subprocess ())
    {
      int status = -1;
      gboolean is_done;

      /* no display is touched: there is none */
      g_unsetenv ("DISPLAY");
      g_unsetenv ("WAYLAND_DISPLAY");
      is_done = bs_command_line_run (arguments, &status);
      (void)fflush (stdout);
      _Exit (is_done == row->is_done && status == row->status ? 0 : 1);
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_passed ();
  if (row->out[0] != '\0')
    g_test_trap_assert_stdout (row->out);
  if (row->err[0] != '\0')
    g_test_trap_assert_stderr (row->err);
  check_written (arguments, row->status);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  const char *inherited = g_getenv ("BROADSTAVE_TEST_FOLDER");
  folder = inherited != NULL ? g_strdup (inherited) : g_dir_make_tmp ("broadstave-XXXXXX", NULL);
  g_setenv ("BROADSTAVE_TEST_FOLDER", folder, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_test_add_data_func (rows[i].path, &rows[i], test_row);
  int status = g_test_run ();

  if (inherited == NULL)
    {
      for (guint i = 0; i < 3; i++)
        {
          static const char *const names[] = { "OUT.pdf", "OUT.svg", "OUT.png" };
          g_autofree char *name = g_build_filename (folder, names[i], NULL);
          g_unlink (name);
        }
      g_rmdir (folder);
    }
  g_free (folder);
  return status;
}
