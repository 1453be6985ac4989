/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/board-hold.h"

#include <math.h>

#define CORNER 7.0     /* device units around a corner in which it is taken hold of */
#define NEAR 4.0       /* around a defect that is small on the screen */
#define LEAST_SIZE 1.0 /* mm, of what is resized */

static cairo_rectangle_t
find_place (const BsBoardScale *scale, const BsBoard *board, const BsDefect *defect)
{
  cairo_rectangle_t place;

  bs_board_scale_place (scale, board, defect->face, defect->x_from, defect->x_to,
                        defect->across_from, defect->across_to, &place);
  return place;
}

int
bs_hold_find_defect (const BsBoardScale *scale, const BsBoard *board, double device_x,
                     double device_y)
{
  for (guint i = board->defects->len; i-- > 0;)
    {
      cairo_rectangle_t at
          = find_place (scale, board, &g_array_index (board->defects, BsDefect, i));
      if (device_x >= at.x - NEAR && device_x <= at.x + at.width + NEAR && device_y >= at.y - NEAR
          && device_y <= at.y + at.height + NEAR)
        return (int)i;
    }
  return -1;
}

static gboolean
find_corner (BsHold *self, const BsBoardScale *scale, const BsBoard *board, const BsDefect *defect,
             double device_x, double device_y)
{
  for (int corner = 0; corner < 4; corner++)
    {
      double x = corner & 1 ? defect->x_to : defect->x_from;
      double across = corner & 2 ? defect->across_to : defect->across_from;
      cairo_rectangle_t at;

      bs_board_scale_place (scale, board, defect->face, x, x, across, across, &at);
      if (fabs (at.x - device_x) > CORNER || fabs (at.y - device_y) > CORNER)
        continue;
      self->holds_x_to = (corner & 1) != 0;
      self->holds_across_to = (corner & 2) != 0;
      return TRUE;
    }
  return FALSE;
}

gboolean
bs_hold_begin (BsHold *self, const BsBoardScale *scale, const BsBoard *board, int selected,
               double device_x, double device_y)
{
  int under = bs_hold_find_defect (scale, board, device_x, device_y);

  *self = (BsHold){ .kind = BS_HOLD_BODY, .defect = under };
  if (selected >= 0 && selected < (int)board->defects->len)
    {
      const BsDefect *defect = &g_array_index (board->defects, BsDefect, selected);
      if (find_corner (self, scale, board, defect, device_x, device_y))
        {
          self->kind = BS_HOLD_CORNER;
          self->defect = selected;
        }
    }
  if (self->defect >= 0)
    {
      self->before = g_array_index (board->defects, BsDefect, self->defect);
      self->face = self->before.face;
    }
  else if (bs_board_scale_find_face (scale, board, device_x, device_y, &self->face))
    self->kind = BS_HOLD_NEW;
  else
    return FALSE;
  bs_board_scale_to_mm (scale, board, self->face, device_x, device_y, &self->x, &self->across);
  return TRUE;
}

BsDefect
bs_hold_move (const BsDefect *defect, const BsBoard *board, double dx, double dacross)
{
  double breadth = bs_board_breadth (board, defect->face);
  BsDefect moved = *defect;
  double along = CLAMP (dx, -defect->x_from, board->length - defect->x_to);
  double across = CLAMP (dacross, -defect->across_from, breadth - defect->across_to);

  moved.x_from += along;
  moved.x_to += along;
  moved.across_from += across;
  moved.across_to += across;
  return moved;
}

BsDefect
bs_hold_resize (const BsDefect *defect, const BsBoard *board, double dx, double dacross)
{
  double breadth = bs_board_breadth (board, defect->face);
  BsDefect resized = *defect;

  resized.x_to
      = CLAMP (defect->x_to + dx, MIN (defect->x_from + LEAST_SIZE, board->length), board->length);
  resized.across_to = CLAMP (defect->across_to + dacross,
                             MIN (defect->across_from + LEAST_SIZE, breadth), breadth);
  return resized;
}

static void
sort (double *from, double *to)
{
  double least = MIN (*from, *to), most = MAX (*from, *to);

  *from = least;
  *to = most;
}

BsDefect
bs_hold_drag (const BsHold *self, const BsBoardScale *scale, const BsBoard *board, double device_x,
              double device_y)
{
  BsDefect defect = self->before;
  double x, across;

  bs_board_scale_to_mm (scale, board, self->face, device_x, device_y, &x, &across);
  if (self->kind == BS_HOLD_BODY)
    return bs_hold_move (&self->before, board, x - self->x, across - self->across);
  if (self->kind == BS_HOLD_NEW)
    defect = (BsDefect){ .kind = BS_DEFECT_KNOT,
                         .face = self->face,
                         .x_from = self->x,
                         .x_to = x,
                         .across_from = self->across,
                         .across_to = across,
                         .severity = 1.0 };
  else
    {
      *(self->holds_x_to ? &defect.x_to : &defect.x_from) = x;
      *(self->holds_across_to ? &defect.across_to : &defect.across_from) = across;
    }
  sort (&defect.x_from, &defect.x_to);
  sort (&defect.across_from, &defect.across_to);
  return defect;
}
