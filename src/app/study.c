/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/study.h"

#include "app/background.h"
#include "core/clamp-advice.h"
#include "core/forecast.h"
#include "core/purchase.h"
#include "core/schedule.h"

/* How long a plan stands before what is slow begins: longer than from one step of a drag to the
 * next. */
#define REST_MS 120

const BsStudyKind bs_study_forecast = {
  (gpointer (*) (const BsPlan *, const BsProgress *))bs_forecast_new,
  (GDestroyNotify)bs_forecast_free,
};

static gpointer
work_out_schedule (const BsPlan *plan, const BsProgress *progress)
{
  return bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, progress);
}

const BsStudyKind bs_study_schedule = {
  work_out_schedule,
  (GDestroyNotify)bs_schedule_free,
  REST_MS,
};

/* Never stopped: while a hand moves on, the pressures a little behind it are what there is to see.
 */
static gpointer
press_live (const BsPlan *plan, const BsProgress *progress)
{
  BsPressure *pressure = bs_pressure_new (plan, BS_PRESS_MODEL_TIMOSHENKO);

  bs_pressure_explain (pressure);
  return pressure;
}

const BsStudyKind bs_study_live_pressing = { press_live, (GDestroyNotify)bs_pressure_free };

static gpointer
press_exactly (const BsPlan *plan, const BsProgress *progress)
{
  g_autoptr (BsPressure) pressure = bs_pressure_new (plan, BS_PRESS_MODEL_SQUEEZE);

  if (!bs_progress_report (progress, 0.4))
    return NULL;
  bs_pressure_explain (pressure);
  return g_steal_pointer (&pressure);
}

const BsStudyKind bs_study_pressing = {
  press_exactly,
  (GDestroyNotify)bs_pressure_free,
  REST_MS,
};

const BsStudyKind bs_study_clamp_advice = {
  (gpointer (*) (const BsPlan *, const BsProgress *))bs_clamp_advice_new,
  (GDestroyNotify)bs_clamp_advice_free,
  REST_MS,
};

static gpointer
purchase (const BsPlan *plan, const BsProgress *progress)
{
  BsPurchase *found = bs_purchase_new (plan, BS_PURCHASE_ROUNDS, progress);

  if (!bs_progress_report (progress, 1.0))
    g_clear_pointer (&found, bs_purchase_free);
  return found;
}

const BsStudyKind bs_study_purchase = { purchase, (GDestroyNotify)bs_purchase_free, REST_MS };

struct _BsStudy
{
  GObject parent_instance;

  const BsStudyKind *kind;
  BsPlan *plan; /* wanted */
  gpointer result;
  gboolean is_current;
  GCancellable *working; /* of the thread under way, or NULL */
  guint resting;         /* source that waits for the plan to have stood */
  guint watch;           /* source that looks how far it is */
  GMutex mutex;          /* of the next one */
  double done;           /* told by the thread */
  gpointer better;       /* likewise; not shown yet */
  gboolean is_stopped;   /* by the person: what is shown will do */
  double progress;       /* as seen by the main thread */
};

enum
{
  PROP_0,
  PROP_PROGRESS,
  N_PROPS
};

enum
{
  CHANGED,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsStudy, bs_study, G_TYPE_OBJECT)

#define WATCH_EVERY_MS 100

static gboolean
report (double done, gpointer task)
{
  BsStudy *self = g_task_get_source_object (task);

  g_mutex_lock (&self->mutex);
  self->done = done;
  g_mutex_unlock (&self->mutex);
  return !g_cancellable_is_cancelled (g_task_get_cancellable (task));
}

static void
take_better (gpointer result, gpointer task)
{
  BsStudy *self = g_task_get_source_object (task);

  g_mutex_lock (&self->mutex);
  g_clear_pointer (&self->better, self->kind->free);
  self->better = result;
  g_mutex_unlock (&self->mutex);
}

static void
work (GTask *task, gpointer source, gpointer plan, GCancellable *cancellable)
{
  BsStudy *self = source;
  BsProgress progress = { report, task, take_better };

  bs_background_enter ();
  g_task_return_pointer (task, self->kind->work_out (plan, &progress), self->kind->free);
}

static void
set_progress (BsStudy *self, double done)
{
  self->progress = done;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PROGRESS]);
}

/* Takes the result. */
static void
set_result (BsStudy *self, gpointer result, gboolean is_current)
{
  g_clear_pointer (&self->result, self->kind->free);
  self->result = result;
  self->is_current = is_current;
}

static gboolean
watch_cb (gpointer user_data)
{
  BsStudy *self = user_data;

  g_mutex_lock (&self->mutex);
  double done = self->done;
  gpointer better = g_steal_pointer (&self->better);
  g_mutex_unlock (&self->mutex);
  if (better != NULL && !g_cancellable_is_cancelled (self->working))
    {
      set_result (self, better, TRUE);
      g_signal_emit (self, signals[CHANGED], 0);
    }
  else
    g_clear_pointer (&better, self->kind->free);
  if (done > self->progress)
    set_progress (self, done);
  return G_SOURCE_CONTINUE;
}

