/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "plan/edits.h"

G_BEGIN_DECLS

/* Takes a lamination out of the order of a plan that is not shared yet, and out of its pack. */
void bs_edit_take_out (BsPlan *plan, int place);

/* Removes the pins that name a lamination from a plan that is not shared yet. */
void bs_edit_drop_pins (BsPlan *plan, const char *lamination);

/* A copy whose defects lie on its faces. */
BsBoard *bs_edit_fit_board (const BsBoard *board);

/* After boards were removed from a plan that is not shared yet: laminations and cuts of them. */
void bs_edit_forget_boards (BsPlan *edited);

/* Takes the plan over and returns it, or another one, with the placed clamps in order. */
BsPlan *bs_edit_sort_clamps (BsPlan *plan);

/* A copy whose defects lie on its faces. */
BsBoard *bs_edit_fit_board (const BsBoard *board);

/* After boards were removed from a plan that is not shared yet: laminations and cuts of them. */
void bs_edit_forget_boards (BsPlan *edited);

G_END_DECLS
