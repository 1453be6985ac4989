/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/schedule.h"

G_BEGIN_DECLS

/* What is done in a press, one thing after another, for reading beside the clamps. All char * are
 * the caller's. */

/* One joint by the clock of its press, which starts when the first piece is taken up. */
typedef struct
{
  double spread_s, place_s; /* when to begin */
  char *joint;              /* "A1 and A2" */
  char *piece;              /* what is placed on it: "A2", "B1 to B6" */
} BsPressStep;

/* Of each joint in order; free with g_array_unref. */
GArray *bs_words_press_steps (const BsSchedule *schedule, const BsStage *stage);

/* How it begins, and how it ends: tightening, the limit, the clamps off, rest and planing. */
char *bs_words_press_beginning (const BsSchedule *schedule, const BsStage *stage);
char *bs_words_press_end (const BsSchedule *schedule, const BsStage *stage);

/* "4:05", "1:04:05": minutes and seconds, with the hours when there are any; "25:40": hours and
 * minutes. */
char *bs_words_clock (double seconds);
char *bs_words_hours (double seconds);

G_END_DECLS
