/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/plan.h"
#include "core/progress.h"

G_BEGIN_DECLS

/* Something that follows from a plan and takes too long for the main thread. */
typedef struct
{
  /* In a thread. Pure; NULL when progress asked it to stop. What it hands over before the end is
   * shown meanwhile. */
  gpointer (*work_out) (const BsPlan *plan, const BsProgress *progress);
  GDestroyNotify free;
  guint rest_ms; /* a plan must have stood for so long: for what would only hold a moving hand up */
} BsStudyKind;

extern const BsStudyKind bs_study_schedule;      /* a BsSchedule, with the clamps of its layouts */
extern const BsStudyKind bs_study_forecast;      /* a BsForecast */
extern const BsStudyKind bs_study_live_pressing; /* a BsPressure, by the faster form */
extern const BsStudyKind bs_study_pressing;      /* a BsPressure, exact */
extern const BsStudyKind bs_study_clamp_advice;  /* a BsClampAdvice */
extern const BsStudyKind bs_study_purchase;      /* a BsPurchase, better and better */

/* Works out one kind of thing in a thread of its own, for one plan at a time: a newer plan stops
 * what is under way for an older one, if it can be stopped; if not, it is still the latest there
 * is.
 *
 * Signals: "changed" when the result became another one, or stopped being that of the wanted plan;
 * "notify::progress", 0 to 1, now and then while it works and when it ends. */
#define BS_TYPE_STUDY (bs_study_get_type ())
G_DECLARE_FINAL_TYPE (BsStudy, bs_study, BS, STUDY, GObject)

/* `kind` lives as long as the program. */
BsStudy *bs_study_new (const BsStudyKind *kind);

/* NULL: nothing to work out any more. */
void bs_study_set_plan (BsStudy *self, BsPlan *plan);

/* The latest there is, borrowed until "changed": that of an older plan while the wanted plan's is
 * being worked out, NULL before the first. */
gconstpointer bs_study_get_result (BsStudy *self);

/* The result is that of the plan that was set. */
gboolean bs_study_is_current (BsStudy *self);

/* Whether a better or a newer result may come; and enough of waiting for a better one. */
gboolean bs_study_is_working (BsStudy *self);
void bs_study_stop (BsStudy *self);

double bs_study_get_progress (BsStudy *self);

G_END_DECLS
