/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/field-editor.h"

G_BEGIN_DECLS

/* A column that is no field: a widget for each row, which follows the session by itself. */
typedef struct
{
  const char *title; /* N_() */
  GtkWidget *(*create) (BsSession *session, const char *id);
} BsRowsColumn;

/* Things of one kind (clamps, cauls, defects of a lamination) as rows of editors under one line of
 * column titles, each row with a button that takes it off and what is wrong in it below it, and one
 * under all that adds another. */
typedef struct
{
  const char *heading;   /* N_() */
  const char *add_label; /* N_() of the button that adds */
  const char *none;      /* N_() shown while there are none */
  const BsRecord *record;
  const BsField *fields;
  guint n_fields;
  const BsRowsColumn *columns; /* after the fields */
  guint n_columns;
  guint n_first; /* more fields than a line has room for: so many of them stand in a line of their
                  * own over the others, each under its title; 0: all in one line */

  /* `owner` is the id of the record that the things belong to, or NULL where that is the plan. The
   * id for the record is the caller's to free. */
  char *(*dup_id) (const BsPlan *plan, const char *owner, guint index);

  /* Things in a GArray of their owner: where that is, and what a new one is like (all 0 before). */
  const BsRecord *owners;
  gsize array;
  void (*begin) (gconstpointer owner, gpointer thing);

  /* All others, where `owners` is NULL. add and take_off return a new plan. */
  guint (*count) (const BsPlan *plan, const char *owner);
  BsPlan *(*add) (const BsPlan *plan, const char *owner);
  BsPlan *(*take_off) (const BsPlan *plan, const char *owner, guint index);
} BsRows;

#define BS_TYPE_ROWS_EDITOR (bs_rows_editor_get_type ())
G_DECLARE_FINAL_TYPE (BsRowsEditor, bs_rows_editor, BS, ROWS_EDITOR, GtkWidget)

/* `rows` lives as long as the program; `owner` is copied. */
GtkWidget *bs_rows_editor_new (BsSession *session, const BsRows *rows, const char *owner);
void bs_rows_editor_set_owner (BsRowsEditor *self, const char *owner);

G_END_DECLS
