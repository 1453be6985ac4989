/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/field-editor.h"

G_BEGIN_DECLS

/* What can be typed at the place Wood: fields of the plan, and of a wood (bs_record_wood). */
extern const BsField bs_wood_wish_fields[]; /* of the plan: what is asked of the wood */
extern const guint bs_n_wood_wish_fields;
extern const BsField bs_wood_fixing_fields[]; /* of the plan: how the slab is fastened */
extern const guint bs_n_wood_fixing_fields;
extern const BsField bs_wood_fields[]; /* of a wood; the first is its name */
extern const guint bs_n_wood_fields;
extern const BsField bs_wood_price_field; /* of a wood */
extern const BsField bs_glue_price_field; /* of the adhesive (bs_record_glue_price) */
extern const BsField bs_currency_field;   /* of the plan */

G_END_DECLS
