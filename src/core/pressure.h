/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/press-plan.h"
#include "core/results.h"

G_BEGIN_DECLS

/* How hard every glue line of a plan is pressed by its clamps as they are set: core/clamps.h. Too
 * slow for every step of a drag with many laminations: docs/pressing-model.md. */

typedef enum
{
  BS_PRESSURE_OF_SET_CLAMPS, /* there are pressures */
  BS_PRESSURE_NO_STACK,      /* nothing to press: `reason` says why */
  BS_PRESSURE_NO_CLAMPS,     /* no clamps owned */
  BS_PRESSURE_TOO_SHORT,     /* a clamp does not reach across the slab and its cauls */
  BS_PRESSURE_OFF_WORK,      /* a clamp does not bear on both outer faces: `reason` says which; or
                              * it presses where a lamination is missing, and the pile would tip */
  BS_PRESSURE_NOT_SETTLED,   /* the mathematics did not get there */
} BsPressureState;

typedef struct
{
  BsStack *stack; /* holds a reference to the plan */
  BsPressureState state;
  char *reason;      /* a sentence, or NULL */
  BsPressPlan press; /* cleared in a state without a stack */
  BsLayout layout;   /* the clamps with what they press; no clamps in other states than the first */
  double below_length;    /* mm of all glue lines pressed less than the adhesive's least, */
  double open_length;     /* standing open, */
  double crushed_length;  /* and pressed beyond the wood's strength */
  double head_stress_mpa; /* greatest under a clamp's head; NAN with cauls between */
  BsWorking why;          /* the weakest glue-line pressure; empty until it is explained */
} BsPressure;

/* From so many laminations on only the faster form can be had without making anyone wait. */
#define BS_PRESSURE_MANY_LAMINATIONS 25

#define BS_PRESSURE_COARSE_STEP 20.0 /* mm, of nodes, where there are so many */

/* `model` squeeze for the numbers to go by; timoshenko, with nodes farther apart where there are
 * many laminations, for what has to follow a hand. Pure. `why` is left for bs_pressure_explain. */
BsPressure *bs_pressure_new (const BsPlan *plan, BsPressModel model);
void bs_pressure_free (BsPressure *self);

/* For paper and reports: squeeze, but for many laminations the faster form. */
BsPressure *bs_pressure_new_quick (const BsPlan *plan);

/* Fills `why`; with squeeze two more solves, for the range. */
void bs_pressure_explain (BsPressure *self);

/* Number i of the slab's glue lines, from the front; NULL when there are no pressures. */
guint bs_pressure_get_n_lines (const BsPressure *self);
const BsPressLine *bs_pressure_get_line (const BsPressure *self, guint line);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPressure, bs_pressure_free)

G_END_DECLS
