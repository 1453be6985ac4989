/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "core/progress.h"
#include "core/sawing-wish.h"

G_BEGIN_DECLS

/* The search for a place on the rack's boards for all that is wanted: docs/cutting-model.md, From
 * the rack to the slab. */

typedef struct
{
  GArray *cuts; /* BsCut: those kept, then the others; frees what they hold */
  gint64 price_minor;
  gint64 bound_minor;      /* proven: it cannot be done for less */
  gboolean is_bound;       /* FALSE: nothing is proven, because something found no place */
  gboolean is_price_least; /* proven */
  gboolean is_waste_least; /* proven: none of this price wastes less */
} BsSawPlan;

typedef struct
{
  gboolean keeps_all; /* cuts that are neither pinned nor done stay, too */
  gboolean is_quick;  /* only so many steps as a hand that waits has patience for */
  BsProgress progress;
  /* Called from the thread that does the work whenever a better plan is known; borrowed. */
  void (*better) (const BsSawPlan *plan, gpointer data);
  gpointer data;
} BsSawEffort;

/* All that is wanted has a place, then least price, then least waste, then the longest offcuts;
 * pieces on show come from the best looking boards. Cuts that are pinned or done stay where they
 * are. What finds no place has no cut. NULL with an error when no saw can make those that stay. */
BsSawPlan *bs_saw_solve (const BsPlan *plan, const BsSawEffort *effort, GError **error);
/* Whether what a search proved of the cuts that it found (those of `proven`) is true of another
 * plan: it has the same cuts, and all that the search looked at is the same. To pin more of the
 * cuts, or mark them as cut, takes nothing from the proof: it leaves less to choose from, and these
 * still. */
gboolean bs_saw_proof_holds (const BsPlan *proven, const BsPlan *plan);

void bs_saw_plan_free (BsSawPlan *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsSawPlan, bs_saw_plan_free)

G_END_DECLS
