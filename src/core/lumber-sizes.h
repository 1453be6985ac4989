/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The thicknesses in which lumber is sold, mm. The only place where they stand. */

typedef struct
{
  const char *name; /* as the trade says it: "8/4", "50" */
  double sold;      /* as it is sold */
  double surfaced;  /* where the mill planes it on two sides; NAN: no figure */
} BsLumberThickness;

typedef struct
{
  const char *title; /* N_() */
  const char *source;
  double moisture_pct; /* at which `sold` holds, and below which it shrinks; NAN: sawn with enough
                        * over-thickness that the dry board has it */
  const BsLumberThickness *rows; /* from thin to thick */
  guint n_rows;
} BsLumberSeries;

typedef enum
{
  BS_LUMBER_QUARTERS,    /* rough hardwood in quarters of an inch */
  BS_LUMBER_EN_HARDWOOD, /* European sawn hardwood */
  BS_LUMBER_EN_SOFTWOOD, /* European sawn softwood */
  BS_LUMBER_DRESSED,     /* American softwood, dressed; named by its nominal inches */
} BsLumberKind;

#define BS_N_LUMBER_KINDS 4

const BsLumberSeries *bs_lumber_series (BsLumberKind kind);

/* The thinnest row that is still `thickness` thick when it has changed by a ratio since it was sold
 * (0: not at all; see core/movement.h); -1 when there is none. */
int bs_lumber_least (const BsLumberSeries *series, double thickness, double ratio);

G_END_DECLS
