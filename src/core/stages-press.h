/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-layout.h"
#include "core/stack.h"
#include "core/stages.h"

G_BEGIN_DECLS

/* What the pressing engine says of one stage, with its pieces alone between the clamps. */
typedef struct
{
  BsLayoutStatus status;
  int n_clamps;     /* of the layout */
  double least_mpa; /* at the weakest spot of its glue lines */
} BsStagePressing;

/* Of more pieces than this only the outer ones, half at the front and half at the back, are
 * pressed: deeper glue lines are pressed more evenly, docs/pressing-model.md. */
#define BS_STAGE_MOST_PRESSED 6

/* Finds the layout of a stage of the stack's laminations, with a number of clamps at least. A pack
 * that was glued before is one piece as stiff as its laminations together, and straight. FALSE: it
 * cannot be told, since a wood has no modulus or the laminations do not lie side by side, or
 * progress asked to stop. */
gboolean bs_stage_press (const BsStack *stack, const BsStage *stage, int at_least,
                         const BsProgress *progress, BsStagePressing *pressing);

G_END_DECLS
