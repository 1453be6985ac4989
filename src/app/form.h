/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/field-editor.h"

G_BEGIN_DECLS

/* A heading with fields under it, label and editor side by side: what a page of settings is made
 * of. `heading` is N_() or NULL; record and fields live as long as the program. */
GtkWidget *bs_form_new (BsSession *session, const char *heading, const BsRecord *record,
                        const char *id, const BsField *fields, guint n_fields);

/* A line of small text under a form; `text` is already translated. */
GtkWidget *bs_form_note_new (const char *text);

/* Turns all fields of a form to another record of the same kind. */
void bs_form_set_id (GtkWidget *form, const char *id);

G_END_DECLS
