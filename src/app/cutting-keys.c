/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-canvas-private.h"

#include <glib/gi18n.h>

#include "core/sawing-move.h"

/* Moving a piece by keyboard: each step puts it down. */

static int
get_movable (BsCuttingCanvas *self)
{
  int selected = bs_cutting_canvas_get_selected (self);

  return bs_cutting_canvas_is_holding (self) || bs_session_has_preview (self->session) ? -1
                                                                                       : selected;
}

/* The stop behind or before a place; the place itself where there is none. */
static double
find_stop (BsCuttingCanvas *self, guint cut, gboolean is_across, double at, int direction)
{
  const BsCut *held = &g_array_index (self->plan->cuts, BsCut, cut);
  g_autoptr (GArray) stops = bs_saw_stops_new (self->plan, cut, held->board, is_across);
  double found = at;

  for (guint i = 0; i < stops->len; i++)
    {
      double stop = g_array_index (stops, double, direction > 0 ? i : stops->len - 1 - i);

      if (direction * (stop - at) > 1e-3)
        return stop;
    }
  return found;
}

static void
move_to_stop (BsCuttingCanvas *self, gboolean is_across, int direction)
{
  int cut = get_movable (self);

  if (cut < 0)
    return;
  const BsCut *held = &g_array_index (self->plan->cuts, BsCut, cut);
  double x = is_across ? held->x : find_stop (self, (guint)cut, FALSE, held->x, direction);
  double y = is_across ? find_stop (self, (guint)cut, TRUE, held->y, direction) : held->y;
  bs_cutting_hold_put (self, cut, held->board, x, y);
}

void
bs_cutting_canvas_move_along (BsCuttingCanvas *self, int direction)
{
  g_return_if_fail (BS_IS_CUTTING_CANVAS (self));

  move_to_stop (self, FALSE, direction);
}

void
bs_cutting_canvas_move_across (BsCuttingCanvas *self, int direction)
{
  g_return_if_fail (BS_IS_CUTTING_CANVAS (self));

  move_to_stop (self, TRUE, direction);
}

/* The next board that could give the piece, on a free place of it if there is one. */
void
bs_cutting_canvas_move_to_board (BsCuttingCanvas *self, int direction)
{
  g_return_if_fail (BS_IS_CUTTING_CANVAS (self));

  int cut = get_movable (self), at = -1, n = (int)self->plan->boards->len;
  if (cut < 0)
    return;
  const BsCut *held = &g_array_index (self->plan->cuts, BsCut, cut);
  g_autoptr (GArray) wishes = bs_saw_wishes_new (self->plan);
  const BsSawWish *wish = bs_saw_wishes_find (wishes, held->piece);
  for (int i = 0; i < n; i++)
    if (g_str_equal (((const BsBoard *)self->plan->boards->pdata[i])->id, held->board))
      at = i;
  for (int i = at + direction; wish != NULL && i >= 0 && i < n; i += direction)
    {
      const BsBoard *board = self->plan->boards->pdata[i];
      double x = self->plan->shop.saw.end_trim, y = 0.0;

      if (bs_saw_board_lack (self->plan, board, wish).kind != BS_SAW_LACK_NONE)
        continue;
      if (!bs_saw_find_place (self->plan, (guint)cut, board->id, &x, &y))
        bs_saw_snap (self->plan, (guint)cut, board->id, board->width, &x, &y);
      bs_cutting_hold_put (self, cut, board->id, x, y);
      return;
    }
  bs_cutting_canvas_tell (self, direction > 0 ? _ ("No board further down can give this piece.")
                                              : _ ("No board further up can give this piece."));
}
