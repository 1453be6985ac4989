/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/field-editor.h"
#include "app/rows-editor.h"

G_BEGIN_DECLS

/* What a person measures on a lamination: the columns of the table, what is typed beside its
 * picture, and its defects. */
extern const BsField bs_lamination_columns[];
extern const guint bs_n_lamination_columns;

extern const BsField bs_lamination_details[];
extern const guint bs_n_lamination_details;

extern const BsRows bs_lamination_defects; /* owner: the lamination's id */

G_END_DECLS
