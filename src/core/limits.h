/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/working.h"

G_BEGIN_DECLS

/* What is accepted for every number of a plan, both ends included; in the unit of its quantity. The
 * reader of plan files and the fields of the window refuse what lies outside. Wide enough for any
 * slab that is built of wood; narrow enough that a slip of the decimal point is caught, and that no
 * sum overflows. */
typedef struct
{
  double least, most;
  BsQuantity quantity;
} BsLimit;

typedef struct
{
  BsLimit slab_length, slab_width, slab_thickness, allowance;
  BsLimit uncertainty;
  BsLimit temperature, humidity, moisture;

  BsLimit lamination_length, lamination_thickness, lamination_height;
  BsLimit warp;  /* bow, crook, cup, twist, taper, either way */
  BsLimit pith;  /* distance from the middle of the section, either way */
  BsLimit start; /* of a lamination in the slab */
  BsLimit defect_along, defect_across, severity;
  BsLimit run_out, lightness;

  BsLimit people, planer_width, jointer_width, max_lift;
  BsLimit spread_time, hand_time; /* for each m2; for each joint, lamination or clamp */

  BsLimit placed_x, placed_force; /* of a placed clamp */
  BsLimit clamp_count, clamp_force, clamp_reach, clamp_head, screw_diameter, screw_lead;
  BsLimit caul_count, caul_length, caul_thickness, caul_height;

  BsLimit assembly_time, clamp_time, adhesive_temperature, spread, pressure;

  BsLimit sg, hardness, moe, comp_perp, shrinkage;
  BsLimit movement; /* coefficient of movement, 1/% */

  BsLimit slab_mass, slab_movement, slot_screw, slot_play;

  BsLimit board_length, board_width, board_thickness;
  BsLimit price;      /* minor units */
  BsLimit price_rate; /* minor units for each m3 or kg */

  BsLimit kerf, trim, spring, offcut; /* of the saw */
  BsLimit supply;                     /* of boards of a length, -1: open */
  BsLimit part_count, part_width, part_thickness, clear_faces;
  BsLimit confidence, spare;     /* of a purchase */
  BsLimit cut_along, cut_across; /* where a piece lies on its board, and its size */

  BsLimit pack_first, pack_count; /* place in the order; laminations */
  BsLimit pin_place;              /* likewise */
} BsLimits;

extern const BsLimits bs_limits;

/* Greatest numbers of things in one plan; a file with more is refused. */
#define BS_MAX_LAMINATIONS 500
#define BS_MAX_BOARDS 20000
#define BS_MAX_WOODS 200
#define BS_MAX_OFFERS 200
#define BS_MAX_OFFER_LENGTHS 50
#define BS_MAX_PINS 2000
#define BS_MAX_PARTS 500
#define BS_MAX_CUTS 20000
#define BS_MAX_DEFECTS 200 /* of one lamination or board */
#define BS_MAX_KINDS 100   /* of clamps or cauls */
#define BS_MAX_PLACED_CLAMPS 500

/* FALSE for NAN too: whether a value may be unknown is the field's to say. */
static inline gboolean
bs_limit_contains (const BsLimit *self, double value)
{
  return value >= self->least && value <= self->most;
}

G_END_DECLS
