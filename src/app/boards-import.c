/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/boards-import.h"

#include <glib/gi18n.h>

#include "app/question.h"
#include "plan/boards-csv.h"
#include "plan/edits.h"

/* What the thread works on, and what it was begun for. */
typedef struct
{
  GtkWidget *widget;
  BsSession *session;
  BsBoardsCame came;
  BsPlan *plan; /* that the table is read for */
  GFile *file;  /* or, without one, */
  char *text;   /* what is pasted, and where */
  guint first;
  BsBoardColumn column;
  BsBoardsTable *table; /* while the person is asked */
} Import;

static void
free_import (gpointer data)
{
  Import *import = data;

  g_object_unref (import->widget);
  g_object_unref (import->session);
  bs_plan_unref (import->plan);
  g_clear_object (&import->file);
  g_free (import->text);
  g_clear_pointer (&import->table, bs_boards_table_free);
  g_free (import);
}

/* The answer. */

static void
put_boards (const Import *import, const BsBoardsTable *table)
{
  guint n = table->boards->len;
  g_autofree char *label
      = import->file != NULL
            ? g_strdup_printf (ngettext ("Read %u board", "Read %u boards", n), n)
            : g_strdup_printf (ngettext ("Paste %u board", "Paste %u boards", n), n);
  g_autoptr (BsPlan) edited = bs_edit_put_boards (bs_session_get_plan (import->session),
                                                  table->boards, table->woods, G_MAXUINT);

  if (n == 0)
    return;
  gboolean are_new = *((const BsBoard *)table->boards->pdata[0])->id == '\0';
  guint first = bs_session_get_plan (import->session)->boards->len;
  bs_session_push (import->session, edited, label, NULL);
  if (are_new && gtk_widget_get_root (import->widget) != NULL)
    import->came (import->widget, first);
}

enum
{
  ANSWER_BACK,
  ANSWER_KEEP,
};

static void
answered_cb (GObject *window, GAsyncResult *result, gpointer user_data)
{
  Import *import = user_data;

  if (bs_question_ask_finish (result) == ANSWER_KEEP)
    put_boards (import, import->table);
  free_import (import);
}

static char *
describe_problem (const BsBoardsProblem *problem)
{
  if (problem->column == NULL)
    /* Translators: the number of a line, and what is wrong with it */
    return g_strdup_printf (_ ("Line %u: %s"), problem->line, problem->sentence);
  /* Translators: the number of a line, the title of a column, and what is wrong there */
  return g_strdup_printf (_ ("Line %u, %s: %s"), problem->line, problem->column, problem->sentence);
}

static void
setup_problem_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 60);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 60);
  gtk_list_item_set_child (item, label);
}

static void
bind_problem_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *text = gtk_list_item_get_item (item);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)),
                      gtk_string_object_get_string (text));
}

static GtkWidget *
problems_new (const BsBoardsTable *table)
{
  GtkStringList *lines = gtk_string_list_new (NULL);
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  for (guint i = 0; i < table->problems->len; i++)
    gtk_string_list_take (lines, describe_problem (table->problems->pdata[i]));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_problem_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_problem_cb), NULL);
  GtkSelectionModel *none = GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (lines)));
  GtkWidget *list = gtk_list_view_new (none, factory);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What cannot be taken over"), -1);
  gtk_widget_add_css_class (list, "problems");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), list);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), 240);
  return scroller;
}

/* Asks; the import goes over to the answer. */
static void
ask (GtkWindow *window, Import *import)
{
  const BsBoardsTable *table = import->table;
  guint n_good = table->boards->len;
  g_autofree char *heading
      = table->n_broken > 0
            ? g_strdup_printf (ngettext ("%u row cannot be taken over",
                                         "%u rows cannot be taken over", table->n_broken),
                               table->n_broken)
            : g_strdup (_ ("Not all columns can be taken over"));
  g_autofree char *keep = g_strdup_printf (
      ngettext ("_Keep the %u good row", "_Keep the %u good rows", n_good), n_good);
  const char *const answers[] = { _ ("_Go back"), n_good > 0 ? keep : NULL, NULL };

  bs_question_ask_with_async (window, heading, problems_new (table), answers, answered_cb, import);
}

/* The reading. */

static void
read_in_thread (GTask *task, gpointer widget, gpointer data, GCancellable *cancellable)
{
  const Import *import = data;
  g_autofree char *bytes = NULL;
  gsize size = 0;
  GError *error = NULL;
  BsBoardsTable *table = NULL;

  if (import->file == NULL)
    table = bs_boards_paste (import->text, import->plan, import->first, import->column, &error);
  else if (g_file_load_contents (import->file, cancellable, &bytes, &size, NULL, &error))
    table = bs_boards_csv_read (bytes, size, import->plan, &error);

  if (table != NULL)
    g_task_return_pointer (task, table, (GDestroyNotify)bs_boards_table_free);
  else
    g_task_return_error (task, error);
}

static void start (GtkWidget *widget, Import *import);

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Import *import = user_data;
  GtkRoot *window = gtk_widget_get_root (GTK_WIDGET (source));
  g_autoptr (GError) error = NULL;
  g_autoptr (BsBoardsTable) table = g_task_propagate_pointer (G_TASK (result), &error);

  if (window == NULL)
    free_import (import);
  else if (table == NULL)
    {
      bs_question_tell (GTK_WINDOW (window), _ ("No boards were read"), error->message);
      free_import (import);
    }
  else if (import->plan != bs_session_get_plan (import->session))
    start (GTK_WIDGET (source), import); /* it was changed meanwhile */
  else if (table->problems->len == 0)
    {
      put_boards (import, table);
      free_import (import);
    }
  else
    {
      import->table = g_steal_pointer (&table);
      ask (GTK_WINDOW (window), import);
    }
}

static void
start (GtkWidget *widget, Import *import)
{
  g_autoptr (GTask) task = g_task_new (widget, NULL, read_cb, import);

  g_clear_pointer (&import->plan, bs_plan_unref);
  import->plan = bs_plan_ref (bs_session_get_plan (import->session));
  g_task_set_task_data (task, import, NULL);
  g_task_run_in_thread (task, read_in_thread);
}

static Import *
import_new (GtkWidget *widget, BsSession *session, BsBoardsCame came)
{
  Import *import = g_new0 (Import, 1);

  import->widget = g_object_ref (widget);
  import->session = g_object_ref (session);
  import->came = came;
  return import;
}

void
bs_boards_import_file (GtkWidget *widget, BsSession *session, GFile *file, BsBoardsCame came)
{
  g_return_if_fail (GTK_IS_WIDGET (widget) && BS_IS_SESSION (session) && G_IS_FILE (file));

  Import *import = import_new (widget, session, came);
  import->file = g_object_ref (file);
  start (widget, import);
}

void
bs_boards_import_text (GtkWidget *widget, BsSession *session, const char *text, guint first,
                       BsBoardColumn column, BsBoardsCame came)
{
  g_return_if_fail (GTK_IS_WIDGET (widget) && BS_IS_SESSION (session) && text != NULL);

  Import *import = import_new (widget, session, came);
  import->text = g_strdup (text);
  import->first = first;
  import->column = column;
  start (widget, import);
}
