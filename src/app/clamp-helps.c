/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/clamp-helps.h"

#include <glib/gi18n.h>

#include "app/form.h"
#include "core/clamp-advice.h"
#include "plan/edits.h"
#include "words/pressing.h"

#define MOST_SHOWN 3
#define WIDTH_CHARS 44

static const char SESSION[] = "session", TRIAL[] = "trial";

static BsStudy *
get_study (BsSession *session)
{
  return bs_session_get_study (session, &bs_study_clamp_advice);
}

static void
try_cb (GtkButton *button, BsSession *session)
{
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), TRIAL));
  const BsClampAdvice *advice = bs_study_get_result (get_study (session));

  if (!bs_study_is_current (get_study (session)) || i >= advice->trials->len)
    return;
  const BsClampTrial *trial = &g_array_index (advice->trials, BsClampTrial, i);
  g_autoptr (GArray) clamps = bs_clamp_advice_try (advice, trial);
  g_autofree char *label = bs_words_clamp_trial (advice, trial);
  g_autoptr (BsPlan) changed = bs_edit_set_clamps (
      bs_session_get_plan (session), (const BsLayoutClamp *)(void *)clamps->data, clamps->len);
  bs_session_push (session, changed, label, NULL);
}

static void
append_note (GtkBox *box, const char *text)
{
  GtkWidget *note = bs_form_note_new (text);

  gtk_label_set_width_chars (GTK_LABEL (note), WIDTH_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (note), WIDTH_CHARS);
  gtk_box_append (box, note);
}

static void
append_trial (GtkBox *box, BsSession *session, const BsClampAdvice *advice, guint i)
{
  const BsClampTrial *trial = &g_array_index (advice->trials, BsClampTrial, i);
  g_autofree char *words = bs_words_clamp_trial (advice, trial);
  g_autofree char *effect = bs_words_clamp_trial_effect (advice, trial);
  GtkWidget *button = gtk_button_new_with_label (words);

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_object_set_data (G_OBJECT (button), TRIAL, GUINT_TO_POINTER (i));
  g_signal_connect_object (button, "clicked", G_CALLBACK (try_cb), session, 0);
  gtk_box_append (box, button);
  append_note (box, effect);
}

static void
show_advice (GtkBox *box, BsSession *session, const BsClampAdvice *advice)
{
  g_autofree char *closing = bs_words_closing (advice);

  for (guint i = 0; i < MIN (advice->trials->len, MOST_SHOWN); i++)
    append_trial (box, session, advice, i);
  if (advice->pressure->state != BS_PRESSURE_OF_SET_CLAMPS)
    append_note (box, _ ("Nothing can be said while there are no pressures."));
  else if (advice->trials->len == 0)
    append_note (box, _ ("No single clamp moved, tightened or added would help."));
  if (closing != NULL)
    append_note (box, closing);
  if (advice->trials->len > 0
      && advice->pressure->press.problem.stack.model == BS_PRESS_MODEL_TIMOSHENKO)
    append_note (box,
                 _ ("For so many laminations this list is made by the faster form of the model, "
                    "which errs to the safe side."));
}

static void
changed_cb (GtkBox *box)
{
  BsSession *session = g_object_get_data (G_OBJECT (box), SESSION);
  BsStudy *study = get_study (session);

  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL;)
    gtk_box_remove (box, child);
  if (bs_study_is_current (study))
    show_advice (box, session, bs_study_get_result (study));
  else
    append_note (box, _ ("Working…"));
}

GtkWidget *
bs_clamp_helps_new (BsSession *session)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *heading = gtk_label_new (_ ("What would help"));

  gtk_widget_set_valign (block, GTK_ALIGN_START);
  gtk_widget_add_css_class (heading, "strong");
  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_box_append (GTK_BOX (block), heading);
  gtk_box_append (GTK_BOX (block), list);
  g_object_set_data_full (G_OBJECT (list), SESSION, g_object_ref (session), g_object_unref);
  g_signal_connect_object (get_study (session), "changed", G_CALLBACK (changed_cb), list,
                           G_CONNECT_SWAPPED);
  changed_cb (GTK_BOX (list));
  return block;
}
