/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/units.h"

G_BEGIN_DECLS

#define BS_MM_PER_FOOT (12.0 * BS_MM_PER_INCH)

/* How one quantity is shown in one system of units: inside value = shown value x size + zero. */
typedef struct
{
  const char *symbol;
  double size;
  double zero;
  int figures; /* significant figures at least; whole digits are never rounded away */
  int places;  /* digits after the decimal mark at most */
} BsUnitScale;

/* A unit that is understood, in the one spelling of units-parse.c and without spaces. */
typedef struct
{
  BsQuantity quantity;
  const char *name;
  double size; /* as in BsUnitScale */
  double zero;
} BsUnitName;

extern const BsUnitName bs_unit_names[];
extern const gsize bs_n_unit_names;

const BsUnitScale *bs_units_get_scale (BsQuantity quantity, BsUnitSystem system);

G_END_DECLS
