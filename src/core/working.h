/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How a number came about: the formula, the values put in, where every constant comes from.
 *
 * The texts are message ids, marked N_() where they stand in the core and translated where they are
 * shown. Citations are not translated. */

/* What a value is, so that the edge can show it in the person's units. The value itself is in the
 * unit named here. */
typedef enum
{
  BS_QUANTITY_LENGTH,      /* mm */
  BS_QUANTITY_FINE_LENGTH, /* mm, of what is less than the shop measures: to hundredths */
  BS_QUANTITY_AREA,        /* mm2 */
  BS_QUANTITY_VOLUME,      /* mm3 */
  BS_QUANTITY_FORCE,       /* N */
  BS_QUANTITY_LINE_FORCE,  /* N/mm */
  BS_QUANTITY_PRESSURE,    /* MPa */
  BS_QUANTITY_TORQUE,      /* N mm */
  BS_QUANTITY_TIME,        /* s */
  BS_QUANTITY_MASS,        /* kg */
  BS_QUANTITY_DENSITY,     /* kg/m3 */
  BS_QUANTITY_SPREAD,      /* g/m2 */
  BS_QUANTITY_SPREAD_TIME, /* s/m2 */
  BS_QUANTITY_TEMPERATURE, /* degrees C */
  BS_QUANTITY_PERCENT,
  BS_QUANTITY_COUNT, /* whole number */
  BS_QUANTITY_RATIO,
  BS_QUANTITY_MONEY, /* minor units of the working's currency */
} BsQuantity;

typedef struct
{
  const char *name;   /* N_() "area of one glue line" */
  const char *symbol; /* "A"; the one that the formula uses */
  double value;
  BsQuantity quantity;
  const char *source;      /* N_() or a citation; NULL when it follows from the plan */
  const char *explanation; /* N_() a sentence on what it counts; NULL where the name says it */
} BsTerm;

#define BS_WORKING_MAX_TERMS 12

typedef struct
{
  const char *title;       /* N_() "Thickness after flattening" */
  const char *explanation; /* N_() one or two sentences on what it is and what it leaves out */
  const char *formula;     /* in symbols: "F = p A" */
  double value;            /* NAN: cannot be told yet (the explanation says why) */
  BsQuantity quantity;
  const char *currency;  /* ISO 4217 code of all money in it, borrowed; NULL when there is none */
  double low, high;      /* how sure: the range that it may well have; NAN: not known */
  const char *certainty; /* N_() what the range rests on, or why there is none */
  guint n_terms;
  BsTerm terms[BS_WORKING_MAX_TERMS];
} BsWorking;

/* Sets everything but the terms and the range. */
void bs_working_init (BsWorking *self, const char *title, const char *explanation,
                      const char *formula, BsQuantity quantity, const char *certainty);
void bs_working_add (BsWorking *self, const char *name, const char *symbol, double value,
                     BsQuantity quantity, const char *source);

G_END_DECLS
