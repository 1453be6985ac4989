/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/lumber-sizes.h"

#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SIXTEENTHS(n) ((n)*BS_MM_PER_INCH / 16.0)

/* A table's sizes and a person's inches differ by rounding, mm. */
#define ROUNDING 1e-6

static const BsLumberThickness quarters[] = {
  { "3/8", SIXTEENTHS (6), SIXTEENTHS (3) },    { "1/2", SIXTEENTHS (8), SIXTEENTHS (5) },
  { "5/8", SIXTEENTHS (10), SIXTEENTHS (7) },   { "3/4", SIXTEENTHS (12), SIXTEENTHS (9) },
  { "4/4", SIXTEENTHS (16), SIXTEENTHS (13) },  { "5/4", SIXTEENTHS (20), SIXTEENTHS (17) },
  { "6/4", SIXTEENTHS (24), SIXTEENTHS (21) },  { "7/4", SIXTEENTHS (28), SIXTEENTHS (24) },
  { "8/4", SIXTEENTHS (32), SIXTEENTHS (28) },  { "10/4", SIXTEENTHS (40), SIXTEENTHS (36) },
  { "12/4", SIXTEENTHS (48), SIXTEENTHS (44) }, { "14/4", SIXTEENTHS (56), SIXTEENTHS (52) },
  { "16/4", SIXTEENTHS (64), SIXTEENTHS (60) },
};

#define MILLIMETRES(n)                                                                             \
  {                                                                                                \
#n, n, NAN                                                                                     \
  }

static const BsLumberThickness en_hardwood[] = {
  MILLIMETRES (20), MILLIMETRES (27), MILLIMETRES (32), MILLIMETRES (40), MILLIMETRES (50),
  MILLIMETRES (60), MILLIMETRES (65), MILLIMETRES (70), MILLIMETRES (80), MILLIMETRES (100),
};

static const BsLumberThickness en_softwood[] = {
  MILLIMETRES (16), MILLIMETRES (19), MILLIMETRES (22), MILLIMETRES (25),
  MILLIMETRES (32), MILLIMETRES (38), MILLIMETRES (44), MILLIMETRES (47),
  MILLIMETRES (50), MILLIMETRES (63), MILLIMETRES (75), MILLIMETRES (100),
};

static const BsLumberThickness dressed[] = {
  { "1", SIXTEENTHS (12), NAN },     { "1 1/4", SIXTEENTHS (16), NAN },
  { "1 1/2", SIXTEENTHS (20), NAN }, { "2", SIXTEENTHS (24), NAN },
  { "2 1/2", SIXTEENTHS (32), NAN }, { "3", SIXTEENTHS (40), NAN },
  { "3 1/2", SIXTEENTHS (48), NAN }, { "4", SIXTEENTHS (56), NAN },
};

/* The 20 % of EN 1313 and the 19 % of dry lumber in PS 20 are the moisture that the sizes are meant
 * for. */
static const BsLumberSeries all_series[BS_N_LUMBER_KINDS] = {
  [BS_LUMBER_QUARTERS]
  = { N_ ("Rough hardwood, quarters of an inch"),
      "NHLA rules, standard thickness (4/4 to 16/4 as trade lists give them, the rest from memory)",
      NAN, quarters, G_N_ELEMENTS (quarters) },
  [BS_LUMBER_EN_HARDWOOD] = { N_ ("European sawn hardwood"), "EN 1313-2 (from memory)", 20.0,
                              en_hardwood, G_N_ELEMENTS (en_hardwood) },
  [BS_LUMBER_EN_SOFTWOOD] = { N_ ("European sawn softwood"), "EN 1313-1 (from memory)", 20.0,
                              en_softwood, G_N_ELEMENTS (en_softwood) },
  [BS_LUMBER_DRESSED] = { N_ ("American dressed softwood"),
                          "PS 20-20 (1 and 2 inches as quoted elsewhere, the rest from memory)",
                          19.0, dressed, G_N_ELEMENTS (dressed) },
};

const BsLumberSeries *
bs_lumber_series (BsLumberKind kind)
{
  g_return_val_if_fail (kind < BS_N_LUMBER_KINDS, NULL);

  return &all_series[kind];
}

int
bs_lumber_least (const BsLumberSeries *series, double thickness, double ratio)
{
  for (guint i = 0; i < series->n_rows; i++)
    if (series->rows[i].sold * (1.0 + ratio) >= thickness - ROUNDING)
      return (int)i;
  return -1;
}
