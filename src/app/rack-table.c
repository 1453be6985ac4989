/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-table-private.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "core/units.h"

G_DEFINE_FINAL_TYPE (BsRackTable, bs_rack_table, GTK_TYPE_WIDGET)

enum
{
  SELECTION_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const BsRackColumn columns[BS_N_RACK_COLUMNS] = {
  [BS_BOARD_LABEL] = { .n_chars = 7, .is_text = TRUE },
  [BS_BOARD_WOOD] = { .n_chars = 13, .is_text = TRUE, .is_wide = TRUE },
  [BS_BOARD_THICKNESS] = { .n_chars = 6 },
  [BS_BOARD_WIDTH] = { .n_chars = 7 },
  [BS_BOARD_LENGTH] = { .n_chars = 7 },
  [BS_BOARD_MOISTURE] = { .n_chars = 5 },
  [BS_BOARD_PRICE] = { .n_chars = 7 },
  [BS_BOARD_BOW] = { .n_chars = 4 },
  [BS_BOARD_CROOK] = { .n_chars = 4 },
  [BS_BOARD_CUP] = { .n_chars = 4 },
  [BS_BOARD_TWIST] = { .n_chars = 4 },
  [BS_RACK_FINISH] = { .n_chars = 6, .is_for_show = TRUE },
};

static void
show_cell (gpointer self, BsRackCell *cell)
{
  bs_rack_table_show_cell (self, cell);
}

/* Whoever goes elsewhere finds what could not be taken over again in its cell. */
static void
leave_cell (gpointer self, BsRackCell *cell)
{
  if (gtk_widget_in_destruction (self))
    return;
  bs_rack_table_end_edit (self, cell);
  bs_rack_cell_end_edit (cell);
}

static const BsRackCellKind cell_kind = { show_cell, leave_cell };

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

  for (int i = 0; i < BS_N_RACK_COLUMNS; i++)
    {
      g_free (self->titles[i]);
      self->titles[i] = i == BS_RACK_FINISH ? g_strdup (_ ("Finishes at"))
                                            : bs_board_column_title ((BsBoardColumn)i, plan);
      bs_rack_view_set_title (BS_RACK_VIEW (self->view), i, self->titles[i]);
    }
}

/* So that there is always a board to look at. */
static void
choose_first (BsRackTable *self)
{
  g_autoptr (GtkBitset) rows
      = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));

  if (gtk_bitset_is_empty (rows) && bs_session_get_plan (self->session)->boards->len > 0)
    bs_rack_view_select (BS_RACK_VIEW (self->view), 0, FALSE, FALSE);
}

/* The slab and the shop change what boards finish at. */
static void
session_changed_cb (BsRackTable *self, BsSession *session)
{
  g_assert (BS_IS_RACK_TABLE (self));
  g_assert (BS_IS_SESSION (session));

  choose_first (self);
  show_titles (self);
  show_unit (self);
  bs_rack_view_show_column (BS_RACK_VIEW (self->view), BS_RACK_FINISH);
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
  self->view = bs_rack_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)), columns,
                                 BS_N_RACK_COLUMNS, &cell_kind, self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Rack"), -1);
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
  choose_first (self);
  return GTK_WIDGET (self);
}

/* Positions of the rows that are selected and have a board. */
static GtkBitset *
get_selected (BsRackTable *self)
{
  g_autoptr (GtkBitset) own
      = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));
  GtkBitset *rows = gtk_bitset_copy (own);
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
