/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/progress.h"
#include "core/stage-times.h"

G_BEGIN_DECLS

/* A slab in stages: docs/stages-model.md. In a round some stages are closed one after another by
 * the same hands and then stand in the clamps together; each glues neighbouring pieces to a pack.
 * The last round is one stage that glues the slab. */

/* One stage, and its place in the calendar that begins with the first glue of the first round. */
typedef struct
{
  int round;    /* from 0 */
  int n_pieces; /* at least 2 */
  int *bounds;  /* the laminations where its pieces begin, n_pieces + 1 with the end of the last */
  gboolean is_pack; /* to be glued on; else the slab */
  double width;     /* mm, when glued */
  double mass_kg;   /* NAN: not known */
  int n_clamps;
  BsStageTimes times;
  BsStageLimit limit; /* what it breaks; BS_STAGE_LIMIT_NONE in every plan that was found */
  double begin_s;     /* first piece taken up */
  double closed_s;    /* last clamp tight */
  double released_s;  /* out of the clamps */
  double planing_s;   /* rested and on the planer; as released_s when nothing is planed */
  double end_s;       /* ready for the next round */
} BsStage;

typedef struct
{
  int n_rounds;
  GArray *stages;   /* BsStage, by round and then from front to back */
  double elapsed_s; /* from the first glue to the last clamp off */
  double imbalance; /* mm, widest less narrowest piece of the last stage */
} BsStagesPlan;

typedef struct
{
  BsStagesPlan
      *shortest; /* fewest rounds, then least time, then best balance; NULL: there is none */
  BsStagesPlan *balanced; /* as many rounds, better balance, at most BS_STAGES_BALANCE_PCT longer;
                           * NULL: none */
  BsStageLimit limit; /* when there is none: what stands in the way; BS_STAGE_LIMIT_NONE when the
                       * search did not come to its end */
  gboolean is_proved; /* nothing was left out of the search */
} BsStages;

#define BS_STAGES_BALANCE_PCT 2.0

/* A job with the defaults of a small shop and no laminations. */
BsStagesInput bs_stages_input_default (void);

/* Never NULL. Pure; asks progress after each round. */
BsStages *bs_stages_solve (const BsStagesInput *input, const BsProgress *progress);
void bs_stages_free (BsStages *self);

/* Whether there is any plan, without looking for the best. */
gboolean bs_stages_is_possible (const BsStagesInput *input);

/* Packs that the person chose, in the order of core/packs.h: in each round as many as are ready and
 * the clamps allow, first those that are glued into the most others; then the slab. Each stage
 * names the limit that it breaks. starts: first lamination of each pack, counts: how many. */
BsStagesPlan *bs_stages_plan_from_packs (const BsStagesInput *input, const int *starts,
                                         const int *counts, int n_packs);
void bs_stages_plan_free (BsStagesPlan *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsStages, bs_stages_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsStagesPlan, bs_stages_plan_free)

G_END_DECLS
