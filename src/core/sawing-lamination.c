/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-lamination.h"

#include "core/limits.h"
#include "core/text.h"

#include <math.h>

/* The milled piece inside its board: its corner in the board's frame, its size there. */
typedef struct
{
  const BsBoard *board;
  gboolean is_on_edge;
  double x, y, z;
  double length, width, thickness;
} Milled;

static double
take_least (double size, const BsLimit *limit)
{
  return fmax (size, limit->least);
}

/* What is sawn too large is taken off both sides alike. */
static Milled
mill_piece (const BsPlan *plan, const BsSawWish *wish, const BsBoard *board, const BsCut *cut)
{
  const BsMillingShop shop = bs_milling_shop_of (plan);
  double spare = bs_milling_strip (0.0, cut->length, &shop);
  Milled self = {
    .board = board,
    .is_on_edge = plan->slab.layup == BS_LAYUP_ON_EDGE,
    .length = fmin (wish->length, cut->length),
    .width = take_least (fmin (wish->width, cut->width - spare), &bs_limits.lamination_height),
    .thickness
    = take_least (fmin (wish->thickness, bs_saw_reach (plan, board, cut->length, cut->width)),
                  &bs_limits.lamination_thickness),
  };

  self.x = cut->x + 0.5 * (cut->length - self.length);
  self.y = cut->y + 0.5 * (cut->width - self.width);
  self.z = 0.5 * (board->thickness - self.thickness);
  return self;
}

static BsFace
turn_face (const Milled *self, BsFace face)
{
  static const BsFace on_edge[BS_N_FACES] = {
    [BS_FACE_LEFT] = BS_FACE_UNDERSIDE,
    [BS_FACE_RIGHT] = BS_FACE_TOP,
    [BS_FACE_TOP] = BS_FACE_LEFT,
    [BS_FACE_UNDERSIDE] = BS_FACE_RIGHT,
  };

  return self->is_on_edge ? on_edge[face] : face;
}

static gboolean
is_wide (BsFace face)
{
  return face == BS_FACE_TOP || face == BS_FACE_UNDERSIDE;
}

/* Adds what lies on a face of the milled piece, seen as a face of the board; across and along from
 * the piece's own corner. */
static void
add_defect (const Milled *self, BsLamination *lamination, const BsDefect *defect, BsFace face,
            double across_from, double across_to)
{
  double breadth = is_wide (face) ? self->width : self->thickness;
  BsDefect placed = {
    .kind = defect->kind,
    .face = turn_face (self, face),
    .x_from = fmax (defect->x_from - self->x, 0.0),
    .x_to = fmin (defect->x_to - self->x, self->length),
    .across_from = fmax (across_from, 0.0),
    .across_to = fmin (across_to, breadth),
    .severity = defect->severity,
  };

  if (placed.x_from >= placed.x_to || placed.across_from >= placed.across_to)
    return;
  if (self->is_on_edge && !is_wide (face)) /* from the left face, which was the board's upper one */
    {
      double from = placed.across_from;
      placed.across_from = breadth - placed.across_to;
      placed.across_to = breadth - from;
    }
  g_array_append_val (lamination->defects, placed);
}

/* A defect of a wide face that an edge of the piece is sawn through shows on that edge, too, as
 * deep as it is wide. */
static void
add_to_edges (const Milled *self, BsLamination *lamination, const BsDefect *defect)
{
  double depth = fmin (defect->across_to - defect->across_from, self->thickness);
  double from = defect->face == BS_FACE_TOP ? self->thickness - depth : 0.0;

  if (defect->across_from < self->y && defect->across_to > self->y)
    add_defect (self, lamination, defect, BS_FACE_LEFT, from, from + depth);
  if (defect->across_from < self->y + self->width && defect->across_to > self->y + self->width)
    add_defect (self, lamination, defect, BS_FACE_RIGHT, from, from + depth);
}

/* A defect of an edge is as deep as it is wide there; the piece's own edge has it when it lies
 * within. */
static gboolean
reaches_edge (const Milled *self, const BsDefect *defect)
{
  double depth = defect->across_to - defect->across_from;

  return defect->face == BS_FACE_LEFT ? self->y < depth
                                      : self->board->width - self->y - self->width < depth;
}

static void
add_defects (const Milled *self, BsLamination *lamination)
{
  for (guint i = 0; i < self->board->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (self->board->defects, BsDefect, i);

      if (is_wide (defect->face))
        {
          add_defect (self, lamination, defect, defect->face, defect->across_from - self->y,
                      defect->across_to - self->y);
          add_to_edges (self, lamination, defect);
        }
      else if (reaches_edge (self, defect))
        add_defect (self, lamination, defect, defect->face, defect->across_from - self->z,
                    defect->across_to - self->z);
    }
}

/* From the middle of the board's end to that of the piece's. */
static void
add_pith (const Milled *self, BsLamination *lamination)
{
  double across = self->board->pith_y + 0.5 * self->board->width - self->y - 0.5 * self->width;

  lamination->pith_y = self->is_on_edge ? -self->board->pith_z : across;
  lamination->pith_z = self->is_on_edge ? across : self->board->pith_z;
}

/* A turn about the length keeps the ends: what planes cleanly towards the right end still does.
 * What is not known of the board stays as it was wished. */
