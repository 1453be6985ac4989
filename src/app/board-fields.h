/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/rows-editor.h"

G_BEGIN_DECLS

/* What a person can say of a board besides the columns of the rack's table. */
extern const BsField bs_board_details[];
extern const guint bs_n_board_details;
extern const BsField bs_board_run_outs[];
extern const guint bs_n_board_run_outs;

extern const BsRows bs_board_defects; /* the owner is the board's id */

/* What a new BsDefect of a BsBoard is like. */
void bs_board_begin_defect (gconstpointer board, gpointer defect);

G_END_DECLS
