/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* What it takes to bring a lamination where another order has it. */
typedef struct
{
  int from;           /* its place before, -1: the rack */
  gboolean is_moved;  /* from the rack, or past others; of those as few as can be are moved */
  BsOrientation turn; /* on top of how it lay; in the rack everything lies as marked */
} BsOrderMove;

/* For each place of the order after, with the laminations of the plan before; free with g_free. */
BsOrderMove *bs_order_moves_new (const BsPlan *before, const BsPlan *after);

G_END_DECLS
