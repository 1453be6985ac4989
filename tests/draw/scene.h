/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

/* Invented slabs of n laminations, the same each time: every orientation, both run-outs, all kinds
 * of defects, some boards without a marked pith. */
BsPlan *scene_new_plan (int n, BsLayup layup);

/* A plan whose every measure is unknown. */
BsPlan *scene_new_unknown_plan (int n);
