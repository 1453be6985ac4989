/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/torque.h"

#include <math.h>

/* Trapezoidal thread: ISO 2901; friction of dry steel, and a collar as it is usual on clamps (4 mm
 * for a thread of 10.5 mm): from memory. Grease brings the friction down to about 0.10. */
#define FLANK_ANGLE (15.0 * G_PI / 180.0)
#define DRY_FRICTION 0.15
#define COLLAR_RADIUS_SHARE (4.0 / 10.5)

BsScrew
bs_screw_default (double mean_diameter, double lead)
{
  return (BsScrew){
    .mean_diameter = mean_diameter,
    .lead = lead,
    .flank_angle = FLANK_ANGLE,
    .friction = DRY_FRICTION,
    .collar_friction = DRY_FRICTION,
    .collar_radius = COLLAR_RADIUS_SHARE * mean_diameter,
  };
}

static double
lead_angle (const BsScrew *self)
{
  return atan (self->lead / (G_PI * self->mean_diameter));
}

static double
friction_angle (const BsScrew *self)
{
  return atan (self->friction / cos (self->flank_angle));
}

/* Torque for one newton: a wedge wound about a cylinder, and the rubbing collar. Source: Budynas
 * and Nisbett, Shigley's mechanical engineering design, power screws (from memory). */
static double
arm (const BsScrew *self)
{
  return self->mean_diameter / 2.0 * tan (lead_angle (self) + friction_angle (self))
         + self->collar_friction * self->collar_radius;
}

double
bs_screw_torque (const BsScrew *self, double force)
{
  return force * arm (self);
}

double
bs_screw_force (const BsScrew *self, double torque)
{
  return torque / arm (self);
}

double
bs_screw_efficiency (const BsScrew *self)
{
  return self->lead / (2.0 * G_PI * arm (self));
}

gboolean
bs_screw_holds (const BsScrew *self)
{
  return friction_angle (self) > lead_angle (self);
}
