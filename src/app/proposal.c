/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/proposal.h"

#include <gio/gio.h>

#include "app/background.h"
#include "plan/edits.h"

/* One search: shared by the thread and the proposal. */
typedef struct
{
  BsOrderProblem *problem;
  BsOrderEffort effort;
  GCancellable *cancellable;
  GMutex mutex;          /* of the next two, told by the thread */
  BsOrderResult *result; /* the best so far */
  double done;
} Search;

struct _BsProposal
{
  GObject parent_instance;

  BsPlan *plan;   /* asked for */
  Search *search; /* under way, or ended; NULL when there is none */
  BsOrderResult *result;
  gboolean is_looking;
  guint watch; /* source that looks what the thread has told */
  double progress;
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

G_DEFINE_FINAL_TYPE (BsProposal, bs_proposal, G_TYPE_OBJECT)

/* The first order is there after some milliseconds. */
#define WATCH_EVERY_MS 40

/* In the thread. */

static void
clear_search (gpointer data)
{
  Search *search = data;

  bs_order_problem_free (search->problem);
  g_object_unref (search->cancellable);
  g_clear_pointer (&search->result, bs_order_result_unref);
  g_mutex_clear (&search->mutex);
}

static void
search_unref (gpointer search)
{
  g_atomic_rc_box_release_full (search, clear_search);
}

static gboolean
report (double done, gpointer data)
{
  Search *search = data;

  g_mutex_lock (&search->mutex);
  search->done = done;
  g_mutex_unlock (&search->mutex);
  return !g_cancellable_is_cancelled (search->cancellable);
}

static void
improved (BsOrderResult *result, gpointer data)
{
  Search *search = data;

  g_mutex_lock (&search->mutex);
  g_clear_pointer (&search->result, bs_order_result_unref);
  search->result = bs_order_result_ref (result);
  g_mutex_unlock (&search->mutex);
}

static void
look (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Search *search = data;
  BsProgress progress = { report, search };

  bs_background_enter ();
  g_task_return_pointer (
      task, bs_order_solve (search->problem, &search->effort, improved, search, &progress, NULL),
      (GDestroyNotify)bs_order_result_unref);
}

/* In the main thread. */

static void
take_result (BsProposal *self, BsOrderResult *result)
{
  g_clear_pointer (&self->result, bs_order_result_unref);
  self->result = result;
}

static gboolean
watch_cb (gpointer user_data)
{
  BsProposal *self = user_data;
  Search *search = self->search;

  g_mutex_lock (&search->mutex);
  double done = search->done;
  BsOrderResult *result = g_steal_pointer (&search->result);
  g_mutex_unlock (&search->mutex);
  if (done > self->progress)
    {
      self->progress = done;
      g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PROGRESS]);
    }
  if (result != NULL)
    {
      take_result (self, result);
      g_signal_emit (self, signals[CHANGED], 0);
    }
  return G_SOURCE_CONTINUE;
}

static void
ended_cb (GObject *object, GAsyncResult *async, gpointer user_data)
{
  BsProposal *self = BS_PROPOSAL (object);
  BsOrderResult *result = g_task_propagate_pointer (G_TASK (async), NULL);

  if (self->search != g_task_get_task_data (G_TASK (async))) /* discarded, or asked anew */
    {
      g_clear_pointer (&result, bs_order_result_unref);
      return;
    }
  g_clear_handle_id (&self->watch, g_source_remove);
  take_result (self, result);
  self->is_looking = FALSE;
  self->progress = 1.0;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PROGRESS]);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
forget (BsProposal *self)
{
  if (self->search != NULL)
    g_cancellable_cancel (self->search->cancellable);
  g_clear_handle_id (&self->watch, g_source_remove);
  g_clear_pointer (&self->search, search_unref);
  g_clear_pointer (&self->result, bs_order_result_unref);
  g_clear_pointer (&self->plan, bs_plan_unref);
  self->is_looking = FALSE;
  self->progress = 0.0;
}

