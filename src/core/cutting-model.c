/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/cutting-model.h"

#include "core/cutting-sheets.h"

#include <math.h>
#include <glib/gi18n-lib.h>

/* 1 mm and 1/64 in are both whole numbers of these. */
#define TICKS_PER_MM 8000.0

/* A room of more units than this makes the tables slow; sizes are then rounded up to the coarse
 * unit, finer than any saw cuts. The usual board has some thousands. */
#define MAX_UNITS 200000
#define COARSE_TICKS 400

/* A size that is exact but for the rounding of binary fractions. */
#define ROUNDING 1e-3

static gint64
ticks (double mm)
{
  return (gint64)llround (mm * TICKS_PER_MM);
}

gint64
bs_cut_common_divisor (gint64 a, gint64 b)
{
  while (b != 0)
    {
      gint64 rest = a % b;
      a = b;
      b = rest;
    }
  return ABS (a);
}

double
bs_cut_near_trim (const BsCutting *input, guint stock, guint axis)
{
  return axis == 0 ? input->trim_end : input->trim_edge + input->stock[stock].straighten;
}

static double
gross_of (const BsCutting *input, const BsCutPart *part, guint axis)
{
  return axis == 0 ? part->length + input->allow_length : part->width + input->allow_width;
}

/* The largest unit that all sizes along an axis, and with defects and pins their places too, are a
 * multiple of. */
static gint64
find_unit (const BsCutting *input, guint axis)
{
  gint64 unit = 0, most = 0;
  gboolean has_spots = input->n_pins > 0;

  for (guint i = 0; i < input->n_stock; i++)
    {
      const BsCutStock *stock = &input->stock[i];
      most = MAX (most, ticks (axis == 0 ? stock->length : stock->width));
      for (guint k = 0; k < stock->n_defects; k++)
        {
          const BsCutDefect *defect = &stock->defects[k];
          double trim = bs_cut_near_trim (input, i, axis);
          has_spots = TRUE;
          unit = bs_cut_common_divisor (
              unit, ticks ((axis == 0 ? defect->x_from : defect->y_from) - trim));
          unit = bs_cut_common_divisor (unit,
                                        ticks ((axis == 0 ? defect->x_to : defect->y_to) - trim));
        }
    }
  for (guint i = 0; i < input->n_pins; i++)
    {
      const BsCutPin *pin = &input->pins[i];
      double trim = bs_cut_near_trim (input, pin->stock, axis);
      unit = bs_cut_common_divisor (unit, ticks ((axis == 0 ? pin->x : pin->y) - trim));
    }
  for (guint i = 0; i < input->n_parts; i++)
    unit = bs_cut_common_divisor (unit,
                                  ticks (gross_of (input, &input->parts[i], axis) + input->kerf));
  if (has_spots)
    unit = bs_cut_common_divisor (unit, ticks (input->kerf));
  unit = MAX (unit, 1);
  return most / unit > MAX_UNITS ? COARSE_TICKS : unit;
}

static gint32
units_down (const BsCutModel *self, double mm, guint axis)
{
  return (gint32)floor (mm / self->unit[axis] + ROUNDING);
}

static gint32
units_up (const BsCutModel *self, double mm, guint axis)
{
  return (gint32)ceil (mm / self->unit[axis] - ROUNDING);
}

/* Whether the same stock suits two parts. */
static gboolean
is_suited_alike (const BsCutting *input, guint part, guint other)
{
  for (guint i = 0; i < input->n_stock; i++)
    if (bs_cutting_suits (input, i, part) != bs_cutting_suits (input, i, other))
      return FALSE;
  return TRUE;
}

/* Parts of the same size and needs become one type. */
static void
add_types (BsCutModel *self)
{
  const BsCutting *input = self->input;

  self->types = g_new0 (BsCutType, input->n_parts);
  self->type_of_part = g_new (guint, input->n_parts);
  for (guint i = 0; i < input->n_parts; i++)
    {
      const BsCutPart *part = &input->parts[i];
      BsCutType type = {
        .demand = part->quantity,
        .clear_faces = part->clear_faces,
        .clear_edges = part->clear_edges,
        .wood = part->wood,
        .thickness = part->thickness,
        .part = i,
      };
      guint t;

      for (guint k = 0; k < input->n_pins; k++)
        type.demand -= input->pins[k].part == i;
      self->type_of_part[i] = G_MAXUINT;
      if (type.demand <= 0)
        continue;
      for (guint axis = 0; axis < 2; axis++)
        {
          type.gross[axis] = gross_of (input, part, axis);
          type.size[axis] = units_up (self, type.gross[axis] + input->kerf, axis);
        }
      for (t = 0; t < self->n_types; t++)
        {
          const BsCutType *known = &self->types[t];
          if (known->size[0] == type.size[0] && known->size[1] == type.size[1]
              && known->clear_faces == type.clear_faces && known->clear_edges == type.clear_edges
              && known->wood == type.wood && known->thickness <= type.thickness
              && known->thickness >= type.thickness && is_suited_alike (input, known->part, i))
            break;
        }
      if (t == self->n_types)
        self->types[self->n_types++] = type;
      else
        self->types[t].demand += type.demand;
      self->type_of_part[i] = t;
    }
}

