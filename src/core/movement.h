/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* How wood changes its size with its moisture, and what that makes of a slab: docs/timber-model.md,
 * Movement. Moistures are in % of the oven-dry mass, sizes in mm; ratios are changes over the size
 * before, so that 0.01 is one per cent longer. NAN in gives NAN out. */

/* How much one direction of a wood moves. Either may be NAN: it is then worked out from the other.
 */
typedef struct
{
  double coefficient; /* 1/%, near 10 % moisture */
  double shrink_pct;  /* green to oven-dry */
} BsSwelling;

/* Change over the size before, between two moistures that lie within 6 and 14 %.
 * Source: Wood Handbook (FPL-GTR-190, 2010), equation 13-2. */
double bs_movement_within (double coefficient, double from_pct, double to_pct);

/* The same between any two moistures up to fibre saturation (30 %).
 * Source: Wood Handbook (FPL-GTR-190, 2010), equation 13-3; formula from memory. */
double bs_movement_overall (double shrink_pct, double from_pct, double to_pct);

/* The first on the part of the way that lies within 6 and 14 %, the second on the rest; nothing
 * above 30 %. So a longer way always moves farther. */
double bs_movement_ratio (const BsSwelling *swelling, double from_pct, double to_pct);

/* A wood in its radial and in its tangential direction, and in one at an angle with `cos2` the
 * squared cosine of the angle to the radial one. */
BsSwelling bs_movement_radial (const BsWood *wood);
BsSwelling bs_movement_tangential (const BsWood *wood);
BsSwelling bs_movement_at (const BsWood *wood, double cos2);

/* Mean squared cosine of the angle between y (or z) and the radial direction over the section of a
 * lamination; the two add to 1. NAN when the pith is not known. */
double bs_movement_ring_cos2_y (const BsPlaced *placed);

/* What one lamination moves along y and along z from its own moisture to another one. Where its
 * rings are not known these are the middle between radial and tangential. A lamination of unknown
 * moisture counts as at glued_pct. */
double bs_movement_lamination_y (const BsPlaced *placed, double glued_pct, double to_pct);
double bs_movement_lamination_z (const BsPlaced *placed, double glued_pct, double to_pct);

/* A size at gluing and where the slab will live. */
typedef struct
{
  double at_gluing, dry, damp;
  double year;        /* change over the year: damp less dry */
  double least, most; /* of that, by which way rings run that are not known */
} BsSeasons;

typedef struct
{
  double dry_pct, damp_pct; /* moisture the slab comes to over the year */
  double glued_pct;         /* mean moisture at gluing, by width; unknown: the year's middle */
  BsSeasons width;          /* NAN when a wood in the slab is unknown, or there is none */
  BsSeasons thickness;
  double step;      /* greatest step at a glue line in either season, as one lamination moves more
                     * along z than its neighbour; 0 with less than two */
  int step_place;   /* of the first of the two; -1: none */
  guint n_no_rings; /* laminations whose pith is not known */
} BsMovement;

/* Whether the linear equation holds for the whole way: else the other one counts on a part of it.
 */
gboolean bs_movement_is_linear (const BsMovement *movement);

/* For a slab of this width and thickness (mm) at gluing, of the stack's laminations. */
void bs_movement_slab (const BsStack *stack, double width, double thickness, BsMovement *movement);

/* Change over the size at gluing when the whole slab has come to a moisture: of its width, and of
 * its thickness, the mean of its laminations by width. */
double bs_movement_across (const BsStack *stack, double to_pct);
double bs_movement_through (const BsStack *stack, double to_pct);

/* A screw in a slab that is fixed elsewhere, through a slot in something that does not move. */
typedef struct
{
  double distance; /* along y from where the slab is fixed, when the screw is driven */
  double towards;  /* how far the slab carries it towards the fixed spot at the driest, and away */
  double away;     /* from it at the dampest, mm, both >= 0 */
  double length;   /* of the slot from end to end */
  double middle;   /* of the slot, from the fixed spot */
} BsSlot;

/* `screw` is its diameter and `clearance` what is left at each end of the slot (mm). It is driven
 * when the slab has the moisture driven_pct. */
BsSlot bs_movement_slot (const BsStack *stack, double distance, double screw, double clearance,
                         double driven_pct);

/* How these numbers came about, for what the functions above gave of this stack. */
void bs_movement_explain_width (const BsMovement *movement, const BsStack *stack, BsWorking *why);
void bs_movement_explain_thickness (const BsMovement *movement, BsWorking *why);
void bs_movement_explain_slot (const BsSlot *slot, double screw, double clearance, BsWorking *why);

G_END_DECLS
