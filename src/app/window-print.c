/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window-private.h"

#include <glib/gi18n.h>
#include <string.h>

#include "app/paper-window.h"
#include "app/photo-files.h"
#include "app/question.h"
#include "app/settings.h"
#include "draw/sheet.h"

#define KEPT_SETUP "page-setup"
#define KEPT_WORKINGS "print-workings"

/* The paper. */

static GtkPageSetup *
restore_setup (void)
{
  GSettings *settings = bs_settings_get ();
  GtkPageSetup *setup = NULL;

  if (settings != NULL)
    {
      g_autoptr (GVariant) kept = g_settings_get_value (settings, KEPT_SETUP);

      if (g_variant_n_children (kept) > 0)
        setup = gtk_page_setup_new_from_gvariant (kept);
    }
  return setup != NULL ? setup : gtk_page_setup_new (); /* the locale's: A4 or Letter */
}

static void
keep_setup (BsWindow *self)
{
  GSettings *settings = bs_settings_get ();

  if (settings != NULL)
    g_settings_set_value (settings, KEPT_SETUP, gtk_page_setup_to_gvariant (self->page_setup));
}

static void
setup_done_cb (GtkPageSetup *setup, gpointer user_data)
{
  g_autoptr (BsWindow) self = user_data;

  if (setup == NULL)
    return;
  g_set_object (&self->page_setup, setup);
  keep_setup (self);
}

static void
page_setup_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsWindow *self = BS_WINDOW (widget);

  gtk_print_run_page_setup_dialog_async (GTK_WINDOW (self), self->page_setup, self->print_settings,
                                         setup_done_cb, g_object_ref (self));
}

static void
show_workings (BsWindow *self)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "workings");

  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_boolean (self->with_workings));
}

static void
workings_cb (GSimpleAction *action, GVariant *state, gpointer user_data)
{
  BsWindow *self = user_data;
  GSettings *settings = bs_settings_get ();

  self->with_workings = g_variant_get_boolean (state);
  if (settings != NULL)
    g_settings_set_boolean (settings, KEPT_WORKINGS, self->with_workings);
  show_workings (self);
}

/* Printing. */

/* NULL while it is being worked out. */
static gconstpointer
find_study (BsWindow *self, const BsStudyKind *kind)
{
  BsStudy *study = bs_session_get_study (self->session, kind);

  return bs_study_is_current (study) && !bs_study_is_working (study) ? bs_study_get_result (study)
                                                                     : NULL;
}

/* The photos are read here and now: a page without them would not say so. Clear with
 * clear_studies (). */
static BsSheetStudies
find_studies (BsWindow *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  const char *folder = bs_session_get_folder (self->session);

  return (BsSheetStudies){
    .forecast = find_study (self, &bs_study_forecast),
    .schedule = find_study (self, &bs_study_schedule),
    .purchase = find_study (self, &bs_study_purchase),
    .photos = bs_photo_files_load (plan, folder),
    .photo_problems = bs_photo_files_check (plan, folder),
  };
}

static void
clear_studies (BsSheetStudies *self)
{
  g_hash_table_unref (self->photos);
  g_array_unref (self->photo_problems);
}

static BsSheet *
sheet_new (BsWindow *self, double width, double height)
{
  BsSheetOptions options = {
    .width = width,
    .height = height,
    .with_workings = self->with_workings,
    .studies = find_studies (self),
  };
  BsSheet *sheet = bs_sheet_new (bs_session_get_results (self->session), &options);

  clear_studies (&options.studies);
  return sheet;
}

static void
begin_print_cb (GtkPrintOperation *operation, GtkPrintContext *context, BsWindow *self)
{
  BsSheet *sheet = sheet_new (self, gtk_print_context_get_width (context),
                              gtk_print_context_get_height (context));

  gtk_print_operation_set_n_pages (operation, (int)bs_sheet_get_n_pages (sheet));
  g_object_set_data_full (G_OBJECT (operation), "bs-sheet", sheet, (GDestroyNotify)bs_sheet_free);
}

static void
draw_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, BsWindow *self)
{
  const BsSheet *sheet = g_object_get_data (G_OBJECT (operation), "bs-sheet");

  bs_sheet_draw_page (sheet, (guint)page, gtk_print_context_get_cairo_context (context));
}

static void
look_at_pages (BsWindow *self)
{
  double width = gtk_page_setup_get_page_width (self->page_setup, GTK_UNIT_POINTS);
  double height = gtk_page_setup_get_page_height (self->page_setup, GTK_UNIT_POINTS);

  gtk_window_present (
      bs_paper_window_new (GTK_WINDOW (self), sheet_new (self, width, height), self->page_setup));
}

static void
end_preview_cb (GtkPrintOperationPreview *preview)
{
  gtk_print_operation_preview_end_preview (preview);
}

/* The print dialog's own preview would start another program, which may not be there. */
static gboolean
preview_cb (GtkPrintOperation *operation, GtkPrintOperationPreview *preview,
            GtkPrintContext *context, GtkWindow *parent, BsWindow *self)
{
  g_signal_connect (preview, "ready", G_CALLBACK (end_preview_cb), NULL);
  look_at_pages (self);
  return TRUE;
}

