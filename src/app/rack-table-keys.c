/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-table-private.h"

#include <stdlib.h>

/* Going from cell to cell and typing. The table hears keys before the entry in a cell does. */

/* Cells that can be gone to; the last column is only shown. */
#define LAST_COLUMN (BS_RACK_FINISH - 1)

#define PAGE 1000 /* stands for as many rows as are in sight */

static guint
get_last_row (BsRackTable *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (self->rack)) - 1;
}

static void
select_row (BsRackTable *self, BsRackCell *cell, gboolean modify, gboolean extend)
{
  bs_rack_view_select (BS_RACK_VIEW (self->view), bs_rack_cell_get_position (cell), modify, extend);
}

static void
go_to (BsRackTable *self, guint position, int column, gboolean extend)
{
  BsRackCell *cell = bs_rack_view_reach (BS_RACK_VIEW (self->view), position, column);

  if (cell == NULL)
    return;
  gtk_widget_grab_focus (GTK_WIDGET (cell));
  select_row (self, cell, FALSE, extend);
  bs_rack_table_show_status (self);
}

void
bs_rack_table_go_to (BsRackTable *self, guint position, int column)
{
  self->first_column = column;
  go_to (self, MIN (position, get_last_row (self)), column, FALSE);
}

/* Down and across by so many rows and columns, as far as there are any. */
static void
step (BsRackTable *self, guint position, int column, int down, int across, gboolean extend)
{
  int page = bs_rack_view_count_rows (BS_RACK_VIEW (self->view));
  int row = CLAMP ((int)position + (abs (down) == PAGE ? down / PAGE * page : down), 0,
                   (int)get_last_row (self));

  self->first_column = CLAMP (column + across, 0, LAST_COLUMN);
  go_to (self, (guint)row, self->first_column, extend);
}

/* To the next or the last cell, over the ends of rows; back from the first cell to the table as a
 * whole. FALSE where the table ends. */
static gboolean
tab (BsRackTable *self, guint position, int column, int across)
{
  int cell = (int)position * (LAST_COLUMN + 1) + column + across;

  if (cell < 0)
    return gtk_widget_grab_focus (gtk_widget_get_ancestor (self->view, GTK_TYPE_SCROLLED_WINDOW));
  if (cell > (int)get_last_row (self) * (LAST_COLUMN + 1) + LAST_COLUMN)
    return FALSE;
  go_to (self, (guint)(cell / (LAST_COLUMN + 1)), cell % (LAST_COLUMN + 1), FALSE);
  return TRUE;
}

typedef struct
{
  guint key;
  int down, across;
} Step;

static const Step steps[] = {
  { GDK_KEY_Up, -1, 0 },
  { GDK_KEY_KP_Up, -1, 0 },
  { GDK_KEY_Down, 1, 0 },
  { GDK_KEY_KP_Down, 1, 0 },
  { GDK_KEY_Page_Up, -PAGE, 0 },
  { GDK_KEY_KP_Page_Up, -PAGE, 0 },
  { GDK_KEY_Page_Down, PAGE, 0 },
  { GDK_KEY_KP_Page_Down, PAGE, 0 },
  /* An entry has these for itself. */
  { GDK_KEY_Left, 0, -1 },
  { GDK_KEY_KP_Left, 0, -1 },
  { GDK_KEY_Right, 0, 1 },
  { GDK_KEY_KP_Right, 0, 1 },
  { GDK_KEY_Home, 0, -BS_N_RACK_COLUMNS },
  { GDK_KEY_End, 0, BS_N_RACK_COLUMNS },
};

static const Step *
find_step (guint key)
{
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i].key == key)
      return &steps[i];
  return NULL;
}

static gboolean
is_enter (guint key)
{
  return key == GDK_KEY_Return || key == GDK_KEY_KP_Enter || key == GDK_KEY_ISO_Enter;
}

