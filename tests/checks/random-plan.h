/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "core/random.h"

/* A small plan of any kind that the reader of plan files would accept: 0 to 12 laminations in the
 * slab and some in the rack, on edge or on flat, measured in full, in part or not at all; a shop
 * with everything or nothing; every number within core/limits, in one plan of four at or near the
 * ends of its range. The same state of `random` gives the same plan. */
BsPlan *random_plan_new (BsRandom *random);
