/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stack.h"

#include <math.h>

/* The side that the pith is on, for laminations whose rings lie within 45 degrees of the wide face.
 * Steeper rings make a quartersawn lamination, which has no heart side to speak of. Source: Wood
 * Handbook (FPL-GTR-190), chapter 3, plainsawn and quartersawn lumber; from memory. */
static int
find_heart_side (double along, double across)
{
  if (isnan (along) || isnan (across) || fabs (along) <= fabs (across))
    return 0;
  return along > 0.0 ? 1 : -1;
}

static void
turn_run_out (BsPlaced *self)
{
  const BsLamination *lamination = self->lamination;
  int sign = bs_orientation_sign_x (self->orientation);
  gboolean is_upright = bs_orientation_face (self->orientation, BS_FACE_TOP) == BS_FACE_TOP;

  self->run_out_top = sign * (is_upright ? lamination->run_out_top : lamination->run_out_underside);
  self->run_out_underside
      = sign * (is_upright ? lamination->run_out_underside : lamination->run_out_top);
}

BsPlaced
bs_placed_new (const BsPlan *plan, const BsPlacement *placement, double y)
{
  const BsLamination *lamination = bs_plan_find_lamination (plan, placement->lamination);
  g_assert (lamination != NULL);

  BsOrientation turn = placement->orientation;
  gboolean ends_change = bs_orientation_sign_x (turn) < 0;
  int sign_y = bs_orientation_sign_y (turn);
  int sign_z = bs_orientation_sign_z (turn);
  gboolean on_edge = plan->slab.layup == BS_LAYUP_ON_EDGE;
  double taper = isnan (lamination->taper) ? 0.0 : lamination->taper;

  BsPlaced self = {
    .lamination = lamination,
    .wood = bs_plan_find_wood (plan, lamination->wood),
    .orientation = turn,
    .x = placement->start,
    .y = y,
    .length = lamination->length,
    .thickness = lamination->thickness,
    .height_left = lamination->height + (ends_change ? taper : 0.0),
    .height_right = lamination->height + (ends_change ? 0.0 : taper),
    .bow = sign_y * lamination->bow,
    .crook = sign_z * lamination->crook,
    .cup = (on_edge ? sign_y : sign_z) * lamination->cup,
    .twist = lamination->twist, /* a screw has the same hand whichever way it is looked at */
    .pith_y = sign_y * lamination->pith_y,
    .pith_z = sign_z * lamination->pith_z,
  };
  self.heart_side = on_edge ? find_heart_side (self.pith_y, self.pith_z)
                            : find_heart_side (self.pith_z, self.pith_y);
  turn_run_out (&self);
  return self;
}

BsStack *
bs_stack_new (const BsPlan *plan)
{
  BsStack *self = g_new0 (BsStack, 1);

  self->plan = bs_plan_ref ((BsPlan *)plan);
  self->n = plan->order->len;
  self->placed = g_new0 (BsPlaced, self->n);
  for (guint i = 0; i < self->n; i++)
    {
      BsPlaced placed
          = bs_placed_new (plan, &g_array_index (plan->order, BsPlacement, i), self->width);
      self->placed[i] = placed;
      self->length = fmax (self->length, placed.x + placed.length);
      self->width += placed.thickness;
      self->height = fmax (self->height, fmax (placed.height_left, placed.height_right));
    }
  return self;
}

void
bs_stack_free (BsStack *self)
{
  bs_plan_unref (self->plan);
  g_free (self->placed);
  g_free (self);
}

BsStack
bs_stack_part (const BsStack *self, guint first, guint count)
{
  BsStack part = { .plan = self->plan, .n = count, .placed = self->placed + first };

  for (guint i = 0; i < count; i++)
    {
      const BsPlaced *placed = &part.placed[i];
      part.length = fmax (part.length, placed->x + placed->length);
      part.width += placed->thickness;
      part.height = fmax (part.height, fmax (placed->height_left, placed->height_right));
    }
  return part;
}

double
bs_stack_glue_area (const BsStack *self, guint place)
{
  g_return_val_if_fail (place + 1 < self->n, 0.0);

  const BsPlaced *a = &self->placed[place];
  const BsPlaced *b = a + 1;
  double length = fmin (a->x + a->length, b->x + b->length) - fmax (a->x, b->x);
  double height = fmin (a->height_left + a->height_right, b->height_left + b->height_right) / 2.0;
  return fmax (length, 0.0) * fmax (height, 0.0);
}

double
bs_stack_covered_length (const BsStack *self)
{
  double from = 0.0;
  double to = self->length;

  for (guint i = 0; i < self->n; i++)
    {
      from = fmax (from, self->placed[i].x);
      to = fmin (to, self->placed[i].x + self->placed[i].length);
    }
  return fmax (to - from, 0.0);
}

static void
turn_interval (double *from, double *to, double size)
{
  double turned_from = size - *to;
  *to = size - *from;
  *from = turned_from;
}

BsPlacedDefect
bs_placed_defect (const BsPlaced *self, const BsDefect *defect)
{
  BsPlacedDefect placed = {
    .defect = defect,
    .face = bs_orientation_face (self->orientation, defect->face),
    .x_from = defect->x_from,
    .x_to = defect->x_to,
    .across_from = defect->across_from,
    .across_to = defect->across_to,
  };
  gboolean is_side = placed.face == BS_FACE_LEFT || placed.face == BS_FACE_RIGHT;

  if (bs_orientation_sign_x (self->orientation) < 0)
    turn_interval (&placed.x_from, &placed.x_to, self->length);
  if (is_side && bs_orientation_sign_z (self->orientation) < 0)
    turn_interval (&placed.across_from, &placed.across_to, self->lamination->height);
  if (!is_side && bs_orientation_sign_y (self->orientation) < 0)
    turn_interval (&placed.across_from, &placed.across_to, self->thickness);

  placed.x_from += self->x;
  placed.x_to += self->x;
  if (!is_side)
    {
      placed.across_from += self->y;
      placed.across_to += self->y;
    }
  return placed;
}
