/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-search.h"

#include "app/background.h"

struct _BsCuttingSearch
{
  GObject parent_instance;

  BsPlan *plan;
  BsSawPlan *found;
  GError *error;
  GCancellable *working; /* of the thread under way, or NULL */
  guint watch;           /* source that tells of a better one */
  GMutex mutex;          /* of what follows, told by the thread */
  BsCuttingProgress progress;
};

enum
{
  PROGRESSED,
  ENDED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsCuttingSearch, bs_cutting_search, G_TYPE_OBJECT)

#define WATCH_EVERY_MS 150

static gboolean
report (double done, gpointer task)
{
  BsCuttingSearch *self = g_task_get_source_object (task);

  g_mutex_lock (&self->mutex);
  self->progress.done = done;
  g_mutex_unlock (&self->mutex);
  return !g_cancellable_is_cancelled (g_task_get_cancellable (task));
}

static void
better (const BsSawPlan *plan, gpointer task)
{
  BsCuttingSearch *self = g_task_get_source_object (task);

  g_mutex_lock (&self->mutex);
  self->progress.has_best = TRUE;
  self->progress.is_bound = plan->is_bound;
  self->progress.price_minor = plan->price_minor;
  self->progress.bound_minor = plan->bound_minor;
  g_mutex_unlock (&self->mutex);
}

static void
work (GTask *task, gpointer source, gpointer plan, GCancellable *cancellable)
{
  const BsSawEffort effort = { .progress = { report, task }, .better = better, .data = task };
  GError *error = NULL;

  bs_background_enter ();
  BsSawPlan *found = bs_saw_solve (plan, &effort, &error);

  if (found != NULL)
    g_task_return_pointer (task, found, (GDestroyNotify)bs_saw_plan_free);
  else
    g_task_return_error (task, error);
}

static gboolean
watch_cb (gpointer user_data)
{
  g_signal_emit (user_data, signals[PROGRESSED], 0);
  return G_SOURCE_CONTINUE;
}

static void
done_cb (GObject *object, GAsyncResult *result, gpointer user_data)
{
  BsCuttingSearch *self = BS_CUTTING_SEARCH (object);

  self->found = g_task_propagate_pointer (G_TASK (result), &self->error);
  g_clear_object (&self->working);
  g_clear_handle_id (&self->watch, g_source_remove);
  g_signal_emit (self, signals[ENDED], 0);
}

static void
bs_cutting_search_finalize (GObject *object)
{
  BsCuttingSearch *self = BS_CUTTING_SEARCH (object);

  g_clear_pointer (&self->plan, bs_plan_unref);
  g_clear_pointer (&self->found, bs_saw_plan_free);
  g_clear_error (&self->error);
  g_mutex_clear (&self->mutex);
  G_OBJECT_CLASS (bs_cutting_search_parent_class)->finalize (object);
}

static void
bs_cutting_search_class_init (BsCuttingSearchClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_cutting_search_finalize;

  signals[PROGRESSED] = g_signal_new ("progressed", BS_TYPE_CUTTING_SEARCH, G_SIGNAL_RUN_LAST, 0,
                                      NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[ENDED] = g_signal_new ("ended", BS_TYPE_CUTTING_SEARCH, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
bs_cutting_search_init (BsCuttingSearch *self)
{
  g_mutex_init (&self->mutex);
}

BsCuttingSearch *
bs_cutting_search_new (void)
{
  return g_object_new (BS_TYPE_CUTTING_SEARCH, NULL);
}

void
bs_cutting_search_start (BsCuttingSearch *self, BsPlan *plan)
{
  g_return_if_fail (BS_IS_CUTTING_SEARCH (self));
  g_return_if_fail (self->working == NULL);

  bs_plan_ref (plan);
  g_clear_pointer (&self->plan, bs_plan_unref);
  self->plan = plan;
  g_clear_pointer (&self->found, bs_saw_plan_free);
  g_clear_error (&self->error);
  self->progress = (BsCuttingProgress){ 0 };
  self->working = g_cancellable_new ();
  self->watch = g_timeout_add (WATCH_EVERY_MS, watch_cb, self);
  g_autoptr (GTask) task = g_task_new (self, self->working, done_cb, NULL);
  g_task_set_source_tag (task, bs_cutting_search_start);
  g_task_set_check_cancellable (task, FALSE); /* stopped, it still has the best so far */
  g_task_set_task_data (task, bs_plan_ref (plan), (GDestroyNotify)bs_plan_unref);
  g_task_run_in_thread (task, work);
}

void
bs_cutting_search_stop (BsCuttingSearch *self)
{
  g_return_if_fail (BS_IS_CUTTING_SEARCH (self));

  if (self->working != NULL)
    g_cancellable_cancel (self->working);
}

gboolean
bs_cutting_search_is_running (BsCuttingSearch *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_SEARCH (self), FALSE);

  return self->working != NULL;
}

BsPlan *
bs_cutting_search_get_plan (BsCuttingSearch *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_SEARCH (self), NULL);

  return self->plan;
}

const BsSawPlan *
bs_cutting_search_get_found (BsCuttingSearch *self, const GError **error)
{
  g_return_val_if_fail (BS_IS_CUTTING_SEARCH (self), NULL);

  if (error != NULL)
    *error = self->error;
  return self->found;
}

BsCuttingProgress
bs_cutting_search_get_progress (BsCuttingSearch *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_SEARCH (self), (BsCuttingProgress){ 0 });

  g_mutex_lock (&self->mutex);
  BsCuttingProgress progress = self->progress;
  g_mutex_unlock (&self->mutex);
  return progress;
}
