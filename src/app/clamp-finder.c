/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/clamp-finder.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/background.h"
#include "app/form.h"
#include "app/number-row.h"
#include "core/units.h"
#include "plan/edits.h"
#include "words/pressing.h"

#define WATCH_EVERY_MS 100
#define WIDTH_CHARS 44

struct _BsClampFinder
{
  GtkWidget parent_instance;

  BsSession *session;
  BsPlan *plan;           /* that the search is, or was, about */
  BsClampProposal *found; /* NULL: nothing yet */
  GCancellable *working;  /* of the thread under way, or NULL */
  guint watch;            /* source that looks how far it is */
  GMutex mutex;           /* of the next one */
  double done;            /* told by the thread */
  /* children */
  GtkWidget *box;
  GtkWidget *find, *cancel, *progress, *take;
  GtkWidget *table;
  GtkWidget *weakest; /* BsNumberRow */
  GtkLabel *summary, *difference;
};

G_DEFINE_FINAL_TYPE (BsClampFinder, bs_clamp_finder, GTK_TYPE_WIDGET)

/* The table: a row for each figure, a column for each way of clamping. */

static void
attach (GtkWidget *grid, const char *text, int column, int row, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0.0f : 1.0f);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (GTK_GRID (grid), label, column, row, 1, 1);
}

static void
attach_layout (GtkWidget *grid, const char *title, int column, const BsLayout *layout,
               BsUnitSystem units)
{
  const struct
  {
    double value;
    BsQuantity quantity;
  } figures[] = {
    { layout->n_clamps, BS_QUANTITY_COUNT },
    { bs_layout_sum_forces (layout), BS_QUANTITY_FORCE },
    { layout->least_mpa, BS_QUANTITY_PRESSURE },
    { layout->greatest_mpa, BS_QUANTITY_PRESSURE },
  };

  attach (grid, title, column, 0, "faint");
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      double value = layout->n_clamps > 0 ? figures[i].value : NAN;
      g_autofree char *text = bs_units_format (value, figures[i].quantity, units);

      attach (grid, text, column, (int)i + 1, NULL);
    }
}

static void
show_table (BsClampFinder *self)
{
  static const char *const titles[]
      = { N_ ("Clamps"), N_ ("Force in all"), N_ ("Weakest spot"), N_ ("Hardest spot") };
  BsUnitSystem units = self->plan->units;

  for (GtkWidget *child; (child = gtk_widget_get_first_child (self->table)) != NULL;)
    gtk_grid_remove (GTK_GRID (self->table), child);
  for (guint i = 0; i < G_N_ELEMENTS (titles); i++)
    attach (self->table, _ (titles[i]), 0, (int)i + 1, NULL);
  attach_layout (self->table, _ ("As set"), 1, &self->found->present->layout, units);
  attach_layout (self->table, _ ("Hand rule"), 2, &self->found->rule->layout, units);
  attach_layout (self->table, _ ("Found"), 3, &self->found->found, units);
}

/* There has to be a glue line. */
static void
update_find (BsClampFinder *self)
{
  gtk_widget_set_sensitive (self->find, bs_session_get_results (self->session)->stack->n >= 2);
}

static void
show (BsClampFinder *self)
{
  gboolean is_working = self->working != NULL, has_found = self->found != NULL;
  gboolean has_clamps = has_found && self->found->found.n_clamps > 0;
  gboolean has_focus
      = (gtk_widget_get_state_flags (GTK_WIDGET (self)) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;

  gtk_widget_set_visible (self->find, !is_working && !has_clamps);
  gtk_widget_set_visible (self->cancel, is_working);
  gtk_widget_set_visible (self->progress, is_working);
  gtk_widget_set_visible (self->table, has_clamps);
  gtk_widget_set_visible (self->weakest, has_clamps);
  gtk_widget_set_visible (self->take, has_clamps);
  gtk_widget_set_visible (GTK_WIDGET (self->difference), has_clamps);
  if (has_focus) /* the button that had it may have gone */
    gtk_widget_grab_focus (has_clamps ? self->take : is_working ? self->cancel : self->find);
  if (!has_clamps)
    return;
  show_table (self);
  bs_number_row_show (BS_NUMBER_ROW (self->weakest), &self->found->why, self->plan->units, NULL);
}

static void
show_words (BsClampFinder *self)
{
  g_autofree char *summary = NULL;
  g_autofree char *difference = NULL;

  if (self->found->present->state == BS_PRESSURE_NO_STACK)
    summary = bs_words_pressing (self->found->present);
  else
    summary = bs_words_clamp_proposal (self->found);
  difference = bs_words_clamp_difference (self->found);
  gtk_label_set_text (self->summary, summary);
  gtk_label_set_text (self->difference, difference != NULL ? difference : "");
}

static void
forget (BsClampFinder *self)
{
  g_clear_pointer (&self->found, bs_clamp_proposal_free);
  gtk_label_set_text (self->summary,
                      _ ("Looks for the places and forces that press every spot of every glue line "
                         "enough with as few of your clamps as can be."));
  show (self);
}

/* The search. */

static gboolean
report (double done, gpointer task)
{
  BsClampFinder *self = g_task_get_source_object (task);

  g_mutex_lock (&self->mutex);
  self->done = done;
  g_mutex_unlock (&self->mutex);
  return !g_cancellable_is_cancelled (g_task_get_cancellable (task));
}

static void
work (GTask *task, gpointer source, gpointer plan, GCancellable *cancellable)
{
  BsProgress progress = { report, task };

  bs_background_enter ();
  g_task_return_pointer (task, bs_clamp_proposal_new (plan, &progress),
                         (GDestroyNotify)bs_clamp_proposal_free);
}

static gboolean
watch_cb (gpointer user_data)
{
  BsClampFinder *self = user_data;

  g_mutex_lock (&self->mutex);
  double done = self->done;
  g_mutex_unlock (&self->mutex);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), CLAMP (done, 0.0, 1.0));
  return G_SOURCE_CONTINUE;
}

