/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"

/* Asserts that a plan of cuts can be carried out and adds up: pieces inside the usable part of
 * their board and their slice, no two closer than a kerf; each slice cut free by one straight line
 * across the board, each piece by one across its slice; defects only where the part may have them;
 * no stock used up twice; nothing cut twice or forgotten; areas and price that add up. */
void cut_plan_assert_possible (const BsCutting *cutting, const BsCutPlan *plan);