static void
add_defects (BsCutModel *self, BsCutBoards *boards)
{
  const BsCutStock *stock = &self->input->stock[boards->index];
  double trim_x = bs_cut_near_trim (self->input, boards->index, 0);
  double trim_y = bs_cut_near_trim (self->input, boards->index, 1);

  boards->n_defects = stock->n_defects;
  for (guint k = 0; k < stock->n_defects; k++)
    {
      const BsCutDefect *defect = &stock->defects[k];
      BsCutSpot spot = {
        { units_down (self, defect->x_from - trim_x, 0),
          units_down (self, defect->y_from - trim_y, 1) },
        { units_up (self, defect->x_to - trim_x, 0), units_up (self, defect->y_to - trim_y, 1) },
        defect->faces,
      };
      boards->spots[boards->n_spots++] = spot;
    }
}

static void
add_pins (BsCutModel *self, BsCutBoards *boards)
{
  const BsCutting *input = self->input;

  for (guint k = 0; k < input->n_pins; k++)
    {
      const BsCutPin *pin = &input->pins[k];
      const BsCutPart *part = &input->parts[pin->part];
      double x = pin->x - bs_cut_near_trim (input, boards->index, 0);
      double y = pin->y - bs_cut_near_trim (input, boards->index, 1);

      if (pin->stock != boards->index || pin->copy != boards->copy)
        continue;
      boards->price = 0;
      boards->spots[boards->n_spots++] = (BsCutSpot){
        { units_down (self, x, 0), units_down (self, y, 1) },
        { units_up (self, x + gross_of (input, part, 0), 0),
          units_up (self, y + gross_of (input, part, 1), 1) },
        BS_CUT_BOTH_FACES,
      };
    }
}

static void
add_boards (BsCutModel *self, guint index, guint copy, int supply, gboolean is_pinned)
{
  const BsCutStock *stock = &self->input->stock[index];
  BsCutBoards *boards = &self->stock[self->n_stock++];

  boards->index = index;
  boards->copy = copy;
  boards->supply = supply;
  boards->price = stock->price_minor;
  boards->area = (gint64)llround (stock->length * stock->width * 100.0);
  boards->width = (gint64)llround (stock->width * 1000.0);
  boards->room[0] = stock->length - 2.0 * self->input->trim_end;
  boards->room[1] = bs_cutting_room_across (self->input, stock);
  boards->room_x = units_down (self, boards->room[0] + self->input->kerf, 0);
  boards->room_y = units_down (self, boards->room[1] + self->input->kerf, 1);
  boards->spots = g_new0 (BsCutSpot, stock->n_defects + self->input->n_pins + 1);
  add_defects (self, boards);
  if (is_pinned)
    add_pins (self, boards);

  boards->fits = g_new0 (gboolean, self->n_types + 1);
  for (guint t = 0; t < self->n_types; t++)
    {
      const BsCutType *type = &self->types[t];
      boards->fits[t] = type->wood == stock->wood && type->thickness <= stock->thickness + ROUNDING
                        && type->size[1] <= boards->room_y
                        && bs_cutting_suits (self->input, index, type->part);
    }
}

static gboolean
is_copy_pinned (const BsCutting *input, guint stock, guint copy)
{
  for (guint k = 0; k < input->n_pins; k++)
    if (input->pins[k].stock == stock && input->pins[k].copy == copy)
      return TRUE;
  return FALSE;
}

/* Each copy with pins by itself, then the others together. */
static void
add_stock (BsCutModel *self)
{
  const BsCutting *input = self->input;

  self->stock = g_new0 (BsCutBoards, input->n_stock + input->n_pins);
  for (guint i = 0; i < input->n_stock; i++)
    {
      int supply = input->stock[i].supply;
      guint first = 0;

      for (guint k = 0; k < input->n_pins; k++)
        {
          const BsCutPin *pin = &input->pins[k];
          gboolean is_known = pin->stock != i;
          for (guint j = 0; j < k && !is_known; j++)
            is_known = input->pins[j].stock == i && input->pins[j].copy == pin->copy;
          if (is_known)
            continue;
          add_boards (self, i, pin->copy, 1, TRUE);
          if (supply != BS_CUT_UNLIMITED)
            supply--;
        }
      while (is_copy_pinned (input, i, first))
        first++;
      if (supply != 0)
        add_boards (self, i, first, supply, FALSE);
    }
}

