/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* How long the program works between two waits of the main loop: what a frame takes with all that
 * leads to it, the events, the plan and its results, not only the drawing. */

/* Before the application runs. */
void meter_init (void);

/* Runs a command (words, NULL-terminated; taken over) that moves the pointer or presses keys, takes
 * times as long as it runs, and prints them under a title. Then it goes on with `next`; NULL: it
 * quits the application. */
void meter_run (GApplication *application, const char *title, GPtrArray *words, GSourceFunc next);

G_END_DECLS
