/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-choice.h"

#include "app/wood-table.h"
#include "words/table-names.h"

#define CHOSEN_CHARS 10

/* Long names are shown whole in the list, and as far as there is room where one is chosen. */
static void
setup_chosen_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), CHOSEN_CHARS);
  gtk_list_item_set_child (item, label);
}

static void
setup_listed_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *name = GTK_STRING_OBJECT (gtk_list_item_get_item (item));
  GtkWidget *label = gtk_list_item_get_child (item);

  gtk_label_set_text (GTK_LABEL (label), gtk_string_object_get_string (name));
  gtk_widget_set_tooltip_text (label, gtk_string_object_get_string (name));
}

static GtkListItemFactory *
factory_new (GCallback setup)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", setup, NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  return factory;
}

/* The woods that the names are of, in their order. */
static const char WOODS[] = "woods";

static const GPtrArray *
get_woods (GtkDropDown *self)
{
  return g_object_get_data (G_OBJECT (self), WOODS);
}

static gboolean
has_same_names (GtkDropDown *self, const GPtrArray *woods)
{
  const GPtrArray *shown = get_woods (self);

  if (shown == NULL || shown->len != woods->len)
    return FALSE;
  for (guint i = 0; i < woods->len; i++)
    {
      const BsWood *was = shown->pdata[i], *is = woods->pdata[i];
      if (!g_str_equal (was->id, is->id) || g_strcmp0 (was->name, is->name) != 0)
        return FALSE;
    }
  return TRUE;
}

static void
set_names (GtkDropDown *self, const GPtrArray *woods)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < woods->len; i++)
    gtk_string_list_append (names, bs_words_wood (woods->pdata[i]));
  gtk_drop_down_set_model (self, G_LIST_MODEL (names));
}

GtkWidget *
bs_wood_choice_new (void)
{
  GtkExpression *name = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");
  GtkWidget *self = gtk_drop_down_new (NULL, name);
  g_autoptr (GtkListItemFactory) chosen = factory_new (G_CALLBACK (setup_chosen_cb));
  g_autoptr (GtkListItemFactory) listed = factory_new (G_CALLBACK (setup_listed_cb));

  gtk_drop_down_set_factory (GTK_DROP_DOWN (self), chosen);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (self), listed);
  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (self), TRUE);
  return self;
}

void
bs_wood_choice_show (GtkDropDown *self, const BsPlan *plan, const char *id)
{
  GPtrArray *woods = bs_wood_table_list (bs_wood_table_get (), plan);
  const gboolean is_same = has_same_names (self, woods);
  guint row = GTK_INVALID_LIST_POSITION;

  g_object_set_data_full (G_OBJECT (self), WOODS, woods, (GDestroyNotify)g_ptr_array_unref);
  if (!is_same)
    set_names (self, woods);
  for (guint i = 0; id != NULL && i < woods->len && row == GTK_INVALID_LIST_POSITION; i++)
    if (g_str_equal (((BsWood *)g_ptr_array_index (woods, i))->id, id))
      row = i;
  gtk_drop_down_set_selected (self, row);
}

BsWood *
bs_wood_choice_get (GtkDropDown *self)
{
  guint row = gtk_drop_down_get_selected (self);

  return row != GTK_INVALID_LIST_POSITION ? g_ptr_array_index (get_woods (self), row) : NULL;
}
