/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How stiff wood is along the grain, across it and in shear, by the way its rings run.
 *
 * MPa. L: along the grain; R: radial, away from the pith; T: tangential, along the rings. */
typedef struct
{
  double e_along;      /* E_L, free of shear */
  double e_radial;     /* E_R */
  double e_tangential; /* E_T */
  double g_lr, g_lt, g_rt;
  double nu_rt; /* strain along T for one along R, R pulled */
} BsWoodStiffness;

/* From a modulus of elasticity in bending (MPa), by the mean ratios of hardwoods or of softwoods:
 * single woods differ by a third from them. */
BsWoodStiffness bs_wood_stiffness_typical (double moe_mpa, gboolean is_hardwood);

/* Modulus across the grain in a direction that lies at `angle` (radians) from the radial one. Rings
 * at 45 degrees are two to five times softer than rings along or across. */
double bs_wood_stiffness_across (const BsWoodStiffness *self, double angle);

/* Shear modulus between the grain and that direction. */
double bs_wood_stiffness_shear (const BsWoodStiffness *self, double angle);

/* A rectangle of wood, `thickness` along y and `height` along z (mm), with the pith at (pith_y,
 * pith_z) from its middle: its modulus along y and its shear modulus in x-y, each from the mean
 * compliance of 3 x 3 spots. NAN for an unknown pith gives sqrt (E_R E_T) and the mean of the two
 * shears, which is rather stiff, and stiff is the safe guess: it makes the pressure less even. */
void bs_wood_stiffness_section (const BsWoodStiffness *self, double thickness, double height,
                                double pith_y, double pith_z, double *e_across, double *shear);

G_END_DECLS
