/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/sawing-move.h"

#include "core/sawing-job.h"
#include "core/sawing-lamination.h"
#include "core/sawing-rack.h"
#include "core/sawing-stock.h"
#include "core/text.h"
#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

G_DEFINE_QUARK (bs - saw - move - error - quark, bs_saw_move_error)

/* mm: places nearer to each other are the same. */
#define NEAR 1e-3

static const BsCut *
get_cut (const BsPlan *plan, guint i)
{
  return &g_array_index (plan->cuts, BsCut, i);
}

/* Why the piece cannot come from the board, as a sentence; NULL: it can. */
static char *
tell_lack (const BsPlan *plan, const BsCut *cut, const BsBoard *board)
{
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);
  const BsSawWish *wish = bs_saw_wishes_find (wishes, cut->piece);
  const char *piece = bs_saw_piece_label (plan, cut->piece), *label = bs_saw_board_label (board);
  const BsSawLack lack
      = wish != NULL ? bs_saw_board_lack (plan, board, wish) : (BsSawLack){ BS_SAW_LACK_NONE };
  g_autofree char *needed = bs_units_format (lack.needed, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *most = bs_units_format (lack.most, BS_QUANTITY_LENGTH, plan->units);

  switch (lack.kind)
    {
    case BS_SAW_LACK_USED:
      /* Translators: a board, a piece. */
      return g_strdup_printf (_ ("Board %s was milled before, and nothing of it is left for %s."),
                              label, piece);
    case BS_SAW_LACK_WOOD:
      /* Translators: a piece, a board. */
      return g_strdup_printf (_ ("%s is to be of another wood than board %s."), piece, label);
    case BS_SAW_LACK_LENGTH:
      /* Translators: a piece, its length, a board, its length. */
      return g_strdup_printf (_ ("%s needs %s of length, and board %s has %s between its trims."),
                              piece, needed, label, most);
    case BS_SAW_LACK_WIDTH:
      return g_strdup_printf (_ ("%s needs %s of width, and board %s has %s once its edge is "
                                 "straight."),
                              piece, needed, label, most);
    case BS_SAW_LACK_THICKNESS:
      return g_strdup_printf (_ ("%s is to be %s thick, and board %s finishes at %s."), piece,
                              needed, label, most);
    case BS_SAW_LACK_NONE:
    default:
      return NULL;
    }
}

static gboolean
check_move (const BsPlan *plan, const BsCut *cut, const BsBoard *board, GError **error)
{
  g_autofree char *lack = NULL;

  if (cut->is_cut)
    {
      g_set_error (error, BS_SAW_MOVE_ERROR, BS_SAW_MOVE_ERROR_DONE,
                   _ ("%s was cut already. Take the mark off if that is wrong."),
                   bs_saw_piece_label (plan, cut->piece));
      return FALSE;
    }
  lack = tell_lack (plan, cut, board);
  if (lack != NULL)
    g_set_error_literal (error, BS_SAW_MOVE_ERROR, BS_SAW_MOVE_ERROR_BOARD, lack);
  return lack == NULL;
}

/* A plan that is not shared yet, with the piece pinned on its new place. */
static BsPlan *
put_down (const BsPlan *plan, guint index, const char *board, double x, double y)
{
  BsPlan *copy = bs_plan_copy (plan);
  BsCut *cut = &g_array_index (copy->cuts, BsCut, index);

  bs_text_set (&cut->board, board);
  cut->x = x;
  cut->y = y;
  cut->is_pinned = TRUE;
  return copy;
}

BsPlan *
bs_saw_move (const BsPlan *plan, guint index, const char *board, double x, double y, GError **error)
{
  g_return_val_if_fail (index < plan->cuts->len, NULL);

  const BsBoard *lumber = bs_plan_find_board (plan, board);
  g_return_val_if_fail (lumber != NULL, NULL);
  if (!check_move (plan, get_cut (plan, index), lumber, error))
    return NULL;
  g_autoptr (BsPlan) moved = put_down (plan, index, board, x, y);
  g_autoptr (BsSawnBoard) sawn = bs_sawn_board_new (moved, lumber);
  g_autofree char *fault = bs_sawn_board_tell_fault (sawn, moved);
  if (fault == NULL)
    return g_steal_pointer (&moved);
  g_set_error_literal (error, BS_SAW_MOVE_ERROR, BS_SAW_MOVE_ERROR_PLACE, fault);
  return NULL;
}

BsPlan *
bs_saw_move_and_plan (const BsPlan *plan, guint index, const char *board, double x, double y,
                      GError **error)
{
  g_return_val_if_fail (index < plan->cuts->len, NULL);

  const BsBoard *lumber = bs_plan_find_board (plan, board);
  const BsSawEffort effort = { .is_quick = TRUE };
  g_return_val_if_fail (lumber != NULL, NULL);
  if (!check_move (plan, get_cut (plan, index), lumber, error))
    return NULL;
  g_autoptr (BsPlan) moved = put_down (plan, index, board, x, y);
  g_autoptr (BsSawPlan) found = bs_saw_solve (moved, &effort, error);
  if (found == NULL)
    return NULL;
  g_array_set_size (moved->cuts, 0);
  for (guint i = 0; i < found->cuts->len; i++)
    bs_plan_add_cut (moved, &g_array_index (found->cuts, BsCut, i));
  bs_saw_forget_boards (plan, moved);
  return g_steal_pointer (&moved);
}

/* Stops. */

