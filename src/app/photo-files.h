/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/plan.h"
#include "words/boards.h"

G_BEGIN_DECLS

/* The photos that a plan refers to, as files. Their paths begin from the folder of the plan's file;
 * folder NULL: from where the program was started. These read files at once: a window asks
 * app/photos.h, which does it in a thread. */

/* The path of the file itself. The caller's. */
char *bs_photo_file_find (const char *folder, const char *path);

/* Upright, and not larger than a screen shows. NULL with an error. */
cairo_surface_t *bs_photo_file_load (const char *file, GError **error);

/* Whether it could be loaded, by its beginning. */
gboolean bs_photo_file_check (const char *file, GError **error);

/* All photos of the boards that can be loaded: cairo_surface_t by the path that the plan has. */
GHashTable *bs_photo_files_load (const BsPlan *plan, const char *folder);

/* BsPhotoProblem of the others. It keeps the sentences; the boards are the plan's. */
GArray *bs_photo_files_check (const BsPlan *plan, const char *folder);

G_END_DECLS
