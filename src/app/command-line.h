/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What the program does without a display. */

typedef enum
{
  BS_EXIT_FINE = 0,
  BS_EXIT_STOP = 1,     /* the plan has findings that stop the work */
  BS_EXIT_UNUSABLE = 2, /* the input could not be used, or the output not written */
} BsExit;

/* Does what the arguments ask for and returns TRUE with the exit status; FALSE when they ask for
 * nothing of that kind, and a window is wanted. `arguments` begins with the program's name and is
 * left as it is. */
gboolean bs_command_line_run (char **arguments, int *status);

G_END_DECLS
