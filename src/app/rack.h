/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The boards of the session's plan as a list of rows, and behind them an empty row, where typing
 * adds another. Rows stay the same objects for as long as their board's id is there, so that what
 * is shown, selected and focused stays too. */

/* Signal: "changed" when the board, or what it is shown by (units, woods), became another. */
#define BS_TYPE_RACK_ROW (bs_rack_row_get_type ())
G_DECLARE_FINAL_TYPE (BsRackRow, bs_rack_row, BS, RACK_ROW, GObject)

/* NULL: the empty row. */
const BsBoard *bs_rack_row_get_board (BsRackRow *self);

#define BS_TYPE_RACK (bs_rack_get_type ())
G_DECLARE_FINAL_TYPE (BsRack, bs_rack, BS, RACK, GObject)

/* A GListModel of BsRackRow. */
BsRack *bs_rack_new (BsSession *session);

G_END_DECLS
