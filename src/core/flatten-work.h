/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/flatten-fit.h"

G_BEGIN_DECLS

/* The planes of the finished faces for an order of work: docs/flattening-model.md, "Orders of
 * work". Shimmed, they have the best tilt; else the tilt at which the slab rests while its first
 * face is cut. */

/* To BS_FIT_EXACT or better; of equally good tilts the least. touching: on return, the spots that
 * hold the planes apart at that tilt, as bs_fit_solve () tells them. */
BsFit bs_flatten_fit (const BsFaces *faces, BsFlattenWork work, BsFitBasis *touching);

/* The distance alone, to BS_FIT_ROUGH: for one draw among thousands. basis: from
 * bs_fit_basis_start (), then from the draw before, whose spots were given their new heights. */
double bs_flatten_fit_rough (const BsFaces *faces, BsFlattenWork work, BsFitBasis *basis);

G_END_DECLS
