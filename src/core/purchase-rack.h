/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"
#include "core/plan.h"

G_BEGIN_DECLS

/* What the rack still has to give: docs/cutting-model.md, The purchase. A board that has cuts,
 * planned or done, gives what is left beside them: they are pinned where they lie, as when the
 * plan's cuts are kept and the others are planned around them. Sizes in mm. */
typedef struct
{
  GPtrArray *boards; /* BsBoard, borrowed from the plan */
  GArray *stock;     /* BsCutStock of each, paid; without its wood. `straighten` is NAN where it is
                      * known neither from measures nor from cuts */
  GArray *cuts;      /* BsCutPart: what has been cut of them, ... */
  GArray *pins;      /* BsCutPin: ... one of each */
  GPtrArray *defects;
} BsPurchaseRack;

/* Left out are boards that a lamination names without a cut: how it lay in them is not known; and
 * those whose cuts no saw can make, or not in the order that the shop saws in. `with_rests` FALSE
 * leaves out all that have cuts. */
BsPurchaseRack *bs_purchase_rack_new (const BsPlan *plan, const BsCutting *saw,
                                      const GArray *wanted, gboolean with_rests);
void bs_purchase_rack_free (BsPurchaseRack *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPurchaseRack, bs_purchase_rack_free)

G_END_DECLS
