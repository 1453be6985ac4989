/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/sawing-job.h"

G_BEGIN_DECLS

/* The search for a place for everything that is wanted, in a thread, as long as the person lets it.
 *
 * Signals: "progressed" now and then while it works; "ended", after which the outcome is to be
 * asked for. */
#define BS_TYPE_CUTTING_SEARCH (bs_cutting_search_get_type ())
G_DECLARE_FINAL_TYPE (BsCuttingSearch, bs_cutting_search, BS, CUTTING_SEARCH, GObject)

BsCuttingSearch *bs_cutting_search_new (void);

/* Ends with the best that was found so far, if it is told to stop. Not while it runs. */
void bs_cutting_search_start (BsCuttingSearch *self, BsPlan *plan);
void bs_cutting_search_stop (BsCuttingSearch *self);
gboolean bs_cutting_search_is_running (BsCuttingSearch *self);

/* What it was started with, borrowed; NULL before the first. */
BsPlan *bs_cutting_search_get_plan (BsCuttingSearch *self);

/* Borrowed until the next start. NULL while it runs, or with an error: the saw cannot do what is
 * to stay. */
const BsSawPlan *bs_cutting_search_get_found (BsCuttingSearch *self, const GError **error);

/* How far it is. */
typedef struct
{
  gboolean has_best;
  gboolean is_bound; /* everything has a place, and no less than bound_minor is proven */
  gint64 price_minor, bound_minor;
  double done; /* of its tries to do better, 0 to 1; 0 while it does what it can say no share of */
} BsCuttingProgress;

BsCuttingProgress bs_cutting_search_get_progress (BsCuttingSearch *self);

G_END_DECLS