static void
bs_proposal_finalize (GObject *object)
{
  forget (BS_PROPOSAL (object));
  G_OBJECT_CLASS (bs_proposal_parent_class)->finalize (object);
}

static void
bs_proposal_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  BsProposal *self = BS_PROPOSAL (object);

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
bs_proposal_class_init (BsProposalClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->finalize = bs_proposal_finalize;
  object_class->get_property = bs_proposal_get_property;

  props[PROP_PROGRESS] = g_param_spec_double ("progress", NULL, NULL, 0.0, 1.0, 0.0,
                                              G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_PROPOSAL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
bs_proposal_init (BsProposal *self)
{
}

BsProposal *
bs_proposal_new (void)
{
  return g_object_new (BS_TYPE_PROPOSAL, NULL);
}

/* Asked to stop, the thread still has an order to give: so the task is not itself cancelled. */
static void
run (BsProposal *self)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, ended_cb, NULL);

  g_task_set_source_tag (task, run);
  g_task_set_task_data (task, g_atomic_rc_box_acquire (self->search), search_unref);
  self->watch = g_timeout_add (WATCH_EVERY_MS, watch_cb, self);
  g_task_run_in_thread (task, look);
}

gboolean
bs_proposal_look (BsProposal *self, BsPlan *plan, GError **error)
{
  g_return_val_if_fail (BS_IS_PROPOSAL (self), FALSE);

  BsOrderProblem *problem = bs_order_problem_new_for_plan (plan, error);
  forget (self);
  if (problem != NULL)
    {
      self->plan = bs_plan_ref (plan);
      self->search = g_atomic_rc_box_new0 (Search);
      self->search->problem = problem;
      self->search->effort = bs_order_effort_default (problem);
      self->search->cancellable = g_cancellable_new ();
      g_mutex_init (&self->search->mutex);
      self->is_looking = TRUE;
      run (self);
    }
  g_signal_emit (self, signals[CHANGED], 0);
  return problem != NULL;
}

void
bs_proposal_stop (BsProposal *self)
{
  g_return_if_fail (BS_IS_PROPOSAL (self));

  if (self->is_looking)
    g_cancellable_cancel (self->search->cancellable);
}

void
bs_proposal_discard (BsProposal *self)
{
  g_return_if_fail (BS_IS_PROPOSAL (self));

  if (self->search == NULL)
    return;
  forget (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
bs_proposal_is_looking (BsProposal *self)
{
  g_return_val_if_fail (BS_IS_PROPOSAL (self), FALSE);

  return self->is_looking;
}

double
bs_proposal_get_progress (BsProposal *self)
{
  g_return_val_if_fail (BS_IS_PROPOSAL (self), 0.0);

  return self->progress;
}

const BsOrderResult *
bs_proposal_get_result (BsProposal *self)
{
  g_return_val_if_fail (BS_IS_PROPOSAL (self), NULL);

  return self->result;
}

const BsOrderProblem *
bs_proposal_get_problem (BsProposal *self)
{
  g_return_val_if_fail (BS_IS_PROPOSAL (self), NULL);

  return self->search != NULL ? self->search->problem : NULL;
}

gboolean
bs_proposal_fits (BsProposal *self, const BsPlan *plan)
{
  g_return_val_if_fail (BS_IS_PROPOSAL (self), FALSE);

  return self->result != NULL && bs_order_is_same_problem (self->plan, plan);
}

BsPlan *
bs_proposal_apply (BsProposal *self, BsPlan *plan)
{
  g_return_val_if_fail (BS_IS_PROPOSAL (self), NULL);
  g_return_val_if_fail (bs_proposal_fits (self, plan), NULL);

  g_autofree BsPlacement *placements
      = bs_order_get_placements (self->search->problem, self->result);
  return bs_edit_set_order (plan, placements, self->result->n_places);
}