BsCutModel *
bs_cut_model_new (const BsCutting *input, GError **error)
{
  g_autoptr (BsCutModel) self = g_new0 (BsCutModel, 1);
  gint64 parts = 1;

  self->input = input;
  for (guint axis = 0; axis < 2; axis++)
    {
      self->unit[axis] = (double)find_unit (input, axis) / TICKS_PER_MM;
      self->kerf[axis] = units_up (self, input->kerf, axis);
    }
  add_types (self);
  add_stock (self);
  self->sheets = g_new0 (BsCutSheet, 2 * self->n_stock + 1);
  self->classes = g_new0 (BsCutClass, 2 * self->n_stock + 1);
  self->groups = g_new0 (BsCutGroup, 2 * self->n_stock + 1);
  for (guint t = 0; t < self->n_types; t++)
    parts += self->types[t].demand;
  for (guint i = 0; i < self->n_stock; i++)
    {
      self->unplaced_price = MAX (self->unplaced_price, self->stock[i].price * 2 + 1);
      if (!bs_cut_model_add_sheets (self, i))
        {
          g_set_error (error, BS_CUTTING_ERROR, BS_CUTTING_ERROR_PIN,
                       _ ("The parts pinned to board %u lie so that neither crosscuts nor rip cuts "
                          "through the whole board can free them. Move or release one of them."),
                       self->stock[i].index + 1);
          return NULL;
        }
    }
  return g_steal_pointer (&self);
}

void
bs_cut_model_free (BsCutModel *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n_stock; i++)
    {
      g_free (self->stock[i].spots);
      g_free (self->stock[i].fits);
    }
  for (guint i = 0; i < self->n_sheets; i++)
    g_free (self->sheets[i].blocks);
  g_free (self->types);
  g_free (self->type_of_part);
  g_free (self->stock);
  g_free (self->sheets);
  g_free (self->classes);
  g_free (self->groups);
  g_free (self);
}

gboolean
bs_cut_model_allows (const BsCutModel *self, const BsCutSheet *sheet, guint type, guint64 spots,
                     gint32 second)
{
  const BsCutBoards *boards = &self->stock[sheet->stock];
  const BsCutType *need = &self->types[type];
  guint axis = 1 - bs_cut_first_axis (sheet->order);
  gint32 end = second + need->size[axis] - self->kerf[axis];
  guint faces = 0, edges = 0;

  for (guint k = 0; spots >> k != 0; k++)
    {
      const BsCutSpot *spot = &boards->spots[k];
      gint32 kerf = k >= boards->n_defects ? self->kerf[axis] : 0;

      if ((spots >> k & 1) == 0 || spot->from[axis] >= end + kerf
          || spot->to[axis] + kerf <= second)
        continue;
      if (k >= boards->n_defects || spot->faces == BS_CUT_UNSOUND)
        return FALSE;
      faces |= spot->faces;
      if (sheet->order == BS_CUT_RIP_FIRST)
        edges |= 3; /* where the strip's edges run is not known here */
      else
        edges |= (spot->from[axis] <= second ? 1U : 0U) | (spot->to[axis] >= end ? 2U : 0U);
    }
  return need->clear_faces <= 2 - (int)((faces & 1) + (faces >> 1))
         && need->clear_edges <= 2 - (int)((edges & 1) + (edges >> 1));
}

gboolean
bs_cut_model_find_spots (const BsCutModel *self, const BsCutSheet *sheet, gint32 from, gint32 to,
                         guint64 *spots)
{
  const BsCutBoards *boards = &self->stock[sheet->stock];
  guint axis = bs_cut_first_axis (sheet->order);

  *spots = 0;
  for (guint k = 0; k < boards->n_defects; k++)
    if (boards->spots[k].from[axis] < to - self->kerf[axis] && boards->spots[k].to[axis] > from)
      *spots |= G_GUINT64_CONSTANT (1) << k;
  for (guint k = 0; k < sheet->n_blocks; k++)
    {
      const BsCutBlock *block = &sheet->blocks[k];

      if (block->to <= from || block->from >= to)
        continue;
      if (block->from < from || block->to > to)
        return FALSE;
      *spots |= block->pins;
    }
  return TRUE;
}

const BsCutBlock *
bs_cut_model_next_block (const BsCutSheet *sheet, gint32 from)
{
  for (guint k = 0; k < sheet->n_blocks; k++)
    if (sheet->blocks[k].to > from)
      return &sheet->blocks[k];
  return NULL;
}

double
bs_cut_model_offcut (const BsCutModel *self, const BsCutSheet *sheet, gint32 used)
{
  double rest;

  if (sheet->order == BS_CUT_RIP_FIRST && !sheet->is_row)
    return 0.0;
  rest = self->stock[sheet->stock].room[0] - (double)used * self->unit[0];
  return rest + ROUNDING >= self->input->min_offcut ? rest : 0.0;
}
