/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Called by a thread that begins to work something out: from here on the window's thread, and with
 * it the hand that moves something there, comes first where both want a processor. For good: the
 * thread may not raise itself again, and what it is given to do next can wait as well. Where the
 * system knows no such thing for one thread, nothing happens. */
void bs_background_enter (void);

G_END_DECLS
