/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/rack-cell.h"

G_BEGIN_DECLS

/* Rows of cells beneath their titles, for a scrolled window. There are widgets for the rows that
 * are in sight and for no others, since the toolkit looks at every row that there is whenever one
 * is typed into or chosen. It scrolls by whole rows, so that none is cut through by the titles.
 *
 * Signal: "entered" when the focus comes to it by Tab; whoever hears it says which cell takes it.
 */
#define BS_TYPE_RACK_VIEW (bs_rack_view_get_type ())
G_DECLARE_FINAL_TYPE (BsRackView, bs_rack_view, BS, RACK_VIEW, GtkWidget)

typedef struct
{
  int n_chars;          /* that there is room for, about */
  gboolean is_text;     /* and no figure: stands at the left */
  gboolean is_wide;     /* takes the width that is left; one of them does */
  gboolean is_for_show; /* nothing can be typed there */
} BsRackColumn;

/* What whoever has the view does with a cell, `owner` being the view's. */
typedef struct
{
  void (*show) (gpointer owner, BsRackCell *cell); /* by bs_rack_cell_show () */
  void (*left) (gpointer owner, BsRackCell *cell); /* while it was being edited */
} BsRackCellKind;

/* `rows` are of BsRackRow (taken over); `columns` and `kind` are static; `owner` outlives it. */
GtkWidget *bs_rack_view_new (GtkSelectionModel *rows, const BsRackColumn *columns, int n_columns,
                             const BsRackCellKind *kind, gpointer owner);
void bs_rack_view_set_title (BsRackView *self, int column, const char *title);

/* Shows a column anew, where what stands there hangs on more than its row. */
void bs_rack_view_show_column (BsRackView *self, int column);

/* The cell of a row and a column, which is scrolled to. NULL: there is none. */
BsRackCell *bs_rack_view_reach (BsRackView *self, guint position, int column);

/* How many rows are wholly in sight, 1 at the least. */
int bs_rack_view_count_rows (BsRackView *self);

/* Chooses a row, instead of those that are chosen or beside them (modify), or all from the one that
 * was chosen last (extend). */
void bs_rack_view_select (BsRackView *self, guint position, gboolean modify, gboolean extend);

G_END_DECLS
