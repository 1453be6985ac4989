/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/forecast.h"

G_BEGIN_DECLS

/* Works out the forecast of a plan in a thread of its own, one at a time: a newer plan stops what
 * is under way for an older one.
 *
 * Signal: "changed" when the forecast came or went. */
#define BS_TYPE_STUDY (bs_study_get_type ())
G_DECLARE_FINAL_TYPE (BsStudy, bs_study, BS, STUDY, GObject)

BsStudy *bs_study_new (void);

/* NULL: nothing to work out any more. */
void bs_study_set_plan (BsStudy *self, BsPlan *plan);

/* Borrowed until "changed"; NULL while it is being worked out. */
const BsForecast *bs_study_get_forecast (BsStudy *self);

G_END_DECLS