static void
add_run_out (const Milled *self, BsLamination *lamination)
{
  for (guint face = 0; face < BS_N_FACES; face++)
    {
      BsFace place = turn_face (self, (BsFace)face);
      int run_out = self->board->run_out[face];

      if (run_out != 0 && place == BS_FACE_TOP)
        lamination->run_out_top = run_out;
      if (run_out != 0 && place == BS_FACE_UNDERSIDE)
        lamination->run_out_underside = run_out;
    }
}

static BsLamination *
mill (const BsPlan *plan, const BsSawWish *wish, const BsLamination *wished, const BsBoard *board,
      const BsCut *cut)
{
  const Milled piece = mill_piece (plan, wish, board, cut);
  BsLamination *self = bs_lamination_copy (wished);

  bs_text_set (&self->board, board->id);
  if (board->wood != NULL)
    bs_text_set (&self->wood, board->wood);
  self->length = piece.length;
  self->thickness = piece.is_on_edge ? piece.thickness : piece.width;
  self->height = piece.is_on_edge ? piece.width : piece.thickness;
  self->bow = self->crook = self->cup = self->twist = self->taper = 0.0;
  self->moisture_pct = board->moisture_pct;
  add_pith (&piece, self);
  add_run_out (&piece, self);
  g_array_set_size (self->defects, 0);
  add_defects (&piece, self);
  return self;
}

BsLamination *
bs_saw_mill (const BsPlan *plan, const BsLamination *wished, const BsBoard *board, const BsCut *cut)
{
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);

  return mill (plan, bs_saw_wishes_find (wishes, wished->id), wished, board, cut);
}

gboolean
bs_saw_find_origin (const BsPlan *plan, const BsLamination *lamination, BsSawnFrom *from)
{
  gboolean is_on_edge = plan->slab.layup == BS_LAYUP_ON_EDGE;

  for (guint i = 0; i < plan->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, i);
      const BsBoard *board = bs_plan_find_board (plan, cut->board);

      if (board == NULL || !g_str_equal (cut->piece, lamination->id))
        continue;
      *from = (BsSawnFrom){
        .board = board,
        .length = lamination->length,
        .width = is_on_edge ? lamination->height : lamination->thickness,
      };
      from->x = cut->x + 0.5 * (cut->length - from->length);
      from->y = cut->y + 0.5 * (cut->width - from->width);
      return TRUE;
    }
  return FALSE;
}

BsFace
bs_saw_face_of_board (BsLayup layup, BsFace face)
{
  static const BsFace on_edge[BS_N_FACES] = {
    [BS_FACE_UNDERSIDE] = BS_FACE_LEFT,
    [BS_FACE_TOP] = BS_FACE_RIGHT,
    [BS_FACE_LEFT] = BS_FACE_TOP,
    [BS_FACE_RIGHT] = BS_FACE_UNDERSIDE,
  };

  return layup == BS_LAYUP_ON_EDGE ? on_edge[face] : face;
}

/* How much of a face its defects spoil. */
static double
weigh_face (const BsLamination *self, BsFace face)
{
  double weight = 0.0;

  for (guint i = 0; i < self->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (self->defects, BsDefect, i);
      if (defect->face == face)
        weight += defect->severity * (defect->x_to - defect->x_from)
                  * (defect->across_to - defect->across_from);
    }
  return weight;
}

void
bs_saw_turn_to_show (BsPlan *plan, const BsLamination *lamination)
{
  int place = bs_plan_find_place (plan, lamination->id);

  if (place < 0)
    return;
  BsPlacement *placement = &g_array_index (plan->order, BsPlacement, place);
  BsFace up = bs_orientation_face (placement->orientation, BS_FACE_TOP);
  BsFace down = bs_orientation_face (placement->orientation, BS_FACE_UNDERSIDE);
  if (weigh_face (lamination, up) > weigh_face (lamination, down))
    placement->orientation ^= BS_ORIENTATION_OVER;
}

static int
find_index (const BsPlan *plan, const char *lamination)
{
  for (guint i = 0; i < plan->laminations->len; i++)
    if (g_str_equal (((const BsLamination *)plan->laminations->pdata[i])->id, lamination))
      return (int)i;
  return -1;
}

BsPlan *
bs_saw_lay_out (BsPlan *plan, guint *n_laid_out)
{
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);
  BsPlan *copy = bs_plan_copy (plan);

  *n_laid_out = 0;
  for (guint i = 0; i < plan->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, i);
      int index = find_index (plan, cut->piece);
      const BsBoard *board = bs_plan_find_board (plan, cut->board);

      if (index < 0 || board == NULL || cut->is_cut)
        continue;
      BsLamination *wished = plan->laminations->pdata[index];
      bs_lamination_unref (copy->laminations->pdata[index]);
      copy->laminations->pdata[index]
          = mill (plan, bs_saw_wishes_find (wishes, cut->piece), wished, board, cut);
      bs_saw_turn_to_show (copy, copy->laminations->pdata[index]);
      (*n_laid_out)++;
    }
  if (*n_laid_out > 0)
    return copy;
  bs_plan_unref (copy);
  return bs_plan_ref (plan);
}

void
bs_saw_forget_boards (const BsPlan *before, BsPlan *after)
{
  for (guint i = 0; i < after->laminations->len; i++)
    {
      BsLamination *lamination = after->laminations->pdata[i];

      if (lamination->board == NULL || bs_saw_count_cuts (before, lamination->id) == 0
          || bs_saw_count_cuts (after, lamination->id) > 0)
        continue;
      after->laminations->pdata[i] = bs_lamination_copy (lamination);
      bs_text_clear (&((BsLamination *)after->laminations->pdata[i])->board);
      bs_lamination_unref (lamination);
    }
}
