/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/forecast.h"
#include "core/stages-remedy.h"

G_BEGIN_DECLS

/* Sentences on the presses of a schedule. All char * are the caller's. */

/* By its laminations: "A1 to B2", or "A1 and A2". */
char *bs_words_press_name (const BsForecast *forecast, const BsStage *stage);

/* Its pieces, clamps and times, a sentence each; what it breaks, if anything. */
char *bs_words_press (const BsForecast *forecast, const BsStage *stage);

/* What stands in the way (static). */
const char *bs_words_stage_limit (BsStageLimit limit);

char *bs_words_stages_remedy (const BsStagesRemedy *remedy, BsUnitSystem units);

/* What the schedule is as a whole: whether it can be done, and how good it is known to be. */
char *bs_words_schedule (const BsForecast *forecast);

G_END_DECLS
