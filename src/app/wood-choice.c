/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-choice.h"

#include <glib/gi18n.h>

#include "app/record.h"
#include "core/text.h"
#include "plan/tables.h"

static const char LAMINATION[] = "lamination";

static const BsLamination *
get_lamination (GtkDropDown *choice, BsSession *session)
{
  const char *id = g_object_get_data (G_OBJECT (choice), LAMINATION);
  return bs_plan_find_lamination (bs_session_get_plan (session), id);
}

static guint
find_row (const BsLamination *lamination)
{
  const GPtrArray *woods = bs_tables_get_woods ();
  for (guint i = 0; lamination != NULL && lamination->wood != NULL && i < woods->len; i++)
    if (g_str_equal (((BsWood *)g_ptr_array_index (woods, i))->id, lamination->wood))
      return i;
  return GTK_INVALID_LIST_POSITION;
}

/* The plan carries the figures of every wood that it uses. */
static void
chosen_cb (GtkDropDown *choice, GParamSpec *pspec, BsSession *session)
{
  const BsLamination *lamination = get_lamination (choice, session);
  guint row = gtk_drop_down_get_selected (choice);

  if (lamination == NULL || row == GTK_INVALID_LIST_POSITION || row == find_row (lamination))
    return;
  BsWood *wood = g_ptr_array_index (bs_tables_get_woods (), row);
  g_autoptr (BsPlan) copy = bs_plan_copy (bs_session_get_plan (session));
  if (bs_plan_find_wood (copy, wood->id) == NULL)
    g_ptr_array_add (copy->woods, bs_wood_ref (wood));
  BsLamination *changed = bs_record_lamination.edit (copy, lamination->id);
  bs_text_set (&changed->wood, wood->id);
  bs_session_push (session, copy, _ ("Choose wood"), NULL);
}

static void
show_cb (GtkDropDown *choice, BsSession *session)
{
  gtk_drop_down_set_selected (choice, find_row (get_lamination (choice, session)));
}

GtkWidget *
bs_wood_choice_new (BsSession *session, const char *lamination)
{
  const GPtrArray *woods = bs_tables_get_woods ();
  GtkStringList *names = gtk_string_list_new (NULL);
  for (guint i = 0; i < woods->len; i++)
    gtk_string_list_append (names, ((BsWood *)g_ptr_array_index (woods, i))->name);

  GtkExpression *name = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");
  GtkWidget *choice = gtk_drop_down_new (G_LIST_MODEL (names), name);
  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (choice), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (choice), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Wood"), -1);
  g_object_set_data_full (G_OBJECT (choice), LAMINATION, g_strdup (lamination), g_free);
  show_cb (GTK_DROP_DOWN (choice), session);
  g_signal_connect_object (choice, "notify::selected", G_CALLBACK (chosen_cb), session, 0);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_cb), choice, G_CONNECT_SWAPPED);
  return choice;
}
