/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The screw of a clamp: what turning its handle gives in force. mm, N, N mm. */
typedef struct
{
  double mean_diameter;   /* of the thread */
  double lead;            /* advance a turn */
  double flank_angle;     /* half of the angle between flanks, radians */
  double friction;        /* of the thread */
  double collar_friction; /* where the screw turns on its head, */
  double collar_radius;   /* and at which mean radius */
} BsScrew;

/* A dry steel screw of trapezoidal thread (half angle 15 degrees, friction 0.15) on a collar whose
 * mean radius is 0.38 of the mean diameter. The size is left to be set. */
BsScrew bs_screw_default (double mean_diameter, double lead);

/* Torque (N mm) that presses with `force` (N); grows in proportion. */
double bs_screw_torque (const BsScrew *self, double force);

/* Force (N) from a torque (N mm). */
double bs_screw_force (const BsScrew *self, double torque);

/* Part of the work on the handle that goes into the pressing; the rest is rubbed away. */
double bs_screw_efficiency (const BsScrew *self);

/* Whether it stays where it was turned to. A screw that does not must not be used as a clamp. */
gboolean bs_screw_holds (const BsScrew *self);

G_END_DECLS
