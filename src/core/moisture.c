/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/moisture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

double
bs_moisture_emc (double temperature_c, double humidity_pct)
{
  double t = temperature_c;
  double h = humidity_pct / 100.0;

  /* Wood Handbook (FPL-GTR-190, 2010), equation 4-5 in SI units. */
  double w = 349.0 + 1.29 * t + 0.0135 * t * t;
  double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;

  double kh = k * h;
  double first = k1 * kh;
  double second = k1 * k2 * kh * kh;
  return 1800.0 / w * (kh / (1.0 - kh) + (first + 2.0 * second) / (1.0 + first + second));
}

void
bs_moisture_seasons (const BsSlab *slab, double *low_pct, double *high_pct)
{
  double dry = bs_moisture_emc (slab->dry_season.temperature_c, slab->dry_season.humidity_pct);
  double damp = bs_moisture_emc (slab->damp_season.temperature_c, slab->damp_season.humidity_pct);

  *low_pct = fmin (dry, damp);
  *high_pct = fmax (dry, damp);
}

/* Specific gravity on the volume at a moisture content, from that on the green volume, and back:
 * Wood Handbook (FPL-GTR-190, 2010), chapter 4; from memory. */
#define SHRINKAGE_OF_SG 0.265

static double
sg_from_basic (double basic, double moisture_pct)
{
  double dried = fmax (0.0, 1.0 - moisture_pct / BS_FIBRE_SATURATION_PCT);
  return basic / (1.0 - SHRINKAGE_OF_SG * dried * basic);
}

static double
basic_from_sg (double sg, double moisture_pct)
{
  double dried = 1.0 - moisture_pct / BS_FIBRE_SATURATION_PCT;
  return sg / (1.0 + SHRINKAGE_OF_SG * dried * sg);
}

double
bs_moisture_density (double sg_12, double moisture_pct)
{
  double sg = sg_from_basic (basic_from_sg (sg_12, 12.0), moisture_pct);
  return 1000.0 * sg * (1.0 + moisture_pct / 100.0);
}

void
bs_moisture_explain_shop (const BsShop *shop, BsWorking *why)
{
  bs_working_init (why, N_ ("Moisture in the shop"),
                   N_ ("What wood comes to in the air of the shop when it stays long enough, which "
                       "for thick boards is months: measure, and do not count days."),
                   "M = EMC (T, h)", BS_QUANTITY_PERCENT,
                   N_ ("Wood and its past shift it by about 1 %."));
  why->value = bs_moisture_emc (shop->climate.temperature_c, shop->climate.humidity_pct);
  bs_working_add (why, N_ ("temperature in the shop"), "T", shop->climate.temperature_c,
                  BS_QUANTITY_TEMPERATURE, N_ ("set by you"));
  bs_working_add (why, N_ ("humidity in the shop"), "h", shop->climate.humidity_pct,
                  BS_QUANTITY_PERCENT, N_ ("set by you"));
  bs_working_add (why, N_ ("moisture that wood comes to"), "M", why->value, BS_QUANTITY_PERCENT,
                  "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)");
}
