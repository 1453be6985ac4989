/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "core/plan.h"

G_BEGIN_DECLS

typedef struct
{
  double red, green, blue, alpha;
} BsColor;

/* Every colour that a picture uses; the one table is in palette.c. The wood alone has colour. */
typedef struct
{
  BsColor ground;  /* behind everything */
  BsColor ink;     /* text and outlines */
  BsColor faint;   /* scales, dimension lines, what stands back */
  BsColor edge;    /* of the wood */
  BsColor accent;  /* what is selected or held */
  BsColor caution; /* findings; always with a mark or a word as well */
  BsColor stop;
  gboolean wood_is_tinted; /* FALSE on paper: black on white carries everything */
} BsPalette;

const BsPalette *bs_palette_light (void);
const BsPalette *bs_palette_dark (void);
const BsPalette *bs_palette_paper (void);

/* The tint of one lamination: its wood's, lighter or darker by its lightness. */
BsColor bs_palette_wood (const BsPalette *self, const BsWood *wood, double lightness);

/* The late wood of that tint, and text that stands out from it. */
BsColor bs_palette_grain (const BsPalette *self, const BsWood *wood, double lightness);
BsColor bs_palette_on_wood (const BsPalette *self, const BsWood *wood, double lightness);

/* CIE L*C*h (D65) to sRGB, cut off at its borders. Source: CIE 15:2004, 8.2.1 (inverted); IEC
 * 61966-2-1:1999, 5.2 (the matrix from memory). */
BsColor bs_color_from_lch (double lightness, double chroma, double hue_deg);

void bs_color_set (const BsColor *self, cairo_t *cr);
void bs_color_set_faded (const BsColor *self, cairo_t *cr, double alpha);

G_END_DECLS
