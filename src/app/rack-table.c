/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-table-private.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/rack-cell.h"
#include "core/units.h"

G_DEFINE_FINAL_TYPE (BsRackTable, bs_rack_table, GTK_TYPE_WIDGET)

enum
{
  SELECTION_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Whoever goes elsewhere finds what could not be taken over again in its cell. */
static void
cell_left_cb (BsRackTable *self, BsRackCell *cell)
{
  if (gtk_widget_in_destruction (GTK_WIDGET (self)))
    return;
  bs_rack_table_end_edit (self, cell);
  bs_rack_cell_end_edit (cell);
}

/* The columns. */

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, BsRackTable *self)
{
  int column = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (factory), "column"));
  static const int n_chars[BS_N_RACK_COLUMNS] = {
    [BS_BOARD_LABEL] = 6,  [BS_BOARD_WOOD] = 13,    [BS_BOARD_THICKNESS] = 7, [BS_BOARD_WIDTH] = 7,
    [BS_BOARD_LENGTH] = 7, [BS_BOARD_MOISTURE] = 5, [BS_BOARD_PRICE] = 7,     [BS_BOARD_BOW] = 5,
    [BS_BOARD_CROOK] = 5,  [BS_BOARD_CUP] = 5,      [BS_BOARD_TWIST] = 5,     [BS_RACK_FINISH] = 6,
  };
  GtkWidget *cell = bs_rack_cell_new (column, n_chars[column]);

  gtk_widget_set_focusable (cell, column != BS_RACK_FINISH);
  g_signal_connect_object (cell, "left", G_CALLBACK (cell_left_cb), self, G_CONNECT_SWAPPED);
  gtk_list_item_set_child (item, cell);
}

static void
row_changed_cb (BsRackCell *cell, BsRackRow *row)
{
  GtkWidget *table = gtk_widget_get_ancestor (GTK_WIDGET (cell), BS_TYPE_RACK_TABLE);

  if (table != NULL)
    bs_rack_table_show_cell (BS_RACK_TABLE (table), cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, BsRackTable *self)
{
  BsRackCell *cell = BS_RACK_CELL (gtk_list_item_get_child (item));

  bs_rack_cell_set_item (cell, item);
  g_ptr_array_add (self->cells, cell);
  g_signal_connect_object (gtk_list_item_get_item (item), "changed", G_CALLBACK (row_changed_cb),
                           cell, G_CONNECT_SWAPPED);
  bs_rack_table_show_cell (self, cell);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, BsRackTable *self)
{
  BsRackCell *cell = BS_RACK_CELL (gtk_list_item_get_child (item));

  bs_rack_cell_end_edit (cell);
  g_signal_handlers_disconnect_by_func (gtk_list_item_get_item (item), row_changed_cb, cell);
  g_ptr_array_remove_fast (self->cells, cell);
  bs_rack_cell_set_item (cell, NULL);
}

static void
append_columns (BsRackTable *self)
{
  for (int i = 0; i < BS_N_RACK_COLUMNS; i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_object_set_data (G_OBJECT (factory), "column", GINT_TO_POINTER (i));
      g_signal_connect_object (factory, "setup", G_CALLBACK (setup_cb), self, 0);
      g_signal_connect_object (factory, "bind", G_CALLBACK (bind_cb), self, 0);
      g_signal_connect_object (factory, "unbind", G_CALLBACK (unbind_cb), self, 0);
      g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (NULL, factory);
      gtk_column_view_column_set_expand (column, i == BS_BOARD_WOOD);
      gtk_column_view_append_column (GTK_COLUMN_VIEW (self->view), column);
    }
}

static void
show_unit (BsRackTable *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  g_autofree char *text
      /* Translators: %s is a unit of length */
      = g_strdup_printf (_ ("Where no unit is written: %s"),
                         bs_units_symbol (BS_QUANTITY_LENGTH, plan->units));

  gtk_label_set_text (GTK_LABEL (self->unit), text);
}

static void
show_titles (BsRackTable *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  GListModel *columns = gtk_column_view_get_columns (GTK_COLUMN_VIEW (self->view));

  for (guint i = 0; i < BS_N_RACK_COLUMNS; i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i);
      char *title = i == BS_RACK_FINISH ? g_strdup (_ ("Finishes at"))
                                        : bs_board_column_title ((BsBoardColumn)i, plan);

      g_free (self->titles[i]);
      self->titles[i] = title;
      /* The cells want their titles before there are columns. */
      if (column != NULL && g_strcmp0 (gtk_column_view_column_get_title (column), title) != 0)
        gtk_column_view_column_set_title (column, title);
    }
}

/* The slab and the shop change what boards finish at. */
static void
session_changed_cb (BsRackTable *self, BsSession *session)
{
  g_assert (BS_IS_RACK_TABLE (self));
  g_assert (BS_IS_SESSION (session));

  show_titles (self);
  show_unit (self);
  for (guint i = 0; i < self->cells->len; i++)
    if (bs_rack_cell_get_column (self->cells->pdata[i]) == BS_RACK_FINISH)
      bs_rack_table_show_cell (self, self->cells->pdata[i]);
}

