/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/question.h"

#include <glib/gi18n.h>

#include "app/actions.h"

/* Whichever way the window goes, its task is answered once. */
static void
answer (GtkWindow *window, int index)
{
  g_autoptr (GTask) task = g_object_steal_data (G_OBJECT (window), "bs-task");

  if (task != NULL)
    g_task_return_int (task, index);
}

static void
destroyed_cb (GtkWindow *window)
{
  answer (window, 0);
}

static void
clicked_cb (GtkButton *button, gpointer index)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (button)));

  answer (window, GPOINTER_TO_INT (index));
  gtk_window_destroy (window);
}

static GtkWidget *
label_new (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 48);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
buttons_new (GtkWindow *window, const char *const *answers)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_halign (box, GTK_ALIGN_END);
  gtk_widget_set_margin_top (box, 12);
  for (guint i = 0; answers[i] != NULL; i++)
    {
      GtkWidget *button = gtk_button_new_with_mnemonic (answers[i]);

      g_signal_connect (button, "clicked", G_CALLBACK (clicked_cb), GINT_TO_POINTER ((int)i));
      gtk_box_append (GTK_BOX (box), button);
      if (answers[i + 1] == NULL)
        gtk_window_set_default_widget (window, button);
    }
  return box;
}

void
bs_question_ask_with_async (GtkWindow *parent, const char *heading, GtkWidget *body,
                            const char *const *answers, GAsyncReadyCallback callback,
                            gpointer user_data)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));
  g_return_if_fail (GTK_IS_WIDGET (body));
  g_return_if_fail (answers != NULL && answers[0] != NULL);

  GTask *task = g_task_new (parent, NULL, callback, user_data);
  GtkWindow *window = GTK_WINDOW (gtk_window_new ());
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_window_set_title (window, heading);
  gtk_window_set_transient_for (window, parent);
  gtk_window_set_modal (window, TRUE);
  gtk_window_set_resizable (window, FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (window), "question");
  gtk_box_append (GTK_BOX (box), label_new (heading, "strong"));
  gtk_box_append (GTK_BOX (box), body);
  gtk_box_append (GTK_BOX (box), buttons_new (window, answers));
  gtk_window_set_child (window, box);
  bs_actions_add_escape (window);
  g_object_set_data (G_OBJECT (window), "bs-task", task);
  g_signal_connect (window, "destroy", G_CALLBACK (destroyed_cb), NULL);
  gtk_widget_grab_focus (gtk_window_get_default_widget (window));
  gtk_window_present (window);
}

void
bs_question_ask_async (GtkWindow *parent, const char *heading, const char *body,
                       const char *const *answers, GAsyncReadyCallback callback, gpointer user_data)
{
  bs_question_ask_with_async (parent, heading, label_new (body, NULL), answers, callback,
                              user_data);
}

int
bs_question_ask_finish (GAsyncResult *result)
{
  g_return_val_if_fail (G_IS_TASK (result), 0);

  return (int)g_task_propagate_int (G_TASK (result), NULL);
}

static void
told_cb (GObject *parent, GAsyncResult *result, gpointer user_data)
{
  bs_question_ask_finish (result);
}

void
bs_question_tell (GtkWindow *parent, const char *heading, const char *body)
{
  const char *const answers[] = { _ ("_Close"), NULL };

  bs_question_ask_async (parent, heading, body, answers, told_cb, NULL);
}
