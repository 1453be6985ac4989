/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/record.h"
#include "app/session.h"
#include "core/limits.h"

G_BEGIN_DECLS

typedef enum
{
  BS_FIELD_NUMBER, /* a double */
  BS_FIELD_WHOLE,  /* an int */
  BS_FIELD_TEXT,   /* a GRefString * */
  BS_FIELD_CHOICE, /* an int or enum, one of the choices */
  BS_FIELD_SWITCH, /* a gboolean */
} BsFieldKind;

/* One field of a record: what it is called, where it lies and what it accepts. */
typedef struct
{
  BsFieldKind kind;
  const char *label;          /* N_() */
  const char *hint;           /* N_() what it means and how it is measured, or NULL */
  gsize offset;               /* in the record */
  const BsLimit *limit;       /* of numbers: the quantity and its range */
  gboolean may_be_unknown;    /* of numbers: left empty it is NAN */
  gboolean without_unit;      /* of numbers: the unit stands elsewhere, as in a column's title */
  const char *const *choices; /* N_() or, with a context, NC_(); NULL-terminated, */
  int first_choice;           /* and the value of the first of them */
  const char *choices_context;
} BsField;

/* Shows one field of one record of the session's plan and lets a person change it: numbers are
 * typed in any unit and taken over on Enter or when the focus leaves; what cannot be read or lies
 * outside its range stays on screen with a sentence that says so, and the plan stays as it was. */
#define BS_TYPE_FIELD_EDITOR (bs_field_editor_get_type ())
G_DECLARE_FINAL_TYPE (BsFieldEditor, bs_field_editor, BS, FIELD_EDITOR, GtkWidget)

/* `record` and `field` live as long as the program; `id` is copied and may be NULL. */
GtkWidget *bs_field_editor_new (BsSession *session, const BsRecord *record, const BsField *field,
                                const char *id);

/* Turns to another record of the same kind; for the recycled cells of a table. */
void bs_field_editor_set_id (BsFieldEditor *self, const char *id);

G_END_DECLS
