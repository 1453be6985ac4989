/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/palette.h"

G_BEGIN_DECLS

/* Light or dark: as the person chose, or as the desktop says. */
#define BS_TYPE_APPEARANCE (bs_appearance_get_type ())
G_DECLARE_FINAL_TYPE (BsAppearance, bs_appearance, BS, APPEARANCE, GObject)

/* Sets gtk-application-prefer-dark-theme of the display's settings from now on. */
BsAppearance *bs_appearance_new (GtkSettings *settings);

/* An action named "appearance" whose state is "system", "light" or "dark". */
GAction *bs_appearance_create_action (BsAppearance *self);

/* The colours for a picture in a widget: dark when the theme writes light on dark, whatever made it
 * so. */
const BsPalette *bs_appearance_find_palette (GtkWidget *widget);

/* Of the text in a widget, in pixels. */
double bs_appearance_find_text_size (GtkWidget *widget);

G_END_DECLS
