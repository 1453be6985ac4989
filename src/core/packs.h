/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* How a plan's packs lie: any two are apart, or one lies within the other and is glued before it.
 * They stand by their first lamination, and of two that begin alike the larger first; so each
 * stands before those within it. */

/* Whether two packs may be in one plan. */
gboolean bs_packs_fit (const BsPack *a, const BsPack *b);

/* Their order, for sorting; 0: they are the same laminations. */
int bs_packs_compare (gconstpointer a, gconstpointer b);

/* Whether these are a plan's packs. */
gboolean bs_packs_are (const BsPlan *plan, const BsPack *packs, guint n);

/* The pack in which two neighbours, the one at a place and the next, are glued together: the
 * smallest that has both. NULL: in the final press. */
const BsPack *bs_packs_find_joint (const BsPlan *plan, int place);

/* Whether packs lie within this one. */
gboolean bs_packs_is_nest (const BsPlan *plan, const BsPack *pack);

G_END_DECLS
