/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-choice.h"

#include "plan/tables.h"

GtkWidget *
bs_wood_choice_new (void)
{
  const GPtrArray *woods = bs_tables_get_woods ();
  GtkStringList *names = gtk_string_list_new (NULL);
  for (guint i = 0; i < woods->len; i++)
    gtk_string_list_append (names, ((BsWood *)g_ptr_array_index (woods, i))->name);

  GtkExpression *name = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");
  GtkWidget *self = gtk_drop_down_new (G_LIST_MODEL (names), name);
  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (self), TRUE);
  return self;
}

void
bs_wood_choice_show (GtkDropDown *self, const char *id)
{
  const GPtrArray *woods = bs_tables_get_woods ();
  guint row = GTK_INVALID_LIST_POSITION;

  for (guint i = 0; id != NULL && i < woods->len && row == GTK_INVALID_LIST_POSITION; i++)
    if (g_str_equal (((BsWood *)g_ptr_array_index (woods, i))->id, id))
      row = i;
  gtk_drop_down_set_selected (self, row);
}

BsWood *
bs_wood_choice_get (GtkDropDown *self)
{
  guint row = gtk_drop_down_get_selected (self);

  return row != GTK_INVALID_LIST_POSITION ? g_ptr_array_index (bs_tables_get_woods (), row) : NULL;
}
