/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The photos that a plan refers to, loaded in a thread when they are first asked for, not larger
 * than a screen shows. Paths begin from the folder of the plan's file.
 *
 * Signal: "changed" when one was loaded, or turned out to be missing. */
#define BS_TYPE_PHOTOS (bs_photos_get_type ())
G_DECLARE_FINAL_TYPE (BsPhotos, bs_photos, BS, PHOTOS, GObject)

BsPhotos *bs_photos_new (BsSession *session);

/* The session's own, made when first asked for; borrowed. */
BsPhotos *bs_photos_get_shared (BsSession *session);

/* Borrowed; NULL while it is not there (yet), and for a path that is NULL. */
cairo_surface_t *bs_photos_get (BsPhotos *self, const char *path);

/* Why it cannot be shown, a sentence; NULL: it can, or is being looked at, which loads nothing. */
const char *bs_photos_get_problem (BsPhotos *self, const char *path);

/* How a plan refers to a file: from its folder where it lies below that, else from the root. The
 * caller's. */
char *bs_photos_refer (BsSession *session, GFile *file);

G_END_DECLS
