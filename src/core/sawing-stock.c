/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-stock.h"

#include "core/sawing-wish.h"

#include <math.h>

/* Severity from which a defect spoils a face that must be clear: common practice, no source. */
#define LEAST_SEVERITY 0.5

/* Leaves room for pinned pieces among BS_CUT_MAX_DEFECTS. */
#define MOST_DEFECTS (BS_CUT_MAX_DEFECTS / 2)

static BsCutFaces
find_faces (const BsDefect *defect)
{
  switch (defect->kind)
    {
    case BS_DEFECT_WANE:
    case BS_DEFECT_CHECK:
    case BS_DEFECT_HOLE:
      return BS_CUT_UNSOUND;
    default:
      break;
    }
  if (defect->face == BS_FACE_TOP)
    return BS_CUT_UPPER_FACE;
  return defect->face == BS_FACE_UNDERSIDE ? BS_CUT_LOWER_FACE : BS_CUT_BOTH_FACES;
}

static BsCutDefect
place_defect (const BsPlan *plan, const BsBoard *board, const BsDefect *defect)
{
  double depth = defect->across_to - defect->across_from;
  BsCutDefect place = { .faces = find_faces (defect) };

  switch (defect->face)
    {
    case BS_FACE_LEFT:
      place.y_to = fmin (depth, board->width);
      break;
    case BS_FACE_RIGHT:
      place.y_from = fmax (board->width - depth, 0.0);
      place.y_to = board->width;
      break;
    case BS_FACE_TOP:
    case BS_FACE_UNDERSIDE:
    default:
      place.y_from = defect->across_from;
      place.y_to = defect->across_to;
    }
  place.x_from = -bs_saw_round_up (plan->units, -defect->x_from); /* down */
  place.x_to = bs_saw_round_up (plan->units, defect->x_to);
  place.y_from = -bs_saw_round_up (plan->units, -place.y_from);
  place.y_to = bs_saw_round_up (plan->units, place.y_to);
  return place;
}

static int
compare_x (gconstpointer a, gconstpointer b)
{
  double left = ((const BsCutDefect *)a)->x_from, right = ((const BsCutDefect *)b)->x_from;

  return (left > right) - (left < right);
}

static void
unite (BsCutDefect *self, const BsCutDefect *other)
{
  self->x_from = fmin (self->x_from, other->x_from);
  self->x_to = fmax (self->x_to, other->x_to);
  self->y_from = fmin (self->y_from, other->y_from);
  self->y_to = fmax (self->y_to, other->y_to);
  self->faces = (BsCutFaces)(self->faces | other->faces);
}

/* Neighbours along the board, two and two. */
static void
unite_pairs (GArray *defects)
{
  guint n = 0;

  g_array_sort (defects, compare_x);
  for (guint i = 0; i < defects->len; i += 2)
    {
      BsCutDefect defect = g_array_index (defects, BsCutDefect, i);

      if (i + 1 < defects->len)
        unite (&defect, &g_array_index (defects, BsCutDefect, i + 1));
      g_array_index (defects, BsCutDefect, n++) = defect;
    }
  g_array_set_size (defects, n);
}

GArray *
bs_saw_defects_new (const BsPlan *plan, const BsBoard *board)
{
  GArray *defects = g_array_new (FALSE, FALSE, sizeof (BsCutDefect));

  for (guint i = 0; i < board->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (board->defects, BsDefect, i);
      const BsCutDefect place = place_defect (plan, board, defect);

      if (defect->severity >= LEAST_SEVERITY)
        g_array_append_val (defects, place);
    }
  while (defects->len > MOST_DEFECTS)
    unite_pairs (defects);
  return defects;
}

int
bs_saw_looks (const BsBoard *board)
{
  double spoilt = 0.0, area = 2.0 * board->length * board->width;

  for (guint i = 0; i < board->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (board->defects, BsDefect, i);

      spoilt += defect->severity * (defect->x_to - defect->x_from)
                * (defect->across_to - defect->across_from);
    }
  return (int)lround (1000.0 * fmax (1.0 - spoilt / area, 0.0));
}

BsCutStock
bs_saw_stock (const BsBoard *board, double straighten, const GArray *defects)
{
  return (BsCutStock){
    .length = board->length,
    .width = board->width,
    .thickness = board->thickness,
    .price_minor = board->price_minor,
    .supply = 1,
    .looks = bs_saw_looks (board),
    .n_defects = defects->len,
    .defects = (const BsCutDefect *)defects->data,
    .straighten = straighten,
  };
}
