/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-columns.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/wood-item.h"
#include "app/wood-table.h"
#include "core/money.h"
#include "core/units.h"
#include "words/table-names.h"
#include "words/timber.h"

/* What a column shows of a card, and the number that it is sorted by; without one by its text. */
typedef struct
{
  const char *title;
  char *(*format) (const BsWoodCard *card, const BsPlan *plan);
  double (*value) (const BsWoodCard *card);
  gboolean is_number; /* flush right */
  int chars;          /* as narrow as that where the window is; 0: shown whole */
} Column;

static char *
format_name (const BsWoodCard *card, const BsPlan *plan)
{
  return g_strdup (bs_words_wood (card->wood));
}

static char *
format_hardness (const BsWoodCard *card, const BsPlan *plan)
{
  g_autofree char *text = bs_units_format (card->hardness_n, BS_QUANTITY_FORCE, plan->units);

  return card->is_hardness_estimated ? g_strdup_printf ("≈ %s", text) : g_steal_pointer (&text);
}

static double
get_hardness (const BsWoodCard *card)
{
  return card->hardness_n;
}

static char *
format_mass (const BsWoodCard *card, const BsPlan *plan)
{
  return bs_units_format (card->slab_kg, BS_QUANTITY_MASS, plan->units);
}

static double
get_mass (const BsWoodCard *card)
{
  return card->slab_kg;
}

static char *
format_sag (const BsWoodCard *card, const BsPlan *plan)
{
  return bs_units_format (card->sag_per_kn, BS_QUANTITY_LENGTH, plan->units);
}

static double
get_sag (const BsWoodCard *card)
{
  return card->sag_per_kn;
}

/* A range where rings are not known. */
static char *
format_movement (const BsWoodCard *card, const BsPlan *plan)
{
  const double low = fmin (card->movement_low, card->movement_high);
  const double high = fmax (card->movement_low, card->movement_high);
  g_autofree char *from = bs_units_format_number (low, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *to = bs_units_format (high, BS_QUANTITY_LENGTH, plan->units);

  if (isnan (card->movement) || !(high - low > 0.05))
    return bs_units_format (card->movement, BS_QUANTITY_LENGTH, plan->units);
  /* Translators: the range that a number may well have: "86.9 to 88.4 mm". */
  return g_strdup_printf (_ ("%s to %s"), from, to);
}

static double
get_movement (const BsWoodCard *card)
{
  return card->movement;
}

static char *
format_cost (const BsWoodCard *card, const BsPlan *plan)
{
  return bs_money_format (card->cost_minor, plan->currency);
}

static double
get_cost (const BsWoodCard *card)
{
  return card->cost_minor;
}

static char *
format_planing (const BsWoodCard *card, const BsPlan *plan)
{
  return g_strdup (bs_words_planing (card->planing));
}

static char *
format_thickest (const BsWoodCard *card, const BsPlan *plan)
{
  return bs_units_format (card->thickest, BS_QUANTITY_LENGTH, plan->units);
}

static double
get_thickest (const BsWoodCard *card)
{
  return card->thickest;
}

static char *
format_fit (const BsWoodCard *card, const BsPlan *plan)
{
  return bs_words_fit (card->unfit);
}

static double
count_reasons (const BsWoodCard *card)
{
  double n = 0.0;

  for (guint i = 0; i < BS_N_UNFITS; i++)
    n += (card->unfit & (1U << i)) != 0 ? 1.0 : 0.0;
  return n;
}

static char *
format_figures (const BsWoodCard *card, const BsPlan *plan)
{
  if (bs_wood_table_is_kept (bs_wood_table_get (), card->wood->id))
    return g_strdup (C_ ("figures of a wood", "your own"));
  return g_strdup (card->wood->is_from_memory ? C_ ("figures of a wood", "from memory")
                                              : C_ ("figures of a wood", "read"));
}

static const Column columns[] = {
  { NC_ ("column", "Wood"), format_name, NULL, FALSE, 11 },
  { NC_ ("column", "Fits"), format_fit, count_reasons, FALSE, 8 },
  { NC_ ("column", "Hardness"), format_hardness, get_hardness, TRUE },
  { NC_ ("column", "Moves"), format_movement, get_movement, TRUE },
  { NC_ ("column", "Weighs"), format_mass, get_mass, TRUE },
  { NC_ ("column", "Sags"), format_sag, get_sag, TRUE },
  { NC_ ("column", "Costs"), format_cost, get_cost, TRUE },
  { NC_ ("column", "Planing"), format_planing, get_hardness, FALSE },
  { NC_ ("column", "Thickest"), format_thickest, get_thickest, TRUE },
  { NC_ ("column", "Figures"), format_figures, NULL, FALSE },
};

/* What a cell needs: which column it is in, and whose plan its units are of. */
typedef struct
{
  const Column *column;
  BsSession *session; /* borrowed: it lives as long as the table */
} Cell;

static void
show_cell (GtkListItem *item, const Cell *cell)
{
  BsWoodItem *wood = gtk_list_item_get_item (item);
  const BsWoodCard *card = bs_wood_item_get_card (wood);
  g_autofree char *text = cell->column->format (card, bs_session_get_plan (cell->session));
  GtkWidget *label = gtk_list_item_get_child (item);

  gtk_label_set_text (GTK_LABEL (label), text);
  if (cell->column->chars > 0)
    gtk_widget_set_tooltip_text (label, text);
  if (card->unfit == 0)
    gtk_widget_remove_css_class (label, "faint");
  else
    gtk_widget_add_css_class (label, "faint");
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const Cell *cell)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), cell->column->is_number ? 1.0f : 0.0f);
  if (cell->column->chars > 0)
    {
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (label), cell->column->chars);
    }
  gtk_list_item_set_child (item, label);
}