static GtkPrintOperation *
operation_new (BsWindow *self)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  const BsPlan *plan = bs_session_get_plan (self->session);

  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_default_page_setup (operation, self->page_setup);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_print_settings (operation, self->print_settings);
  if (plan->name != NULL)
    gtk_print_operation_set_job_name (operation, plan->name);
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_print_cb), self);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), self);
  g_signal_connect (operation, "preview", G_CALLBACK (preview_cb), self);
  return operation;
}

static void
run_print (BsWindow *self)
{
  g_autoptr (GtkPrintOperation) operation = operation_new (self);
  g_autoptr (GError) error = NULL;
  GtkPrintOperationResult result = gtk_print_operation_run (
      operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), &error);

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    bs_question_tell (GTK_WINDOW (self), _ ("The diagram is not printed"), error->message);
  if (result != GTK_PRINT_OPERATION_RESULT_APPLY)
    return;
  g_set_object (&self->print_settings, gtk_print_operation_get_print_settings (operation));
  g_set_object (&self->page_setup, gtk_print_operation_get_default_page_setup (operation));
  keep_setup (self);
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  run_print (BS_WINDOW (widget));
}

static void
preview_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  look_at_pages (BS_WINDOW (widget));
}

/* To a file. A PDF goes through the printer's path, so that paper and workings are as chosen; the
 * others are the first page as a picture. */

gboolean
bs_window_export (BsWindow *self, const char *filename, GError **error)
{
  const char *paper = gtk_paper_size_get_name (gtk_page_setup_get_paper_size (self->page_setup));
  g_autofree char *lower = g_ascii_strdown (filename, -1);

  if (!g_str_has_suffix (lower, ".pdf"))
    {
      BsSheetStudies studies = find_studies (self);
      gboolean is_written
          = bs_sheet_export (bs_session_get_results (self->session), &studies, filename,
                             g_str_equal (paper, GTK_PAPER_NAME_LETTER), error);

      clear_studies (&studies);
      return is_written;
    }

  g_autoptr (GtkPrintOperation) operation = operation_new (self);
  gtk_print_operation_set_export_filename (operation, filename);
  return gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, GTK_WINDOW (self),
                                  error)
         == GTK_PRINT_OPERATION_RESULT_APPLY;
}

static void
export_chosen_cb (GtkNativeDialog *dialog, int response, gpointer user_data)
{
  g_autoptr (BsWindow) self = user_data;
  g_autoptr (GtkFileChooserNative) chooser = g_steal_pointer (&self->chooser);
  g_autoptr (GError) error = NULL;

  if (response != GTK_RESPONSE_ACCEPT)
    return;
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
  g_autofree char *path = g_file_get_path (file);
  if (path != NULL && !bs_window_export (self, path, &error))
    bs_question_tell (GTK_WINDOW (self), _ ("The diagram is not written"), error->message);
}

/* The diagram is wished for beside its plan, and named like it. */
static void
propose_file (BsWindow *self, GtkFileChooser *chooser)
{
  if (self->file == NULL)
    {
      gtk_file_chooser_set_current_name (chooser, _ ("Glue-up.pdf"));
      return;
    }

  g_autoptr (GFile) folder = g_file_get_parent (self->file);
  g_autofree char *name = g_file_get_basename (self->file);
  if (g_str_has_suffix (name, BS_PLAN_ENDING))
    name[strlen (name) - strlen (BS_PLAN_ENDING)] = '\0';
  g_autofree char *file_name = g_strconcat (name, ".pdf", NULL);
  gtk_file_chooser_set_current_folder (chooser, folder, NULL);
  gtk_file_chooser_set_current_name (chooser, file_name);
}

static void
export_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsWindow *self = BS_WINDOW (widget);
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("PDF, SVG and PNG"));
  gtk_file_filter_add_pattern (filter, "*.pdf");
  gtk_file_filter_add_pattern (filter, "*.svg");
  gtk_file_filter_add_pattern (filter, "*.png");
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Write the diagram to a file"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  propose_file (self, GTK_FILE_CHOOSER (self->chooser));
  g_signal_connect (self->chooser, "response", G_CALLBACK (export_chosen_cb), g_object_ref (self));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

void
bs_window_print_class_init (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "win.preview", NULL, preview_action);
  gtk_widget_class_install_action (class, "win.print", NULL, print_action);
  gtk_widget_class_install_action (class, "win.page-setup", NULL, page_setup_action);
  gtk_widget_class_install_action (class, "win.export", NULL, export_action);
}

void
bs_window_print_init (BsWindow *self)
{
  GSettings *settings = bs_settings_get ();
  const GActionEntry entries[] = { { "workings", NULL, NULL, "false", workings_cb } };

  self->page_setup = restore_setup ();
  self->print_settings = gtk_print_settings_new ();
  self->with_workings = settings != NULL && g_settings_get_boolean (settings, KEPT_WORKINGS);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  show_workings (self);
}
