/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/press-mesh.h"

G_BEGIN_DECLS

/* Ends of joints that least and greatest leave out, mm: a beam cannot know the stresses at a
 * corner, and the ends of a slab are trimmed off. */
#define BS_PRESS_END_LEFT_OUT 10.0

/* Fills the lines of a result from what each contact of the mesh carries (N) and from the overlap
 * of its faces (mm, < 0: open). */
void bs_press_lines_fill (BsPressResult *result, const BsPressStack *stack, const BsPressMesh *mesh,
                          const double *forces, const double *overlaps);

G_END_DECLS
