/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-advice.h"
#include "core/clamp-proposal.h"

G_BEGIN_DECLS

/* Sentences on how hard the glue lines are pressed. All char * are the caller's. */

/* What the clamps as they are set come to: both what is wanted and what is reached, or why nothing
 * can be told. */
char *bs_words_pressing (const BsPressure *pressure);

/* What the bows of the laminations take of the force; NULL when there is nothing to say. */
char *bs_words_closing (const BsClampAdvice *advice);

/* What to do, and what it would change. */
char *bs_words_clamp_trial (const BsClampAdvice *advice, const BsClampTrial *trial);
char *bs_words_clamp_trial_effect (const BsClampAdvice *advice, const BsClampTrial *trial);

/* What the search found, and why it is another thing than the hand rule. */
char *bs_words_clamp_proposal (const BsClampProposal *proposal);
char *bs_words_clamp_difference (const BsClampProposal *proposal);

/* One clamp, read out: "Clamp 3 of 9: at 410 mm, 6.2 kN, above, turn 1". */
char *bs_words_clamp (const BsResults *results, guint clamp);

G_END_DECLS
