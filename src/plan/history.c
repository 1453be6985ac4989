/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/history.h"

typedef struct
{
  BsPlan *plan;
  char *label;     /* of the edit that led here; NULL for the first */
  char *merge_key; /* NULL: never merged into */
  char *selected;
} Entry;

struct _BsHistory
{
  GObject parent_instance;

  GPtrArray *entries; /* Entry; never empty */
  guint present;
  int saved;           /* index of the entry that was saved last; -1: it is gone */
  gboolean is_merging; /* the next push may still be one step with the present entry */
};

G_DEFINE_FINAL_TYPE (BsHistory, bs_history, G_TYPE_OBJECT)

static guint changed_signal;

static Entry *
new_entry (BsPlan *plan, const char *label, const char *merge_key, const char *selected)
{
  Entry *entry = g_new0 (Entry, 1);

  entry->plan = bs_plan_ref (plan);
  entry->label = g_strdup (label);
  entry->merge_key = g_strdup (merge_key);
  entry->selected = g_strdup (selected);
  return entry;
}

static void
free_entry (gpointer data)
{
  Entry *entry = data;

  bs_plan_unref (entry->plan);
  g_free (entry->label);
  g_free (entry->merge_key);
  g_free (entry->selected);
  g_free (entry);
}

static const Entry *
get_entry (const BsHistory *self, guint i)
{
  return self->entries->pdata[i];
}

/* The one place that decides whether a push is one step with the present entry. The entry that was
 * saved is kept, so that undo can come back to it. */
static gboolean
can_merge (const BsHistory *self, const char *merge_key)
{
  return self->is_merging && merge_key != NULL && self->present > 0
         && self->saved != (int)self->present
         && g_strcmp0 (get_entry (self, self->present)->merge_key, merge_key) == 0;
}

static void
cut_off_redo (BsHistory *self)
{
  g_ptr_array_set_size (self->entries, (int)self->present + 1);
  if (self->saved > (int)self->present)
    self->saved = -1;
}

static void
go_to (BsHistory *self, guint present, gboolean is_merging)
{
  self->present = present;
  self->is_merging = is_merging;
  g_signal_emit (self, changed_signal, 0);
}

static void
bs_history_finalize (GObject *object)
{
  BsHistory *self = BS_HISTORY (object);

  g_ptr_array_unref (self->entries);
  G_OBJECT_CLASS (bs_history_parent_class)->finalize (object);
}

static void
bs_history_class_init (BsHistoryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bs_history_finalize;

  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
bs_history_init (BsHistory *self)
{
  self->entries = g_ptr_array_new_with_free_func (free_entry);
}

BsHistory *
bs_history_new (BsPlan *plan)
{
  g_return_val_if_fail (plan != NULL, NULL);

  BsHistory *self = g_object_new (BS_TYPE_HISTORY, NULL);
  g_ptr_array_add (self->entries, new_entry (plan, NULL, NULL, NULL));
  return self;
}

BsPlan *
bs_history_get_plan (BsHistory *self)
{
  g_return_val_if_fail (BS_IS_HISTORY (self), NULL);
  return get_entry (self, self->present)->plan;
}

void
bs_history_reset (BsHistory *self, BsPlan *plan)
{
  g_return_if_fail (BS_IS_HISTORY (self));
  g_return_if_fail (plan != NULL);

  /* Before the old ones go: the plan may be held by one of them alone. */
  Entry *first = new_entry (plan, NULL, NULL, NULL);

  g_ptr_array_set_size (self->entries, 0);
  g_ptr_array_add (self->entries, first);
  self->saved = 0;
  go_to (self, 0, FALSE);
}

void
bs_history_push (BsHistory *self, BsPlan *plan, const char *label, const char *merge_key,
                 const char *selected)
{
  g_return_if_fail (BS_IS_HISTORY (self));
  g_return_if_fail (plan != NULL && label != NULL);

  if (plan == bs_history_get_plan (self))
    return;

  Entry *entry = new_entry (plan, label, merge_key, selected);
  const gboolean is_merged = can_merge (self, merge_key);

  cut_off_redo (self);
  if (is_merged)
    g_ptr_array_remove_index (self->entries, self->present);
  g_ptr_array_add (self->entries, entry);
  go_to (self, self->entries->len - 1, TRUE);
}

void
bs_history_end_merge (BsHistory *self)
{
  g_return_if_fail (BS_IS_HISTORY (self));
  self->is_merging = FALSE;
}

gboolean
bs_history_can_undo (BsHistory *self)
{
  g_return_val_if_fail (BS_IS_HISTORY (self), FALSE);
  return self->present > 0;
}

gboolean
bs_history_can_redo (BsHistory *self)
{
  g_return_val_if_fail (BS_IS_HISTORY (self), FALSE);
  return self->present + 1 < self->entries->len;
}

void
bs_history_undo (BsHistory *self)
{
  g_return_if_fail (bs_history_can_undo (self));
  go_to (self, self->present - 1, FALSE);
}

void
bs_history_redo (BsHistory *self)
{
  g_return_if_fail (bs_history_can_redo (self));
  go_to (self, self->present + 1, FALSE);
}

const char *
bs_history_get_undo_label (BsHistory *self)
{
  return bs_history_can_undo (self) ? get_entry (self, self->present)->label : NULL;
}

const char *
bs_history_get_redo_label (BsHistory *self)
{
  return bs_history_can_redo (self) ? get_entry (self, self->present + 1)->label : NULL;
}

const char *
bs_history_get_selected (BsHistory *self)
{
  g_return_val_if_fail (BS_IS_HISTORY (self), NULL);
  return get_entry (self, self->present)->selected;
}

gboolean
bs_history_is_modified (BsHistory *self)
{
  g_return_val_if_fail (BS_IS_HISTORY (self), FALSE);
  return self->saved != (int)self->present;
}

void
bs_history_set_saved (BsHistory *self)
{
  g_return_if_fail (BS_IS_HISTORY (self));

  self->saved = (int)self->present;
  go_to (self, self->present, FALSE);
}
