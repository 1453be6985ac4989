/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/limits.h"
#include "core/plan.h"

G_BEGIN_DECLS

/* A board as a row of a table: what the columns are called, how a cell is written and read. The
 * window, what is pasted and CSV files share them. */

typedef enum
{
  BS_BOARD_LABEL,
  BS_BOARD_WOOD,
  BS_BOARD_THICKNESS,
  BS_BOARD_WIDTH,
  BS_BOARD_LENGTH,
  BS_BOARD_MOISTURE,
  BS_BOARD_PRICE,
  BS_BOARD_BOW,
  BS_BOARD_CROOK,
  BS_BOARD_CUP,
  BS_BOARD_TWIST,
  BS_BOARD_PITH_Y,
  BS_BOARD_PITH_Z,
  BS_BOARD_RUN_OUT_TOP,
  BS_BOARD_RUN_OUT_UNDERSIDE,
  BS_BOARD_RUN_OUT_FRONT,
  BS_BOARD_RUN_OUT_BACK,
} BsBoardColumn;

#define BS_N_BOARD_COLUMNS 17

typedef struct
{
  const char *key;      /* in files */
  const char *title;    /* N_() */
  const char *hint;     /* N_() what it means and how it is measured, or NULL */
  gsize offset;         /* in BsBoard, of a number or a run-out; 0 for texts and the price */
  const BsLimit *limit; /* of a number: the quantity and its range; else NULL */
  gboolean is_needed;   /* may not be left empty */
} BsBoardColumnInfo;

extern const BsBoardColumnInfo bs_board_columns[BS_N_BOARD_COLUMNS];

/* What the cells of a plan are read by. */
typedef struct
{
  BsUnitSystem units;   /* of numbers that name none */
  const char *currency; /* of the prices */
  GPtrArray *woods;     /* BsWood: those of the plan, in front of those that were taken from the
                         * program's table since */
} BsBoardReader;

/* The currency is the plan's, which has to live as long. */
void bs_board_reader_init (BsBoardReader *self, const BsPlan *plan);
void bs_board_reader_clear (BsBoardReader *self);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BsBoardReader, bs_board_reader_clear)

/* Reads what was typed into a field of a board that is still one's own: "8/4", "4 1/2\"", "sugar
 * maple". Empty is unknown. FALSE, and the board as it was, with a sentence (BS_UNITS_ERROR or
 * BS_DOCUMENT_ERROR) that says what is expected. */
gboolean bs_board_read (BsBoard *board, BsBoardColumn column, const char *text,
                        BsBoardReader *reader, GError **error);

/* As it stands in a table whose title names the unit; a thickness that is a class of rough lumber
 * by its name ("8/4"). "" for what is not known. The caller's. */
char *bs_board_format (const BsBoard *board, BsBoardColumn column, const BsPlan *plan);

/* "Moisture, %"; of lengths, which are most columns and all of one unit, without it. The caller's.
 */
char *bs_board_column_title (BsBoardColumn column, const BsPlan *plan);

G_END_DECLS
