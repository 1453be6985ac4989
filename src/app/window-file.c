/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window-private.h"

#include <glib/gi18n.h>

#include "app/examples.h"
#include "app/question.h"
#include "plan/document.h"

#define MIME_TYPE "application/x-broadstave-plan+json"
#define APPLICATION_NAME "Broadstave"
#define N_RECENT 10

char *
bs_window_get_file_name (BsWindow *self)
{
  return self->file != NULL ? g_file_get_basename (self->file) : NULL;
}

static void
set_file (BsWindow *self, GFile *file)
{
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autofree char *folder = path != NULL ? g_path_get_dirname (path) : NULL;

  g_set_object (&self->file, file);
  bs_session_set_folder (self->session, folder);
  if (file != NULL)
    {
      g_autofree char *uri = g_file_get_uri (file);
      GtkRecentData data = { .mime_type = (char *)MIME_TYPE,
                             .app_name = (char *)APPLICATION_NAME,
                             .app_exec = (char *)"broadstave %f" };

      gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
    }
  bs_window_update_title (self);
  bs_window_update_actions (self);
}

/* Saving. */

static gboolean
save_to (BsWindow *self, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    g_set_error_literal (&error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                         _ ("Plans are kept on this computer: choose a folder of its own."));
  else if (bs_document_save (bs_session_get_plan (self->session), path, &error))
    {
      bs_history_set_saved (bs_session_get_history (self->session));
      set_file (self, file);
      return TRUE;
    }
  bs_question_tell (GTK_WINDOW (self), _ ("The plan is not saved"), error->message);
  return FALSE;
}

static GtkFileFilter *
filter_new (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Plans"));
  gtk_file_filter_add_pattern (filter, "*" BS_PLAN_ENDING);
  return filter;
}

static GtkFileChooser *
chooser_new (BsWindow *self, const char *title, GtkFileChooserAction action)
{
  g_autoptr (GtkFileFilter) filter = filter_new ();

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  return GTK_FILE_CHOOSER (self->chooser);
}

/* What was chosen; NULL when nothing was. Closes the chooser. */
static GFile *
take_choice (BsWindow *self, int response)
{
  g_autoptr (GtkFileChooserNative) chooser = g_steal_pointer (&self->chooser);

  return response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser))
                                         : NULL;
}

static GFile *
with_ending (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *longer = g_strconcat (name, BS_PLAN_ENDING, NULL);
  g_autoptr (GFile) folder = g_file_get_parent (file);

  return g_str_has_suffix (name, BS_PLAN_ENDING) || folder == NULL
             ? g_object_ref (file)
             : g_file_get_child (folder, longer);
}

static void
save_chosen_cb (GtkNativeDialog *dialog, int response, gpointer user_data)
{
  g_autoptr (GTask) task = user_data;
  BsWindow *self = g_task_get_source_object (task);
  g_autoptr (GFile) chosen = take_choice (self, response);
  g_autoptr (GFile) file = chosen != NULL ? with_ending (chosen) : NULL;

  g_task_return_boolean (task, file != NULL && save_to (self, file));
}

/* Asks for a file when there is none, or when `as` another is wished. */
static void
save_async (BsWindow *self, gboolean as, GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, callback, user_data);

  if (self->file != NULL && !as)
    {
      g_task_return_boolean (task, save_to (self, self->file));
      return;
    }

  GtkFileChooser *chooser = chooser_new (self, _ ("Save the plan"), GTK_FILE_CHOOSER_ACTION_SAVE);
  const BsPlan *plan = bs_session_get_plan (self->session);
  const char *name = plan->name != NULL && plan->name[0] != '\0' ? plan->name : _ ("Slab");
  g_autofree char *file_name = g_strconcat (name, BS_PLAN_ENDING, NULL);
  g_strdelimit (file_name, "/", '-');
  if (self->file == NULL || !gtk_file_chooser_set_file (chooser, self->file, NULL))
    gtk_file_chooser_set_current_name (chooser, file_name);
  g_signal_connect (chooser, "response", G_CALLBACK (save_chosen_cb), g_steal_pointer (&task));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static gboolean
save_finish (GAsyncResult *result)
{
  return g_task_propagate_boolean (G_TASK (result), NULL);
}

static void
saved_cb (GObject *window, GAsyncResult *result, gpointer user_data)
{
  save_finish (result);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  save_async (BS_WINDOW (widget), FALSE, saved_cb, NULL);
}

static void
save_as_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  save_async (BS_WINDOW (widget), TRUE, saved_cb, NULL);
}

/* The guard of unsaved changes. */

static void
guard_saved_cb (GObject *window, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GTask) task = user_data;

  g_task_return_boolean (task, save_finish (result));
}

enum
{
  ANSWER_BACK,
  ANSWER_WITHOUT,
  ANSWER_SAVE,
};

static void
guard_answered_cb (GObject *window, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GTask) task = user_data;
  int answer = bs_question_ask_finish (result);

  if (answer == ANSWER_SAVE)
    save_async (BS_WINDOW (window), FALSE, guard_saved_cb, g_steal_pointer (&task));
  else
    g_task_return_boolean (task, answer == ANSWER_WITHOUT);
}

