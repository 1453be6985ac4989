/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "plan/shape.h"

G_BEGIN_DECLS

/* The plan file, version 1: every key with its unit, range and place in BsPlan. The words behind it
 * are in docs/plan-format.md, the same for other programs in data/plan.schema.json. */

#define BS_FORMAT_NAME "broadstave-plan"
#define BS_FORMAT_VERSION 1

extern const BsShape bs_plan_shape;
extern const BsShape bs_slab_shape;
extern const BsShape bs_shop_shape;
extern const BsShape bs_clamp_shape;
extern const BsShape bs_caul_shape;
extern const BsShape bs_adhesive_shape;
extern const BsShape bs_wood_shape; /* also of the table of woods */
extern const BsShape bs_board_shape;
extern const BsShape bs_cuts_shape; /* the cuts of a BsPlan alone */
extern const BsShape bs_offer_shape;
extern const BsShape bs_part_shape;
extern const BsShape bs_lamination_shape;
extern const BsShape bs_wishes_shape;

/* The words of the file for choices, by the value of the enum. */
extern const char *const bs_defect_names[];
extern const char *const bs_face_names[];
extern const char *const bs_orientation_names[];
extern const char *const bs_flatten_work_keys[];

G_END_DECLS
