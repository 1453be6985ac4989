/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* What belongs to the person and not to a plan: data/io.github.broadstave.Broadstave.gschema.xml.
 *
 * Borrowed for the life of the program. NULL when the schema is not installed: the program then
 * works with what it starts with and keeps nothing, instead of ending as g_settings_new () would.
 */
GSettings *bs_settings_get (void);

G_END_DECLS