static void start (BsStudy *self);

static void
done_cb (GObject *object, GAsyncResult *result, gpointer user_data)
{
  BsStudy *self = BS_STUDY (object);
  const BsPlan *plan = g_task_get_task_data (G_TASK (result));
  gpointer found = g_task_propagate_pointer (G_TASK (result), NULL);

  g_clear_object (&self->working);
  g_clear_handle_id (&self->watch, g_source_remove);
  g_clear_pointer (&self->better, self->kind->free);
  if (found != NULL)
    set_result (self, found, plan == self->plan);
  if (plan != self->plan || (found == NULL && !self->is_stopped))
    start (self);
  else
    set_progress (self, 1.0);
  if (found != NULL)
    g_signal_emit (self, signals[CHANGED], 0);
}

static void
work_in_thread (BsStudy *self)
{
  self->done = 0.0;
  self->progress = 0.0;
  self->watch = g_timeout_add (WATCH_EVERY_MS, watch_cb, self);
  self->working = g_cancellable_new ();
  g_autoptr (GTask) task = g_task_new (self, self->working, done_cb, NULL);
  g_task_set_source_tag (task, start);
  g_task_set_check_cancellable (task, FALSE); /* what cannot be stopped is the latest there is */
  g_task_set_task_data (task, bs_plan_ref (self->plan), (GDestroyNotify)bs_plan_unref);
  g_task_run_in_thread (task, work);
}

static gboolean
rested_cb (gpointer user_data)
{
  BsStudy *self = user_data;

  self->resting = 0;
  work_in_thread (self);
  return G_SOURCE_REMOVE;
}

static void
start (BsStudy *self)
{
  g_clear_handle_id (&self->resting, g_source_remove);
  if (self->plan == NULL)
    return;
  if (self->kind->rest_ms > 0)
    self->resting = g_timeout_add (self->kind->rest_ms, rested_cb, self);
  else
    work_in_thread (self);
}

static void
bs_study_finalize (GObject *object)
{
  BsStudy *self = BS_STUDY (object);

  g_clear_pointer (&self->plan, bs_plan_unref);
  g_clear_pointer (&self->result, self->kind->free);
  g_clear_pointer (&self->better, self->kind->free);
  g_clear_object (&self->working);
  g_clear_handle_id (&self->resting, g_source_remove);
  g_clear_handle_id (&self->watch, g_source_remove);
  g_mutex_clear (&self->mutex);
  G_OBJECT_CLASS (bs_study_parent_class)->finalize (object);
}

static void
bs_study_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  BsStudy *self = BS_STUDY (object);

  switch (id)
    {
    case PROP_PROGRESS:
      g_value_set_double (value, self->progress);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_study_class_init (BsStudyClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->finalize = bs_study_finalize;
  object_class->get_property = bs_study_get_property;

  props[PROP_PROGRESS] = g_param_spec_double ("progress", NULL, NULL, 0.0, 1.0, 0.0,
                                              G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_STUDY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
bs_study_init (BsStudy *self)
{
  g_mutex_init (&self->mutex);
}

BsStudy *
bs_study_new (const BsStudyKind *kind)
{
  BsStudy *self = g_object_new (BS_TYPE_STUDY, NULL);

  self->kind = kind;
  return self;
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
  self->is_stopped = FALSE;
  if (self->working != NULL)
    g_cancellable_cancel (self->working);
  else
    start (self);
  if (!self->is_current)
    return;
  self->is_current = FALSE;
  g_signal_emit (self, signals[CHANGED], 0);
}

gconstpointer
bs_study_get_result (BsStudy *self)
{
  g_return_val_if_fail (BS_IS_STUDY (self), NULL);

  return self->result;
}

gboolean
bs_study_is_current (BsStudy *self)
{
  g_return_val_if_fail (BS_IS_STUDY (self), FALSE);

  return self->is_current;
}

double
bs_study_get_progress (BsStudy *self)
{
  g_return_val_if_fail (BS_IS_STUDY (self), 0.0);

  return self->progress;
}

gboolean
bs_study_is_working (BsStudy *self)
{
  g_return_val_if_fail (BS_IS_STUDY (self), FALSE);

  return (self->working != NULL || self->resting != 0) && !self->is_stopped;
}

void
bs_study_stop (BsStudy *self)
{
  g_return_if_fail (BS_IS_STUDY (self));

  if (self->working == NULL || self->is_stopped || !self->is_current)
    return;
  self->is_stopped = TRUE;
  g_cancellable_cancel (self->working);
  set_progress (self, 1.0);
}
