/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/background.h"

#ifdef __linux__
#include <sys/resource.h>

/* About half of the window's share while both work, all of it while the window rests: what follows
 * the hand still does so when other programs want the processors too. */
#define NICENESS 3

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
