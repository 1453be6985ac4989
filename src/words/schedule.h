/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/schedule.h"
#include "core/stages-remedy.h"

G_BEGIN_DECLS

/* Sentences on the presses of a schedule. All char * are the caller's. */

/* By its laminations, from one place of the order up to before another: "A1 to B2", "A1 and A2" or
 * "A1"; and the glue line in front of a place. */
char *bs_words_piece_name (const BsSchedule *schedule, int from, int to);
char *bs_words_joint_name (const BsSchedule *schedule, int place);

/* By all of its laminations. */
char *bs_words_press_name (const BsSchedule *schedule, const BsStage *stage);

/* With its number (from 0 here, from 1 in words) and round; then its pieces, clamps, weight, and
 * what is in the clamps with it. */
char *bs_words_press_title (const BsSchedule *schedule, const BsStagesPlan *presses, guint number);
char *bs_words_press (const BsSchedule *schedule, const BsStagesPlan *presses, guint number);

/* What stands in the way (static). */
const char *bs_words_stage_limit (BsStageLimit limit);

char *bs_words_stages_remedy (const BsStagesRemedy *remedy, BsUnitSystem units);

/* What stands above the remedies of a schedule that is not possible (static). */
const char *bs_words_remedies_heading (const BsSchedule *schedule);

/* How many presses, rounds, and how long in all. */
char *bs_words_presses (const BsStagesPlan *presses, BsUnitSystem units);

/* What is different with these instead of others. */
char *bs_words_presses_difference (const BsStagesPlan *self, const BsStagesPlan *other,
                                   BsUnitSystem units);

/* What the schedule is as a whole: whether it can be done, and how good it is known to be. */
char *bs_words_schedule (const BsSchedule *schedule);

/* How good the proposal is known to be. */
char *bs_words_proof (const BsSchedule *schedule);

G_END_DECLS
