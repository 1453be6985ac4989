/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/scale.h"

#include <math.h>

double
bs_scale_from_y (const BsScale *self, double y)
{
  return self->left + y * self->per_mm_across;
}

double
bs_scale_to_y (const BsScale *self, double device)
{
  return self->per_mm_across > 0.0 ? (device - self->left) / self->per_mm_across : 0.0;
}

double
bs_scale_from_x (const BsScale *self, double x)
{
  return self->top + x * self->per_mm_along;
}

double
bs_scale_to_x (const BsScale *self, double device)
{
  return self->per_mm_along > 0.0 ? (device - self->top) / self->per_mm_along : 0.0;
}

int
bs_scale_find_place (const BsScale *self, const BsStack *stack, double device)
{
  double y = bs_scale_to_y (self, device);

  for (int place = (int)stack->n - 1; place >= 0; place--)
    {
      const BsPlaced *placed = &stack->placed[place];

      if (y >= placed->y && y < placed->y + placed->thickness)
        return place;
    }
  return -1;
}

int
bs_scale_find_gap (const BsScale *self, const BsStack *stack, double device)
{
  double y = bs_scale_to_y (self, device);
  int gap = 0;

  while (gap < (int)stack->n && y > stack->placed[gap].y + 0.5 * stack->placed[gap].thickness)
    gap++;
  return gap;
}

/* Room around the pictures, in heights of the text. */
#define MARGIN_LEFT 7.0
#define MARGIN_RIGHT 7.0
#define MARGIN_TOP 3.6
#define MARGIN_BETWEEN 4.0
#define MARGIN_BOTTOM 3.0
#define SECTION_SHARE 0.4

static double
divide (double room, double size)
{
  return room > 0.0 && isfinite (size) && size > 0.0 ? room / size : 0.0;
}

/* Width of a bold letter or figure over its size, nearly; of a label's size, the least that can be
 * read; the part of a lamination that a label may take. */
#define LETTER_WIDTH 0.72
#define LEAST_LABEL 0.6
#define PART_ACROSS 0.92
#define PART_STANDING 0.75

void
bs_scale_fit_labels (BsScale *self, const BsStack *stack, double size)
{
  double across = size, standing = size;

  for (guint i = 0; i < stack->n; i++)
    {
      const char *label = stack->placed[i].lamination->label;
      double letters = label != NULL ? (double)g_utf8_strlen (label, -1) : 0.0;
      double room = stack->placed[i].thickness * self->per_mm_across;

      if (!(letters > 0.0 && room > 0.0))
        continue;
      across = fmin (across, PART_ACROSS * room / (LETTER_WIDTH * letters));
      standing = fmin (standing, PART_STANDING * room);
    }
  self->labels_stand = across < LEAST_LABEL * size;
  self->label_size = self->labels_stand ? standing : across;
}

void
bs_scale_fit (BsScale *section, BsScale *face, const BsStack *stack, double width, double height,
              double text_size, double hairline)
{
  double across = width - (MARGIN_LEFT + MARGIN_RIGHT) * text_size;
  double up = height * SECTION_SHARE - MARGIN_TOP * text_size;
  double per_mm = fmin (divide (across, stack->width), divide (up, stack->height));
  double section_height = isfinite (stack->height) ? stack->height * per_mm : 0.0;
  double below = (MARGIN_TOP + MARGIN_BETWEEN) * text_size + section_height;

  *section = (BsScale){
    .left = MARGIN_LEFT * text_size,
    .top = MARGIN_TOP * text_size,
    .per_mm_across = per_mm,
    .hairline = hairline,
    .text_size = text_size,
  };
  if (isfinite (stack->width))
    section->left += 0.5 * (across - stack->width * per_mm);

  bs_scale_fit_labels (section, stack, text_size);

  *face = *section;
  face->top = below;
  face->per_mm_along
      = fmin (divide (height - below - MARGIN_BOTTOM * text_size, stack->length), per_mm);
  section->per_mm_along = face->per_mm_along;
}