static void
done_cb (GObject *object, GAsyncResult *result, gpointer user_data)
{
  BsClampFinder *self = BS_CLAMP_FINDER (object);
  g_autoptr (BsClampProposal) found = g_task_propagate_pointer (G_TASK (result), NULL);

  if (g_task_get_cancellable (G_TASK (result)) != self->working) /* a later one, or none any more */
    return;
  g_clear_object (&self->working);
  g_clear_handle_id (&self->watch, g_source_remove);
  if (self->box == NULL) /* disposed of */
    return;
  forget (self);
  self->found = g_steal_pointer (&found);
  if (self->found != NULL)
    show_words (self);
  show (self);
}

static void
find_cb (BsClampFinder *self)
{
  g_clear_pointer (&self->plan, bs_plan_unref);
  self->plan = bs_plan_ref (bs_session_get_plan (self->session));
  self->done = 0.0;
  self->working = g_cancellable_new ();
  self->watch = g_timeout_add (WATCH_EVERY_MS, watch_cb, self);
  g_autoptr (GTask) task = g_task_new (self, self->working, done_cb, NULL);
  g_task_set_source_tag (task, find_cb);
  g_task_set_task_data (task, bs_plan_ref (self->plan), (GDestroyNotify)bs_plan_unref);
  g_task_run_in_thread (task, work);
  forget (self);
}

static void
stop (BsClampFinder *self)
{
  if (self->working != NULL)
    g_cancellable_cancel (self->working);
  g_clear_object (&self->working);
  g_clear_handle_id (&self->watch, g_source_remove);
}

static void
cancel_cb (BsClampFinder *self)
{
  stop (self);
  forget (self);
}

static void
take_cb (BsClampFinder *self)
{
  const BsLayout *layout = &self->found->found;
  g_autoptr (BsPlan) taken
      = bs_edit_set_clamps (bs_session_get_plan (self->session), layout->clamps, layout->n_clamps);

  bs_session_push (self->session, taken, _ ("Take the clamps that were found"), NULL);
}

/* What was found for another plan is no proposal for this one. */
static void
session_changed_cb (BsClampFinder *self)
{
  g_assert (BS_IS_CLAMP_FINDER (self));

  update_find (self);
  if (self->plan == NULL || bs_session_get_plan (self->session) == self->plan)
    return;
  g_clear_pointer (&self->plan, bs_plan_unref);
  stop (self);
  forget (self);
}

static void
bs_clamp_finder_dispose (GObject *object)
{
  BsClampFinder *self = BS_CLAMP_FINDER (object);

  stop (self);
  g_clear_pointer (&self->found, bs_clamp_proposal_free);
  g_clear_pointer (&self->plan, bs_plan_unref);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_clamp_finder_parent_class)->dispose (object);
}

static void
bs_clamp_finder_finalize (GObject *object)
{
  g_mutex_clear (&BS_CLAMP_FINDER (object)->mutex);
  G_OBJECT_CLASS (bs_clamp_finder_parent_class)->finalize (object);
}

static void
bs_clamp_finder_class_init (BsClampFinderClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_clamp_finder_dispose;
  G_OBJECT_CLASS (class)->finalize = bs_clamp_finder_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
add_button (BsClampFinder *self, const char *words, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_label (words);

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (self->box), button);
  return button;
}

static GtkLabel *
add_note (BsClampFinder *self)
{
  GtkWidget *note = bs_form_note_new (NULL);

  gtk_label_set_width_chars (GTK_LABEL (note), WIDTH_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (note), WIDTH_CHARS);
  gtk_box_append (GTK_BOX (self->box), note);
  return GTK_LABEL (note);
}

static void
bs_clamp_finder_init (BsClampFinder *self)
{
  GtkWidget *heading = gtk_label_new (_ ("The fewest clamps"));

  g_mutex_init (&self->mutex);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_valign (self->box, GTK_ALIGN_START);
  gtk_widget_add_css_class (heading, "strong");
  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_box_append (GTK_BOX (self->box), heading);
  self->summary = add_note (self);
  self->table = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->table), 18);
  gtk_grid_set_row_spacing (GTK_GRID (self->table), 3);
  gtk_box_append (GTK_BOX (self->box), self->table);
  self->weakest = bs_number_row_new ();
  gtk_box_append (GTK_BOX (self->box), self->weakest);
  self->difference = add_note (self);
  self->take = add_button (self, _ ("Take the clamps that were found"), G_CALLBACK (take_cb));
  self->find = add_button (self, _ ("Find the fewest clamps"), G_CALLBACK (find_cb));
  self->progress = gtk_progress_bar_new ();
  gtk_box_append (GTK_BOX (self->box), self->progress);
  self->cancel = add_button (self, _ ("Stop looking"), G_CALLBACK (cancel_cb));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  forget (self);
}

GtkWidget *
bs_clamp_finder_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsClampFinder *self = g_object_new (BS_TYPE_CLAMP_FINDER, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed_cb), self,
                           G_CONNECT_SWAPPED);
  update_find (self);
  return GTK_WIDGET (self);
}

gboolean
bs_clamp_finder_has_found (BsClampFinder *self)
{
  g_return_val_if_fail (BS_IS_CLAMP_FINDER (self), FALSE);

  return self->found != NULL && self->found->found.n_clamps > 0;
}
