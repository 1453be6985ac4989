/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/wood-stiffness.h"

#include <math.h>

/* A bending test measures some shear too; the modulus along the grain is about a tenth larger.
 * Source: FPL-GTR-190 (2010), chapter 5, from memory. */
#define ALONG_PER_MOE 1.10

/* Ratios to the modulus along the grain: means of 14 hardwoods and of 18 softwoods in FPL-GTR-190
 * (2010), tables 5-1 and 5-2 at 12 % moisture, from memory. Balsa is left out. G_RT is known
 * of 6 of the hardwoods only. */
static const struct
{
  double e_radial, e_tangential, g_lr, g_lt, g_rt, nu_rt;
} hardwood = { 0.119, 0.060, 0.092, 0.069, 0.0198, 0.706 },
  softwood = { 0.098, 0.058, 0.084, 0.079, 0.0092, 0.428 };

BsWoodStiffness
bs_wood_stiffness_typical (double moe_mpa, gboolean is_hardwood)
{
  double along = ALONG_PER_MOE * moe_mpa;

  return (BsWoodStiffness){
    .e_along = along,
    .e_radial = along * (is_hardwood ? hardwood.e_radial : softwood.e_radial),
    .e_tangential = along * (is_hardwood ? hardwood.e_tangential : softwood.e_tangential),
    .g_lr = along * (is_hardwood ? hardwood.g_lr : softwood.g_lr),
    .g_lt = along * (is_hardwood ? hardwood.g_lt : softwood.g_lt),
    .g_rt = along * (is_hardwood ? hardwood.g_rt : softwood.g_rt),
    .nu_rt = is_hardwood ? hardwood.nu_rt : softwood.nu_rt,
  };
}

/* Turning of the elastic axes. Source: docs/pressing-model.md, Stiffness. */
static double
compliance_across (const BsWoodStiffness *self, double cos2, double sin2)
{
  return cos2 * cos2 / self->e_radial + sin2 * sin2 / self->e_tangential
         + cos2 * sin2 * (1.0 / self->g_rt - 2.0 * self->nu_rt / self->e_radial);
}

static double
shear_compliance (const BsWoodStiffness *self, double cos2, double sin2)
{
  return cos2 / self->g_lr + sin2 / self->g_lt;
}

double
bs_wood_stiffness_across (const BsWoodStiffness *self, double angle)
{
  double c = cos (angle), s = sin (angle);

  return 1.0 / compliance_across (self, c * c, s * s);
}

double
bs_wood_stiffness_shear (const BsWoodStiffness *self, double angle)
{
  double c = cos (angle), s = sin (angle);

  return 1.0 / shear_compliance (self, c * c, s * s);
}

void
bs_wood_stiffness_section (const BsWoodStiffness *self, double thickness, double height,
                           double pith_y, double pith_z, double *e_across, double *shear)
{
  double across_sum = 0.0, shear_sum = 0.0;

  if (isnan (pith_y) || isnan (pith_z))
    {
      *e_across = sqrt (self->e_radial * self->e_tangential);
      *shear = 1.0 / shear_compliance (self, 0.5, 0.5);
      return;
    }
  for (int i = -1; i <= 1; i++)
    for (int j = -1; j <= 1; j++)
      {
        double y = i * thickness / 3.0 - pith_y, z = j * height / 3.0 - pith_z;
        double square = y * y + z * z;
        double cos2 = square > 0.0 ? y * y / square : 0.5;

        across_sum += compliance_across (self, cos2, 1.0 - cos2);
        shear_sum += shear_compliance (self, cos2, 1.0 - cos2);
      }
  *e_across = 9.0 / across_sum;
  *shear = 9.0 / shear_sum;
}
