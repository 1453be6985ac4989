/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* How long work tells how far it is, and how it is asked to stop.
 *
 * report is called from the thread that does the work, with the part done (0 to 1); when it returns
 * FALSE the work ends soon, with the best result that it has. A NULL BsProgress reports nothing.
 *
 * Work that gets better and better hands over what it has to better, if there is one, which takes
 * it. */
typedef struct
{
  gboolean (*report) (double done, gpointer data);
  gpointer data;
  void (*better) (gpointer result, gpointer data);
} BsProgress;

static inline gboolean
bs_progress_report (const BsProgress *self, double done)
{
  return self == NULL || self->report == NULL || self->report (done, self->data);
}
