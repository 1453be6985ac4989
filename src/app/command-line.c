/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/command-line.h"

#include <cairo.h>
#include <glib/gi18n.h>
#include <gtk/gtk.h>
#include <stdio.h>

#include "app/photo-files.h"
#include "draw/sheet.h"
#include "plan/document.h"
#include "plan/report.h"

typedef struct
{
  gboolean version;
  gboolean report;
  char *export;
  char **plans;
} Options;

static void
options_clear (Options *self)
{
  g_free (self->export);
  g_strfreev (self->plans);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

static gboolean
options_parse (Options *self, char **arguments, GError **error)
{
  const GOptionEntry entries[] = {
    { "report", 0, 0, G_OPTION_ARG_NONE, &self->report, N_ ("Write the results for PLAN as JSON"),
      NULL },
    { "export", 0, 0, G_OPTION_ARG_FILENAME, &self->export,
      N_ ("Write the glue-up diagram of PLAN to FILE (.pdf, .svg or .png)"), N_ ("FILE") },
    { "version", 0, 0, G_OPTION_ARG_NONE, &self->version, N_ ("Show the versions"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &self->plans, NULL, NULL },
    { NULL },
  };
  g_autoptr (GOptionContext) context = g_option_context_new (_ ("[PLAN…]"));
  g_auto (GStrv) copy = g_strdupv (arguments);

  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_set_summary (
      context,
      _ ("Plans a laminated solid-wood slab. Without an option, opens each PLAN in a window."));
  g_option_context_set_description (
      context,
      _ ("The exit status is 0 when all is well, 1 when the plan has findings that stop the "
         "work, and 2 when the input cannot be used."));
  return g_option_context_parse_strv (context, &copy, error);
}

typedef struct
{
  guint major, minor, micro;
} Version;

static void
print_library (const char *name, Version now, Version built)
{
  /* Translators: a library, its version now, and the version that the program was built with. */
  g_print (_ ("%s %u.%u.%u, built with %u.%u.%u\n"), name, now.major, now.minor, now.micro,
           built.major, built.minor, built.micro);
}

static void
print_version (void)
{
  guint cairo = (guint)cairo_version ();

  g_print ("Broadstave %s\n", PACKAGE_VERSION);
  print_library (
      "GTK",
      (Version){ gtk_get_major_version (), gtk_get_minor_version (), gtk_get_micro_version () },
      (Version){ GTK_MAJOR_VERSION, GTK_MINOR_VERSION, GTK_MICRO_VERSION });
  print_library ("GLib", (Version){ glib_major_version, glib_minor_version, glib_micro_version },
                 (Version){ GLIB_MAJOR_VERSION, GLIB_MINOR_VERSION, GLIB_MICRO_VERSION });
  print_library ("Cairo", (Version){ cairo / 10000, cairo / 100 % 100, cairo % 100 },
                 (Version){ CAIRO_VERSION_MAJOR, CAIRO_VERSION_MINOR, CAIRO_VERSION_MICRO });
}

static gboolean
print_report (const BsResults *results, const GArray *photo_problems, GError **error)
{
  g_autofree char *report = bs_report_write (results, photo_problems);

  if (fputs (report, stdout) >= 0 && fflush (stdout) == 0)
    return TRUE;
  g_set_error_literal (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                       _ ("The report could not be written in full."));
  return FALSE;
}

static gboolean
export_sheet (BsResults *results, const char *folder, GArray *photo_problems, const char *filename,
              GError **error)
{
  const BsPlan *plan = results->stack->plan;
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, NULL);
  g_autoptr (GHashTable) photos = bs_photo_files_load (plan, folder);
  const BsSheetStudies studies
      = { .schedule = schedule, .photos = photos, .photo_problems = photo_problems };

  return bs_sheet_export (results, &studies, filename, FALSE, error);
}

static gboolean
work (const Options *options, int *status, GError **error)
{
  if (options->plans == NULL || g_strv_length (options->plans) != 1)
    {
      g_set_error_literal (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE,
                           _ ("One plan is needed with --report and --export: name its file."));
      return FALSE;
    }
  g_autoptr (BsPlan) plan = bs_document_load (options->plans[0], error);
  if (plan == NULL)
    return FALSE;

  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *folder = g_path_get_dirname (options->plans[0]);
  g_autoptr (GArray) problems = bs_photo_files_check (plan, folder);
  if (options->export != NULL && !export_sheet (results, folder, problems, options->export, error))
    return FALSE;
  if (options->report && !print_report (results, problems, error))
    return FALSE;
  *status = bs_results_worst (results) == BS_SEVERITY_STOP ? BS_EXIT_STOP : BS_EXIT_FINE;
  return TRUE;
}

gboolean
bs_command_line_run (char **arguments, int *status)
{
  g_auto (Options) options = { 0 };
  g_autoptr (GError) error = NULL;

  *status = BS_EXIT_FINE;
  if (options_parse (&options, arguments, &error))
    {
      if (options.version)
        {
          print_version ();
          return TRUE;
        }
      if (!options.report && options.export == NULL)
        return FALSE;
      if (work (&options, status, &error))
        return TRUE;
    }
  g_printerr ("broadstave: %s\n", error->message);
  *status = BS_EXIT_UNUSABLE;
  return TRUE;
}
