/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/study.h"

struct _BsStudy
{
  GObject parent_instance;

  BsPlan *plan; /* wanted */
  BsForecast *forecast;
  GCancellable *working; /* of the thread under way, or NULL */
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsStudy, bs_study, G_TYPE_OBJECT)

static gboolean
report (double done, gpointer cancellable)
{
  return !g_cancellable_is_cancelled (cancellable);
}

static void
work (GTask *task, gpointer self, gpointer plan, GCancellable *cancellable)
{
  BsProgress progress = { report, cancellable };

  g_task_return_pointer (task, bs_forecast_new (plan, &progress), (GDestroyNotify)bs_forecast_free);
}

static void start (BsStudy *self);

static void
done_cb (GObject *object, GAsyncResult *result, gpointer user_data)
{
  BsStudy *self = BS_STUDY (object);
  const BsPlan *plan = g_task_get_task_data (G_TASK (result));
  BsForecast *forecast = g_task_propagate_pointer (G_TASK (result), NULL);

  g_clear_object (&self->working);
  if (plan == self->plan && forecast != NULL)
    {
      self->forecast = forecast;
      g_signal_emit (self, signals[CHANGED], 0);
      return;
    }
  g_clear_pointer (&forecast, bs_forecast_free);
  start (self);
}

static void
start (BsStudy *self)
{
  if (self->plan == NULL)
    return;
  self->working = g_cancellable_new ();
  g_autoptr (GTask) task = g_task_new (self, self->working, done_cb, NULL);
  g_task_set_source_tag (task, start);
  g_task_set_task_data (task, bs_plan_ref (self->plan), (GDestroyNotify)bs_plan_unref);
  g_task_run_in_thread (task, work);
}

static void
bs_study_finalize (GObject *object)
{
  BsStudy *self = BS_STUDY (object);

  g_clear_pointer (&self->plan, bs_plan_unref);
  g_clear_pointer (&self->forecast, bs_forecast_free);
  g_clear_object (&self->working);
  G_OBJECT_CLASS (bs_study_parent_class)->finalize (object);
}

static void
bs_study_class_init (BsStudyClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_study_finalize;
  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_STUDY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
bs_study_init (BsStudy *self)
{
}

BsStudy *
bs_study_new (void)
{
  return g_object_new (BS_TYPE_STUDY, NULL);
}

void
bs_study_set_plan (BsStudy *self, BsPlan *plan)
{
  g_return_if_fail (BS_IS_STUDY (self));

  if (plan == self->plan)
    return;
  BsPlan *before = self->plan;
  self->plan = plan != NULL ? bs_plan_ref (plan) : NULL;
  g_clear_pointer (&before, bs_plan_unref);
  if (self->working != NULL)
    g_cancellable_cancel (self->working);
  else
    start (self);
  if (self->forecast == NULL)
    return;
  g_clear_pointer (&self->forecast, bs_forecast_free);
  g_signal_emit (self, signals[CHANGED], 0);
}

const BsForecast *
bs_study_get_forecast (BsStudy *self)
{
  g_return_val_if_fail (BS_IS_STUDY (self), NULL);

  return self->forecast;
}
