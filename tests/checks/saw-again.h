/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/sawing-rack.h"

/* Takes a board apart by its passes alone, one after another, as at the saw: each must run through
 * the whole of one part of it. Asserts that every piece is then a part by itself, no larger than a
 * sliver, and that pieces, kerfs, offcut and waste are the whole board. */
void saw_again (const BsPlan *plan, const BsSawnBoard *sawn);

/* Every board of a plan; and that no lamination is cut twice, no part more often than wanted. */
void saw_rack_again (const BsPlan *plan);