void
bs_window_guard_async (BsWindow *self, GAsyncReadyCallback callback, gpointer user_data)
{
  const char *const answers[] = {
    [ANSWER_BACK] = _ ("_Go back"),
    [ANSWER_WITHOUT] = _ ("_Lose the changes"),
    [ANSWER_SAVE] = _ ("_Save"),
    NULL,
  };
  g_autoptr (GTask) task = g_task_new (self, NULL, callback, user_data);

  if (!bs_history_is_modified (bs_session_get_history (self->session)))
    {
      g_task_return_boolean (task, TRUE);
      return;
    }
  bs_question_ask_async (GTK_WINDOW (self), _ ("Save the changes to this plan?"),
                         _ ("What was changed since it was last saved is lost otherwise."), answers,
                         guard_answered_cb, g_steal_pointer (&task));
}

gboolean
bs_window_guard_finish (BsWindow *self, GAsyncResult *result)
{
  g_return_val_if_fail (g_task_is_valid (result, self), FALSE);

  return g_task_propagate_boolean (G_TASK (result), NULL);
}

/* Opening. */

static void
show_plan (BsWindow *self, BsPlan *plan, GFile *file, const char *place)
{
  bs_session_open (self->session, plan);
  set_file (self, file);
  bs_window_go_to (self, place);
}

gboolean
bs_window_open (BsWindow *self, GFile *file)
{
  g_return_val_if_fail (BS_IS_WINDOW (self), FALSE);
  g_return_val_if_fail (G_IS_FILE (file), FALSE);

  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) plan = NULL;

  if (path == NULL)
    g_set_error_literal (&error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                         _ ("Plans are opened from a folder of this computer."));
  else
    plan = bs_document_load (path, &error);
  if (plan == NULL)
    {
      bs_question_tell (GTK_WINDOW (self), _ ("This file cannot be used"), error->message);
      return FALSE;
    }
  show_plan (self, plan, file, "glue-up");
  return TRUE;
}

static void
open_guarded_cb (GObject *window, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GFile) file = user_data;

  if (bs_window_guard_finish (BS_WINDOW (window), result))
    bs_window_open (BS_WINDOW (window), file);
}

static void
open_chosen_cb (GtkNativeDialog *dialog, int response, gpointer user_data)
{
  g_autoptr (BsWindow) self = user_data;
  g_autoptr (GFile) file = take_choice (self, response);

  if (file != NULL)
    bs_window_guard_async (self, open_guarded_cb, g_steal_pointer (&file));
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsWindow *self = BS_WINDOW (widget);
  GtkFileChooser *chooser = chooser_new (self, _ ("Open a plan"), GTK_FILE_CHOOSER_ACTION_OPEN);

  g_signal_connect (chooser, "response", G_CALLBACK (open_chosen_cb), g_object_ref (self));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
open_recent_action (GtkWidget *widget, const char *name, GVariant *uri)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (uri, NULL));

  bs_window_guard_async (BS_WINDOW (widget), open_guarded_cb, g_steal_pointer (&file));
}

/* An empty plan, shown in the units of the last one. */
static void
begin_guarded_cb (GObject *window, GAsyncResult *result, gpointer unused)
{
  BsWindow *self = BS_WINDOW (window);

  if (!bs_window_guard_finish (self, result))
    return;
  g_autoptr (BsPlan) plan = bs_plan_new ();
  plan->units = bs_session_get_plan (self->session)->units;
  show_plan (self, plan, NULL, "slab");
}

static void
begin_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  bs_window_guard_async (BS_WINDOW (widget), begin_guarded_cb, NULL);
}

static void
example_guarded_cb (GObject *window, GAsyncResult *result, gpointer index)
{
  BsWindow *self = BS_WINDOW (window);

  if (!bs_window_guard_finish (self, result))
    return;
  g_autoptr (BsPlan) plan = bs_examples_load (GPOINTER_TO_UINT (index));
  show_plan (self, plan, NULL, "glue-up");
}

static void
example_action (GtkWidget *widget, const char *name, GVariant *index)
{
  bs_window_guard_async (BS_WINDOW (widget), example_guarded_cb,
                         GUINT_TO_POINTER (g_variant_get_uint32 (index)));
}

static int
compare_recent (gconstpointer a, gconstpointer b)
{
  return g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *)b),
                              gtk_recent_info_get_modified ((GtkRecentInfo *)a));
}

static void
update_recent (BsWindow *self)
{
  GList *items = g_list_sort (gtk_recent_manager_get_items (gtk_recent_manager_get_default ()),
                              compare_recent);

  g_menu_remove_all (self->recent_menu);
  for (GList *l = items; l != NULL; l = l->next)
    {
      const char *uri = gtk_recent_info_get_uri (l->data);

      if (!gtk_recent_info_has_application (l->data, APPLICATION_NAME)
          || !gtk_recent_info_exists (l->data)
          || g_menu_model_get_n_items (G_MENU_MODEL (self->recent_menu)) >= N_RECENT)
        continue;
      g_autoptr (GMenuItem) item
          = g_menu_item_new (gtk_recent_info_get_display_name (l->data), NULL);
      g_menu_item_set_action_and_target (item, "win.open-recent", "s", uri);
      g_menu_append_item (self->recent_menu, item);
    }
  g_list_free_full (items, (GDestroyNotify)gtk_recent_info_unref);
}

void
bs_window_file_class_init (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "win.open", NULL, open_action);
  gtk_widget_class_install_action (class, "win.open-recent", "s", open_recent_action);
  gtk_widget_class_install_action (class, "win.begin", NULL, begin_action);
  gtk_widget_class_install_action (class, "win.example", "u", example_action);
  gtk_widget_class_install_action (class, "win.save", NULL, save_action);
  gtk_widget_class_install_action (class, "win.save-as", NULL, save_as_action);
}

void
bs_window_load_recent (BsWindow *self)
{
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (update_recent),
                           self, G_CONNECT_SWAPPED);
  update_recent (self);
}
