/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "core/plan.h"

G_BEGIN_DECLS

/* The plans of an editing session, each with a label and what was selected, for undo and redo.
 * Emits "changed" when the present plan, or what can be undone, changes. Knows nothing of windows.
 */
#define BS_TYPE_HISTORY (bs_history_get_type ())
G_DECLARE_FINAL_TYPE (BsHistory, bs_history, BS, HISTORY, GObject)

BsHistory *bs_history_new (BsPlan *plan);

/* Borrowed; never NULL. */
BsPlan *bs_history_get_plan (BsHistory *self);

/* Starts afresh with another plan, unmodified. */
void bs_history_reset (BsHistory *self, BsPlan *plan);

/* Makes plan the present one. A push of the very plan that is present is ignored. `label` says what
 * was done ("Move lamination 4"), translated. When merge_key is not NULL and equals the key of the
 * present entry, that entry is replaced: typing in one field is one step. `selected` (id or NULL)
 * is what undo brings the person back to. */
void bs_history_push (BsHistory *self, BsPlan *plan, const char *label, const char *merge_key,
                      const char *selected);

/* The next push starts a new entry whatever its key. */
void bs_history_end_merge (BsHistory *self);

gboolean bs_history_can_undo (BsHistory *self);
gboolean bs_history_can_redo (BsHistory *self);
void bs_history_undo (BsHistory *self);
void bs_history_redo (BsHistory *self);
const char *bs_history_get_undo_label (BsHistory *self); /* NULL when there is none */
const char *bs_history_get_redo_label (BsHistory *self);
const char *bs_history_get_selected (BsHistory *self); /* of the present entry */

/* Modified means: not at the entry that was saved last. */
gboolean bs_history_is_modified (BsHistory *self);
void bs_history_set_saved (BsHistory *self);

G_END_DECLS
