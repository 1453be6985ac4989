/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cost.h"
#include "core/cupping.h"
#include "core/finding.h"
#include "core/fixing.h"
#include "core/lifting.h"
#include "core/movement.h"
#include "core/order-cost.h"
#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* Where the final slab just touches the rough one: the spot decides its thickness. */
typedef struct
{
  int place;       /* of the lamination in the order */
  double x, y;     /* mm, in the slab's frame */
  gboolean is_top; /* touches the top; else the underside */
} BsTouch;

#define BS_MAX_TOUCHES 4

/* Thickness after flattening: the largest slab that fits between the faces as built, at the tilt of
 * an order of work. */
typedef struct
{
  double thickness; /* mm along z, allowances taken off; 0 when nothing would be left; NAN for an
                     * empty slab or a lamination without a size */
  double slope_x;   /* of its underside: z = slope_x x + slope_y y + offset */
  double slope_y;
  double offset;
  double top_least, top_most;             /* mm that come off the top, allowance included: least */
  double underside_least, underside_most; /* and most anywhere; likewise off the underside */
  double gap; /* the thickest slab is not thicker by more than this, mm: rounding */
  guint n_touches;
  BsTouch touches[BS_MAX_TOUCHES];
} BsFlattenResult;

/* Clamps by the two hand rules: enough force, and enough coverage at 45 degrees. */
typedef struct
{
  double area;         /* mm2, largest glue line */
  double pressure_mpa; /* the least that is recommended for this wood and adhesive */
  double force_n;      /* needed in all = pressure x area */
  double spacing;      /* mm, greatest between clamps by the 45 degree rule; NAN: no clamps owned */
  int n_by_force;
  int n_by_spacing;
  int n;                    /* the larger of the two, at least 2 */
  int n_fitting;            /* clamps owned whose reach suffices */
  double force_fitting_n;   /* greatest force of those together */
  double reach_needed;      /* mm, slab and cauls */
  double caul_thickness;    /* mm, of the cauls counted on, 0: none */
  double head_width;        /* mm, of the narrowest clamp counted on */
  double reached_mpa;       /* mean pressure that the clamps owned give, at most */
  double head_stress_mpa;   /* greatest under a head or caul; NAN: no clamps owned */
  double head_strength_mpa; /* of the outer laminations across the grain; NAN: unknown */
  GArray *positions; /* double: x of each clamp from the left end, mm; as many as are needed, or
                      * all that fit when those cover the length; every other one above the slab */
} BsClampRule;

/* Assembly times of one press, alternately spreading and placing: of the whole slab or, when the
 * plan has packs, of the press that takes longest. */
typedef struct
{
  int n_joints;    /* glue lines in this press, */
  double area;     /* mm2, and their areas together */
  double total_s;  /* first glue spread to last clamp tight: the first joint's */
  double open_s;   /* spread to contact, of the joint that takes longest */
  double closed_s; /* contact to pressure, of the first joint */
  double limit_s;  /* total assembly time allowed, at the shop's climate */
  double open_limit_s;
  double left_s;  /* limit_s - total_s */
  double clamp_s; /* in the clamps, at the shop's temperature */
} BsAssembly;

/* All that follows from a plan. Owns its parts; the stack holds a reference to the plan. */
typedef struct
{
  BsStack *stack;
  BsFlattenResult flatten;
  BsClampRule clamps;
  GArray *set_clamps; /* BsLayoutClamp: as they are to be set, see core/clamps.h */
  BsAssembly assembly;
  double mass_kg;                   /* of the flattened slab; NAN when a wood is unknown */
  double glue_kg;                   /* spread on all glue lines */
  double emc_low_pct, emc_high_pct; /* where the slab will live */
  BsMovement movement; /* of the finished slab: as wide as wanted or built, as thick as flattened */
  BsCupping cupping;
  BsCost cost;
  GArray *slots;                 /* BsSlot, from the fixed line outwards: core/fixing.h */
  BsLoad loads[BS_N_LOAD_KINDS]; /* the heaviest thing lifted at each step */
  BsOrderCost order;
  GArray *findings; /* BsFinding, worst first, then by place */

  BsWorking why_thickness;
  BsWorking why_force;
  BsWorking why_clamps;
  BsWorking why_time;
  BsWorking why_mass;
  BsWorking why_moisture; /* where the slab will live */
  BsWorking why_width_movement;
  BsWorking why_thickness_movement;
  BsWorking why_cup;
  BsWorking why_cost;
  BsWorking why_glue;
  BsWorking why_waste;
  BsWorking why_lifting; /* of the slab */
  BsWorking why_order;
} BsResults;

/* Pure: the same plan gives the same bytes. Never NULL; a plan that says too little gives NAN and a
 * finding. */
BsResults *bs_evaluate (const BsPlan *plan);

BsResults *bs_results_ref (BsResults *self);
void bs_results_unref (BsResults *self);

/* The worst severity found: BS_SEVERITY_NOTE when there is nothing. */
BsSeverity bs_results_worst (const BsResults *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsResults, bs_results_unref)

G_END_DECLS
