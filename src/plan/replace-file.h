/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Puts a text in the place of a file, whole, or leaves the file as it was (G_FILE_ERROR, the
 * system's words). A link stays a link, and a file keeps who may read it. */
gboolean bs_replace_file (const char *filename, const char *text, GError **error);

G_END_DECLS