static int
compare_stops (gconstpointer a, gconstpointer b)
{
  double left = *(const double *)a, right = *(const double *)b;

  return (left > right) - (left < right);
}

static void
add_stop (GArray *stops, double at, double most)
{
  if (at >= -NEAR && at <= most + NEAR)
    {
      at = CLAMP (at, 0.0, most);
      g_array_append_val (stops, at);
    }
}

static void
sort_stops (GArray *stops)
{
  guint n = 0;

  g_array_sort (stops, compare_stops);
  for (guint i = 0; i < stops->len; i++)
    {
      double at = g_array_index (stops, double, i);
      if (n == 0 || at > g_array_index (stops, double, n - 1) + NEAR)
        g_array_index (stops, double, n++) = at;
    }
  g_array_set_size (stops, n);
}

GArray *
bs_saw_stops_new (const BsPlan *plan, guint index, const char *board, gboolean is_across)
{
  const BsCut *cut = get_cut (plan, index);
  const BsBoard *lumber = bs_plan_find_board (plan, board);
  const BsSaw *saw = &plan->shop.saw;
  double kerf = bs_saw_kerf (plan);
  double size = is_across ? cut->width : cut->length;
  double room = is_across ? lumber->width : lumber->length;
  double trim = bs_saw_round_up (plan->units, is_across ? saw->edge_trim : saw->end_trim);
  double near_end = trim;
  GArray *stops = g_array_new (FALSE, FALSE, sizeof (double));

  if (is_across)
    near_end += bs_saw_round_up (plan->units, bs_saw_straighten (plan, lumber, cut->length));
  add_stop (stops, near_end, room - size);
  add_stop (stops, room - trim - size, room - size);
  for (guint i = 0; i < plan->cuts->len; i++)
    {
      const BsCut *other = get_cut (plan, i);
      double from = is_across ? other->y : other->x;
      double to = from + (is_across ? other->width : other->length);

      if (i == index || g_strcmp0 (other->board, board) != 0)
        continue;
      add_stop (stops, from, room - size);
      add_stop (stops, to - size, room - size);
      add_stop (stops, to + kerf, room - size);
      add_stop (stops, from - kerf - size, room - size);
    }
  sort_stops (stops);
  return stops;
}

static double
snap (const BsPlan *plan, guint index, const char *board, gboolean is_across, double tolerance,
      double at)
{
  const BsCut *cut = get_cut (plan, index);
  const BsBoard *lumber = bs_plan_find_board (plan, board);
  double most = is_across ? lumber->width - cut->width : lumber->length - cut->length;
  g_autoptr (GArray) stops = bs_saw_stops_new (plan, index, board, is_across);
  double best = CLAMP (bs_saw_round_up (plan->units, at), 0.0, fmax (most, 0.0));
  double distance = tolerance;

  for (guint i = 0; i < stops->len; i++)
    {
      double stop = g_array_index (stops, double, i);

      if (fabs (stop - at) > distance)
        continue;
      distance = fabs (stop - at);
      best = stop;
    }
  return best;
}

void
bs_saw_snap (const BsPlan *plan, guint index, const char *board, double tolerance, double *x,
             double *y)
{
  *x = snap (plan, index, board, FALSE, tolerance, *x);
  *y = snap (plan, index, board, TRUE, tolerance, *y);
}

gboolean
bs_saw_find_place (const BsPlan *plan, guint index, const char *board, double *x, double *y)
{
  g_autoptr (GArray) along = bs_saw_stops_new (plan, index, board, FALSE);
  g_autoptr (GArray) across = bs_saw_stops_new (plan, index, board, TRUE);

  for (guint i = 0; i < along->len; i++)
    for (guint k = 0; k < across->len; k++)
      {
        double at_x = g_array_index (along, double, i), at_y = g_array_index (across, double, k);
        g_autoptr (BsPlan) moved = bs_saw_move (plan, index, board, at_x, at_y, NULL);

        if (moved == NULL)
          continue;
        *x = at_x;
        *y = at_y;
        return TRUE;
      }
  return FALSE;
}

static gboolean
is_touched (const BsCut *cut, const BsCutDefect *defect)
{
  return defect->x_from < cut->x + cut->length && defect->x_to > cut->x
         && defect->y_from < cut->y + cut->width && defect->y_to > cut->y;
}

BsSawBlemish
bs_saw_find_blemish (const BsPlan *plan, const BsCut *cut)
{
  const BsBoard *board = bs_plan_find_board (plan, cut->board);
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);
  const BsSawWish *wish = bs_saw_wishes_find (wishes, cut->piece);
  BsSawBlemish self = { 0 };
  guint faces = 0;
  gboolean front = FALSE, back = FALSE;

  if (board == NULL || wish == NULL)
    return self;
  g_autoptr (GArray) defects = bs_saw_defects_new (plan, board);
  for (guint i = 0; i < defects->len; i++)
    {
      const BsCutDefect *defect = &g_array_index (defects, BsCutDefect, i);

      if (!is_touched (cut, defect))
        continue;
      faces |= defect->faces;
      self.is_unsound = self.is_unsound || defect->faces == BS_CUT_UNSOUND;
      front = front || defect->y_from <= cut->y;
      back = back || defect->y_to >= cut->y + cut->width;
    }
  self.faces = MAX (wish->clear_faces - (2 - (int)(faces & 1) - (int)(faces >> 1 & 1)), 0);
  self.edges = MAX (wish->clear_edges - (2 - (int)front - (int)back), 0);
  return self;
}