/* Where the keys lead that leave a cell whether or not it is edited; FALSE: not one of them. */
static gboolean
leave (BsRackTable *self, BsRackCell *cell, guint key, GdkModifierType modifiers)
{
  guint position = bs_rack_cell_get_position (cell);
  int column = bs_rack_cell_get_column (cell);
  const Step *way = find_step (key);
  gboolean is_edited = bs_rack_cell_is_edited (cell);
  gboolean is_tab = key == GDK_KEY_Tab || key == GDK_KEY_ISO_Left_Tab || key == GDK_KEY_KP_Tab;
  gboolean is_back = (modifiers & GDK_SHIFT_MASK) != 0;

  if (!is_tab && !is_enter (key) && (way == NULL || (is_edited && way->across != 0)))
    return FALSE;
  if (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return FALSE;
  if (!bs_rack_table_end_edit (self, cell))
    return TRUE;
  if (is_tab)
    return tab (self, position, column, is_back ? -1 : 1);
  if (is_enter (key))
    step (self, position, self->first_column, is_back ? -1 : 1, 0, FALSE);
  else
    step (self, position, column, way->down, way->across, is_back && way->down != 0);
  return TRUE;
}

/* What keys do with Ctrl, as in any list. */
static gboolean
control (BsRackTable *self, BsRackCell *cell, guint key)
{
  if (key == GDK_KEY_Home || key == GDK_KEY_End)
    bs_rack_table_go_to (self, key == GDK_KEY_Home ? 0 : get_last_row (self),
                         bs_rack_cell_get_column (cell));
  else if (key == GDK_KEY_space)
    select_row (self, cell, TRUE, FALSE);
  else if (key == GDK_KEY_a)
    gtk_selection_model_select_range (GTK_SELECTION_MODEL (self->selection), 0, get_last_row (self),
                                      TRUE);
  else
    return FALSE;
  return TRUE;
}

static void
begin_edit (BsRackTable *self, BsRackCell *cell, const char *text)
{
  /* In the empty row nothing is written yet. */
  gboolean is_new = bs_rack_table_get_board_of (cell) == NULL;

  if (bs_rack_cell_get_column (cell) <= LAST_COLUMN)
    bs_rack_cell_edit (cell, text == NULL && is_new ? "" : text);
}

static gboolean
cancel (BsRackTable *self, BsRackCell *cell)
{
  bs_rack_cell_end_edit (cell);
  bs_rack_table_drop_draft (self, cell);
  bs_rack_table_show_status (self);
  return TRUE;
}

/* A key that writes something replaces what is in the cell. */
static gboolean
type (BsRackTable *self, BsRackCell *cell, GtkEventControllerKey *keys, guint key)
{
  gunichar c = gdk_keyval_to_unicode (key);
  gboolean is_dead = key >= GDK_KEY_dead_grave && key <= GDK_KEY_dead_greek;

  if ((c == 0 || !g_unichar_isprint (c)) && !is_dead && key != GDK_KEY_Multi_key)
    return FALSE;
  begin_edit (self, cell, "");
  return bs_rack_cell_is_edited (cell)
         && gtk_event_controller_key_forward (keys, bs_rack_cell_get_entry (cell));
}

static gboolean
key_pressed_cb (BsRackTable *self, guint key, guint code, GdkModifierType modifiers,
                GtkEventControllerKey *keys)
{
  BsRackCell *cell = bs_rack_table_get_focused (self);

  if (cell == NULL)
    return GDK_EVENT_PROPAGATE;
  if (leave (self, cell, key, modifiers))
    return GDK_EVENT_STOP;
  if (key == GDK_KEY_Escape)
    return cancel (self, cell);
  if (bs_rack_cell_is_edited (cell))
    return GDK_EVENT_PROPAGATE;
  if (modifiers & GDK_CONTROL_MASK)
    return control (self, cell, key);
  if (modifiers & GDK_ALT_MASK)
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_F2)
    begin_edit (self, cell, NULL);
  else if (key == GDK_KEY_BackSpace)
    begin_edit (self, cell, "");
  else if (key == GDK_KEY_Delete && bs_rack_table_get_board_of (cell) != NULL)
    bs_rack_table_take_text (self, cell, "");
  else
    return type (self, cell, keys, key);
  return GDK_EVENT_STOP;
}

/* Rows would take the focus for themselves. */
static void
pressed_cb (BsRackTable *self, int n_press, double x, double y, GtkGestureClick *click)
{
  GtkWidget *under = gtk_widget_pick (self->view, x, y, GTK_PICK_DEFAULT);
  GtkWidget *widget = under != NULL ? gtk_widget_get_ancestor (under, BS_TYPE_RACK_CELL) : NULL;
  GdkModifierType modifiers
      = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (click));

  if (widget == NULL || bs_rack_cell_is_edited (BS_RACK_CELL (widget)))
    return;
  BsRackCell *cell = BS_RACK_CELL (widget);
  gtk_gesture_set_state (GTK_GESTURE (click), GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_widget_grab_focus (widget);
  self->first_column = MIN (bs_rack_cell_get_column (cell), LAST_COLUMN);
  select_row (self, cell, (modifiers & GDK_CONTROL_MASK) != 0, (modifiers & GDK_SHIFT_MASK) != 0);
  if (n_press == 2)
    begin_edit (self, cell, NULL);
  bs_rack_table_show_status (self);
}

/* Whoever comes by Tab comes to the row that is worked on. */
static void
entered_cb (BsRackTable *self)
{
  g_autoptr (GtkBitset) rows
      = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));

  bs_rack_table_go_to (self, gtk_bitset_is_empty (rows) ? 0 : gtk_bitset_get_minimum (rows),
                       BS_BOARD_LABEL);
}

void
bs_rack_table_keys_init (BsRackTable *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->view, keys);
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (click), GTK_PHASE_CAPTURE);
  g_signal_connect_object (self->view, "entered", G_CALLBACK (entered_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (self->view, GTK_EVENT_CONTROLLER (click));
}
