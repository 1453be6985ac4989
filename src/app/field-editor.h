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
  BS_FIELD_LINES,  /* likewise, of some lines: Enter begins the next */
  BS_FIELD_CHOICE, /* an int or enum, one of the choices */
  BS_FIELD_SWITCH, /* a gboolean */
  BS_FIELD_MONEY,  /* a gint64, minor units of the plan's currency; 0 is left empty */
  BS_FIELD_WOOD,   /* a GRefString *, the id of a wood; choosing one brings it into the plan */
  BS_FIELD_OWN,    /* typed; read and written by functions of its own */
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
  int chars; /* of what is typed: room for so many; 0: what its kind usually needs */

  /* Of BS_FIELD_OWN, with the whole record: the text is the caller's; FALSE with an error that says
   * what was found and what is expected, and the record left as it was. */
  char *(*format) (gconstpointer record, const BsPlan *plan);
  gboolean (*parse) (gpointer record, const BsPlan *plan, const char *text, GError **error);
  gboolean is_figure; /* flush right, as numbers are */
} BsField;

/* Shows one field of one record of the session's plan and lets a person change it: numbers are
 * typed in any unit and taken over on Enter or when the focus leaves; what cannot be read or lies
 * outside its range stays on screen with a sentence that says so, and the plan stays as it was. */
#define BS_TYPE_FIELD_EDITOR (bs_field_editor_get_type ())
G_DECLARE_FINAL_TYPE (BsFieldEditor, bs_field_editor, BS, FIELD_EDITOR, GtkWidget)

/* `record` and `field` live as long as the program; `id` is copied and may be NULL. */
GtkWidget *bs_field_editor_new (BsSession *session, const BsRecord *record, const BsField *field,
                                const char *id);

/* Gives away the label that says what is wrong with what was typed, to be set where a sentence has
 * room; it shows itself only then. Borrowed from the editor, which goes on filling it. */
GtkWidget *bs_field_editor_give_problem (BsFieldEditor *self);

/* Turns to another record of the same kind; for the recycled cells of a table. */
void bs_field_editor_set_id (BsFieldEditor *self, const char *id);

G_END_DECLS
