/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/results.h"
#include "draw/palette.h"
#include "draw/scale.h"

G_BEGIN_DECLS

/* A proposed order under the present one: the present laminations as a row of labels, a line from
 * each to where it would go, and the end section that comes of it, all at one scale. Lines of those
 * that must be moved are dark; a hollow square is where one comes from the rack or goes there; an
 * arrow up and down under a lamination says that it is turned over, one from left to right that it
 * is turned end for end. */

/* Fits the picture into a width: at most `per_mm`, so that it can stand under another section in
 * step. The scale's top is that of the picture. */
void bs_proposal_fit (BsScale *scale, const BsStack *present, const BsStack *proposed,
                      double per_mm, double width, double text_size);

double bs_proposal_get_height (const BsStack *proposed, const BsScale *scale);

/* In two parts: the section, which takes longer and stays as it is while the present order changes
 * under a hand, and all the rest. `selected`: id of a lamination, or NULL. */
void bs_draw_proposal_section (cairo_t *cr, const BsResults *proposed, const BsScale *scale,
                               const BsPalette *palette, const char *selected);
void bs_draw_proposal_changes (cairo_t *cr, const BsStack *present, const BsResults *proposed,
                               const BsScale *scale, const BsPalette *palette,
                               const char *selected);

G_END_DECLS
