/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/form.h"

#include <glib/gi18n.h>

#include "app/label.h"

static gboolean
is_wide (const BsField *field)
{
  return field->kind == BS_FIELD_TEXT || field->kind == BS_FIELD_LINES;
}

/* Figures stand in entries of one width, as wide as the widest of the form. */
static gboolean
is_figure (const BsField *field)
{
  return field->kind == BS_FIELD_NUMBER || field->kind == BS_FIELD_WHOLE
         || field->kind == BS_FIELD_MONEY || (field->kind == BS_FIELD_OWN && field->is_figure);
}

/* In two rows: what is wrong with it stands under it, and takes no room while nothing is. */
static void
attach_field (GtkGrid *grid, int row, BsSession *session, const BsRecord *record, const char *id,
              const BsField *field, GtkSizeGroup *figures)
{
  GtkWidget *label = bs_label_new (_ (field->label), NULL);
  GtkWidget *editor = bs_field_editor_new (session, record, field, id);
  GtkWidget *problem = bs_field_editor_give_problem (BS_FIELD_EDITOR (editor));
  /* Some lines have no baseline in common with what stands beside them. */
  const GtkAlign align = field->kind == BS_FIELD_LINES ? GTK_ALIGN_START : GTK_ALIGN_BASELINE;

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, !is_wide (field));
  gtk_widget_set_hexpand (editor, is_wide (field));
  gtk_widget_set_halign (editor, is_wide (field) ? GTK_ALIGN_FILL : GTK_ALIGN_END);
  gtk_widget_set_valign (label, align);
  gtk_widget_set_margin_top (label, field->kind == BS_FIELD_LINES ? 7 : 0);
  gtk_widget_set_valign (editor, align);
  if (is_figure (field))
    gtk_size_group_add_widget (figures, editor);
  if (field->hint != NULL)
    gtk_widget_set_tooltip_text (label, _ (field->hint));
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  gtk_grid_attach (grid, editor, 1, row, 1, 1);
  gtk_label_set_max_width_chars (GTK_LABEL (problem), 24); /* or it asks for a wider form */
  gtk_grid_attach (grid, problem, 0, row + 1, 2, 1);
}

GtkWidget *
bs_form_new (BsSession *session, const char *heading, const BsRecord *record, const char *id,
             const BsField *fields, guint n_fields)
{
  GtkWidget *grid = gtk_grid_new ();
  g_autoptr (GtkSizeGroup) figures = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  int row = 0;

  gtk_widget_add_css_class (grid, "form");
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_widget_set_valign (grid, GTK_ALIGN_START);
  if (heading != NULL)
    gtk_grid_attach (GTK_GRID (grid), bs_label_new (_ (heading), "strong"), 0, row++, 2, 1);
  for (guint i = 0; i < n_fields; i++)
    attach_field (GTK_GRID (grid), row + 2 * (int)i, session, record, id, &fields[i], figures);
  return grid;
}

void
bs_form_set_id (GtkWidget *form, const char *id)
{
  for (GtkWidget *child = gtk_widget_get_first_child (form); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (BS_IS_FIELD_EDITOR (child))
      bs_field_editor_set_id (BS_FIELD_EDITOR (child), id);
}

GtkWidget *
bs_form_note_new (const char *text)
{
  GtkWidget *label = bs_label_new (text, "faint");
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 40);
  return label;
}
