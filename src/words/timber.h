/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/lifting.h"
#include "core/milling-need.h"
#include "core/results.h"
#include "core/wood-compare.h"

G_BEGIN_DECLS

/* Sentences about the wood before and after the glue-up, in the person's language and units. Texts
 * returned as char * are the caller's; lists end with NULL, free with g_strfreev. */

/* How the slab moves over the year, what that asks of its fixing, and, on flat, of its layup. */
char **bs_words_movement (const BsResults *results);

/* Which of the handbook's formulas gives that movement. */
char *bs_words_movement_formula (const BsMovement *movement, BsUnitSystem units);

/* How the slab is held, which is what its slots are for. */
char *bs_words_fixing (const BsResults *results);

/* What to heed before a piece is milled, a sentence for each flag. */
char **bs_words_milling (const BsRough *piece, const BsMillingShop *shop, BsUnitSystem units);

/* What to ask for at the yard: `class` is the trade's name of a thickness that will do, NULL where
 * none is to be had. */
char *bs_words_need (const BsMillingNeed *need, const BsMillingWish *wish, const char *class,
                     BsUnitSystem units);

/* One thick layer, or none where nothing is thick enough, against thinner ones, which can be had;
 * costs NAN when not known. */
char *bs_words_layers (const BsLayerWay *thick, const BsLayerWay *thin,
                       const BsLumberSeries *series, double thick_minor, double thin_minor,
                       const char *currency, BsUnitSystem units);

const char *bs_words_planing (BsPlaning planing);
const char *bs_words_bond (BsBond bond);

/* Why a wood does not fit, a sentence for each reason; none when it fits. */
char **bs_words_unfit (const BsWoodCard *card, const BsWoodWish *wish, const char *currency,
                       BsUnitSystem units);

/* The same in a few words: "too soft, too heavy"; "fits" when it does. */
char *bs_words_fit (BsUnfit unfit);

/* What to know of a wood's figures: where they come from, whether all were read there, what is
 * estimated and what is missing. */
char **bs_words_wood_figures (const BsWoodCard *card);

/* The heaviest thing of a kind and who lifts it: "Heaviest board (A): 31 kg. Three people, or a
 * lifting aid." */
char *bs_words_load (const BsLoad *load, BsLoadKind kind, BsUnitSystem units);

/* Cost, volumes and waste, and the glue, in one sentence each. */
char **bs_words_cost (const BsCost *cost, const char *currency, BsUnitSystem units);

G_END_DECLS
