/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "app/study.h"
#include "core/results.h"
#include "plan/history.h"

G_BEGIN_DECLS

/* One plan being worked on: its history, the results of what is shown, and what is selected. Every
 * page of a window gets the same session and nothing else.
 *
 * A page shows bs_session_get_results () whenever "changed" is emitted. To change the plan it makes
 * a new one from bs_session_get_plan () with an edit and pushes it; to show what a gesture would do
 * it sets a preview at each step, then pushes that same plan, or ends the preview.
 *
 * Signals: "changed" when the results are others than before, or a preview became the plan;
 * "notify::selected" (a lamination's id, or NULL); "notify::folder". What can be undone is told by
 * the history's own "changed". */
#define BS_TYPE_SESSION (bs_session_get_type ())
G_DECLARE_FINAL_TYPE (BsSession, bs_session, BS, SESSION, GObject)

BsSession *bs_session_new (BsPlan *plan);

/* All borrowed, never NULL. The plan is the present one of the history; the results are the
 * preview's while there is one (and results->stack->plan is what they belong to). */
BsHistory *bs_session_get_history (BsSession *self);
BsPlan *bs_session_get_plan (BsSession *self);
BsResults *bs_session_get_results (BsSession *self);

/* What takes longer to work out; it follows the plan shown. Begins when first asked for. */
BsStudy *bs_session_get_study (BsSession *self, const BsStudyKind *kind);

/* Shows a plan, which may be the present one, without making it so; NULL ends that. */
void bs_session_set_preview (BsSession *self, BsPlan *plan);
gboolean bs_session_has_preview (BsSession *self);

/* One edit: see bs_history_push (). Ends a preview. */
void bs_session_push (BsSession *self, BsPlan *plan, const char *label, const char *merge_key);

/* Another plan altogether, unmodified, nothing selected. */
void bs_session_open (BsSession *self, BsPlan *plan);

/* The folder that the plan's file is in, which paths in it begin from; NULL while there is none. */
const char *bs_session_get_folder (BsSession *self);
void bs_session_set_folder (BsSession *self, const char *folder);

/* Selecting what the plan does not have selects nothing. */
const char *bs_session_get_selected (BsSession *self);
void bs_session_select (BsSession *self, const char *lamination);

G_END_DECLS
