/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/session.h"
#include "core/schedule.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The ways to press a slab, one under the other: with the person's packs, the shortest, the
 * evenest. One of them is looked at, and can be made the plan's own.
 *
 * Signal "changed": the person looks at another one. */
#define BS_TYPE_SCHEDULE_CHOICES (bs_schedule_choices_get_type ())
G_DECLARE_FINAL_TYPE (BsScheduleChoices, bs_schedule_choices, BS, SCHEDULE_CHOICES, GtkWidget)

GtkWidget *bs_schedule_choices_new (BsSession *session);

/* NULL: there is none. The schedule is only read now. */
void bs_schedule_choices_show (BsScheduleChoices *self, const BsSchedule *schedule);

/* The presses of a schedule that are looked at; NULL when it has none. */
const BsStagesPlan *bs_schedule_choices_find (BsScheduleChoices *self, const BsSchedule *schedule);

G_END_DECLS
