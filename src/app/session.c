/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/session.h"

struct _BsSession
{
  GObject parent_instance;

  BsHistory *history;
  BsPlan *shown; /* what the results are of */
  BsResults *results;
  GHashTable *studies; /* BsStudyKind to BsStudy: those that someone asked for */
  char *selected;
  char *folder;
  gboolean has_preview;
};

enum
{
  PROP_0,
  PROP_SELECTED,
  PROP_FOLDER,
  N_PROPS
};

enum
{
  CHANGED,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsSession, bs_session, G_TYPE_OBJECT)

static void
set_studied (BsSession *self, BsPlan *plan)
{
  GHashTableIter iter;
  gpointer study;

  g_hash_table_iter_init (&iter, self->studies);
  while (g_hash_table_iter_next (&iter, NULL, &study))
    bs_study_set_plan (study, plan);
}

static void
show_plan (BsSession *self, BsPlan *plan, gboolean is_preview)
{
  gboolean was_preview = self->has_preview;

  self->has_preview = is_preview;
  if (plan == self->shown)
    {
      if (was_preview != is_preview) /* the same plan, but now for good or for looking at */
        g_signal_emit (self, signals[CHANGED], 0);
      return;
    }
  g_clear_pointer (&self->results, bs_results_unref);
  g_clear_pointer (&self->shown, bs_plan_unref);
  self->shown = bs_plan_ref (plan);
  self->results = bs_evaluate (plan);
  set_studied (self, plan);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Going back and forth in the history brings the selection along. */
static void
history_changed_cb (BsSession *self, BsHistory *history)
{
  g_assert (BS_IS_SESSION (self));
  g_assert (BS_IS_HISTORY (history));

  BsPlan *plan = bs_history_get_plan (history);
  if (plan == self->shown && !self->has_preview)
    return;
  const char *selected = bs_history_get_selected (history);
  show_plan (self, plan, FALSE);
  bs_session_select (self, selected != NULL ? selected : self->selected);
}

static void
bs_session_finalize (GObject *object)
{
  BsSession *self = BS_SESSION (object);

  set_studied (self, NULL); /* threads may hold the studies a little longer */
  g_clear_pointer (&self->studies, g_hash_table_unref);
  g_clear_object (&self->history);
  g_clear_pointer (&self->results, bs_results_unref);
  g_clear_pointer (&self->shown, bs_plan_unref);
  g_clear_pointer (&self->selected, g_free);
  g_clear_pointer (&self->folder, g_free);
  G_OBJECT_CLASS (bs_session_parent_class)->finalize (object);
}

static void
bs_session_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  BsSession *self = BS_SESSION (object);

  switch (id)
    {
    case PROP_SELECTED:
      g_value_set_string (value, self->selected);
      break;
    case PROP_FOLDER:
      g_value_set_string (value, self->folder);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_session_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  BsSession *self = BS_SESSION (object);

  switch (id)
    {
    case PROP_SELECTED:
      bs_session_select (self, g_value_get_string (value));
      break;
    case PROP_FOLDER:
      bs_session_set_folder (self, g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_session_class_init (BsSessionClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->finalize = bs_session_finalize;
  object_class->get_property = bs_session_get_property;
  object_class->set_property = bs_session_set_property;

  props[PROP_SELECTED]
      = g_param_spec_string ("selected", NULL, NULL, NULL,
                             G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  props[PROP_FOLDER]
      = g_param_spec_string ("folder", NULL, NULL, NULL,
                             G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);

  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
bs_session_init (BsSession *self)
{
  self->studies = g_hash_table_new_full (NULL, NULL, NULL, g_object_unref);
}

BsSession *
bs_session_new (BsPlan *plan)
{
  g_return_val_if_fail (plan != NULL, NULL);

  BsSession *self = g_object_new (BS_TYPE_SESSION, NULL);
  self->history = bs_history_new (plan);
  g_signal_connect_object (self->history, "changed", G_CALLBACK (history_changed_cb), self,
                           G_CONNECT_SWAPPED);
  show_plan (self, plan, FALSE);
  return self;
}

BsHistory *
bs_session_get_history (BsSession *self)
{
  g_return_val_if_fail (BS_IS_SESSION (self), NULL);

  return self->history;
}

BsPlan *
bs_session_get_plan (BsSession *self)
{
  g_return_val_if_fail (BS_IS_SESSION (self), NULL);

  return bs_history_get_plan (self->history);
}

BsResults *
bs_session_get_results (BsSession *self)
{
  g_return_val_if_fail (BS_IS_SESSION (self), NULL);

  return self->results;
}

BsStudy *
bs_session_get_study (BsSession *self, const BsStudyKind *kind)
{
  g_return_val_if_fail (BS_IS_SESSION (self), NULL);
  g_return_val_if_fail (kind != NULL, NULL);

  BsStudy *study = g_hash_table_lookup (self->studies, kind);
  if (study == NULL)
    {
      study = bs_study_new (kind);
      g_hash_table_insert (self->studies, (gpointer)kind, study);
      bs_study_set_plan (study, self->shown);
    }
  return study;
}

void
bs_session_set_preview (BsSession *self, BsPlan *plan)
{
  g_return_if_fail (BS_IS_SESSION (self));

  show_plan (self, plan != NULL ? plan : bs_session_get_plan (self), plan != NULL);
}

gboolean
bs_session_has_preview (BsSession *self)
{
  g_return_val_if_fail (BS_IS_SESSION (self), FALSE);

  return self->has_preview;
}

void
bs_session_push (BsSession *self, BsPlan *plan, const char *label, const char *merge_key)
{
  g_return_if_fail (BS_IS_SESSION (self));
  g_return_if_fail (plan != NULL);
  g_return_if_fail (label != NULL);

  bs_history_push (self->history, plan, label, merge_key, self->selected);
  show_plan (self, bs_session_get_plan (self), FALSE);
}

void
bs_session_open (BsSession *self, BsPlan *plan)
{
  g_return_if_fail (BS_IS_SESSION (self));
  g_return_if_fail (plan != NULL);

  bs_session_select (self, NULL);
  bs_history_reset (self->history, plan);
  show_plan (self, bs_session_get_plan (self), FALSE);
}

const char *
bs_session_get_selected (BsSession *self)
{
  g_return_val_if_fail (BS_IS_SESSION (self), NULL);

  return self->selected;
}

void
bs_session_select (BsSession *self, const char *lamination)
{
  g_return_if_fail (BS_IS_SESSION (self));

  if (lamination != NULL && bs_plan_find_lamination (self->shown, lamination) == NULL)
    lamination = NULL;
  if (g_strcmp0 (self->selected, lamination) == 0)
    return;

  char *selected = g_strdup (lamination);
  g_free (self->selected);
  self->selected = selected;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTED]);
}

const char *
bs_session_get_folder (BsSession *self)
{
  g_return_val_if_fail (BS_IS_SESSION (self), NULL);

  return self->folder;
}

void
bs_session_set_folder (BsSession *self, const char *folder)
{
  g_return_if_fail (BS_IS_SESSION (self));

  if (g_strcmp0 (self->folder, folder) == 0)
    return;
  g_free (self->folder);
  self->folder = g_strdup (folder);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_FOLDER]);
}
