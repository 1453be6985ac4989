/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Lays out a main child and two that go with it. With room, those stand in a column at its right,
 * one above the other; in a window narrower than BS_FOLD_WIDTH they go under it, side by side. The
 * children are the properties "main", "first" and "second". */
#define BS_TYPE_FOLD (bs_fold_get_type ())
G_DECLARE_FINAL_TYPE (BsFold, bs_fold, BS, FOLD, GtkWidget)

/* Of the window, in pixels. */
#define BS_FOLD_WIDTH 1100

G_END_DECLS
