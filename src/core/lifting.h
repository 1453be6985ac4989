/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* What may be lifted, and what has to be: docs/timber-model.md, Lifting. Guidance for planning;
 * local rules and the advice of licensed people come first. */

/* Load constant of the revised NIOSH lifting equation, kg: under the best conditions. */
#define BS_LIFT_CONSTANT_KG 23.0

/* One lift with two hands, now and then (at most once in five minutes, for an hour). Distances in
 * mm. */
typedef struct
{
  double horizontal;    /* from between the ankles to the hands */
  double vertical;      /* of the hands above the floor, at the start */
  double travel;        /* up or down */
  double asymmetry_deg; /* turn of the body */
  double coupling;      /* how well it is held: 1 good, 0.95 fair, 0.9 poor */
} BsLift;

/* A slab or board: held 400 mm before the body because it is wide, from a bench, fairly well. */
BsLift bs_lift_default (void);

/* Recommended weight limit of one person, kg; 0 for what nobody should lift.
 * Source: NIOSH 94-110 (1994), revised lifting equation. */
double bs_lift_limit (const BsLift *lift);

/* What a team may lift when one of them may lift one_kg, and the least team for a load: 0 when six
 * are not enough. Source: HSE L23, from memory. */
double bs_lift_team (double one_kg, int people);
int bs_lift_people (double load_kg, double one_kg);

typedef enum
{
  BS_LOAD_BOARD,      /* the heaviest of the plan's boards */
  BS_LOAD_LAMINATION, /* of those in the slab */
  BS_LOAD_PACK,
  BS_LOAD_SLAB,
} BsLoadKind;

#define BS_N_LOAD_KINDS 4

typedef struct
{
  double kg;         /* NAN: there is none, or a wood is unknown */
  const char *label; /* of the board or lamination, borrowed; NULL: none */
  int place;         /* of the lamination, or of the pack's first; -1 */
  int people;        /* who lift it by bs_lift_default; 0: use a lifting aid */
  double index;      /* load over what the people in the shop may lift so; above 1 raised, above 3
                      * high risk */
} BsLoad;

/* The heaviest thing lifted at each step, by kind; slab_kg is the slab's. What was not measured
 * counts as at moisture_pct. */
void bs_lift_loads (const BsStack *stack, double slab_kg, double moisture_pct,
                    BsLoad loads[BS_N_LOAD_KINDS]);

/* How the index of a load came about. */
void bs_lift_explain (const BsLoad *load, const BsLift *lift, int people, BsWorking *why);

G_END_DECLS
