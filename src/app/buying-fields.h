/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/rows-editor.h"

G_BEGIN_DECLS

/* What a person says about a purchase: what else is wanted, what yards offer, how much to buy, and
 * how the saw works. */
extern const BsRows bs_buying_parts;
extern const BsRows bs_buying_offers;

extern const BsField bs_buying_amounts[]; /* of the plan */
extern const guint bs_n_buying_amounts;
extern const BsField bs_buying_size[]; /* likewise, while there are no laminations */
extern const guint bs_n_buying_size;
extern const BsField bs_buying_saw[];
extern const guint bs_n_buying_saw;

G_END_DECLS
