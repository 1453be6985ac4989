/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"

G_BEGIN_DECLS

/* Maps millimetres of the slab to device units and back; pointer and picture use the same one. The
 * section and the face share left, per_mm_across, hairline and text_size and differ in top. */
typedef struct
{
  double left, top;      /* device position of y = 0 and of the picture's top edge */
  double per_mm_across;  /* along y, and along z in the section */
  double per_mm_along;   /* along x in the face */
  double hairline;       /* on screen one pixel, on paper 0.18 mm */
  double text_size;      /* device units, of dimensions, and of labels where they fit */
  double label_size;     /* of all labels, so that they look alike; 0: text_size */
  gboolean labels_stand; /* along narrow laminations instead of across them */
} BsScale;

static inline double
bs_scale_get_label_size (const BsScale *self)
{
  return self->label_size > 0.0 ? self->label_size : self->text_size;
}

/* Across the slab. A scale of nothing gives back y = 0. */
double bs_scale_from_y (const BsScale *self, double y);
double bs_scale_to_y (const BsScale *self, double device);

/* Along the face, downwards from its top edge. A scale of nothing gives back x = 0. */
double bs_scale_from_x (const BsScale *self, double x);
double bs_scale_to_x (const BsScale *self, double device);

/* The lamination at a device position across, or -1; ties go to the later one. */
int bs_scale_find_place (const BsScale *self, const BsStack *stack, double device);

/* Where a new place would be if the middle of something held were at this device position: 0 to n.
 */
int bs_scale_find_gap (const BsScale *self, const BsStack *stack, double device);

/* Sets label_size, at most `size`, and labels_stand so that every label fits its lamination across
 * it; where that would be too small to read, so that they all stand. */
void bs_scale_fit_labels (BsScale *self, const BsStack *stack, double size);

/* Lays the section and, under it, the face out in an area whose top left corner is the origin, with
 * room for dimensions around the section and for the tape beside the face. The section is as large
 * as the area's width and two fifths of its height allow; the face takes the rest, and its length
 * is drawn shorter than true where it must. */
void bs_scale_fit (BsScale *section, BsScale *face, const BsStack *stack, double width,
                   double height, double text_size, double hairline);

G_END_DECLS