/* The connection carries the list item; the cell is the factory's. */
static void
item_changed_cb (BsWoodItem *wood, GtkListItem *item)
{
  show_cell (item, g_object_get_data (G_OBJECT (item), "cell"));
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Cell *cell)
{
  g_object_set_data (G_OBJECT (item), "cell", cell);
  g_signal_connect (gtk_list_item_get_item (item), "changed", G_CALLBACK (item_changed_cb), item);
  show_cell (item, cell);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const Cell *cell)
{
  g_signal_handlers_disconnect_by_data (gtk_list_item_get_item (item), item);
}

/* Numbers that are not known come last. */
static int
compare_items (gconstpointer a, gconstpointer b, gpointer data)
{
  const Cell *cell = data;
  const BsWoodCard *first = bs_wood_item_get_card ((BsWoodItem *)a);
  const BsWoodCard *second = bs_wood_item_get_card ((BsWoodItem *)b);

  if (cell->column->value == NULL)
    {
      const BsPlan *plan = bs_session_get_plan (cell->session);
      g_autofree char *first_text = cell->column->format (first, plan);
      g_autofree char *second_text = cell->column->format (second, plan);
      return g_utf8_collate (first_text, second_text);
    }

  const double first_value = cell->column->value (first);
  const double second_value = cell->column->value (second);
  if (isnan (first_value) || isnan (second_value))
    return (isnan (first_value) ? 1 : 0) - (isnan (second_value) ? 1 : 0);
  return (first_value > second_value) - (first_value < second_value);
}

static void
free_cell (gpointer data, GClosure *closure)
{
  g_free (data);
}

static void
append_column (GtkColumnView *table, const Column *column, BsSession *session)
{
  Cell *cell = g_new (Cell, 1);
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) view_column
      = gtk_column_view_column_new (g_dpgettext2 (NULL, "column", column->title), factory);
  g_autoptr (GtkSorter) sorter = NULL;

  *cell = (Cell){ column, session };
  g_signal_connect_data (factory, "setup", G_CALLBACK (setup_cb), cell, free_cell, 0);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), cell);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), cell);

  Cell *own = g_memdup2 (cell, sizeof *cell);
  sorter = GTK_SORTER (gtk_custom_sorter_new (compare_items, own, g_free));
  gtk_column_view_column_set_sorter (view_column, sorter);
  gtk_column_view_column_set_expand (view_column, column->chars > 0);
  gtk_column_view_append_column (table, view_column);
}

void
bs_wood_columns_append (GtkColumnView *table, BsSession *session)
{
  g_return_if_fail (GTK_IS_COLUMN_VIEW (table));

  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    append_column (table, &columns[i], session);
}

void
bs_wood_columns_sort_again (GtkColumnView *table)
{
  g_return_if_fail (GTK_IS_COLUMN_VIEW (table));

  gtk_sorter_changed (gtk_column_view_get_sorter (table), GTK_SORTER_CHANGE_DIFFERENT);
}
