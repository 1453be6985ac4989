/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The packs of the plan, each with a button that takes it apart, and how one more is made: by its
 * first lamination and how many. A pack made over others takes their place. */
#define BS_TYPE_PACKS_EDITOR (bs_packs_editor_get_type ())
G_DECLARE_FINAL_TYPE (BsPacksEditor, bs_packs_editor, BS, PACKS_EDITOR, GtkWidget)

GtkWidget *bs_packs_editor_new (BsSession *session);

G_END_DECLS
