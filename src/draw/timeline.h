/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/schedule.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* The presses of a schedule, a row each, to scale: at the left the assembly in minutes against what
 * the glue allows, at the right the whole calendar. Sizes in device units; the picture's top left
 * corner is the origin. presses: of this schedule. */
typedef struct
{
  const BsSchedule *schedule;
  const BsStagesPlan *presses;
  double width;
  double text_size;
  double hairline;
  const BsPalette *palette;
} BsTimeline;

double bs_timeline_get_height (const BsTimeline *self);
void bs_timeline_draw (const BsTimeline *self, cairo_t *cr);

/* The step of a time scale, in seconds: round, at least `least`. */
double bs_timeline_step (double least);

G_END_DECLS