static void
selection_changed_cb (BsRackTable *self)
{
  bs_rack_table_update_actions (self);
  g_signal_emit (self, signals[SELECTION_CHANGED], 0);
}

static void
focus_changed_cb (BsRackTable *self)
{
  bs_rack_table_show_status (self);
}

static void
bs_rack_table_dispose (GObject *object)
{
  BsRackTable *self = BS_RACK_TABLE (object);
  GtkWidget *child;

  g_clear_handle_id (&self->enter_source, g_source_remove);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->selection);
  g_clear_object (&self->rack);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_rack_table_parent_class)->dispose (object);
}

static void
bs_rack_table_finalize (GObject *object)
{
  BsRackTable *self = BS_RACK_TABLE (object);

  for (guint i = 0; i < BS_N_RACK_COLUMNS; i++)
    g_free (self->titles[i]);
  g_ptr_array_unref (self->cells);
  g_hash_table_unref (self->drafts);
  G_OBJECT_CLASS (bs_rack_table_parent_class)->finalize (object);
}

static void
bs_rack_table_class_init (BsRackTableClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_rack_table_dispose;
  object_class->finalize = bs_rack_table_finalize;

  signals[SELECTION_CHANGED]
      = g_signal_new ("selection-changed", BS_TYPE_RACK_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                      NULL, G_TYPE_NONE, 0);

  bs_rack_table_actions_class_init (widget_class);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
bs_rack_table_init (BsRackTable *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->cells = g_ptr_array_new ();
  self->drafts = bs_rack_table_drafts_new ();
}

static GtkWidget *
status_new (BsRackTable *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);

  self->status = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->status), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (self->status), TRUE);
  gtk_widget_set_hexpand (self->status, TRUE);
  self->unit = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->unit, "faint");
  gtk_box_append (GTK_BOX (line), self->status);
  gtk_box_append (GTK_BOX (line), self->unit);
  gtk_widget_add_css_class (line, "rack-status");
  return line;
}

static void
build (BsRackTable *self)
{
  self->selection = gtk_multi_selection_new (g_object_ref (G_LIST_MODEL (self->rack)));
  self->view = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  gtk_widget_add_css_class (self->view, "rack");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  C_ ("place", "Boards"), -1);
  show_titles (self);
  append_columns (self);
  show_titles (self);
  bs_rack_table_keys_init (self);

  GtkWidget *scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->view);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));

  gtk_widget_set_parent (status_new (self), GTK_WIDGET (self));
  show_unit (self);
  gtk_widget_set_parent (bs_rack_table_buttons_new (self), GTK_WIDGET (self));
  bs_actions_add_inner_shortcuts (self->view, "board.");
}

GtkWidget *
bs_rack_table_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsRackTable *self = g_object_new (BS_TYPE_RACK_TABLE, NULL);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->session = g_object_ref (session);
  self->rack = bs_rack_new (session);
  build (self);
  g_signal_connect_object (self->selection, "selection-changed", G_CALLBACK (selection_changed_cb),
                           self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_swapped (focus, "notify::contains-focus", G_CALLBACK (focus_changed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  bs_rack_table_update_actions (self);
  return GTK_WIDGET (self);
}

/* Positions of the rows that are selected and have a board. */
static GtkBitset *
get_selected (BsRackTable *self)
{
  GtkBitset *rows = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));
  guint n_boards = bs_session_get_plan (self->session)->boards->len;

  gtk_bitset_remove_range_closed (rows, n_boards, G_MAXUINT);
  return rows;
}

const BsBoard *
bs_rack_table_get_board (BsRackTable *self)
{
  g_return_val_if_fail (BS_IS_RACK_TABLE (self), NULL);

  g_autoptr (GtkBitset) rows = get_selected (self);
  const GPtrArray *boards = bs_session_get_plan (self->session)->boards;
  guint first = gtk_bitset_get_minimum (rows);

  return first < boards->len ? boards->pdata[first] : NULL;
}

char **
bs_rack_table_dup_selected (BsRackTable *self)
{
  g_return_val_if_fail (BS_IS_RACK_TABLE (self), NULL);

  g_autoptr (GtkBitset) rows = get_selected (self);
  const GPtrArray *boards = bs_session_get_plan (self->session)->boards;
  GPtrArray *ids = g_ptr_array_new ();
  GtkBitsetIter iter;
  guint row = 0;

  for (gboolean has = gtk_bitset_iter_init_first (&iter, rows, &row); has;
       has = gtk_bitset_iter_next (&iter, &row))
    g_ptr_array_add (ids, g_strdup (((BsBoard *)boards->pdata[row])->id));
  g_ptr_array_add (ids, NULL);
  return (char **)g_ptr_array_free (ids, FALSE);
}
