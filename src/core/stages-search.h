/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stage-times.h"

G_BEGIN_DECLS

/* The search behind core/stages: all ways in which neighbouring laminations can be one piece after
 * some rounds, the worse ones left out. docs/stages-model.md, "The search". */

typedef struct _BsStagesSearch BsStagesSearch;

/* Rows tried before the search gives up, so that a plan of any size ends; some tenths of a second.
 */
#define BS_STAGES_MAX_STEPS 1500000

/* As many rounds as it can look into. */
#define BS_STAGES_SEARCH_ROUNDS 4

BsStagesSearch *bs_stages_search_new (const BsStagesInput *input);
void bs_stages_search_free (BsStagesSearch *self);

/* Goes on to the next round: finds all packs that can be had at the end of it. */
void bs_stages_search_next_round (BsStagesSearch *self);

/* Something may have been left out, since there were too many ways. */
gboolean bs_stages_search_gave_up (const BsStagesSearch *self);

/* So many rows may be tried from now on. */
void bs_stages_search_allow (BsStagesSearch *self, int n_steps);

/* A way to glue the whole slab in a last stage after the rounds so far; a number, or this. */
#define BS_STAGES_NO_WAY (-1)

/* The quickest way whose last stage joins pieces between two widths (mm) and whose assembly and
 * planing take no longer than limit_us in all. */
int bs_stages_search_finish (BsStagesSearch *self, double least_width, double most_width,
                             gint64 limit_us);

/* Microseconds of assembly and planing of a way. */
gint64 bs_stages_search_time_us (const BsStagesSearch *self, int way);

/* Widest less narrowest piece of its last stage, mm. */
double bs_stages_search_imbalance (const BsStagesSearch *self, int way);

/* Width of the laminations from first up to end as one piece; NAN when they cannot be one by now.
 */
double bs_stages_search_piece_width (const BsStagesSearch *self, int first, int end);

/* Calls report for each stage of a way, those that come first before those that need them: its
 * round from 0, and where its pieces begin, n_pieces + 1 numbers with the end of the last. */
typedef void (*BsStagesReport) (int round, const int *bounds, int n_pieces, gpointer data);
void bs_stages_search_report (const BsStagesSearch *self, int way, BsStagesReport report,
                              gpointer data);

G_END_DECLS
