/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/background.h"

#ifdef __linux__
#include <sys/resource.h>

/* About a tenth of the window's share while both work, all of it while the window rests: the
 * pressures still follow the hand. */
#define NICENESS 10

void
bs_background_enter (void)
{
  /* Linux takes a 0 for the calling thread alone; elsewhere it is the whole program. */
  if (setpriority (PRIO_PROCESS, 0, NICENESS) != 0)
    g_debug ("A thread keeps the priority of the window");
}
#else
void
bs_background_enter (void)
{
}
#endif
