/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-layout.h"
#include "core/plan.h"
#include "core/wanted.h"

G_BEGIN_DECLS

/* Edits: each returns a new plan, or a new reference to the old one when nothing changes. The plan
 * given is left as it is. Places outside the order and ids that the plan does not hold are
 * programmer errors; ranges are the caller's to keep (core/limits.h). What an edit leaves behind
 * can always be saved and opened again.
 *
 * Packs stay with their laminations: one that leaves a pack shrinks it (a pack of one is none), one
 * that is put between two of a pack joins it. */

/* Takes the lamination at `from` out and puts it back so that it ends up at place `to`. */
BsPlan *bs_edit_move (BsPlan *plan, int from, int to);

/* Turns the lamination at a place, on top of how it already lies. */
BsPlan *bs_edit_turn (BsPlan *plan, int place, BsOrientation turn);

/* Slides it along the grain. */
BsPlan *bs_edit_set_start (BsPlan *plan, int place, double start);

/* Off the slab to the rack, and from the rack to a place (0 to the number of placements). */
BsPlan *bs_edit_set_aside (BsPlan *plan, int place);
BsPlan *bs_edit_bring_back (BsPlan *plan, const char *lamination, int place);

/* Another order as a whole (`unknown` is not read), which ends all packs if it differs; and other
 * packs, in the order of core/packs.h. */
BsPlan *bs_edit_set_order (BsPlan *plan, const BsPlacement *order, guint n);
BsPlan *bs_edit_set_packs (BsPlan *plan, const BsPack *packs, guint n);

/* What matters about the order, and what it must keep. A lamination has one place and one face up
 * that it is pinned to: a new pin (`unknown` is not read) takes the place of an older one. */
BsPlan *bs_edit_set_wishes (BsPlan *plan, const BsOrderWishes *wishes);
BsPlan *bs_edit_add_pin (BsPlan *plan, const BsPin *pin);
BsPlan *bs_edit_remove_pin (BsPlan *plan, guint index);

/* Replaces the lamination that has this one's id, or adds it to the rack. Defects are cut off at
 * its faces. The plan takes a reference of its own, here as below. */
BsPlan *bs_edit_put_lamination (BsPlan *plan, BsLamination *lamination);
/* Removes it from the plan altogether, and the pins that name it. */
BsPlan *bs_edit_remove_lamination (BsPlan *plan, const char *lamination);

/* The sections of the plan. Unknown keys and, in the shop, clamps and cauls are not read: the
 * plan's own stay. A total time below the open time is raised to it, a greatest pressure or
 * hardness below the least too. */
BsPlan *bs_edit_set_name (BsPlan *plan, const char *name);
BsPlan *bs_edit_set_note (BsPlan *plan, const char *note);
BsPlan *bs_edit_set_units (BsPlan *plan, BsUnitSystem units);
BsPlan *bs_edit_set_currency (BsPlan *plan, const char *currency);
BsPlan *bs_edit_set_slab (BsPlan *plan, const BsSlab *slab);
BsPlan *bs_edit_set_shop (BsPlan *plan, const BsShop *shop);
BsPlan *bs_edit_set_adhesive (BsPlan *plan, const BsAdhesive *adhesive);

/* The clamps of the last press. Places of the plan's list from 0; a clamp moved past another
 * changes its place, which is told in `moved_to` (or NULL). Those of a layout have kinds that are
 * places in the shop's list, and take the place of all that were there. */
BsPlan *bs_edit_place_clamp (BsPlan *plan, const BsLayoutClamp *clamp, guint *placed_at);
BsPlan *bs_edit_move_clamp (BsPlan *plan, guint place, double x, guint *moved_to);
BsPlan *bs_edit_tighten_clamp (BsPlan *plan, guint place, double force_n);
BsPlan *bs_edit_turn_clamp (BsPlan *plan, guint place, gboolean is_above);
BsPlan *bs_edit_choose_clamp (BsPlan *plan, guint place, const char *kind);
BsPlan *bs_edit_take_off_clamp (BsPlan *plan, guint place);
BsPlan *bs_edit_set_clamps (BsPlan *plan, const BsLayoutClamp *clamps, guint n);

/* For a plan whose fields were set one by one: fits what contradicts itself in it, as the edits
 * above do, and puts placed clamps in order. */
BsPlan *bs_edit_fit (BsPlan *plan);

/* The lists, by id. What was of a wood that is removed is of no known wood; placed clamps of a kind
 * that is removed go with it. A part may not have the id of a lamination. */
BsPlan *bs_edit_put_clamp (BsPlan *plan, BsClampKind *clamp);
BsPlan *bs_edit_remove_clamp (BsPlan *plan, const char *clamp);
BsPlan *bs_edit_put_caul (BsPlan *plan, BsCaulKind *caul);
BsPlan *bs_edit_remove_caul (BsPlan *plan, const char *caul);
/* Gives all these laminations (ids, NULL-terminated) one wood, which comes into the plan unless it
 * has one of that id. */
BsPlan *bs_edit_use_wood (BsPlan *plan, BsWood *wood, const char *const *laminations);
BsPlan *bs_edit_put_wood (BsPlan *plan, BsWood *wood);
BsPlan *bs_edit_remove_wood (BsPlan *plan, const char *wood);
BsPlan *bs_edit_put_offer (BsPlan *plan, BsOffer *offer);
BsPlan *bs_edit_remove_offer (BsPlan *plan, const char *offer);
BsPlan *bs_edit_put_part (BsPlan *plan, BsPart *part);
BsPlan *bs_edit_remove_part (BsPlan *plan, const char *part);
BsPlan *bs_edit_put_board (BsPlan *plan, BsBoard *board);
BsPlan *bs_edit_remove_board (BsPlan *plan, const char *board);
/* Many boards at once. Those of an id that the plan has take its place, those whose id is empty are
 * given one, and a number for a label if they have none, and put in before the board at place `at`,
 * or at the end. `woods` are added where the
 * plan lacks them; NULL: none. */
BsPlan *bs_edit_put_boards (BsPlan *plan, const GPtrArray *boards, const GPtrArray *woods,
                            guint at);
BsPlan *bs_edit_remove_boards (BsPlan *plan, const char *const *ids);
/* A board to add, its id empty: of the wood and the size of the last one. */
BsBoard *bs_edit_next_board (const BsPlan *plan);

/* What is cut where, as a whole; cuts that no board or piece belongs to, and those that are more
 * than wanted, are left out. Cuts go with their board and their piece when those are removed. */
BsPlan *bs_edit_set_cuts (BsPlan *plan, const BsCut *cuts, guint n);

/* Makes the pieces of a want of the plan, which can be (bs_want_can_be_layers), twice as many and
 * half as thick. Of laminations two neighbours take the place of one, and know as little as new
 * ones do. */
BsPlan *bs_edit_halve_want (BsPlan *plan, const BsWant *want);

G_END_DECLS
